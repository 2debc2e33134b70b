"""The mean of many runs, or holds, laid over one another: finer in time than the logger, quieter than a single one.

Coil and probe answer late and blur both turning points, so that a run read off the lowest and highest reading comes out
too long. Where air and wall are apart, the air besides leaps after each turn before it goes on with the wall. What a
chamber does after its compressor starts, it does with the other sign after it stops. So both turns are fitted with one
answer: a ramp and, where it shows, a leap with a time constant of its own, blurred by the same two lags in series. What
the answer is like hardly matters then: it is the same at both turns and drops out of the time between.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from math import exp
from operator import mul, sub

from attrs import frozen

from core.chamber.settling.swing import Trace
from core.chamber.settling.trace import percentile

BINS = 22
"""Around each turn."""
USUAL_LAG_S, USUAL_LEAP_S = 100.0, 400.0
SHORTEST_LAG_S, SHORTEST_LEG_S = 5.0, 60.0
LEAP_IN_LAGS, LONGEST_LEAP_S = 1.3, 1800.0
MOST_LEGS = 60
WIDEST_S = 1500.0
"""Before and after a turn: so long its answer shows, and a leg is still straight."""
SURELY = 12.0
"""A leap is taken for real where it takes that many times the mean square out of what is left (an F-test)."""
MODEL_IS_OFF, LEAP_IS_OFF, UNSURE = 0.03, 0.08, 0.15
"""Of the leg: the answer is not quite the chamber's, least so with a leap; or the fit has no clear lowest place."""
AS_NOISY = 1.5
"""What is left over is noise, up to so much: then there is no leap to be sought."""
MOST_STEPS, FINEST_S = 120, 4.0
PARTS = (1.0, 0.7, 0.4, 0.15)
Place = tuple[float, ...]
"""First turn, how long the leg lasts, the lag, the leap's time constant: all in seconds."""
Column = list[float]


@frozen
class Leg:
    """A run, or a hold, once: where it begins, where it passes the middle, where it ends."""

    begins_s: float
    middle_s: float
    ends_s: float


@frozen
class Look:
    """Around the middle of the legs: where the first turn is, about, and the second; how far to look around each."""

    first_s: float
    last_s: float
    outside_s: float
    inside_s: float

    @property
    def is_one(self) -> bool:
        """Whether the turns are so near that the first one's answer is still going on at the second."""
        return self.first_s + self.inside_s >= self.last_s - self.inside_s

    @property
    def before_s(self) -> float:
        return self.outside_s - self.first_s

    @property
    def after_s(self) -> float:
        return self.last_s + self.outside_s


@frozen
class MeanLeg:
    """begins_s: from when on, counted from its middle. lasts_s: how long, give or take give_s."""

    begins_s: float
    lasts_s: float
    give_s: float


@frozen
class _Piece:
    """Bins as columns, each scaled by the root of its weight. turns: those that show in it, as places in the leg."""

    times_s: Column
    roots: Column
    known: tuple[Column, Column]
    rest: Column
    turns: tuple[int, ...]


def look_around(legs: Sequence[Leg], longer_s: float, share: float) -> Look:
    """share: of the longer legs beside them, so much is looked at."""
    first_s = -percentile(sorted(leg.middle_s - leg.begins_s for leg in legs), 0.5)
    last_s = percentile(sorted(leg.ends_s - leg.middle_s for leg in legs), 0.5)
    return Look(first_s, last_s, min(WIDEST_S, share * longer_s), min(WIDEST_S, 0.5 * (last_s - first_s)))


def mean_leg(trace: Trace, legs: Sequence[Leg], look: Look) -> MeanLeg:
    pieces = list(_pieces(trace, legs, look))
    start = _start(pieces, look)
    if trace.is_coarse:
        best, left = _lowest(lambda at: _misfit(pieces, (*at, USUAL_LAG_S, None)), start[:2])
        return MeanLeg(best[0], best[1], 0.0)
    plain, left = _lowest(lambda at: _misfit(pieces, (*at, None)), start)
    free = max(1, sum(len(piece.times_s) for piece in pieces) - 9)
    leaping, less = (*plain, USUAL_LEAP_S), left
    if left / free > AS_NOISY * (trace.sigma**2 + trace.step**2 / 12):
        leaping, less = _lowest(lambda at: _misfit(pieces, at), leaping)
    if left - less > SURELY * less / free:
        give_s = _give_s(lambda at: _misfit(pieces, (*at, leaping[3])), leaping[:3], less / free)
        return MeanLeg(leaping[0], leaping[1], give_s + LEAP_IS_OFF * leaping[1])
    give_s = _give_s(lambda at: _misfit(pieces, (*at, None)), plain, left / free)
    return MeanLeg(plain[0], plain[1], give_s + MODEL_IS_OFF * plain[1])


def _start(pieces: Sequence[_Piece], look: Look) -> Place:
    """The best of some: turns lie about where the trace is seen to turn, or nearer to the middle."""
    some = [
        (first * look.first_s, max(SHORTEST_LEG_S, last * look.last_s - first * look.first_s), USUAL_LAG_S)
        for first in PARTS
        for last in PARTS
    ]
    return min(some, key=lambda at: _misfit(pieces, (*at, None)))


def _give_s(error: Callable[[Place], float], best: Place, square: float) -> float:
    """Two standard errors of how long the leg lasts: from how fast the misfit grows around its lowest place.

    square: of the noise, as it is left over. The lag is left out where it is as short as can be.
    """
    steps = [max(FINEST_S, part * each) for part, each in ((0.05, best[1]), (0.05, best[1]), (0.2, best[2]))]
    axes = (0, 1, 2) if best[2] - steps[2] > SHORTEST_LAG_S else (0, 1)
    lowest = error(best)

    def at(*moves: tuple[int, float]) -> float:
        place = best
        for axis, way in moves:
            place = _moved(place, axis, way * steps[axis])
        return error(place)

    curves = [[0.0] * len(axes) for _ in axes]
    for one in axes:
        curves[one][one] = at((one, 1)) + at((one, -1)) - 2 * lowest
        for other in axes[:one]:
            mixed = at((one, 1), (other, 1)) + at((one, -1), (other, -1)) - at((one, 1), (other, -1))
            curves[one][other] = curves[other][one] = (mixed - at((one, -1), (other, 1))) / 4
    inverse = _inverse_of(curves, 1)
    return 2 * steps[1] * math.sqrt(2 * square * inverse) if 0 < inverse < math.inf else UNSURE * best[1]


def _inverse_of(square: list[list[float]], place: int) -> float:
    """That place on the diagonal of the inverse: the minor without it, by the determinant."""
    whole = _determinant(square)
    rest = [[value for at, value in enumerate(row) if at != place] for at, row in enumerate(square) if at != place]
    return _determinant(rest) / whole if whole > 0 and math.isfinite(whole) else math.inf


def _determinant(square: list[list[float]]) -> float:
    if len(square) == 1:
        return square[0][0]
    rest = square[1:]
    return sum(
        (-1) ** at * value * _determinant([row[:at] + row[at + 1 :] for row in rest])
        for at, value in enumerate(square[0])
    )


def _pieces(trace: Trace, legs: Sequence[Leg], look: Look) -> Iterator[_Piece]:
    if look.is_one:
        yield _piece(trace, legs, -look.before_s, look.after_s, 2 * BINS, (0, 1))
    else:
        yield _piece(trace, legs, -look.before_s, look.first_s + look.inside_s, BINS, (0,))
        yield _piece(trace, legs, look.last_s - look.inside_s, look.after_s, BINS, (1,))


def _piece(
    trace: Trace, legs: Sequence[Leg], from_s: float, until_s: float, bins: int, turns: tuple[int, ...]
) -> _Piece:
    width_s = (until_s - from_s) / bins
    sums, times, counts = [0.0] * bins, [0.0] * bins, [0] * bins
    for leg in legs[:: 1 + len(legs) // MOST_LEGS]:
        first = bisect_left(trace.times_s, leg.middle_s + from_s)
        end = bisect_left(trace.times_s, leg.middle_s + until_s)
        for at_s, value in points(trace, first, end):
            since_s = at_s - leg.middle_s
            place = min(bins - 1, int((since_s - from_s) / width_s))
            sums[place] += value
            times[place] += since_s
            counts[place] += 1
    filled = [place for place in range(bins) if counts[place]]
    times_s = [times[place] / counts[place] for place in filled]
    roots = [math.sqrt(counts[place]) for place in filled]
    level = _unit(roots, [])
    slope = _unit(list(map(mul, times_s, roots)), [level])
    rest = [sums[place] / root for place, root in zip(filled, roots, strict=True)]
    return _Piece(times_s, roots, (level, slope), _without(_without(rest, level), slope), turns)


def points(trace: Trace, first: int, end: int) -> Iterable[tuple[float, float]]:
    """The readings; of a coarse trace only where it steps: there, and nowhere else, is the temperature known."""
    times_s, values = trace.times_s[first:end], trace.values[first:end]
    if not trace.is_coarse:
        return zip(times_s, values, strict=True)
    both = zip(pairwise(times_s), pairwise(values), strict=True)
    return [((start + stop) / 2, (low + high) / 2) for (start, stop), (low, high) in both if low != high]


def _blurred_ramp(times_s: Column, begins_s: float, lag_s: float) -> Column:
    """What two equal lags in series make of a ramp."""
    both_s = 2 * lag_s
    return [
        since_s - both_s + (since_s + both_s) * exp(-since_s / lag_s) if since_s > 0 else 0.0
        for since_s in [at_s - begins_s for at_s in times_s]
    ]


def _blurred_leap(times_s: Column, begins_s: float, lag_s: float, leap_s: float) -> Column:
    """What they make of a leap, from 0 to 1, with a time constant longer than theirs."""
    slow = (leap_s / (leap_s - lag_s)) ** 2
    by_s = slow / leap_s + (1 - slow) / lag_s
    return [
        1 - slow * exp(-since_s / leap_s) - (1 - slow + by_s * since_s) * exp(-since_s / lag_s) if since_s > 0 else 0.0
        for since_s in [at_s - begins_s for at_s in times_s]
    ]


def _misfit(pieces: Sequence[_Piece], at: tuple[float | None, ...]) -> float:
    """Square of what is left over when each piece has its level, its slope and its ramps, and all one leap."""
    begins_s, lasts_s, lag_s, leap_s = at
    assert begins_s is not None
    assert lasts_s is not None
    assert lag_s is not None
    if (
        lag_s < SHORTEST_LAG_S
        or lasts_s < SHORTEST_LEG_S
        or (leap_s and not LEAP_IN_LAGS * lag_s <= leap_s <= LONGEST_LEAP_S)
    ):
        return math.inf
    left: Column = []
    leaps: Column = []
    for piece in pieces:
        known, rest = list(piece.known), piece.rest
        leap = [0.0] * len(rest)
        for turn in piece.turns:
            turns_s = begins_s + turn * lasts_s
            ramp = _unit(list(map(mul, _blurred_ramp(piece.times_s, turns_s, lag_s), piece.roots)), known)
            known.append(ramp)
            rest = _without(rest, ramp)
            if leap_s:
                one = map(mul, _blurred_leap(piece.times_s, turns_s, lag_s, leap_s), piece.roots)
                leap = list(map(sub, leap, one)) if turn else list(one)
        for column in known if leap_s else ():
            leap = _without(leap, column)
        left += rest
        leaps += leap
    if leap_s:
        left = _without(left, _unit(leaps, []))
    return _times(left, left)


def _unit(column: Column, known: Sequence[Column]) -> Column:
    """Of length one, and at right angles to the columns known: Gram and Schmidt's way to least squares."""
    for other in known:
        column = _without(column, other)
    length = math.sqrt(_times(column, column))
    return [value / length for value in column] if length > 1e-9 else [0.0] * len(column)


def _without(column: Column, unit: Column) -> Column:
    share = _times(column, unit)
    return [value - share * part for value, part in zip(column, unit, strict=True)]


def _times(one: Column, other: Column) -> float:
    return sum(map(mul, one, other))


def _lowest(error: Callable[[Place], float], start: Place) -> tuple[Place, float]:
    """A compass search: try a step each way along each axis, and halve the steps where none helps."""
    best, lowest = start, error(start)
    steps = [0.2 * start[1], 0.2 * start[1], *(0.5 * each for each in start[2:])]
    for _ in range(MOST_STEPS):
        tried = [_moved(best, axis, way) for axis, step in enumerate(steps) for way in (step, -step)]
        at, found = _first_below(error, tried, lowest) or (best, lowest)
        if found < lowest:
            best, lowest = at, found
        elif steps[1] < FINEST_S:
            break
        else:
            steps = [step / 2 for step in steps]
    return best, lowest


def _first_below(error: Callable[[Place], float], tried: Sequence[Place], lowest: float) -> tuple[Place, float] | None:
    for at in tried:
        found = error(at)
        if found < lowest:
            return at, found
    return None


def _moved(at: Place, axis: int, way: float) -> Place:
    return tuple(value + way if place == axis else value for place, value in enumerate(at))
