"""Which columns of a log hold the time, and how it is written there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import pairwise

from attrs import evolve, frozen

from core.chamber.logs import heads
from core.chamber.logs.column import Kind, Order, Role, TimeStyle
from core.chamber.logs.counting import (
    CERTAIN,
    DAY_S,
    YEAR_2000_S,
    YEAR_2060_S,
    counts_that_fit,
    has_two_parts,
    span_of,
)
from core.chamber.logs.decoding import KEPT_TEXTS, cells_of
from core.chamber.logs.moments import (
    LIKELY_SERIAL,
    clock_traits,
    date_mark,
    likelier_order,
    offset_in,
    orders_that_fit,
    split,
    starts_with_a_year,
)
from core.chamber.logs.spelling import LONGEST, plain, shared_month
from core.chamber.logs.values import number

MOSTLY = 0.8
FEW = 3
"""Rows of which one time in all may be no mistake."""
CLOCK_MARKS = (":", ".", "")
LIKELIER_TONGUE = "pl"
"""For how a date looks it makes no difference which month a shared word means."""

Row = list[str]


@frozen
class Table:
    """What is looked at: sampled rows, the heads and units above them, and every line from the first row on."""

    rows: list[Row]
    head: Row
    units: Row
    lines: list[str]
    separator: str
    decimal: str

    def column(self, at: int) -> Row:
        return [row[at].strip() for row in self.rows if row[at].strip()]


@frozen
class _Look:
    date_mark: str
    clock_mark: str
    twelve_hours: bool
    offset_written: bool
    spelled: bool = False


def is_moment(cell: str) -> bool:
    """Whether a cell holds a date, with or without a time of day, or seconds of this century."""
    return (
        date_mark(cell) is not None or _look(cell) is not None or _kind_of_number(cell, ".") in ("epoch_s", "epoch_ms")
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


def columns_of(table: Table) -> dict[int, Role]:
    """The columns that hold the time: one with date and time, or one of each, or one that counts seconds or days."""
    width = len(table.head)
    texts = [at for at in range(width) if _mostly(table.column(at), lambda cell: _look(cell) is not None)]
    running = [at for at in texts if len(set(table.column(at))) > 1 or len(table.rows) < FEW]
    if running:
        return {at: ("time" if at == _liveliest(table, texts) else "ignored") for at in texts}
    dates = [at for at in range(width) if _mostly(table.column(at), _is_date)]
    clocks = [at for at in range(width) if at not in dates and _is_clock(table, at, beside_a_date=bool(dates))]
    if dates and clocks:
        return {_liveliest(table, dates): "date", _liveliest(table, clocks): "clock"}
    for at in range(width):
        if at not in texts and (_number_kind(table, at) or _is_span(table, at)):
            others: dict[int, Role] = dict.fromkeys(texts, "ignored")
            return {at: "time", **others}
    return dict.fromkeys(texts[:1], "time") or dict.fromkeys(dates[:1], "date")


def not_understood(table: Table) -> str:
    """The text that comes nearest to a moment where no column is one: what to say of a file without times."""
    likely = [at for at in range(len(table.head)) if heads.names_time(table.head[at])]
    texts = [cell for at in (*likely, *range(len(table.head))) for cell in table.column(at)[:1]]
    return next((text for text in texts if sum(map(str.isdigit, text)) > 2), texts[0] if texts else "")


def clocks_apart(table: Table) -> tuple[int, ...]:
    """The columns of date and time that run, where there is more than one and they differ."""
    running = [
        at
        for at in range(len(table.head))
        if _mostly(cells := table.column(at), lambda cell: _look(cell) is not None)
        and len(set(cells)) * 2 > len(cells) > 2
    ]
    apart = {at for at in running if table.column(at) != table.column(running[0])}
    return tuple(at for at in running if apart and (at == running[0] or at in apart))


def rising(table: Table) -> tuple[int, ...]:
    """The columns of numbers that rise from row to row as time does, or fall throughout."""
    found: list[int] = []
    for at in range(len(table.head)):
        values = [each.value for cell in table.column(at) if (each := number(cell, table.decimal)) is not None]
        steps = [b - a for a, b in pairwise(values)]
        if len(steps) > 1 and (min(steps) > 0 or max(steps) < 0):
            found.append(at)
    return tuple(found)


def _is_date(cell: str) -> bool:
    return date_mark(cell) is not None or (
        _may_be_spelled(cell) and date_mark(plain(cell, LIKELIER_TONGUE)) is not None
    )


def style_of(table: Table, roles: dict[int, Role]) -> TimeStyle:
    """How the time is written in the columns with these roles; kind "" where it is not understood."""
    at = {role: index for index, role in roles.items()}
    if "time" in at:
        return _style_in_one(table, at["time"])
    if "date" in at and "clock" in at:
        return _style_in_two(table, at["date"], at["clock"])
    return TimeStyle()


def _style_in_one(table: Table, at: int) -> TimeStyle:
    looks = Counter(look for cell in table.column(at) if (look := _look(cell)) is not None)
    offset_s = _offset_above(table, at)
    if not looks:
        return evolve(_style_of_numbers(table, at), offset_s=offset_s, example=next(iter(table.column(at)), ""))
    look = max(looks, key=looks.__getitem__)
    cells = _date_cells(table, at, look)
    dates = Counter(
        _dates_of([plain(cell, LIKELIER_TONGUE) for cell in cells] if look.spelled else cells, look.clock_mark)
    )
    return _text_style(table, look, dates, at, offset_s)


def _style_of_numbers(table: Table, at: int) -> TimeStyle:
    if _is_span(table, at):
        is_told = not all(has_two_parts(cell) for cell in table.column(at))
        return TimeStyle(kind="span", elapsed_unit="h" if is_told else "")
    kind: Kind = _number_kind(table, at) or ("elapsed" if _mostly(table.column(at), _is_number(table)) else "")
    if kind == "count":
        counts = _counts(table, at)
        is_sure = len(counts) == 1 and counts[0] in CERTAIN
        return TimeStyle(kind=kind, counts=counts, count=counts[0] if is_sure else "")
    unit = heads.elapsed_unit_in(table.head[at]) or heads.elapsed_unit_in(table.units[at])
    return TimeStyle(kind=kind, elapsed_unit=unit if kind == "elapsed" else "")


def _style_in_two(table: Table, date_at: int, clock_at: int) -> TimeStyle:
    dates, clocks = table.column(date_at), table.column(clock_at)
    spelled = not _mostly(dates, lambda cell: date_mark(cell) is not None) or not _mostly(clocks, _has_clock)
    if spelled:
        dates = [plain(cell, LIKELIER_TONGUE) for cell in dates]
        clocks = [plain(cell) for cell in clocks]
    marks = Counter(mark for cell in dates if (mark := date_mark(cell)) is not None)
    looks = Counter(
        (mark, traits) for cell in clocks for mark in CLOCK_MARKS if (traits := clock_traits(cell, mark)) is not None
    )
    if not marks or not looks:
        return TimeStyle()
    clock_mark, (twelve, offset) = max(looks, key=looks.__getitem__)
    look = _Look(max(marks, key=marks.__getitem__), clock_mark, twelve, offset, spelled)
    cells = _date_cells(table, date_at, look)
    dates = Counter([plain(cell, LIKELIER_TONGUE) for cell in cells] if look.spelled else cells)
    return _text_style(table, look, dates, date_at, _offset_above(table, clock_at))


def _dates_of(cells: Sequence[str], clock_mark: str) -> list[str]:
    """What `split` gives of each cell, without a call for every one where they are many."""
    if clock_mark == ":":
        return [cell[: max(0, cell.find(":") - 2)] for cell in cells]
    return [split(cell, clock_mark)[0] for cell in cells]


def _text_style(table: Table, look: _Look, cells: Counter[str], at: int, offset_s: int | None) -> TimeStyle:
    dates: Counter[str] = Counter()
    for cell, rows in cells.items():
        dates[cell.strip(" T,\u00a0")] += rows
    written = [(text, rows) for text, rows in dates.items() if date_mark(text) == look.date_mark]
    orders = orders_that_fit(written, look.date_mark)
    told: Order = heads.order_in(table.head[at]) or heads.order_in(table.units[at])
    if told in orders:
        orders = (told,)
    return TimeStyle(
        kind="text" if orders else "",
        order=orders[0] if len(orders) == 1 else "",
        orders=orders,
        likelier=likelier_order(written, orders, look.date_mark),
        date_mark=look.date_mark,
        clock_mark=look.clock_mark,
        twelve_hours=look.twelve_hours,
        offset_written=look.offset_written,
        offset_s=offset_s,
        spelled=look.spelled,
        shared_month=next((word for cell in table.column(at) if (word := shared_month(cell))), ""),
    )


def _date_cells(table: Table, at: int, look: _Look) -> Sequence[str]:
    """The sampled cells where the order is plain; else those of every line: few of them may tell a day from a month."""
    sample = table.column(at)
    is_plain = look.date_mark in ("", "a") or _mostly(sample, starts_with_a_year)
    return sample if is_plain else _cells_down(table, at)


def _cells_down(table: Table, at: int) -> list[str]:
    separator = None if table.separator == " " else table.separator
    rows = [
        line.split(separator, at + 1) if '"' not in line else cells_of(line, table.separator) or ()
        for line in table.lines
    ]
    return [cells[at] for cells in rows if len(cells) > at]


@lru_cache(maxsize=KEPT_TEXTS)
def _look(cell: str) -> _Look | None:
    """How a cell with date and time is written, as it is or in plain writing; None for any other."""
    if (look := _look_of(cell)) is not None or not _may_be_spelled(cell):
        return look
    look = _look_of(plain(cell, LIKELIER_TONGUE))
    return look and evolve(look, spelled=True)


def _look_of(cell: str) -> _Look | None:
    for clock_mark in CLOCK_MARKS:
        before, after = split(cell, clock_mark)
        if not before or not after:
            continue
        mark, traits = date_mark(before), clock_traits(after, clock_mark)
        if mark is not None and traits is not None:
            return _Look(mark, clock_mark, *traits)
    return None


def _may_be_spelled(cell: str) -> bool:
    """Whether a cell is worth turning into plain writing: it has signs beside its digits, and is not that already."""
    return (
        len(cell) <= LONGEST
        and not cell.replace(".", "").replace(",", "").isdecimal()
        and plain(cell, LIKELIER_TONGUE) != cell
    )


def _has_clock(cell: str) -> bool:
    return any(clock_traits(cell, mark) is not None for mark in CLOCK_MARKS)


def _mostly(cells: Row, is_so: Callable[[str], bool]) -> bool:
    count = sum(1 for cell in cells if is_so(cell))
    return bool(cells) and count >= MOSTLY * len(cells)


def _liveliest(table: Table, columns: list[int]) -> int:
    """The column whose cells change most: the moment of measuring, not that of the download. The first of equals."""
    return max(columns, key=lambda at: (len(set(table.column(at))), -at))


def _is_clock(table: Table, at: int, *, beside_a_date: bool) -> bool:
    """A time of day. Bare digits are one only beside a date, under a head that says so or where each has its zeros."""
    cells = table.column(at)
    if _mostly(cells, lambda cell: clock_traits(cell, ":") is not None):
        return True
    if not heads.names_time(table.head[at]):
        return False
    if _mostly(cells, lambda cell: clock_traits(cell, ".") is not None):
        return True
    if not beside_a_date:
        return False
    return _mostly(cells, lambda cell: _may_be_spelled(cell) and _has_clock(plain(cell))) or (
        len(set(map(len, cells))) == 1 and _mostly(cells, lambda cell: clock_traits(cell, "") is not None)
    )


def _is_span(table: Table, at: int) -> bool:
    """Time since a start as 36:10: it does not fall, and goes past a day, or begins at nothing or under such a head."""
    cells = table.column(at)
    spans = [span for cell in cells if (span := span_of(cell)) == span]
    if len(spans) < MOSTLY * len(cells) or len(spans) < 2 or any(b < a for a, b in pairwise(spans)):
        return False
    return spans[-1] >= DAY_S or spans[0] <= spans[1] - spans[0] or heads.counts_from_a_start(table.head[at])


def _counts(table: Table, at: int) -> tuple[str, ...]:
    values = [each.value for cell in table.column(at) if (each := number(cell, table.decimal)) is not None]
    return counts_that_fit(values)


def _is_number(table: Table) -> Callable[[str], bool]:
    return lambda cell: number(cell, table.decimal) is not None


def _number_kind(table: Table, at: int) -> Kind:
    """Seconds, milliseconds or days that a column counts, told by their size and, where need be, its head."""
    cells = table.column(at)
    kinds = Counter(_kind_of_number(cell, table.decimal) for cell in cells)
    kind = max(kinds, key=kinds.__getitem__, default="")
    is_sure = kinds[kind] >= MOSTLY * len(cells)
    named = heads.names_time(table.head[at])
    if kind in ("epoch_s", "epoch_ms") and is_sure:
        return kind
    if kind == "spreadsheet" and is_sure and (named or at == 0):
        return kind
    if (named or at == 0) and _mostly(cells, _is_number(table)) and _counts(table, at):
        return "count"
    return (
        "elapsed" if named and _mostly(cells, _is_number(table)) and heads.role_in(table.head[at]) != "humidity" else ""
    )


def _kind_of_number(cell: str, decimal: str) -> Kind:
    found = number(cell, decimal)
    if found is None or found.unit:
        return ""
    if YEAR_2000_S <= found.value < YEAR_2060_S:
        return "epoch_s"
    if YEAR_2000_S <= found.value / 1000 < YEAR_2060_S:
        return "epoch_ms"
    return "spreadsheet" if LIKELY_SERIAL[0] <= found.value <= LIKELY_SERIAL[1] and found.decimals > 2 else ""


def _offset_above(table: Table, at: int) -> int | None:
    told = offset_in(table.head[at])
    return offset_in(table.units[at]) if told is None else told
