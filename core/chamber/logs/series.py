"""The rows of a log in order of time: one series a probe, without repeats, its gaps and the clock's jumps told."""

from __future__ import annotations

import math
from array import array
from bisect import bisect_right
from datetime import UTC, datetime, timedelta
from itertools import islice, pairwise
from math import isnan
from operator import gt, lt, sub
from typing import Literal

from attrs import frozen

from core.chamber.logs.layout import Layout
from core.chamber.logs.rows import Rows
from core.chamber.logs.values import NOTHING
from core.chamber.series import Series
from core.refusals import Refusal

HOUR_S = 3600.0
FULL = 1.0
Clock = Literal["utc", "local", "start"]


@frozen
class Skipped:
    """A line, or one value in it, that was not taken. Lines count from 1."""

    line: int
    why: str


@frozen(eq=False)
class Log:
    """What was read from a file. `name`: SHA-256 of its bytes, in hexadecimal. series: each time once.

    Their times are seconds since 1970-01-01 of the log's clock.
    clock: "utc" where the file tells it; "local" for the time a clock on the wall showed when the log began, counted on
    across a change of the clock; "start" for time since the log's start.
    """

    name: str
    layout: Layout
    clock: Clock
    series: tuple[Series, ...]
    skipped: tuple[Skipped, ...]
    remarks: tuple[str, ...]


def settled(name: str, layout: Layout, by_probe: dict[str, Rows], skipped: list[Skipped]) -> Log:
    """The log of the rows taken: put in order, repeats dropped, the clock's jumps told.

    Raises Refusal on "time" where a clock of twelve hours does not say which half of the day it means.
    """
    clock = clock_kind(layout)
    remarks: dict[str, None] = {}
    series: list[Series] = []
    for probe, rows in by_probe.items():
        rows, said = _in_order(rows, layout, skipped)
        remarks |= dict.fromkeys(said)
        series += _series(probe, rows, layout, remarks)
    return Log(
        name=name,
        layout=layout,
        clock=clock,
        series=tuple(each for each in series if each.times_s),
        skipped=tuple(sorted(skipped, key=lambda each: each.line)),
        remarks=(*layout.notes, *remarks),
    )


def clock_kind(layout: Layout) -> Clock:
    """What the times of a log of this layout count."""
    times = layout.times
    if times.kind == "elapsed":
        return "start"
    return "utc" if times.offset_written or times.offset_s is not None or times.kind.startswith("epoch") else "local"


def _in_order(rows: Rows, layout: Layout, skipped: list[Skipped]) -> tuple[Rows, list[str]]:
    said: list[str] = []
    may_jump = clock_kind(layout) == "local"
    falls = _falls(rows.times)
    if falls * 2 > len(rows.times):
        rows.reverse()  # the newest first
    if falls and may_jump:
        step = _usual_step(rows.times)
        if not layout.times.twelve_hours:
            _refuse_twelve_hours(rows, step)
        said += _count_on(rows, step)
    if falls and _falls(rows.times):
        rows = rows.reordered(sorted(range(len(rows.times)), key=rows.times.__getitem__))
        said.append("The rows were not in order of time; they were put in order.")
    rows, conflicts = _without_repeats(rows, skipped)
    if may_jump:
        said += _hours_lost_or_twice(rows, conflicts)
    return rows, said


def _falls(times: array[float]) -> int:
    return sum(map(gt, times, islice(times, 1, None)))


def _steps(times: array[float]) -> array[float]:
    return array("d", map(sub, islice(times, 1, None), times))


def _usual_step(times: array[float]) -> float:
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
            raise Refusal(
                "time",
                f"At line {rows.lines[at]} the clock falls from 12 to 1 and no hour is above 12: the file does not say "
                "which is morning and which afternoon. Export it with AM and PM, or with 24 hours.",
            )


def _count_on(rows: Rows, step: float) -> list[str]:
    """Where the clock was put back an hour, count on from before, so that an hour stays an hour."""
    said: list[str] = []
    if not 0 < step <= HOUR_S / 2:
        return said
    written = array("d", rows.times)
    shift = 0.0
    for at in range(1, len(written)):
        back = written[at - 1] - written[at]
        if back > 0 and abs(back - (HOUR_S - step)) <= step / 2 + 1 and _is_lived_twice(rows, written, at, step):
            shift += HOUR_S
            said.append(
                f"Line {rows.lines[at]}: the clock was put back an hour ({_shown(written[at - 1])} was followed by "
                f"{_shown(written[at])}). Times from here on are counted on from before the change."
            )
        rows.times[at] = written[at] + shift
    return said


def _is_lived_twice(rows: Rows, written: array[float], at: int, step: float) -> bool:
    """Whether the hours before and after a fall hold the same times, full and in order, with other values."""
    first = at - 1
    while first > 0 and written[first - 1] < written[first] and written[first - 1] >= written[at] - step / 2:
        first -= 1
    end = at + 1
    while end < len(written) and written[end] > written[end - 1] and written[end] <= written[at - 1] + step / 2:
        end += 1
    least = 0.8 * HOUR_S / step
    if at - first < least or end - at < least:
        return False
    equal = sum(1 for a, b in zip(range(first, at), range(at, end), strict=False) if rows.same_values(a, b))
    return equal < (at - first) / 2


def _without_repeats(rows: Rows, skipped: list[Skipped]) -> tuple[Rows, list[float]]:
    """Each time once, the first as the file has them. Returns the times that come with different values too."""
    times = rows.times
    kept: list[int] = []
    conflicts: list[float] = []
    if all(map(lt, times, islice(times, 1, None))):
        return rows, conflicts
    for at in range(len(times)):
        if not kept or times[at] != times[kept[-1]]:
            kept.append(at)
        elif rows.same_values(kept[-1], at):
            skipped.append(Skipped(rows.lines[at], f"This repeats line {rows.lines[kept[-1]]}."))
        else:
            conflicts.append(times[at])
            told = f"Line {rows.lines[kept[-1]]} has the same time with other values; that one was taken."
            skipped.append(Skipped(rows.lines[at], told))
    return rows.reordered(kept), conflicts


def _hours_lost_or_twice(rows: Rows, conflicts: list[float]) -> list[str]:
    step = _usual_step(rows.times)
    said = [
        f"Between {_shown(before)} and {_shown(after)} an hour was not recorded, or the clock was put forward an hour."
        for before, after in _pauses(rows.times, HOUR_S)
        if abs(after - before - HOUR_S - step) <= min(step / 2, HOUR_S / 4)
    ]
    if conflicts and step and len(conflicts) * step >= 0.8 * HOUR_S and conflicts[-1] - conflicts[0] <= HOUR_S:
        said.append(
            f"The times from {_shown(conflicts[0])} to {_shown(conflicts[-1])} come twice: the clock may have been put "
            "back an hour. From there on the times may be an hour behind."
        )
    return said


def _pauses(times: array[float], longer_than_s: float) -> tuple[tuple[float, float], ...]:
    steps = _steps(times)
    if not steps or max(steps) <= longer_than_s:
        return ()
    return tuple((times[at], times[at + 1]) for at, step in enumerate(steps) if step > longer_than_s)


def _shown(at_s: float) -> str:
    moment = datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=round(at_s))
    return f"{moment:%Y-%m-%d %H:%M}"


def _series(probe: str, rows: Rows, layout: Layout, remarks: dict[str, None]) -> list[Series]:
    wanted = [layout.columns[at] for at in layout.holding("temperature", "humidity")]
    names = [probe] if layout.holding("probe") else list(dict.fromkeys(column.probe for column in wanted))
    found: list[Series] = []
    for name in names:
        own = {
            column.role: values
            for column, values in zip(wanted, rows.values, strict=True)
            if layout.holding("probe") or column.probe == name
        }
        found.append(_one(name, rows.times, own.get("temperature"), own.get("humidity"), remarks))
    return found


def _one(
    probe: str,
    times: array[float],
    temperature: array[float] | None,
    humidity: array[float] | None,
    remarks: dict[str, None],
) -> Series:
    nothing = array("d", [NOTHING]) * len(times)
    warm, humid = temperature or nothing, humidity or nothing
    if any(map(isnan, warm)) and any(map(isnan, humid)):
        kept = [at for at, (a, b) in enumerate(zip(warm, humid, strict=True)) if a == a or b == b]
        times, warm, humid = (array("d", [column[at] for at in kept]) for column in (times, warm, humid))
    return Series(probe, times, warm, _capped(probe, humid, remarks))


def _capped(probe: str, humidity: array[float], remarks: dict[str, None]) -> array[float]:
    over = sum(map(FULL.__lt__, humidity))
    if not over:
        return humidity
    remarks[f"{probe or 'The probe'}: {over} humidities above 100 % were taken as 100 %."] = None
    return array("d", [FULL if value > FULL else value for value in humidity])
