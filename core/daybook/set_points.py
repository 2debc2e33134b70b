"""What the chamber is set to, and how far the last air read lies from it."""

from __future__ import annotations

from collections.abc import Callable

from core.chamber.setpoints import HYGROMETER
from core.daybook.book import Book, Line
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Message, Sentence

LEAST_KELVIN = 0.5
"""Nearer to the set-point than this no thermometer of a kitchen tells (common practice; no published source)."""


def set_points(book: Book) -> Line | None:
    """The line that tells the set-points in force."""
    return book.latest(CHAMBER, SetPointsChosen)


WARMTH: tuple[Message, Message, Message] = ("Temperature as set", "{off} warmer than set", "{off} colder than set")
HUMID: tuple[Message, Message, Message] = (
    "Humidity as set",
    "{off} of humidity above what is set",
    "{off} of humidity below what is set",
)
"""Within what is allowed, above it, below it."""


def apart(chosen: SetPointsChosen, air: AirRead) -> tuple[Sentence, ...]:
    """How far the air lies from what is set: a sentence for the temperature and, where it was read, for the humidity.

    Within its differential, or what the instrument can tell, the air is as set.
    """
    temperature = _sentence(
        air.temperature_c - chosen.temperature_c,
        allowed_k(chosen),
        lambda off: Amount(off, TEMPERATURE_DIFFERENCE),
        WARMTH,
    )
    if air.humidity is None:
        return (temperature,)
    return temperature, _sentence(
        air.humidity - chosen.humidity,
        max(chosen.humidity_differential or 0.0, HYGROMETER),
        lambda off: Amount(off, RELATIVE_HUMIDITY),
        HUMID,
    )


def allowed_k(chosen: SetPointsChosen) -> float:
    """How far the air may lie from the set temperature and still be as set."""
    return max(chosen.temperature_differential_k or 0.0, LEAST_KELVIN)


def is_moister(chosen: SetPointsChosen, air: AirRead) -> bool | None:
    """Whether the air is moister than set by more than differential and hygrometer allow; None where not read."""
    if air.humidity is None:
        return None
    return air.humidity > chosen.humidity + max(chosen.humidity_differential or 0.0, HYGROMETER) * (1 + 1e-9)


def _sentence(
    off: float, allowed: float, amount: Callable[[float], Amount], words: tuple[Message, Message, Message]
) -> Sentence:
    as_set, above, below = words
    if abs(off) <= allowed * (1 + 1e-9):
        return Sentence(as_set)
    return Sentence(above if off > 0 else below, {"off": amount(abs(off))})
