"""The constants that sources print, entered a second time: a digit that slips in one of the two places is found.

Each line says its source and how it is known here; none was looked up again for this page.
"""

from importlib import import_module

import pytest

WAGNER = "Wagner and Pruß 2002, the saturation line (entered from memory, and agrees with iapws)"
ICE = "IAPWS R14-08(2011), sublimation pressure (entered from memory, and agrees with iapws)"
HARDY = "Hardy 1998, the enhancement factor (copy)"
PHREEQC = "PHREEQC 3, phreeqc.dat (copy)"
PITZER = "Pitzer and Mayorga 1973 at 25 °C (copy); with temperature PHREEQC 3, pitzer.dat (seen)"
ASHRAE = "ASHRAE Handbook Fundamentals 2017, ch. 1 (copy)"
PRACTICE = "common practice; no published source"
MEMORY = "from memory"
OWN = "our own sum: radiation about 5, moving air 3 to 10"

CONSTANTS = [
    ("core.saturation", "KELVIN_AT_ZERO_C", 273.15, "the SI"),
    ("core.saturation", "CRITICAL_K", 647.096, WAGNER),
    ("core.saturation", "CRITICAL_PA", 22_064_000.0, WAGNER),
    (
        "core.saturation",
        "_WATER",
        [-7.85951783, 1, 1.84408259, 1.5, -11.7866497, 3, 22.6807411, 3.5, -15.9618719, 4, 1.80122502, 7.5],
        WAGNER,
    ),
    ("core.saturation", "_TRIPLE_K", 273.16, ICE),
    ("core.saturation", "_TRIPLE_PA", 611.657, ICE),
    (
        "core.saturation",
        "_ICE",
        [-21.2144006, 0.00333333333, 27.3203819, 1.20666667, -6.1059813, 1.70333333],
        ICE,
    ),
    (
        "core.saturation",
        "_IN_AIR_WATER",
        [3.53624e-4, 2.9328363e-5, 2.6168979e-7, 8.5813609e-9, -10.7588, 6.3268134e-2, -2.5368934e-4, 6.3405286e-7],
        HARDY,
    ),
    ("core.vapour", "STANDARD_PA", 101_325.0, "the SI's standard atmosphere"),
    ("core.vapour", "VAPOUR_TO_AIR", 0.621945, ASHRAE),
    ("core.vapour", "VAPOUR_GAS_CONSTANT", 461.523, "8.314462618 J/(mol K) ÷ 18.015268 g/mol"),
    ("core.water", "_FIRST", [-356.3094, -0.06091964, 21834.37, 126.8339, -1684915, 0], PHREEQC),
    ("core.water", "_SECOND", [-107.8871, -0.03252849, 5151.79, 38.92561, -563713.9, 0], PHREEQC),
    ("core.water", "_WATER", [293.29227, 0.1360833, -10576.913, -123.73158, 0, -6.996455e-5], PHREEQC),
    ("core.water", "_GAS", [10.5624, -0.023547, -3972.8, 0, 587460, 1.9194e-5], PHREEQC),
    ("core.water", "_PAIR_BICARBONATE", [-0.25, -4.184], PHREEQC),
    ("core.water", "_PAIR_CARBONATE", [1.27, 37.27944], PHREEQC),
    ("core.water", "_GAS_CONSTANT", 0.008314463, "8.314463 J/(mol K)"),
    ("core.water", "OUTSIDE_AIR", 0.00042, "outside air of the 2020s, 420 ppm " + MEMORY),
    ("core.dry.activity", "_BETA_0", [0.0765, 9598.4, 35.48, -0.058731, 1.798e-5, -500000], PITZER),
    ("core.dry.activity", "_BETA_1", [0.2664, 13770, 46.8, -0.069512, 2e-5, -748230], PITZER),
    ("core.dry.activity", "_C_PHI", [0.00127, -120.5, -0.2081, 0, 1.166e-7, 11121], PITZER),
    ("core.dry.activity", "SALT_MOLAR", 0.0584428, "atomic weights: NaCl"),
    ("core.dry.activity", "WATER_MOLAR", 0.01801528, "atomic weights: H2O"),
    ("core.dry.warmth", "HEAT_K", 10_000.0, "USP <1160>, ΔH ÷ R (copy)"),
    ("core.chamber.film", "DRY_AIR_GAS_CONSTANT", 287.05, MEMORY),
    ("core.chamber.cold_piece", "USUAL_FILM", 12.0, OWN),
    ("core.chamber.cold_piece", "STILL_FILM", 6.0, OWN),
    ("core.chamber.cold_piece", "BRISK_FILM", 35.0, OWN),
    ("core.chamber.humidifier", "TABLESPOON_KG", 0.0138, "a US tablespoon of baking soda, 4.6 g to the teaspoon"),
    ("core.chamber.humidifier", "WATER_KG_PER_M3", 998.2, "water at 20 °C"),
    ("core.chamber.humidifier", "BICARBONATE_KG_PER_MOL", 0.0840066, "atomic weights: NaHCO3"),
    ("core.chamber.humidifier", "WATER_KG_PER_MOL", 0.018015, "atomic weights: H2O"),
    ("core.chamber.setpoints", "HYGROMETER", 0.03, PRACTICE),
    ("core.chamber.moisture", "MEAT_KG_PER_M3", 1050.0, PRACTICE),
    ("core.chamber.capacity", "SPARE", 0.8, PRACTICE),
    ("core.chamber.levels", "LEAST_SPREAD", 0.25, PRACTICE),
    ("core.chamber.levels", "SPREAD_OF_ONE", 0.5, PRACTICE),
    ("core.chamber.checks", "REPLACE_AT", 3.0, PRACTICE),
    ("core.chamber.hygrometer_boxes", "TOLERANCE", 0.03, PRACTICE),
    ("core.chamber.hygrometer_boxes", "APART_K", 0.2, PRACTICE),
    ("core.chamber.checks_hygrometer", "LEAST_APART", 0.05, PRACTICE),
    ("core.chamber.checks_hygrometer", "ONE_POINT_REACH", 0.1, PRACTICE),
    ("core.chamber.checks_thermometer", "TOLERANCE_K", 1.0, PRACTICE),
    ("core.chamber.checks_thermometer", "WEATHER_PA", 2000.0, PRACTICE),
    ("core.chamber.checks_ph", "NEUTRAL_PH", 7.0, "where an electrode is centred"),
    ("core.chamber.checks_ph", "LEAST_SLOPE", 0.9, "USP <791> (copy)"),
    ("core.chamber.checks_ph", "MOST_SLOPE", 1.05, "USP <791> (copy)"),
    ("core.chamber.checks_ph", "MOST_OFFSET_V", 0.03, "USP <791> (copy)"),
    ("core.chamber.checks_ph", "LEAST_BUFFERS_APART", 1.0, PRACTICE),
    ("core.chamber.checks_ph", "BUFFER_UNSURE_PH", 0.02, PRACTICE),
    ("core.chamber.checks_scale", "ALLOWED_SHARE", 0.005, PRACTICE),
    ("core.chamber.checks_scale", "SHARES", [0.02, 0.05], PRACTICE),
    ("core.mix.casings", "MIX_DENSITY", 1050.0, PRACTICE),
    ("core.mix.formula", "MOST_LOSS", 0.75, "the water of lean meat"),
    ("core.mix.formula", "MOST_PER_MEAT", 2.0, PRACTICE),
    ("core.mix.salting", "TYPICAL_M2_S", 2.0e-10, MEMORY),
    ("core.mix.salting", "SLOW_M2_S", 1.3e-10, MEMORY),
    ("core.mix.salting", "FAST_M2_S", 7.0e-10, "Hansen et al. 2008"),
    ("core.mix.salting", "AT_C", 3.0, MEMORY),
    ("core.mix.salting", "ACTIVATION_J_MOL", 19_000.0, MEMORY),
    ("core.mix.salting", "LEAST_C", (36 - 32) / 1.8, "USDA Farmers' Bulletin, VT 458-223: 36 °F (copy)"),
    ("core.mix.salting", "MOST_C", (40 - 32) / 1.8, "USDA Farmers' Bulletin, VT 458-223: 40 °F (copy)"),
    ("core.mix.starter", "MOST_SHARE", 0.005, "9 CFR 424.21(c)"),
    ("core.mix.starter", "LEAST_LOG", 6.0, MEMORY),
    ("core.mix.sugar", "RULE_PH_PER_SHARE", 100.0, "a gram to the kilogram for 0.1: a handbook, quoted"),
    ("core.mix.sugar", "BUFFER_MOL", [0.041, 0.058], "the least and the most of six meats (copy)"),
    ("core.mix.sugar", "NATIVE_SHARE", 0.001, "a trade page"),
    ("core.mix.sugar", "ACID_PH", 5.3, "FSRE-2005"),
    ("core.mix.sugar", "LOWEST_PH", 4.5, "a cookery book, quoted"),
    ("core.dry.shrink", "MOST_LOSS", 0.75, "the water of lean meat"),
    ("core.daybook.set_points", "LEAST_KELVIN", 0.5, PRACTICE),
    ("core.daybook.due.instruments", "DAYS_A_MONTH", 30.44, "365.25 ÷ 12, rounded"),
]


def flat(value: object) -> list[float]:
    if isinstance(value, tuple | list):
        return [number for each in value for number in flat(each)]
    assert isinstance(value, int | float)
    return [float(value)]


@pytest.mark.parametrize(("module", "name", "printed", "source"), CONSTANTS, ids=[each[1] for each in CONSTANTS])
def test_a_constant_is_as_its_source_prints_it(module: str, name: str, printed: object, source: str):
    assert flat(getattr(import_module(module), name)) == pytest.approx(flat(printed), rel=1e-9), source


@pytest.mark.parametrize(
    ("sugar", "grams"),
    [("dextrose", 2 / 180.16), ("dextrose-water", 2 / 198.17), ("sucrose", 4 / 342.30), ("lactose", 4 / 360.31)],
)
def test_a_sugar_makes_two_lactic_acids_to_each_ring(sugar: str, grams: float):
    """Molar masses from the atomic weights."""
    sugars = import_module("core.mix.sugar").SUGARS
    assert sugars[sugar].acid_mol_per_kg == pytest.approx(1000 * grams, rel=1e-9)
