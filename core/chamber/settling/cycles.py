"""The compressor seen in the temperature trace: each run, found by hysteresis that noise cannot fool.

A run is counted once its cooling has taken the trace down by a band from where it was, whatever the level: after the
pull-down, and after a defrost, walls are warm and a run ends higher than usual.
Source of the rule: reference rule, Schmitt trigger at the middle ± max(¼ (P90 − P10), 3 σ), times by interpolation at
the middle.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence

from attrs import frozen

from core.chamber.settling.broken_runs import PROBE_IS_LATE_S, bridged
from core.chamber.settling.events import Event
from core.chamber.settling.swing import Swing, Trace, half_band, turns_within

SURELY_AT_THE_FOOT, AT_THE_FOOT, TURNED = 0.06, 0.12, 0.06
"""Of the swing: how near its usual foot a run counts as over at the log's end, or how far the trace must have risen."""
LATELY_S = 300.0


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
    trace: Trace, swing: Swing, events: Sequence[Event] = (), late_s: float = PROBE_IS_LATE_S
) -> tuple[Run, ...]:
    """Every run whose cooling ended within the trace, in order. late_s: for how long the trace then falls on, at its
    pace."""
    values = bridged(trace, swing, events, late_s)
    doors = [event for event in events if event.kind == "door"]
    runs: list[Run] = []
    for first, end in trace.stretches():
        runs += _runs_within(trace, values, swing, half_band(trace, swing), first, end, doors)
    return tuple(runs)


def _runs_within(
    trace: Trace, values: Sequence[float], swing: Swing, half: float, first: int, end: int, doors: Sequence[Event]
) -> Iterator[Run]:
    usual = _level(trace, swing)
    turns = list(turns_within(values, first, end, 2 * half))
    feet = [index for index, is_peak in turns if not is_peak]
    for peak in (index for index, is_peak in turns if is_peak):
        at = bisect_left(feet, peak)
        before = feet[at - 1] if at else first
        trough = feet[at] if at < len(feet) else min(range(peak, end), key=values.__getitem__)
        if at == len(feet) and not _is_over(trace, values, swing, trough, end):
            return
        if values[trough] > swing.middle - half and _is_of_a_door(trace, doors, peak):
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


def _between(usual: float, high: float, low: float, half: float) -> float:
    """Where the crossing is timed: the usual level, or the middle where the trace hardly passes that."""
    return usual if low + half / 2 < usual < high - half / 2 else (low + high) / 2


def _is_of_a_door(trace: Trace, doors: Sequence[Event], peak: int) -> bool:
    """Whether what falls is a door's warm air, which goes by itself."""
    return any(door.starts_s <= trace.times_s[peak] <= door.ends_s for door in doors)


def _level(trace: Trace, swing: Swing) -> float:
    """Where crossings are timed: the middle; of a coarse trace the edge between two steps that is nearest to it."""
    if not trace.is_coarse:
        return swing.middle
    start = trace.values[0]
    return start + (math.floor((swing.middle - start) / trace.step) + 0.5) * trace.step


def _is_over(trace: Trace, values: Sequence[float], swing: Swing, trough: int, end: int) -> bool:
    """Whether the last run ended before the log did: the trace has turned, or stays at its usual foot."""
    if values[end - 1] - values[trough] > max(3 * trace.sigma, TURNED * swing.size, trace.step):
        return True
    if values[trough] <= swing.lower + SURELY_AT_THE_FOOT * swing.size:
        return True
    few = trace.samples(LATELY_S)
    falls = values[max(0, end - 1 - few)] - values[end - 1] > 0.85 * swing.falls_by_s * few * trace.interval_s
    return not falls and values[trough] <= swing.lower + max(AT_THE_FOOT * swing.size, 0.51 * trace.step)


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
