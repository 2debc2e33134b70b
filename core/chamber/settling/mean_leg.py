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
from math import exp
from operator import mul

from attrs import frozen

from core.chamber.settling.swing import Trace
from core.chamber.settling.trace import percentile

BINS = 48
USUAL_LAG_S = 100.0
SHORTEST_LAG_S, SHORTEST_LEG_S = 5.0, 60.0
MOST_LEGS = 60
LONG_LEG_S = 1500.0
MOST_STEPS, FINEST_S = 100, 4.0
Place = tuple[float, ...]
"""When the leg begins, how long it lasts, the lag: all in seconds."""
Column = list[float]


@frozen
class _Bin:
    at_s: float
    value: float
    weight: float


@frozen
class _Stack:
    """Bins as columns, each scaled by the root of its weight. known: level and slope. rest: the values without them."""

    times_s: Column
    roots: Column
    known: tuple[Column, Column]
    rest: Column


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


def leg_lasts(trace: Trace, legs: Sequence[Leg], look: Look, guess_s: float) -> float:
    """How long the mean leg lasts, in seconds. guess_s: to begin the search with."""
    stack = _stack_of(_stacked(trace, legs, look))
    axes = 2 if trace.is_coarse else 3
    terms = 3 if guess_s > LONG_LEG_S and not trace.is_coarse else 2

    def error(at: Place) -> float:
        begins_s, lasts_s, lag_s = at
        return (
            math.inf
            if lag_s < SHORTEST_LAG_S or lasts_s < SHORTEST_LEG_S
            else _misfit(stack, terms, begins_s, lasts_s, lag_s)
        )

    return _lowest(error, (-guess_s / 2, guess_s, USUAL_LAG_S), axes)[1]


def _stacked(trace: Trace, legs: Sequence[Leg], look: Look) -> list[_Bin]:
    width_s = (look.before_s + look.after_s) / BINS
    sums, times, counts = [0.0] * BINS, [0.0] * BINS, [0] * BINS
    for leg in legs[:: 1 + len(legs) // MOST_LEGS]:
        first = bisect_left(trace.times_s, leg.middle_s - look.before_s)
        end = bisect_left(trace.times_s, leg.middle_s + look.after_s)
        for at_s, value in points(trace, first, end):
            since_s = at_s - leg.middle_s
            place = max(0, min(BINS - 1, int((since_s + look.before_s) / width_s)))
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


def _blurred_ramp(times_s: Column, begins_s: float, lag_s: float) -> Column:
    """What two equal lags in series make of a ramp."""
    since_begun_s = [at_s - begins_s for at_s in times_s]
    both_s = 2 * lag_s
    return [
        since_s - both_s + (since_s + both_s) * exp(-since_s / lag_s) if since_s > 0 else 0.0
        for since_s in since_begun_s
    ]


def _misfit(stack: _Stack, terms: int, begins_s: float, lasts_s: float, lag_s: float) -> float:
    """Square of what is left over when level, slope, first turn, second turn and (third term) slowing are fitted."""
    begun = _blurred_ramp(stack.times_s, begins_s, lag_s)
    ended = _blurred_ramp(stack.times_s, begins_s + lasts_s, lag_s)
    slowing = [(one - other) ** 2 for one, other in zip(begun, ended, strict=True)] if terms > 2 else []
    rest, known = stack.rest, list(stack.known)
    for column in (begun, ended, slowing)[:terms]:
        known.append(_unit(map(mul, column, stack.roots), known))
        rest = _without(rest, known[-1])
    return _times(rest, rest)


def _stack_of(bins: Sequence[_Bin]) -> _Stack:
    times_s, roots = [each.at_s for each in bins], [math.sqrt(each.weight) for each in bins]
    level = _unit(roots, [])
    slope = _unit(map(mul, times_s, roots), [level])
    rest = list(map(mul, (each.value for each in bins), roots))
    return _Stack(times_s, roots, (level, slope), _without(_without(rest, level), slope))


def _unit(column: Iterable[float], known: Sequence[Column]) -> Column:
    """Of length one, and at right angles to the columns known: Gram and Schmidt's way to least squares."""
    left = list(column)
    for other in known:
        left = _without(left, other)
    length = math.sqrt(_times(left, left))
    return [value / length for value in left] if length > 1e-9 else [0.0] * len(left)


def _without(column: Column, unit: Column) -> Column:
    share = _times(column, unit)
    return [value - share * part for value, part in zip(column, unit, strict=True)]


def _times(one: Column, other: Column) -> float:
    return sum(map(mul, one, other))


def _lowest(error: Callable[[Place], float], start: Place, axes: int) -> Place:
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


def _first_below(error: Callable[[Place], float], tried: Sequence[Place], lowest: float) -> tuple[Place, float] | None:
    for at in tried:
        found = error(at)
        if found < lowest:
            return at, found
    return None


def _moved(at: Place, axis: int, way: float) -> Place:
    return tuple(value + way if place == axis else value for place, value in enumerate(at))
