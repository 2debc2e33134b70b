"""What a check of an instrument comes to, worked out from what was read."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Any, Literal

from attrs import frozen

from core.chamber import checks_thermometer, hygrometer_boxes
from core.chamber.checks import Check
from core.chamber.checks_hygrometer import Over, salt_check, salt_check_two
from core.chamber.checks_ph import Buffer, ph_meter
from core.chamber.checks_scale import scale_check
from core.chamber.checks_thermometer import boiling_point, ice_point
from core.daybook.facts import instruments
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.quantities import PH, PIECE_MASS, RELATIVE_HUMIDITY, TEMPERATURE, Quantity
from core.sentence import Message

Measured = Literal["temperature", "humidity", "ph", "mass"]
QUANTITIES: Mapping[Measured, Quantity] = {
    "temperature": TEMPERATURE,
    "humidity": RELATIVE_HUMIDITY,
    "ph": PH,
    "mass": PIECE_MASS,
}


@frozen
class Way:
    """A way of checking. name: as a date is put after it, "salt check". of: what it tells of the instrument."""

    name: Message
    of: Measured
    work_out: Callable[[Any, InstrumentAdded], Check]


def _ice(fact: IcePointChecked, added: InstrumentAdded) -> Check:
    return ice_point(fact.reading_c, _tolerance_k(added), fact.division_k)


def _boiling(fact: BoilingPointChecked, added: InstrumentAdded) -> Check:
    return boiling_point(fact.reading_c, fact.altitude_m, fact.pressure_pa, _tolerance_k(added), fact.division_k)


def _salt(fact: SaltChecked, added: InstrumentAdded) -> Check:
    over = Over(fact.salt, fact.temperature_c, fact.reading)
    return salt_check(over, _tolerance_humidity(added), fact.division, fact.apart_k, fact.bulk)


def _two_salts(fact: TwoSaltsChecked, added: InstrumentAdded) -> Check:
    one = Over(fact.salt, fact.temperature_c, fact.reading)
    other = Over(fact.other_salt, fact.other_temperature_c, fact.other_reading)
    return salt_check_two(one, other, None, _tolerance_humidity(added), fact.division, fact.apart_k, fact.bulk)


def _buffers(fact: BuffersChecked, added: InstrumentAdded) -> Check:
    one = Buffer(fact.buffer, fact.temperature_c, fact.reading)
    other = Buffer(fact.other_buffer, fact.other_temperature_c, fact.other_reading)
    return ph_meter(one, other, fact.shows, fact.cleaned == "yes")


def _masses(fact: MassesChecked, added: InstrumentAdded) -> Check:
    return scale_check(fact.mass_kg, fact.reading_kg, fact.division_kg, fact.other_mass_kg, fact.other_reading_kg)


def _tolerance_k(added: InstrumentAdded) -> float:
    return checks_thermometer.TOLERANCE_K if added.tolerance_k is None else added.tolerance_k


def _tolerance_humidity(added: InstrumentAdded) -> float:
    return hygrometer_boxes.TOLERANCE if added.tolerance_humidity is None else added.tolerance_humidity


WAYS: Mapping[type[Any], Way] = {
    IcePointChecked: Way("ice check", "temperature", _ice),
    BoilingPointChecked: Way("boiling check", "temperature", _boiling),
    SaltChecked: Way("salt check", "humidity", _salt),
    TwoSaltsChecked: Way("two-salt check", "humidity", _two_salts),
    BuffersChecked: Way("buffer check", "ph", _buffers),
    MassesChecked: Way("weight check", "mass", _masses),
}

CHECKED_BY: Mapping[instruments.InstrumentKind, tuple[type[Any], ...]] = {
    "thermometer": (IcePointChecked, BoilingPointChecked),
    "hygrometer": (SaltChecked, TwoSaltsChecked, IcePointChecked),
    "ph-meter": (BuffersChecked,),
    "scale": (MassesChecked,),
}
"""The ways to check an instrument of each kind, the likeliest first."""


@lru_cache(maxsize=256)
def work_out(fact: instruments.Check, added: InstrumentAdded) -> Check:
    """What the check comes to: word, sentence, correction, figures. Raises Refusal on the fact's field.

    Remembered: every reading of a page asks for it, and its figures take longer than all the rest.
    """
    return WAYS[type(fact)].work_out(fact, added)
