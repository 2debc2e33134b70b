"""A charge held to its rules: what each row counts, what it allows, and the refusal of what is over.

A refusal says what this makes, what the limit is, whose it is, and which dose makes the limit.
"""

from __future__ import annotations

import math

from attrs import evolve, frozen

from core.mix.cure_mix import PPM, CureMix, dose_making_kg, made_ppm
from core.mix.curing_salt import mistaken_for_another
from core.mix.limits import reaches, within
from core.mix.measures import CURE_SHARE
from core.mix.rule import PART_IN, WET, Rule
from core.mix.rules import Curing
from core.quantities import CURE_MASS, PARTS_PER_MILLION, Amount, DisplayUnit
from core.refusals import OutOfRange
from core.units import GRAM

TO_10_MG = evolve(CURE_MASS, metric=(DisplayUnit(GRAM, 2),), trim=True)
"""The dose that is right, as a fine scale shows it; never up, for it must itself pass."""
COUNTED_AS = {"weighed": "", "sodium": "", "ion": ", counted as ion,"}


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


def require_within(charge: CureMix, how: Curing, *, field: str) -> None:
    """Guard: raises OutOfRange on the field for the first row that is passed."""
    for held in check_limits(charge, how):
        if not held.within:
            raise over(charge, how, held, field)


def over(charge: CureMix, how: Curing, held: LimitCheck, field: str, *, each_kilogram: bool = False) -> OutOfRange:
    """The refusal of a row that is passed.

    each_kilogram: the charge is that of a kilogram of a meat whose weight is not known yet, and the refusal says so.
    """
    rule, to = held.rule, " to the kilogram of meat" if each_kilogram else ""
    if rule.substance == "accelerator":
        return OutOfRange(
            "accelerator_kg",
            f"{_made(held)} of ascorbate or erythorbate is too much. The limit for {rule.what} is "
            f"{_ppm(rule.most_ppm or 0)} ({rule.printed}, {rule.cite}).",
        )
    name = "nitrite and nitrate" if rule.substance == "both" else rule.substance
    if rule.most_ppm == 0:
        return OutOfRange(
            field,
            f"For {rule.what} no {name} may be added ({rule.cite}). Use a curing salt without it, or choose the "
            "product you are making.",
        )
    counted = COUNTED_AS[rule.counted]
    limit = ", ".join(each for each in (rule.printed, rule.cite) if each)
    said = (
        f"{_made(held)} of {name}{counted} is too much. The limit for {rule.what} is {_ppm(rule.most_ppm or 0)} "
        f"({limit}): {_right_dose(charge, how, to)}."
    )
    other = mistaken_for_another(charge.doses[0].salt, charge.cure_kg / charge.meat_kg) if how.method not in WET else ""
    return OutOfRange(field, f"{said} {other}".strip())


def _right_dose(charge: CureMix, how: Curing, to: str) -> str:
    most = largest_kg(charge, how)
    if most <= 0:
        return "no weight of this curing salt meets it beside the rest"
    if math.isinf(most):
        return "the brine in the meat meets it by itself"
    whole = {"pump": "the brine", "pick-up": "the brine", "immersion": "the meat"}.get(how.method, "the meat")
    base = charge.pickle_kg - charge.doses[0].kg + most if how.method in PART_IN else charge.meat_kg
    amount, share = Amount(most, TO_10_MG).show(), Amount(most / base, CURE_SHARE).show_exact()
    return f"{amount} of this curing salt{to} ({share} of {whole})"


def _brings(charge: CureMix, rule: Rule) -> bool:
    return any(charge.doses[0].salt.strength(substance, rule.counted) for substance in rule.substances)


def _forbidden(charge: CureMix, how: Curing) -> bool:
    return any(rule.most_ppm == 0 and _brings(charge, rule) for rule in how.held)


def _made(held: LimitCheck) -> str:
    """In whole ppm, unless only its decimals are over the limit."""
    whole = math.floor(held.ppm + 0.5 + 1e-6)  # the last bits of a half must not choose
    return _ppm(whole if whole > (held.rule.most_ppm or 0) else held.ppm)


def _ppm(ppm: float) -> str:
    return Amount(ppm * PPM, PARTS_PER_MILLION).show_exact()
