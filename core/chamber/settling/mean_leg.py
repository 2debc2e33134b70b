"""The mean of many runs, or holds, laid over one another: finer in time than the logger, quieter than a single one.

Coil and probe answer late and blur both turning points, so that a run read off the lowest and highest reading comes out
too long. Here the mean leg is fitted with lines that turn twice, each turn blurred by the same two lags in series; the
delay is the same at both turns and drops out of how long the leg lasts.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise
from operator import mul

from attrs import frozen

from core.chamber.settling.swing import Trace
from core.chamber.settling.trace import percentile

BINS = 64
USUAL_LAG_S = 100.0
SHORTEST_LAG_S, SHORTEST_LEG_S = 5.0, 60.0
MOST_LEGS = 60
LONG_LEG_S = 1500.0
MOST_STEPS, FINEST_S = 100, 4.0
Basis = tuple[float, ...]


@frozen
class _Bin:
    at_s: float
    value: float
    weight: float


@frozen
class Leg:
    """A run, or a hold, once: where it begins, where it passes the middle, where it ends."""

    begins_s: float
    middle_s: float
    ends_s: float


@frozen
class Look:
    """How far before and after its middle to look at each leg."""

    before_s: float
    after_s: float


def look_around(legs: Sequence[Leg], beyond_s: float) -> Look:
    """The legs themselves and so much of what is before and after."""
    before = percentile(sorted(leg.middle_s - leg.begins_s for leg in legs), 0.5)
    after = percentile(sorted(leg.ends_s - leg.middle_s for leg in legs), 0.5)
    return Look(before + beyond_s, after + beyond_s)


def leg_lasts(trace: Trace, legs: Sequence[Leg], look: Look, guess_s: float, *, goes_down: bool) -> float:
    """How long the mean leg lasts, in seconds. goes_down: runs; else holds. guess_s: to begin the search with."""
    bins = _stacked(trace, legs, look, -1.0 if goes_down else 1.0)
    axes = 2 if trace.is_coarse else 3
    terms = 5 if guess_s > LONG_LEG_S and not trace.is_coarse else 4

    def error(at: Basis) -> float:
        _, lasts_s, lag_s = at
        return math.inf if lag_s < SHORTEST_LAG_S or lasts_s < SHORTEST_LEG_S else _fit(bins, terms, *at)[0]

    return _lowest(error, (-guess_s / 2, guess_s, USUAL_LAG_S), axes)[1]


def _stacked(trace: Trace, legs: Sequence[Leg], look: Look, sign: float) -> list[_Bin]:
    width_s = (look.before_s + look.after_s) / BINS
    sums, times, counts = [0.0] * BINS, [0.0] * BINS, [0] * BINS
    for leg in legs[:: 1 + len(legs) // MOST_LEGS]:
        first = bisect_left(trace.times_s, leg.middle_s - look.before_s)
        end = bisect_left(trace.times_s, leg.middle_s + look.after_s)
        for at_s, value in points(trace, first, end):
            since_s = at_s - leg.middle_s
            place = max(0, min(BINS - 1, int((since_s + look.before_s) / width_s)))
            sums[place] += sign * value
            times[place] += since_s
            counts[place] += 1
    return [_Bin(at / n, total / n, n) for at, total, n in zip(times, sums, counts, strict=True) if n]


def points(trace: Trace, first: int, end: int) -> Iterable[tuple[float, float]]:
    """The readings; of a coarse trace only where it steps: there, and nowhere else, is the temperature known."""
    times_s, values = trace.times_s[first:end], trace.values[first:end]
    if not trace.is_coarse:
        return zip(times_s, values, strict=True)
    both = zip(pairwise(times_s), pairwise(values), strict=True)
    return [((start + stop) / 2, (low + high) / 2) for (start, stop), (low, high) in both if low != high]


def _blurred_ramp(since_s: float, lag_s: float) -> float:
    """What two equal lags in series make of a ramp that begins at 0."""
    if since_s <= 0:
        return 0.0
    return since_s - 2 * lag_s + (since_s + 2 * lag_s) * math.exp(-since_s / lag_s)


def _fit(bins: Sequence[_Bin], terms: int, begins_s: float, lasts_s: float, lag_s: float) -> tuple[float, Basis]:
    """Mean square error, and the factors of: level, slope, first turn, second turn, slowing between."""
    rows: list[Basis] = []
    for each in bins:
        begun = _blurred_ramp(each.at_s - begins_s, lag_s)
        ended = _blurred_ramp(each.at_s - begins_s - lasts_s, lag_s)
        gone = begun - ended
        rows.append((1.0, each.at_s, begun, -ended, gone * gone / lasts_s)[:terms])
    factors = _least_squares(rows, bins)
    error = sum(
        each.weight * (each.value - sum(map(mul, row, factors))) ** 2 for row, each in zip(rows, bins, strict=True)
    )
    return error / sum(each.weight for each in bins), factors


def _least_squares(rows: Sequence[Basis], bins: Sequence[_Bin]) -> Basis:
    columns = list(zip(*rows, strict=True))
    weighted = [[value * each.weight for value, each in zip(column, bins, strict=True)] for column in columns]
    columns.append(tuple(each.value for each in bins))
    return _solve([[sum(map(mul, left, right)) for right in columns] for left in weighted])


def _solve(table: list[list[float]]) -> Basis:
    """Gauss with pivots; the table's last column is the right side."""
    size = len(table)
    for column in range(size):
        pivot = max(range(column, size), key=lambda line: abs(table[line][column]))
        table[column], table[pivot] = table[pivot], table[column]
        for line in range(column + 1, size):
            share = table[line][column] / (table[column][column] or 1e-300)
            for place in range(column, size + 1):
                table[line][place] -= share * table[column][place]
    found = [0.0] * size
    for line in reversed(range(size)):
        rest = table[line][size] - sum(table[line][place] * found[place] for place in range(line + 1, size))
        found[line] = rest / (table[line][line] or 1e-300)
    return tuple(found)


def _lowest(error: Callable[[Basis], float], start: Basis, axes: int) -> Basis:
    """A compass search: try a step each way along each axis, and halve the steps where none helps."""
    best, lowest = start, error(start)
    steps = [0.3 * start[1], 0.3 * start[1], 0.5 * start[2]][:axes]
    for _ in range(MOST_STEPS):
        tried = [_moved(best, axis, way) for axis, step in enumerate(steps) for way in (step, -step)]
        at, found = _first_below(error, tried, lowest) or (best, lowest)
        if found < lowest:
            best, lowest = at, found
        elif steps[1] < FINEST_S:
            break
        else:
            steps = [step / 2 for step in steps]
    return best


def _first_below(error: Callable[[Basis], float], tried: Sequence[Basis], lowest: float) -> tuple[Basis, float] | None:
    for at in tried:
        found = error(at)
        if found < lowest:
            return at, found
    return None


def _moved(at: Basis, axis: int, way: float) -> Basis:
    return tuple(value + way if place == axis else value for place, value in enumerate(at))
