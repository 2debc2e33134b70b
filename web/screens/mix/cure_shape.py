"""Which boxes the cure's form has: the rules, the way of curing and the product decide what must be asked."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import TypeVar

from attrs import evolve, frozen
from flask import request

from core.daybook.facts.batch import CureWeighed
from core.daybook.facts.fields import boxes
from core.mix import cure_boxes as box
from core.mix.curing_salt import STRENGTH
from core.mix.dose_box import IN_BRINE, Dose
from core.mix.ions import Alkali
from core.mix.rule import METHODS, WET, WHOLE, Method
from core.mix.rules import RULE_SETS, products_for
from core.quantities import FRACTION, Amount, Reader
from core.refusals import OutOfRange, Refusal
from core.release.evidence import METHOD_OF
from core.sentence import Message, Said, Sentence, said
from core.worksheet import Choice
from web.entry_forms import ASKED_ANEW, Subject
from web.forms import Input, Moment, Ticks, moment_in, typed
from web.journal import book
from web.visitor import now, reader

SHAPED_BY = ("rules", "method", "product", "also")
USUAL_NITRITE = 0.0625
"""The strength most curing salts for sausage carry on their label in North America; the form starts there."""
ALSO: dict[str, Message] = {
    "second": "a second curing salt",
    "potassium": "potassium nitrite or nitrate",
    "accelerator": "ascorbate or erythorbate",
}

Key = TypeVar("Key", bound=str)


@frozen
class Kept(Choice):
    """A choice that keeps its default where it was not asked."""

    def read(self, text: str, reader: Reader) -> str:
        chosen = text.strip() or self.default or ""
        if chosen not in self.options:
            raise OutOfRange(self.key, Sentence("{label}: choose one of those listed.", {"label": said(self.label)}))
        return chosen


ON_MIXTURE = Sentence("Canada’s ppm are on the whole raw mixture.")
STRENGTH_IN_EU = evolve(
    box.NITRITE,
    help=Sentence(
        "Per-cent on its label. Nitrite salt sold in the EU often carries {eu}, not {us}.",
        {"eu": Amount(0.005, FRACTION), "us": Amount(USUAL_NITRITE, FRACTION)},
    ),
)
_OF: dict[Alkali, Message] = {"sodium": "sodium", "potassium": "potassium"}
NITRITE_OF = Kept("nitrite_of", "The nitrite is that of", {**_OF}, default="sodium")
NITRATE_OF = Kept("nitrate_of", "The nitrate is that of", {**_OF}, default="sodium")
ALSO_INPUT = Ticks("also", "Also in it", ALSO)


@frozen
class Shape:
    rules: str
    method: Method
    product: str
    also: frozenset[str]
    day: date

    @property
    def products(self) -> dict[str, Message]:
        return products_for(self.rules, self.method, self.day)


def strength_said(nitrite: float, how: Reader) -> str:
    """A strength that is known, as one would type it: with its unit where a bare number would be asked about."""
    text = typed(nitrite, STRENGTH, how)
    return f"{text} %" if box.NITRITE.asks(text, how) else text


def shape_of(subject: Subject) -> Shape:
    """What was chosen on the page, or stands in the entry that is corrected, or was used for the last batch."""
    was = subject.was if isinstance(subject.was, CureWeighed) else None
    day = _day()
    rules = _first(RULE_SETS, request.values.get("rules"), was.rules or "us" if was else None, remembered_rules())
    methods = methods_for(subject)
    method = _first(methods, request.values.get("method"), was.method if was else None, _usual(subject))
    products = products_for(rules, method, day)
    product = _first(products, request.values.get("product"), was.product if was else None)
    ticked = " ".join(request.values.getlist("also")).split()
    also = frozenset(also_of(was) if was and not _is_sent() else ticked) & ALSO.keys()
    return Shape(rules, method, product, also, day)


def shaped(subject: Subject) -> tuple[Input, ...]:
    """The inputs in the order they are asked for."""
    shape = shape_of(subject)
    methods, products = methods_for(subject), shape.products
    names: dict[str, Said] = {key: each.name for key, each in RULE_SETS.items()}
    inputs: list[Input] = [Kept("rules", "Rules", names, default=shape.rules, listed=True)]
    if len(methods) > 1:
        inputs.append(Kept("method", "Way of curing", {**methods}, default=shape.method, listed=True))
    if len(products) > 1:
        inputs.append(Kept("product", "Product", products, default=shape.product, listed=True))
    return (*inputs, ALSO_INPUT, *_weights(shape))


def _weights(shape: Shape) -> list[Input]:
    wet = shape.method in WET
    strength = STRENGTH_IN_EU if shape.rules == "eu" else evolve(box.NITRITE, default=USUAL_NITRITE)
    dose = IN_BRINE if wet else Dose()
    if shape.rules == "ca":
        dose = evolve(dose, help=Sentence("{help} {basis}", {"help": said(dose.help), "basis": ON_MIXTURE}))
    inputs: list[Input] = [dose, strength, box.NITRATE]
    if "potassium" in shape.also:
        inputs += [NITRITE_OF, NITRATE_OF]
    if "second" in shape.also:
        inputs += [box.SECOND_WEIGHED, box.SECOND_LABEL, box.SECOND_LABEL_NITRATE]
    if wet:
        inputs += [box.WATER, box.SUGAR_WEIGHED]
    inputs.append(box.OTHER_SALT)
    if shape.method in ("pump", "pick-up"):
        inputs.append(box.PUMP if shape.method == "pump" else box.TAKEN_UP)
    if shape.rules == "ca" and not wet:
        inputs.append(box.OTHER)
    if "accelerator" in shape.also:
        inputs.append(box.ACCELERATOR_WEIGHED)
    return inputs


EVERY: tuple[Input, ...] = (
    *(Kept(key, key, {}) for key in ("rules", "method", "product")),
    ALSO_INPUT,
    Dose(),
    *boxes(CureWeighed),
    NITRITE_OF,
    NITRATE_OF,
)


def methods_for(subject: Subject) -> dict[Method, Message]:
    """The ways of curing that a batch of this kind can take."""
    if subject.batch is not None and subject.batch.start.style == "whole-muscle":
        return {key: METHODS[key] for key in WHOLE}
    return {"comminuted": METHODS["comminuted"]}


def also_of(fact: CureWeighed) -> tuple[str, ...]:
    """What else is in it, beside a sodium curing salt."""
    there = {
        "second": fact.second_kg > 0,
        "potassium": "potassium" in (fact.nitrite_of, fact.nitrate_of),
        "accelerator": fact.accelerator_kg is not None,
    }
    return tuple(key for key, is_there in there.items() if is_there)


def _usual(subject: Subject) -> str | None:
    if subject.batch is None:
        return None
    formula = subject.batch.formula
    return "immersion" if formula is not None and formula.brined else METHOD_OF[subject.batch.start.style]


def _is_sent() -> bool:
    """Whether the page's own boxes came with the request: an unticked box then means what it says."""
    return request.method == "POST" or ASKED_ANEW in request.args or "figures" in request.args


def remembered_rules() -> str | None:
    """The rules of the last cure that was weighed."""
    weighed = book().beginnings("cure-weighed")
    fact = book().line(weighed[-1]).fact if weighed else None
    return fact.rules if isinstance(fact, CureWeighed) and fact.rules in RULE_SETS else None


def _first(known: Mapping[Key, object], *wanted: str | None) -> Key:
    """The first that is known; else the usual one, which stands first."""
    own = {str(key): key for key in known}
    return next((own[each] for each in wanted if each in own), next(iter(known)))


def _day() -> date:
    """The day whose rules hold: the one said in the form, or today."""
    try:
        return Moment().read(moment_in(request.values), reader()).date()
    except Refusal:
        return now().date()
