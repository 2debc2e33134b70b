"""How much water vapour air can hold: saturation pressure over water and over ice, alone and in air.

In air it is some 0.4 % higher than over pure water in a vacuum; leaving that out makes every humidity ratio as much
too low.
"""

from __future__ import annotations

import math

from core.quantities import TEMPERATURE
from core.refusals import require_between

KELVIN_AT_ZERO_C = 273.15

COLDEST_C, WARMEST_C = -40.0, 60.0
"""Below −40 °C the water formula drifts from other extrapolations (0.7 % there); above 60 °C nothing here is tested."""

CRITICAL_K, CRITICAL_PA = 647.096, 22.064e6
_WATER = (
    (-7.85951783, 1.0),
    (1.84408259, 1.5),
    (-11.7866497, 3.0),
    (22.6807411, 3.5),
    (-15.9618719, 4.0),
    (1.80122502, 7.5),
)

_TRIPLE_K, _TRIPLE_PA = 273.16, 611.657
_ICE = ((-21.2144006, 0.00333333333), (27.3203819, 1.20666667), (-6.10598130, 1.70333333))

# ln f = alpha (1 − e/p) + beta (p/e − 1); alpha a cubic in °C, beta the exponential of one.
_IN_AIR_WATER = (
    (3.53624e-4, 2.9328363e-5, 2.6168979e-7, 8.5813609e-9),
    (-10.7588, 6.3268134e-2, -2.5368934e-4, 6.3405286e-7),
)
_IN_AIR_ICE = (
    (3.64449e-4, 2.9367585e-5, 4.8874766e-7, 4.3669918e-9),
    (-10.7271, 7.6215115e-2, -1.7490155e-4, 2.4668279e-6),
)


def saturation_pressure_pa(temperature_c: float) -> float:
    """Over pure liquid water, supercooled below 0 °C, in pascals.

    temperature_c: −40 to 60 °C. Within 0.01 % of IAPWS-95 above 0 °C; 0.08 % at −20 and 0.7 % at −40 °C of Murphy and
    Koop 2005. Raises OutOfRange. Source: Wagner and Pruß 2002, the saturation line of IAPWS SR1-86.
    """
    _require_temperature(temperature_c)
    kelvin = temperature_c + KELVIN_AT_ZERO_C
    below_critical = 1 - kelvin / CRITICAL_K
    terms = sum(factor * below_critical**power for factor, power in _WATER)
    return CRITICAL_PA * math.exp(CRITICAL_K / kelvin * terms)


def ice_saturation_pressure_pa(temperature_c: float) -> float:
    """Over ice, in pascals.

    temperature_c: −40 to 0.01 °C. Raises OutOfRange. Source: IAPWS R14-08(2011), sublimation pressure.
    """
    require_between("temperature", "The temperature of ice", temperature_c, COLDEST_C, 0.01, TEMPERATURE)
    ratio = (temperature_c + KELVIN_AT_ZERO_C) / _TRIPLE_K
    return _TRIPLE_PA * math.exp(sum(factor * ratio**power for factor, power in _ICE) / ratio)


def saturation_in_air_pa(temperature_c: float, pressure_pa: float) -> float:
    """Vapour pressure of air that is saturated over liquid water, in pascals.

    temperature_c: −40 to 60 °C. pressure_pa: 60 to 110 kPa. Raises OutOfRange for the temperature.
    Source: Hardy 1998 (Greenspan's enhancement factor on ITS-90), coefficients for water 0 to 100 °C; followed below
    0 °C, where they differ by less than 0.01 % from those for supercooled water, so that no step arises at 0 °C.
    """
    return _in_air(saturation_pressure_pa(temperature_c), temperature_c, pressure_pa, _IN_AIR_WATER)


def ice_saturation_in_air_pa(temperature_c: float, pressure_pa: float) -> float:
    """As `saturation_in_air_pa`, over ice: Hardy's coefficients for ice, −100 to 0 °C."""
    return _in_air(ice_saturation_pressure_pa(temperature_c), temperature_c, pressure_pa, _IN_AIR_ICE)


Coefficients = tuple[tuple[float, ...], tuple[float, ...]]


def _in_air(pure_pa: float, temperature_c: float, pressure_pa: float, coefficients: Coefficients) -> float:
    alpha, log_beta = (sum(c * temperature_c**power for power, c in enumerate(cubic)) for cubic in coefficients)
    log_factor = alpha * (1 - pure_pa / pressure_pa) + math.exp(log_beta) * (pressure_pa / pure_pa - 1)
    return pure_pa * math.exp(log_factor)


def _require_temperature(temperature_c: float) -> None:
    require_between("temperature", "Temperature", temperature_c, COLDEST_C, WARMEST_C, TEMPERATURE)
