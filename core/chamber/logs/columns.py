"""What each column of a log holds: by its head, by its unit, and by its values; what these leave open is asked.

A unit outranks a word, and fifty distinct numbers outrank a head: a probe's name returns, a reading does not.
"""

from __future__ import annotations

import itertools
from collections import Counter

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Column, Role
from core.chamber.logs.column_units import with_unit, with_units
from core.chamber.logs.doubles import without_doubles
from core.chamber.logs.doubts import with_doubts
from core.chamber.logs.naming import named
from core.chamber.logs.scales import Unit
from core.chamber.logs.seen import MOST_PROBES, Seen, see
from core.chamber.logs.table import Table
from core.chamber.logs.values import unit_of

Row = list[str]


def guess(table: Table, times: dict[int, Role]) -> tuple[Column, ...]:
    """The columns as far as they can be known. `times` are the columns already known to hold the time."""
    seen = [see(table, at) for at in range(len(table.head))]
    columns = [
        Column(times[at], each.label, holds_text=each.is_text)
        if at in times
        else Column(_role(each), each.label, holds_text=each.is_text, decimals=each.decimals, mark=each.mark)
        for at, each in enumerate(seen)
    ]
    columns = _with_probe_column(columns, seen, table.rows, times)
    columns = _with_the_unknown_settled(columns, seen)
    columns = with_units(columns, seen)
    columns = without_doubles(columns, seen)
    columns = with_doubts(columns, seen)
    return named(tuple(columns))


def reseen(columns: tuple[Column, ...], index: int, table: Table) -> tuple[Column, ...]:
    """The columns after one has been given another role: its unit looked for, the probes named anew."""
    column = columns[index]
    if column.role in ("temperature", "humidity") and not column.unit:
        column = with_unit(column, see(table, index))
    return named((*columns[:index], column, *columns[index + 1 :]))


def _role(seen: Seen) -> Role:
    by_head = heads.role_in(seen.label)
    if seen.is_text:
        return _role_of_text(seen, by_head)
    if not seen.cells or by_head == "ignored":
        return "ignored"
    unit = _stated_unit(seen)
    by_unit: Role = "temperature" if unit in ("°C", "°F", "K") else "humidity" if unit == "%" else "unknown"
    if by_head != "unknown":
        return by_head if by_unit in ("unknown", by_head) else "unknown"
    if by_unit != "unknown":
        return by_unit
    if heads.names_a_probe(seen.label) or seen.may_number_probes:
        return "unknown"
    return "ignored" if _counts_up(seen) else "unknown"


def _role_of_text(seen: Seen, by_head: Role) -> Role:
    """Text may name the probe. Under the head of a quantity it is one that is not understood, if it has digits."""
    if by_head in ("temperature", "humidity"):
        return by_head if any(map(str.isdigit, "".join(seen.cells))) else "ignored"
    return "unknown" if by_head == "unknown" and not heads.says_state(seen.label) else "ignored"


def _counts_up(seen: Seen) -> bool:
    """A column that numbers the rows."""
    if heads.counts_rows(seen.label) and seen.label:
        return True
    values = seen.values[:50]
    return len(values) > 3 and all(b - a == 1 for a, b in itertools.pairwise(values))


def _stated_unit(seen: Seen) -> Unit:
    units: Counter[Unit] = Counter(each.unit for each in seen.numbers if each is not None)
    written: Unit = max(units, key=units.__getitem__) if units else ""
    return heads.unit_in(seen.label) or unit_of(seen.unit_below) or written


def _with_probe_column(
    columns: list[Column], seen: list[Seen], rows: list[Row], times: dict[int, Role]
) -> list[Column]:
    """At most one column names the probe: by its head, or because the same time returns with each of its names."""
    values = [column.role for column in columns if column.role in ("temperature", "humidity")]
    if max((values.count(role) for role in values), default=0) > 1:
        return [
            evolve(column, role="ignored") if _may_name(column, each) else column
            for column, each in zip(columns, seen, strict=True)
        ]
    candidates = [at for at, column in enumerate(columns) if _may_name(column, seen[at])]
    sure = [at for at in candidates if _surely_names(seen[at]) or _shares_times(rows, at, times)]
    for at in candidates:
        role, may_be = _as_name(seen[at], is_first=sure[:1] == [at], is_other=bool(sure))
        columns = [*columns[:at], evolve(columns[at], role=role, may_be=may_be), *columns[at + 1 :]]
    return columns


def _as_name(seen: Seen, *, is_first: bool, is_other: bool) -> tuple[Role, tuple[Role, ...]]:
    if is_first:
        return "probe", ()
    if is_other or len(set(seen.cells)) == 1:
        return "ignored", ()
    if seen.is_text:
        return "unknown", ()
    if seen.label and not heads.names_a_probe(seen.label) and not heads.counts_rows(seen.label):
        return "unknown", ()  # a state of 0 and 1
    return "unknown", ("probe", "temperature", "humidity", "ignored")


def _surely_names(seen: Seen) -> bool:
    return heads.names_a_probe(seen.label)


def _may_name(column: Column, seen: Seen) -> bool:
    """Names of probes are few; a single number under such a head is the one probe's."""
    if column.role != "unknown" or not seen.cells or len(set(seen.cells)) > MOST_PROBES:
        return False
    is_one = seen.are_whole and len(set(seen.cells)) == 1 and heads.names_a_probe(seen.label)
    return seen.is_text or seen.may_number_probes or is_one


def _shares_times(rows: list[Row], at: int, times: dict[int, Role]) -> bool:
    """Whether one time stands beside several names of the column, and never twice beside the same."""
    moments = [(tuple(row[time] for time in times), row[at]) for row in rows]
    return len(set(moments)) > 0.9 * len(moments) and len({moment for moment, _ in moments}) < 0.9 * len(moments)


def _with_the_unknown_settled(columns: list[Column], seen: list[Seen]) -> list[Column]:
    """Where temperature and humidity are both found, a column that nothing tells is not needed; else it is asked.

    One of many distinct numbers whose head names a probe or a place may be another temperature, and is asked.
    """
    roles = {column.role for column in columns}
    if not {"temperature", "humidity"} <= roles:
        return [
            evolve(column, role="ignored") if column.role == "unknown" and _says_nothing(each) else column
            for column, each in zip(columns, seen, strict=True)
        ]
    return [
        evolve(column, role="ignored") if column.role == "unknown" and _is_not_needed(column, each) else column
        for column, each in zip(columns, seen, strict=True)
    ]


def _is_not_needed(column: Column, seen: Seen) -> bool:
    if column.holds_text or column.may_be:
        return False
    return not (seen.label and heads.tells_where(heads.probe_in(seen.label, False)) and not seen.is_constant)


def _says_nothing(seen: Seen) -> bool:
    return len(seen.cells) > 2 and len(set(seen.cells)) == 1 and bool(seen.label)
