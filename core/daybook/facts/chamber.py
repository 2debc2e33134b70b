"""What happens in the chamber itself."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import optional

from core.daybook.facts.fields import above_zero, celsius, not_negative, share

CHAMBER = "chamber"
"""The `about` of everything that belongs to the chamber itself."""


@frozen
class AirRead:
    """Temperature and relative humidity of the chamber's air, as read. instrument: the one read on, by its id."""

    KIND = "air-read"

    temperature_c: float = field(validator=celsius)
    humidity: float | None = field(default=None, validator=optional(share))
    instrument: str | None = None


@frozen
class HumidifierCharged:
    KIND = "humidifier-charged"

    water_m3: float = field(validator=above_zero)
    soda_kg: float = field(default=0.0, validator=not_negative)
    tank_m3: float | None = field(default=None, validator=optional(above_zero))


@frozen
class HumidifierFilled:
    """Topped up with plain water. now_holds_m3: what the tank holds since; None where it was filled to its mark."""

    KIND = "humidifier-filled"

    water_m3: float = field(validator=above_zero)
    now_holds_m3: float | None = field(default=None, validator=optional(above_zero))


@frozen
class BasinKnown:
    """How much the condensate basin holds, to the brim."""

    KIND = "basin-known"

    holds_m3: float = field(validator=above_zero)


@frozen
class BasinEmptied:
    """All that stood in the basin was poured away."""

    KIND = "basin-emptied"

    volume_m3: float = field(validator=not_negative)


@frozen
class SetPointsChosen:
    """What the controller is set to. programme, process: keys of core.chamber.programmes, "" where none was followed.

    The differentials are how far the air may stray either way before the controller acts. surface_activity is that of
    the meat the drying force is counted for; piece_c and thickness_m are those of a cold piece that is to come in.
    """

    KIND = "set-points-chosen"

    temperature_c: float = field(validator=celsius)
    humidity: float = field(validator=share)
    temperature_differential_k: float | None = field(default=None, validator=optional(not_negative))
    humidity_differential: float | None = field(default=None, validator=optional(share))
    process: str = ""
    programme: str = ""
    air_speed_m_s: float | None = field(default=None, validator=optional(not_negative))
    surface_activity: float = field(default=0.97, validator=share)
    piece_c: float | None = field(default=None, validator=optional(celsius))
    thickness_m: float | None = field(default=None, validator=optional(above_zero))


@frozen
class CapacityStated:
    """What is printed for the chamber: water it takes out, and the air it holds. Either may be missing."""

    KIND = "capacity-stated"

    rated_m3_s: float | None = field(default=None, validator=optional(above_zero))
    chamber_m3: float | None = field(default=None, validator=optional(above_zero))


Fact = AirRead | HumidifierCharged | HumidifierFilled | BasinKnown | BasinEmptied | SetPointsChosen | CapacityStated
