"""A log in little: a picture of a hundred points, an hour to a line, and all probes on one axis of time."""

from __future__ import annotations

import math
from array import array
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import pairwise

from attrs import frozen

from core.chamber.series import LONGEST_GAP, Series
from core.units import HOUR_S

MOST_POINTS = 120


@frozen
class Hour:
    """What a probe showed in an hour; None where it has no humidity."""

    begins_s: float
    mean_c: float
    lowest_c: float
    highest_c: float
    humidity: float | None
    driest: float | None
    dampest: float | None


def outline(series: Series, most: int = MOST_POINTS) -> tuple[tuple[float, float], ...]:
    """Hours into the log and °C: both ends, and the lowest and highest of equal parts, in the order they came."""
    times_s, values = series.times_s, series.temperatures_c
    if len(series) <= most:
        return tuple(_point(series, at) for at in range(len(series)))
    parts = most // 2 - 1
    edges = [bisect_left(times_s, times_s[0] + part * series.lasts_s / parts) for part in range(parts)] + [len(series)]
    kept = {0, len(series) - 1}
    for first, end in pairwise(edges):
        if first < end:
            kept |= {pick(range(first, end), key=values.__getitem__) for pick in (min, max)}
    return tuple(_point(series, at) for at in sorted(kept))


def _point(series: Series, at: int) -> tuple[float, float]:
    return round((series.times_s[at] - series.times_s[0]) / HOUR_S, 3), round(series.temperatures_c[at], 2)


def hours(series: Series) -> Iterator[Hour]:
    """Every full hour of the clock that has a reading."""
    times_s = series.times_s
    first = 0
    while first < len(series):
        begins_s = times_s[first] // HOUR_S * HOUR_S
        end = bisect_left(times_s, begins_s + HOUR_S, first)
        warm = series.temperatures_c[first:end]
        damp = [each for each in series.humidities[first:end] if each == each]
        yield Hour(
            begins_s,
            sum(warm) / len(warm),
            min(warm),
            max(warm),
            sum(damp) / len(damp) if damp else None,
            min(damp, default=None),
            max(damp, default=None),
        )
        first = end


@frozen(eq=False)
class Trace:
    """One line of a chart: its own times, and values in which a NaN was not measured."""

    times_s: Sequence[float]
    values: Sequence[float]
    interval_s: float


def on_one_axis(traces: Sequence[Trace]) -> tuple[array[float], list[array[float]]]:
    """All times in order, and each trace at them: straight between its own readings, NaN over gaps and outside.

    Where all probes pause there is a time of its own without a value, so that no line is drawn across.
    """
    times: set[float] = set()
    for trace in _one_for_each_clock(traces):
        times.update(trace.times_s)
        longest_s = LONGEST_GAP * trace.interval_s
        steps = zip(trace.times_s, trace.times_s[1:], strict=False)
        times.update(before + trace.interval_s for before, after in steps if after - before > longest_s)
    axis = array("d", sorted(times))
    return axis, [_at(trace, axis) for trace in traces]


def _one_for_each_clock(traces: Sequence[Trace]) -> list[Trace]:
    """Most lines of a chart share their times with another."""
    kept: list[Trace] = []
    for trace in traces:
        if not any(_have_one_clock(trace, each) for each in kept):
            kept.append(trace)
    return kept


def _have_one_clock(one: Trace, other: Trace) -> bool:
    is_same = one.times_s is other.times_s or one.times_s == other.times_s
    return is_same and one.interval_s == other.interval_s


def _at(trace: Trace, axis: array[float]) -> array[float]:
    if len(trace.times_s) == len(axis):
        return array("d", trace.values)
    known = dict(zip(trace.times_s, trace.values, strict=True))
    longest_s = LONGEST_GAP * trace.interval_s
    values = array("d")
    after = 0
    for at_s in axis:
        if at_s in known:
            values.append(known[at_s])
            after += 1
        else:
            values.append(_between(trace, after, at_s, longest_s))
    return values


def _between(trace: Trace, after: int, at_s: float, longest_s: float) -> float:
    if not 0 < after < len(trace.times_s):
        return math.nan
    before_s, after_s = trace.times_s[after - 1], trace.times_s[after]
    if after_s - before_s > longest_s:
        return math.nan
    low, high = trace.values[after - 1], trace.values[after]
    return low + (high - low) * (at_s - before_s) / (after_s - before_s)
