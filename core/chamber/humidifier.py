"""Charging the humidifier: how much baking soda goes into its water, and what that does and does not do.

The usual charge is one US tablespoon to one US quart, six to a tank of six quarts (common practice; no
published source).
"""

from __future__ import annotations

import math

from core.chamber.humidifier_boxes import CHARGE_WATER, TANK
from core.densities import WATER_KG_PER_M3
from core.quantities import (
    DOSE_MASS,
    FRACTION,
    MOLALITY,
    MOLAR_MASS,
    PARTS_PER_MILLION,
    RATIO,
    TEMPERATURE,
    VOLUME,
    Amount,
    DisplayUnit,
    Quantity,
)
from core.refusals import OutOfRange, require_between
from core.sentence import Message, Rounded, Said, Sentence
from core.sources import (
    BAKING_SODA_ACTIVITY,
    BAKING_SODA_SOLUBILITY,
    BAKING_SODA_SPOON,
    COMMON_PRACTICE,
    DEFINITION,
)
from core.traced import traced
from core.units import KG_PER_M3, QUART_M3, Unit
from core.water import OUTSIDE_AIR, expected_ph
from core.working import Figure
from core.worksheet import Number, Worksheet

TABLESPOON_KG = 0.0138
LIGHT_TABLESPOON_KG, HEAVY_TABLESPOON_KG = 0.012, 0.018  # as kitchens print it
USUAL_CHARGE_KG_PER_M3 = TABLESPOON_KG / QUART_M3

BICARBONATE_KG_PER_MOL = 0.0840066
WATER_KG_PER_MOL = 0.018015
OSMOTIC, OSMOTIC_LOW, OSMOTIC_HIGH = 0.91, 0.895, 0.925  # what PHREEQC's 0.560–0.575 % comes to
OSMOTIC_KNOWN_MOL_PER_KG = (0.15, 0.20)
"""The molality for which the osmotic coefficient was computed; elsewhere 0.8 to 1 is all that is said."""

GRAM_PER_LITRE = Unit("g/L", 1.0, ("g/l", "gram per litre", "grams per litre", "grams per liter"))
TBSP_PER_QUART = Unit("tbsp/qt", USUAL_CHARGE_KG_PER_M3, ("tbsp per qt", "tbsp per quart", "tablespoon per quart"))
TSP_PER_QUART = Unit("tsp/qt", USUAL_CHARGE_KG_PER_M3 / 3, ("tsp per qt", "tsp per quart", "teaspoon per quart"))
SODA_DOSE = Quantity(
    key="soda_dose",
    noun="a dose of baking soda",
    units=(KG_PER_M3, GRAM_PER_LITRE, TBSP_PER_QUART, TSP_PER_QUART),
    metric=(DisplayUnit(GRAM_PER_LITRE, 1),),
    us=(DisplayUnit(TBSP_PER_QUART, 2),),
    bare_metric=GRAM_PER_LITRE,
    bare_us=TBSP_PER_QUART,
    example_metric="14.6 g/L",
    example_us="1 tbsp/qt",
    trim=True,
)
SODA_GRAMS = Quantity(  # strength where a spoon would not do
    "soda_grams",
    "a strength",
    (KG_PER_M3, GRAM_PER_LITRE),
    (DisplayUnit(GRAM_PER_LITRE, 1),),
    (DisplayUnit(GRAM_PER_LITRE, 1),),
    GRAM_PER_LITRE,
    GRAM_PER_LITRE,
    "14.6 g/L",
    "14.6 g/L",
)
PLAIN_SODA: Message = "Plain baking soda (sodium bicarbonate): not baking powder, not washing soda."
SPOON = Unit("tbsp", 1.0, ("tablespoon", "tablespoons"))
SPOONS = Quantity(
    "spoons",
    "a number of spoons",
    (SPOON,),
    (DisplayUnit(SPOON, 1),),
    (DisplayUnit(SPOON, 1),),
    SPOON,
    SPOON,
    "6",
    "6",
    True,
)


def solubility(water_c: float) -> float:
    """Kilograms of sodium bicarbonate that a kilogram of water dissolves, 0 to 60 °C, within 0.0009.

    Raises OutOfRange. Source: a quadratic through a table quoting Seidell.
    """
    require_between("water_c", "The water", water_c, 0, 60, TEMPERATURE)
    return (6.864 + 0.12472 * water_c + 5.657e-4 * water_c**2) / 100


def charge(
    water_m3: float,
    soda_kg_per_m3: float,
    tank_m3: float | None = None,
    water_c: float = 20.0,
    carbon_dioxide: float = OUTSIDE_AIR,
) -> tuple[Figure, ...]:
    """The baking soda for a filling.

    water_m3: above 0, at most the tank's own mark where one is given. soda_kg_per_m3: 0 up to what dissolves.
    water_c: 0 to 60 °C. carbon_dioxide: of the room's air, as a fraction. Returns the soda, the same in spoons,
    molality, the pH fresh and open to the air (0 to 30 °C, 0.02 to 0.3 mol/kg; left out elsewhere), share of
    solubility, soda carried by mist and the lowering of vapour pressure. Raises OutOfRange naming the argument.
    """
    _require_fits(water_m3, tank_m3)
    dissolves = solubility(water_c)
    if not 0 <= soda_kg_per_m3 <= dissolves * WATER_KG_PER_M3:
        most = Amount(math.floor(dissolves * WATER_KG_PER_M3), SODA_DOSE)
        told = Sentence("No more than {most} of baking soda dissolves in water this warm.", {"most": Rounded(most)})
        raise OutOfRange("soda_kg_per_m3", told)
    return (
        _soda(water_m3, soda_kg_per_m3),
        _spoons(water_m3 * soda_kg_per_m3),
        _molality(soda_kg_per_m3),
        *expected_ph(molality_of(soda_kg_per_m3), water_c, carbon_dioxide),
        _share_of_solubility(soda_kg_per_m3, dissolves, water_c),
        _carried(soda_kg_per_m3),
        _lowering(molality_of(soda_kg_per_m3)),
    )


def molality_of(soda_kg_per_m3: float) -> float:
    """Moles of bicarbonate to the kilogram of water; the water measured at 20 °C before the soda goes in."""
    return soda_kg_per_m3 / WATER_KG_PER_M3 / BICARBONATE_KG_PER_MOL


def _require_fits(water_m3: float, tank_m3: float | None) -> None:
    if not 0 < water_m3 < 1:
        most = Amount(1.0, VOLUME)
        raise OutOfRange(
            "water_m3", Sentence("The water must be more than nothing and less than {most}.", {"most": most})
        )
    if tank_m3 is not None and water_m3 > tank_m3 * (1 + 1e-5):
        most = Rounded(Amount(tank_m3, VOLUME))
        raise OutOfRange(
            "water_m3", Sentence("The tank is marked for at most {most}: fill it no higher.", {"most": most})
        )


def _soda(water_m3: float, soda_kg_per_m3: float) -> Figure:
    soda = traced("water", water_m3, VOLUME) * traced("dose", soda_kg_per_m3, SODA_DOSE)
    return soda.figure("soda", "Baking soda", DOSE_MASS, "Water × dose", source=COMMON_PRACTICE, cautions=(PLAIN_SODA,))


def _spoons(soda_kg: float) -> Figure:
    spoons = traced("soda", soda_kg, DOSE_MASS) / traced("spoon", TABLESPOON_KG, DOSE_MASS)
    return spoons.figure(
        "spoons",
        "The same in level US tablespoons",
        SPOONS,
        "Baking soda ÷ one tablespoon of it",
        source=BAKING_SODA_SPOON,
        cautions=("Kitchens print 12 to 18 g to the tablespoon: weigh it when it matters.",),
        low=soda_kg / HEAVY_TABLESPOON_KG,
        high=soda_kg / LIGHT_TABLESPOON_KG,
    )


def _molality(soda_kg_per_m3: float) -> Figure:
    dose, water = traced("dose", soda_kg_per_m3, SODA_GRAMS), traced("water", WATER_KG_PER_M3, SODA_GRAMS)
    molality = dose / water / traced("molar", BICARBONATE_KG_PER_MOL, MOLAR_MASS)
    return molality.figure("molality", "Strength of the solution", MOLALITY, "Dose ÷ weight of the water ÷ molar mass")


def _share_of_solubility(soda_kg_per_m3: float, dissolves: float, water_c: float) -> Figure:
    share = Amount(soda_kg_per_m3 / WATER_KG_PER_M3 / dissolves, FRACTION)
    return Figure(
        key="share_of_solubility",
        name="Share of what the water can dissolve",
        value=share.value,
        quantity=FRACTION,
        working=(
            Sentence(
                "Dose ÷ (solubility at {warm} × weight of the water): {dose} ÷ {most} = {share}",
                {
                    "warm": Amount(water_c, TEMPERATURE),
                    "dose": Amount(soda_kg_per_m3, SODA_DOSE),
                    "most": Amount(dissolves * WATER_KG_PER_M3, SODA_DOSE),
                    "share": share,
                },
            ),
        ),
        source=BAKING_SODA_SOLUBILITY,
    )


def _carried(soda_kg_per_m3: float) -> Figure:
    return Figure(
        key="carried",
        name="Soda a misting humidifier blows out with its water",
        value=soda_kg_per_m3,
        quantity=SODA_GRAMS,
        working=(
            Sentence("All that is dissolved goes with the mist: {dose}", {"dose": Amount(soda_kg_per_m3, SODA_GRAMS)}),
        ),
        source=DEFINITION,
        cautions=(
            "An ultrasonic or spraying humidifier blows the soda out as dust on meat and sensors. A wick keeps it: top "
            "up with plain water, or the soda grows stronger with every filling.",
        ),
    )


def _lowering(molality: float) -> Figure:
    low, high = OSMOTIC_LOW, OSMOTIC_HIGH
    cautions: tuple[Said, ...] = ()
    if molality and not OSMOTIC_KNOWN_MOL_PER_KG[0] <= molality <= OSMOTIC_KNOWN_MOL_PER_KG[1]:
        low, high = 0.8, 1.0
        cautions = ("Computed for the usual charge of a tablespoon to the quart; away from it this is an estimate.",)
    lowering = Amount(_lowered(molality, OSMOTIC), FRACTION)
    return Figure(
        key="lowering",
        name="How much it lowers the water's vapour pressure",
        value=lowering.value,
        quantity=FRACTION,
        working=(
            Sentence(
                "1 − exp(−2 × molality × osmotic coefficient × molar mass of water): "
                "1 − exp(−2 × {molality} × {osmotic} × {molar}) = {lowering}",
                {
                    "molality": Amount(molality, MOLALITY),
                    "osmotic": Amount(OSMOTIC, RATIO),
                    "molar": Amount(WATER_KG_PER_MOL, MOLAR_MASS),
                    "lowering": lowering,
                },
            ),
            Sentence("The humidity the water can reach falls by no more than that, so the set-point need not change."),
        ),
        source=BAKING_SODA_ACTIVITY,
        cautions=cautions,
        low=_lowered(molality, low),
        high=_lowered(molality, high),
    )


def _lowered(molality: float, osmotic: float) -> float:
    return -math.expm1(-2 * molality * osmotic * WATER_KG_PER_MOL)


SODA = Number(
    "soda_kg_per_m3",
    "Baking soda",
    SODA_DOSE,
    0.0,
    100.0,
    default=USUAL_CHARGE_KG_PER_M3,
    help="One level tablespoon to the quart, 14.6 g/L, is common practice.",
)
CHARGE_INPUTS = (CHARGE_WATER, SODA, TANK)
CHARGE_SHEET = Worksheet(
    name="humidifier-charge",
    title="Charge the humidifier",
    stage="chamber",
    question="How much baking soda goes into the humidifier's water?",
    inputs=(
        *CHARGE_INPUTS,
        Number("water_c", "Water temperature", TEMPERATURE, 0.0, 60.0, default=20.0),
        Number("carbon_dioxide", "Carbon dioxide in the room's air", PARTS_PER_MILLION, 100e-6, 0.01, OUTSIDE_AIR),
    ),
    compute=charge,
    example={"water_m3": "6 qt"},
)
