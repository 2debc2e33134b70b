"""How the time is written in the columns that hold it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Kind, Order, Role, TimeStyle
from core.chamber.logs.counting import CERTAIN, has_two_parts
from core.chamber.logs.date_order import likelier_order, orders_that_fit, starts_with_a_year
from core.chamber.logs.decoding import cells_of
from core.chamber.logs.moments import clock_traits, date_mark, offset_in, split
from core.chamber.logs.spelling import plain, shared_month
from core.chamber.logs.table import Table, mostly
from core.chamber.logs.time_cells import CLOCK_MARKS, LIKELIER_TONGUE, Look, has_clock, look_of
from core.chamber.logs.time_numbers import counts_of, is_number, is_span, number_kind


def style_of(table: Table, roles: dict[int, Role]) -> TimeStyle:
    """How the time is written in the columns with these roles; kind "" where it is not understood."""
    at = {role: index for index, role in roles.items()}
    if "time" in at:
        return _style_in_one(table, at["time"])
    if "date" in at and "clock" in at:
        return _style_in_two(table, at["date"], at["clock"])
    return TimeStyle()


def _style_in_one(table: Table, at: int) -> TimeStyle:
    looks = Counter(look for cell in table.column(at) if (look := look_of(cell)) is not None)
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
    if is_span(table, at):
        is_clear = not all(has_two_parts(cell) for cell in table.column(at))
        return TimeStyle(kind="span", elapsed_unit="h" if is_clear else "")
    kind: Kind = number_kind(table, at) or ("elapsed" if mostly(table.column(at), is_number(table)) else "")
    if kind == "count":
        counts = counts_of(table, at)
        is_sure = len(counts) == 1 and counts[0] in CERTAIN
        return TimeStyle(kind=kind, counts=counts, count=counts[0] if is_sure else "")
    unit = heads.elapsed_unit_in(table.head[at]) or heads.elapsed_unit_in(table.units[at])
    return TimeStyle(kind=kind, elapsed_unit=unit if kind == "elapsed" else "")


def _style_in_two(table: Table, date_at: int, clock_at: int) -> TimeStyle:
    dates, clocks = table.column(date_at), table.column(clock_at)
    spelled = not mostly(dates, lambda cell: date_mark(cell) is not None) or not mostly(clocks, has_clock)
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
    look = Look(max(marks, key=marks.__getitem__), clock_mark, twelve, offset, spelled)
    cells = _date_cells(table, date_at, look)
    dates = Counter([plain(cell, LIKELIER_TONGUE) for cell in cells] if look.spelled else cells)
    return _text_style(table, look, dates, date_at, _offset_above(table, clock_at))


def _dates_of(cells: Sequence[str], clock_mark: str) -> list[str]:
    """What `split` gives of each cell, without a call for every one where they are many."""
    if clock_mark == ":":
        return [cell[: max(0, cell.find(":") - 2)] for cell in cells]
    return [split(cell, clock_mark)[0] for cell in cells]


def _text_style(table: Table, look: Look, cells: Counter[str], at: int, offset_s: int | None) -> TimeStyle:
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


def _date_cells(table: Table, at: int, look: Look) -> Sequence[str]:
    """The sampled cells where the order is plain; else those of every line: few of them may tell a day from a month."""
    sample = table.column(at)
    is_plain = look.date_mark in ("", "a") or mostly(sample, starts_with_a_year)
    return sample if is_plain else _cells_down(table, at)


def _cells_down(table: Table, at: int) -> list[str]:
    separator = None if table.separator == " " else table.separator
    rows = [
        line.split(separator, at + 1) if '"' not in line else cells_of(line, table.separator) or ()
        for line in table.lines
    ]
    return [cells[at] for cells in rows if len(cells) > at]


def _offset_above(table: Table, at: int) -> int | None:
    told = offset_in(table.head[at])
    return offset_in(table.units[at]) if told is None else told
