"""Whether the compressor ran when a door was opened: else its warm air would make one run two, or two runs one.

Coil and probe answer late: when a run ends, the trace falls on at its pace before it turns at its foot. For how long is
known from the other runs, once they have been timed.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Mapping, Sequence

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.swing import Swing, Trace, half_band
from core.chamber.settling.trace import percentile

PROBE_IS_LATE_S = 150.0
"""A probe in moving air follows in one to four minutes, and the coil cools on for as long."""
AS_LOW = 0.04
LEAST_PART = 0.1
"""Of the swing: who has fallen by less has hardly begun."""
SLOPE_S, DOUBTFUL_S, NOISY_S = 240.0, 45.0, 180.0
NEIGHBOURS = 11
"""Turns on either side: five runs."""
HIGH_FOOT = 0.25
"""Of the swing: how much higher than those around it a foot is where the compressor ran on."""
OPENS_WITHIN_S = 180.0
"""Before a door's rise is steepest it was opened, so soon."""
SLACK_K = 1e-9
NOTHING: Mapping[Event, bool] = {}
BRIEF = 2.5
"""A run shorter than so many times what the trace is late hardly shows: then only its time tells when it ended."""


def bridged(
    trace: Trace, swing: Swing, events: Sequence[Event], late_s: float, ran: Mapping[Event, bool] = NOTHING
) -> Sequence[float]:
    """The trace as the compressor alone would have left it, where a door or a defrost hides how a run ended.

    ran: of some doors, whether it ran when they were opened; of the others the trace shows it.
    """
    if not events:
        return trace.smoothed
    low = swing.middle - half_band(trace, swing)
    values = list(trace.smoothed)
    index_at = {at_s: index for index, at_s in enumerate(trace.times_s)}
    moved_until = 0
    for event in events:
        foot, top = index_at[event.starts_s], index_at[event.top_s]
        if event.kind == "door":
            foot = opens(trace, event)
            if ran[event] if event in ran else broken(trace, swing, foot, late_s).is_cooling:
                _level_out(values, foot, top, low)
        elif _fell_before(trace, swing, moved_until, foot):
            values[foot] = min(values[foot], low)
        moved_until = index_at[event.ends_s]
    return values


def doubtful_doors(
    trace: Trace, swing: Swing, events: Sequence[Event], late_s: float, cools_s: float | None
) -> tuple[Event, ...]:
    """Doors that were opened just as a run ended: then one may be counted for two, or two for one.

    cools_s: how long a run usually lasts, where that is known.
    """
    doors = (event for event in events if event.kind == "door")
    return tuple(door for door in doors if _is_doubtful(trace, swing, door, late_s, cools_s))


def _is_doubtful(trace: Trace, swing: Swing, door: Event, late_s: float, cools_s: float | None) -> bool:
    foot = opens(trace, door)
    if broken(trace, swing, foot, late_s).is_doubtful:
        return True
    if cools_s is None or cools_s > BRIEF * late_s:
        return False
    at = bisect_left(swing.turns, (foot, False))
    since_s = trace.times_s[foot] - trace.times_s[swing.turns[at - 1][0]] if at and swing.turns[at - 1][1] else None
    return since_s is not None and cools_s - late_s - DOUBTFUL_S < since_s < cools_s + DOUBTFUL_S


def ran_on(trace: Trace, swing: Swing, values: Sequence[float], feet: Sequence[int], place: int, late_s: float) -> bool:
    """Whether the compressor ran on after that foot: a thermostat stops it only where the others are."""
    foot = feet[place]
    by_s = min(falls_by_s(trace, swing, 0, foot), 2 * swing.falls_by_s)
    falls_on_k = by_s * (late_s + DOUBTFUL_S) + max(2 * trace.sigma, trace.step if trace.is_coarse else 0.0)
    return values[foot] - _around(values, feet, place) > max(falls_on_k, HIGH_FOOT * swing.size)


def _around(values: Sequence[float], feet: Sequence[int], place: int) -> float:
    """How low those before are, or those after, whichever are higher: walls cool, and a set value may be changed."""
    sides = (feet[max(0, place - NEIGHBOURS // 2) : place], feet[place + 1 : place + 1 + NEIGHBOURS // 2])
    return max(percentile(sorted(values[each] for each in side), 0.5) for side in sides if side)


def opens(trace: Trace, door: Event) -> int:
    """When it was opened: at the lowest reading just before the steepest part of the rise."""
    values = trace.smoothed
    first, top = bisect_left(trace.times_s, door.starts_s), bisect_left(trace.times_s, door.top_s)
    steepest = max(range(first + 1, top + 1), key=lambda at: values[at] - values[at - 1], default=first)
    return min(range(max(first, steepest - trace.samples(OPENS_WITHIN_S)), steepest + 1), key=values.__getitem__)


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
class Broken:
    """higher_k: than the trace can be once the compressor has stopped; below 0 it has. unsure_k: give or take. by_s:
    how fast the trace was falling. is_whole: whether it had come down far enough to be counted as a run."""

    higher_k: float
    unsure_k: float
    by_s: float
    is_whole: bool

    @property
    def is_cooling(self) -> bool:
        return self.higher_k > 0

    @property
    def is_doubtful(self) -> bool:
        """Whether it stopped at about the same time."""
        return self.is_whole and abs(self.higher_k) <= self.unsure_k + SLACK_K

    @property
    def is_noise(self) -> bool:
        """Whether noise leaves more than some minutes open."""
        return self.unsure_k > NOISY_S * self.by_s


NOT_COOLING = Broken(-math.inf, 0.0, 0.0, False)


def broken(trace: Trace, swing: Swing, foot: int, late_s: float) -> Broken:
    """Whether the trace was on its way down from a peak there, too high for a run that had ended."""
    values = trace.smoothed
    at = bisect_left(swing.turns, (foot, False))
    if at and _is_its_own_foot(trace, swing, at - 1, foot):
        at -= 1
    since = swing.turns[at - 1][0] if at else 0
    peak = max(range(since, foot + 1), key=values.__getitem__)
    if values[peak] - values[foot] < max(3 * trace.sigma, LEAST_PART * swing.size):
        return NOT_COOLING
    lowest = min(range(peak, foot + 1), key=values.__getitem__)
    by_s = falls_by_s(trace, swing, peak, lowest)
    falls_on_s = late_s + (trace.interval_s + trace.smoothed_s) / 4  # the door was opened some time after the foot
    return Broken(
        higher_k=values[lowest] - by_s * falls_on_s - _usual_foot(trace, swing, at),
        unsure_k=DOUBTFUL_S * by_s + max(1.5 * trace.sigma, 0.6 * trace.step if trace.is_coarse else 0.0),
        by_s=by_s,
        is_whole=values[peak] - values[lowest] >= half_band(trace, swing),
    )


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
