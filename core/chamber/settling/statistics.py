"""What a probe showed in all: mean, spread, extremes, 5 to 95 %, and for how long it was where it should be.

Each reading stands until the next, at most for three logging intervals: a gap counts for nothing. So unevenly logged
a reading weighs by the time until the next.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import accumulate
from operator import mul

from attrs import frozen

from core.chamber.series import held_s
from core.refusals import OutOfRange

SLACK = 1e-9
"""A reading at the edge of the band is in it, also when the edge is a sum of decimals."""


@frozen
class Band:
    """target ± half, in the unit of what is measured. half must be above 0."""

    target: float
    half: float

    def __attrs_post_init__(self) -> None:
        if not (math.isfinite(self.target) and 0 < self.half < math.inf):
            raise OutOfRange("band", "The band must reach more than nothing to either side of what is aimed at.")

    @property
    def low(self) -> float:
        return self.target - self.half - SLACK

    @property
    def high(self) -> float:
        return self.target + self.half + SLACK

    def holds(self, value: float) -> bool:
        return self.low <= value <= self.high


@frozen
class Spread:
    """Weighted by time. deviation: standard deviation. low_5, high_95: a twentieth of the time is below, above.

    in_band: share of the time, None where no band was given. covered_s: time for which there are readings.
    """

    mean: float
    deviation: float
    lowest: float
    highest: float
    low_5: float
    high_95: float
    covered_s: float
    in_band: float | None = None


def spread(
    times_s: Sequence[float],
    values: Sequence[float],
    band: Band | None = None,
    lasts_s: Sequence[float] | None = None,
) -> Spread:
    """times_s and values: two or more, of equal number. lasts_s: for how long each stands, where that is known."""
    for_s = time_at(values, held_s(times_s) if lasts_s is None else lasts_s)
    there = sorted(for_s)
    covered_s = math.fsum(for_s.values())
    mean = math.fsum(map(mul, for_s.keys(), for_s.values())) / covered_s
    square = math.fsum((value - mean) ** 2 * lasts_s for value, lasts_s in for_s.items()) / covered_s
    return Spread(
        mean=mean,
        deviation=math.sqrt(square),
        lowest=there[0],
        highest=there[-1],
        low_5=_reached(there, for_s, 0.05 * covered_s),
        high_95=_reached(there, for_s, 0.95 * covered_s),
        covered_s=covered_s,
        in_band=None if band is None else _share_within(for_s, band, covered_s),
    )


def time_at(values: Sequence[float], lasts_s: Sequence[float]) -> dict[float, float]:
    """Seconds spent at each value. Loggers round, so there are few values however long the log."""
    usual_s = lasts_s[-1]
    for_s = {value: count * usual_s for value, count in Counter(values).items()}
    if lasts_s.count(usual_s) < len(lasts_s):
        for value, each_s in zip(values, lasts_s, strict=True):
            if each_s != usual_s:
                for_s[value] += each_s - usual_s
    return for_s


def _reached(there: Sequence[float], for_s: Mapping[float, float], until_s: float) -> float:
    """The lowest value below or at which the trace spends that time."""
    spent = accumulate(map(for_s.__getitem__, there))
    return next(value for value, spent_s in zip(there, spent, strict=True) if spent_s >= until_s - SLACK)


def _share_within(for_s: Mapping[float, float], band: Band, covered_s: float) -> float:
    return math.fsum(lasts_s for value, lasts_s in for_s.items() if band.holds(value)) / covered_s
