"""A trial reading of the sampled lines: what a layout would lose is asked about before it is read."""

from __future__ import annotations

from collections.abc import Sequence

from attrs import evolve

from core.chamber.logs.column import UNITS_FOR, Column, Loss
from core.chamber.logs.layout import Layout
from core.chamber.logs.scales import Unit
from core.chamber.logs.taking import Tables
from core.chamber.logs.values import LONGEST_ECHO

MOST_LOST = 0.05
"""A larger share of lines, or of one column's values, that is not read is asked about."""
LEAST_LOST = 3


def with_losses(layout: Layout, lines: list[str], picked: Sequence[int]) -> Layout:
    """The layout with what it would lose of these lines, whatever is answered to the questions still open."""
    if not layout.decimal or not layout.times.kind or not layout.holding("time", "date"):
        return evolve(layout, losses=())
    if len(layout.holding("time")) + len(layout.holding("date")) > 1 and not layout.side_by_side:
        return evolve(layout, losses=())
    if layout.holding("date") and not layout.holding("clock"):
        return evolve(layout, losses=())
    tables = Tables(_supposed(layout))
    rows = [index for index in picked if index >= layout.first_line - 1]
    tables.take([lines[index] for index in rows], 0, len(rows))
    return evolve(layout, losses=tuple(_losses(tables, lines, rows)))


def _losses(tables: Tables, lines: list[str], rows: Sequence[int]) -> list[Loss]:
    found: list[Loss] = []
    of = len(rows)
    if is_much(len(tables.lost_lines), of):
        line = rows[next(iter(tables.lost_lines)) - 1] + 1
        found.append(Loss(len(tables.lost_lines), of, line, _short(lines[line - 1])))
    for at, lost in tables.lost_values.items():
        if is_much(len(lost), of):
            found.append(Loss(len(lost), of, rows[lost[0][0] - 1] + 1, _short(lost[0][1]), at))
    return found


def is_much(count: int, of: int) -> bool:
    """Lost of so many lines or values: more than a slip or two, and more than a small share."""
    return count >= LEAST_LOST and count > MOST_LOST * of


def _short(text: str) -> str:
    shown = " ".join(text.split())
    return shown if len(shown) <= LONGEST_ECHO else f"{shown[: LONGEST_ECHO - 1]}…"


def _supposed(layout: Layout) -> Layout:
    """The layout with some answer to each open question: what is lost does not hang on which."""
    times = layout.times
    times = evolve(
        times,
        order=times.order or next(iter(times.orders), ""),
        elapsed_unit=times.elapsed_unit or ("h" if times.kind == "span" else "s"),
        count=times.count or next(iter(times.counts), ""),
        tongue=times.tongue or "pl",
    )
    columns = tuple(_with_some_unit(column) for column in layout.columns)
    first = layout.holding("time")[:1]
    held = [
        evolve(column, role="ignored") if column.role == "time" and (at,) != first else column
        for at, column in enumerate(columns)
    ]
    return evolve(layout, times=times, columns=tuple(held))


def _with_some_unit(column: Column) -> Column:
    if column.unit or column.role not in UNITS_FOR:
        return column
    units: tuple[Unit, ...] = column.units or UNITS_FOR[column.role]
    return evolve(column, unit=units[0])
