"""The compressor seen in the temperature trace: each run, found by hysteresis that noise cannot fool.

A run is counted once its cooling has taken the trace down by a band from where it was, whatever the level: after the
pull-down, and after a defrost, walls are warm and a run ends higher than usual.
Source of the rule: reference rule, Schmitt trigger at the middle ± max(¼ (P90 − P10), 3 σ), times by interpolation at
the middle.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence

from attrs import frozen

from core.chamber.settling.broken_runs import NOTHING, PROBE_IS_LATE_S, bridged, broken, ran_on
from core.chamber.settling.events import Event
from core.chamber.settling.holes import parts_seen
from core.chamber.settling.swing import Swing, Trace, half_band
from core.chamber.settling.trace import turns_within

TURNED = 0.06
"""Of the swing: how far the trace must have risen at the log's end for a run to be over."""
AS_LOW = 0.1
"""Of the swing: so little above the usual foot the last one may be."""
LATELY_S = 300.0
FEWEST_FEET = 5
"""With fewer there is no telling which is the usual one."""


@frozen
class Run:
    """One compressor run. Crossings of the middle, upwards before and downwards in the run, and its turning points."""

    rises_s: float
    falls_s: float
    peak_s: float
    peak_c: float
    trough_s: float
    trough_c: float


def find_runs(
    trace: Trace,
    swing: Swing,
    events: Sequence[Event] = (),
    late_s: float = PROBE_IS_LATE_S,
    ran: Mapping[Event, bool] = NOTHING,
    part: float = 1.0,
) -> tuple[Run, ...]:
    """Every run whose cooling ended within the trace, in order. late_s: for how long the trace then falls on, at its
    pace. ran: as in `bridged`. part: of the band, to see whether it matters."""
    values = bridged(trace, swing, events, late_s, ran)
    runs: list[Run] = []
    for first, end in parts_seen(trace, swing):
        runs += _runs_within(trace, values, swing, (first, end), events, late_s, part)
    return tuple(runs)


def _runs_within(
    trace: Trace,
    values: Sequence[float],
    swing: Swing,
    within: tuple[int, int],
    events: Sequence[Event],
    late_s: float,
    part: float,
) -> Iterator[Run]:
    first, end = within
    usual, half = _level(trace, swing), half_band(trace, swing, part)
    turns = _whole(trace, values, swing, list(turns_within(values, first, end, 2 * half)), events, late_s)
    feet = [index for index, is_peak in turns if not is_peak]
    for peak in (index for index, is_peak in turns if is_peak):
        at = bisect_left(feet, peak)
        before = feet[at - 1] if at else first
        trough = feet[at] if at < len(feet) else min(range(peak, end), key=values.__getitem__)
        if at == len(feet) and not _is_over(trace, values, swing, trough, end, late_s):
            return
        if values[trough] > swing.middle - half and _is_of_a_door(trace, events, peak):
            continue
        falls_at, rises_at = (_between(usual, values[peak], values[foot], half) for foot in (trough, before))
        yield Run(
            rises_s=_crosses(trace.times_s, values, rises_at, peak, before),
            falls_s=_crosses(trace.times_s, values, falls_at, trough, peak),
            peak_s=trace.times_s[peak],
            peak_c=values[peak],
            trough_s=trace.times_s[trough],
            trough_c=values[trough],
        )


def _whole(
    trace: Trace,
    values: Sequence[float],
    swing: Swing,
    turns: list[tuple[int, bool]],
    events: Sequence[Event],
    late_s: float,
) -> list[tuple[int, bool]]:
    """Without the feet at which the compressor ran on, and the peaks after them: a door's, if a small one, or one
    that was opened while a defrost's warm air was being cooled."""
    feet = [index for index, is_peak in turns if not is_peak]
    if len(feet) < FEWEST_FEET:
        return turns
    gone: set[int] = set()
    for place, (foot, is_peak) in enumerate(turns):
        if is_peak or place == len(turns) - 1 or _begins_a_defrost(trace, events, foot):
            continue
        if ran_on(trace, swing, values, feet, bisect_left(feet, foot), late_s):
            gone |= {place, place + 1}
    return [turn for place, turn in enumerate(turns) if place not in gone]


def _between(usual: float, high: float, low: float, half: float) -> float:
    """Where the crossing is timed: the usual level, or the middle where the trace hardly passes that."""
    return usual if low + half / 2 < usual < high - half / 2 else (low + high) / 2


def _begins_a_defrost(trace: Trace, events: Sequence[Event], foot: int) -> bool:
    """Then the compressor rests, however far the trace has come down."""
    at_s = trace.times_s[foot]
    return any(event.kind == "defrost" and abs(event.onset_s - at_s) <= 2 * LATELY_S for event in events)


def _is_of_a_door(trace: Trace, events: Sequence[Event], peak: int) -> bool:
    """Whether what falls is a door's warm air, which goes by itself."""
    at_s = trace.times_s[peak]
    return any(event.kind == "door" and event.starts_s <= at_s <= event.ends_s for event in events)


def _level(trace: Trace, swing: Swing) -> float:
    """Where crossings are timed: the middle; of a coarse trace the edge between two steps that is nearest to it."""
    if not trace.is_coarse:
        return swing.middle
    start = trace.values[0]
    return start + (math.floor((swing.middle - start) / trace.step) + 0.5) * trace.step


def may_be_over(trace: Trace, swing: Swing, late_s: float) -> bool:
    """Whether the log ends just as a run does, and noise hides for how long: then one more may have been there."""
    values = trace.smoothed
    for first, end in trace.stretches()[-1:]:
        turns = list(turns_within(values, first, end, 2 * half_band(trace, swing)))
        if turns and turns[-1][1]:
            trough = min(range(turns[-1][0], end), key=values.__getitem__)
            last = broken(trace, swing, end - 1, late_s)
            return not _has_turned(trace, values, swing, trough, end) and last.is_doubtful and last.is_noise
    return False


def _is_over(trace: Trace, values: Sequence[float], swing: Swing, trough: int, end: int, late_s: float) -> bool:
    """Whether the last run ended before the log did: the trace has turned, or is lower than within a run."""
    last = broken(trace, swing, end - 1, late_s)
    return _has_turned(trace, values, swing, trough, end) or last.higher_k < -last.unsure_k


def _has_turned(trace: Trace, values: Sequence[float], swing: Swing, trough: int, end: int) -> bool:
    last = max(trough, end - 1 - trace.samples(trace.smoothed_s / 2, 0))  # the very ends are smoothed less
    if trace.is_coarse and _stayed(values, swing, trough) and values[last] > values[trough]:
        return True
    return values[last] - values[trough] > max(3 * trace.sigma, TURNED * swing.size, 1.01 * trace.step)


def _stayed(values: Sequence[float], swing: Swing, trough: int) -> bool:
    """Whether a foot of stairs is as low as usual for two readings: no flicker between two steps."""
    is_low = values[trough] <= swing.lower + AS_LOW * swing.size
    return is_low and trough + 1 < len(values) and values[trough + 1] <= values[trough]


def _crosses(times_s: Sequence[float], values: Sequence[float], level: float, at: int, first: int) -> float:
    """The last time up to `at` at which the trace crossed the level."""
    side = values[at] > level
    index = at
    while index > first and (values[index - 1] > level) == side:
        index -= 1
    if index == first:
        return times_s[first]
    before, here = values[index - 1], values[index]
    return times_s[index - 1] + (times_s[index] - times_s[index - 1]) * (level - before) / (here - before)
