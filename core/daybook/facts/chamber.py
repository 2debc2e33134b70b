"""What happens in the chamber itself."""

from __future__ import annotations

from attrs import evolve, field, frozen

from core.air_sheets import SURFACE_ACTIVITY
from core.chamber.humidifier_boxes import CHARGE_WATER, TANK
from core.chamber.rates import AIR_SPEED, ROOM, WATER_A_DAY
from core.daybook.facts.fields import asked, near_c, not_negative, share
from core.quantities import LENGTH, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, VOLUME
from core.sentence import Message
from core.units import DAY_S
from core.usual import POURED_M3, STRAYING, THAWING_C
from core.worksheet import Number

CHAMBER = "chamber"
"""The `about` of everything that belongs to the chamber itself."""

AIR_C = Number("temperature_c", "Temperature", TEMPERATURE, -20.0, 60.0)
SET_HUMIDITY = Number("humidity", "Relative humidity", RELATIVE_HUMIDITY, 0.01, 1.0)
AIR_HUMIDITY = evolve(SET_HUMIDITY, optional=True)
DIFFERENTIAL_K = Number(
    "temperature_differential_k",
    "Temperature tolerance",
    TEMPERATURE_DIFFERENCE,
    0.0,
    10.0,
    optional=True,
    help="Either way, before the controller acts.",
)
DIFFERENTIAL_HUMIDITY = Number(
    "humidity_differential", "Humidity tolerance", RELATIVE_HUMIDITY, 0.0, 0.3, optional=True, usual=STRAYING
)
SPEED = Number("air_speed_m_s", "Air speed", AIR_SPEED, 0.0, 5.0, optional=True)
_OF_MEAT: Message = "Water activity of the meat’s surface"
SURFACE = evolve(SURFACE_ACTIVITY, label=_OF_MEAT)
PIECE_C = Number("piece_c", "A cold piece comes in at", TEMPERATURE, -1.0, 60.0, optional=True, usual=THAWING_C)
THICKNESS = Number("thickness_m", "Its thickness", LENGTH, 0.01, 0.3, optional=True)
SMALLEST_M3, LARGEST_M3 = 1e-5, 1.0
FILLED = Number("water_m3", "Water filled in", VOLUME, SMALLEST_M3, LARGEST_M3, help="Plain water, topped up.")
NOW_HOLDS = Number(
    "now_holds_m3",
    "The tank holds now",
    VOLUME,
    SMALLEST_M3,
    LARGEST_M3,
    optional=True,
    help="Leave it empty where it was filled to its mark.",
)
BASIN = Number("holds_m3", "The basin, to its brim", VOLUME, SMALLEST_M3, LARGEST_M3, usual=POURED_M3)
POURED = Number(
    "volume_m3", "Water poured away", VOLUME, 0.0, LARGEST_M3, usual=POURED_M3, help="All of it; 0 where it was dry."
)
RATED = Number(
    "rated_m3_s",
    "Water it takes out",
    WATER_A_DAY,
    1e-6 / DAY_S,
    1.0 / DAY_S,
    optional=True,
    help="A rating is made in warm, damp air; in the cold it is much less. What the basin shows is better.",
)
AIR_HELD = Number("chamber_m3", "Air it holds", ROOM, 0.01, 100.0, optional=True)


@frozen
class AirRead:
    """Temperature and relative humidity of the chamber's air, as read. instrument: the one read on, by its id."""

    KIND = "air-read"

    temperature_c: float = asked(AIR_C, holds=near_c(AIR_C))
    humidity: float | None = asked(AIR_HUMIDITY, holds=share)
    instrument: str | None = None


@frozen
class HumidifierCharged:
    KIND = "humidifier-charged"

    water_m3: float = asked(CHARGE_WATER)
    soda_kg: float = field(default=0.0, validator=not_negative)
    tank_m3: float | None = asked(TANK)


@frozen
class HumidifierFilled:
    """Topped up with plain water. now_holds_m3: what the tank holds since; None where it was filled to its mark."""

    KIND = "humidifier-filled"

    water_m3: float = asked(FILLED)
    now_holds_m3: float | None = asked(NOW_HOLDS)


@frozen
class BasinKnown:
    """How much the condensate basin holds, to the brim."""

    KIND = "basin-known"

    holds_m3: float = asked(BASIN)


@frozen
class BasinEmptied:
    """All that stood in the basin was poured away."""

    KIND = "basin-emptied"

    volume_m3: float = asked(POURED)


@frozen
class SetPointsChosen:
    """What the controller is set to. programme, process: keys of core.chamber.programmes, "" where none was followed.

    The differentials are how far the air may stray either way before the controller acts. surface_activity is that of
    the meat the drying force is counted for; piece_c and thickness_m are those of a cold piece that is to come in.
    """

    KIND = "set-points-chosen"

    temperature_c: float = asked(AIR_C)
    humidity: float = asked(SET_HUMIDITY)
    temperature_differential_k: float | None = asked(DIFFERENTIAL_K)
    humidity_differential: float | None = asked(DIFFERENTIAL_HUMIDITY)
    process: str = ""
    programme: str = ""
    air_speed_m_s: float | None = asked(SPEED)
    surface_activity: float = asked(SURFACE, default=0.97)
    piece_c: float | None = asked(PIECE_C)
    thickness_m: float | None = asked(THICKNESS)


@frozen
class CapacityStated:
    """What is printed for the chamber: water it takes out, and the air it holds. Either may be missing."""

    KIND = "capacity-stated"

    rated_m3_s: float | None = asked(RATED)
    chamber_m3: float | None = asked(AIR_HELD)


Fact = AirRead | HumidifierCharged | HumidifierFilled | BasinKnown | BasinEmptied | SetPointsChosen | CapacityStated
