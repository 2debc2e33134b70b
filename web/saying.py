"""Saying a text to the one who looks: in their language, units and decimal mark."""

from __future__ import annotations

from attrs import evolve
from markupsafe import Markup, escape

from core.language import translated
from core.numbers_within import with_mark
from core.quantities import COUNT, Amount
from core.sentence import Message, Said, Sentence, Value
from web import visitor


def say(text: Said, plural: Message = "", **values: Value | Markup | int) -> str:
    """In a template: {{ say("Hung on {day}", day=batch.hung) }} or {{ each.label | say }}.

    A value that is markup (a link, a word set apart) keeps its tags; a plain number is said as it is. plural: the text
    where its count, a number, is not one.
    """
    reader = visitor.reader()
    if isinstance(text, Sentence):
        return text.say(reader)
    if not values:  # braces in it are braces
        return with_mark(translated(text, reader.language), reader.decimal)
    told = Sentence(text, {name: _value(name, value) for name, value in values.items()}, plural=plural)
    return _marked_up(told) if any(isinstance(value, Markup) for value in values.values()) else told.say(reader)


def set_apart(told: Sentence, name: str) -> Markup:
    """The sentence with one of its values set apart: the verb of what is to do."""
    bold = Markup("<b>{}</b>").format(_shown(told.values[name]))
    return _marked_up(evolve(told, values={**told.values, name: bold}))


def _marked_up(told: Sentence) -> Markup:
    shown = {name: _shown(value) for name, value in told.values.items()}
    return escape(told.worded(visitor.reader())).format_map(shown)


def _value(name: str, value: Value | Markup | int) -> Value:
    if isinstance(value, int):
        return Amount(value, COUNT) if name == "count" else str(value)
    return value


def _shown(value: Value | Markup) -> str:
    """A value within markup: what is not markup itself is escaped there."""
    return value if isinstance(value, Markup) else Sentence("{value}", {"value": value}).say(visitor.reader())
