"""What lifts the temperature besides the hold between runs: a defrost, or an opened door.

Both rise faster than the chamber warms by itself. A door's warm air comes within minutes and goes again; a defrost
heats for a quarter of an hour.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from attrs import frozen

from core.chamber.settling.swing import Swing, Trace

Kind = Literal["door", "defrost"]

SHORT_S, LONG_S = 200.0, 600.0
"""A door shows over the short window, also while the compressor pulls down; a defrost over the long one."""
STEEPER = 1.3
LEAST_K = 0.35
DOOR_RISES_WITHIN_S = 270.0
"""From a quarter to three quarters of the rise. A heater of 12 min takes 6; a door with a slow probe takes 3."""
LONGEST_RECOVERY_S = 1500.0


@frozen
class Event:
    """kind: what it looks like. Times: the foot, a tenth of the rise done, the top, and when it is over."""

    kind: Kind
    starts_s: float
    onset_s: float
    top_s: float
    ends_s: float
    from_c: float
    top_c: float

    @property
    def rise_k(self) -> float:
        return self.top_c - self.from_c


@frozen
class _Hump:
    """Indices of foot and top."""

    foot: int
    top: int


def find_events(trace: Trace, swing: Swing) -> tuple[Event, ...]:
    """Defrosts and door openings in their order."""
    events: list[Event] = []
    for first, end in trace.stretches():
        humps = sorted(
            (
                hump
                for window_s in (SHORT_S, LONG_S)
                for hump in _humps(trace, swing, first, end, trace.samples(window_s))
            ),
            key=lambda hump: (hump.foot, hump.top),
        )
        events += [_event(trace, swing, hump, end) for hump in _merged(trace.values, humps)]
    return tuple(events)


def _humps(trace: Trace, swing: Swing, first: int, end: int, width: int) -> Iterator[_Hump]:
    """Where the trace rises more over `width` readings than warming and noise account for."""
    values = trace.smoothed
    lasts_s = width * trace.interval_s
    least = max(LEAST_K, 7 * trace.sigma, 1.5 * trace.step) + STEEPER * swing.rises_by_s * lasts_s
    index = first + width
    while index < end:
        if values[index] - values[index - width] <= least:
            index += 1
            continue
        begun = index
        while index < end and values[index] - values[index - width] > least:
            index += 1
        top = max(range(begun, min(end, index + width)), key=values.__getitem__)
        foot = min(range(max(first, begun - width), top), key=lambda at: (values[at], -at))
        yield _Hump(foot, top)
        index = max(index, top + 1)


def _merged(values: Sequence[float], humps: Sequence[_Hump]) -> list[_Hump]:
    """One hump for those that overlap: the long and the short window see the same one, or its two halves."""
    merged: list[_Hump] = []
    for hump in humps:
        if merged and hump.foot <= merged[-1].top:
            last = merged.pop()
            hump = _Hump(last.foot, max(last.top, hump.top, key=values.__getitem__))
        merged.append(hump)
    return merged


def _event(trace: Trace, swing: Swing, hump: _Hump, end: int) -> Event:
    values, times_s = trace.smoothed, trace.times_s
    from_c, top_c = values[hump.foot], values[hump.top]
    onset_s, quarter_s, three_quarters_s = (
        _reaches(trace, hump, from_c + part * (top_c - from_c)) for part in (0.1, 0.25, 0.75)
    )
    kind: Kind = "door" if three_quarters_s - quarter_s <= DOOR_RISES_WITHIN_S else "defrost"
    back = hump.top
    while (
        back + 1 < end
        and times_s[back] - times_s[hump.top] < LONGEST_RECOVERY_S
        and values[back] - from_c > 0.15 * (top_c - from_c) + swing.rises_by_s * (times_s[back] - times_s[hump.foot])
    ):
        back += 1
    return Event(kind, times_s[hump.foot], onset_s, times_s[hump.top], times_s[back], from_c, top_c)


def _reaches(trace: Trace, hump: _Hump, level: float) -> float:
    """The last time before the top at which the level is passed."""
    values, times_s = trace.smoothed, trace.times_s
    index = hump.top
    while index > hump.foot and values[index] > level:
        index -= 1
    rise = values[index + 1] - values[index]
    return times_s[index] + (times_s[index + 1] - times_s[index]) * (level - values[index]) / rise if rise else 0.0
