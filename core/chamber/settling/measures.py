"""Quantities that only the proof of a chamber needs, and how a time into the log is said."""

from __future__ import annotations

from core.quantities import Amount, DisplayUnit, Quantity
from core.units import CELSIUS, FAHRENHEIT, FAHRENHEIT_STEP, HOUR, KELVIN_STEP, MINUTE, SECOND, Unit

A_HOUR = Unit("/h", 1 / 3600.0, ("/h", "per hour"))
STARTS = Quantity(
    "starts",
    "a rate",
    (A_HOUR,),
    (DisplayUnit(A_HOUR, 2),),
    (DisplayUnit(A_HOUR, 2),),
    A_HOUR,
    A_HOUR,
    "1.2 /h",
    "1.2 /h",
)

KELVIN_AN_HOUR = Unit("K/h", 1 / 3600.0, ("k/h", "°c/h"))
FAHRENHEIT_AN_HOUR = Unit("°F/h", 5 / 9 / 3600.0, ("°f/h", "f/h"))
SPEED = Quantity(
    "warming_speed",
    "a speed of cooling",
    (KELVIN_AN_HOUR, FAHRENHEIT_AN_HOUR),
    (DisplayUnit(KELVIN_AN_HOUR, 1),),
    (DisplayUnit(FAHRENHEIT_AN_HOUR, 1),),
    KELVIN_AN_HOUR,
    FAHRENHEIT_AN_HOUR,
    "6 K/h",
    "11 °F/h",
)
KELVIN_A_DAY = Unit("K/d", 1 / 86_400.0, ("k/d",))
FAHRENHEIT_A_DAY = Unit("°F/d", 5 / 9 / 86_400.0, ("°f/d",))
DRIFT = Quantity(
    "drift",
    "a drift",
    (KELVIN_A_DAY, FAHRENHEIT_A_DAY),
    (DisplayUnit(KELVIN_A_DAY, 2),),
    (DisplayUnit(FAHRENHEIT_A_DAY, 2),),
    KELVIN_A_DAY,
    FAHRENHEIT_A_DAY,
    "0.2 K/d",
    "0.4 °F/d",
)
_LASTS = (DisplayUnit(HOUR, 1, from_value=3), DisplayUnit(MINUTE, 1, from_value=1), DisplayUnit(SECOND, 0))
LASTS = Quantity("lasts", "a time", (SECOND, MINUTE, HOUR), _LASTS, _LASTS, MINUTE, MINUTE, "45 min", "45 min")
# To a hundredth: a mapping tells tenths of a kelvin apart.
FINE_TEMPERATURE = Quantity(
    "fine_temperature",
    "a temperature",
    (CELSIUS, FAHRENHEIT),
    (DisplayUnit(CELSIUS, 2),),
    (DisplayUnit(FAHRENHEIT, 2),),
    CELSIUS,
    FAHRENHEIT,
    "12.50 °C",
    "54.50 °F",
)
FINE_DIFFERENCE = Quantity(
    "fine_difference",
    "a difference of temperature",
    (KELVIN_STEP, FAHRENHEIT_STEP),
    (DisplayUnit(KELVIN_STEP, 2),),
    (DisplayUnit(FAHRENHEIT_STEP, 2),),
    KELVIN_STEP,
    FAHRENHEIT_STEP,
    "0.50 K",
    "0.90 °F",
)


def after(at_s: float, begins_s: float) -> Amount:
    """How long into the log."""
    return Amount(at_s - begins_s, LASTS)
