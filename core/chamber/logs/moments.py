"""When a row was measured: dates and clocks as loggers write them, to seconds."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from datetime import date

from core.chamber.logs.column import ELAPSED_S, Order, TimeStyle
from core.chamber.logs.counting import COUNTS, span_of
from core.chamber.logs.scales import NOTHING
from core.chamber.logs.spelling import month_of, plain
from core.chamber.logs.values import Memo, number
from core.units import DAY_S

FIRST_DAY = date(1970, 1, 1).toordinal()
EARLIEST, LATEST = 1970, 2099
SPREADSHEET_EPOCH = date(1899, 12, 30).toordinal() - FIRST_DAY
"""Day 0 of the serial days that spreadsheets count."""
LIKELY_EPOCH_S = (946_684_800.0, 4_102_444_800.0)  # the years 2000 to 2099
LIKELY_SERIAL = (36_526.0, 73_050.0)  # the same years as serial days

WEEKDAY = r"(?:[^\W\d]{2,10}\.?,?[ \u00a0]+(?=[0-9]))?"
_BY_NUMBER = re.compile(WEEKDAY + r"([0-9]{1,4})([-./ ])([0-9]{1,2})\2([0-9]{1,4})\.?")
_COMPACT = re.compile(r"((?:19|20)[0-9]{2})([01][0-9])([0-3][0-9])")
_NAMED = re.compile(
    WEEKDAY + r"(?:([0-9]{1,4})\.?[-/ ]*)?([^\W\d]{3,10})\.?[-/ ]*([0-9]{1,4})(?:(?:,? *|[-/])([0-9]{2,4}))?",
)
_OFFSET = r"(?P<offset>Z|(?:UTC|GMT)?[+\-\u2212][0-9]{1,2}(?::?[0-9]{2})?|UTC|GMT)"
_HALF = r"(?:[ \u00a0\u202f]?(?P<half>[AaPp])\.? ?[Mm]\.?)?"


def _clock_pattern(mark: str) -> re.Pattern[str]:
    hour, m = (r"[0-9]{1,2}", re.escape(mark)) if mark else (r"[0-9]{2}", "")
    second = rf"(?:{m}(?P<s>[0-9]{{2}})(?P<part>[.,][0-9]{{1,6}})?)?"
    return re.compile(rf"(?P<h>{hour}){m}(?P<m>[0-9]{{2}}){second}{_HALF}(?: ?{_OFFSET})?")


_CLOCK = {mark: _clock_pattern(mark) for mark in (":", ".", "")}
_IN_A_LABEL = re.compile(r"\b(?:UTC|GMT|Z)\b[ ]?(?:([+\-\u2212])([0-9]{1,2})(?::?([0-9]{2}))?)?")


def split(cell: str, clock_mark: str) -> tuple[str, str]:
    """A cell with date and time, parted. Blanks and the T between them stay on either side."""
    if clock_mark == ":":
        at = cell.find(":")
        return (cell[: at - 2], cell[at - 2 :]) if at > 2 else ("", "")
    cell = cell.strip()
    if not clock_mark and len(cell) in (12, 14) and cell.isdecimal():
        return cell[:8], cell[8:]
    before, _, after = cell.partition("T" if "T" in cell else " ")
    return before, after


def date_mark(text: str) -> str | None:
    """What parts the numbers of a date: "-", ".", "/" or " "; "" for 20250601; "a" where the month is a word."""
    text = text.strip(" T,\u00a0")
    if found := _BY_NUMBER.fullmatch(text):
        return found[2]
    if _COMPACT.fullmatch(text):
        return ""
    return "a" if _named(text) is not None else None


def day_of(text: str, order: Order, mark: str) -> float:
    """Days since 1970-01-01 of a date written so, NaN for any other text. A year of two digits is of this century.

    Four digits in front are always the year, and then the month follows (ISO 8601).
    """
    text = text.strip(" T,\u00a0")
    if mark == "a":
        parts = _named(text)
    elif mark == "":
        found = _COMPACT.fullmatch(text)
        parts = (found[1], found[2], found[3]) if found else None
    else:
        found = _BY_NUMBER.fullmatch(text)
        parts = _in_order((found[1], found[3], found[4]), order) if found and found[2] == mark else None
    if parts is None or len(parts[0]) not in (2, 4) or len(parts[2]) > 2:
        return NOTHING
    year = int(parts[0]) + (2000 if len(parts[0]) == 2 else 0)
    if not EARLIEST <= year <= LATEST:
        return NOTHING
    try:
        return float(date(year, int(parts[1]), int(parts[2])).toordinal() - FIRST_DAY)
    except ValueError:
        return NOTHING


def _in_order(parts: tuple[str, str, str], order: Order) -> tuple[str, str, str]:
    first, second, third = parts
    if order == "ymd":
        return first, second, third
    return (third, second, first) if order == "dmy" else (third, first, second)


def _named(text: str) -> tuple[str, str, str] | None:
    """Year, month and day of a date whose month is a word: 6 Jun 2025, 06-Jun-25, Jun 6, 2025, 2025-Jun-06."""
    found = _NAMED.fullmatch(text)
    if found is None or not (number := month_of(found[2])):
        return None
    month, before, after, last = str(number), found[1], found[3], found[4]
    if before and not last:
        return (before, month, after) if len(before) == 4 else (after, month, before)
    if before or not last:
        return None
    return (after, month, last) if len(after) == 4 else (last, month, after)


def clock_of(text: str, style: TimeStyle) -> float:
    """Seconds since midnight, less the offset from UTC where one is written; NaN for what is not written as agreed."""
    found = _CLOCK[style.clock_mark].fullmatch(text.strip(" T,\u00a0"))
    if found is None or bool(found["half"]) != style.twelve_hours or bool(found["offset"]) != style.offset_written:
        return NOTHING
    hour, minute, second = int(found["h"]), int(found["m"]), int(found["s"] or 0)
    if minute > 59 or second > 59 or (style.twelve_hours and hour > 12):
        return NOTHING
    if style.twelve_hours:
        hour = hour % 12 + (12 if found["half"] in "Pp" else 0)
    part = float("0" + found["part"].replace(",", ".")) if found["part"] else 0.0
    at = hour * 3600.0 + minute * 60.0 + second + part
    return NOTHING if at > DAY_S else at - _offset_s(found["offset"] or "")


def clock_traits(text: str, mark: str) -> tuple[bool, bool] | None:
    """Whether a time of day says AM or PM, and whether it names an offset; None for what is no time of day."""
    found = _CLOCK[mark].fullmatch(text.strip(" T,\u00a0"))
    return (bool(found["half"]), bool(found["offset"])) if found else None


def _offset_s(text: str) -> int:
    digits = re.sub(r"[^0-9]", "", text)
    if not digits:
        return 0
    hours, minutes = (int(digits[:-2]), int(digits[-2:])) if len(digits) > 2 else (int(digits), 0)
    return (-1 if "-" in text or "\u2212" in text else 1) * (hours * 3600 + minutes * 60)


def offset_in(label: str) -> int | None:
    """The offset from UTC that a column's head names: 0 for "Time (UTC)", -18000 for "Date Time, GMT-05:00"."""
    found = _IN_A_LABEL.search(label)
    return _offset_s("".join(part or "" for part in found.groups())) if found else None


def column_reader(
    style: TimeStyle, at: int, clock_at: int | None, decimal: str
) -> Callable[[Sequence[Sequence[str]]], Iterable[float]]:
    """From columns of cells to the seconds of each row, as `reader` has them, only quicker.

    NaN also where a row's date is longer or shorter than the first one's: then each is to be read by itself.
    """
    one = reader(style, at, clock_at, decimal)
    if style.kind != "text" or clock_at is not None or style.clock_mark != ":" or style.spelled:
        return lambda columns: map(one, map(list, zip(*columns, strict=True)))
    days, clocks = _days_and_clocks(style)

    def by_colon(columns: Sequence[Sequence[str]]) -> Iterable[float]:
        cells = columns[at]
        cut = max(0, cells[0].find(":") - 2)
        return [days[cell[:cut]] + clocks[cell[cut:]] for cell in cells]

    return by_colon


def reader(style: TimeStyle, at: int, clock_at: int | None, decimal: str) -> Callable[[list[str]], float]:
    """From a row's cells to seconds: of UTC where the file tells it, else of the logger's own clock or since its start.

    NaN where the cell is not written as the style says.
    """
    shift = _shift_s(style)
    if style.kind != "text":
        numbers = Memo(lambda text: _by_number(text, style, decimal) - shift)
        return lambda cells: numbers[cells[at]]
    days, clocks = _days_and_clocks(style)
    if clock_at is not None:
        return lambda cells: days[cells[at]] + clocks[cells[clock_at]]
    if style.spelled:
        return lambda cells: _sum(days, clocks, split(plain(cells[at], style.tongue), style.clock_mark))
    if style.clock_mark != ":":
        return lambda cells: _sum(days, clocks, split(cells[at], style.clock_mark))

    def by_colon(cells: list[str]) -> float:
        cell = cells[at]
        colon = cell.find(":")
        return days[cell[: colon - 2]] + clocks[cell[colon - 2 :]] if colon > 2 else NOTHING

    return by_colon


def _shift_s(style: TimeStyle) -> float:
    told_by_the_head = style.kind in ("text", "spreadsheet") and not style.offset_written
    return float(style.offset_s or 0) if told_by_the_head else 0.0


def _days_and_clocks(style: TimeStyle) -> tuple[Memo, Memo]:
    shift = _shift_s(style)
    if style.spelled:
        days = Memo(lambda text: day_of(plain(text, style.tongue), style.order, style.date_mark) * DAY_S - shift)
        return days, Memo(lambda text: clock_of(plain(text), style))
    days = Memo(lambda text: day_of(text, style.order, style.date_mark) * DAY_S - shift)
    return days, Memo(lambda text: clock_of(text, style))


def _sum(days: Memo, clocks: Memo, parts: tuple[str, str]) -> float:
    return days[parts[0]] + clocks[parts[1]]


def _by_number(text: str, style: TimeStyle, decimal: str) -> float:
    if style.kind == "span":
        return span_of(text, style.elapsed_unit)
    found = number(text, decimal)
    if found is None or found.unit:
        return NOTHING
    if style.kind == "epoch_s":
        return found.value if LIKELY_EPOCH_S[0] <= found.value <= LIKELY_EPOCH_S[1] else NOTHING
    if style.kind == "epoch_ms":
        return found.value / 1000 if LIKELY_EPOCH_S[0] <= found.value / 1000 <= LIKELY_EPOCH_S[1] else NOTHING
    if style.kind == "spreadsheet":
        whole_s = round((found.value + SPREADSHEET_EPOCH) * DAY_S)
        return float(whole_s) if LIKELY_SERIAL[0] <= found.value <= LIKELY_SERIAL[1] else NOTHING
    if style.kind == "count":
        return COUNTS[style.count].moment_s(found.value) if style.count else NOTHING
    return found.value * ELAPSED_S[style.elapsed_unit] if style.elapsed_unit and found.value >= 0 else NOTHING
