"""How a moment looks in one cell: its date, its clock, and what marks part them."""

from __future__ import annotations

from functools import lru_cache

from attrs import evolve, frozen

from core.chamber.logs.decoding import KEPT_TEXTS
from core.chamber.logs.moments import clock_traits, date_mark, split
from core.chamber.logs.spelling import LONGEST, plain
from core.chamber.logs.table import Row
from core.chamber.logs.time_numbers import kind_of_number
from core.chamber.logs.values import number

CLOCK_MARKS = (":", ".", "")
LIKELIER_TONGUE = "pl"
"""For how a date looks it makes no difference which month a shared word means."""


@frozen
class Look:
    date_mark: str
    clock_mark: str
    twelve_hours: bool
    offset_written: bool
    spelled: bool = False


def is_moment(cell: str) -> bool:
    """Whether a cell holds a date, with or without a time of day, or seconds of this century."""
    return (
        date_mark(cell) is not None or look_of(cell) is not None or kind_of_number(cell, ".") in ("epoch_s", "epoch_ms")
    )


def is_row(cells: Row) -> bool:
    """Whether a line may be a row of a log: a moment and a number beside it, or two numbers."""
    numbers = sum(1 for cell in cells if number(cell, ".") or number(cell, ","))
    if numbers < 1:
        return False
    return numbers > 1 or any(is_moment(cell) for cell in cells)


def leading(cells: Row) -> int:
    """How many cells at a row's front hold its time."""
    for at, cell in enumerate(cells):
        if not is_moment(cell) and clock_traits(cell, ":") is None:
            return at
    return len(cells)


@lru_cache(maxsize=KEPT_TEXTS)
def look_of(cell: str) -> Look | None:
    """How a cell with date and time is written, as it is or in plain writing; None for any other."""
    if (look := _as_it_is(cell)) is not None or not may_be_spelled(cell):
        return look
    look = _as_it_is(plain(cell, LIKELIER_TONGUE))
    return look and evolve(look, spelled=True)


def _as_it_is(cell: str) -> Look | None:
    for clock_mark in CLOCK_MARKS:
        before, after = split(cell, clock_mark)
        if not before or not after:
            continue
        mark, traits = date_mark(before), clock_traits(after, clock_mark)
        if mark is not None and traits is not None:
            return Look(mark, clock_mark, *traits)
    return None


def may_be_spelled(cell: str) -> bool:
    """Whether a cell is worth turning into plain writing: it has signs beside its digits, and is not that already."""
    return (
        len(cell) <= LONGEST
        and not cell.replace(".", "").replace(",", "").isdecimal()
        and plain(cell, LIKELIER_TONGUE) != cell
    )


def has_clock(cell: str) -> bool:
    return any(clock_traits(cell, mark) is not None for mark in CLOCK_MARKS)


def is_date(cell: str) -> bool:
    return date_mark(cell) is not None or (may_be_spelled(cell) and date_mark(plain(cell, LIKELIER_TONGUE)) is not None)
