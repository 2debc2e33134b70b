"""Casings: how much mix do so many of them take?"""

from __future__ import annotations

import math

from core.densities import MEAT_KG_PER_M3
from core.mix.measures import DENSITY
from core.quantities import COUNT, LENGTH, MASS, RATIO, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import MIX_WEIGHS
from core.working import Figure

MIX_DENSITY = MEAT_KG_PER_M3
"""kg/m³."""
FILLED = "Measure the diameter of a stuffed casing: it is not always the one printed on the packet."
MOST_CASINGS = 10_000


def fill_kg(count: float, diameter_m: float, length_m: float, density: float = MIX_DENSITY) -> float:
    """Kilograms of mix in straight round casings. Raises OutOfRange on "count", "diameter_m", "length_m", "density"."""
    if not (1 <= count <= MOST_CASINGS and count == int(count)):
        raise OutOfRange("count", "The number of casings must be a whole number, 1 to 10 000.")
    if not 0.005 <= diameter_m <= 0.5:
        raise OutOfRange("diameter_m", "The diameter must be between 5 mm and 500 mm.")
    if not 0.01 <= length_m <= 1000:
        raise OutOfRange("length_m", "The length must be between 10 mm and 1000 m.")
    if not 500 <= density <= 1500:
        raise OutOfRange("density", "The density must be between 0.5 and 1.5 kg/L.")
    return count * math.pi / 4 * diameter_m**2 * length_m * density


def fill(count: float, diameter_m: float, length_m: float, density: float = MIX_DENSITY) -> Figure:
    """The mix that the casings take, in kilograms."""
    mass = Amount(fill_kg(count, diameter_m, length_m, density), MASS)
    step = Sentence(
        "Number × π ÷ 4 × diameter² × length × density: "
        "{count} × {quarter} × ({diameter})² × {length} × {density} → {mass}",
        {
            "count": Amount(count, COUNT),
            "quarter": Amount(math.pi / 4, RATIO),
            "diameter": Amount(diameter_m, LENGTH),
            "length": Amount(length_m, LENGTH),
            "density": Amount(density, DENSITY),
            "mass": mass,
        },
    )
    return Figure("fill", "Mix that the casings take", mass.value, MASS, (step,), MIX_WEIGHS, (FILLED,))
