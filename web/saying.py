"""Saying a text to the one who looks: in their language, units and decimal mark."""

from __future__ import annotations

import re

from attrs import evolve
from markupsafe import Markup, escape

from core import quantities
from core.language import translated
from core.quantities import COUNT, Amount, Quantity
from core.sentence import Message, Said, Sentence, Value
from web import visitor

_UNITS = {unit.symbol for each in vars(quantities).values() if isinstance(each, Quantity) for unit in each.units} - {""}
_UNIT = "|".join(re.escape(symbol) for symbol in sorted(_UNITS, key=len, reverse=True))
_BEFORE_A_UNIT = rf"(?<![\w.])[0-9]+\.(?=[0-9]+[ \u00a0]?(?:{_UNIT})(?!\w))"
_AFTER_A_NAME = r"(?:(?<=pH[ \u00a0])|(?<=activity )|(?<=example ))[0-9]+\.(?=[0-9])"
_WITH_POINT = re.compile(f"{_BEFORE_A_UNIT}|{_AFTER_A_NAME}")


def say(text: Said, plural: Message = "", **values: Value | Markup | int) -> str:
    """In a template: {{ say("Hung on {day}", day=batch.hung) }} or {{ each.label | say }}.

    A value that is markup (a link, a word set apart) keeps its tags; a plain number is said as it is. plural: the text
    where its count, a number, is not one.
    """
    reader = visitor.reader()
    if isinstance(text, Sentence):
        told = text.say(reader)
        return told if text.amounts else _with_mark(told, reader.decimal)
    if not values:
        return _with_mark(translated(text, reader.language), reader.decimal)
    told = Sentence(text, {name: _value(name, value) for name, value in values.items()}, plural=plural)
    return _marked_up(told) if any(isinstance(value, Markup) for value in values.values()) else told.say(reader)


def set_apart(told: Sentence, name: str) -> Markup:
    """The sentence with one of its values set apart: the verb of what is to do."""
    bold = Markup("<b>{}</b>").format(_shown(told.values[name]))
    return _marked_up(evolve(told, values={**told.values, name: bold}))


def _marked_up(told: Sentence) -> Markup:
    shown = {name: _shown(value) for name, value in told.values.items()}
    return escape(told.worded(visitor.reader().language)).format_map(shown)


def _value(name: str, value: Value | Markup | int) -> Value:
    if isinstance(value, int):
        return Amount(value, COUNT) if name == "count" else str(value)
    return value


def _shown(value: Value | Markup) -> str:
    """A value within markup: what is not markup itself is escaped there."""
    return value if isinstance(value, Markup) else Sentence("{value}", {"value": value}).say(visitor.reader())


def _with_mark(sentence: str, mark: str) -> str:
    """What was worded as a string, before it was known who reads it. It goes with the last such string."""
    return sentence if mark == "." else _WITH_POINT.sub(lambda found: found[0][:-1] + mark, sentence)
