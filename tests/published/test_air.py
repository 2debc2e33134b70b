"""Moist air against printed tables, and against two programs that were written without ours.

CoolProp's HAPropsSI is a real-gas model (ASHRAE RP-1485); PsychroLib has ideal gases and no enhancement factor. Both
call the frost point a dew point once it is below 0 °C, so ours is compared with the point they mean.
"""

from random import Random

import psychrolib
import pytest
from attrs import frozen
from CoolProp.HumidAirProp import HAPropsSI

from core.saturation import (
    ice_saturation_in_air_pa,
    ice_saturation_pressure_pa,
    saturation_in_air_pa,
    saturation_pressure_pa,
)
from core.vapour import (
    absolute_humidity_kg_m3,
    dew_point_c,
    enthalpy_j_kg,
    frost_point_c,
    humidity_ratio,
    ice_bulb_ratio,
    station_pressure_pa,
    vapour_pressure_pa,
    wet_bulb_c,
)
from tests.published.rows import rows


def table_saturation_pa(temperature_c):
    """ASHRAE's table counts over ice below 0 °C."""
    return (ice_saturation_pressure_pa if temperature_c < 0 else saturation_pressure_pa)(temperature_c)


def table_ratio(temperature_c, pressure_pa):
    over = ice_saturation_in_air_pa if temperature_c < 0 else saturation_in_air_pa
    return humidity_ratio(over(temperature_c, pressure_pa), pressure_pa)


ASHRAE = {
    "saturation_pressure_pa": table_saturation_pa,
    "saturated_humidity_ratio": table_ratio,
    "saturated_enthalpy_j_kg": lambda temperature_c, pressure_pa: enthalpy_j_kg(
        temperature_c, table_ratio(temperature_c, pressure_pa)
    ),
    "dry_enthalpy_j_kg": lambda temperature_c: enthalpy_j_kg(temperature_c, 0.0),
    "station_pressure_pa": station_pressure_pa,
}
FORMULAS = {
    "saturation_pressure_pa": saturation_pressure_pa,
    "ice_saturation_pressure_pa": ice_saturation_pressure_pa,
    "dew_point_c": dew_point_c,
    "frost_point_c": frost_point_c,
}


@pytest.mark.parametrize("row", rows("air_ashrae"), ids=lambda row: row.id)
def test_a_printed_ashrae_row_is_met(row):
    assert ASHRAE[row.quantity](**row.inputs) == pytest.approx(row.expected, rel=0, abs=row.tolerance)


@pytest.mark.parametrize("row", rows("air_saturation") + rows("air_dew_frost"), ids=lambda row: row.id)
def test_a_value_from_another_program_is_met(row):
    assert FORMULAS[row.quantity](**row.inputs) == pytest.approx(row.expected, rel=0, abs=row.tolerance)


@frozen
class Point:
    """One state of air, 0.01 to 40 °C, and what CoolProp says of it; dew_c is its frost point below 0 °C."""

    temperature_c: float
    humidity: float
    pressure_pa: float
    dew_c: float
    bulb_c: float
    ratio: float
    density: float
    enthalpy: float

    @property
    def air(self):
        return self.temperature_c, self.humidity, self.pressure_pa


def asked():
    """A grid with every corner of 0.01-40 °C, 30-100 %, 70-105 kPa, and as much again at random."""
    yield from (
        (max(step, 0.01), percent / 100, kilopascal * 1000.0)
        for step in range(41)
        for percent in range(30, 101, 5)
        for kilopascal in range(70, 106, 5)
    )
    random = Random(20)
    for _ in range(4000):
        yield random.uniform(0.01, 40), random.uniform(0.3, 1.0), random.uniform(70e3, 105e3)


def coolprop(temperature_c, humidity, pressure_pa):
    """None where HAPropsSI fails, as it sporadically does with the wet bulb at 0 °C."""
    state = ("T", temperature_c + 273.15, "P", pressure_pa, "R", humidity)
    try:
        dew, bulb, ratio, volume, enthalpy = (HAPropsSI(name, *state) for name in ("D", "B", "W", "Vda", "Hda"))
    except ValueError:
        return None
    return Point(temperature_c, humidity, pressure_pa, dew - 273.15, bulb - 273.15, ratio, ratio / volume, enthalpy)


@pytest.fixture(scope="module")
def answers():
    return [coolprop(*air) for air in asked()]


@pytest.fixture(scope="module")
def points(answers):
    return [point for point in answers if point is not None]


def worst(errors):
    return max(abs(error) for error in errors)


def test_coolprop_answers_nearly_everywhere(answers):
    assert sum(answer is None for answer in answers) <= len(answers) // 1000


def test_dew_point_is_within_5_mk_of_coolprop(points):
    above = [point for point in points if point.dew_c >= 0]
    assert len(above) > 5000
    assert worst(dew_point_c(*point.air) - point.dew_c for point in above) < 0.005


def test_frost_point_is_within_5_mk_of_what_coolprop_calls_dew_point_below_zero(points):
    below = [point for point in points if point.dew_c < -0.005]
    assert len(below) > 500
    assert worst(frost_point_c(*point.air) - point.dew_c for point in below) < 0.005


def test_humidity_ratio_is_within_a_twentieth_of_a_per_cent_of_coolprop(points):
    ours = [humidity_ratio(vapour_pressure_pa(*point.air), point.pressure_pa) for point in points]
    assert worst(ratio / point.ratio - 1 for ratio, point in zip(ours, points, strict=True)) < 5e-4


def test_absolute_humidity_is_within_a_tenth_of_a_per_cent_of_coolprop(points):
    assert worst(absolute_humidity_kg_m3(*point.air) / point.density - 1 for point in points) < 1e-3


def test_enthalpy_is_within_130_j_kg_of_coolprop(points):
    ours = [
        enthalpy_j_kg(point.temperature_c, humidity_ratio(vapour_pressure_pa(*point.air), point.pressure_pa))
        for point in points
    ]
    assert worst(enthalpy - point.enthalpy for enthalpy, point in zip(ours, points, strict=True)) < 130


TRIPLE_POINT_C = 0.01


def on_the_same_bulb(point):
    """False just at freezing, where a wet and an iced bulb both answer, and CoolProp took the iced one."""
    return wet_bulb_c(*point.air)[1] == (point.bulb_c < TRIPLE_POINT_C)


def test_wet_bulb_is_within_10_mk_of_coolprop(points):
    assert worst(wet_bulb_c(*point.air)[0] - point.bulb_c for point in points if on_the_same_bulb(point)) < 0.01


def test_an_iced_bulb_that_coolprop_took_for_a_wet_one_answers_our_equation_too(points):
    others = [point for point in points if not on_the_same_bulb(point)]
    assert len(others) < len(points) / 200
    for point in others:
        ratio = humidity_ratio(vapour_pressure_pa(*point.air), point.pressure_pa)
        per_kelvin = 5e-4 * 101_325 / point.pressure_pa  # slope of the ice bulb's ratio near 0 °C
        error = ice_bulb_ratio(point.temperature_c, point.bulb_c, point.pressure_pa) - ratio
        assert abs(error) < 0.02 * per_kelvin


@pytest.fixture(scope="module")
def psychrolib_si():
    psychrolib.SetUnitSystem(psychrolib.SI)


MILD = [(float(t), percent / 100) for t in range(1, 41) for percent in range(30, 101, 5)]


def test_dew_and_frost_point_are_within_15_mk_of_psychrolib(psychrolib_si):
    theirs = [(air, psychrolib.GetTDewPointFromRelHum(*air)) for air in MILD]
    assert worst(dew_point_c(*air) - dew_c for air, dew_c in theirs if dew_c > 0) < 0.015
    assert worst(frost_point_c(*air) - dew_c for air, dew_c in theirs if dew_c < -0.005) < 0.015


def test_wet_bulb_is_within_20_mk_of_psychrolib_away_from_freezing(psychrolib_si):
    theirs = [(air, psychrolib.GetTWetBulbFromRelHum(*air, 101_325.0)) for air in MILD]
    assert worst(wet_bulb_c(*air)[0] - bulb_c for air, bulb_c in theirs if abs(bulb_c) > 0.5) < 0.02


def test_humidity_ratio_is_above_psychrolib_by_the_enhancement_factor_it_leaves_out(psychrolib_si):
    excess = [
        humidity_ratio(vapour_pressure_pa(*air), 101_325.0) / psychrolib.GetHumRatioFromRelHum(*air, 101_325.0) - 1
        for air in MILD
    ]
    assert min(excess) > 0.0035
    assert max(excess) < 0.006
