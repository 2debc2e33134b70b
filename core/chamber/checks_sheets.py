"""The single sums of checking instruments, as worksheets. Their boxes are those of the checks themselves."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from attrs import evolve

from core.chamber import checks_ph as ph
from core.chamber import checks_scale as scale
from core.chamber import checks_thermometer as thermometer
from core.chamber import hygrometer_boxes as hygrometer
from core.chamber.checks import Check
from core.chamber.checks_hygrometer import Over, salt_check, salt_check_two
from core.chamber.checks_ph import Buffer, Shows, ph_meter
from core.chamber.hygrometer_boxes import Bulk
from core.chamber.ph_temperature import COLDEST_C, HIGHEST_PH, LOWEST_PH, WARMEST_C, compensated
from core.quantities import PH, TEMPERATURE
from core.working import Figure
from core.worksheet import Number, Worksheet

_OF_ALL_SALTS = (hygrometer.TOLERANCE_INPUT, hygrometer.DIVISION, hygrometer.APART, hygrometer.BULK)


def _figures_of(check: Callable[..., Check]) -> Callable[..., tuple[Figure, ...]]:
    def figures(**given: Any) -> tuple[Figure, ...]:
        return check(**given).figures

    return figures


def _salt_check(
    salt: str, temperature_c: float, reading: float, tolerance: float, division: float, apart_k: float, bulk: Bulk
) -> Check:
    return salt_check(Over(salt, temperature_c, reading), tolerance, division, apart_k, bulk)


def _salt_check_two(
    salt: str,
    temperature_c: float,
    reading: float,
    other_salt: str,
    other_temperature_c: float,
    other_reading: float,
    now: float | None,
    tolerance: float,
    division: float,
    apart_k: float,
    bulk: Bulk,
) -> Check:
    one, other = Over(salt, temperature_c, reading), Over(other_salt, other_temperature_c, other_reading)
    return salt_check_two(one, other, now, tolerance, division, apart_k, bulk)


def _ph_meter(
    shows: Shows,
    buffer: float,
    temperature_c: float,
    reading: float,
    other_buffer: float,
    other_temperature_c: float,
    other_reading: float,
    cleaned: str,
) -> Check:
    one, other = Buffer(buffer, temperature_c, reading), Buffer(other_buffer, other_temperature_c, other_reading)
    return ph_meter(one, other, shows, cleaned == "yes")


def _ph_warmth(shown: float, sample: float, stands_at: float) -> tuple[Figure, ...]:
    return compensated(shown, sample, stands_at)


ICE_POINT_SHEET = Worksheet(
    name="ice-point",
    title="Thermometer in ice",
    stage="chamber",
    question="Does the thermometer read 0 °C in melting ice?",
    inputs=(thermometer.READING_IN_ICE, thermometer.TOLERANCE, thermometer.DIVISION),
    compute=_figures_of(thermometer.ice_point),
    example={"reading_c": "0.4 °C"},
)
BOILING_POINT_SHEET = Worksheet(
    name="boiling-point",
    title="Thermometer in boiling water",
    stage="chamber",
    question="What does water boil at here, and does the thermometer say so?",
    inputs=(
        thermometer.READING_IN_BOILING,
        evolve(thermometer.PLACE_ALTITUDE, default=0.0),
        thermometer.PLACE_PRESSURE,
        thermometer.TOLERANCE,
        thermometer.DIVISION,
    ),
    compute=_figures_of(thermometer.boiling_point),
    example={"reading_c": "98.4 °C", "altitude_m": "300 m"},
)
SALT_CHECK = Worksheet(
    name="salt-check",
    title="Hygrometer over one salt",
    stage="chamber",
    question="How far is the hygrometer out over a wet salt?",
    inputs=(hygrometer.SALT, hygrometer.SALT_TEMPERATURE, hygrometer.READING, *_OF_ALL_SALTS),
    compute=_figures_of(_salt_check),
    example={"salt": "nacl", "temperature_c": "12 °C", "reading": "79 %"},
)
SALT_CHECK_TWO = Worksheet(
    name="salt-check-two",
    title="Hygrometer over two salts",
    stage="chamber",
    question="Which line corrects the hygrometer between two salts?",
    inputs=(
        hygrometer.SALT,
        hygrometer.SALT_TEMPERATURE,
        hygrometer.READING,
        hygrometer.OTHER_SALT,
        hygrometer.OTHER_TEMPERATURE,
        hygrometer.OTHER_READING,
        hygrometer.NOW,
        *_OF_ALL_SALTS,
    ),
    compute=_figures_of(_salt_check_two),
    example={
        "temperature_c": "20 °C",
        "reading": "78 %",
        "other_temperature_c": "20 °C",
        "other_reading": "86.4 %",
        "now": "80 %",
    },
)
PH_METER = Worksheet(
    name="ph-meter",
    title="pH meter in two buffers",
    stage="chamber",
    question="Is the electrode of the pH meter still good?",
    inputs=(  # a sum may start from the usual bottles; a record holds only what was read off them
        ph.SHOWS,
        evolve(ph.BUFFER, default=7.0),
        evolve(ph.BUFFER_TEMPERATURE, default=25.0),
        ph.READING,
        evolve(ph.OTHER_BUFFER, default=4.01),
        evolve(ph.OTHER_TEMPERATURE, default=25.0),
        ph.OTHER_READING,
        ph.CLEANED,
    ),
    compute=_figures_of(_ph_meter),
    example={"shows": "mv", "buffer": "7.01", "reading": "-15", "other_buffer": "4.01", "other_reading": "160"},
)
PH_WARMTH = Worksheet(
    name="ph-warmth",
    title="pH on a meter that does not compensate",
    stage="chamber",
    question="What is the pH, read warmer or colder than the meter is set to?",
    inputs=(
        Number("shown", "The meter shows", PH, LOWEST_PH, HIGHEST_PH),
        Number("sample", "Temperature of the meat", TEMPERATURE, COLDEST_C, WARMEST_C),
        Number(
            "stands_at",
            "The meter is set to",
            TEMPERATURE,
            COLDEST_C,
            WARMEST_C,
            default=25.0,
            help="What its dial is set to, or as warm as the buffers it was set in. A meter that compensates by itself "
            "needs none of this.",
        ),
    ),
    compute=_ph_warmth,
    example={"shown": "5.2", "sample": "12 °C"},
)
SCALE_CHECK = Worksheet(
    name="scale-check",
    title="Scale under check masses",
    stage="chamber",
    question="How far is the scale out, and what is the least it can weigh?",
    inputs=(scale.MASS, scale.READING, scale.DIVISION, scale.OTHER_MASS, scale.OTHER_READING),
    compute=_figures_of(scale.scale_check),
    example={"mass_kg": "100 g", "reading_kg": "100.3 g", "division_kg": "0.1 g"},
)

WORKSHEETS = (ICE_POINT_SHEET, BOILING_POINT_SHEET, SALT_CHECK, SALT_CHECK_TWO, PH_METER, PH_WARMTH, SCALE_CHECK)
