"""Sentences and figures as an entry keeps them: text and numbers, to be said again in the reader's own units."""

from __future__ import annotations

from collections.abc import Iterable

from core.chamber.settling.measures import DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS
from core.daybook.facts.proofs import KeptAmount, KeptFigure, KeptSentence
from core.quantities import (
    COUNT,
    DAYS,
    DEGREE_HOURS,
    FRACTION,
    HOURS,
    LOSS,
    MASS,
    PARTS_PER_MILLION,
    PH,
    RATIO,
    RELATIVE_HUMIDITY,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    VAPOUR_PRESSURE,
    WATER_ACTIVITY,
    Amount,
    Quantity,
)
from core.sentence import Sentence

QUANTITIES: dict[str, Quantity] = {
    quantity.key: quantity
    for quantity in (
        *(COUNT, LOSS, RATIO, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, VAPOUR_PRESSURE),
        *(DAYS, HOURS, FRACTION, MASS, PARTS_PER_MILLION, PH, WATER_ACTIVITY, DEGREE_HOURS),
        *(DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS),
    )
}
"""What a kept amount may be of. A key once in use stays: journals hold it."""

Named = tuple[tuple[str, str], Amount]


def keep(step: Sentence, met: bool | None = False) -> KeptSentence:
    amounts = (KeptAmount(name, each.value, each.quantity.key) for name, each in step.values.items())
    return KeptSentence(step.text, tuple(amounts), met)


def said(kept: KeptSentence) -> Sentence:
    """The sentence as it was. One with an amount from a newer daybook is said as far as it is known."""
    amounts = {each.name: Amount(each.value, QUANTITIES.get(each.quantity, RATIO)) for each in kept.amounts}
    step = Sentence(kept.text, amounts)
    try:
        kept.text.format_map(dict.fromkeys(amounts, ""))
    except (KeyError, ValueError, IndexError, AttributeError):
        return Sentence(kept.text.replace("{", "{{").replace("}", "}}"))
    return step


def keep_figures(named: Iterable[Named]) -> tuple[KeptFigure, ...]:
    return tuple(KeptFigure(key, name, each.value, each.quantity.key) for (key, name), each in named)


def named_figures(kept: Iterable[KeptFigure]) -> tuple[Named, ...]:
    known = (each for each in kept if each.quantity in QUANTITIES)
    return tuple(((each.key, each.name), Amount(each.value, QUANTITIES[each.quantity])) for each in known)
