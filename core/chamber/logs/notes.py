"""What a layout says of its file and its columns: a key and its values, so that a proof keeps no words of it."""

from __future__ import annotations

from attrs import field, frozen

from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence

ITS_HEAD_ENDS_IN_IT = "ends"
"""Why a column has its unit: the letter is then no part of the probe's name."""
NOTES: dict[str, Message] = {
    "cells": "each cell says it",
    "head": "its head says it",
    ITS_HEAD_ENDS_IN_IT: "its head ends in it",
    "row": "the row of units says it",
    "numbers": "its numbers, {low} to {high}, leave no other",
    "in-f": "another column gives it in °F",
    "in-c": "another column gives it in °C",
    "beside": "the temperatures beside it are so",
    "chosen": "you chose it",
    "unlikely": "Its head says {unit}, but it reads {low} to {high}.",
    "constant": "It says {cell} in every row: a set value, or a sensor that is not plugged in?",
    "temperature-of": "Is it air or meat in the chamber, or something else?",
    "humidity-of": "Is it the air's relative humidity, or something else?",
    "paired": "The heads do not say which humidity belongs to which temperature: they were paired in their order.",
    "one-quantity": (
        "Each row of this file holds one quantity, named beside it: rows of one moment are put together here. What is "
        "neither temperature nor humidity is left out."
    ),
    "no-text": "Lines that hold signs which are no text in {encoding}: {count}.",
}
"""A key once in use stays: journals hold it."""
KEYS = {text: key for key, text in NOTES.items()}


@frozen
class Note:
    """key: of NOTES, or the words themselves, as proofs kept them once. Numbers are those of the file, in its units."""

    key: str
    values: dict[str, str | float] = field(factory=dict[str, str | float], hash=False)

    @property
    def said(self) -> Sentence:
        if self.key not in NOTES:
            return Sentence("{words}", {"words": self.key})
        told = {name: value if isinstance(value, str) else Amount(value, COUNT) for name, value in self.values.items()}
        return Sentence(NOTES[self.key], told)


def kept_as_words(words: str) -> Note | None:
    """The note that stood so in an entry; "" was none."""
    return Note(KEYS.get(words, words)) if words else None
