"""Loss a day: the share of the start weight that a piece loses, between two weighings; said here and nowhere else."""

from __future__ import annotations

import math
from collections.abc import Sequence

from attrs import frozen

from core.units import HOUR_S

LEAST_APART_S = HOUR_S
"""Over less the scale's own error is larger than the loss."""
SURE = 0.25
"""A rate is sure once the scale's error is no more than this share of it."""


@frozen
class Rate:
    """Shares of the start weight a second, the scale's error beside; between two weighings, in seconds."""

    per_s: float
    error_per_s: float
    from_s: float
    to_s: float


def loss_rate(start_kg: float, earlier_kg: float, later_kg: float, between_s: float) -> float:
    """Share of the start weight lost in a second. Weights and time above 0; a gain is negative."""
    return (earlier_kg - later_kg) / start_kg / between_s


def latest_rate(start_kg: float, weighings: Sequence[tuple[float, float]], scale_kg: float) -> Rate | None:
    """Up to the last weighing, from the nearest one before that makes it sure; from the first where none does.

    weighings: seconds and kilograms, that of hanging among them, in any order. scale_kg: what one may be off. None
    where no two of them lie LEAST_APART_S apart.
    """
    *before, (to_s, last_kg) = sorted(weighings)
    found: Rate | None = None
    for from_s, mass_kg in reversed(before):
        between_s = to_s - from_s
        if between_s < LEAST_APART_S:
            continue
        error = math.sqrt(2) * scale_kg / start_kg / between_s
        found = Rate(loss_rate(start_kg, mass_kg, last_kg, between_s), error, from_s, to_s)
        if error <= SURE * abs(found.per_s):
            return found
    return found
