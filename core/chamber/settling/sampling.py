"""Was it read often enough? A log shows a chamber only where it shows each of its cycles."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from operator import sub

from attrs import frozen

from core.chamber.series import GAP
from core.chamber.settling.swing import FEWEST_A_PERIOD, SLOWEST_LOGGING_S

SHORTEST_CYCLE_S = 600.0
"""Compressors that start every ten minutes are common: where no cycle is seen, a log must be fit to show that one."""
JITTER = 1.01


@frozen
class Sampling:
    """interval_s: the usual one. period_s: of the cycles seen, None without. most_s: how far apart readings may be.

    covered_s: the time between neighbouring readings close enough to show it.
    """

    interval_s: float
    period_s: float | None
    most_s: float
    covered_s: float

    @property
    def is_enough(self) -> bool:
        return self.interval_s <= self.most_s * JITTER

    @property
    def shown_s(self) -> float:
        """Readings further apart do not show what is between them."""
        return _shown_s(self.interval_s, self.most_s)


def sampling(times_s: Sequence[float], interval_s: float, period_s: float | None) -> Sampling:
    """period_s: of the compressor, where it is seen. Source of an eighth: the reference rule."""
    finest_s = SHORTEST_CYCLE_S / FEWEST_A_PERIOD
    most_s = finest_s if period_s is None else min(SLOWEST_LOGGING_S, max(finest_s, period_s / FEWEST_A_PERIOD))
    steps_s = map(sub, islice(times_s, 1, None), times_s)
    shown_s = _shown_s(interval_s, most_s)
    covered_s = sum(step_s for step_s in steps_s if step_s <= shown_s)
    return Sampling(interval_s, period_s, most_s, covered_s)


def _shown_s(interval_s: float, most_s: float) -> float:
    return min(GAP * interval_s, JITTER * max(most_s, interval_s))
