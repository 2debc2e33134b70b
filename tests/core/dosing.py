"""A dose of one curing salt by itself: what it makes of the meat, and which dose makes the ppm wanted."""

from core.mix.cure import CureMix, Dose, basis
from core.mix.cure_dose import dosed_for, figures
from core.mix.curing_salt import CuringSalt
from core.mix.ions import Substance
from core.mix.rule import Method
from core.mix.rules import Curing
from core.working import Figure


def from_dose(
    meat_kg: float, cure_kg: float, salt: CuringSalt, how: Method | Curing, other_salt_kg: float | None = None
) -> tuple[Figure, ...]:
    return figures(CureMix(meat_kg, (Dose(salt, cure_kg),), other_salt_kg), _curing(how))


def dose_for(meat_kg: float, wanted_ppm: float, salt: CuringSalt, how: Method | Curing) -> tuple[Figure, ...]:
    return dosed_for(CureMix(meat_kg, (Dose(salt, 0.0),)), _curing(how), wanted_ppm)


def ppm(substance: Substance, meat_kg: float, cure_kg: float, salt: CuringSalt) -> float:
    """As the sodium salt, on the green weight; no limit is held to it."""
    charge = CureMix(meat_kg, (Dose(salt, cure_kg),))
    return basis(charge, "comminuted", "meat").ppm(charge, charge.substance_kg(substance, "sodium"))


def _curing(how: Method | Curing) -> Curing:
    """A method by itself means the chart of 9 CFR 424.21(c)."""
    return how if isinstance(how, Curing) else Curing(method=how)
