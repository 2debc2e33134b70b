"""Nitrite and nitrate as the salt that was weighed, as its sodium salt, or as the ion: one dose, three numbers."""

from __future__ import annotations

from typing import Literal

Substance = Literal["nitrite", "nitrate"]
Alkali = Literal["sodium", "potassium"]
ALKALIS: tuple[Alkali, ...] = ("sodium", "potassium")
Counted = Literal["weighed", "sodium", "ion"]
"""weighed: sodium and potassium salts alike, by their weight. sodium: as so much of the sodium salt, mole for mole."""

# Molar masses from the standard atomic weights N 14.007, O 15.999, Na 22.98976928, K 39.0983.
NITRITE_ION_MOLAR = 14.007 + 2 * 15.999
NITRATE_ION_MOLAR = 14.007 + 3 * 15.999
SODIUM_MOLAR = 22.98976928
POTASSIUM_MOLAR = 39.0983
ION_IN_SODIUM_NITRITE = NITRITE_ION_MOLAR / (NITRITE_ION_MOLAR + SODIUM_MOLAR)
ION_IN_POTASSIUM_NITRITE = NITRITE_ION_MOLAR / (NITRITE_ION_MOLAR + POTASSIUM_MOLAR)
ION_IN_SODIUM_NITRATE = NITRATE_ION_MOLAR / (NITRATE_ION_MOLAR + SODIUM_MOLAR)
ION_IN_POTASSIUM_NITRATE = NITRATE_ION_MOLAR / (NITRATE_ION_MOLAR + POTASSIUM_MOLAR)

ION_IN: dict[tuple[Substance, Alkali], float] = {
    ("nitrite", "sodium"): ION_IN_SODIUM_NITRITE,
    ("nitrite", "potassium"): ION_IN_POTASSIUM_NITRITE,
    ("nitrate", "sodium"): ION_IN_SODIUM_NITRATE,
    ("nitrate", "potassium"): ION_IN_POTASSIUM_NITRATE,
}


def factor(substance: Substance, alkali: Alkali, counted: Counted) -> float:
    """What a kilogram of this salt counts for."""
    if counted == "weighed":
        return 1.0
    ion = ION_IN[substance, alkali]
    return ion if counted == "ion" else ion / ION_IN[substance, "sodium"]
