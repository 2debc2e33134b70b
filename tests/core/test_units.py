"""What one of each unit is in SI, by the numbers of its definition."""

import pkgutil
from importlib import import_module

import pytest

import core
from core import units
from core.chamber import checks_ph, humidifier, rates
from core.chamber.settling import measures as proof_measures
from core.mix import measures
from core.units import Unit

ONE_IS = {
    # NIST SP 811, appendix B: the international pound and foot and the US gallon of 231 cubic inches, exact.
    "KG": 1.0,
    "GRAM": 0.001,
    "MG": 0.000001,
    "LB": 0.45359237,
    "OZ": 0.028349523125,
    "M3": 1.0,
    "LITRE": 0.001,
    "ML": 0.000001,
    "GALLON": 0.003785411784,
    "QUART": 0.000946352946,
    "PINT": 0.000473176473,
    "CUP": 0.0002365882365,
    "FLUID_OZ": 0.0000295735295625,
    "TBSP": 0.00001478676478125,
    "TSP": 0.00000492892159375,
    "METRE": 1.0,
    "MM": 0.001,
    "CM": 0.01,
    "FOOT": 0.3048,
    "INCH": 0.0254,
    "PASCAL": 1.0,
    "HECTOPASCAL": 100.0,
    "KILOPASCAL": 1000.0,
    "INCH_MERCURY": 3386.389,  # the conventional one; B.8
    "ONE": 1.0,
    "PERCENT": 0.01,
    "PPM": 0.000001,
    "KELVIN": 1.0,
    "KELVIN_STEP": 1.0,
    "KELVIN_SECOND": 1.0,
    "CELSIUS_HOUR": 3600.0,
    "SECOND": 1.0,
    "MINUTE": 60.0,
    "HOUR": 3600.0,
    "DAY": 86_400.0,
    "WEEK": 604_800.0,
    "PER_SECOND": 1.0,
    "SQUARE_METRE_A_SECOND": 1.0,
    "KG_PER_KG": 1.0,
    "G_PER_KG": 0.001,
    "KG_PER_L": 1000.0,
    "SALOMETER_DEGREE": 0.01,
    "KG_PER_M3": 1.0,
    "G_PER_M3": 0.001,
    "J_PER_KG": 1.0,
    "KJ_PER_KG": 1000.0,
    "KG_PER_MOL": 1.0,
    "MOL_PER_KG": 1.0,
}
SO_MANY_ARE = {
    # those whose factor has no end: so many of them, and what that is in SI
    "FAHRENHEIT_STEP": (9.0, 5.0),
    "FAHRENHEIT_HOUR": (9.0, 18_000.0),
    "SQUARE_MM_A_DAY": (86_400.0, 1e-6),
    "PERCENT_A_DAY": (86_400.0, 0.01),
}
SCALES = {"CELSIUS": (0.0, 100.0), "FAHRENHEIT": (32.0, 212.0)}
"""Where water freezes and boils, 0 and 100 °C: a temperature in the core is in °C."""


ELSEWHERE = {
    # those of one stage alone: so many of them, and what that is in SI
    (checks_ph, "VOLT"): (1.0, 1.0),
    (checks_ph, "MILLIVOLT"): (1000.0, 1.0),
    (humidifier, "GRAM_PER_LITRE"): (1.0, 1.0),
    (humidifier, "TBSP_PER_QUART"): (0.000946352946, 0.0138),  # of soda: 13.8 g a tablespoon
    (humidifier, "TSP_PER_QUART"): (3 * 0.000946352946, 0.0138),
    (humidifier, "SPOON"): (1.0, 1.0),
    (rates, "M3_PER_SECOND"): (1.0, 1.0),
    (rates, "LITRE_A_DAY"): (86_400.0, 0.001),
    (rates, "QUART_A_DAY"): (86_400.0, 0.000946352946),
    (rates, "PINT_A_DAY"): (86_400.0, 0.000473176473),
    (rates, "GALLON_A_DAY"): (86_400.0, 0.003785411784),
    (rates, "KG_PER_SECOND"): (1.0, 1.0),
    (rates, "GRAM_AN_HOUR"): (3600.0, 0.001),
    (rates, "WATT"): (1.0, 1.0),
    (rates, "SQUARE_METRE_FILM"): (1.0, 1.0),
    (rates, "METRE_A_SECOND"): (1.0, 1.0),
    (rates, "FOOT_A_MINUTE"): (60.0, 0.3048),
    (rates, "FLUX_UNIT"): (1.0, 1.0),
    (rates, "GRAM_A_SQUARE_METRE_HOUR"): (3600.0, 0.001),
    (rates, "CUBIC_METRE"): (1.0, 1.0),
    (rates, "ROOM_LITRE"): (1000.0, 1.0),
    (rates, "CUBIC_FOOT"): (1.0, 0.028316846592),
    (rates, "AREA_FOR_MASS"): (1.0, 1.0),
    (proof_measures, "A_HOUR"): (3600.0, 1.0),
    (proof_measures, "KELVIN_AN_HOUR"): (3600.0, 1.0),
    (proof_measures, "FAHRENHEIT_AN_HOUR"): (9 * 3600.0, 5.0),
    (proof_measures, "KELVIN_A_DAY"): (86_400.0, 1.0),
    (proof_measures, "FAHRENHEIT_A_DAY"): (9 * 86_400.0, 5.0),
    (measures, "_A_KG"): (1.0, 1.0),
    (measures, "_A_LB"): (0.45359237, 1.0),  # a price
}


@pytest.mark.parametrize(("module", "name"), ELSEWHERE, ids=lambda each: each if isinstance(each, str) else "")
def test_so_many_of_a_stages_own_unit_are_so_much(module, name: str):
    unit: Unit = getattr(module, name)
    many, in_si = ELSEWHERE[module, name]
    assert (unit.to_si(many), unit.to_si(0.0)) == (pytest.approx(in_si, rel=1e-12), 0.0)


@pytest.mark.parametrize("name", ONE_IS)
def test_one_of_a_unit_is_so_much(name: str):
    unit: Unit = getattr(units, name)
    assert (unit.to_si(1.0), unit.to_si(0.0)) == (pytest.approx(ONE_IS[name], rel=1e-13), 0.0)


@pytest.mark.parametrize("name", SO_MANY_ARE)
def test_so_many_of_a_unit_are_so_much(name: str):
    many, in_si = SO_MANY_ARE[name]
    unit: Unit = getattr(units, name)
    assert (unit.to_si(many), unit.to_si(0.0)) == (pytest.approx(in_si, rel=1e-13), 0.0)


@pytest.mark.parametrize("name", SCALES)
def test_water_freezes_and_boils_on_either_scale(name: str):
    unit: Unit = getattr(units, name)
    assert [unit.to_si(each) for each in SCALES[name]] == pytest.approx([0.0, 100.0], abs=1e-12)


@pytest.mark.parametrize("name", [*ONE_IS, *SO_MANY_ARE, *SCALES])
def test_what_was_turned_into_si_comes_back(name: str):
    unit: Unit = getattr(units, name)
    assert unit.from_si(unit.to_si(12.5)) == pytest.approx(12.5, rel=1e-13)


def test_every_unit_is_entered_above():
    known = {name: each for name, each in vars(units).items() if isinstance(each, Unit)}
    assert set(known) == {*ONE_IS, *SO_MANY_ARE, *SCALES}
    of_all = {id(each) for each in known.values()}
    found: set[tuple[object, str]] = set()
    for each in pkgutil.walk_packages(core.__path__, "core."):
        if not each.name.endswith("__main__"):
            module = import_module(each.name)
            own = {name: unit for name, unit in vars(module).items() if isinstance(unit, Unit)}
            new = {name for name, unit in own.items() if id(unit) not in of_all}
            of_all |= {id(own[name]) for name in new}
            found |= {(module, name) for name in new}
    assert found == set(ELSEWHERE)
