"""Whether the compressor ran when a door was opened: else its warm air would make one run two, or two runs one.

Coil and probe answer late: when a run ends, the trace falls on at its pace before it turns at its foot. For how long is
known from the other runs, once they have been timed.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.swing import Swing, Trace, half_band
from core.chamber.settling.trace import percentile

PROBE_IS_LATE_S = 150.0
"""A probe in moving air follows in one to four minutes, and the coil cools on for as long."""
AS_LOW = 0.04
LEAST_PART = 0.1
"""Of the swing: who has fallen by less has hardly begun."""
SLOPE_S, DOUBTFUL_S = 240.0, 30.0
NEIGHBOURS = 11
"""Turns on either side: five runs."""


def bridged(trace: Trace, swing: Swing, events: Sequence[Event], late_s: float) -> Sequence[float]:
    """The trace as the compressor alone would have left it, where a door or a defrost hides how a run ended."""
    if not events:
        return trace.smoothed
    low = swing.middle - half_band(trace, swing)
    values = list(trace.smoothed)
    index_at = {at_s: index for index, at_s in enumerate(trace.times_s)}
    moved_until = 0
    for event in events:
        foot, top = index_at[event.starts_s], index_at[event.top_s]
        if event.kind == "defrost":
            if _fell_before(trace, swing, moved_until, foot):
                values[foot] = min(values[foot], low)
        elif _broken(trace, swing, foot, late_s).is_cooling:
            _level_out(values, foot, top, low)
        moved_until = index_at[event.ends_s]
    return values


def are_doubtful(trace: Trace, swing: Swing, events: Sequence[Event], late_s: float) -> bool:
    """Whether a door was opened just as a run ended: then one may be counted for two, or two for one."""
    doors = (event for event in events if event.kind == "door")
    return any(_broken(trace, swing, bisect_left(trace.times_s, door.starts_s), late_s).is_doubtful for door in doors)


def _fell_before(trace: Trace, swing: Swing, after: int, foot: int) -> bool:
    """Whether a run ended where the defrost began: the compressor rests then, however far the trace had come down."""
    before = max(min(after, foot), foot - trace.samples(1.2 * swing.falling_s, 2))
    return max(trace.smoothed[before : foot + 1]) - trace.smoothed[foot] > max(0.4 * swing.size, 3 * trace.sigma)


def _level_out(values: list[float], foot: int, top: int, low: float) -> None:
    """Without the warm air of a door that was opened near the end of a run: it stays one run."""
    index, low = foot, max(low, values[foot])
    while index < len(values) and (index <= top or values[index] > low):
        values[index] = values[foot]
        index += 1


@frozen
class _Broken:
    """is_cooling: whether the compressor ran. is_doubtful: whether it stopped at about the same time."""

    is_cooling: bool
    is_doubtful: bool


def _broken(trace: Trace, swing: Swing, foot: int, late_s: float) -> _Broken:
    """Whether the trace was on its way down from a peak, too high for a run that had ended."""
    values = trace.smoothed
    at = bisect_left(swing.turns, (foot, False))
    if at and _is_its_own_foot(trace, swing, at - 1, foot):
        at -= 1
    since = swing.turns[at - 1][0] if at else 0
    peak = max(range(since, foot + 1), key=values.__getitem__)
    if values[peak] - values[foot] < max(3 * trace.sigma, LEAST_PART * swing.size):
        return _Broken(False, False)
    lowest = min(range(peak, foot + 1), key=values.__getitem__)
    by_s = falls_by_s(trace, swing, peak, lowest)
    falls_on_s = late_s + (trace.interval_s + trace.smoothed_s) / 4  # the door was opened some time after the foot
    higher_k = values[lowest] - by_s * falls_on_s - _usual_foot(trace, swing, at)
    fell_k = max(values[peak : foot + 1]) - values[lowest]
    is_doubtful = abs(higher_k) < DOUBTFUL_S * by_s + trace.sigma and fell_k >= 2 * half_band(trace, swing)
    return _Broken(higher_k > 0, is_doubtful)


def _is_its_own_foot(trace: Trace, swing: Swing, turn: int, foot: int) -> bool:
    """Whether the turn is the door's foot, or as low, and not one that the trace has risen from."""
    index, is_peak = swing.turns[turn]
    return not is_peak and trace.smoothed[foot] - trace.smoothed[index] < max(2 * trace.sigma, AS_LOW * swing.size)


def falls_by_s(trace: Trace, swing: Swing, first: int, at: int) -> float:
    """How fast the trace falls there; of stairs only the usual pace is known."""
    before = max(first, at - trace.samples(SLOPE_S))
    if trace.is_coarse or before == at:
        return swing.falls_by_s
    fell = trace.smoothed[before] - trace.smoothed[at]
    return max(0.0, fell / (trace.times_s[at] - trace.times_s[before]))


def _usual_foot(trace: Trace, swing: Swing, at: int) -> float:
    near = swing.turns[max(0, at - NEIGHBOURS) : at + NEIGHBOURS]
    return percentile(sorted(trace.smoothed[index] for index, is_peak in near if not is_peak), 0.5)
