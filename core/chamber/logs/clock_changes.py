"""A clock on the wall that was put back: times are counted on from before, so that an hour stays an hour."""

from __future__ import annotations

from array import array
from bisect import bisect_left, bisect_right
from datetime import UTC, datetime, timedelta
from itertools import pairwise

from core.chamber.logs.rows import Rows
from core.sentence import Message, Sentence, Value
from core.units import DAY_S, HOUR_S

AUTUMN = {9, 10, 11, 3, 4}
"""Months in which clocks are put back an hour, north and south."""
SUNDAY = 6
EARLY_H = 4
CLOSE_S = 120.0


def count_on(rows: Rows, step: float) -> list[Sentence]:
    """Shift the rows after each fall that the clock explains, and say so. step: the usual one, above 0.

    It is put back an hour where an hour is lived twice with other values; a logger too coarse to show that is believed
    on a Sunday before four in the months of the change. It is set by another time where the rows fall back once and
    nowhere jump ahead.
    """
    said: list[Sentence] = []
    written = array("d", rows.times)
    set_at = _only_jump(rows, written, step)
    shift = 0.0
    for at in range(1, len(written)):
        back = written[at - 1] - written[at]
        if _is_hour_back(rows, written, at, step):
            shift += HOUR_S
            said.append(Sentence(HOUR_BACK, fall_at(rows, written, at)))
        elif at == set_at:
            shift += back + step
            told = fall_at(rows, written, at) | {"by": str(round((back + step) / 60))}
            said.append(Sentence(SET_BACK, told))
        rows.times[at] = written[at] + shift
    return said


HOUR_BACK: Message = (
    "Line {line}: the clock was put back an hour ({before} was followed by {after}). Times from here on are counted "
    "on from before the change."
)
SET_BACK: Message = (
    "Line {line}: the clock was set back by {by} min ({before} was followed by {after}). Times from here on are "
    "counted on from before it."
)


def fall_at(rows: Rows, times: array[float], at: int) -> dict[str, Value]:
    """Where the clock jumps: the line, and the moments on both sides."""
    return {"line": str(rows.lines[at]), "before": moment(times[at - 1]), "after": moment(times[at])}


def _is_hour_back(rows: Rows, written: array[float], at: int, step: float) -> bool:
    back = written[at - 1] - written[at]
    if step <= HOUR_S / 2:
        return abs(back + step - HOUR_S) <= min(step / 2 + 1, CLOSE_S) and _is_lived_twice(rows, written, at, step)
    return step < DAY_S and abs(back + step - HOUR_S) <= CLOSE_S and _may_change(written[at]) and not _same(rows, at)


def _may_change(at_s: float) -> bool:
    at = datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=at_s)
    return at.month in AUTUMN and at.weekday() == SUNDAY and at.hour < EARLY_H


def _same(rows: Rows, at: int) -> bool:
    return rows.times[at] == rows.times[at - 1] and rows.same_values(at - 1, at)


def _only_jump(rows: Rows, written: array[float], step: float) -> int | None:
    """Where the rows fall back by less than a day, if they do so once, never jump ahead as moved rows would, and do not
    repeat what was read before; else None. What begins again before half of it is another log, no clock that was set.
    """
    steps = [b - a for a, b in pairwise(written)]
    falls = [at for at, each in enumerate(steps, start=1) if each < 0]
    if len(falls) != 1 or max(steps) > 1.5 * step:
        return None
    (at,) = falls
    back = written[at - 1] - written[at]
    if not CLOSE_S < back + step < DAY_S:
        return None
    known = {each: index for index, each in enumerate(written[:at])}
    before, after = at - bisect_left(written, written[at], 0, at), bisect_right(written, written[at - 1], at) - at
    repeats = sum(1 for index in range(at, len(written)) if _repeats(rows, known.get(written[index]), index))
    is_another_log = before * 2 > at
    return at if repeats * 2 < min(before, after) and not is_another_log else None


def _repeats(rows: Rows, earlier: int | None, at: int) -> bool:
    return earlier is not None and rows.same_values(earlier, at)


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


def moment(at_s: float) -> datetime:
    return datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=round(at_s))
