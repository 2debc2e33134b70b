"""Moist air: at what point does it dew or ice, how much water does it carry, how hard does it dry?

Relative humidity is always over liquid water, also below 0 °C: so do sensors count it. The plain numbers are here; the
figures with their working are in `core.air`.
"""

from __future__ import annotations

import math

from core.quantities import ALTITUDE, PRESSURE, RELATIVE_HUMIDITY, TEMPERATURE
from core.refusals import OutOfRange, require_between
from core.roots import zero_of
from core.saturation import (
    COLDEST_C,
    KELVIN_AT_ZERO_C,
    ice_saturation_in_air_pa,
    saturation_in_air_pa,
)

STANDARD_PA = 101_325.0
VAPOUR_TO_AIR = 0.621945
"""Molar mass of water over that of dry air. Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20."""
VAPOUR_GAS_CONSTANT = 461.523
"""J/(kg K): 8.314463 J/(mol K) over 18.01527 g/mol."""


def require_air(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> None:
    """Guard: OutOfRange unless −20 to 60 °C, humidity 0 to 1, 60 to 110 kPa."""
    require_between("temperature", "Temperature", temperature_c, -20.0, 60.0, TEMPERATURE)
    require_between("humidity", "Humidity", humidity, 0.0, 1.0, RELATIVE_HUMIDITY)
    require_between("pressure", "Pressure", pressure_pa, 60e3, 110e3, PRESSURE)


def vapour_pressure_pa(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> float:
    """Partial pressure of the vapour in the air, in pascals. Ranges and errors as in `require_air`."""
    require_air(temperature_c, humidity, pressure_pa)
    return humidity * saturation_in_air_pa(temperature_c, pressure_pa)


def dew_point_c(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> float:
    """Where liquid dew forms, in °C; below 0 °C this is supercooled dew: ice comes earlier, at the frost point.

    Ranges as in `require_air`; besides, air so dry that it dews below −40 °C raises OutOfRange.
    Within 0.003 K of CoolProp's real-gas value from 0.01 to 40 °C, 30 to 100 %, 70 to 105 kPa.
    """
    vapour_pa = vapour_pressure_pa(temperature_c, humidity, pressure_pa)
    if vapour_pa <= 0:
        raise OutOfRange("humidity", "Humidity must be above 0 %: air without water has no dew point.")
    if vapour_pa < saturation_in_air_pa(COLDEST_C, pressure_pa):
        raise OutOfRange(
            "humidity",
            "Humidity must be higher: this air has its dew point below −40 °C (−40 °F), where the formula ends.",
        )
    return zero_of(lambda at_c: math.log(saturation_in_air_pa(at_c, pressure_pa) / vapour_pa), COLDEST_C, temperature_c)


def frost_point_c(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> float | None:
    """Where ice forms, in °C; None when that would not be below 0 °C. Ranges and errors as in `dew_point_c`.

    Above the air's own temperature when air below 0 °C holds more vapour than ice does.
    Within 0.002 K of CoolProp's value over the range named at `dew_point_c`.
    """
    dew_point_c(temperature_c, humidity, pressure_pa)  # refuses air too dry for either
    vapour_pa = vapour_pressure_pa(temperature_c, humidity, pressure_pa)
    if vapour_pa >= ice_saturation_in_air_pa(0.0, pressure_pa):
        return None
    return zero_of(lambda at_c: math.log(ice_saturation_in_air_pa(at_c, pressure_pa) / vapour_pa), COLDEST_C, 0.0)


def humidity_ratio(vapour_pa: float, pressure_pa: float) -> float:
    """Water for each kilogram of dry air, kg/kg. Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20."""
    return VAPOUR_TO_AIR * vapour_pa / (pressure_pa - vapour_pa)


def absolute_humidity_kg_m3(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> float:
    """Water in each cubic metre of air, kg/m³, by the ideal gas law. Ranges and errors as in `require_air`.

    Within 0.1 % of CoolProp over the range named at `dew_point_c`.
    """
    vapour_pa = vapour_pressure_pa(temperature_c, humidity, pressure_pa)
    return vapour_pa / (VAPOUR_GAS_CONSTANT * (temperature_c + KELVIN_AT_ZERO_C))


def enthalpy_j_kg(temperature_c: float, ratio: float) -> float:
    """Heat of moist air above dry air and liquid water at 0 °C, joules for each kilogram of dry air.

    ratio: humidity ratio, kg/kg. Within 130 J/kg of CoolProp from 0.01 to 40 °C, 70 to 105 kPa.
    Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30.
    """
    return 1006.0 * temperature_c + ratio * (2_501_000.0 + 1860.0 * temperature_c)


def wet_bulb_c(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> tuple[float, bool]:
    """Thermodynamic wet bulb, °C, and whether its bulb is ice. Ranges and errors as in `dew_point_c`.

    Ice only when no liquid bulb at or above 0 °C answers. Just at freezing both can be true, up to half a kelvin apart:
    there the liquid one is given; `other_bulb_c` is the other. Within 0.01 K of CoolProp over the range named at
    `dew_point_c`, but for 0.3 K on either side of freezing, where the state of the bulb says more than the digits.
    Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eqs. 33 and 35.
    """
    liquid_c = _liquid_bulb_c(temperature_c, humidity, pressure_pa)
    if liquid_c >= 0:
        return liquid_c, False
    return _iced_bulb_c(temperature_c, humidity, pressure_pa), True


def other_bulb_c(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> float | None:
    """What the bulb reads in the state that `wet_bulb_c` does not give: iced for wet, wet and below 0 °C for iced.

    None where that cannot be: ice does not last on a bulb above 0 °C.
    """
    _, iced = wet_bulb_c(temperature_c, humidity, pressure_pa)
    if iced:
        return _liquid_bulb_c(temperature_c, humidity, pressure_pa)
    if ice_bulb_ratio(temperature_c, 0.0, pressure_pa) <= _ratio_of(temperature_c, humidity, pressure_pa):
        return None
    return _iced_bulb_c(temperature_c, humidity, pressure_pa)


def _ratio_of(temperature_c: float, humidity: float, pressure_pa: float) -> float:
    return humidity_ratio(vapour_pressure_pa(temperature_c, humidity, pressure_pa), pressure_pa)


def _liquid_bulb_c(temperature_c: float, humidity: float, pressure_pa: float) -> float:
    dew_c = dew_point_c(temperature_c, humidity, pressure_pa)
    ratio = _ratio_of(temperature_c, humidity, pressure_pa)
    return zero_of(lambda at: liquid_bulb_ratio(temperature_c, at, pressure_pa) - ratio, dew_c, temperature_c)


def _iced_bulb_c(temperature_c: float, humidity: float, pressure_pa: float) -> float:
    frost_c = frost_point_c(temperature_c, humidity, pressure_pa)
    dew_c = dew_point_c(temperature_c, humidity, pressure_pa)
    low, high = sorted((dew_c if frost_c is None else frost_c, min(temperature_c, 0.0)))
    ratio = _ratio_of(temperature_c, humidity, pressure_pa)
    return zero_of(lambda at: ice_bulb_ratio(temperature_c, at, pressure_pa) - ratio, low, high)


def liquid_bulb_ratio(temperature_c: float, bulb_c: float, pressure_pa: float) -> float:
    """Humidity ratio of air whose wet bulb is `bulb_c`, the bulb liquid. Source: as `wet_bulb_c`, eq. 33."""
    saturated = humidity_ratio(saturation_in_air_pa(bulb_c, pressure_pa), pressure_pa)
    given = (2501 - 2.326 * bulb_c) * saturated - 1.006 * (temperature_c - bulb_c)
    return given / (2501 + 1.86 * temperature_c - 4.186 * bulb_c)


def ice_bulb_ratio(temperature_c: float, bulb_c: float, pressure_pa: float) -> float:
    """As `liquid_bulb_ratio`, the bulb iced. Source: as `wet_bulb_c`, eq. 35."""
    saturated = humidity_ratio(ice_saturation_in_air_pa(bulb_c, pressure_pa), pressure_pa)
    given = (2830 - 0.24 * bulb_c) * saturated - 1.006 * (temperature_c - bulb_c)
    return given / (2830 + 1.86 * temperature_c - 2.1 * bulb_c)


def station_pressure_pa(altitude_m: float) -> float:
    """Mean air pressure at a height above the sea, in pascals. altitude_m: −500 to 4000. Raises OutOfRange.

    Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3.
    """
    require_between("altitude", "Altitude", altitude_m, -500.0, 4000.0, ALTITUDE)
    return STANDARD_PA * (1 - 2.25577e-5 * altitude_m) ** 5.2559
