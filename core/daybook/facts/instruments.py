"""What happens to the instruments: added, checked against known points, recalibrated, retired.

A check keeps what was read, as it was read; `core.daybook.instrument_checks` works out what it comes to.
"""

from __future__ import annotations

from typing import Literal

from attrs import evolve, field, frozen
from attrs.validators import and_, ge, in_, matches_re

from core.chamber import checks_ph as ph
from core.chamber import checks_scale as scale
from core.chamber import checks_thermometer as thermometer
from core.chamber import hygrometer_boxes as hygrometer
from core.chamber.ph_temperature import COLDEST_C, WARMEST_C
from core.daybook.facts.fields import asked, lasting, name
from core.quantities import DAYS, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Message, Sentence
from core.units import DAY_S, HOUR_S
from core.usual import STRAYING
from core.worksheet import Number

InstrumentKind = Literal["thermometer", "hygrometer", "ph-meter", "scale"]
KINDS: tuple[InstrumentKind, ...] = ("thermometer", "hygrometer", "ph-meter", "scale")

CHECK_EVERY = Number("check_every_s", "Check it every", DAYS, DAY_S, 1000 * DAY_S, optional=True)
_OWN_LABEL: Message = "Own tolerance of temperature"
OWN_TOLERANCE_K = evolve(
    thermometer.TOLERANCE,
    label=_OWN_LABEL,
    default=None,
    optional=True,
    help=Sentence(
        "Either way. Empty means {usual}, a food probe’s.",
        {"usual": Amount(thermometer.TOLERANCE_K, TEMPERATURE_DIFFERENCE)},
    ),
)
OWN_TOLERANCE_HUMIDITY = Number(
    "tolerance_humidity",
    "Own tolerance of humidity",
    RELATIVE_HUMIDITY,
    hygrometer.TOLERANCE_INPUT.low,
    hygrometer.TOLERANCE_INPUT.high,
    optional=True,
    usual=STRAYING,
    help=Sentence(
        "Either way. Empty means {usual} (common practice; no published source).",
        {"usual": Amount(hygrometer.TOLERANCE, RELATIVE_HUMIDITY)},
    ),
)
STANDS_AT = Number(
    "stands_at_c",
    "pH meter set to",
    TEMPERATURE,
    COLDEST_C,
    WARMEST_C,
    optional=True,
    help=Sentence(
        "Empty means that it compensates for temperature by itself. Else what it is set to, often {often}.",
        {"often": Amount(25.0, TEMPERATURE)},
    ),
)

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

    name: str = field(validator=name)
    kind: InstrumentKind = field(validator=in_(KINDS))
    check_every_s: float | None = asked(CHECK_EVERY, holds=and_(lasting, ge(HOUR_S)))
    tolerance_k: float | None = asked(OWN_TOLERANCE_K)
    tolerance_humidity: float | None = asked(OWN_TOLERANCE_HUMIDITY)
    probe: str = ""
    stands_at_c: float | None = asked(STANDS_AT)


@frozen
class IcePointChecked:
    """A thermometer in melting ice."""

    KIND = "ice-point-checked"

    reading_c: float = asked(thermometer.READING_IN_ICE)
    division_k: float = asked(thermometer.DIVISION, default=0.1)


@frozen
class BoilingPointChecked:
    """A thermometer in boiling water; the pressure at the place goes before the height."""

    KIND = "boiling-point-checked"

    reading_c: float = asked(thermometer.READING_IN_BOILING)
    altitude_m: float | None = asked(thermometer.PLACE_ALTITUDE)
    pressure_pa: float | None = asked(thermometer.PLACE_PRESSURE)
    division_k: float = asked(thermometer.DIVISION, default=0.1)


@frozen
class SaltChecked:
    """A hygrometer over one saturated salt. salt: a key of SALTS, or one that a newer daybook knows."""

    KIND = "salt-checked"

    salt: str = asked(hygrometer.SALT, holds=_salt)
    temperature_c: float = asked(hygrometer.SALT_TEMPERATURE)
    reading: float = asked(hygrometer.READING)
    division: float = asked(hygrometer.DIVISION, default=0.001)
    apart_k: float = asked(hygrometer.APART, default=hygrometer.APART_K)
    bulk: hygrometer.Bulk = asked(hygrometer.BULK, default="bulky")


@frozen
class TwoSaltsChecked:
    """A hygrometer over two saturated salts."""

    KIND = "two-salts-checked"

    salt: str = asked(hygrometer.SALT, holds=_salt)
    temperature_c: float = asked(hygrometer.SALT_TEMPERATURE)
    reading: float = asked(hygrometer.READING)
    other_salt: str = asked(hygrometer.OTHER_SALT, holds=_salt)
    other_temperature_c: float = asked(hygrometer.OTHER_TEMPERATURE)
    other_reading: float = asked(hygrometer.OTHER_READING)
    division: float = asked(hygrometer.DIVISION, default=0.001)
    apart_k: float = asked(hygrometer.APART, default=hygrometer.APART_K)
    bulk: hygrometer.Bulk = asked(hygrometer.BULK, default="bulky")


@frozen
class BuffersChecked:
    """A pH meter in two buffers, each with its pH at its temperature. reading: as the meter shows it, mV or pH."""

    KIND = "buffers-checked"

    shows: ph.Shows = asked(ph.SHOWS)
    buffer: float = asked(ph.BUFFER)
    temperature_c: float = asked(ph.BUFFER_TEMPERATURE)
    reading: float = asked(ph.READING)
    other_buffer: float = asked(ph.OTHER_BUFFER)
    other_temperature_c: float = asked(ph.OTHER_TEMPERATURE)
    other_reading: float = asked(ph.OTHER_READING)
    cleaned: Literal["no", "yes"] = asked(ph.CLEANED, default="no")


@frozen
class MassesChecked:
    """A scale under one check mass or two."""

    KIND = "masses-checked"

    mass_kg: float = asked(scale.MASS)
    reading_kg: float = asked(scale.READING)
    division_kg: float = asked(scale.DIVISION)
    other_mass_kg: float | None = asked(scale.OTHER_MASS)
    other_reading_kg: float | None = asked(scale.OTHER_READING)


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
