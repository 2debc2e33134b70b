"""The single sums about moist air, as worksheets."""

from __future__ import annotations

from core.air import moist_air, station_pressure, vapour_pressure_deficit
from core.quantities import ALTITUDE, PRESSURE, RELATIVE_HUMIDITY, TEMPERATURE, WATER_ACTIVITY
from core.vapour import STANDARD_PA
from core.working import Figure
from core.worksheet import Number, Worksheet

TEMPERATURE_INPUT = Number("temperature", "Air temperature", TEMPERATURE, -20.0, 60.0, default=12.0)
HUMIDITY_INPUT = Number(
    "humidity",
    "Relative humidity",
    RELATIVE_HUMIDITY,
    0.01,
    1.0,
    default=0.75,
    help="As the hygrometer shows it: over liquid water, also below freezing.",
)
ALTITUDE_INPUT = Number(
    "altitude",
    "Altitude",
    ALTITUDE,
    -500.0,
    4000.0,
    default=0.0,
    optional=True,
    help="Empty means sea level.",
)
SURFACE_ACTIVITY = Number(
    "surface_activity",
    "Water activity of the surface",
    WATER_ACTIVITY,
    0.5,
    1.0,
    default=0.97,
    help="1 is pure water; fresh salted meat is about 0.97 (common practice; no published source).",
)


def _moist_air(
    temperature: float, humidity: float, altitude: float | None = None, pressure: float | None = None
) -> tuple[Figure, ...]:
    """A pressure that was read goes before one worked out from the height, which is then shown with the answer."""
    if pressure is not None:
        return moist_air(temperature, humidity, pressure)
    if not altitude:
        return moist_air(temperature, humidity, STANDARD_PA)
    worked_out = station_pressure(altitude)
    return (*moist_air(temperature, humidity, worked_out.value), worked_out)


def _drying_force(
    temperature: float, humidity: float, surface_activity: float, surface_temperature: float | None = None
) -> tuple[Figure, ...]:
    return (vapour_pressure_deficit(temperature, humidity, surface_activity, surface_temperature),)


MOIST_AIR = Worksheet(
    name="moist-air",
    title="Dew point and moist air",
    stage="chamber",
    question="At what temperature does dew or frost form from this air, and how much water does it hold?",
    inputs=(
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        ALTITUDE_INPUT,
        Number(
            "pressure",
            "Air pressure at the chamber",
            PRESSURE,
            60e3,
            110e3,
            optional=True,
            help="From a barometer that is not set to sea level. It overrides the altitude.",
        ),
    ),
    compute=_moist_air,
    example={"temperature": "12 °C", "humidity": "75 %", "altitude": "300 m"},
)

DRYING_FORCE = Worksheet(
    name="drying-force",
    title="Drying force",
    stage="chamber",
    question="How hard does this air pull water out of the surface of the meat?",
    inputs=(
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        SURFACE_ACTIVITY,
        Number(
            "surface_temperature",
            "Temperature of the surface",
            TEMPERATURE,
            -20.0,
            60.0,
            optional=True,
            help="Empty means as warm as the air. A wet surface is a little colder.",
        ),
    ),
    compute=_drying_force,
    example={"temperature": "12 °C", "humidity": "75 %", "surface_activity": "0.95"},
)

WORKSHEETS = (MOIST_AIR, DRYING_FORCE)
