"""Is it safe from trichinella? What the meat is, and by what proof: tested, frozen, or cured by a published method.

Pork without a proof is held, and game but for a test: what lives in game survives freezing, and no table of salt was
made for it. Whatever was proved is kept with the lot it was proved of.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from attrs import field, frozen

from core.quantities import COUNT, Amount
from core.release.cured_pork import METHODS, conditions_of
from core.release.cured_readings import BOXES, Condition, Readings
from core.release.frozen_pork import SOURCES, Frozen, freezing_said, is_frozen_long_enough
from core.sentence import Message, Sentence, Value, said
from core.sources import CFR_TRICHINELLA
from core.verdict import Reason
from core.worksheet import Number

Kind = Literal["none", "pork", "game"]
KINDS: Mapping[Kind, Message] = {
    "none": "no pork, no game, no horse",
    "pork": "pork of tame pigs",
    "game": "wild boar, bear, horse or other game",
}
Proof = Literal["tested", "frozen", "cured", "shown"]
PROOFS: Mapping[Proof, Message] = {
    "tested": "tested or certified free of it",
    "frozen": "frozen long enough",
    "cured": "cured by a published method",
}
KEY = "trichinella"


@frozen
class Meat:
    """kind: None is not known. lot, by: of a test or a certificate, as on the paper; has_paper: it is at hand, as the
    single sum asks, which has no box for a lot. readings: what is known of the cure, by the keys of `cured_readings`.
    proof "shown": frozen or cured long enough by their own sums."""

    kind: Kind | None = None
    proof: Proof | None = None
    lot: str = ""
    by: str = ""
    has_paper: bool = False
    freezing: Frozen = field(factory=Frozen)
    method: str = ""
    readings: Readings = field(factory=dict[str, float])


UNKNOWN = Meat()
_TEST = Sentence(
    "Have the meat tested, or find the paper that it was, and note its lot. Until then nobody eats it raw: ask a "
    "food-safety authority."
)
_NOTE = Sentence("Note what meat is in it, and what makes it safe from trichinella.")


def trichinella(meat: Meat) -> Reason:
    if meat.kind is None:
        return _reason(
            Sentence("Whether it is pork or game, and what proves it free of trichinella, is not known."), None, _NOTE
        )
    if meat.kind == "none":
        return _reason(Sentence("No pork, game or horse is in it: no trichinella to prove."), True, _NOTE)
    if meat.proof == "tested":
        return _tested(meat)
    if meat.kind == "game" and meat.proof is not None:
        text = Sentence("Game is in it: neither cold nor salt is a proof for that, only a test.")
        return _reason(text, False, _TEST)
    if meat.proof == "shown":
        text = Sentence("Frozen or cured against trichinella for as long as its sum asks.")
        return _reason(text, True, _TEST)
    if meat.proof == "frozen":
        met = is_frozen_long_enough(meat.freezing)
        settle = Sentence("{test} Meat that is still raw may be frozen again, for all of the time.", {"test": _TEST})
        return Reason(KEY, freezing_said(meat.freezing), met, SOURCES[meat.freezing.law], settle)
    if meat.proof == "cured" and meat.method in METHODS:
        return _cured(meat)
    return _reason(Sentence("Pork or game is in it, and nothing proves it free of trichinella."), None, _TEST)


def _reason(text: Sentence, met: bool | None, settle: Sentence) -> Reason:
    return Reason(KEY, text, met, CFR_TRICHINELLA, settle)


def _tested(meat: Meat) -> Reason:
    if meat.has_paper:
        return _reason(Sentence("Tested or certified free of trichinella, by the paper at hand."), True, _TEST)
    if not meat.lot.strip():
        text = Sentence("Its meat is said to be tested for trichinella, but of which lot is not noted.")
        return _reason(text, None, Sentence("Note the lot that stands on the paper of the test."))
    told: dict[str, Value] = {"lot": meat.lot, "by": meat.by}
    by: Message = "Tested or certified free of trichinella, as was noted: lot {lot}, {by}."
    bare: Message = "Tested or certified free of trichinella, as was noted: lot {lot}."
    return _reason(Sentence(by if meat.by.strip() else bare, told), True, _TEST)


def _cured(meat: Meat) -> Reason:
    method = METHODS[meat.method]
    name = Sentence(method.name)
    conditions = conditions_of(meat.method, meat.readings)
    open_ones = [each for each in conditions if each.is_met(meat.readings) is not True]
    if not open_ones:
        text = Sentence("Cured against trichinella as published, {method}.", {"method": name})
        return Reason(KEY, text, True, method.source, _TEST)
    failed = any(each.is_met(meat.readings) is False for each in open_ones)
    first = condition_said(_first(open_ones, meat), meat.readings)
    told: dict[str, Value] = {"method": name, "count": Amount(len(open_ones), COUNT), "first": first}
    text = Sentence(
        "Against trichinella, {method}: {count} condition is open. {first}",
        told,
        plural="Against trichinella, {method}: {count} conditions are open. {first}",
    )
    settle = Sentence("{first} Where that cannot be met: {test}", {"first": first, "test": _TEST})
    return Reason(KEY, text, False if failed else None, method.source, settle)


def _first(conditions: list[Condition], meat: Meat) -> Condition:
    """What is not met before what is not known."""
    return min(conditions, key=lambda each: each.is_met(meat.readings) is None)


def condition_said(condition: Condition, readings: Readings) -> Sentence:
    box = BOXES[condition.reading]
    told: dict[str, Value] = {"what": said(box.label)}
    given = readings.get(condition.reading)
    if not isinstance(box, Number):
        words: Message = "{what}: not known." if given is None else "{what}: yes." if given else "{what}: no."
        return Sentence(words, told)
    limit = condition.least if condition.most is None else condition.most
    if limit is None:
        return Sentence("{what}: not known." if given is None else "{what}: known.", told)
    told |= {"limit": Amount(limit, box.quantity), "given": Amount(given or 0.0, box.quantity)}
    return Sentence(_SAID[condition.most is None, given is None], told)


_SAID: dict[tuple[bool, bool], Message] = {
    (True, False): "{what}: {given}, it needs at least {limit}.",
    (True, True): "{what}: not known, it needs at least {limit}.",
    (False, False): "{what}: {given}, it needs at most {limit}.",
    (False, True): "{what}: not known, it needs at most {limit}.",
}
"""By whether it is a least, and whether nobody knows it."""


def demand_said(condition: Condition) -> Sentence:
    """The limit alone."""
    box = BOXES[condition.reading]
    limit = condition.least if condition.most is None else condition.most
    told: dict[str, Value] = {"what": said(box.label)}
    if limit is None or not isinstance(box, Number):
        return Sentence("{what}: yes, and known." if limit else "{what}: known.", told)
    told["limit"] = Amount(limit, box.quantity)
    return Sentence("{what}: at least {limit}." if condition.most is None else "{what}: at most {limit}.", told)


def methods_for(kind: str) -> dict[str, Message]:
    """Those for a style of meat, by their keys."""
    return {key: each.name for key, each in METHODS.items() if (kind == "whole-muscle") != key.startswith("sausage")}
