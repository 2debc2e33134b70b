"""Times that a column counts: seconds of this century, days of a spreadsheet, a span since a start."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from itertools import pairwise

from core.chamber.logs import heads
from core.chamber.logs.column import Kind
from core.chamber.logs.counting import DAY_S, YEAR_2000_S, YEAR_2060_S, counts_that_fit, span_of
from core.chamber.logs.moments import LIKELY_SERIAL
from core.chamber.logs.table import MOSTLY, Table, mostly
from core.chamber.logs.values import number


def number_kind(table: Table, at: int) -> Kind:
    """Seconds, milliseconds or days that a column counts, known by their size and, where need be, its head."""
    cells = table.column(at)
    kinds = Counter(kind_of_number(cell, table.decimal) for cell in cells)
    kind = max(kinds, key=kinds.__getitem__, default="")
    is_sure = kinds[kind] >= MOSTLY * len(cells)
    named = heads.names_time(table.head[at])
    if kind in ("epoch_s", "epoch_ms") and is_sure:
        return kind
    if kind == "spreadsheet" and is_sure and (named or at == 0):
        return kind
    if (named or at == 0) and mostly(cells, is_number(table)) and counts_of(table, at):
        return "count"
    return (
        "elapsed" if named and mostly(cells, is_number(table)) and heads.role_in(table.head[at]) != "humidity" else ""
    )


def kind_of_number(cell: str, decimal: str) -> Kind:
    found = number(cell, decimal)
    if found is None or found.unit:
        return ""
    if YEAR_2000_S <= found.value < YEAR_2060_S:
        return "epoch_s"
    if YEAR_2000_S <= found.value / 1000 < YEAR_2060_S:
        return "epoch_ms"
    return "spreadsheet" if LIKELY_SERIAL[0] <= found.value <= LIKELY_SERIAL[1] and found.decimals > 2 else ""


def is_span(table: Table, at: int) -> bool:
    """Time since a start as 36:10: it does not fall, and goes past a day, or begins at nothing or under such a head."""
    cells = table.column(at)
    spans = [span for cell in cells if (span := span_of(cell)) == span]
    if len(spans) < MOSTLY * len(cells) or len(spans) < 2 or any(b < a for a, b in pairwise(spans)):
        return False
    return spans[-1] >= DAY_S or spans[0] <= spans[1] - spans[0] or heads.counts_from_a_start(table.head[at])


def counts_of(table: Table, at: int) -> tuple[str, ...]:
    values = [each.value for cell in table.column(at) if (each := number(cell, table.decimal)) is not None]
    return counts_that_fit(values)


def is_number(table: Table) -> Callable[[str], bool]:
    return lambda cell: number(cell, table.decimal) is not None
