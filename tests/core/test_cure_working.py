"""The working of the cure, line by line: which amount stands where, with its number.

The formulas are those of FSIS Directive 7620.3, 1995 (pp. 15 to 22) and the definitions. That a line adds up is said by
`test_working_adds_up`; here it is that no two of its amounts have changed places.
"""

import pytest

from core.mix.blend import preblend
from core.mix.brine import brine_figures, recipe
from core.mix.cure import CureMix, Dose
from core.mix.cure_dose import dosed_for, figures, to_weigh
from core.mix.curing_salt import CuringSalt
from core.mix.rules import Curing
from core.quantities import METRIC
from core.working import Figure

CURE, WEAK, BOTH = CuringSalt(0.0625), CuringSalt(0.005), CuringSalt(0.0625, 0.01)
POTASSIUM = CuringSalt(0.0625, 0.01, nitrite_of="potassium")
BRINE = {"other_salt_kg": 1.2, "water_kg": 10.0, "sugar_kg": 0.4}
PUMPED = CureMix(5.0, (Dose(BOTH, 0.2),), taken=0.1, accelerator_kg=0.05, **BRINE)
IMMERSED = CureMix(5.0, (Dose(BOTH, 0.04),), **BRINE)
MIXTURE = CureMix(8.0, (Dose(BOTH, 0.02),), 0.2, other_kg=0.4)
TWO = CureMix(10.0, (Dose(CURE, 0.012), Dose(POTASSIUM, 0.01)), 0.25)
BESIDE = CureMix(10.0, (Dose(CURE, 0.0), Dose(WEAK, 0.1)))
CASES = {
    "ground meat, two cures": (
        figures(TWO, Curing()),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 12 g × 6.25 % = 0.75 g",
                "Curing salt × its potassium nitrite × molar mass of the sodium salt ÷ that of the potassium "
                "salt: 10 g × 6.25 % × 0.810718 = 0.506699 g",
                "Sodium nitrite of both: 0.75 g + 0.506699 g = 1.2567 g",
                "Sodium nitrite ÷ green weight of meat: 1.2567 g ÷ 10 000 g = 125.67 ppm",
                "Limit for chopped meat, 9 CFR 424.21(c): ¼ oz to 100 lb = 156.25 ppm",
            ],
            "nitrite_ion": [
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: 125.67 ppm × 0.66679 = 83.7954 ppm",
            ],
            "nitrate": [
                "Curing salt × its nitrate = sodium nitrate: 10 g × 1 % = 0.1 g",
                "Sodium nitrate ÷ green weight of meat: 0.1 g ÷ 10 000 g = 10 ppm",
                "Limit for chopped meat, 9 CFR 424.21(c): 2¾ oz to 100 lb = 1 718.75 ppm",
            ],
            "nitrate_ion": [
                "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: 10 ppm × 0.729512 = 7.29512 ppm",
            ],
            "cure_salt": [
                "Table salt in the cure ÷ meat: 20.525 g ÷ 10 000 g = 0.20525 %",
            ],
            "total_salt": [
                "(Table salt in the cure + other salt) ÷ meat: (20.525 g + 250 g) ÷ 10 000 g = 2.70525 %",
            ],
        },
    ),
    "the whole mixture": (
        figures(MIXTURE, Curing("ca", "meat")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 20 g × 6.25 % = 1.25 g",
                "Sodium nitrite ÷ the whole raw mixture: 1.25 g ÷ 8 620 g = 145.012 ppm",
            ],
            "nitrite_ion": [
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: 145.012 ppm × 0.66679 = 96.6922 ppm",
            ],
            "nitrate": [
                "Curing salt × its nitrate = sodium nitrate: 20 g × 1 % = 0.2 g",
                "Sodium nitrate ÷ the whole raw mixture: 0.2 g ÷ 8 620 g = 23.2019 ppm",
            ],
            "nitrate_ion": [
                "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: 23.2019 ppm × 0.729512 = 16.926 ppm",
            ],
            "together": [
                "Nitrite + nitrate, each salt by its weight: 1.25 g + 0.2 g = 1.45 g",
                "Both ÷ the whole raw mixture: 1.45 g ÷ 8 620 g = 168.213 ppm",
                "Limit for cured meat, CFIA 4.13.1: 200 ppm (100 to 200 ppm in all)",
            ],
            "cure_salt": [
                "Table salt in the cure ÷ meat: 18.55 g ÷ 8 000 g = 0.231875 %",
            ],
            "total_salt": [
                "(Table salt in the cure + other salt) ÷ meat: (18.55 g + 200 g) ÷ 8 000 g = 2.73187 %",
            ],
        },
    ),
    "pumped": (
        figures(PUMPED, Curing("us", "meat", "pump")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 200 g × 6.25 % = 12.5 g",
                "Sodium nitrite × pump ÷ brine: 12.5 g × 10 % ÷ 11 850 g = 105.485 ppm",
                "Limit for pumped or brined meat, 9 CFR 424.21(c): 2 lb to 100 gal of pickle at 10 % pump = 200 ppm",
            ],
            "nitrite_ion": [
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: 105.485 ppm × 0.66679 = 70.3365 ppm",
            ],
            "nitrate": [
                "Curing salt × its nitrate = sodium nitrate: 200 g × 1 % = 2 g",
                "Sodium nitrate × pump ÷ brine: 2 g × 10 % ÷ 11 850 g = 16.8776 ppm",
                "Limit for pumped or brined meat, 9 CFR 424.21(c): 7 lb to 100 gal of pickle = 700 ppm",
            ],
            "nitrate_ion": [
                "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: 16.8776 ppm × 0.729512 = 12.3124 ppm",
            ],
            "accelerator": [
                "Ascorbate or erythorbate × pump ÷ brine: 50 g × 10 % ÷ 11 850 g = 421.941 ppm",
                "Limit for cured meat, 9 CFR 424.21(c): ⅞ oz to 100 lb = 546.875 ppm",
            ],
            "cure_salt": [
                "Table salt in the cure × pump ÷ brine: 185.5 g × 10 % ÷ 11 850 g = 0.15654 %",
            ],
            "total_salt": [
                "Table salt in the cure + other salt: 185.5 g + 1 200 g = 1 385.5 g",
                "All table salt × pump ÷ brine: 1 385.5 g × 10 % ÷ 11 850 g = 1.1692 %",
            ],
        },
    ),
    "pumped, the whole mixture": (
        figures(PUMPED, Curing("ca", "meat", "pump")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 200 g × 6.25 % = 12.5 g",
                "Sodium nitrite × pump ÷ (100 % + pump) ÷ brine: 12.5 g × 10 % ÷ (100 % + 10 %) ÷ 11 850 g = "
                "95.8957 ppm",
            ],
            "together": [
                "Nitrite + nitrate, each salt by its weight: 12.5 g + 2 g = 14.5 g",
                "Both × pump ÷ (100 % + pump) ÷ brine: 14.5 g × 10 % ÷ (100 % + 10 %) ÷ 11 850 g = 111.239 ppm",
                "Limit for cured meat, CFIA 4.13.1: 200 ppm (100 to 200 ppm in all)",
            ],
        },
    ),
    "in brine by pick-up": (
        figures(PUMPED, Curing("us", "meat", "pick-up")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 200 g × 6.25 % = 12.5 g",
                "Sodium nitrite × pick-up ÷ brine: 12.5 g × 10 % ÷ 11 850 g = 105.485 ppm",
                "Limit for pumped or brined meat, 9 CFR 424.21(c): 2 lb to 100 gal of pickle at 10 % pump = 200 ppm",
            ],
        },
    ),
    "in brine to the end": (
        figures(IMMERSED, Curing("us", "meat", "immersion")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 40 g × 6.25 % = 2.5 g",
                "Sodium nitrite ÷ (green weight of meat + brine): 2.5 g ÷ (5 000 g + 11 640 g) = 150.24 ppm",
                "Limit for pumped or brined meat, 9 CFR 424.21(c): 2 lb to 100 gal of pickle at 10 % pump = 200 ppm",
            ],
            "nitrite_ion": [
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: 150.24 ppm × 0.66679 = 100.179 ppm",
            ],
            "nitrate": [
                "Curing salt × its nitrate = sodium nitrate: 40 g × 1 % = 0.4 g",
                "Sodium nitrate ÷ (green weight of meat + brine): 0.4 g ÷ (5 000 g + 11 640 g) = 24.0385 ppm",
                "Limit for pumped or brined meat, 9 CFR 424.21(c): 7 lb to 100 gal of pickle = 700 ppm",
            ],
            "nitrate_ion": [
                "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: 24.0385 ppm × 0.729512 = 17.5364 ppm",
            ],
            "cure_salt": [
                "Table salt in the cure ÷ (green weight of meat + brine): 37.1 g ÷ (5 000 g + 11 640 g) = 0.222957 %",
            ],
            "total_salt": [
                "Table salt in the cure + other salt: 37.1 g + 1 200 g = 1 237.1 g",
                "All table salt ÷ (green weight of meat + brine): 1 237.1 g ÷ (5 000 g + 11 640 g) = 7.4345 %",
            ],
        },
    ),
    "the ion": (
        figures(CureMix(10.0, (Dose(WEAK, 0.22),), 0.05), Curing("eu", "not-heated")),
        {
            "nitrite": [
                "Curing salt × its nitrite = sodium nitrite: 220 g × 0.5 % = 1.1 g",
                "Sodium nitrite ÷ green weight of meat: 1.1 g ÷ 10 000 g = 110 ppm",
            ],
            "nitrite_ion": [
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: 110 ppm × 0.66679 = 73.3469 ppm",
                "Limit for meat that is not heat-treated, Reg. (EU) 2023/2108: 80 ppm, as ion",
            ],
        },
    ),
    "a dose for ground meat": (
        dosed_for(CureMix(12.4, (Dose(CURE, 0.0),)), Curing(), 120.0),
        {
            "cure": [
                "Nitrite wanted × green weight of meat ÷ nitrite in the cure: 120 ppm × 12 400 g ÷ 6.25 % = 23.808 g",
            ],
            "share": [
                "Curing salt ÷ meat: 23.808 g ÷ 12 400 g = 0.192 %",
            ],
        },
    ),
    "a dose beside another": (
        dosed_for(BESIDE, Curing(), 120.0),
        {
            "cure": [
                "Curing salt that makes it on the green weight, beside the other: (120 ppm × 10 000 g − 100 "
                "% × 0.5 g) ÷ (100 % × 6.25 %) = 11.2 g",
            ],
        },
    ),
    "a dose for a pumping brine": (
        dosed_for(CureMix(5.0, BESIDE.doses, 1.2, water_kg=10.0, taken=0.1), Curing("us", "meat", "pump"), 120.0),
        {
            "cure": [
                "Curing salt that makes it on the green weight, its own weight counted: (120 ppm × 11 300 g "
                "− 10 % × 0.5 g) ÷ (10 % × 6.25 % − 120 ppm) = 213.05 g",
            ],
            "share": [
                "Curing salt ÷ brine: 213.051 g ÷ 11 513.1 g = 1.85051 %",
            ],
        },
    ),
    "a dose for the whole mixture": (
        dosed_for(CureMix(8.0, (Dose(CURE, 0.0),), 0.2, other_kg=0.4), Curing("ca", "meat"), 150.0),
        {
            "cure": [
                "Curing salt that makes it on the whole raw mixture, its own weight counted: (150 ppm × 8 "
                "600 g) ÷ (100 % × 6.25 % − 150 ppm) = 20.6896 g",
            ],
            "share": [
                "Curing salt ÷ meat: 20.6897 g ÷ 8 000 g = 0.25862 %",
            ],
        },
    ),
    "grams beside a share": (
        (to_weigh(CureMix(12.4, (Dose(CURE, 0.031),))),),
        {
            "cure": [
                "To the green weight: 0.25 % × 12 400 g = 31 g",
            ],
        },
    ),
    "a brine": (
        brine_figures(CureMix(1.0, (Dose(CURE, 0.24),), **BRINE)),
        {
            "pickle": [
                "Water + salt + all else: 10 000 g + 1 425 g + 415 g = 11 840 g",
            ],
            "brine_salt": [
                "1 425 g ÷ 11 840 g = 12.0355 %",
            ],
            "salometer": [
                "Salt ÷ (salt + water): 1 425 g ÷ (1 425 g + 10 000 g) = 12.4726 %",
                "Of a saturated brine: 12.4726 % ÷ 26.4 % = 47.2449 degrees",
            ],
            "density": [
                "Salt ÷ (salt + water): 1 425 g ÷ (1 425 g + 10 000 g) = 12.4726 %",
                "To water of 20 °C: 1 + 0.701 × 12.4726 % + 0.2412 × 12.4726 % × 12.4726 % = 1.09119",
            ],
            "volume": [
                "(Salt + water) ÷ density + sugar × the room it takes: 11 425 g ÷ 1.08922 kg/L + 400 g × "
                "0.62 L/kg = 10.7371 L",
            ],
        },
    ),
    "a recipe": (
        recipe(0.01, 0.1584),
        {
            "salt": [
                "Volume × density: 10 L × 1.11508 kg/L = 11 150.8 g",
                "11 150.8 g × 15.84 % = 1 766.29 g",
            ],
            "water": [
                "11 150.8 g − 1 766.29 g = 9 384.51 g",
            ],
            "salometer": [
                "Of a saturated brine: 15.84 % ÷ 26.4 % = 60 degrees",
            ],
            "density": [
                "Volume × density: 10 L × 1.11508 kg/L = 11 150.8 g",
            ],
        },
    ),
    "a blend": (
        preblend(0.0044, 0.0516, 0.001),
        {
            "take": [
                "Curing salt + salt of the batch, at most: 4.4 g + 51.6 g = 56 g",
                "Down to what the scale shows: 56 g",
                "Curing salt in it: 56 g × 7.84314 % = 4.39215 g",
            ],
            "blend_cure": [
                "The least, in steps of ten divisions, with which both weighings stay within ±5 %: 40 g",
            ],
            "blend_salt": [
                "40 g × (56 g ÷ 4.4 g − 1), up to what the scale shows: 470 g",
                "Curing salt in the blend: 40 g ÷ 510 g = 7.84314 %",
            ],
            "salt_left": [
                "Salt of the batch less what the blend brings: 51.6 g − 51.6078 g = 0 g",
            ],
            "blend_worst": [
                "Every weighing one division out, all the same way (1 g): 4.41176 %",
            ],
        },
    ),
}
LINES = [(name, key) for name, (_, lines) in CASES.items() for key in lines]


def lines_of(figures_: tuple[Figure, ...], key: str) -> list[str]:
    (figure,) = (each for each in figures_ if each.key == key)
    return [step.say(METRIC).replace("\u00a0", " ") for step in figure.working]


@pytest.mark.parametrize(("name", "key"), LINES, ids=[f"{name}: {key}" for name, key in LINES])
def test_every_amount_stands_in_its_place(name: str, key: str):
    made, lines = CASES[name]
    assert lines_of(made, key) == lines[key]
