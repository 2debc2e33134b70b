"""A charge held to its rules: what each row counts, what it allows, and the refusal of what is over.

A refusal says what this makes, what the limit is, whose it is, and which dose makes the limit.
"""

from __future__ import annotations

import math

from attrs import evolve, frozen

from core.mix.cure import PPM, CureMix, dose_making_kg, made_ppm
from core.mix.curing_salt import mistaken_for_another
from core.mix.limits import reaches, within
from core.mix.measures import CURE_SHARE
from core.mix.rule import PART_IN, WET, Rule
from core.mix.rules import Curing
from core.quantities import CURE_MASS, PARTS_PER_MILLION, Amount, DisplayUnit
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, Value, said
from core.units import GRAM

TO_10_MG = evolve(CURE_MASS, metric=(DisplayUnit(GRAM, 2),), trim=True)
"""The dose that is right, as a fine scale shows it; never up, for it must itself pass."""
TOO_MUCH: Message = "{made} of {name} is too much. The limit for {product} is {most} ({source}): {dose}."
AS_ION: Message = "{made} of {name}, counted as ion, is too much. The limit for {product} is {most} ({source}): {dose}."
TOO_MUCH_ASCORBATE: Message = (
    "{made} of ascorbate or erythorbate is too much. The limit for {product} is {most} ({source})."
)
NONE_MAY_BE_ADDED: Message = (
    "For {product} no {name} may be added ({rule}). Use a curing salt without it, or choose the product you are making."
)


@frozen
class LimitCheck:
    """One row and what it counts. ppm: by the row's own reckoning."""

    rule: Rule
    ppm: float

    @property
    def within(self) -> bool:
        return self.rule.most_ppm is None or within(self.ppm, self.rule.most_ppm)

    @property
    def enough(self) -> bool:
        return self.rule.least_ppm is None or reaches(self.ppm, self.rule.least_ppm)


def check_limits(charge: CureMix, how: Curing) -> tuple[LimitCheck, ...]:
    """Every row that what goes in is held to."""
    return tuple(LimitCheck(rule, made_ppm(charge, how.method, rule)) for rule in how.held)


def largest_kg(charge: CureMix, how: Curing) -> float:
    """The first curing salt that just meets every row, the other masses as they are; infinite where no row stops it."""
    limits = ((rule, rule.most_ppm) for rule in how.held if rule.substance != "accelerator")
    most = (dose_making_kg(charge, how.method, rule, ppm) for rule, ppm in limits if ppm and _brings(charge, rule))
    return min(most, default=math.inf) if not _forbidden(charge, how) else 0.0


def over(charge: CureMix, how: Curing, held: LimitCheck, field: str, *, each_kilogram: bool = False) -> OutOfRange:
    """The refusal of a row that is passed.

    each_kilogram: the charge is that of a kilogram of a meat whose weight is not known yet, and the refusal says so.
    """
    refused = _refused(charge, how, held, each_kilogram=each_kilogram)
    if held.rule.substance == "accelerator":
        return OutOfRange("accelerator_kg", refused)
    dosed = held.rule.most_ppm != 0 and how.method not in WET
    other = mistaken_for_another(charge.doses[0].salt, charge.cure_kg / charge.meat_kg) if dosed else None
    return OutOfRange(field, Sentence("{refusal} {more}", {"refusal": refused, "more": other}) if other else refused)


def _refused(charge: CureMix, how: Curing, held: LimitCheck, *, each_kilogram: bool) -> Sentence:
    rule = held.rule
    told: dict[str, Value] = {
        "made": _made(held),
        "name": Sentence("nitrite and nitrate" if rule.substance == "both" else rule.substance),
        "product": Sentence(rule.what),
        "most": _ppm(rule.most_ppm or 0),
        "source": _said_by(rule),
    }
    if rule.substance == "accelerator":
        return Sentence(TOO_MUCH_ASCORBATE, told)
    if rule.most_ppm == 0:
        return Sentence(NONE_MAY_BE_ADDED, told | {"rule": rule.cite})
    dose = _right_dose(charge, how, each_kilogram=each_kilogram)
    return Sentence(AS_ION if rule.counted == "ion" else TOO_MUCH, told | {"dose": dose})


def _said_by(rule: Rule) -> Value:
    """As the text has it, where it says the limit in other words, and which text it is."""
    told = {"printed": said(rule.printed), "rule": rule.cite}
    return Sentence("{printed}, {rule}", told) if rule.printed else rule.cite


def _right_dose(charge: CureMix, how: Curing, *, each_kilogram: bool) -> Sentence:
    most = largest_kg(charge, how)
    if most <= 0:
        return Sentence("no weight of this curing salt meets it beside the rest")
    if math.isinf(most):
        return Sentence("the brine in the meat meets it by itself")
    base = charge.pickle_kg - charge.doses[0].kg + most if how.method in PART_IN else charge.meat_kg
    told: dict[str, Value] = {
        "dose": Rounded(Amount(most, TO_10_MG)),
        "share": Amount(most / base, CURE_SHARE),
        "whole": Sentence("the brine" if how.method in PART_IN else "the meat"),
    }
    if each_kilogram:
        return Sentence("{dose} of this curing salt to the kilogram of meat ({share} of {whole})", told)
    return Sentence("{dose} of this curing salt ({share} of {whole})", told)


def _brings(charge: CureMix, rule: Rule) -> bool:
    return any(charge.doses[0].salt.strength(substance, rule.counted) for substance in rule.substances)


def _forbidden(charge: CureMix, how: Curing) -> bool:
    return any(rule.most_ppm == 0 and _brings(charge, rule) for rule in how.held)


def _made(held: LimitCheck) -> Amount:
    """In whole ppm, unless only its decimals are over the limit."""
    whole = math.floor(held.ppm + 0.5 + 1e-6)  # the last bits of a half must not choose
    return _ppm(whole if whole > (held.rule.most_ppm or 0) else held.ppm)


def _ppm(ppm: float) -> Amount:
    return Amount(ppm * PPM, PARTS_PER_MILLION)
