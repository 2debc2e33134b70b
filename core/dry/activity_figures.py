"""Water activity and what a dried piece is made of, as figures with their working."""

from __future__ import annotations

import math

from core.dry.activity import (
    LEAST_WATER,
    WATER_MOLAR,
    Mix,
    activity_at,
    dissolved,
    is_moist,
    loss_for,
    may_miss,
    osmotic,
)
from core.dry.pace import Air, end_in
from core.quantities import (
    CELSIUS_TEMPERATURE,
    FRACTION,
    LOSS,
    MOLALITY,
    PARTS_PER_MILLION,
    RATIO,
    RELATIVE_HUMIDITY,
    WATER_ACTIVITY,
    Amount,
)
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import BRINE_ISOTHERM, DEFINITION, FSRE_STABILITY, PITZER
from core.traced import Traced, traced
from core.working import Figure

AT_C = 25.0
WORKED_OUT: Message = (
    "Worked out, not measured: real dry sausage missed it by 0.02 on the mean and by 0.04 at worst. Rest no decision "
    "about safety on it: measure."
)
TOO_DRY_FOR_IT: Message = (
    "So dry a piece, under 30 % water, was in truth up to 0.07 higher than worked out: that is the unsafe side. Rest "
    "no decision about safety on it: measure."
)
EVEN: Message = "Of the whole piece, evenly dried: its middle is moister."
MEASURED_FIRST: Message = "What was measured comes first."
NO_MEASURE_OF_SAFETY: Message = "A standard of identity, no measure of safety: that is water activity."
INGOING: Message = "As if none were used up: much of it is, within days."
INDICATIVE: Message = (
    "Indicative: no isotherm of this product was measured. It may miss by 5 % of the weight either way."
)
SLOWER: Message = "Near this loss it dries ever more slowly: choose air that would take it further than your target."
END_MISSES = 0.05


def water_activity(mix: Mix, loss: float, measured: float | None = None) -> tuple[Figure, ...]:
    """After a loss. measured: of a sample; then it comes first. Raises OutOfRange on "loss"."""
    worked_out = _worked_out(mix, loss)
    around = (_water_left(mix, loss), _salt_in_water(mix, loss))
    if measured is None:
        return (worked_out, *around)
    step = Sentence("Measured: {measured}", {"measured": Amount(measured, WATER_ACTIVITY)})
    name: Message = "Water activity, measured"
    first = Figure("measured", name, measured, WATER_ACTIVITY, (step,), DEFINITION, (MEASURED_FIRST,))
    return (first, worked_out, *around)


def loss_wanted(mix: Mix, wanted: float) -> tuple[Figure, ...]:
    """The loss that brings a mix to a water activity. wanted: 0.76 to 0.98. Raises OutOfRange on "wanted"."""
    most = mix.water - LEAST_WATER - 0.001
    if activity_at(mix, most) > wanted:
        raise OutOfRange("wanted", "No loss brings this mix so low: salt falls out before.")
    found = loss_for(mix, wanted)
    held = dissolved(mix, found)
    amounts = {
        "wanted": Amount(wanted, WATER_ACTIVITY),
        "loss": Amount(found, LOSS),
        "salt": Amount(held.salt, MOLALITY),
    }
    step = Sentence(
        "Found by trial: after a loss of {loss} the salt is at {salt}, and the water activity {wanted}.", amounts
    )
    below, above = may_miss(mix, found)
    low, high = (loss_for(mix, min(max(wanted + off, activity_at(mix, most)), 1.0)) for off in (below, -above))
    name: Message = "Loss to reach it"
    return (Figure("loss", name, found, LOSS, (step,), PITZER, (_worth(mix, found), EVEN), low, high),)


def dried_composition(
    water: float, salt: float, loss: float, protein: float, fat: float | None = None, nitrite: float | None = None
) -> tuple[Figure, ...]:
    """Of a kilogram finished. Shares of the raw mass; nitrite: sodium nitrite ingoing to the raw mass, as a share.

    Raises OutOfRange on "loss" where that is more than the water, and on "protein" where the parts are more than all.
    """
    if not loss < water:
        raise OutOfRange("loss", "The loss must be less than the water in the mix.")
    if water + salt + protein + (fat or 0.0) > 1 + 1e-9:
        raise OutOfRange("protein", "Water, salt, protein and fat together must be no more than 100 %.")
    left = 1 - traced("loss", loss, LOSS)
    moist = traced("water", water, FRACTION) - traced("loss", loss, LOSS)
    ratio = moist / traced("protein", protein, FRACTION)
    briny = traced("salt", salt, FRACTION) / (traced("salt", salt, FRACTION) + moist)
    name: Message = "Water to protein"
    found = [
        ratio.figure("moisture_protein", name, RATIO, source=FSRE_STABILITY, cautions=(NO_MEASURE_OF_SAFETY,)),
        (moist / left).figure("water", "Water", FRACTION),
        briny.figure("brine", "Salt in the water", FRACTION),
        _share("salt", "Salt", salt, left),
        _share("protein", "Protein", protein, left),
    ]
    if fat is not None:
        found.append(_share("fat", "Fat", fat, left))
    if nitrite is not None:
        ingoing = traced("nitrite", nitrite, PARTS_PER_MILLION) / left
        found.append(ingoing.figure("nitrite", "Nitrite that went in", PARTS_PER_MILLION, cautions=(INGOING,)))
    return tuple(found)


def end_of_drying(mix: Mix, temperature_c: float, humidity: float) -> tuple[Figure, ...]:
    """The loss at which air of this humidity takes no more. 0 to 40 °C, 70 to 98 %."""
    found = max(end_in(Air(0.0, temperature_c, humidity), mix), 0.0)
    amounts = {
        "humidity": Amount(humidity, RELATIVE_HUMIDITY),
        "temperature": Amount(temperature_c, CELSIUS_TEMPERATURE),
        "loss": Amount(found, LOSS),
    }
    step = Sentence(
        "The loss at which its brine stands at {humidity} and {temperature}, less 3 % of the weight for what protein "
        "holds: {loss}",
        amounts,
    )
    low, high = max(found - END_MISSES, 0.0), found + END_MISSES
    name: Message = "Loss at which this air ends the drying"
    return (Figure("end", name, found, LOSS, (step,), BRINE_ISOTHERM, (INDICATIVE, SLOWER), low, high),)


def _worked_out(mix: Mix, loss: float) -> Figure:
    held, value = dissolved(mix, loss), activity_at(mix, loss)
    amounts = {
        "left": Amount(mix.water - loss, FRACTION),
        "salt": Amount(held.salt, MOLALITY),
        "sugar": Amount(held.sugar, MOLALITY),
        "besides": Amount(held.besides, MOLALITY),
        "osmotic": Amount(osmotic(held.salt, AT_C), RATIO),
        "value": Amount(value, WATER_ACTIVITY),
        "brine": Amount(math.exp(-2 * WATER_MOLAR * held.salt * osmotic(held.salt, AT_C)), WATER_ACTIVITY),
    }
    steps = (
        Sentence("The water left, {left} of the start weight, holds salt of {salt}, sugar of {sugar}.", amounts),
        Sentence("What meat and fermentation dissolve besides is taken as {besides}.", amounts),
        Sentence("Salt alone, osmotic coefficient {osmotic} (Pitzer): {brine}", amounts),
        Sentence("With sugar (Norrish) and the rest, each as if alone in the water (Ross): {value}", amounts),
    )
    below, above = may_miss(mix, loss)
    low, high = value - below, min(value + above, 1.0)
    name: Message = "Water activity, worked out"
    return Figure("activity", name, value, WATER_ACTIVITY, steps, PITZER, (_worth(mix, loss), EVEN), low, high)


def _worth(mix: Mix, loss: float) -> Message:
    return WORKED_OUT if is_moist(mix, loss) else TOO_DRY_FOR_IT


def _water_left(mix: Mix, loss: float) -> Figure:
    water, gone = traced("water", mix.water, FRACTION), traced("loss", loss, LOSS)
    return ((water - gone) / (1 - gone)).figure("water", "Water in it now", FRACTION)


def _salt_in_water(mix: Mix, loss: float) -> Figure:
    salt = traced("salt", mix.salt, FRACTION)
    left = traced("water", mix.water, FRACTION) - traced("loss", loss, LOSS)
    return (salt / (salt + left)).figure("brine", "Salt in its water", FRACTION)


def _share(key: str, name: Message, share: float, left: Traced) -> Figure:
    return (traced(key, share, FRACTION) / left).figure(key, name, FRACTION)
