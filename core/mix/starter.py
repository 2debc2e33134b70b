"""Starter culture to weigh: by what its packet says it is for, and how many cells that brings."""

from __future__ import annotations

import math

from core.quantities import COUNT, DOSE_MASS, FRACTION, MASS, RATIO, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import CFR_STARTER, PRODUCT_LABEL, STARTER_LEVEL
from core.working import Figure

MOST_SHARE = 0.005  # 9 CFR 424.21(c)
LEAST_LOG = 6.0  # from memory
SMALL_KG = 0.0005
KEEP = (
    "Keep it frozen or as its label says; stir it in cold water without chlorine just before use, salt and cure apart."
)


def starter(
    meat_kg: float, packet_kg: float, packet_for_kg: float, cells_per_gram: float | None = None
) -> tuple[Figure, ...]:
    """What to weigh of a packet, and the cells it brings to a gram of meat where the label tells their number.

    All weights above 0. cells_per_gram: living cells in a gram of culture. Raises OutOfRange on the field at fault.
    """
    for key, name, value in (
        ("meat_kg", "The meat", meat_kg),
        ("packet_kg", "The packet", packet_kg),
        ("packet_for_kg", "The meat a packet is for", packet_for_kg),
    ):
        if not 0 < value < 1e5:
            raise OutOfRange(key, f"{name} must weigh more than 0 g.")
    dose_kg = packet_kg / packet_for_kg * meat_kg
    if dose_kg / meat_kg > MOST_SHARE * (1 + 1e-9):
        raise OutOfRange(
            "packet_for_kg",
            "That is more than 0.5 % of the meat, the most that may be added in the US (9 CFR 424.21(c)). Look at the "
            "label: how many kilograms is a packet for?",
        )
    amounts = {
        "packet": Amount(packet_kg, DOSE_MASS),
        "for": Amount(packet_for_kg, MASS),
        "meat": Amount(meat_kg, MASS),
        "dose": Amount(dose_kg, DOSE_MASS),
        "share": Amount(dose_kg / meat_kg, FRACTION),
    }
    cautions = [KEEP]
    if dose_kg < SMALL_KG:
        cautions.append("Too little for most scales: stir a whole packet into water and take its share of that.")
    grams = Figure(
        "starter",
        "Starter to weigh",
        dose_kg,
        DOSE_MASS,
        (Sentence("Packet ÷ meat it is for × meat: {packet} ÷ {for} × {meat} = {dose}", amounts),),
        PRODUCT_LABEL,
        tuple(cautions),
    )
    share = Figure(
        "share",
        "Of the meat",
        dose_kg / meat_kg,
        FRACTION,
        (Sentence("{dose} ÷ {meat} = {share}; at most 0.5 % in the US", amounts),),
        CFR_STARTER,
    )
    return (grams, share) if cells_per_gram is None else (grams, share, _cells(dose_kg / meat_kg, cells_per_gram))


def _cells(share: float, cells_per_gram: float) -> Figure:
    if not 1 <= cells_per_gram <= 1e13:
        raise OutOfRange(
            "cells_per_gram", "Enter the cells in a gram of culture as on the label, for example 100000000000."
        )
    cells = share * cells_per_gram
    power = math.log10(cells)
    amounts = {
        "share": Amount(share, RATIO),
        "culture": Amount(math.log10(cells_per_gram), RATIO),
        "log": Amount(power, RATIO),
    }
    said = ()
    if power < LEAST_LOG:
        said = ("Fewer than a million to the gram: it may lose the race against what is in the meat already.",)
    return Figure(
        "cells",
        "Cells to a gram of meat",
        cells,
        COUNT,
        (Sentence("log of the culture {culture} + log of the share {share} = {log}", amounts),),
        STARTER_LEVEL,
        said,
    )
