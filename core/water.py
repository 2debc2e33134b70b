"""Bicarbonate water: what pH has the humidifier's water when it is fresh, and what when it has stood open to the air?

Fresh it holds all the carbon dioxide its soda brought. Open it gives that off, until as much is dissolved as the air
asks for, and the carbonate that is left is more alkaline. How fast is not established.
"""

from __future__ import annotations

import math

from attrs import frozen

from core.quantities import CELSIUS_TEMPERATURE, MOLALITY, PARTS_PER_MILLION, PH, RATIO, TEMPERATURE, Amount
from core.refusals import require_between
from core.roots import begins
from core.sentence import Message, Sentence
from core.sources import PHREEQC_CARBONATE
from core.working import Figure

OUTSIDE_AIR = 420e-6
"""Carbon dioxide in outside air, as a fraction of its volume."""
KEPT_TO = 0.1
"""The pH is within so much of both PHREEQC databases, phreeqc.dat and pitzer.dat, over the whole range offered."""
WEAKEST, STRONGEST = 0.02, 0.3
WARMEST_C = 30.0

# log10 K = a + b T + c / T + d log10 T + e / T² + f T², T in kelvin; molal, carbon dioxide in atmospheres.
_FIRST = (-356.3094, -0.06091964, 21834.37, 126.8339, -1684915.0, 0.0)
_SECOND = (-107.8871, -0.03252849, 5151.79, 38.92561, -563713.9, 0.0)
_WATER = (293.29227, 0.1360833, -10576.913, -123.73158, 0.0, -6.996455e-5)
_GAS = (10.5624, -2.3547e-2, -3972.8, 0.0, 5.8746e5, 1.9194e-5)
# Sodium held in pairs with bicarbonate and carbonate: log10 K at 25 °C and kilojoules to the mole of pairing.
_PAIR_BICARBONATE, _PAIR_CARBONATE = (-0.25, -4.184), (1.27, 8.91 * 4.184)
_GAS_CONSTANT = 8.314463e-3


@frozen
class Constants:
    """Equilibrium constants at one temperature, molal; gas: mol/(kg atm). debye: the slope in Davies's formula."""

    first: float
    second: float
    water: float
    gas: float
    pair_bicarbonate: float
    pair_carbonate: float
    debye: float


@frozen
class Ions:
    """Bicarbonate water at equilibrium, mol/kg of water. single: activity coefficient of an ion of one charge."""

    ph: float
    single: float
    hydrogen: float
    hydroxide: float
    sodium: float
    bicarbonate: float
    carbonate: float
    pair_bicarbonate: float
    pair_carbonate: float

    @property
    def excess_charge(self) -> float:
        negative = self.bicarbonate + 2 * self.carbonate + self.pair_carbonate + self.hydroxide
        return self.sodium + self.hydrogen - negative

    @property
    def strength(self) -> float:
        once = self.sodium + self.hydrogen + self.bicarbonate + self.pair_carbonate + self.hydroxide
        return (once + 4 * self.carbonate) / 2


def constants(water_c: float) -> Constants:
    """At 0 to 30 °C. Source: PHREEQC 3, phreeqc.dat; Debye slope from Malmberg and Maryott's permittivity of water.

    Raises OutOfRange.
    """
    require_between("water_c", "The water", water_c, 0.0, WARMEST_C, TEMPERATURE)
    kelvin = water_c + 273.15

    def at(a: float, b: float, c: float, d: float, e: float, f: float) -> float:
        return 10 ** (a + b * kelvin + c / kelvin + d * math.log10(kelvin) + e / kelvin**2 + f * kelvin**2)

    def pair(log_k: float, heat_kj: float) -> float:
        return 10**log_k * math.exp(heat_kj / _GAS_CONSTANT * (1 / 298.15 - 1 / kelvin))

    pairs = (pair(*_PAIR_BICARBONATE), pair(*_PAIR_CARBONATE))
    return Constants(at(*_FIRST), at(*_SECOND), at(*_WATER), at(*_GAS), *pairs, debye_slope(water_c))


def debye_slope(water_c: float) -> float:
    """The Debye-Hückel slope of water for log10, at 0 to 40 °C. Source: Malmberg and Maryott's permittivity."""
    permittivity = 87.740 - 0.40008 * water_c + 9.398e-4 * water_c**2 - 1.410e-6 * water_c**3
    density = 1 - (water_c + 288.9414) * (water_c - 3.9863) ** 2 / (508929.2 * (water_c + 68.12963))
    return 1.82483e6 * math.sqrt(density) / (permittivity * (water_c + 273.15)) ** 1.5


def equilibrium(molality: float, water_c: float, carbon_dioxide: float | None = None) -> Ions:
    """Sodium bicarbonate in water, closed; or open to air with this fraction of carbon dioxide, at one atmosphere.

    molality: 0.02 to 0.3 mol/kg. water_c: 0 to 30 °C. carbon_dioxide: 100 ppm to 1 %, as a fraction. Raises OutOfRange.
    pH within 0.1 of PHREEQC with either database over that range.
    Source: PHREEQC 3, phreeqc.dat (Plummer and Busenberg 1982); activity by Davies.
    """
    require_between("molality", "The strength", molality, WEAKEST, STRONGEST, MOLALITY)
    if carbon_dioxide is not None:
        require_between("carbon_dioxide", "Carbon dioxide", carbon_dioxide, 100e-6, 0.01, PARTS_PER_MILLION)
    known = constants(water_c)
    sodium = strength = molality
    while True:
        root = math.sqrt(strength)
        single = 10 ** (-known.debye * (root / (1 + root) - 0.3 * strength))

        def ions(ph: float, sodium: float = sodium, single: float = single) -> Ions:
            return _at_ph(ph, known, molality, sodium, single, carbon_dioxide)

        found = ions(begins(lambda ph: ions(ph).excess_charge <= 0, 4.0, 12.0))
        settled = abs(found.strength - strength) < 1e-12
        sodium, strength = molality * sodium / _all_sodium(found), found.strength
        if settled:
            return found


def _at_ph(
    ph: float, known: Constants, molality: float, sodium: float, single: float, carbon_dioxide: float | None
) -> Ions:
    double = single**4
    active = 10**-ph
    carbonate_share = known.second * single / (active * double)
    paired = known.pair_bicarbonate * sodium * single**2
    paired_carbonate = known.pair_carbonate * sodium * double
    if carbon_dioxide is None:
        dissolved_share = active * single / known.first
        bicarbonate = molality / (1 + dissolved_share + paired + carbonate_share * (1 + paired_carbonate))
    else:
        bicarbonate = known.first * known.gas * carbon_dioxide / (active * single)
    carbonate = carbonate_share * bicarbonate
    return Ions(
        ph=ph,
        single=single,
        hydrogen=active / single,
        hydroxide=known.water / (active * single),
        sodium=sodium,
        bicarbonate=bicarbonate,
        carbonate=carbonate,
        pair_bicarbonate=paired * bicarbonate,
        pair_carbonate=paired_carbonate * carbonate,
    )


def _all_sodium(ions: Ions) -> float:
    return ions.sodium + ions.pair_bicarbonate + ions.pair_carbonate


def expected_ph(molality: float, water_c: float, carbon_dioxide: float = OUTSIDE_AIR) -> tuple[Figure, ...]:
    """The pH fresh and open to the air; none of them outside the range of `equilibrium`."""
    if not (0 <= water_c <= WARMEST_C and WEAKEST <= molality <= STRONGEST):
        return ()
    return ph_fresh(molality, water_c), ph_open(molality, water_c, carbon_dioxide)


def ph_fresh(molality: float, water_c: float) -> Figure:
    """pH of the water just after the soda has dissolved. Ranges and errors as in `equilibrium`."""
    ions = equilibrium(molality, water_c)
    why = Sentence("Bicarbonate takes up acid and gives it off: alone in water it settles between its two constants.")
    return _figure("ph_fresh", "pH to expect, fresh", ions, (_constants_step(water_c), why), ())


def ph_open(molality: float, water_c: float, carbon_dioxide: float = OUTSIDE_AIR) -> Figure:
    """pH that the water drifts toward while it stands open to the air. Ranges and errors as in `equilibrium`."""
    ions = equilibrium(molality, water_c, carbon_dioxide)
    amounts = {
        "air": Amount(carbon_dioxide, PARTS_PER_MILLION),
        "gas": Amount(constants(water_c).gas, RATIO),
        "dissolved": Amount(constants(water_c).gas * carbon_dioxide, MOLALITY),
    }
    why = Sentence(
        "It gives off carbon dioxide until it holds only what air with {air} of it keeps dissolved:", amounts
    )
    held = Sentence("{air} × {gas} mol/kg = {dissolved}", amounts)
    cautions: tuple[Message, ...] = (
        "It drifts there slowly; how fast is not established.",
        "Where people breathe or meat ferments the air holds more carbon dioxide, and the pH stays lower.",
    )
    name: Message = "pH it drifts toward, open to the air"
    return _figure("ph_open", name, ions, (_constants_step(water_c), why, held), cautions)


def _constants_step(water_c: float) -> Sentence:
    known = constants(water_c)
    amounts = {
        "water": Amount(water_c, CELSIUS_TEMPERATURE),
        "first": Amount(-math.log10(known.first), RATIO),
        "second": Amount(-math.log10(known.second), RATIO),
        "ions": Amount(-math.log10(known.water), RATIO),
    }
    return Sentence("At {water} the constants of carbonic acid are pK {first} and {second}, of water {ions}.", amounts)


def _figure(key: str, name: Message, ions: Ions, before: tuple[Sentence, ...], cautions: tuple[Message, ...]) -> Figure:
    amounts = {
        "sodium": Amount(ions.sodium, MOLALITY),
        "hydrogen": Amount(ions.hydrogen, MOLALITY),
        "bicarbonate": Amount(ions.bicarbonate, MOLALITY),
        "carbonate": Amount(ions.carbonate, MOLALITY),
        "pair": Amount(ions.pair_carbonate, MOLALITY),
        "hydroxide": Amount(ions.hydroxide, MOLALITY),
        "single": Amount(ions.single, RATIO),
        "ph": Amount(ions.ph, PH),
    }
    steps = (
        *before,
        Sentence("Found by trial, so that the charges balance: sodium and acid against what is negative:"),
        Sentence("{sodium} + {hydrogen} = {bicarbonate} + 2 × {carbonate} + {pair} + {hydroxide}", amounts),
        Sentence("There the acid that acts is {hydrogen} × {single} (Davies), which is a pH of {ph}", amounts),
    )
    low, high = ions.ph - KEPT_TO, ions.ph + KEPT_TO
    return Figure(key, name, ions.ph, PH, steps, PHREEQC_CARBONATE, cautions, low, high)
