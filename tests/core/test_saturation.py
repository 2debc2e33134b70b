"""Saturated air, and the air around a bulb, worked out a second time to the last digit of their constants."""

import math

import pytest

from core.saturation import (
    ice_saturation_in_air_pa,
    ice_saturation_pressure_pa,
    saturation_in_air_pa,
    saturation_pressure_pa,
)
from core.vapour import STANDARD_PA, ice_bulb_ratio, liquid_bulb_ratio

# Hardy 1998, table 3, alpha and ln beta as cubics of the kelvin; as copied, alike, into several public programs.
OVER_WATER_K = (
    (-1.6302041e-1, 1.8071570e-3, -6.7703064e-6, 8.5813609e-9),
    (-5.9890467e1, 3.4378043e-1, -7.7326396e-4, 6.3405286e-7),
)
OVER_ICE_K = (
    (-6.0190570e-2, 7.3984060e-4, -3.0897838e-6, 4.3669918e-9),
    (-9.4868712e1, 7.2392075e-1, -2.1963437e-3, 2.4668279e-6),
)


@pytest.mark.parametrize("pressure_pa", [60e3, STANDARD_PA, 110e3])
@pytest.mark.parametrize(
    ("pure", "in_air", "cubics", "temperature_c"),
    [
        *((saturation_pressure_pa, saturation_in_air_pa, OVER_WATER_K, at) for at in (0.0, 12.0, 40.0, 60.0)),
        *((ice_saturation_pressure_pa, ice_saturation_in_air_pa, OVER_ICE_K, at) for at in (-40.0, -20.0, -5.0)),
    ],
)
def test_what_air_adds_to_saturation_by_the_cubics_in_kelvin(pure, in_air, cubics, temperature_c, pressure_pa):
    kelvin, vapour_pa = temperature_c + 273.15, pure(temperature_c)
    alpha, log_beta = (a + b * kelvin + c * kelvin**2 + d * kelvin**3 for a, b, c, d in cubics)
    added = alpha * (1 - vapour_pa / pressure_pa) + math.exp(log_beta) * (pressure_pa / vapour_pa - 1)
    assert math.log(in_air(temperature_c, pressure_pa) / vapour_pa) == pytest.approx(added, abs=2e-8)


@pytest.mark.parametrize(
    ("ratio_of", "at_c", "bulb_c", "heat", "per_water", "water"),
    [
        # (2501 − 2.326 t*) and (2501 + 1.86 t − 4.186 t*), worked by hand; then ice, (2830 − 0.24 t*) and
        # (2830 + 1.86 t − 2.1 t*). ASHRAE Handbook Fundamentals 2017, ch. 1, eqs. 33 and 35.
        (liquid_bulb_ratio, 60.0, 30.0, 2431.22, 2487.02, saturation_in_air_pa),
        (liquid_bulb_ratio, 10.0, 10.0, 2477.74, 2477.74, saturation_in_air_pa),
        (liquid_bulb_ratio, 12.0, 9.0, 2480.066, 2485.646, saturation_in_air_pa),
        (ice_bulb_ratio, 5.0, -5.0, 2831.2, 2849.8, ice_saturation_in_air_pa),
        (ice_bulb_ratio, -15.0, -20.0, 2834.8, 2844.1, ice_saturation_in_air_pa),
    ],
)
def test_the_air_around_a_bulb_by_the_sum_in_print(ratio_of, at_c, bulb_c, heat, per_water, water):
    vapour_pa = water(bulb_c, STANDARD_PA)
    saturated = 0.621945 * vapour_pa / (STANDARD_PA - vapour_pa)
    by_hand = (heat * saturated - 1.006 * (at_c - bulb_c)) / per_water
    assert ratio_of(at_c, bulb_c, STANDARD_PA) == pytest.approx(by_hand, rel=1e-9)
