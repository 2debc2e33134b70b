"""The single sums about moisture, as worksheets."""

from __future__ import annotations

from core.air_sheets import HUMIDITY_INPUT, TEMPERATURE_INPUT
from core.chamber.capacity import capacity_as_rated, capacity_from_basin, carries
from core.chamber.moisture import FASTEST, humidifier_need, moisture_load, wet_limit
from core.chamber.rates import AIR_SPEED, LASTING, ROOM, WATER_A_DAY
from core.densities import ROUGH_WATER_KG_PER_M3
from core.quantities import COUNT, LENGTH, LOSS_RATE, MASS, RELATIVE_HUMIDITY, TEMPERATURE, VOLUME
from core.refusals import Missing
from core.units import DAY_S, HOUR_S
from core.usual import POURED_M3
from core.working import Figure
from core.worksheet import Number, Worksheet

HANGING = Number("hanging", "Meat that hangs", MASS, 0.001, 999.0)
LOSS = Number(
    "loss",
    "Loss a day",
    LOSS_RATE,
    0.0001 / DAY_S,
    FASTEST,
    default=0.01 / DAY_S,
    help="Share of its weight: 0.3 to 1 % a day once it dries (from memory, no published figure found).",
)
PEAK = Number(
    "peak", "Loss a day at first", LOSS_RATE, 0.0001 / DAY_S, FASTEST, optional=True, help="Empty means 1 to 2 %."
)
CHAMBER = Number("chamber", "Air in the chamber", ROOM, 0.01, 100.0, optional=True)


def _moisture_load(
    hanging: float,
    loss: float,
    temperature: float,
    humidity: float,
    peak: float | None = None,
    chamber: float | None = None,
    thickness: float | None = None,
    air_speed: float | None = None,
) -> tuple[Figure, ...]:
    figures = moisture_load(hanging, loss, temperature, peak, chamber)
    if thickness is None and air_speed is None:
        return figures
    if thickness is None:
        raise Missing("thickness", "Enter the thickness of the pieces too, or leave the air speed empty.")
    if air_speed is None:
        raise Missing("air_speed", "Enter the air speed too, or leave the thickness empty.")
    return (*figures, wet_limit(hanging, thickness, temperature, humidity, air_speed))


def _chamber_capacity(
    loss: float,
    rating: float | None = None,
    drained: float | None = None,
    time: float | None = None,
    hanging: float | None = None,
    peak: float | None = None,
) -> tuple[Figure, ...]:
    """A basin that was logged goes before a rating."""
    return carries(_capacity(rating, drained, time), loss, hanging, peak)


def _capacity(rating: float | None, drained: float | None, time: float | None) -> Figure:
    if drained is not None and time is not None:
        return capacity_from_basin(drained, time)
    if drained is not None or time is not None:
        if time is None:
            raise Missing("time", "Enter how long that took too, or a rating and neither of the two.")
        raise Missing("drained", "Enter what was drained too, or a rating and neither of the two.")
    if rating is None:
        raise Missing("rating", "Enter what is stated for the chamber, or what its basin held and how long that took.")
    return capacity_as_rated(rating)


def _humidifier_need(
    chamber: float,
    temperature: float,
    humidity: float,
    room_temperature: float,
    room_humidity: float,
    changes: float,
    drained: float | None = None,
) -> tuple[Figure, ...]:
    drained_kg_s = (drained or 0.0) * ROUGH_WATER_KG_PER_M3
    return humidifier_need(chamber, temperature, humidity, room_temperature, room_humidity, changes, drained_kg_s)


MOISTURE_LOAD = Worksheet(
    name="moisture-load",
    title="Moisture load",
    stage="chamber",
    question="How much water does the hanging meat give off, and what must the coil take out?",
    inputs=(
        HANGING,
        LOSS,
        PEAK,
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        CHAMBER,
        Number("thickness", "Thickness of the pieces", LENGTH, 0.01, 0.3, optional=True),
        Number(
            "air_speed",
            "Air speed",
            AIR_SPEED,
            0.02,
            3.0,
            optional=True,
            help="With the thickness it shows the most that wholly wet pieces could give off.",
        ),
    ),
    compute=_moisture_load,
    example={
        "hanging": "10 kg",
        "loss": "1 % a day",
        "chamber": "500 L",
        "thickness": "60 mm",
        "air_speed": "0.1 m/s",
    },
)

CHAMBER_CAPACITY = Worksheet(
    name="chamber-capacity",
    title="What the chamber carries",
    stage="chamber",
    question="How many kilograms can hang in this chamber before it is overloaded?",
    inputs=(
        LOSS,
        Number("drained", "What the basin held", VOLUME, 1e-6, 1.0, optional=True, usual=POURED_M3),
        Number("time", "Gathered in", LASTING, 6 * HOUR_S, 365 * DAY_S, optional=True),
        Number(
            "rating",
            "Or what is stated for it",
            WATER_A_DAY,
            1e-6 / DAY_S,
            1.0 / DAY_S,
            optional=True,
            help="Litres a day that the chamber or its dehumidifier takes out.",
        ),
        Number("hanging", "Meat that hangs, or is to hang", MASS, 0.001, 999.0, optional=True),
        PEAK,
    ),
    compute=_chamber_capacity,
    example={"loss": "0.8 %", "drained": "0.6 L", "time": "3 d", "hanging": "12 kg"},
)

HUMIDIFIER_NEED = Worksheet(
    name="humidifier-need",
    title="Water for an empty chamber",
    stage="chamber",
    question="How much water must the humidifier add while nothing hangs?",
    inputs=(
        Number("chamber", "Air in the chamber", ROOM, 0.01, 100.0),
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        Number("room_temperature", "Temperature of the room", TEMPERATURE, -20.0, 60.0, default=20.0),
        Number("room_humidity", "Humidity of the room", RELATIVE_HUMIDITY, 0.01, 1.0, default=0.5),
        Number(
            "changes",
            "Changes of air a day",
            COUNT,
            0.0,
            1000.0,
            help="How often a day the room's air replaces the chamber's. Unknown for most: try 5 and 50.",
        ),
        Number("drained", "Condensate a day, empty", WATER_A_DAY, 0.0, 0.1 / DAY_S, optional=True),
    ),
    compute=_humidifier_need,
    example={"chamber": "500 L", "changes": "20", "drained": "0.1 L a day"},
)

WORKSHEETS = (MOISTURE_LOAD, CHAMBER_CAPACITY, HUMIDIFIER_NEED)
