"""Capacity: how much water can this chamber take out, how much meat can it carry, and is it overloaded?

Learned from the basin, or from what is stated for it. A basin shows what the coil did, which is the least it can do.
"""

from __future__ import annotations

import math

from attrs import evolve

from core.chamber.moisture import (
    FASTEST,
    FIRST_DAYS,
    FIRST_DAYS_HIGH,
    FIRST_DAYS_LOW,
    HEAVIEST_KG,
    NO_PEAK_PRINTED,
)
from core.chamber.rates import LASTING, MOISTURE, WATER_A_DAY
from core.densities import ROUGH_WATER_KG_PER_M3
from core.quantities import FRACTION, LOSS_RATE, MASS, VOLUME, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import COMMON_PRACTICE, DEFINITION, FIRST_DAYS_LOSS
from core.traced import traced
from core.units import DAY_S, HOUR_S
from core.working import Figure

AT_LEAST = "The coil did this much; with a fuller chamber it may do more. If the humidity rose, it is the most."
RATED_WARM: Message = "A rating is made in warm, damp air; in a cold chamber the same machine takes out much less."
OVERLOADED: Message = (
    "Overloaded: the meat gives off more than the chamber takes out, so the humidity climbs and mould follows."
)
OVERLOADED_AT_FIRST: Message = "It carries this later, not in the first days: hang it in parts, some days apart."
CLOSE: Message = "That leaves less than a fifth to spare: a door left open, or a warm day, is more than that."
SPARE = 0.8


def capacity_from_basin(drained_m3: float, time_s: float) -> Figure:
    """What the coil took out while the chamber held its humidity. drained_m3: above 0. time_s: six hours or more.

    Raises OutOfRange.
    """
    if not 0 < drained_m3 < 1:
        told = Sentence(
            "The basin must have held more than nothing and less than {most}.", {"most": Amount(1.0, VOLUME)}
        )
        raise OutOfRange("drained", told)
    if not 6 * HOUR_S <= time_s < math.inf:
        raise OutOfRange("time", "The time must be six hours at least: the coil drains in bursts.")
    rate = traced("drained", drained_m3, VOLUME) / traced("time", time_s, LASTING)
    return rate.figure("capacity", "Water it can take out", WATER_A_DAY, cautions=(AT_LEAST,))


def capacity_as_rated(rated_m3_s: float) -> Figure:
    """What is stated for the chamber or its dehumidifier. Above 0. Raises OutOfRange."""
    if not 0 < rated_m3_s * DAY_S < 1:
        most = Amount(1 / DAY_S, WATER_A_DAY)
        raise OutOfRange(
            "rating", Sentence("The rating must be more than nothing and less than {most}.", {"most": most})
        )
    rate = Amount(rated_m3_s, WATER_A_DAY)
    step = Sentence("As stated: {rate}", {"rate": rate})
    return Figure("capacity", "Water it can take out", rate.value, WATER_A_DAY, (step,), COMMON_PRACTICE, (RATED_WARM,))


def carries(
    capacity: Figure, loss_per_s: float, hanging_kg: float | None = None, peak_per_s: float | None = None
) -> tuple[Figure, ...]:
    """How many kilograms the capacity carries at this loss and in the first days; with hanging_kg, what is overloaded.

    capacity: as `capacity_from_basin` or `capacity_as_rated` gives it. loss_per_s: above 0, up to 10 % a day.
    peak_per_s: as in `core.chamber.moisture`. hanging_kg: above 0, below 1000. Raises OutOfRange.
    """
    for field, loss in (("loss", loss_per_s), ("peak", peak_per_s)):
        if loss is not None and not 0 < loss <= FASTEST * (1 + 1e-9):
            raise OutOfRange(field, "The loss must be more than nothing and at most 10 % a day.")
    first_per_s = max(loss_per_s, FIRST_DAYS) if peak_per_s is None else peak_per_s
    later = _carried("carries", "Meat it carries at this loss", capacity, loss_per_s)
    first = _carried("carries_first", "Meat it carries in the first days", capacity, first_per_s)
    if peak_per_s is None:
        first = _as_remembered(first, capacity, loss_per_s)
    if hanging_kg is None:
        return capacity, later, first
    if not 0 < hanging_kg < HEAVIEST_KG:
        told = Sentence("What hangs must weigh more than 0 and less than {most}.", {"most": Amount(HEAVIEST_KG, MASS)})
        raise OutOfRange("hanging", told)
    return capacity, later, first, _burden(hanging_kg, later, first)


def _carried(key: str, name: Message, capacity: Figure, loss_per_s: float) -> Figure:
    grams = Amount(capacity.value * ROUGH_WATER_KG_PER_M3, MOISTURE)
    amounts = {"grams": grams, "capacity": capacity.amount}
    step = Sentence("{capacity} of water is {grams}; divided by what a kilogram gives off:", amounts)
    meat = traced("grams", grams.value, MOISTURE) / traced("loss", loss_per_s, LOSS_RATE)
    return meat.figure(key, name, MASS, before=(step,), cautions=capacity.cautions)


def _as_remembered(first: Figure, capacity: Figure, loss_per_s: float) -> Figure:
    least = capacity.value * ROUGH_WATER_KG_PER_M3 / max(loss_per_s, FIRST_DAYS_HIGH)
    most = capacity.value * ROUGH_WATER_KG_PER_M3 / max(loss_per_s, FIRST_DAYS_LOW)
    cautions = (NO_PEAK_PRINTED, *first.cautions)
    return evolve(first, source=FIRST_DAYS_LOSS, cautions=cautions, low=least, high=most)


def _burden(hanging_kg: float, later: Figure, first: Figure) -> Figure:
    least = first.value if first.low is None else first.low
    hanging = traced("hanging", hanging_kg, MASS)
    share, at_first = hanging / traced("later", later.value, MASS), hanging / traced("first", least, MASS)
    steps = (share.line(FRACTION), at_first.line(FRACTION, "In the first days, at the most"))
    told = _told(share.value, at_first.value)
    low, high = sorted((share.value, at_first.value))
    return Figure(
        "burden", "Share of the capacity that hangs", share.value, FRACTION, steps, DEFINITION, told, low, high
    )


def _told(share: float, at_first: float) -> tuple[Message, ...]:
    if share > 1 + 1e-9:
        return (OVERLOADED,)
    if at_first > 1 + 1e-9:
        return (OVERLOADED_AT_FIRST,)
    return (CLOSE,) if max(share, at_first) > SPARE else ()
