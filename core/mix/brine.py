"""Brine: how strong it is by weight and by the salometer, how much of it there is, and what to put into so much water.

A salometer floats at 100 degrees in a saturated brine, 26.4 % salt. Density is that of salt water at 20 °C; sugar takes
up its own room.
"""

from __future__ import annotations

from core.densities import WATER_KG_PER_M3
from core.mix.cure import CureMix
from core.quantities import DENSITY, DOSE_MASS, FRACTION, RATIO, SALOMETER, VOLUME, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import BRINE_DENSITY, CFIA_BRINE, DEFINITION, Source
from core.traced import traced
from core.working import Figure

SATURATED = 0.264  # CFIA 4.13.2; FSRE-2005 prints 26.3
_LINEAR, _SQUARE = 0.701, 0.2412
DENSITY_HOLDS_TO = 0.264
SUGAR_M3_PER_KG = 0.62e-3  # dissolved cane sugar, from memory; within 1 % of a weak brine's volume
WITHOUT_SUGAR: Message = "(Salt + water) ÷ density: {salty} ÷ {density} = {volume}"
WITH_SUGAR: Message = (
    "(Salt + water) ÷ density + sugar × the room it takes: {salty} ÷ {density} + {sugar} × {litres} L/kg = {volume}"
)
WARMER_OR_COLDER: Message = "At 20 °C; at 4 °C a strong brine is about 0.6 % denser."


def density_kg_per_m3(salt: float) -> float:
    """Of salt water at 20 °C. salt: share of salt and water together, 0 to 0.264. Raises OutOfRange on "salt".

    Source: a line through CoolProp's salt water (Melinder), within 0.2 kg/m³ to 23 %; beyond, extrapolated.
    """
    if not 0 <= salt <= DENSITY_HOLDS_TO * (1 + 1e-9):
        raise OutOfRange("salt", "Water holds at most 26.4 % salt; what is more stays on the bottom.")
    return WATER_KG_PER_M3 * (1 + _LINEAR * salt + _SQUARE * salt**2)


def salt_in_water(charge: CureMix) -> float:
    """Salt to salt and water, the cure's own counted. Raises OutOfRange on "other_salt_kg" past saturation."""
    salt_kg = charge.own_salt_kg + (charge.other_salt_kg or 0.0)
    share = salt_kg / (salt_kg + charge.water_kg)
    if share > SATURATED * (1 + 1e-9):
        raise OutOfRange(
            "other_salt_kg",
            "So much salt does not dissolve: water holds at most 26.4 %, 359 g to the kilogram of water.",
        )
    return share


def brine_figures(charge: CureMix) -> tuple[Figure, ...]:
    """Of the brine as weighed: salt by weight, salometer, density, weight and volume. water_kg above 0."""
    salt_kg = charge.own_salt_kg + (charge.other_salt_kg or 0.0)
    share = salt_in_water(charge)
    pickle = Amount(charge.pickle_kg, DOSE_MASS)
    salty_kg = salt_kg + charge.water_kg
    density = Amount(density_kg_per_m3(share), DENSITY)
    volume = Amount(salty_kg / density.value + charge.sugar_kg * SUGAR_M3_PER_KG, VOLUME)
    amounts = {
        "salt": Amount(salt_kg, DOSE_MASS),
        "water": Amount(charge.water_kg, DOSE_MASS),
        "pickle": pickle,
        "rest": Amount(charge.pickle_kg - salt_kg - charge.water_kg, DOSE_MASS),
        "of": Amount(salt_kg / charge.pickle_kg, FRACTION),
        "share": Amount(share, FRACTION),
        "ratio": Amount(density.value / WATER_KG_PER_M3, RATIO),
        "density": density,
        "salty": Amount(salty_kg, DOSE_MASS),
        "sugar": Amount(charge.sugar_kg, DOSE_MASS),
        "volume": volume,
        "linear": Amount(_LINEAR, RATIO),
        "square": Amount(_SQUARE, RATIO),
        "litres": Amount(SUGAR_M3_PER_KG * 1e3, RATIO),
    }
    in_water = Sentence("Salt ÷ (salt + water): {salt} ÷ ({salt} + {water}) = {share}", amounts)
    room = Sentence(WITH_SUGAR if charge.sugar_kg else WITHOUT_SUGAR, amounts)
    return (
        _figure(
            "pickle",
            "All the brine",
            pickle,
            Sentence("Water + salt + all else: {water} + {salt} + {rest} = {pickle}", amounts),
        ),
        _figure("brine_salt", "Salt, of the brine", amounts["of"], Sentence("{salt} ÷ {pickle} = {of}", amounts)),
        _salometer(share, in_water),
        _figure(
            "density",
            "Density",
            density,
            in_water,
            Sentence("To water of 20 °C: 1 + {linear} × {share} + {square} × {share} × {share} = {ratio}", amounts),
            source=BRINE_DENSITY,
            cautions=(WARMER_OR_COLDER,),
        ),
        _figure(
            "volume",
            "Volume",
            volume,
            room,
            source=BRINE_DENSITY,
        ),
    )


def _require_share(share: float) -> None:
    if not 0 <= share <= SATURATED * (1 + 1e-9):
        raise OutOfRange("share", "Water holds at most 26.4 % salt, 100 degrees by the salometer.")


def recipe(volume_m3: float, share: float) -> tuple[Figure, ...]:
    """Salt and water that make so much brine of this strength. volume_m3: above 0. Raises OutOfRange on "share"."""
    _require_share(share)
    density = Amount(density_kg_per_m3(share), DENSITY)
    whole_kg = volume_m3 * density.value
    amounts = {
        "volume": Amount(volume_m3, VOLUME),
        "density": density,
        "whole": Amount(whole_kg, DOSE_MASS),
        "share": Amount(share, FRACTION),
        "salt": Amount(whole_kg * share, DOSE_MASS),
        "water": Amount(whole_kg * (1 - share), DOSE_MASS),
    }
    mass = Sentence("Volume × density: {volume} × {density} = {whole}", amounts)
    return (
        _figure("salt", "Salt to weigh", amounts["salt"], mass, Sentence("{whole} × {share} = {salt}", amounts)),
        _figure("water", "Water to weigh", amounts["water"], Sentence("{whole} − {salt} = {water}", amounts)),
        _salometer(share),
        _figure("density", "Density", density, mass, source=BRINE_DENSITY, cautions=(WARMER_OR_COLDER,)),
    )


def _salometer(share: float, *before: Sentence) -> Figure:
    degrees = traced("share", share, FRACTION) / traced("saturated", SATURATED, FRACTION)
    words = "Of a saturated brine"
    return degrees.figure("salometer", "By the salometer", SALOMETER, words, before=before, source=CFIA_BRINE)


def _figure(
    key: str,
    name: Message,
    amount: Amount,
    *steps: Sentence,
    source: Source = DEFINITION,
    cautions: tuple[Message, ...] = (),
) -> Figure:
    return Figure(key, name, amount.value, amount.quantity, steps, source, cautions)
