"""Rows in the order of time: repeats dropped, the clock's jumps reported, logs laid into one another refused."""

from __future__ import annotations

import math
from array import array
from bisect import bisect_right
from itertools import islice, pairwise
from operator import gt, lt, sub

from core.chamber.logs.clock_changes import count_on, fall_at, moment
from core.chamber.logs.leaps import without_leaps
from core.chamber.logs.rows import Rows, Skipped
from core.quantities import COUNT, Amount
from core.refusals import Refusal
from core.sentence import Message, Sentence
from core.units import DAY_S, HOUR_S

DENSER = 0.75
"""Rows put in order that come this much quicker than they were written are two logs laid into one another."""
MOST_SECTIONS = 12
"""Rows that fall back more often were shuffled, not appended."""
SEVERAL: Message = (
    "At line {line} the log begins again ({before} is followed by {after}) among times that it has already: this file "
    "holds several logs, one after the other. Save each as a file of its own."
)
LOST_CLOCK: Message = (
    "At line {line} the clock falls back from {before} to {after}: the logger lost its time. Keep the lines before or "
    "after that one, and choose that file."
)
CONFLICTING: Message = (
    "{conflicts} of {of} lines have a time that an earlier line has with other values, the first of them line {line}: "
    "more than one probe is in these rows. Save each as a file of its own, or set the column that tells them apart to "
    "“name of the probe”."
)
TWELVE_HOURS: Message = (
    "At line {line} the clock falls from 12 to 1 and no hour is above 12: the file does not say which is morning and "
    "which afternoon. Export it with AM and PM, or with 24 hours."
)
HOUR_LOST: Message = "Between {before} and {after} an hour was not recorded, or the clock was put forward an hour."
HOUR_TWICE: Message = (
    "The times from {first} to {last} come twice: the clock may have been put back an hour. From there on the times "
    "may be an hour behind."
)
MOST_CONFLICTS, LEAST_CONFLICTS = 0.05, 3


def in_order(rows: Rows, twelve_hours: bool, skipped: list[Skipped], *, may_jump: bool) -> tuple[Rows, list[Sentence]]:
    """The rows with each time once and rising, and what is to be said of it. may_jump: their clock may be set.

    Raises Refusal on "time" where a clock of twelve hours says no half of the day, was lost, or leaps by years; on
    "log" where several logs are one after the other.
    """
    said: list[Sentence] = []
    falls = _falls(rows.times)
    if falls * 2 > len(rows.times):
        rows.reverse()  # the newest first
    is_coarse = len(rows.times) > 1 and rows.times[1] - rows.times[0] > HOUR_S  # an hour back is then no fall
    step = usual_step(rows.times) if falls or is_coarse or _has_repeats(rows.times) else 0.0
    if falls and may_jump and not twelve_hours:
        _refuse_twelve_hours(rows, step)
    if step and may_jump:
        said += count_on(rows, step)
    if falls and _falls(rows.times):
        rows = _sorted(rows, step)
        said.append(Sentence("The rows were not in order of time; they were sorted."))
    rows = without_leaps(rows, skipped)
    rows, conflicts = _without_repeats(rows, skipped)
    if may_jump:
        said += _hours_lost_or_twice(rows, conflicts)
    return rows, said


def _has_repeats(times: array[float]) -> bool:
    return not all(map(lt, times, islice(times, 1, None)))


def _sorted(rows: Rows, step: float) -> Rows:
    """The rows by their time. Raises Refusal where they are those of a clock that was lost, or of several logs."""
    written = rows.times
    found = rows.reordered(sorted(range(len(written)), key=written.__getitem__))
    starts = [at for at in range(1, len(written)) if written[at] < written[at - 1]]
    _refuse_lost_clock(rows, found, starts, step)
    steps = [b - a for a, b in pairwise(found.times) if b > a]
    close = sum(1 for each in steps if each < DENSER * step)
    if len(starts) <= MOST_SECTIONS and close * 2 > len(steps):
        at = starts[0]
        raise Refusal("log", Sentence(SEVERAL, fall_at(rows, written, at)))
    return found


def _refuse_lost_clock(rows: Rows, found: Rows, starts: list[int], step: float) -> None:
    times = found.times
    for at in starts[:MOST_SECTIONS]:
        before, after = rows.times[at - 1], rows.times[at]
        first = bisect_right(times, after) - 1
        gap_behind = times[first] - times[first - 1] if first else math.inf
        last = bisect_right(times, before)
        gap_before = times[last] - times[last - 1] if last < len(times) else math.inf
        lies_apart = _pause_between(times, after, before) > max(DAY_S, 10 * step)
        if lies_apart and min(gap_behind, gap_before) > 2 * step:
            raise Refusal("time", Sentence(LOST_CLOCK, fall_at(rows, rows.times, at)))


def _pause_between(times: array[float], first: float, last: float) -> float:
    """The longest pause between two of these times."""
    start, end = bisect_right(times, first) - 1, bisect_right(times, last)
    return max((b - a for a, b in pairwise(times[start:end])), default=0.0)


def _falls(times: array[float]) -> int:
    return sum(map(gt, times, islice(times, 1, None)))


def _steps(times: array[float]) -> array[float]:
    return array("d", map(sub, islice(times, 1, None), times))


def usual_step(times: array[float]) -> float:
    """The median of the steps forward, 0 where there is none."""
    steps = _steps(times)
    if steps and steps[0] > 0 and steps.count(steps[0]) > len(steps) / 2:  # then nothing need be sorted
        return steps[0]
    steps = sorted(steps)
    forward = steps[bisect_right(steps, 0.0) :]
    return forward[len(forward) // 2] if forward else 0.0


def _refuse_twelve_hours(rows: Rows, step: float) -> None:
    """From 12:59 back to 1:00: a clock of twelve hours that does not say which half of the day it means."""
    times = rows.times
    if any(math.floor(at / HOUR_S) % 24 in (0, *range(13, 24)) for at in times):
        return
    for at, (before, after) in enumerate(pairwise(times), start=1):
        if abs(before + step - 12 * HOUR_S - after) <= step:
            raise Refusal("time", Sentence(TWELVE_HOURS, {"line": str(rows.lines[at])}))


def _without_repeats(rows: Rows, skipped: list[Skipped]) -> tuple[Rows, list[float]]:
    """Each time once, the first as the file has them. Returns the times that come with different values too."""
    times = rows.times
    kept: list[int] = []
    conflicts: list[float] = []
    first = 0
    if all(map(lt, times, islice(times, 1, None))):
        return rows, conflicts
    for at in range(len(times)):
        if not kept or times[at] != times[kept[-1]]:
            kept.append(at)
        elif rows.same_values(kept[-1], at):
            told = {"line": str(rows.lines[kept[-1]])}
            skipped.append(Skipped(rows.lines[at], Sentence("This repeats line {line}.", told)))
        else:
            conflicts.append(times[at])
            told = {"line": str(rows.lines[kept[-1]])}
            why = Sentence("Line {line} has the same time with other values; that one was taken.", told)
            skipped.append(Skipped(rows.lines[at], why))
            first = first or rows.lines[at]
    is_much = len(conflicts) >= LEAST_CONFLICTS and len(conflicts) > MOST_CONFLICTS * len(times)
    if is_much and conflicts[-1] - conflicts[0] > HOUR_S:  # an hour that comes twice is the clock's, and is reported
        many = {"conflicts": Amount(len(conflicts), COUNT), "of": Amount(len(times), COUNT), "line": str(first)}
        raise Refusal("log", Sentence(CONFLICTING, many))
    return rows.reordered(kept), conflicts


def _hours_lost_or_twice(rows: Rows, conflicts: list[float]) -> list[Sentence]:
    step = usual_step(rows.times)
    said = [
        Sentence(HOUR_LOST, {"before": moment(before), "after": moment(after)})
        for before, after in _pauses(rows.times, HOUR_S)
        if abs(after - before - HOUR_S - step) <= min(step / 2, HOUR_S / 4)
    ]
    if conflicts and step and len(conflicts) * step >= 0.8 * HOUR_S and conflicts[-1] - conflicts[0] <= HOUR_S:
        said.append(Sentence(HOUR_TWICE, {"first": moment(conflicts[0]), "last": moment(conflicts[-1])}))
    return said


def _pauses(times: array[float], longer_than_s: float) -> tuple[tuple[float, float], ...]:
    steps = _steps(times)
    if not steps or max(steps) <= longer_than_s:
        return ()
    return tuple((times[at], times[at + 1]) for at, step in enumerate(steps) if step > longer_than_s)
