"""The mean of many compressor runs, laid over one another: finer in time than the logger, quieter than one run.

Coil and probe answer late and blur both turning points, so that a run read off the lowest and highest reading comes out
too long. Here the mean run is fitted with lines that turn twice, each turn blurred by the same two lags in series; the
delay is the same at both turns and drops out of how long the run lasts.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from attrs import frozen

from core.chamber.settling.cycles import Run
from core.chamber.settling.swing import Trace

BINS = 64
USUAL_LAG_S = 100.0
Basis = tuple[float, ...]


@frozen
class MeanRun:
    """cools_s: how long the compressor runs. lag_s: each of the two lags. error: of one bin, in the trace's unit."""

    cools_s: float
    lag_s: float
    rises_by_s: float
    falls_by_s: float
    error: float


@frozen
class _Bin:
    at_s: float
    value: float
    weight: float


def mean_run(trace: Trace, runs: Sequence[Run], look_s: float, cools_s: float) -> MeanRun:
    """runs: undisturbed ones. look_s: how far before and after their middles to look. cools_s: a first guess."""
    bins = _stacked(trace, runs, look_s)
    axes, terms = (2, 4) if trace.is_coarse else (3, 5)
    begins_s, lasts_s, lag_s = _lowest(lambda at: _fit(bins, terms, *at)[0], (-cools_s / 2, cools_s, USUAL_LAG_S), axes)
    error, (_, rise, turn, *_) = _fit(bins, terms, begins_s, lasts_s, lag_s)
    return MeanRun(lasts_s, lag_s, rise, turn - rise, math.sqrt(error))


def _stacked(trace: Trace, runs: Sequence[Run], look_s: float) -> list[_Bin]:
    width_s = 2 * look_s / BINS
    sums, times, counts = [0.0] * BINS, [0.0] * BINS, [0] * BINS
    for run in runs:
        first = bisect_left(trace.times_s, run.falls_s - look_s)
        end = bisect_left(trace.times_s, run.falls_s + look_s)
        for at_s, value in points(trace, first, end):
            since_s = at_s - run.falls_s
            place = max(0, min(BINS - 1, int((since_s + look_s) / width_s)))
            sums[place] += value
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
    """Mean square error, and the factors of: level, rise, turn down, turn up, slowing of the fall."""
    if lag_s < 5 or lasts_s < 60:
        return math.inf, ()
    rows: list[Basis] = []
    for each in bins:
        down = _blurred_ramp(each.at_s - begins_s, lag_s)
        up = _blurred_ramp(each.at_s - begins_s - lasts_s, lag_s)
        fallen = down - up
        rows.append((1.0, each.at_s, -down, up, fallen * fallen / lasts_s)[:terms])
    factors = _least_squares(rows, bins)
    error = sum(
        each.weight * (each.value - sum(map(float.__mul__, row, factors))) ** 2
        for row, each in zip(rows, bins, strict=True)
    )
    return error / sum(each.weight for each in bins), factors


def _least_squares(rows: Sequence[Basis], bins: Sequence[_Bin]) -> Basis:
    size = len(rows[0])
    table = [[0.0] * (size + 1) for _ in range(size)]
    for row, each in zip(rows, bins, strict=True):
        full = (*row, each.value)
        for line, left in zip(table, row, strict=True):
            scaled = left * each.weight
            for column in range(size + 1):
                line[column] += scaled * full[column]
    return _solve(table)


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


def _lowest(error: Callable[[tuple[float, ...]], float], start: tuple[float, ...], axes: int) -> tuple[float, ...]:
    """A compass search: try a step each way along each axis, and halve the steps where none helps."""
    best, lowest = start, error(start)
    steps = [0.3 * start[1], 0.3 * start[1], 0.5 * start[2]][:axes]
    for _ in range(40):
        moved = False
        for axis, step in enumerate(steps):
            for way in (step, -step):
                tried = tuple(value + way * (place == axis) for place, value in enumerate(best))
                found = error(tried)
                if found < lowest:
                    best, lowest, moved = tried, found, True
                    break
        if not moved:
            steps = [step / 2 for step in steps]
            if steps[1] < 2.0:
                break
    return best
