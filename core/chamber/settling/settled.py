"""When did it first reach its band, which readings are undisturbed, and how far did it drift?"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from operator import mul

from attrs import frozen

from core.chamber.settling.disturbances import AFTER_EVENT_S
from core.chamber.settling.events import Event
from core.chamber.settling.runs import Run
from core.chamber.settling.statistics import Band
from core.units import DAY_S

LEAST_STEADY_S = 6 * 3600.0
"""Less than this tells neither drift nor fluctuation of a chamber whose compressor runs once in hours (practice)."""


def undisturbed(times_s: Sequence[float], events: Sequence[Event]) -> list[bool]:
    """For each reading, whether no defrost and no door's warm air is in it, nor was within a quarter of an hour."""
    calm = [True] * len(times_s)
    for event in events:
        first = bisect_left(times_s, event.starts_s)
        end = bisect_left(times_s, event.ends_s + AFTER_EVENT_S)
        calm[first:end] = [False] * (end - first)
    return calm


def dried(times_s: Sequence[float], events: Sequence[Event], runs: Sequence[Run]) -> list[bool]:
    """For each reading, whether the coil has taken what vapour a defrost or a door let in: after a run that began when
    it was over."""
    calm = [True] * len(times_s)
    for event in events:
        over_s = next((run.trough_s for run in runs if run.peak_s >= event.ends_s), event.ends_s)
        first = bisect_left(times_s, event.starts_s)
        end = bisect_left(times_s, over_s + AFTER_EVENT_S)
        calm[first:end] = [False] * (end - first)
    return calm


def arrived(times_s: Sequence[float], values: Sequence[float], band: Band) -> float | None:
    """The time of the first reading within the band."""
    return next((at_s for at_s, value in zip(times_s, values, strict=True) if band.holds(value)), None)


@frozen
class Drift:
    """K a day. give_k: another way of logging the same may move it by so much: three standard errors."""

    by_k: float
    give_k: float


def drift_a_day(times_s: Sequence[float], values: Sequence[float]) -> Drift | None:
    """Slope of the straight line through the readings. None for less than six hours of them."""
    count = len(times_s)
    if count < 3 or times_s[-1] - times_s[0] < LEAST_STEADY_S:
        return None
    mean_s, mean = sum(times_s) / count, sum(values) / count
    since_s = [at_s - mean_s for at_s in times_s]
    off = [value - mean for value in values]
    square = sum(map(mul, since_s, since_s))
    slope = sum(map(mul, since_s, off)) / square
    left = max(0.0, sum(map(mul, off, off)) - slope * slope * square) / (count - 2)
    return Drift(DAY_S * slope, 3 * DAY_S * math.sqrt(left / square))
