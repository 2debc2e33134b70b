"""Formulas of our own kitchen to start from, each with what to beware of.

All are common practice; no published source. Every dose of curing salt is 0.19 % of one with 6.25 % sodium
nitrite: 119 ppm, below the US limit for chopped meat (156), for bacon in brine (120), and below 80 mg/kg counted
as nitrite ion.
"""

from __future__ import annotations

from attrs import frozen

from core.meat import USUAL_LOSS
from core.mix.composition import CUTS
from core.mix.formula import Formula, Ingredient, Meat, Role
from core.sentence import Message

NITRITE = 0.0625
CURE_DOSE = 0.0019


@frozen
class Example:
    key: str
    words: Message
    formula: Formula


def _meat(name: str, share: float, cut: str) -> Meat:
    return Meat(name, share, CUTS[cut].fat / 100, cut)


def _part(name: str, role: Role, per_meat: float, *, in_grams: bool = False) -> Ingredient:
    return Ingredient(name, role, per_meat, in_grams)


def _cure() -> Ingredient:
    return Ingredient("Curing salt, 6.25 % nitrite", "cure", CURE_DOSE, nitrite=NITRITE)


EXAMPLES: tuple[Example, ...] = (
    Example(
        "coarse-salami",
        "A coarse salami, fermented at room warmth and dried to a firm slice.",
        Formula(
            name="Juniper coarse",
            style="fermented",
            meats=(_meat("Pork shoulder, trimmed", 0.8, "10072"), _meat("Back fat", 0.2, "10004")),
            ingredients=(
                _part("Salt", "salt", 0.026),
                _cure(),
                _part("Dextrose", "sugar", 0.003, in_grams=True),
                _part("Black pepper, cracked", "spice", 0.003, in_grams=True),
                _part("Juniper, crushed", "spice", 0.001, in_grams=True),
                _part("Garlic", "spice", 0.002, in_grams=True),
                _part("Starter culture", "culture", 0.0003, in_grams=True),
            ),
            target_loss=USUAL_LOSS,
            casing_diameter_m=0.055,
            casing_length_m=0.4,
            cautions=("law-first", "raw-pork", "acid-in-time"),
        ),
    ),
    Example(
        "fine-stick",
        "A fine stick of beef and pork, fermented warm and fast, dried thin.",
        Formula(
            name="Alder stick",
            style="fermented",
            meats=(
                _meat("Beef chuck, lean", 0.45, "23603"),
                _meat("Pork shoulder, trimmed", 0.35, "10072"),
                _meat("Back fat", 0.2, "10004"),
            ),
            ingredients=(
                _part("Salt", "salt", 0.025),
                _cure(),
                _part("Dextrose", "sugar", 0.007, in_grams=True),
                _part("White pepper, ground", "spice", 0.0025, in_grams=True),
                _part("Coriander, ground", "spice", 0.0015, in_grams=True),
                _part("Starter culture, fast", "culture", 0.0003, in_grams=True),
            ),
            target_loss=0.3,
            casing_diameter_m=0.022,
            casing_length_m=0.6,
            cautions=("law-first", "raw-pork", "acid-in-time", "beef"),
        ),
    ),
    Example(
        "spreadable",
        "A soft sausage to spread: acid, rich, hardly dried, eaten young and cold.",
        Formula(
            name="Hearth spread",
            style="fermented",
            meats=(_meat("Pork shoulder", 0.5, "10070"), _meat("Pork belly", 0.5, "10005")),
            ingredients=(
                _part("Salt", "salt", 0.025),
                _cure(),
                _part("Dextrose", "sugar", 0.005, in_grams=True),
                _part("Sweet paprika", "spice", 0.006, in_grams=True),
                _part("White pepper, ground", "spice", 0.002, in_grams=True),
                _part("Starter culture, fast", "culture", 0.0003, in_grams=True),
            ),
            target_loss=0.1,
            casing_diameter_m=0.045,
            casing_length_m=0.3,
            cautions=("law-first", "raw-pork", "acid-in-time", "stays-moist"),
        ),
    ),
    Example(
        "rubbed-loin",
        "A whole loin, rubbed dry with cure and herbs, rested, then hung.",
        Formula(
            name="Fennel loin",
            style="whole-muscle",
            meats=(_meat("Pork loin", 1.0, "10024"),),
            ingredients=(
                _part("Salt", "salt", 0.027),
                _cure(),
                _part("Sugar", "sugar", 0.01),
                _part("Fennel seed, crushed", "spice", 0.004, in_grams=True),
                _part("Black pepper, cracked", "spice", 0.004, in_grams=True),
            ),
            target_loss=0.38,
            cautions=("law-first", "raw-pork", "whole-piece"),
        ),
    ),
    Example(
        "brined-belly",
        "A belly in a measured brine until meat and brine are alike, then hung.",
        Formula(
            name="Bay belly",
            style="whole-muscle",
            meats=(_meat("Pork belly, skinned", 1.0, "10005"),),
            ingredients=(
                _part("Water", "water", 0.5),
                _part("Salt", "salt", 0.055),
                _cure(),
                _part("Sugar", "sugar", 0.02),
                _part("Bay leaf", "spice", 0.001, in_grams=True),
                _part("Black pepper, cracked", "spice", 0.003, in_grams=True),
            ),
            target_loss=0.25,
            brined=True,
            cautions=("law-first", "raw-pork", "whole-piece", "keep-cold", "bacon"),
        ),
    ),
)


def example(key: str) -> Example | None:
    return next((each for each in EXAMPLES if each.key == key), None)
