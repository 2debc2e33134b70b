"""The cure of a formula: what it makes at any batch size, and whether the rules allow it."""

from __future__ import annotations

from core.mix.cure import CureMix, Dose, require_charge
from core.mix.cure_dose import figures
from core.mix.formula import Formula, Role
from core.mix.licence import Licence, require_allowed
from core.mix.rule import Method
from core.mix.rules import Curing
from core.refusals import Missing, OutOfRange, Refusal
from core.working import Figure


def method_of(formula: Formula) -> Method:
    if formula.brined:
        return "immersion"
    return "dry-rub" if formula.style == "whole-muscle" else "comminuted"


def charge_of(formula: Formula, meat_kg: float) -> CureMix | None:
    """All that the rules may count, for so much meat; None for a formula without a curing salt."""
    cure = formula.cure
    if cure is None:
        return None

    def mass_kg(*roles: Role) -> float:
        return meat_kg * sum(each.per_meat for each in formula.ingredients if each.role in roles)

    return CureMix(
        meat_kg,
        (Dose(cure.curing_salt, cure.per_meat * meat_kg),),
        mass_kg("salt"),
        water_kg=mass_kg("water"),
        sugar_kg=mass_kg("sugar"),
        other_kg=mass_kg("spice", "culture", "other"),
    )


def made_of_cure(formula: Formula, how: Curing | None = None) -> tuple[Figure, ...]:
    """What the cure makes of a kilogram of meat. how: by whose rules, or the US chart by the formula's kind.

    Raises OutOfRange over a limit; nothing for a formula without a curing salt.
    """
    charge = charge_of(formula, 1.0)
    return () if charge is None else figures(charge, how or Curing(method=method_of(formula)))


def over_limit(
    formula: Formula, how: Curing | None = None, meat_kg: float | None = None, licence: Licence | None = None
) -> Refusal | None:
    """What is wrong with the formula's cure; None where it is within the rules, or within the exception's figure.

    meat_kg: of the batch, for the refusal names the dose that would be right; None says it to the kilogram.
    """
    charge, how = charge_of(formula, meat_kg or 1.0), how or Curing(method=method_of(formula))
    if charge is None:
        return None
    try:
        require_charge(charge, how.method)
        require_allowed(charge, how, licence, field="dose", each_kilogram=meat_kg is None)
    except (OutOfRange, Missing) as refusal:
        return refusal
    return None
