"""Starter culture to weigh: by what its packet says it is for, and how many cells that brings."""

from __future__ import annotations

import math

from core.quantities import COUNT, DOSE_MASS, FRACTION, MASS, RATIO, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import CFR_STARTER, PRODUCT_LABEL, STARTER_LEVEL
from core.traced import traced
from core.working import Figure

MOST_SHARE = 0.005  # 9 CFR 424.21(c)
LEAST_LOG = 6.0  # from memory
SMALL_KG = 0.0005
TOO_LITTLE: Message = "Too little for most scales: stir a whole packet into water and take its share of that."
KEEP: Message = (
    "Keep it frozen or as its label says; stir it in cold water without chlorine just before use, salt and cure apart."
)

WEIGHED: dict[str, Message] = {
    "meat_kg": "The meat",
    "packet_kg": "The packet",
    "packet_for_kg": "The meat a packet is for",
}


def starter(
    meat_kg: float, packet_kg: float, packet_for_kg: float, cells_per_gram: float | None = None
) -> tuple[Figure, ...]:
    """What to weigh of a packet, and the cells it brings to a gram of meat where the label tells their number.

    All weights above 0. cells_per_gram: living cells in a gram of culture. Raises OutOfRange on the field at fault.
    """
    for key, value in (("meat_kg", meat_kg), ("packet_kg", packet_kg), ("packet_for_kg", packet_for_kg)):
        if not 0 < value < 1e5:
            raise OutOfRange(key, Sentence("{what} must weigh more than 0 g.", {"what": Sentence(WEIGHED[key])}))
    meat = traced("meat", meat_kg, MASS)
    dose = traced("packet", packet_kg, DOSE_MASS) / traced("for", packet_for_kg, MASS) * meat
    share = dose.value / meat_kg
    if share > MOST_SHARE * (1 + 1e-9):
        raise OutOfRange(
            "packet_for_kg",
            "That is more than 0.5 % of the meat, the most that may be added in the US (9 CFR 424.21(c)). Look at the "
            "label: how many kilograms is a packet for?",
        )
    cautions = (KEEP, TOO_LITTLE) if dose.value < SMALL_KG else (KEEP,)
    words = "Packet ÷ meat it is for × meat"
    grams = dose.figure("starter", "Starter to weigh", DOSE_MASS, words, source=PRODUCT_LABEL, cautions=cautions)
    amounts = {"dose": grams.amount, "meat": Amount(meat_kg, MASS), "share": Amount(share, FRACTION)}
    step = Sentence("{dose} ÷ {meat} = {share}; at most 0.5 % in the US", amounts)
    of_meat = Figure("share", "Of the meat", share, FRACTION, (step,), CFR_STARTER)
    return (grams, of_meat) if cells_per_gram is None else (grams, of_meat, _cells(share, cells_per_gram))


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
