"""In which unit each temperature and humidity is: by its cells, its head, the other columns, or a question.

The numbers of a column alone decide only where one unit is left that any place with meat may have: 12 may be °C in a
chamber or °F in a freezer.
"""

from __future__ import annotations

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Column
from core.chamber.logs.doubles import AS_ROUNDED_K, MOSTLY, agree
from core.chamber.logs.notes import ITS_HEAD_ENDS_IN_IT, Note
from core.chamber.logs.scales import (
    Unit,
    factor_in,
    is_believed,
    scaled,
    trimmed,
    units_of,
    units_that_fit,
)
from core.chamber.logs.seen import Seen
from core.chamber.logs.values import unit_of

CHAMBER_C, CHAMBER_F = (5.0, 25.0), (45.0, 90.0)
"""Between the first a number is likelier °C, between the second °F: a chamber or a room. Likelier decides nothing."""
ALIKE_K = 10.0
"""Two temperatures of one file that lie so close are in one unit."""


def with_units(columns: list[Column], seen: list[Seen]) -> list[Column]:
    letters = _letters_that_are_units(columns, seen)
    columns = [
        with_unit(column, each, letters.get(at, "")) if column.role in ("temperature", "humidity") else column
        for at, (column, each) in enumerate(zip(columns, seen, strict=True))
    ]
    return _by_the_others(columns, seen)


def with_unit(column: Column, seen: Seen, letter: Unit = "") -> Column:
    """The column with its unit, or with those that its numbers leave possible."""
    fits = units_of(column.role)
    numbers = [each for each in seen.numbers if each is not None]
    written = sum(1 for each in numbers if each.unit in fits)
    stated: list[tuple[Unit, Note]] = [
        (heads.unit_in(seen.label), Note("head")),
        (unit_of(seen.unit_below) or "", Note("row")),
        (letter, Note(ITS_HEAD_ENDS_IN_IT)),
    ]
    if numbers and written >= MOSTLY * len(numbers):
        return evolve(column, unit="written", why_unit=Note("cells"))
    factor = max(factor_in(seen.label), factor_in(seen.unit_below))
    for unit, why in stated:
        whole: Unit = scaled(unit, factor)
        if whole in fits:
            return _believed(column, whole, why, seen)
    if factor > 1:
        return evolve(column, units=tuple(unit for unit in fits if unit.endswith(f"/{factor}")))
    return _by_values(column, seen)


def _believed(column: Column, unit: Unit, why: Note, seen: Seen) -> Column:
    """The unit that is stated, unless no reading could be what it makes of the numbers."""
    if is_believed(unit, seen.values):
        return evolve(column, unit=unit, why_unit=why, units=())
    fitting = units_that_fit(column.role, seen.values, are_whole=seen.are_whole)
    if unit in fitting and not seen.is_constant and column.role == "temperature":
        return evolve(column, unit=unit, why_unit=why, units=())
    low, high = trimmed(seen.values)
    doubt = Note("unlikely", {"unit": unit, "low": low, "high": high})
    return evolve(column, units=tuple(dict.fromkeys((*fitting, unit))), doubt=doubt)


def _by_values(column: Column, seen: Seen) -> Column:
    fitting = units_that_fit(column.role, seen.values, are_whole=seen.are_whole)
    if len(fitting) == 1 and seen.values:
        low, high = trimmed(seen.values)
        why = Note("numbers", {"low": low, "high": high})
        return evolve(column, unit=fitting[0], why_unit=why, units=())
    if column.role == "temperature" and seen.values:
        low, high = trimmed(seen.values)
        for unit, (least, most) in (("°C", CHAMBER_C), ("°F", CHAMBER_F)):
            if least <= low and high <= most and unit in fitting:
                return evolve(column, units=(unit, *(each for each in fitting if each != unit)), is_likelier=True)
    return evolve(column, units=fitting)


def _by_the_others(columns: list[Column], seen: list[Seen]) -> list[Column]:
    """A temperature given again in the other unit says which is which; one beside a stated one has that unit."""
    open_ = [at for at, column in enumerate(columns) if column.role == "temperature" and not column.unit]
    for at in open_:
        for other, column in enumerate(columns):
            if other == at or column.role != "temperature":
                continue
            if column.unit in ("", "°F") and agree(seen[at], "°C", seen[other], "°F", AS_ROUNDED_K):
                columns = _decided(columns, {at: "°C", other: "°F"}, Note("in-f"))
            elif column.unit == "°C" and agree(seen[other], "°C", seen[at], "°F", AS_ROUNDED_K):
                columns = _decided(columns, {at: "°F"}, Note("in-c"))
            elif column.unit in ("°C", "°F") and column.unit in columns[at].units and _near(seen[at], seen[other]):
                columns = _decided(columns, {at: column.unit}, Note("beside"))
    return columns


def _decided(columns: list[Column], units: dict[int, Unit], why: Note) -> list[Column]:
    return [
        evolve(column, unit=units[at], why_unit=why, units=()) if at in units and not column.unit else column
        for at, column in enumerate(columns)
    ]


def _near(one: Seen, other: Seen) -> bool:
    if not one.values or not other.values:
        return False
    (a, b), (c, d) = trimmed(one.values), trimmed(other.values)
    return abs(a - c) <= ALIKE_K and abs(b - d) <= ALIKE_K


def _letters_that_are_units(columns: list[Column], seen: list[Seen]) -> dict[int, Unit]:
    """C or F at the end of a head is a unit, unless the columns are lettered as probes are: Temp A, Temp B, Temp C."""
    ends = {at: heads.end_letter(each.label) for at, each in enumerate(seen) if heads.end_letter(each.label)}
    values = [at for at, column in enumerate(columns) if column.role in ("temperature", "humidity")]
    used = {ends[at] for at in values if at in ends}
    humid = any(columns[at].role == "humidity" and at in ends for at in values)
    if humid or not used or used - {"C", "F"} or (len(used) == 2 and not _one_is_the_other(ends, seen)):
        return {}
    return {at: "°F" if ends[at] == "F" else "°C" for at in values if at in ends}


def _one_is_the_other(ends: dict[int, str], seen: list[Seen]) -> bool:
    celsius = [seen[at] for at, end in ends.items() if end == "C"]
    fahrenheit = [seen[at] for at, end in ends.items() if end == "F"]
    return any(agree(a, "°C", b, "°F", AS_ROUNDED_K) for a in celsius for b in fahrenheit)
