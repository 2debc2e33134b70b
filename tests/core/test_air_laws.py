"""Laws of moist air, over the whole range that the formulas are offered for."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.air import vapour_pressure_deficit
from core.vapour import (
    dew_point_c,
    frost_point_c,
    humidity_ratio,
    ice_bulb_ratio,
    liquid_bulb_ratio,
    saturation_in_air_pa,
    vapour_pressure_pa,
    wet_bulb_c,
)

TEMPERATURES = st.floats(-20, 60)
HUMIDITIES = st.floats(0.2, 1.0)
PRESSURES = st.floats(60e3, 110e3)
AIR = st.tuples(TEMPERATURES, HUMIDITIES, PRESSURES)


@given(air=AIR)
def test_the_dew_point_is_never_above_the_temperature(air):
    assert dew_point_c(*air) <= air[0]


@given(temperature_c=TEMPERATURES, less=HUMIDITIES, more=HUMIDITIES, pressure_pa=PRESSURES)
def test_more_humidity_never_lowers_the_dew_point(temperature_c, less, more, pressure_pa):
    less, more = sorted((less, more))
    assert dew_point_c(temperature_c, less, pressure_pa) <= dew_point_c(temperature_c, more, pressure_pa) + 1e-7


@given(air=AIR)
def test_below_freezing_ice_comes_before_dew(air):
    frost_c = frost_point_c(*air)
    assert frost_c is None or dew_point_c(*air) - 0.002 <= frost_c <= 0  # the two lines meet within 2 mK of 0 °C


@given(air=AIR)
def test_a_dew_point_well_below_freezing_has_a_frost_point(air):
    assert dew_point_c(*air) > -0.01 or frost_point_c(*air) is not None


@given(air=AIR)
def test_the_wet_bulb_lies_between_the_temperature_and_the_dew_or_frost_point(air):
    bulb_c, _ = wet_bulb_c(*air)
    frost_c = frost_point_c(*air)
    points = (air[0], dew_point_c(*air), dew_point_c(*air) if frost_c is None else frost_c)
    assert min(points) - 1e-7 <= bulb_c <= max(points) + 1e-7


@given(air=AIR)
def test_the_wet_bulb_satisfies_its_equation(air):
    temperature_c, _, pressure_pa = air
    bulb_c, iced = wet_bulb_c(*air)
    ratio = humidity_ratio(vapour_pressure_pa(*air), pressure_pa)
    equation = ice_bulb_ratio if iced else liquid_bulb_ratio
    slack = 3e-5 if abs(bulb_c) < 0.001 else 1e-7  # at 0 °C the lines of water and ice part by so much
    assert equation(temperature_c, bulb_c, pressure_pa) == pytest.approx(ratio, rel=slack)


@given(air=AIR)
def test_an_iced_bulb_is_not_above_freezing_and_a_wet_one_is_not_below(air):
    bulb_c, iced = wet_bulb_c(*air)
    assert bulb_c <= 0 if iced else bulb_c >= 0


@given(air=AIR)
def test_humidity_is_found_again_from_the_dew_point(air):
    temperature_c, humidity, pressure_pa = air
    again = saturation_in_air_pa(dew_point_c(*air), pressure_pa) / saturation_in_air_pa(temperature_c, pressure_pa)
    assert again == pytest.approx(humidity, rel=1e-8)


@given(air=AIR, activity=st.floats(0, 1))
def test_a_surface_dries_only_where_its_activity_is_above_the_humidity(air, activity):
    temperature_c, humidity, pressure_pa = air
    force = vapour_pressure_deficit(temperature_c, humidity, activity, pressure_pa=pressure_pa).value
    assert (force > 0) == (activity > humidity) or abs(activity - humidity) < 1e-12


@given(air=AIR, warmer=st.floats(0, 10))
def test_a_warmer_surface_never_dries_less(air, warmer):
    temperature_c, humidity, pressure_pa = air
    as_air = vapour_pressure_deficit(temperature_c, humidity, 0.95, pressure_pa=pressure_pa).value
    warm_c = min(60.0, temperature_c + warmer)
    assert vapour_pressure_deficit(temperature_c, humidity, 0.95, warm_c, pressure_pa).value >= as_air
