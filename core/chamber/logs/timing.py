"""Which columns of a log hold the time, and how it is written there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from functools import lru_cache

from attrs import frozen

from core.chamber.logs import heads
from core.chamber.logs.decoding import cells_of
from core.chamber.logs.layout import Kind, Order, Role, TimeStyle
from core.chamber.logs.moments import (
    LIKELY_EPOCH_S,
    LIKELY_SERIAL,
    clock_traits,
    date_mark,
    likelier_order,
    offset_in,
    orders_that_fit,
    split,
    starts_with_a_year,
)
from core.chamber.logs.values import KEPT_TEXTS, number

MOSTLY = 0.8
CLOCK_MARKS = (":", ".", "")

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
    if texts:
        return {at: ("time" if at == _liveliest(table, texts) else "ignored") for at in texts}
    dates = [at for at in range(width) if _mostly(table.column(at), lambda cell: date_mark(cell) is not None)]
    clocks = [at for at in range(width) if at not in dates and _is_clock(table, at)]
    if dates and clocks:
        return {_liveliest(table, dates): "date", _liveliest(table, clocks): "clock"}
    for at in range(width):
        if _number_kind(table, at):
            return {at: "time"}
    return dict.fromkeys(dates[:1], "date")


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
        kind: Kind = _number_kind(table, at) or ("elapsed" if _mostly(table.column(at), _is_number(table)) else "")
        unit = heads.elapsed_unit_in(table.head[at]) or heads.elapsed_unit_in(table.units[at])
        return TimeStyle(kind=kind, offset_s=offset_s, elapsed_unit=unit if kind == "elapsed" else "")
    look = looks.most_common(1)[0][0]
    dates = Counter(_dates_of(_date_cells(table, at, look), look.clock_mark))
    return _text_style(table, look, dates, at, offset_s)


def _style_in_two(table: Table, date_at: int, clock_at: int) -> TimeStyle:
    marks = Counter(mark for cell in table.column(date_at) if (mark := date_mark(cell)) is not None)
    looks = Counter(
        (mark, traits)
        for cell in table.column(clock_at)
        for mark in CLOCK_MARKS
        if (traits := clock_traits(cell, mark)) is not None
    )
    if not marks or not looks:
        return TimeStyle()
    clock_mark, (twelve, offset) = looks.most_common(1)[0][0]
    look = _Look(marks.most_common(1)[0][0], clock_mark, twelve, offset)
    dates = Counter(_date_cells(table, date_at, look))
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
    """How a cell with date and time is written, None for any other."""
    for clock_mark in CLOCK_MARKS:
        before, after = split(cell, clock_mark)
        if not before or not after:
            continue
        mark, traits = date_mark(before), clock_traits(after, clock_mark)
        if mark is not None and traits is not None:
            return _Look(mark, clock_mark, *traits)
    return None


def _mostly(cells: Row, is_so: Callable[[str], bool]) -> bool:
    count = sum(1 for cell in cells if is_so(cell))
    return bool(cells) and count >= MOSTLY * len(cells)


def _liveliest(table: Table, columns: list[int]) -> int:
    """The column whose cells change most: the moment of measuring, not that of the download. The first of equals."""
    return max(columns, key=lambda at: (len(set(table.column(at))), -at))


def _is_clock(table: Table, at: int) -> bool:
    cells = table.column(at)
    if _mostly(cells, lambda cell: clock_traits(cell, ":") is not None):
        return True
    return heads.names_time(table.head[at]) and _mostly(cells, lambda cell: clock_traits(cell, ".") is not None)


def _is_number(table: Table) -> Callable[[str], bool]:
    return lambda cell: number(cell, table.decimal) is not None


def _number_kind(table: Table, at: int) -> Kind:
    """Seconds, milliseconds or days that a column counts, told by their size and, where need be, its head."""
    cells = table.column(at)
    kinds = Counter(_kind_of_number(cell, table.decimal) for cell in cells)
    kind, count = kinds.most_common(1)[0] if kinds else ("", 0)
    named = heads.names_time(table.head[at])
    if kind in ("epoch_s", "epoch_ms") and count >= MOSTLY * len(cells):
        return kind
    if kind == "spreadsheet" and count >= MOSTLY * len(cells) and (named or at == 0):
        return kind
    return (
        "elapsed" if named and _mostly(cells, _is_number(table)) and heads.role_in(table.head[at]) != "humidity" else ""
    )


def _kind_of_number(cell: str, decimal: str) -> Kind:
    found = number(cell, decimal)
    if found is None or found.unit:
        return ""
    if LIKELY_EPOCH_S[0] <= found.value <= LIKELY_EPOCH_S[1]:
        return "epoch_s"
    if LIKELY_EPOCH_S[0] <= found.value / 1000 <= LIKELY_EPOCH_S[1]:
        return "epoch_ms"
    return "spreadsheet" if LIKELY_SERIAL[0] <= found.value <= LIKELY_SERIAL[1] and found.decimals > 2 else ""


def _offset_above(table: Table, at: int) -> int | None:
    told = offset_in(table.head[at])
    return offset_in(table.units[at]) if told is None else told
