"""What happens in the chamber itself."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import optional

from core.daybook.facts.fields import above_zero, celsius, not_negative, share

CHAMBER = "chamber"
"""The `about` of everything that belongs to the chamber itself."""


@frozen
class AirRead:
    """Temperature and relative humidity of the chamber's air."""

    temperature_c: float = field(validator=celsius)
    humidity: float | None = field(default=None, validator=optional(share))


@frozen
class HumidifierCharged:
    water_m3: float = field(validator=above_zero)
    soda_kg: float = field(default=0.0, validator=not_negative)
    tank_m3: float | None = field(default=None, validator=optional(above_zero))


Fact = AirRead | HumidifierCharged
