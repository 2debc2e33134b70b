"""Moist air as figures that show their working. The plain numbers are in `core.vapour`."""

from __future__ import annotations

import math

from attrs import frozen

from core.quantities import (
    ABSOLUTE_HUMIDITY,
    ABSOLUTE_TEMPERATURE,
    ALTITUDE,
    CELSIUS_TEMPERATURE,
    ENTHALPY,
    HUMIDITY_RATIO,
    PRESSURE,
    RATIO,
    TEMPERATURE,
    VAPOUR_PRESSURE,
    WATER_ACTIVITY,
    Amount,
)
from core.refusals import require_between
from core.saturation import (
    CRITICAL_K,
    CRITICAL_PA,
    KELVIN_AT_ZERO_C,
    ice_saturation_in_air_pa,
    saturation_in_air_pa,
    saturation_pressure_pa,
)
from core.sentence import Message, Sentence
from core.sources import (
    ASHRAE_ALTITUDE,
    ASHRAE_ENTHALPY,
    ASHRAE_HUMIDITY_RATIO,
    ASHRAE_WET_BULB,
    ENHANCEMENT,
    ICE_SATURATION,
    VAPOUR_AS_IDEAL_GAS,
    WATER_SATURATION,
)
from core.vapour import (
    STANDARD_PA,
    absolute_humidity_kg_m3,
    dew_point_c,
    enthalpy_j_kg,
    frost_point_c,
    humidity_ratio,
    other_bulb_c,
    station_pressure_pa,
    vapour_pressure_pa,
    wet_bulb_c,
)
from core.working import Figure

COIL_ICES: Message = (
    "On a cooling coil colder than freezing ice forms at the frost point, which lies above the dew point."
)
OVER_ICE: Message = (
    "This air holds more vapour than ice does: frost grows on everything in it that is not warmer than the air."
)
ICED_BULB: Message = "Below freezing the bulb is taken as covered with ice."
EITHER_BULB: Message = "So near freezing a bulb that carries ice would read lower than this wet one."
NEAR_FREEZING_K = 0.3
WET_NEAR_FREEZING: Message = (
    "Within 0.3 K of freezing this is what a wet bulb reads; one that carries ice reads otherwise. The state of the "
    "bulb says more than the digits: it is known to some tenths of a kelvin."
)
ICED_NEAR_FREEZING: Message = (
    "Within 0.3 K of freezing this is what an iced bulb reads; one that is still wet reads otherwise. The state of the "
    "bulb says more than the digits: it is known to some tenths of a kelvin."
)
TAKES_UP: Message = "The surface takes up water from this air: it does not dry."
WEATHER: Message = "Weather moves the true pressure by a few per cent; a barometer not set to sea level is more exact."


@frozen
class _Air:
    """One state of air, and the vapour in it."""

    temperature_c: float
    humidity: float
    pressure_pa: float

    @property
    def saturated_pa(self) -> float:
        return saturation_in_air_pa(self.temperature_c, self.pressure_pa)

    @property
    def vapour_pa(self) -> float:
        return vapour_pressure_pa(self.temperature_c, self.humidity, self.pressure_pa)

    @property
    def ratio(self) -> float:
        return humidity_ratio(self.vapour_pa, self.pressure_pa)


def moist_air(temperature_c: float, humidity: float, pressure_pa: float = STANDARD_PA) -> tuple[Figure, ...]:
    """Dew point, frost point (only when below 0 °C), wet bulb, water carried, heat, vapour pressure and its deficit.

    temperature_c: −20 to 60 °C. humidity: relative, over liquid water, above 0 to 1. pressure_pa: 60 to 110 kPa.
    Raises OutOfRange; also for air so dry that it dews below −40 °C.
    """
    air = _Air(temperature_c, humidity, pressure_pa)
    return (
        _dew_point(air),
        *_frost_point(air),
        _wet_bulb(air),
        _humidity_ratio(air),
        _absolute_humidity(air),
        _enthalpy(air),
        Figure("vapour_pressure", "Vapour pressure", air.vapour_pa, VAPOUR_PRESSURE, _vapour_steps(air), ENHANCEMENT),
        vapour_pressure_deficit(temperature_c, humidity, pressure_pa=pressure_pa),
    )


def vapour_pressure_deficit(
    temperature_c: float,
    humidity: float,
    surface_activity: float = 1.0,
    surface_c: float | None = None,
    pressure_pa: float = STANDARD_PA,
) -> Figure:
    """The force that dries: vapour pressure at a moist surface less that of the air, in pascals.

    temperature_c, humidity, pressure_pa: the air, as in `moist_air` (humidity 0 is allowed). surface_activity: water
    activity of the surface, 0 to 1; 1 is pure water. surface_c: −20 to 60 °C; None means as warm as the air.
    Negative when the surface takes up water; a caution says so. Raises OutOfRange.
    Source: Wagner and Pruß 2002 (saturation pressure), Hardy 1998 (enhancement factor).
    """
    air = _Air(temperature_c, humidity, pressure_pa)
    vapour_pa = air.vapour_pa
    require_between("surface_activity", "Water activity of the surface", surface_activity, 0.0, 1.0, WATER_ACTIVITY)
    at_c = temperature_c if surface_c is None else surface_c
    require_between("surface_temperature", "Surface temperature", at_c, -20.0, 60.0, TEMPERATURE)
    saturated_pa = saturation_in_air_pa(at_c, pressure_pa)
    deficit_pa = surface_activity * saturated_pa - vapour_pa
    amounts = {
        "at": Amount(at_c, TEMPERATURE),
        "activity": Amount(surface_activity, WATER_ACTIVITY),
        "saturated": Amount(saturated_pa, VAPOUR_PRESSURE),
        "surface": Amount(surface_activity * saturated_pa, VAPOUR_PRESSURE),
        "vapour": Amount(vapour_pa, VAPOUR_PRESSURE),
        "deficit": Amount(deficit_pa, VAPOUR_PRESSURE),
    }
    steps = (
        *_vapour_steps(air),
        Sentence("Saturation at the surface, {at}, in the same way: {saturated}; times its water activity:", amounts),
        Sentence("{saturated} × {activity} = {surface}", amounts),
        Sentence("The drying force is the surface less the air:"),
        Sentence("{surface} − {vapour} = {deficit}", amounts),
    )
    cautions = (TAKES_UP,) if deficit_pa < 0 else ()
    name: Message = "Vapour pressure deficit"
    return Figure("vapour_pressure_deficit", name, deficit_pa, VAPOUR_PRESSURE, steps, WATER_SATURATION, cautions)


def station_pressure(altitude_m: float) -> Figure:
    """Mean air pressure at a height above the sea, −500 to 4000 m. Raises OutOfRange. ASHRAE 2017, ch. 1, eq. 3."""
    pressure_pa = station_pressure_pa(altitude_m)
    amounts = {
        "sea": Amount(STANDARD_PA, PRESSURE),
        "height": Amount(altitude_m, ALTITUDE),
        "scale": Amount(1 / 2.25577e-5, ALTITUDE),
        "pressure": Amount(pressure_pa, PRESSURE),
    }
    working = (Sentence("{sea} × (1 − {height} ÷ {scale}) ^ 5.2559 = {pressure}", amounts),)
    return Figure("pressure", "Air pressure", pressure_pa, PRESSURE, working, ASHRAE_ALTITUDE, (WEATHER,))


def _vapour_steps(air: _Air) -> tuple[Sentence, ...]:
    pure_pa = saturation_pressure_pa(air.temperature_c)
    kelvin = air.temperature_c + KELVIN_AT_ZERO_C
    amounts = {
        "air": Amount(air.temperature_c, TEMPERATURE),
        "kelvin": Amount(kelvin, ABSOLUTE_TEMPERATURE),
        "critical": Amount(CRITICAL_K, ABSOLUTE_TEMPERATURE),
        "critical_pressure": Amount(CRITICAL_PA, VAPOUR_PRESSURE),
        "sum": Amount(math.log(pure_pa / CRITICAL_PA) * kelvin / CRITICAL_K, RATIO),
        "pure": Amount(pure_pa, VAPOUR_PRESSURE),
        "pressure": Amount(air.pressure_pa, PRESSURE),
        "factor": Amount(air.saturated_pa / pure_pa, RATIO),
        "saturated": Amount(air.saturated_pa, VAPOUR_PRESSURE),
        "humidity": Amount(air.humidity, RATIO),
        "vapour": Amount(air.vapour_pa, VAPOUR_PRESSURE),
    }
    return (
        Sentence("Saturation over liquid water at {air}; the sum of Wagner and Pruß's six terms is {sum}:", amounts),
        Sentence("{critical_pressure} × exp({critical} ÷ {kelvin} × {sum}) = {pure}", amounts),
        Sentence("In air at {pressure} it is higher by Hardy's factor:", amounts),
        Sentence("{pure} × {factor} = {saturated}", amounts),
        Sentence("That times the humidity is the vapour pressure:", amounts),
        Sentence("{saturated} × {humidity} = {vapour}", amounts),
    )


def _dew_point(air: _Air) -> Figure:
    dew_c = dew_point_c(air.temperature_c, air.humidity, air.pressure_pa)
    amounts = {
        "vapour": Amount(saturation_in_air_pa(dew_c, air.pressure_pa), VAPOUR_PRESSURE),
        "dew": Amount(dew_c, TEMPERATURE),
    }
    found = Sentence("Found by trial: over liquid water, air holds just {vapour} at {dew}", amounts)
    return Figure("dew_point", "Dew point", dew_c, TEMPERATURE, (*_vapour_steps(air), found), WATER_SATURATION)


def _frost_point(air: _Air) -> tuple[Figure, ...]:
    """One figure, or none where ice would not form below 0 °C."""
    frost_c = frost_point_c(air.temperature_c, air.humidity, air.pressure_pa)
    if frost_c is None:
        return ()
    amounts = {
        "vapour": Amount(ice_saturation_in_air_pa(frost_c, air.pressure_pa), VAPOUR_PRESSURE),
        "frost": Amount(frost_c, TEMPERATURE),
    }
    found = Sentence("Found by trial: over ice, air holds just {vapour} at {frost}", amounts)
    cautions = (COIL_ICES, OVER_ICE) if frost_c > air.temperature_c else (COIL_ICES,)
    steps = (*_vapour_steps(air), found)
    return (Figure("frost_point", "Frost point", frost_c, TEMPERATURE, steps, ICE_SATURATION, cautions),)


WET_BULB_HOLDS: Message = (
    "((2501 − 2.326 × {bulb}) × {saturated} − 1.006 × ({air} − {bulb})) ÷ (2501 + 1.86 × {air} − 4.186 × {bulb}) = "
    "{ratio}"
)
ICED_BULB_HOLDS: Message = (
    "((2830 − 0.24 × {bulb}) × {saturated} − 1.006 × ({air} − {bulb})) ÷ (2830 + 1.86 × {air} − 2.1 × {bulb}) = {ratio}"
)


def _wet_bulb(air: _Air) -> Figure:
    bulb_c, iced = wet_bulb_c(air.temperature_c, air.humidity, air.pressure_pa)
    saturated_pa = (ice_saturation_in_air_pa if iced else saturation_in_air_pa)(bulb_c, air.pressure_pa)
    amounts = {
        "air": Amount(air.temperature_c, CELSIUS_TEMPERATURE),
        "bulb": Amount(bulb_c, CELSIUS_TEMPERATURE),
        "saturated": Amount(humidity_ratio(saturated_pa, air.pressure_pa), RATIO),
        "ratio": Amount(air.ratio, RATIO),
    }
    steps = (
        _ratio_step(air),
        Sentence("A wet bulb stands where saturated air carries {saturated} kg/kg and this holds:", amounts),
        Sentence(ICED_BULB_HOLDS if iced else WET_BULB_HOLDS, amounts),
        Sentence("Found by trial: {answer}", {"answer": Amount(bulb_c, TEMPERATURE)}),
    )
    other_c = other_bulb_c(air.temperature_c, air.humidity, air.pressure_pa)
    low, high = _reads_between(bulb_c, other_c)
    cautions = _bulb_cautions(bulb_c, iced, other_c is not None)
    return Figure("wet_bulb", "Wet bulb", bulb_c, TEMPERATURE, steps, ASHRAE_WET_BULB, cautions, low, high)


def _reads_between(bulb_c: float, other_c: float | None) -> tuple[float, float] | tuple[None, None]:
    """The range of both states of the bulb near freezing, where neither can be excluded."""
    if other_c is None or abs(bulb_c) > NEAR_FREEZING_K:
        return None, None
    return min(bulb_c, other_c), max(bulb_c, other_c)


def _bulb_cautions(bulb_c: float, iced: bool, either: bool) -> tuple[Message, ...]:
    if abs(bulb_c) <= NEAR_FREEZING_K:
        return (ICED_NEAR_FREEZING if iced else WET_NEAR_FREEZING,)
    return (ICED_BULB,) if iced else (EITHER_BULB,) if either else ()


def _ratio_step(air: _Air) -> Sentence:
    amounts = {
        "vapour": Amount(air.vapour_pa, VAPOUR_PRESSURE),
        "pressure": Amount(air.pressure_pa, VAPOUR_PRESSURE),
        "ratio": Amount(air.ratio, HUMIDITY_RATIO),
    }
    return Sentence("621.945 g/kg × {vapour} ÷ ({pressure} − {vapour}) = {ratio}", amounts)


def _humidity_ratio(air: _Air) -> Figure:
    steps = (*_vapour_steps(air), _ratio_step(air))
    return Figure("humidity_ratio", "Humidity ratio", air.ratio, HUMIDITY_RATIO, steps, ASHRAE_HUMIDITY_RATIO)


def _absolute_humidity(air: _Air) -> Figure:
    density = absolute_humidity_kg_m3(air.temperature_c, air.humidity, air.pressure_pa)
    amounts = {
        "vapour": Amount(air.vapour_pa, VAPOUR_PRESSURE),
        "kelvin": Amount(air.temperature_c + KELVIN_AT_ZERO_C, ABSOLUTE_TEMPERATURE),
        "density": Amount(density, ABSOLUTE_HUMIDITY),
    }
    steps = (*_vapour_steps(air), Sentence("{vapour} ÷ (0.461523 J/(g K) × {kelvin}) = {density}", amounts))
    return Figure("absolute_humidity", "Absolute humidity", density, ABSOLUTE_HUMIDITY, steps, VAPOUR_AS_IDEAL_GAS)


def _enthalpy(air: _Air) -> Figure:
    enthalpy = enthalpy_j_kg(air.temperature_c, air.ratio)
    amounts = {
        "air": Amount(air.temperature_c, CELSIUS_TEMPERATURE),
        "ratio": Amount(air.ratio, RATIO),
        "enthalpy": Amount(enthalpy, ENTHALPY),
    }
    formula = Sentence("1.006 × {air} + {ratio} × (2501 + 1.86 × {air}) = {enthalpy}", amounts)
    return Figure("enthalpy", "Enthalpy", enthalpy, ENTHALPY, (_ratio_step(air), formula), ASHRAE_ENTHALPY)
