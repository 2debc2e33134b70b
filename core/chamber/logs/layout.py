"""How a logger's text file is laid out: which column holds what, in which unit, and what has to be asked.

A layout is guessed, shown with the file's first rows, changed column by column and only then used. Whatever the file
itself does not settle stays open and is a question: a layout with an open question reads nothing.
"""

from __future__ import annotations

from typing import Literal, get_args

from attrs import evolve, frozen

from core.chamber.logs.decoding import Encoding, Separator
from core.refusals import Missing, OutOfRange, Refusal, Refused

Role = Literal["time", "date", "clock", "temperature", "humidity", "probe", "ignored", "unknown"]
Unit = Literal["", "°C", "°F", "%", "fraction", "written"]
"""Of a temperature or a humidity. "" is not settled; "written": each cell carries its own."""
Order = Literal["ymd", "dmy", "mdy", ""]
Kind = Literal["text", "epoch_s", "epoch_ms", "spreadsheet", "elapsed", ""]

ElapsedUnit = Literal["", "s", "min", "h", "d"]

UNITS_FOR: dict[str, tuple[Unit, ...]] = {
    "temperature": ("°C", "°F", "written"),
    "humidity": ("%", "fraction", "written"),
}
ORDER_WORDS: dict[str, str] = {
    "ymd": "year, month, day",
    "dmy": "day before month",
    "mdy": "month before day",
}
ELAPSED_S: dict[str, float] = {"s": 1.0, "min": 60.0, "h": 3600.0, "d": 86400.0}
ROLE_WORDS: dict[str, str] = {
    "time": "date and time",
    "date": "date",
    "clock": "time of day",
    "temperature": "temperature",
    "humidity": "relative humidity",
    "probe": "name of the probe",
    "ignored": "not needed",
}


@frozen
class Column:
    """One column. `probe` names the series that a temperature or a humidity belongs to; `why_unit` says what told."""

    role: Role
    label: str = ""
    unit: Unit = ""
    probe: str = ""
    why_unit: str = ""
    decimals: int | None = None
    """How many decimals every cell has; None where that varies."""
    holds_text: bool = False


@frozen
class TimeStyle:
    """How moments are written. `orders`: those of day, month and year that fit the file's dates."""

    kind: Kind = ""
    order: Order = ""
    orders: tuple[Order, ...] = ()
    likelier: Order = ""
    date_mark: str = ""
    clock_mark: str = ":"
    twelve_hours: bool = False
    offset_written: bool = False
    offset_s: int | None = None
    """The whole file's offset from UTC, where its header names one."""
    elapsed_unit: ElapsedUnit = ""


@frozen
class Choice:
    key: str
    words: str


@frozen
class Question:
    """What only the person can say. `about` is "order", "decimal", "elapsed", "role N" or "unit N", columns from 1."""

    about: str
    sentence: str
    choices: tuple[Choice, ...]
    likelier: str = ""
    """The choice that seems likelier; never taken without being chosen."""


@frozen
class Layout:
    """A file's layout. Lines count from 1, as an editor shows them."""

    encoding: Encoding
    separator: Separator
    decimal: Literal[".", ",", ""]
    first_line: int
    width: int
    columns: tuple[Column, ...]
    times: TimeStyle
    header_line: int | None = None
    units_line: int | None = None
    joined: bool = False
    """The decimal comma is also the separator: each value takes two cells."""
    probes: tuple[str, ...] = ()
    """The names that the probe column holds; a row with any other name is not taken."""
    preview: tuple[tuple[str, ...], ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def questions(self) -> tuple[Question, ...]:
        """What is still open, in the order to ask it."""
        if not self.decimal:
            return (_ask_decimal(self),)
        asked = [_ask_order(self.times), _ask_elapsed(self.times)]
        for index, column in enumerate(self.columns):
            asked.append(_ask_role(index, column, self))
            asked.append(_ask_unit(index, column, self))
        return tuple(question for question in asked if question is not None)

    def holding(self, *roles: Role) -> tuple[int, ...]:
        """The columns with these roles, counted from 0."""
        return tuple(index for index, column in enumerate(self.columns) if column.role in roles)


def with_column(
    layout: Layout, index: int, *, role: Role | None = None, unit: Unit | None = None, probe: str | None = None
) -> Layout:
    """The layout with one column changed by hand. A new role drops a unit that does not fit it.

    Raises OutOfRange on "column", "role" or "unit" for what does not exist or does not fit.
    """
    if not 0 <= index < len(layout.columns):
        raise OutOfRange("column", f"This file has columns 1 to {len(layout.columns)}.")
    column = layout.columns[index]
    if role is not None:
        if role not in get_args(Role):
            raise OutOfRange("role", "Choose what the column holds from the list.")
        kept: Unit = column.unit if column.unit in UNITS_FOR.get(role, ()) else ""
        column = evolve(column, role=role, unit=kept)
    if unit is not None:
        if unit and unit not in UNITS_FOR.get(column.role, ()):
            fits = " or ".join(each for each in UNITS_FOR.get(column.role, ()) if each != "written")
            raise OutOfRange("unit", f"Choose {fits}." if fits else "This column takes no unit.")
        column = evolve(column, unit=unit, why_unit="you chose it" if unit else "")
    if probe is not None:
        column = evolve(column, probe=probe.strip())
    columns = (*layout.columns[:index], column, *layout.columns[index + 1 :])
    return evolve(layout, columns=columns)


def with_order(layout: Layout, order: Order) -> Layout:
    """The layout with the order of day and month told. Raises OutOfRange on "order" for one the dates do not fit."""
    if order not in layout.times.orders:
        fits = " or ".join(ORDER_WORDS[each] for each in layout.times.orders)
        raise OutOfRange("order", f"The dates of this file fit {fits}." if fits else "This file's dates are not read.")
    return evolve(layout, times=evolve(layout.times, order=order))


def check(layout: Layout) -> None:
    """Guard: raise Refused with every reason why this layout cannot be read."""
    refusals = [*_time_problems(layout), *_value_problems(layout)]
    refusals += [Missing(question.about, question.sentence) for question in layout.questions]
    if refusals:
        raise Refused(refusals)


def _time_problems(layout: Layout) -> list[Refusal]:
    times, dates, clocks = (len(layout.holding(role)) for role in ("time", "date", "clock"))
    if (times, dates, clocks) not in ((1, 0, 0), (0, 1, 1)):
        sentence = "Say which one column holds date and time, or which two hold the date and the time of day."
        return [Refusal("time", sentence)]
    if not layout.times.kind:
        return [Refusal("time", "The times in this column are not read: choose the column that holds them.")]
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
            sentence = f"Column {index + 1} is a second {column.role} of the same probe: give it another probe's name."
            return [Refusal(f"probe {index + 1}", sentence)]
        seen.add(key)
    return []


def _ask_decimal(layout: Layout) -> Question:
    row = layout.preview[0] if layout.preview else ()
    values = row[len(layout.holding("time", "date", "clock")) :]
    joined = " and ".join(f"{whole},{part}" for whole, part in zip(values[::2], values[1::2], strict=False))
    return Question(
        "decimal",
        f"“{','.join(values)}”: is the comma a decimal mark here, or does it part two values?",
        (Choice(",", f"a decimal mark: {joined}"), Choice(".", f"it parts values: {' and '.join(values)}")),
    )


def _ask_order(times: TimeStyle) -> Question | None:
    if times.kind != "text" or times.order or len(times.orders) < 2:
        return None
    choices = tuple(Choice(order, ORDER_WORDS[order]) for order in times.orders)
    sentence = "All the dates of this file can be read in more than one way. Which comes first, the day or the month?"
    return Question("order", sentence, choices, times.likelier)


def _ask_elapsed(times: TimeStyle) -> Question | None:
    if times.kind != "elapsed" or times.elapsed_unit:
        return None
    choices = (Choice("s", "seconds"), Choice("min", "minutes"), Choice("h", "hours"), Choice("d", "days"))
    return Question("elapsed", "The times count from a start. In which unit?", choices)


def _ask_role(index: int, column: Column, layout: Layout) -> Question | None:
    if column.role != "unknown":
        return None
    keys = ("probe", "ignored") if column.holds_text else ("temperature", "humidity", "ignored")
    shown = _shown(index, layout)
    sentence = f"What does {_named(index, column)} hold{shown}?"
    return Question(f"role {index + 1}", sentence, tuple(Choice(key, ROLE_WORDS[key]) for key in keys))


def _ask_unit(index: int, column: Column, layout: Layout) -> Question | None:
    if column.unit or column.role not in UNITS_FOR:
        return None
    words = {"°C": "degrees Celsius", "°F": "degrees Fahrenheit", "%": "per cent", "fraction": "0 to 1"}
    choices = tuple(Choice(unit, words[unit]) for unit in UNITS_FOR[column.role] if unit != "written")
    sentence = f"In which unit is {_named(index, column)}{_shown(index, layout)}?"
    return Question(f"unit {index + 1}", sentence, choices)


def _named(index: int, column: Column) -> str:
    return f"“{column.label}”" if column.label else f"column {index + 1}"


def _shown(index: int, layout: Layout) -> str:
    cells = [row[index].strip() for row in layout.preview if index < len(row) and row[index].strip()]
    return f" ({', '.join(cells[:3])} …)" if cells else ""
