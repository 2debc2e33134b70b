"""A layout changed by hand, and the guard that only one which can be read is read."""

from __future__ import annotations

from typing import get_args

from attrs import evolve

from core.chamber.logs.column import ORDER_WORDS, UNITS_FOR, Column, Order, Role
from core.chamber.logs.layout import Layout
from core.chamber.logs.notes import Note
from core.chamber.logs.scales import Unit
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.sentence import Message, Said, Sentence, Value, listed, said

NO_DATES: Message = "This file's dates are not read."
NOT_READ: Message = "The times in this column are not read: choose the column that holds them."

SECOND: dict[str, Message] = {
    "temperature": "Column {number} is a second temperature of the same probe: give it another probe's name.",
    "humidity": "Column {number} is a second humidity of the same probe: give it another probe's name.",
}


def with_column(
    layout: Layout, index: int, *, role: Role | None = None, unit: Unit | None = None, probe: str | None = None
) -> Layout:
    """The layout with one column changed by hand. A new role drops a unit that does not fit it.

    Raises OutOfRange on "column", "role" or "unit" for what does not exist or does not fit.
    """
    if not 0 <= index < len(layout.columns):
        raise OutOfRange("column", Sentence("This file has columns 1 to {last}.", {"last": str(len(layout.columns))}))
    column = layout.columns[index]
    if role is not None:
        if role not in get_args(Role):
            raise OutOfRange("role", "Choose what the column holds from the list.")
        kept: Unit = column.unit if column.unit in UNITS_FOR.get(role, ()) else ""
        column = evolve(column, role=role, unit=kept)
    if unit is not None:
        if unit and unit not in UNITS_FOR.get(column.role, ()):
            raise OutOfRange("unit", _units_to_choose(column))
        column = evolve(column, unit=unit, why_unit=Note("chosen") if unit else None)
    if probe is not None:
        column = evolve(column, probe=probe.strip())
    columns = (*layout.columns[:index], column, *layout.columns[index + 1 :])
    return evolve(layout, columns=columns)


def _units_to_choose(column: Column) -> Said:
    fits: list[Value] = [each for each in UNITS_FOR.get(column.role, ())[:2] if each != "written"]
    return Sentence("Choose {units}.", {"units": listed(fits, "or")}) if fits else "This column takes no unit."


def with_order(layout: Layout, order: Order) -> Layout:
    """The layout with the order of day and month given. Raises OutOfRange on "order" for one the dates do not fit."""
    if order not in layout.times.orders:
        fits = [said(ORDER_WORDS[each]) for each in layout.times.orders]
        told = Sentence("The dates of this file fit {orders}.", {"orders": listed(fits, "or")}) if fits else NO_DATES
        raise OutOfRange("order", told)
    return evolve(layout, times=evolve(layout.times, order=order))


def check(layout: Layout) -> None:
    """Guard: raise Refused with every reason why this layout cannot be read."""
    refusals = [*_time_problems(layout), *_value_problems(layout)]
    refusals += [Missing(question.about, question.sentence) for question in layout.questions]
    if refusals:
        raise Refused(refusals)


def _time_problems(layout: Layout) -> list[Refusal]:
    times, dates, clocks = (len(layout.holding(role)) for role in ("time", "date", "clock"))
    if layout.side_by_side and times > 1 and not dates:
        return [Refusal("time", NOT_READ)] if not layout.times.kind else []
    if (times, dates, clocks) not in ((1, 0, 0), (0, 1, 1)):
        sentence = "Say which one column holds date and time, or which two hold the date and the time of day."
        return [Refusal("time", sentence)]
    if not layout.times.kind:
        return [Refusal("time", NOT_READ)]
    if dates and layout.times.kind != "text":
        return [Refusal("time", "A number for the date needs no second column: set it to “date and time”.")]
    return []


def _value_problems(layout: Layout) -> list[Refusal]:
    values = layout.holding("temperature", "humidity")
    if not values:
        return [Refusal("role", "Say which column holds the temperature or the humidity.")]
    named = layout.holding("probe")
    if len(named) > 1:
        return [Refusal("role", "Only one column can hold the name of the probe.")]
    if named and not layout.probes:
        return [Refusal("probe", "The column of probe names holds no name that returns.")]
    seen: set[tuple[str, str]] = set()
    for index in values:
        column = layout.columns[index]
        key = (column.role, "" if named else column.probe)
        if key in seen:
            told = {"number": str(index + 1)}
            return [Refusal(f"probe {index + 1}", Sentence(SECOND[column.role], told))]
        seen.add(key)
    return []
