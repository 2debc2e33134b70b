"""What happens to the instruments: added, checked against known points, recalibrated, retired.

A check keeps what was read, as it was read; `core.daybook.instrument_checks` works out what it comes to.
"""

from __future__ import annotations

from typing import Literal

from attrs import field, frozen
from attrs.validators import in_, matches_re, min_len, optional

from core.chamber.checks_hygrometer import APART_K, Bulk
from core.chamber.checks_ph import Shows
from core.daybook.facts.fields import above_zero, celsius, finite, not_negative, ph_value, share

InstrumentKind = Literal["thermometer", "hygrometer", "ph-meter", "scale"]
KINDS: tuple[InstrumentKind, ...] = ("thermometer", "hygrometer", "ph-meter", "scale")

_salt = matches_re("[a-z0-9-]{1,40}")


@frozen
class InstrumentAdded:
    """An instrument is put on the list. Its entry's id is the instrument's id.

    kind: a "hygrometer" measures temperature and humidity both. check_every_s None: as is common for its kind.
    tolerances None: as the check has them. probe: what the logger's files call it, "" where it is none.
    stands_at_c: of a pH meter that does not compensate for temperature, which one it takes every sample to be at;
    None: it compensates by itself.
    """

    KIND = "instrument-added"

    name: str = field(validator=min_len(1))
    kind: InstrumentKind = field(validator=in_(KINDS))
    check_every_s: float | None = field(default=None, validator=optional(above_zero))
    tolerance_k: float | None = field(default=None, validator=optional(above_zero))
    tolerance_humidity: float | None = field(default=None, validator=optional(above_zero))
    probe: str = ""
    stands_at_c: float | None = field(default=None, validator=optional(celsius))


@frozen
class IcePointChecked:
    """A thermometer in melting ice. division_k: the last digit it shows."""

    KIND = "ice-point-checked"

    reading_c: float = field(validator=celsius)
    division_k: float = field(default=0.1, validator=not_negative)


@frozen
class BoilingPointChecked:
    """A thermometer in boiling water; the pressure at the place goes before the height."""

    KIND = "boiling-point-checked"

    reading_c: float = field(validator=finite)
    altitude_m: float | None = field(default=None, validator=optional(finite))
    pressure_pa: float | None = field(default=None, validator=optional(above_zero))
    division_k: float = field(default=0.1, validator=not_negative)


@frozen
class SaltChecked:
    """A hygrometer over one saturated salt. salt: a key of SALTS. temperature_c: the salt's own."""

    KIND = "salt-checked"

    salt: str = field(validator=_salt)
    temperature_c: float = field(validator=celsius)
    reading: float = field(validator=share)
    division: float = field(default=0.001, validator=not_negative)
    apart_k: float = field(default=APART_K, validator=not_negative)
    bulk: Bulk = "bulky"


@frozen
class TwoSaltsChecked:
    """A hygrometer over two saturated salts."""

    KIND = "two-salts-checked"

    salt: str = field(validator=_salt)
    temperature_c: float = field(validator=celsius)
    reading: float = field(validator=share)
    other_salt: str = field(validator=_salt)
    other_temperature_c: float = field(validator=celsius)
    other_reading: float = field(validator=share)
    division: float = field(default=0.001, validator=not_negative)
    apart_k: float = field(default=APART_K, validator=not_negative)
    bulk: Bulk = "bulky"


@frozen
class BuffersChecked:
    """A pH meter in two buffers, each with its pH at its temperature. reading: as the meter shows it, mV or pH."""

    KIND = "buffers-checked"

    shows: Shows
    buffer: float = field(validator=ph_value)
    temperature_c: float = field(validator=celsius)
    reading: float = field(validator=finite)
    other_buffer: float = field(validator=ph_value)
    other_temperature_c: float = field(validator=celsius)
    other_reading: float = field(validator=finite)
    cleaned: Literal["no", "yes"] = "no"


@frozen
class MassesChecked:
    """A scale under one check mass or two. division_kg: the last digit it shows."""

    KIND = "masses-checked"

    mass_kg: float = field(validator=above_zero)
    reading_kg: float = field(validator=above_zero)
    division_kg: float = field(validator=above_zero)
    other_mass_kg: float | None = field(default=None, validator=optional(above_zero))
    other_reading_kg: float | None = field(default=None, validator=optional(above_zero))


@frozen
class InstrumentRecalibrated:
    """Calibrated, adjusted, or its sensor or electrode replaced: what was found before holds no longer."""

    KIND = "instrument-recalibrated"

    note: str = ""


@frozen
class InstrumentRetired:
    KIND = "instrument-retired"

    note: str = ""


Check = IcePointChecked | BoilingPointChecked | SaltChecked | TwoSaltsChecked | BuffersChecked | MassesChecked
Fact = InstrumentAdded | Check | InstrumentRecalibrated | InstrumentRetired
