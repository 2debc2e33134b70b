"""What a batch that has dried lends to the next one of the same formula and casing: its pace, its end, its shapes."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable

from core.dry.curve import END_SPREAD, Fit, Lent
from core.dry.pace import Air, end_in, force_pa

BATCHES_APART, ENDS_APART = 0.25, 0.02
"""From batch to batch of one formula: the half-time's logarithm, and the end. Common practice; no published source."""
AT_LOSS = 0.15
"""Where two airs are compared: about the middle of the drying."""


def lend(earlier: Fit, air: Air) -> Lent:
    """What a batch lends to a later one of the same formula and casing that hangs in this air."""
    half, spread = _mean_and_spread((case.weight, case.half, case.half_spread) for case in earlier.cases)
    was = earlier.air[-1]
    slower = math.log(force_pa(was, AT_LOSS, earlier.mix) / force_pa(air, AT_LOSS, earlier.mix))
    end, end_spread = _mean_and_spread((case.weight, case.end, 0.0) for case in earlier.cases)
    did = defaultdict[str, float](float)
    for case in earlier.cases:
        did[case.shape.key] += case.weight
    return Lent(
        half + slower,
        math.hypot(spread, BATCHES_APART),
        end - end_in(was, earlier.mix),
        min(END_SPREAD, math.hypot(end_spread, ENDS_APART)),
        tuple(sorted(did.items())),
    )


def _mean_and_spread(each: Iterable[tuple[float, float, float]]) -> tuple[float, float]:
    known = tuple(each)
    mean = sum(weight * value for weight, value, _ in known)
    return mean, math.sqrt(sum(weight * ((value - mean) ** 2 + spread**2) for weight, value, spread in known))
