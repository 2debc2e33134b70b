"""What each column of a log holds: by its head, by its unit, and by its values where these leave one meaning."""

from __future__ import annotations

import itertools
import math
from collections import Counter

from attrs import evolve, frozen

from core.chamber.logs import heads
from core.chamber.logs.layout import Column, Role, Unit
from core.chamber.logs.naming import ITS_HEAD_ENDS_IN_IT, named
from core.chamber.logs.timing import Table
from core.chamber.logs.values import Number, number, unit_of

LEAST_FOR_DECIMALS = 20
MOST_PROBES = 50
MOSTLY, NEARLY_ALL = 0.9, 0.95
COOL_C, ROOM_C = 5.0, 25.0
"""Between them a number is °C: as °F it would be -15 to -4 °C, where nothing cures, ferments or is kept unfrozen."""
COOL_F, HOT_F = 45.0, 90.0
"""Between them it is °F: as °C it would cook the meat."""

Row = list[str]


@frozen
class _Seen:
    """One column of the sample."""

    label: str
    unit_below: str
    cells: Row
    numbers: list[Number | None]
    row_by_row: list[Number | None]

    @property
    def values(self) -> list[float]:
        return [each.value for each in self.numbers if each is not None]

    @property
    def is_text(self) -> bool:
        return bool(self.cells) and len(self.values) * 2 < len(self.cells)


def guess(table: Table, times: dict[int, Role]) -> tuple[Column, ...]:
    """The columns as far as they can be told. `times` are the columns already known to hold the time."""
    seen = [_seen(table, at) for at in range(len(table.head))]
    columns = [
        Column(times[at], each.label, holds_text=each.is_text)
        if at in times
        else Column(_role(each), each.label, holds_text=each.is_text, decimals=_decimals(each))
        for at, each in enumerate(seen)
    ]
    columns = _with_probe_column(columns, seen, table.rows, times)
    columns = _with_the_unknown_settled(columns, seen)
    columns = _with_units(columns, seen)
    columns = _without_doubles(columns, seen)
    return named(tuple(columns))


def reseen(columns: tuple[Column, ...], index: int, table: Table) -> tuple[Column, ...]:
    """The columns after one has been given another role: its unit looked for, the probes named anew."""
    column = columns[index]
    if column.role in ("temperature", "humidity") and not column.unit:
        column = _with_unit(column, _seen(table, index), "")
    return named((*columns[:index], column, *columns[index + 1 :]))


def _seen(table: Table, at: int) -> _Seen:
    cells = [row[at].strip() for row in table.rows]
    numbers = [number(cell, table.decimal) for cell in cells]
    filled = [(cell, each) for cell, each in zip(cells, numbers, strict=True) if cell]
    return _Seen(table.head[at], table.units[at], [cell for cell, _ in filled], [each for _, each in filled], numbers)


def _role(seen: _Seen) -> Role:
    by_head = heads.role_in(seen.label)
    if seen.is_text and not (by_head in ("temperature", "humidity") and seen.values):
        return "unknown" if seen.cells and by_head == "unknown" and not heads.says_state(seen.label) else "ignored"
    if by_head != "unknown":
        return by_head
    if not seen.cells or heads.names_a_probe(seen.label):
        return "unknown" if seen.cells else "ignored"
    unit = _stated_unit(seen)
    if unit in ("°C", "°F"):
        return "temperature"
    if unit == "%":
        return "humidity"
    return "ignored" if _counts_up(seen) else "unknown"


def _counts_up(seen: _Seen) -> bool:
    """A column that numbers the rows."""
    if heads.counts_rows(seen.label) and seen.label:
        return True
    values = seen.values[:50]
    return len(values) > 3 and all(b - a == 1 for a, b in itertools.pairwise(values))


def _stated_unit(seen: _Seen) -> Unit:
    units: Counter[Unit] = Counter(each.unit for each in seen.numbers if each is not None)
    written: Unit = units.most_common(1)[0][0] if units else ""
    return heads.unit_in(seen.label) or unit_of(seen.unit_below) or written


def _decimals(seen: _Seen) -> int | None:
    """How many decimals all cells have but the few that may be broken; None where loggers drop zeros at the end."""
    counts = Counter(each.decimals for each in seen.numbers if each is not None)
    if len(seen.values) < LEAST_FOR_DECIMALS:
        return None
    decimals, count = counts.most_common(1)[0]
    return decimals or None if count >= NEARLY_ALL * len(seen.values) else None


def _with_probe_column(
    columns: list[Column], seen: list[_Seen], rows: list[Row], times: dict[int, Role]
) -> list[Column]:
    """At most one column names the probe: by its head, or because the same time returns with each of its names."""
    values = [column.role for column in columns if column.role in ("temperature", "humidity")]
    if max((values.count(role) for role in values), default=0) > 1:
        return [
            evolve(column, role="ignored") if _is_name(column, each) else column
            for column, each in zip(columns, seen, strict=True)
        ]
    candidates = [
        at
        for at, column in enumerate(columns)
        if _is_name(column, seen[at]) and len(set(seen[at].cells)) <= MOST_PROBES
    ]
    sure = [at for at in candidates if heads.names_a_probe(seen[at].label) or _shares_times(rows, at, times)]
    for at in candidates:
        alone = len(set(seen[at].cells)) == 1 and not heads.names_a_probe(seen[at].label)
        role: Role = "probe" if sure[:1] == [at] else "ignored" if sure or alone else "unknown"
        columns = [*columns[:at], evolve(columns[at], role=role), *columns[at + 1 :]]
    return columns


def _is_name(column: Column, seen: _Seen) -> bool:
    return column.role == "unknown" and bool(seen.cells) and (seen.is_text or heads.names_a_probe(seen.label))


def _shares_times(rows: list[Row], at: int, times: dict[int, Role]) -> bool:
    """Whether one time stands beside several names of the column, and never twice beside the same."""
    moments = [(tuple(row[time] for time in times), row[at]) for row in rows]
    return len(set(moments)) > 0.9 * len(moments) and len({moment for moment, _ in moments}) < 0.9 * len(moments)


def _with_the_unknown_settled(columns: list[Column], seen: list[_Seen]) -> list[Column]:
    """Where temperature and humidity are both found, a column that nothing tells is not needed; else it is asked."""
    roles = {column.role for column in columns}
    if not {"temperature", "humidity"} <= roles:
        return [
            evolve(column, role="ignored") if column.role == "unknown" and _constant(each) else column
            for column, each in zip(columns, seen, strict=True)
        ]
    return [
        evolve(column, role="ignored") if column.role == "unknown" and not column.holds_text else column
        for column in columns
    ]


def _constant(seen: _Seen) -> bool:
    return len(seen.cells) > 2 and len(set(seen.cells)) == 1 and bool(seen.label)


def _with_units(columns: list[Column], seen: list[_Seen]) -> list[Column]:
    letters = _letters_that_are_units(columns, seen)
    return [
        _with_unit(column, each, letters.get(at, "")) if column.role in ("temperature", "humidity") else column
        for at, (column, each) in enumerate(zip(columns, seen, strict=True))
    ]


def _with_unit(column: Column, seen: _Seen, letter: Unit) -> Column:
    fits = ("°C", "°F") if column.role == "temperature" else ("%",)
    numbers = [each for each in seen.numbers if each is not None]
    written = sum(1 for each in numbers if each.unit in fits)
    stated: list[tuple[Unit, str]] = [
        ("written" if numbers and written >= MOSTLY * len(numbers) else "", "each cell says it"),
        (heads.unit_in(seen.label), "its head says it"),
        (unit_of(seen.unit_below) or "", "the row of units says it"),
        (letter, ITS_HEAD_ENDS_IN_IT),
    ]
    for unit, why in stated:
        if unit == "written" or unit in fits:
            return evolve(column, unit=unit, why_unit=why)
    unit, why = _unit_by_values(column.role, seen.values)
    return evolve(column, unit=unit, why_unit=why)


def _unit_by_values(role: Role, values: list[float]) -> tuple[Unit, str]:
    """The unit that most values leave no doubt of; "" where both are possible. One reading in twenty may be broken."""
    if not values:
        return "", ""
    ordered = sorted(values)
    low, high = ordered[len(ordered) // 20], ordered[-1 - len(ordered) // 20]
    if role == "humidity":
        if high > 1.5:
            return "%", "its values are above 1.5"
        return ("fraction", "its values lie between 0.2 and 1.1") if low >= 0.2 and high <= 1.1 else ("", "")
    if low >= COOL_C and high <= ROOM_C:
        return "°C", "as °F its values would be those of a freezer"
    if low >= COOL_F and high <= HOT_F:
        return "°F", "as °C its values would cook the meat"
    return "", ""


def _letters_that_are_units(columns: list[Column], seen: list[_Seen]) -> dict[int, Unit]:
    """C or F at the end of a head is a unit, unless the columns are lettered as probes are: Temp A, Temp B, Temp C."""
    ends = {at: heads.end_letter(each.label) for at, each in enumerate(seen) if heads.end_letter(each.label)}
    values = [at for at, column in enumerate(columns) if column.role in ("temperature", "humidity")]
    used = {ends[at] for at in values if at in ends}
    humid = any(columns[at].role == "humidity" and at in ends for at in values)
    if humid or not used or used - {"C", "F"} or (len(used) == 2 and not _one_is_the_other(ends, seen)):
        return {}
    return {at: "°F" if ends[at] == "F" else "°C" for at in values if at in ends}


def _one_is_the_other(ends: dict[int, str], seen: list[_Seen]) -> bool:
    celsius = [seen[at] for at, end in ends.items() if end == "C"]
    fahrenheit = [seen[at] for at, end in ends.items() if end == "F"]
    return any(_agree(a, "°C", b, "°F", 0.2) for a in celsius for b in fahrenheit)


def _without_doubles(columns: list[Column], seen: list[_Seen]) -> list[Column]:
    """A temperature given again in °F, and a dew point that its head does not call one, are no probes."""
    warm = [at for at, column in enumerate(columns) if column.role == "temperature"]
    humid = [at for at, column in enumerate(columns) if column.role == "humidity"]
    doubles = {
        at
        for at in warm
        for other in warm
        if other != at
        and (
            _is_double(columns, seen, other, at)
            or (
                heads.role_in(seen[at].label) == "unknown"
                and any(_is_dew_point(columns, seen, at, other, wet) for wet in humid)
            )
        )
    }
    return [evolve(column, role="ignored") if at in doubles else column for at, column in enumerate(columns)]


def _is_double(columns: list[Column], seen: list[_Seen], celsius: int, fahrenheit: int) -> bool:
    is_pair = columns[celsius].unit == "°C" and columns[fahrenheit].unit == "°F"
    return is_pair and _agree(seen[celsius], "°C", seen[fahrenheit], "°F", 0.2)


def _agree(one: _Seen, unit: Unit, other: _Seen, other_unit: Unit, within: float) -> bool:
    pairs = [
        (_celsius(a, unit), _celsius(b, other_unit))
        for a, b in zip(one.row_by_row, other.row_by_row, strict=True)
        if a is not None and b is not None
    ]
    close = sum(1 for a, b in pairs if abs(a - b) <= within)
    return bool(pairs) and close >= MOSTLY * len(pairs)


def _celsius(found: Number, unit: Unit) -> float:
    in_f = (found.unit or unit) == "°F"
    return (found.value - 32) * 5 / 9 if in_f else found.value


def _is_dew_point(columns: list[Column], seen: list[_Seen], at: int, warm: int, humid: int) -> bool:
    triples = [
        (_celsius(dew, columns[at].unit), _celsius(air, columns[warm].unit), wet.value)
        for dew, air, wet in zip(seen[at].row_by_row, seen[warm].row_by_row, seen[humid].row_by_row, strict=True)
        if dew is not None and air is not None and wet is not None
    ]
    share = 1.0 if columns[humid].unit == "fraction" else 0.01
    close = sum(1 for dew, air, wet in triples if wet > 0 and abs(dew - _rough_dew_point(air, wet * share)) < 0.5)
    apart = sum(1 for dew, air, _ in triples if air - dew > 0.8)
    return bool(triples) and close >= MOSTLY * len(triples) and apart >= MOSTLY * len(triples)


def _rough_dew_point(air_c: float, humidity: float) -> float:
    """Magnus' formula with the constants of WMO-No. 8: enough to recognise a column, not to report a figure."""
    gamma = math.log(humidity) + 17.62 * air_c / (243.12 + air_c)
    return 243.12 * gamma / (17.62 - gamma)
