"""Loss a day: the share of the start weight that a piece loses, between two weighings; said here and nowhere else."""

from __future__ import annotations

import math

from core.dry.shrink import lost
from core.quantities import DAYS, LOSS_RATE, PIECE_MASS, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import DEFINITION
from core.units import HOUR_S
from core.working import Figure

LEAST_APART_S = HOUR_S
"""Over less the scale's own error is larger than the loss."""


def loss_rate(start_kg: float, earlier_kg: float, later_kg: float, between_s: float) -> float:
    """Share of the start weight lost in a second. Weights and time above 0; a gain is negative."""
    return (earlier_kg - later_kg) / start_kg / between_s


def loss_per_day(start_kg: float, earlier_kg: float, later_kg: float, between_s: float) -> Figure:
    """The same as a figure. between_s: an hour or more. Raises OutOfRange, on "between_s" too."""
    for each in (earlier_kg, later_kg):
        lost(start_kg, each)
    if not LEAST_APART_S <= between_s < math.inf:
        raise OutOfRange("between_s", "The two weighings must be at least an hour apart.")
    rate = Amount(loss_rate(start_kg, earlier_kg, later_kg, between_s), LOSS_RATE)
    step = Sentence(
        "(Earlier − later) ÷ start ÷ time: ({earlier} − {later}) ÷ {start} ÷ {time} = {rate}",
        {
            "earlier": Amount(earlier_kg, PIECE_MASS),
            "later": Amount(later_kg, PIECE_MASS),
            "start": Amount(start_kg, PIECE_MASS),
            "time": Amount(between_s, DAYS),
            "rate": rate,
        },
    )
    return Figure("loss_per_day", "Loss a day", rate.value, LOSS_RATE, (step,), DEFINITION)
