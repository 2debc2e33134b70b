"""The questions that a layout leaves open, each with every answer that fits."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from core.chamber.logs.column import ORDER_WORDS, ROLE_WORDS, UNITS_FOR, Choice, Column, Question, TimeStyle
from core.chamber.logs.counting import COUNTS
from core.chamber.logs.scales import SCALES
from core.chamber.logs.spelling import months_meant

if TYPE_CHECKING:
    from core.chamber.logs.layout import Layout

NONE = Choice("none", "none of these")


def questions(layout: Layout) -> Iterator[Question]:
    """What a layout leaves open, in the order to ask it: what decides other questions comes alone."""
    if not layout.decimal:
        yield _ask_decimal(layout)
        return
    if layout.may_be_time and not layout.holding("time", "date"):
        yield _ask_time(layout)
        return
    if layout.clocks_apart and layout.side_by_side is None:
        yield _ask_clocks(layout)
        return
    times = layout.times
    yield from filter(None, (_ask_order(times), _ask_month(times), _ask_count(times), _ask_elapsed(times)))
    asked: set[str] = set()
    for index, column in enumerate(layout.columns):
        if column.role == "unknown":
            yield _ask_role(index, column, layout)
        elif not column.unit and column.role in UNITS_FOR and _group(column) not in asked:
            asked.add(_group(column))
            yield _ask_unit(index, column, layout)
        elif column.may_mean_nothing and column.means_nothing is None:
            yield _ask_nothing(index, column, layout)
        elif column.asks_beside and column.beside is None:
            yield _ask_beside(index, column, layout)
    if layout.losses and not layout.losses_taken:
        yield _ask_losses(layout)


def _group(column: Column) -> str:
    """Columns that take one answer: one role, the same units possible, no unit stated by a head that is doubted."""
    return f"{column.role} {column.units} {column.doubt}"


def alike(layout: Layout, index: int) -> tuple[int, ...]:
    """The columns whose unit is open as that of `index` is: one answer is for all."""
    wanted = _group(layout.columns[index])
    return tuple(
        at
        for at, column in enumerate(layout.columns)
        if column.role in UNITS_FOR and not column.unit and _group(column) == wanted
    )


def _ask_time(layout: Layout) -> Question:
    choices = tuple(
        Choice(str(at + 1), f"{_named(at, layout.columns[at])}{_shown(at, layout)}") for at in layout.may_be_time
    )
    return Question("time", "Which column counts the time?", (*choices, NONE))


def _ask_clocks(layout: Layout) -> Question:
    choices = tuple(
        Choice(str(at + 1), f"{_named(at, layout.columns[at])}, column {at + 1}{_shown(at, layout)}, for every row")
        for at in layout.clocks_apart
    )
    each = Choice("each", "each of them, for the columns that follow it: logs side by side")
    return Question(
        "clocks", "More than one column holds a time that runs. Which one times the readings?", (*choices, each)
    )


def _ask_month(times: TimeStyle) -> Question | None:
    if not times.shared_month or times.tongue:
        return None
    months = months_meant(times.shared_month)
    choices = tuple(Choice(tongue, month) for tongue, month in months.items())
    return Question(
        "month", f"“{times.shared_month}” is another month in other languages. Which one is meant?", choices
    )


def _ask_count(times: TimeStyle) -> Question | None:
    if times.kind != "count" or times.count:
        return None
    choices = tuple(Choice(key, COUNTS[key].words) for key in times.counts)
    return Question("count", f"What does the time “{times.example}” count?", (*choices, NONE))


def _ask_decimal(layout: Layout) -> Question:
    row = layout.preview[0] if layout.preview else ()
    values = row[len(layout.holding("time", "date", "clock")) :]
    joined = " and ".join(f"{whole},{part}" for whole, part in zip(values[::2], values[1::2], strict=False))
    return Question(
        "decimal",
        f"“{','.join(values)}”: is the comma a decimal mark here, or does it separate two values?",
        (Choice(",", f"a decimal mark: {joined}"), Choice(".", f"it separates values: {' and '.join(values)}")),
    )


def _ask_order(times: TimeStyle) -> Question | None:
    if times.kind != "text" or times.order or len(times.orders) < 2:
        return None
    choices = tuple(Choice(order, ORDER_WORDS[order]) for order in times.orders)
    sentence = "All the dates of this file can be read in more than one way. Which comes first, the day or the month?"
    return Question("order", sentence, choices, times.likelier)


def _ask_elapsed(times: TimeStyle) -> Question | None:
    if times.kind not in ("elapsed", "span") or times.elapsed_unit:
        return None
    if times.kind == "span":
        choices = (Choice("h", "hours and minutes"), Choice("min", "minutes and seconds"))
        return Question("elapsed", f"The times count from a start, as “{times.example}”. What are they?", choices)
    words = {"ms": "milliseconds", "s": "seconds", "min": "minutes", "h": "hours", "d": "days"}
    choices = tuple(Choice(key, word) for key, word in words.items())
    return Question("elapsed", "The times count from a start. In which unit?", (*choices, NONE))


def _ask_role(index: int, column: Column, layout: Layout) -> Question:
    keys = column.may_be or (("probe", "ignored") if column.holds_text else ("temperature", "humidity", "ignored"))
    sentence = f"What does {_named(index, column)} hold{_shown(index, layout)}?"
    choices = tuple(Choice(key, ROLE_WORDS[key]) for key in keys)
    return Question(f"role {index + 1}", f"{sentence} {column.doubt}".strip(), choices)


def _ask_unit(index: int, column: Column, layout: Layout) -> Question:
    units = column.units or tuple(unit for unit in UNITS_FOR[column.role] if unit in ("°C", "°F", "%", "fraction"))
    choices = tuple(Choice(unit, SCALES[unit].words) for unit in units)
    others = alike(layout, index)[1:]
    named = " and ".join([_named(index, column), *(_named(at, layout.columns[at]) for at in others)])
    sentence = f"In which unit {'are' if others else 'is'} {named}{_shown(index, layout)}?"
    likelier = units[0] if column.is_likelier else ""
    return Question(f"unit {index + 1}", f"{sentence} {column.doubt}".strip(), choices, likelier)


def _ask_nothing(index: int, column: Column, layout: Layout) -> Question:
    numbers = " and ".join(f"{value:g}".replace("-", "\u2212") for value in column.may_mean_nothing)
    sentence = (
        f"{_named(index, column)} says {numbers} again and again, far from all its other values. Are these readings?"
    )
    choices = (Choice("nothing", "no: nothing was measured then"), Choice("readings", "yes, it was measured so"))
    return Question(f"nothing {index + 1}", sentence, choices)


def _ask_beside(index: int, column: Column, layout: Layout) -> Question:
    warm = layout.holding("temperature")
    choices = (*(Choice(str(at + 1), _named(at, layout.columns[at])) for at in warm), Choice("0", "none of these"))
    return Question(f"beside {index + 1}", f"Which temperature was measured beside {_named(index, column)}?", choices)


def _ask_losses(layout: Layout) -> Question:
    told = " ".join(
        f"{loss.count} of {loss.of} {loss.what} are not read, for example “{loss.text}” in line {loss.line}."
        for loss in layout.losses
    )
    choices = (
        Choice("leave", "leave them out and read the rest"),
        Choice("none", "no, this file is not to be read so"),
    )
    return Question("loss", f"{told} May they be left out?", choices)


def _named(index: int, column: Column) -> str:
    return f"“{column.label}”" if column.label else f"column {index + 1}"


def _shown(index: int, layout: Layout) -> str:
    cells = [row[index].strip() for row in layout.preview if index < len(row) and row[index].strip()]
    return f" ({', '.join(cells[:3])} …)" if cells else ""
