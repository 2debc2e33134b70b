"""Dew points and deficits through a table agree with the formulas themselves."""

import math
from array import array

import pytest

from core.chamber.series import Series
from core.chamber.settling.humid_air import HumidAir, humid_air
from core.vapour import dew_point_c, vapour_pressure_pa

STATES = [
    (warm_c, humid)
    for warm_c in (-19.9, -3.3, 0.0, 0.1, 8.7, 12.8, 23.456, 40.0, 59.99)
    for humid in (0.25, 0.5, 0.8, 0.987, 1.0)
]


def air_of(*states: tuple[float, float | None], pressure_pa: float = 101_325.0) -> HumidAir:
    times_s = [60.0 * place for place in range(len(states))]
    found = humid_air(Series("low", times_s, [warm for warm, _ in states], [humid for _, humid in states]), pressure_pa)
    assert found is not None
    return found


@pytest.mark.parametrize("pressure_pa", [80_000.0, 101_325.0])
def test_dew_points_agree_with_the_formula(pressure_pa: float):
    found = air_of(*STATES, pressure_pa=pressure_pa).dew_points_c
    assert found == pytest.approx([dew_point_c(*state, pressure_pa) for state in STATES], abs=0.001)


def test_vapour_pressures_agree_with_the_formula():
    assert air_of(*STATES).vapour_pa == pytest.approx([vapour_pressure_pa(*state) for state in STATES], abs=0.1)


def test_the_deficit_is_what_is_missing_to_saturation():
    found = air_of((12.8, 0.8), (12.8, 1.0))
    assert found.deficits_pa == pytest.approx(
        (vapour_pressure_pa(12.8, 1.0) - vapour_pressure_pa(12.8, 0.8), 0), abs=0.1
    )


def test_air_without_water_has_no_dew_point():
    assert math.isnan(air_of((12.8, 0.0), (12.8, 0.8)).dew_points_c[0])


def test_air_too_dry_for_the_formula_has_no_dew_point():
    assert math.isnan(air_of((12.8, 0.001), (12.8, 0.8)).dew_points_c[0])


def test_a_reading_without_humidity_is_left_out():
    assert air_of((12.8, None), (12.8, 0.8), (12.9, 0.8)).times_s == array("d", [60.0, 120.0])


def test_a_reading_too_warm_for_the_formula_is_left_out():
    assert air_of((61.0, 0.8), (12.8, 0.8), (12.9, 0.8)).times_s == array("d", [60.0, 120.0])


def test_a_probe_without_a_hygrometer_has_no_humid_air():
    assert humid_air(Series("low", (0, 60), (12.0, 12.0))) is None


@pytest.mark.parametrize("measured", [0, 1])
def test_a_hygrometer_that_spoke_once_or_never_tells_nothing(measured: int):
    humidities = [0.8] * measured + [math.nan] * (10 - measured)
    assert humid_air(Series("Larder", [60.0 * place for place in range(10)], [13.0] * 10, humidities)) is None


def test_humidities_of_air_too_warm_for_the_formula_tell_nothing():
    assert humid_air(Series("Larder", [60.0 * place for place in range(10)], [61.0] * 10, [0.8] * 10)) is None
