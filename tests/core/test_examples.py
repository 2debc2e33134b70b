"""The formulas that are given along, entered a second time: a slip in one is mixed by whoever begins with it.

Doses in grams to the kilogram of meat, shares of the meats in per-cent with their rows of the table. They are our own,
after common practice, no published source.
"""

import pytest

from core.mix.examples import EXAMPLES
from core.mix.formula import Formula

CURE = "Curing salt, 6.25 % nitrite cure 1.9 of 6.25 %"
WRITTEN = {
    "coarse-salami": (
        "fermented, 35 % to lose, casing 55 × 400 mm",
        "Pork shoulder, trimmed 80 % 10072",
        "Back fat 20 % 10004",
        "Salt salt 26 %",
        CURE,
        "Dextrose sugar 3 g",
        "Black pepper, cracked spice 3 g",
        "Juniper, crushed spice 1 g",
        "Garlic spice 2 g",
        "Starter culture culture 0.3 g",
    ),
    "fine-stick": (
        "fermented, 30 % to lose, casing 22 × 600 mm",
        "Beef chuck, lean 45 % 23603",
        "Pork shoulder, trimmed 35 % 10072",
        "Back fat 20 % 10004",
        "Salt salt 25 %",
        CURE,
        "Dextrose sugar 7 g",
        "White pepper, ground spice 2.5 g",
        "Coriander, ground spice 1.5 g",
        "Starter culture, fast culture 0.3 g",
    ),
    "spreadable": (
        "fermented, 10 % to lose, casing 45 × 300 mm",
        "Pork shoulder 50 % 10070",
        "Pork belly 50 % 10005",
        "Salt salt 25 %",
        CURE,
        "Dextrose sugar 5 g",
        "Sweet paprika spice 6 g",
        "White pepper, ground spice 2 g",
        "Starter culture, fast culture 0.3 g",
    ),
    "rubbed-loin": (
        "whole-muscle, 38 % to lose",
        "Pork loin 100 % 10024",
        "Salt salt 27 %",
        CURE,
        "Sugar sugar 10 %",
        "Fennel seed, crushed spice 4 g",
        "Black pepper, cracked spice 4 g",
    ),
    "brined-belly": (
        "whole-muscle, 25 % to lose, brined",
        "Pork belly, skinned 100 % 10005",
        "Water water 500 %",
        "Salt salt 55 %",
        CURE,
        "Sugar sugar 20 %",
        "Bay leaf spice 1 g",
        "Black pepper, cracked spice 3 g",
    ),
}
"""A dose ends in "g" where it is thought of in g/kg, in "%" where in per-cent; its number is in g/kg in both."""


def _written(formula: Formula) -> tuple[str, ...]:
    kind = f"{formula.style}, {formula.target_loss * 100:.6g} % to lose"
    if formula.casing_diameter_m and formula.casing_length_m:
        kind += f", casing {formula.casing_diameter_m * 1e3:.6g} × {formula.casing_length_m * 1e3:.6g} mm"
    kind += ", brined" if formula.brined else ""
    meats = (f"{each.name} {each.share * 100:.6g} % {each.cut}" for each in formula.meats)
    parts = (
        f"{each.name} {each.role} {each.per_meat * 1e3:.6g} "
        + (f"of {each.nitrite * 100:.6g} %" if each.role == "cure" else "g" if each.in_grams else "%")
        for each in formula.ingredients
    )
    return (kind, *meats, *parts)


@pytest.mark.parametrize("given", EXAMPLES, ids=lambda given: given.key)
def test_an_example_is_as_it_was_written(given):
    assert _written(given.formula) == WRITTEN[given.key]


def test_every_example_is_entered_above():
    assert [given.key for given in EXAMPLES] == list(WRITTEN)
