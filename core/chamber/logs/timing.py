"""Which columns of a log hold the time."""

from __future__ import annotations

from itertools import pairwise

from core.chamber.logs import heads
from core.chamber.logs.column import Role
from core.chamber.logs.moments import clock_traits
from core.chamber.logs.spelling import plain
from core.chamber.logs.table import Table, mostly
from core.chamber.logs.time_cells import has_clock, is_date, look_of, may_be_spelled
from core.chamber.logs.time_numbers import is_span, number_kind
from core.chamber.logs.values import number

FEW = 3
"""Rows of which one time in all may be no mistake."""


def columns_of(table: Table) -> dict[int, Role]:
    """The columns that hold the time: one with date and time, or one of each, or one that counts seconds or days."""
    width = len(table.head)
    texts = [at for at in range(width) if mostly(table.column(at), lambda cell: look_of(cell) is not None)]
    running = [at for at in texts if len(set(table.column(at))) > 1 or len(table.rows) < FEW]
    if running:
        return {at: ("time" if at == _liveliest(table, texts) else "ignored") for at in texts}
    dates = [at for at in range(width) if mostly(table.column(at), is_date)]
    clocks = [at for at in range(width) if at not in dates and _is_clock(table, at, beside_a_date=bool(dates))]
    if dates and clocks:
        return {_liveliest(table, dates): "date", _liveliest(table, clocks): "clock"}
    for at in range(width):
        if at not in texts and (number_kind(table, at) or is_span(table, at)):
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
        if mostly(cells := table.column(at), lambda cell: look_of(cell) is not None)
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


def _liveliest(table: Table, columns: list[int]) -> int:
    """The column whose cells change most: the moment of measuring, not that of the download. The first of equals."""
    return max(columns, key=lambda at: (len(set(table.column(at))), -at))


def _is_clock(table: Table, at: int, *, beside_a_date: bool) -> bool:
    """A time of day. Bare digits are one only beside a date, under a head that says so or where each has its zeros."""
    cells = table.column(at)
    if mostly(cells, lambda cell: clock_traits(cell, ":") is not None):
        return True
    if not heads.names_time(table.head[at]):
        return False
    if mostly(cells, lambda cell: clock_traits(cell, ".") is not None):
        return True
    if not beside_a_date:
        return False
    return mostly(cells, lambda cell: may_be_spelled(cell) and has_clock(plain(cell))) or (
        len(set(map(len, cells))) == 1 and mostly(cells, lambda cell: clock_traits(cell, "") is not None)
    )
