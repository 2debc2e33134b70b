"""The vapour as a second witness of a door: from a drier room, the vapour pressure falls while the temperature leaps.

Nothing else does both: a run dries and cools, a hold and a defrost's melting ice warm and moisten. It tells for a door
and never against one, for the room's air may be as damp as the chamber's, or damper.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from attrs import frozen

from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.swing import width_of
from core.chamber.settling.trace import percentile

WITHIN_S = 240.0
"""A door's vapour, read by a slow probe."""
UNUSUAL, LEAST_PART = 0.95, 0.33
"""Of what the vapour pressure moves by within that time all but a twentieth is less; and a part of that is a fall."""
ENOUGH = 5000
"""Places of a long log tell what is usual as well as all of them."""


@frozen(eq=False)
class Witness:
    """width: readings that are looked at together; least_pa: by how much less is a fall."""

    times_s: Sequence[float]
    vapour_pa: Sequence[float]
    width: int
    least_pa: float

    def saw_a_door(self, first_s: float, last_s: float) -> bool:
        return self._about(last_s) - self._about(first_s) < -self.least_pa

    def _about(self, at_s: float) -> float:
        at, half = bisect_left(self.times_s, at_s, hi=len(self.times_s) - 1), self.width // 2
        near = self.vapour_pa[max(0, at - half) : at + half + 1]
        return sum(near) / len(near)


def witness_of(air: HumidAir) -> Witness:
    few = max(1, round(WITHIN_S / air.lasts_s[-1]))
    vapour_pa = air.vapour_pa
    places = range(0, len(vapour_pa) - few, 1 + len(vapour_pa) // ENOUGH)
    moves = sorted(abs(vapour_pa[at + few] - vapour_pa[at]) for at in places)
    least_pa = LEAST_PART * percentile(moves, UNUSUAL) if moves else 0.0
    return Witness(air.times_s, vapour_pa, width_of(air.lasts_s[-1]), least_pa)
