"""What lifts the temperature besides the hold between runs: a defrost, or an opened door.

A hold ends where the compressor starts, at its usual peak; so what goes well above that peak is no hold, and neither is
what rises in the middle of a hold, or of a run, faster than holds do there. A door's warm air comes within minutes and
goes again; a defrost heats for a quarter of an hour. Where the humidity is logged, the vapour bears witness of a door.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from operator import sub
from typing import Literal

from attrs import evolve, frozen

from core.chamber.settling.holds import TURNS_WITHIN_S, Holds, least_k
from core.chamber.settling.swing import Swing, Trace
from core.chamber.settling.witness import Witness
from core.sentence import Sentence

Kind = Literal["door", "defrost"]

SHORT_S, LONG_S = 200.0, 600.0
"""A door shows over the short window, also while the compressor pulls down; a defrost over the long one."""
STEEPER = 1.3
STEEPER_THAN_ANY = 2.0
"""Than holds anywhere: a rise that ends at the usual peak, where the compressor starts, is else a hold's."""
LEAPS, LEAPS_SEEN = 2.0, 1.0
"""How much steeper than the rest of a long rise the part is that a door made; and one whose vapour bears witness."""
DOOR_RISES_WITHIN_S = 270.0
"""From a quarter to three quarters of the rise. A heater of 12 min takes 6; a door with a slow probe takes 3."""
READING_BY_READING, UNSURE = 1.01, (0.85, 1.2)
"""Readings that half a door's rise takes at most, where they are few; and how many tell it from no defrost's."""
LONGEST_RECOVERY_S = 1500.0
SLOWEST_TO_TELL_S = 150.0
"""A door shows for some five minutes: two readings are the least that tell it from anything."""


@frozen
class Event:
    """kind: what it looks like. Times: the foot, a tenth of the rise done, the top, and when it is over. is_unsure:
    whether it rises within about a reading, so that it may as well be the other."""

    kind: Kind
    starts_s: float
    onset_s: float
    top_s: float
    ends_s: float
    from_c: float
    top_c: float
    is_unsure: bool = False

    @property
    def rise_k(self) -> float:
        return self.top_c - self.from_c


@frozen
class _Hump:
    """Indices of foot and top."""

    foot: int
    top: int


def find_events(trace: Trace, swing: Swing, witness: Witness | None = None) -> tuple[Event, ...]:
    """Defrosts and door openings in their order. witness: None without a hygrometer."""
    holds = Holds(trace, swing)
    short = trace.samples(SHORT_S)
    events: list[Event] = []
    for first, end in trace.stretches():
        humps = [*_high_peaks(holds, first, end)]
        for width in (short, trace.samples(LONG_S)):
            humps += _humps(holds, first, end, width)
        humps.sort(key=lambda hump: (hump.foot, hump.top))
        for hump in _merged(trace.smoothed, humps):
            if not _is_hold(holds, hump, witness) and not _is_first_hold(holds, hump):
                events += _parted(trace, swing, hump, end, witness)
    return tuple(events)


def other_ways(events: Sequence[Event]) -> list[tuple[Event, ...]]:
    """The same with what may as well be a door as a defrost taken for a door, and for a defrost."""
    unsure = [event for event in events if event.is_unsure]
    if not unsure:
        return []
    kinds: tuple[Kind, ...] = ("door", "defrost")
    return [tuple(evolve(event, kind=kind) if event in unsure else event for event in events) for kind in kinds]


def why_no_events(trace: Trace) -> Sentence | None:
    """Why doors and defrosts cannot be seen in this trace; None where they can."""
    if trace.interval_s <= SLOWEST_TO_TELL_S:
        return None
    return Sentence(
        "Doors and defrosts cannot be told apart by so few readings: neither is counted. Log every 2 min or oftener; "
        "every minute is best."
    )


def _high_peaks(holds: Holds, first: int, end: int) -> Iterator[_Hump]:
    """Peaks well above the usual: the compressor was kept from starting there, or did not keep up."""
    values = holds.trace.smoothed
    for foot, peak in holds.legs:
        usual = holds.usual_peak(peak)
        if first <= foot and peak < end and values[peak] > usual + holds.margin_k:
            passes = next(at for at in range(peak, foot - 1, -1) if values[at] <= usual or at == foot)
            yield _Hump(passes, peak)


def _humps(holds: Holds, first: int, end: int, width: int) -> Iterator[_Hump]:
    """Where the trace rises more over `width` readings than a hold does there and noise accounts for."""
    trace, swing = holds.trace, holds.swing
    values = trace.smoothed
    least_rise = least_k(trace)
    half = max(1, width // 2)
    slow_k = swing.rises_by_s * width * trace.interval_s
    usual = _usual_around(holds.usual_rise(width), slow_k)
    rises = map(sub, values[first + width : end], values[first:end])

    def is_steep(rise: float, index: int) -> bool:
        foot = holds.foot_before(index + half)
        at = len(usual) if foot is None else max(0, index - foot) // half
        return rise > least_rise + STEEPER * (usual[at] if at < len(usual) else slow_k)

    steep = [False] * width + [rise > least_rise and is_steep(rise, at) for at, rise in enumerate(rises, first)]
    index = first + width
    while index < end:
        if not steep[index - first]:
            index += 1
            continue
        begun = index
        while index < end and steep[index - first]:
            index += 1
        top = max(range(begun, min(end, index + width)), key=values.__getitem__)
        foot = min(range(max(first, begun - width), top), key=lambda at: (values[at], -at))
        yield _Hump(foot, _goes_on_to(holds, top))
        index = max(index, top + 1)


def _goes_on_to(holds: Holds, top: int) -> int:
    """The peak that the rise ends at."""
    at = bisect_left(holds.peaks, top)
    peak = holds.peaks[at] if at < len(holds.peaks) else top
    return peak if holds.foot_before(peak - 1) == holds.foot_before(top) else top


def _usual_around(usual: Sequence[float], slow_k: float) -> list[float]:
    """Of neighbouring places the greatest; nowhere less than what a slow hold rises by, as in a run."""
    return [max(slow_k, *usual[max(0, at - 1) : at + 2]) for at in range(len(usual) + 1)] if usual else []


def _is_hold(holds: Holds, hump: _Hump, witness: Witness | None) -> bool:
    """Whether it ends at the usual peak, and is nowhere steeper than any hold."""
    trace, values = holds.trace, holds.trace.smoothed
    above_k = values[hump.top] - holds.usual_peak(hump.top)
    if abs(above_k) > holds.margin_k:
        return False
    leap = _steepest(trace, hump)
    begins_high = values[hump.foot] - holds.usual_foot(hump.foot) > holds.margin_k and hump.foot in holds.feet
    steeper = STEEPER if begins_high or _is_seen(trace, leap, witness) else STEEPER_THAN_ANY
    usual_k = max(holds.usual_rise(trace.samples(SHORT_S)), default=0.0)
    return values[leap.top] - values[leap.foot] <= least_k(trace) + steeper * usual_k


def _is_first_hold(holds: Holds, hump: _Hump) -> bool:
    """After a pull-down walls are at their warmest: at its foot the first hold is steeper than any that follows."""
    if not holds.trace.comes_down or not holds.legs:
        return False
    foot, peak = holds.legs[0]
    if foot != holds.swing.turns[0][0] or hump.foot < foot - 1 or hump.top > peak:
        return False
    times_s = holds.trace.times_s
    return times_s[_steepest(holds.trace, hump).top] - times_s[foot] <= TURNS_WITHIN_S


def _steepest(trace: Trace, hump: _Hump) -> _Hump:
    """The part of it, as long as the short window or shorter, that rises most."""
    values, width = trace.smoothed, trace.samples(SHORT_S)
    ends = range(hump.foot, hump.top + 1)
    top = max(ends, key=lambda at: values[at] - values[max(hump.foot, at - width)])
    return _Hump(max(hump.foot, top - width), top)


def _is_seen(trace: Trace, leap: _Hump, witness: Witness | None) -> bool:
    return witness is not None and witness.saw_a_door(trace.times_s[leap.foot], trace.times_s[leap.top])


def _parted(trace: Trace, swing: Swing, hump: _Hump, end: int, witness: Witness | None) -> list[Event]:
    """The event; and where a door leaps out of a longer rise, the door, beside the defrost if the rest is no hold's."""
    event = _event(trace, swing, hump, end)
    leap = _steepest(trace, hump)
    if event.kind == "door" or trace.interval_s > SLOWEST_TO_TELL_S or not _leaps_out(trace, hump, leap, witness):
        return [event]
    door = _event(trace, swing, leap, end)
    if door.kind != "door":
        return [event]
    rest_s = event.top_s - event.starts_s - (door.top_s - door.starts_s)
    is_left = event.rise_k - door.rise_k > least_k(trace) + STEEPER * swing.rises_by_s * rest_s
    return [event, door] if is_left and rest_s >= LONG_S else [door]


def _leaps_out(trace: Trace, hump: _Hump, leap: _Hump, witness: Witness | None) -> bool:
    values, lasts = trace.smoothed, leap.top - leap.foot
    leaps_k = values[leap.top] - values[leap.foot]
    rest_k, rest = values[hump.top] - values[hump.foot] - leaps_k, hump.top - hump.foot - lasts
    usual_k = max(0.0, rest_k) * lasts / rest if rest else 0.0
    times = LEAPS_SEEN if _is_seen(trace, leap, witness) else LEAPS
    return leaps_k >= least_k(trace) + times * usual_k


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
    longest_s = max(DOOR_RISES_WITHIN_S, READING_BY_READING * trace.interval_s)
    rises_s = three_quarters_s - quarter_s
    kind: Kind = "door" if rises_s <= longest_s else "defrost"
    low, high = UNSURE
    is_unsure = longest_s > DOOR_RISES_WITHIN_S and low * trace.interval_s <= rises_s <= high * trace.interval_s
    back = hump.top
    while (
        back + 1 < end
        and times_s[back] - times_s[hump.top] < LONGEST_RECOVERY_S
        and values[back] - from_c > 0.15 * (top_c - from_c) + swing.rises_by_s * (times_s[back] - times_s[hump.foot])
    ):
        back += 1
    return Event(kind, times_s[hump.foot], onset_s, times_s[hump.top], times_s[back], from_c, top_c, is_unsure)


def _reaches(trace: Trace, hump: _Hump, level: float) -> float:
    """The last time before the top at which the level is passed."""
    values, times_s = trace.smoothed, trace.times_s
    index = hump.top
    while index > hump.foot and values[index] > level:
        index -= 1
    rise = values[index + 1] - values[index]
    return times_s[index] + (times_s[index + 1] - times_s[index]) * (level - values[index]) / rise if rise else 0.0
