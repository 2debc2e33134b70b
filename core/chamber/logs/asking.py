"""The questions that a layout leaves open, each with every answer that fits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from core.chamber.logs.column import ORDER_WORDS, ROLE_WORDS, UNITS_FOR, Choice, Column, Loss, Question, TimeStyle
from core.chamber.logs.counting import COUNTS
from core.chamber.logs.scales import SCALES
from core.chamber.logs.spelling import months_meant
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence, Value, in_turn, listed

if TYPE_CHECKING:
    from core.chamber.logs.layout import Layout

NONE = Choice("none", "none of these")
SPANS: dict[str, Message] = {"h": "hours and minutes", "min": "minutes and seconds"}
ELAPSED: dict[str, Message] = {"ms": "milliseconds", "s": "seconds", "min": "minutes", "h": "hours", "d": "days"}


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
    asked: list[tuple[object, ...]] = []
    for index, column in enumerate(layout.columns):
        if column.role == "unknown":
            yield _ask_role(index, column, layout)
        elif not column.unit and column.role in UNITS_FOR and _group(column) not in asked:
            asked.append(_group(column))
            yield _ask_unit(index, column, layout)
        elif column.may_mean_nothing and column.means_nothing is None:
            yield _ask_nothing(index, column, layout)
        elif column.asks_beside and column.beside is None:
            yield _ask_beside(index, column, layout)
    if layout.losses and not layout.losses_taken:
        yield _ask_losses(layout)


def _group(column: Column) -> tuple[object, ...]:
    """Columns that take one answer: one role, the same units possible, no unit stated by a head that is doubted."""
    return (column.role, column.units, column.doubt)


def alike(layout: Layout, index: int) -> tuple[int, ...]:
    """The columns whose unit is open as that of `index` is: one answer is for all."""
    wanted = _group(layout.columns[index])
    return tuple(
        at
        for at, column in enumerate(layout.columns)
        if column.role in UNITS_FOR and not column.unit and _group(column) == wanted
    )


def _ask_time(layout: Layout) -> Question:
    choices = tuple(Choice(str(at + 1), _shown(at, layout)) for at in layout.may_be_time)
    return Question("time", Sentence("Which column counts the time?"), (*choices, NONE))


def _ask_clocks(layout: Layout) -> Question:
    choices = tuple(Choice(str(at + 1), _for_every_row(at, layout)) for at in layout.clocks_apart)
    each = Choice("each", "each of them, for the columns that follow it: logs side by side")
    sentence = Sentence("More than one column holds a time that runs. Which one times the readings?")
    return Question("clocks", sentence, (*choices, each))


def _for_every_row(at: int, layout: Layout) -> Sentence:
    told = {"label": layout.columns[at].label, "number": str(at + 1), "cells": _cells(at, layout)}
    if not told["label"]:
        return Sentence("column {number} ({cells} …), for every row", told)
    return Sentence("“{label}”, column {number} ({cells} …), for every row", told)


def _ask_month(times: TimeStyle) -> Question | None:
    if not times.shared_month or times.tongue:
        return None
    choices = tuple(Choice(tongue, month) for tongue, month in months_meant(times.shared_month).items())
    text: Message = "“{word}” is another month in other languages. Which one is meant?"
    return Question("month", Sentence(text, {"word": times.shared_month}), choices)


def _ask_count(times: TimeStyle) -> Question | None:
    if times.kind != "count" or times.count:
        return None
    choices = tuple(Choice(key, COUNTS[key].words) for key in times.counts)
    sentence = Sentence("What does the time “{example}” count?", {"example": times.example})
    return Question("count", sentence, (*choices, NONE))


def _ask_decimal(layout: Layout) -> Question:
    row = layout.preview[0] if layout.preview else ()
    values = row[len(layout.holding("time", "date", "clock")) :]
    joined = [",".join(pair) for pair in zip(values[::2], values[1::2], strict=False)]
    text: Message = "“{cells}”: is the comma a decimal mark here, or does it separate two values?"
    choices = (
        Choice(",", Sentence("a decimal mark: {values}", {"values": _all_of(joined)})),
        Choice(".", Sentence("it separates values: {values}", {"values": _all_of(values)})),
    )
    return Question("decimal", Sentence(text, {"cells": ",".join(values)}), choices)


def _all_of(values: Sequence[str]) -> Value:
    return listed(values) if values else ""


def _ask_order(times: TimeStyle) -> Question | None:
    if times.kind != "text" or times.order or len(times.orders) < 2:
        return None
    choices = tuple(Choice(order, ORDER_WORDS[order]) for order in times.orders)
    text: Message = (
        "All the dates of this file can be read in more than one way. Which comes first, the day or the month?"
    )
    return Question("order", Sentence(text), choices, times.likelier)


def _ask_elapsed(times: TimeStyle) -> Question | None:
    if times.kind not in ("elapsed", "span") or times.elapsed_unit:
        return None
    if times.kind == "span":
        sentence = Sentence("The times count from a start, as “{example}”. What are they?", {"example": times.example})
        return Question("elapsed", sentence, tuple(Choice(key, words) for key, words in SPANS.items()))
    choices = tuple(Choice(key, words) for key, words in ELAPSED.items())
    return Question("elapsed", Sentence("The times count from a start. In which unit?"), (*choices, NONE))


def _ask_role(index: int, column: Column, layout: Layout) -> Question:
    keys = column.may_be or (("probe", "ignored") if column.holds_text else ("temperature", "humidity", "ignored"))
    sentence = Sentence("What does {column} hold?", {"column": _shown(index, layout)})
    choices = tuple(Choice(key, ROLE_WORDS[key]) for key in keys)
    return Question(f"role {index + 1}", _with_doubt(sentence, column), choices)


def _ask_unit(index: int, column: Column, layout: Layout) -> Question:
    units = column.units or tuple(unit for unit in UNITS_FOR[column.role] if unit in ("°C", "°F", "%", "fraction"))
    choices = tuple(Choice(unit, SCALES[unit].words) for unit in units)
    others = [_named(at, layout.columns[at]) for at in alike(layout, index)[1:]]
    told = {"columns": listed([_shown(index, layout), *others])}
    one = Sentence("In which unit is {columns}?", told)
    sentence = Sentence("In which unit are {columns}?", told) if others else one
    likelier = units[0] if column.is_likelier else ""
    return Question(f"unit {index + 1}", _with_doubt(sentence, column), choices, likelier)


def _with_doubt(sentence: Sentence, column: Column) -> Sentence:
    if column.doubt is None:
        return sentence
    return in_turn([sentence, column.doubt.said])


def _ask_nothing(index: int, column: Column, layout: Layout) -> Question:
    numbers = listed([Amount(value, COUNT) for value in column.may_mean_nothing])
    text: Message = "Again and again {column} says {numbers}, far from all its other values. Are these readings?"
    choices = (Choice("nothing", "no: nothing was measured then"), Choice("readings", "yes, it was measured so"))
    told = {"column": _named(index, column), "numbers": numbers}
    return Question(f"nothing {index + 1}", Sentence(text, told), choices)


def _ask_beside(index: int, column: Column, layout: Layout) -> Question:
    warm = layout.holding("temperature")
    choices = (*(Choice(str(at + 1), _named(at, layout.columns[at])) for at in warm), Choice("0", "none of these"))
    sentence = Sentence("Which temperature was measured beside {column}?", {"column": _named(index, column)})
    return Question(f"beside {index + 1}", sentence, choices)


def _ask_losses(layout: Layout) -> Question:
    lost = in_turn(_lost(loss, layout) for loss in layout.losses)
    choices = (
        Choice("leave", "leave them out and read the rest"),
        Choice("none", "no, this file is not to be read so"),
    )
    return Question("loss", Sentence("{lost} May they be left out?", {"lost": lost}), choices)


def _lost(loss: Loss, layout: Layout) -> Sentence:
    told: dict[str, Value] = {"lost": Amount(loss.count, COUNT), "of": Amount(loss.of, COUNT)}
    told |= {"text": loss.text, "line": str(loss.line)}
    if loss.column is None:
        return Sentence("{lost} of {of} lines are not read, for example “{text}” in line {line}.", told)
    told["column"] = _named(loss.column, layout.columns[loss.column])
    return Sentence("{lost} of {of} values of {column} are not read, for example “{text}” in line {line}.", told)


def _named(index: int, column: Column) -> Sentence:
    if not column.label:
        return Sentence("column {number}", {"number": str(index + 1)})
    return Sentence("“{label}”", {"label": column.label})


def _shown(index: int, layout: Layout) -> Sentence:
    """A column by its name, with the first of its cells."""
    named, cells = _named(index, layout.columns[index]), _cells(index, layout)
    return Sentence("{column} ({cells} …)", {"column": named, "cells": cells}) if cells else named


def _cells(index: int, layout: Layout) -> str:
    return ", ".join([row[index].strip() for row in layout.preview if index < len(row) and row[index].strip()][:3])
