"""Water activity worked out from what is dissolved in a piece's water: how far has this loss brought it?

Salt by Pitzer, sugars by Norrish, what meat and fermentation dissolve besides as an ideal solution; together by Ross,
each as if it were alone in all the water. Only water leaves, so that everything dissolved is in less and less of it.
How far that may miss, `may_miss` says; a measured water activity always comes first.
"""

from __future__ import annotations

import math

from attrs import frozen

from core.quantities import CELSIUS_TEMPERATURE, FRACTION, MOLALITY
from core.refusals import OutOfRange, require_between
from core.roots import begins
from core.sentence import Message
from core.water import debye_slope

WATER_MOLAR, SALT_MOLAR = 0.01801528, 0.0584428
MISSES, MISSES_DRY = 0.04, 0.08
"""How far the true water activity of a dry sausage may lie from the one worked out, either way; and how far above it
where less than DRY_WATER is left. Twelve readings of four published batches: the eight moister ones missed by 0.02 on
the mean and 0.036 at worst; the four drier ones were up to 0.069 higher than worked out, which is the unsafe side."""
DRY_WATER = 0.30
"""Of the piece as it is. Meat binds the last of its water otherwise than as a solution."""
STRONGEST = 6.2
"""mol/kg: saturated salt water."""
SWEETEST = 10.0
LEAST_WATER = 0.02
MEAT_SOLUTES, FERMENT_SOLUTES = 0.40, 0.10
"""mol to the kilogram of raw water, and of raw mix: give fresh meat 0.993, and published dry sausage its 0.87 to 0.90.
Tuned, not measured."""
_AT_C = 25.0
# At 25 °C, then how each goes with T and T²: 1/T, ln T, T, T², 1/T², each less its value at 25 °C.
_BETA_0 = (0.0765, 9598.4, 35.48, -5.8731e-2, 1.798e-5, -5e5)
_BETA_1 = (0.2664, 1.377e4, 46.8, -6.9512e-2, 2e-5, -7.4823e5)
_C_PHI = (0.00127, -120.5, -0.2081, 0.0, 1.166e-7, 11121.0)


@frozen
class Sugar:
    """norrish: K of aw = x_w exp(−K x_s²), natural logarithm."""

    name: Message
    molar: float
    norrish: float


SUGARS: dict[str, Sugar] = {
    "sucrose": Sugar("table sugar", 0.34230, 6.47),
    "dextrose": Sugar("dextrose", 0.18016, 2.25),
    "lactose": Sugar("lactose", 0.34230, 10.2),
    "glycerol": Sugar("glycerol", 0.09209, 1.16),
    "sorbitol": Sugar("sorbitol", 0.18217, 1.65),
}


@frozen
class Mix:
    """Shares of the raw mass, 0 to 1. sugar: dextrose, or counted as such. ferments: it sours."""

    water: float
    salt: float
    sugar: float = 0.0
    ferments: bool = True


def salt_activity(molality: float, temperature_c: float = _AT_C) -> float:
    """Water activity of salt water, 0 to 6.2 mol/kg, 0 to 40 °C. Raises OutOfRange.

    Within 0.0004 of Robinson and Stokes's table at 25 °C, within 0.0005 of PHREEQC's pitzer.dat over the whole range.
    Source: Pitzer and Mayorga 1973 at 25 °C; how its terms go with temperature from PHREEQC's pitzer.dat.
    """
    require_between("molality", "The strength", molality, 0.0, STRONGEST, MOLALITY)
    require_between("temperature_c", "Temperature", temperature_c, 0.0, 40.0, CELSIUS_TEMPERATURE)
    return math.exp(-2 * WATER_MOLAR * molality * osmotic(molality, temperature_c))


def osmotic(molality: float, temperature_c: float) -> float:
    """The osmotic coefficient of salt water; ranges and source as in `salt_activity`."""
    root = math.sqrt(molality)
    slope = debye_slope(temperature_c) * math.log(10) / 3
    beta_0, beta_1, c_phi = (_at(terms, temperature_c) for terms in (_BETA_0, _BETA_1, _C_PHI))
    return (
        1 - slope * root / (1 + 1.2 * root) + molality * (beta_0 + beta_1 * math.exp(-2 * root)) + molality**2 * c_phi
    )


def _at(terms: tuple[float, ...], temperature_c: float) -> float:
    here, there = temperature_c + 273.15, _AT_C + 273.15
    moves = (1 / here - 1 / there, math.log(here / there), here - there, here**2 - there**2, here**-2 - there**-2)
    return terms[0] + sum(term * move for term, move in zip(terms[1:], moves, strict=True))


def sugar_activity(molality: float, sugar: str = "dextrose") -> float:
    """Water activity of one sugar in water, 0 to 10 mol/kg. Raises OutOfRange. Source: Norrish 1966."""
    require_between("molality", "The strength", molality, 0.0, SWEETEST, MOLALITY)
    dissolved = molality * WATER_MOLAR / (1 + molality * WATER_MOLAR)
    return (1 - dissolved) * math.exp(-SUGARS[sugar].norrish * dissolved**2)


def activity_at(mix: Mix, loss: float, temperature_c: float = _AT_C) -> float:
    """Of the whole piece, evenly dried, after this loss. Raises OutOfRange as `dissolved`.

    Past saturated salt water it stays there: salt falls out. Source: Ross 1975, each solute alone in all the water.
    """
    held = dissolved(mix, loss)
    by_salt = salt_activity(held.salt, temperature_c)
    return by_salt * sugar_activity(held.sugar) * math.exp(-WATER_MOLAR * held.besides)


def may_miss(mix: Mix, loss: float) -> tuple[float, float]:
    """How far below, and how far above, what is worked out after this loss the true water activity may lie."""
    return MISSES, MISSES if is_moist(mix, loss) else MISSES_DRY


def is_moist(mix: Mix, loss: float) -> bool:
    """Whether it holds so much water still that published batches bear the sum out."""
    return mix.water - loss >= DRY_WATER * (1 - loss)


@frozen
class Dissolved:
    """mol to the kilogram of the water that is left."""

    salt: float
    sugar: float
    besides: float


def dissolved(mix: Mix, loss: float) -> Dissolved:
    """Raises OutOfRange on "loss" where less than 2 % of the start weight is left as water."""
    left = mix.water - loss
    if not left > LEAST_WATER:
        raise OutOfRange("loss", "The loss must be less than the water in the mix.")
    return Dissolved(
        min(mix.salt / SALT_MOLAR / left, STRONGEST),
        min(mix.sugar / SUGARS["dextrose"].molar / left, SWEETEST),
        (MEAT_SOLUTES * mix.water + FERMENT_SOLUTES * mix.ferments) / left,
    )


def loss_for(mix: Mix, activity: float, temperature_c: float = _AT_C) -> float:
    """The loss that brings the mix to a water activity, 0 where it is there already. activity: 0.76 to 1.

    Raises OutOfRange on "activity".
    """
    require_between("activity", "The water activity", activity, 0.70, 1.0, FRACTION)
    if activity_at(mix, 0.0, temperature_c) <= activity:
        return 0.0
    return begins(lambda loss: activity_at(mix, loss, temperature_c) <= activity, 0.0, mix.water - LEAST_WATER - 0.001)
