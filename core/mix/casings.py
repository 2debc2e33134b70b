"""Casings: how much mix do so many of them take?"""

from __future__ import annotations

import math

from core.densities import MEAT_KG_PER_M3
from core.mix.measures import DENSITY
from core.quantities import COUNT, LENGTH, MASS, RATIO, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import MIX_WEIGHS
from core.usual import CASING_LONG_M
from core.working import Figure
from core.worksheet import Number

MIX_DENSITY = MEAT_KG_PER_M3
"""kg/m³."""
FILLED = "Measure the diameter of a stuffed casing: it is not always the one printed on the packet."
MOST_CASINGS = 10_000
COUNTED = Number("count", "Number of casings", COUNT, 1, MOST_CASINGS)
DIAMETER = Number("diameter_m", "Diameter, stuffed", LENGTH, 0.005, 0.5, help=FILLED)
LONG = Number("length_m", "Length of each", LENGTH, 0.01, 1000.0, usual=CASING_LONG_M)
OF_MIX = Number("density", "Density of the mix", DENSITY, 500.0, 1500.0, default=MIX_DENSITY)
BOXES = (COUNTED, DIAMETER, LONG, OF_MIX)


def fill_kg(count: float, diameter_m: float, length_m: float, density: float = MIX_DENSITY) -> float:
    """Kilograms of mix in straight round casings. Raises OutOfRange on "count", "diameter_m", "length_m", "density"."""
    if not (1 <= count <= MOST_CASINGS and count == int(count)):
        raise OutOfRange("count", "The number of casings must be a whole number, 1 to 10 000.")
    for box, value in ((DIAMETER, diameter_m), (LONG, length_m), (OF_MIX, density)):
        box.check(value)
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
