"""Sentences and figures as an entry keeps them: keys and values, said again in the reader's own units and words."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from core.chamber.sanitising_agents import AGENTS
from core.chamber.sanitising_run import TASK_WORDS
from core.chamber.settling.figure_names import FIGURE_NAMES, Named
from core.chamber.settling.measures import DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS
from core.chamber.settling.proof_words import PROOF_WORDS
from core.daybook.facts import kind_of
from core.daybook.facts.kept import KeptAmount, KeptDay, KeptName, KeptSentence, KeptWord
from core.daybook.facts.proofs import KeptFigure
from core.daybook.instrument_checks import WAYS
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
from core.sentence import Message, Rounded, Sentence, Value

QUANTITIES: dict[str, Quantity] = {
    quantity.key: quantity
    for quantity in (
        *(COUNT, LOSS, RATIO, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, VAPOUR_PRESSURE),
        *(DAYS, HOURS, FRACTION, MASS, PARTS_PER_MILLION, PH, WATER_ACTIVITY, DEGREE_HOURS),
        *(DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS),
    )
}
"""What a kept amount may be of. A key once in use stays: journals hold it."""

SAID: dict[str, Message] = {
    **PROOF_WORDS,
    **{f"check-{kind_of(kind)}": way.name for kind, way in WAYS.items()},
    **{f"task-{key}": text for key, text in TASK_WORDS.items()},
    **{f"agent-{key}": agent.name for key, agent in AGENTS.items()},
}
"""What a kept key says. A key once in use stays: journals hold it."""
KEYS = {text: key for key, text in SAID.items()}

FROM_A_NEWER_DAYBOOK = Sentence("A newer daybook wrote this line; this one does not know its words.")


def keep(sentence: Sentence, met: bool | None = False) -> KeptSentence:
    """Raises KeyError for a sentence that has no key."""
    return KeptSentence(KEYS[sentence.text], tuple(_kept(name, sentence.values[name]) for name in sentence.names), met)


def _kept(name: str, value: Value) -> KeptAmount | KeptName | KeptDay | KeptWord:
    match value:
        case Amount():
            return KeptAmount(name, value.value, value.quantity.key)
        case Sentence():
            return KeptWord(name, KEYS[value.text])
        case str():
            return KeptName(name, value)
        case date():
            return KeptDay(name, value)
        case Rounded():
            return KeptAmount(name, value.amount.value, value.amount.quantity.key)


def said(kept: KeptSentence) -> Sentence:
    """The sentence as it was. One that a newer daybook kept and this one cannot say is shown as such."""
    values = {each.name: value for each in kept.values if (value := _value(each)) is not None}
    sentence = Sentence(SAID.get(kept.key, "{unknown}"), values)
    return sentence if set(sentence.names) <= set(values) else FROM_A_NEWER_DAYBOOK


def _value(kept: KeptAmount | KeptName | KeptDay | KeptWord) -> Value | None:
    match kept:
        case KeptAmount():
            return Amount(kept.value, QUANTITIES[kept.quantity]) if kept.quantity in QUANTITIES else None
        case KeptWord():
            return Sentence(SAID[kept.word]) if kept.word in SAID else None
        case KeptName():
            return kept.typed
        case KeptDay():
            return kept.day


def keep_figures(named: Iterable[Named]) -> tuple[KeptFigure, ...]:
    return tuple(KeptFigure(key, each.value, each.quantity.key) for key, each in named)


def named_figures(kept: Iterable[KeptFigure]) -> tuple[Named, ...]:
    known = (each for each in kept if each.quantity in QUANTITIES and each.key in FIGURE_NAMES)
    return tuple((each.key, Amount(each.value, QUANTITIES[each.quantity])) for each in known)
