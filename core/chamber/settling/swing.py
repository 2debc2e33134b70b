"""How a trace usually swings: between which levels, how fast up and down, and how far noise reaches into it.

The reference rule takes the levels from percentiles; defrosts and doors lift those, so they only set the scale here and
the levels are read off the turning points. What noise or slow logging hides is refused in words.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from functools import cached_property
from itertools import pairwise

from attrs import frozen

from core.chamber.series import interval_s, stretches
from core.chamber.settling.measures import FINE_DIFFERENCE, LASTS
from core.chamber.settling.short_cycles import without_corners
from core.chamber.settling.trace import noise, percentile, smooth, step, turns_within
from core.quantities import COUNT, Amount
from core.refusals import Refusal
from core.sentence import Message, Rounded, Sentence

FEWEST_A_PERIOD = 8
"""Readings to a cycle that the reference rule needs."""
FEWEST_TO_SEE, FEWEST_OF_STAIRS = 5, 6
"""With so many each run still shows by a foot of its own (seen in simulated chambers)."""
SLOWEST_LOGGING_S = 300.0
"""Compressors that start every ten minutes are common; two readings to such a cycle are the least that shows it."""
SMOOTHED_S = 90.0
WARM_CYCLES = 1.0
"""Of the swing: so far above their usual peak the first cycles may reach."""
COARSE_STEP, FEWEST_STEPS = 0.4, 3
"""A swing of fewer steps than that is lost in them now and then."""

STEP_TO_WANT_K = 0.1
ONE_READING: Message = "There is {count} reading: too few to look for the compressor's cycles."
FEW_READINGS: Message = "There are {count} readings: too few to look for the compressor's cycles."
TOO_SLOW: Message = (
    "Cycles cannot be resolved: a reading every {every} is too slow. Compressors may start every 10 min, and would "
    "then look like slower ones. Log every {slowest} or oftener; every minute is best."
)
TOO_SHORT: Message = (
    "Cycles cannot be resolved: they seem to last {lasts}, and a reading every {every} shows each fewer than {times} "
    "times. Log more often."
)
STEPS_TOO_LARGE: Message = (
    "Runs can neither be counted nor measured: the temperature swings by {size}, and the logger writes steps of "
    "{step}. Log in steps of {wanted}."
)


class CannotSee(Refusal):
    """The trace does not hold what is asked of it."""


@frozen
class Trace:
    """A probe's readings from the foot of the first pull-down (or warm-up) on; smoothed where readings come fast."""

    times_s: tuple[float, ...]
    values: tuple[float, ...]
    smoothed: tuple[float, ...]
    interval_s: float
    sigma: float
    step: float
    comes_down: bool

    @property
    def is_coarse(self) -> bool:
        """Whether the logger's step hides all noise: a trace of stairs."""
        return self.step >= COARSE_STEP

    @property
    def smoothed_s(self) -> float:
        """How long a smoothed value is the mean of, beyond a reading."""
        return (width_of(self.interval_s) - 1) * self.interval_s

    @cached_property
    def parts(self) -> list[tuple[int, int]]:
        """Between gaps: first index and one past the last."""
        return stretches(self.times_s, self.interval_s)

    def at(self, at_s: float) -> float:
        """The smoothed trace, straight between its readings."""
        after = min(max(1, bisect_left(self.times_s, at_s)), len(self.times_s) - 1)
        before_s, after_s = self.times_s[after - 1 : after + 1]
        share = min(1.0, max(0.0, (at_s - before_s) / (after_s - before_s)))
        return self.smoothed[after - 1] + share * (self.smoothed[after] - self.smoothed[after - 1])

    def stretches(self) -> list[tuple[int, int]]:
        """The parts that something can be seen in."""
        return [(first, end) for first, end in self.parts if end - first > 2]

    def samples(self, lasts_s: float, least: int = 1) -> int:
        return max(least, round(lasts_s / self.interval_s))


@frozen
class Swing:
    """The usual turning levels, the noise, and the usual speeds in the trace's unit a second, both above 0.

    turns: index of each turning point, and whether it is a peak.
    """

    upper: float
    lower: float
    rising_s: float
    falling_s: float
    rises_by_s: float
    falls_by_s: float
    turns: tuple[tuple[int, bool], ...] = ()

    @property
    def size(self) -> float:
        return self.upper - self.lower

    @property
    def middle(self) -> float:
        return (self.upper + self.lower) / 2

    @property
    def period_s(self) -> float:
        return self.rising_s + self.falling_s


def trace_of(times_s: Sequence[float], values: Sequence[float]) -> Trace:
    """From the first reading at the usual level on: what comes before is the chamber on its way there."""
    if len(times_s) < 2 * FEWEST_A_PERIOD:
        raise CannotSee("log", Sentence(ONE_READING, {"count": Amount(len(times_s), COUNT)}, plural=FEW_READINGS))
    first = arrives_at(values)
    if len(times_s) - first < 2 * FEWEST_A_PERIOD:
        raise CannotSee("log", "The trace reaches its usual level only at its end: let it run on.")
    comes_down = first > 0 and values[0] > values[first]
    if comes_down:
        first = _cycles_from(values, first)
    times_s, values = tuple(times_s[first:]), tuple(values[first:])
    usual_s = interval_s(times_s)
    width = width_of(usual_s)
    smoothed: list[float] = []
    for start, end in stretches(times_s, usual_s):
        smoothed += smooth(values[start:end], width)
    step_k = step(values)
    sigma = without_corners(sigma_of(values, step_k), values, step_k)
    return Trace(times_s, values, tuple(smoothed), usual_s, sigma, step_k, comes_down)


def width_of(interval_s: float) -> int:
    """Readings to a smoothed value."""
    return math.floor(SMOOTHED_S / interval_s) // 2 * 2 + 1


def sigma_of(values: Sequence[float], step_k: float) -> float:
    """Noise of single readings; where all that is seen is the logger's own step, no more than that step accounts for.

    Rounding alone leaves step ÷ √12; a median of second differences can only be a whole number of steps.
    """
    sigma = noise(values)
    return min(sigma, step_k / math.sqrt(12)) if sigma < 0.62 * step_k else sigma


def usual_swing(trace: Trace) -> Swing:
    """Raises CannotSee where the trace is logged too slowly, is all noise, or shows fewer than three cycles."""
    if trace.interval_s > SLOWEST_LOGGING_S * 1.01:
        slow = {"every": Rounded(Amount(trace.interval_s, LASTS), 3), "slowest": Amount(SLOWEST_LOGGING_S, LASTS)}
        raise CannotSee("log", Sentence(TOO_SLOW, slow))
    ordered = sorted(trace.values)
    spread = percentile(ordered, 0.9) - percentile(ordered, 0.1)
    if 3 * trace.sigma >= spread / 2 or spread <= 0:
        raise CannotSee(
            "log",
            "Cycles cannot be resolved: the readings jump about as far from one to the next as they do in all. Either "
            "the temperature hardly moves, or it was logged too slowly or with too much noise to follow.",
        )
    below_middle = percentile(ordered, 0.5) - percentile(ordered, 0.1)
    least = max(0.5 * min(spread, 2 * below_middle), 4 * trace.sigma, 1.01 * trace.step)
    swing = _swing_of(trace, list(_turns(trace, least)))
    fewest = FEWEST_OF_STAIRS if trace.is_coarse else FEWEST_TO_SEE
    if swing.period_s < fewest * trace.interval_s:
        lasts, every = (Rounded(Amount(each_s, LASTS), 3) for each_s in (swing.period_s, trace.interval_s))
        raise CannotSee("log", Sentence(TOO_SHORT, {"lasts": lasts, "every": every, "times": str(fewest)}))
    return swing


def require_steps(trace: Trace, swing: Swing) -> None:
    """Raises CannotSee where the logger's step now and then hides a whole cycle, or the swing hardly passes one."""
    if trace.is_coarse and swing.size < FEWEST_STEPS * trace.step - 1e-9:
        size, step_k, wanted = (
            Rounded(Amount(each_k, FINE_DIFFERENCE), 3) for each_k in (swing.size, trace.step, STEP_TO_WANT_K)
        )
        raise CannotSee("log", Sentence(STEPS_TOO_LARGE, {"size": size, "step": step_k, "wanted": wanted}))


def half_band(trace: Trace, swing: Swing, part: float = 1.0) -> float:
    """How far from the middle the trace must go before it counts, or a part of that.

    Source: reference rule, max(¼ (P90 − P10), 3 σ); of a saw-tooth, P90 − P10 is 0.8 of the swing.
    """
    return part * max(0.2 * swing.size, 3 * trace.sigma, 0.51 * trace.step)


def _swing_of(trace: Trace, turns: Sequence[tuple[int, bool]]) -> Swing:
    peaks = sorted(trace.smoothed[index] for index, is_peak in turns if is_peak)
    troughs = sorted(trace.smoothed[index] for index, is_peak in turns if not is_peak)
    if len(peaks) < 3 or len(troughs) < 3:
        raise CannotSee("log", "Fewer than three cycles are in the trace: let it run on, or look at more of it.")
    rising_s, falling_s = (_usual_leg_s(trace, turns, from_peak) for from_peak in (False, True))
    upper = percentile(peaks, 0.25)  # defrosts and doors only ever lift a peak
    lower = percentile(troughs, 0.5)
    return Swing(
        upper, lower, rising_s, falling_s, (upper - lower) / rising_s, (upper - lower) / falling_s, tuple(turns)
    )


def _usual_leg_s(trace: Trace, turns: Sequence[tuple[int, bool]], from_peak: bool) -> float:
    """Half are longer. Across a gap two peaks may be neighbours: that is no leg."""
    legs_s = [
        trace.times_s[after] - trace.times_s[here]
        for (here, is_peak), (after, is_next_peak) in pairwise(turns)
        if is_peak is from_peak and is_next_peak is not from_peak
    ]
    if not legs_s:
        raise CannotSee("log", "Fewer than three cycles are in the trace: let it run on, or look at more of it.")
    return percentile(sorted(legs_s), 0.5)


def _turns(trace: Trace, least: float) -> Iterator[tuple[int, bool]]:
    """Turning points between which the trace moves by `least` or more: index, and whether it is a peak."""
    for first, end in trace.stretches():
        yield from turns_within(trace.smoothed, first, end, least)


def arrives_at(values: Sequence[float]) -> int:
    """Index of the first reading at the usual level, from whichever side the trace comes."""
    usual = sorted(values)[len(values) // 2]
    if values[0] >= usual:
        return next(index for index, value in enumerate(values) if value <= usual)
    return next(index for index, value in enumerate(values) if value >= usual)


def _cycles_from(values: Sequence[float], arrives: int) -> int:
    """From where the trace is within a swing of its usual level: while walls are warm the first cycles lie above it."""
    ordered = sorted(values[arrives:])
    most = percentile(ordered, 0.9) + WARM_CYCLES * (percentile(ordered, 0.9) - percentile(ordered, 0.1))
    first = arrives
    while first > 0 and values[first - 1] <= most:
        first -= 1
    return first
