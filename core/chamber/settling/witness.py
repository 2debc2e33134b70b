"""The vapour as a second witness of a door: from a drier room, the vapour pressure falls while the temperature leaps.

Nothing else does both: a run dries and cools, a hold and a defrost's melting ice warm and moisten. It tells for a door
and never against one, for the room's air may be as damp as the chamber's, or damper.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import islice
from operator import sub

from attrs import frozen

from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.swing import width_of
from core.chamber.settling.trace import percentile, smooth

WITHIN_S = 240.0
"""A door's vapour, read by a slow probe."""
UNUSUAL, LEAST_PART = 0.95, 0.33
"""Of what the vapour pressure moves by within that time all but a twentieth is less; and a part of that is a fall."""


@frozen(eq=False)
class Witness:
    times_s: Sequence[float]
    vapour_pa: Sequence[float]
    least_pa: float

    def saw_a_door(self, first_s: float, last_s: float) -> bool:
        first, last = (bisect_left(self.times_s, at_s, hi=len(self.times_s) - 1) for at_s in (first_s, last_s))
        return self.vapour_pa[last] - self.vapour_pa[first] < -self.least_pa


def witness_of(air: HumidAir) -> Witness:
    few = max(1, round(WITHIN_S / air.lasts_s[-1]))
    vapour_pa = smooth(air.vapour_pa, width_of(air.lasts_s[-1]))
    moves = sorted(map(abs, map(sub, islice(vapour_pa, few, None), vapour_pa)))
    return Witness(air.times_s, vapour_pa, LEAST_PART * percentile(moves, UNUSUAL) if moves else 0.0)
