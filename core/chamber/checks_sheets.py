"""The single sums of checking instruments, as worksheets."""

from __future__ import annotations

from attrs import evolve

from core.air_sheets import ALTITUDE_INPUT
from core.chamber.checks_hygrometer import APART_K, TOLERANCE, Bulk, Over, salt_check, salt_check_two
from core.chamber.checks_ph import Buffer, Shows, ph_meter
from core.chamber.checks_salts import SALTS
from core.chamber.checks_scale import scale_check
from core.chamber.checks_thermometer import TOLERANCE_K, boiling_point, ice_point
from core.chamber.ph_temperature import COLDEST_C, HIGHEST_PH, LOWEST_PH, WARMEST_C, compensated
from core.quantities import (
    DOSE_MASS,
    PH,
    PRESSURE,
    RATIO,
    RELATIVE_HUMIDITY,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
)
from core.sources import FOOD_PROBE
from core.usual import MELTING_C, SHOWN_K, SHOWN_KG
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

_TOLERANCE_K = Number(
    "tolerance",
    "Tolerance, either way",
    TEMPERATURE_DIFFERENCE,
    0.01,
    20.0,
    default=TOLERANCE_K,
    help=f"A food probe’s is 1 K. {FOOD_PROBE.cite()} For air thermometers 1.5 K is quoted (from memory).",
)
_DIVISION_K = Number("division", "Last digit it shows", TEMPERATURE_DIFFERENCE, 0.0, 5.0, default=0.1, usual=SHOWN_K)
_HOT = evolve(TEMPERATURE, key="hot", example_metric="99.5 °C", example_us="211 °F")
_SHOWN = evolve(RATIO, key="shown", noun="a reading", example_metric="-15", example_us="-15")
_DIVISION = evolve(RELATIVE_HUMIDITY, key="humidity_step", example_metric="1 %", example_us="1 %")

_SALT_NAMES = {key: salt.name for key, salt in SALTS.items()}
_SALT = Choice("salt", "Salt", _SALT_NAMES, default="nacl")
_READING_OVER = Number("reading", "Hygrometer reads", RELATIVE_HUMIDITY, 0.0, 1.0)
_SALT_TEMPERATURE = Number(
    "temperature", "Temperature of the salt", TEMPERATURE, 0.0, 40.0, help="Of the salt itself, inside the box."
)
_OF_ALL_SALTS = (
    Number(
        "tolerance",
        "Tolerance, either way",
        _DIVISION,
        0.001,
        0.5,
        default=TOLERANCE,
        help="3 % is common practice; no published source.",
    ),
    Number("division", "Last digit it shows", _DIVISION, 0.0, 0.1, default=0.001),
    Number(
        "apart",
        "Salt and sensor may differ by",
        TEMPERATURE_DIFFERENCE,
        0.0,
        5.0,
        default=APART_K,
        help="What you cannot rule out. 0.2 K in a closed box left alone is common practice; no published source.",
    ),
    Choice("bulk", "Sensor", {"small": "small, bare", "bulky": "bulky, in a case"}, default="bulky"),
)


def _ice_point(reading: float, tolerance: float, division: float) -> tuple[Figure, ...]:
    return ice_point(reading, tolerance, division).figures


def _boiling_point(
    reading: float, altitude: float | None, pressure: float | None, tolerance: float, division: float
) -> tuple[Figure, ...]:
    return boiling_point(reading, altitude, pressure, tolerance, division).figures


def _salt_check(
    salt: str, temperature: float, reading: float, tolerance: float, division: float, apart: float, bulk: Bulk
) -> tuple[Figure, ...]:
    return salt_check(Over(salt, temperature, reading), tolerance, division, apart, bulk).figures


def _salt_check_two(
    salt: str,
    temperature: float,
    reading: float,
    other_salt: str,
    other_temperature: float,
    other_reading: float,
    now: float | None,
    tolerance: float,
    division: float,
    apart: float,
    bulk: Bulk,
) -> tuple[Figure, ...]:
    one, other = Over(salt, temperature, reading), Over(other_salt, other_temperature, other_reading)
    return salt_check_two(one, other, now, tolerance, division, apart, bulk).figures


def _ph_meter(
    shows: Shows,
    buffer: float,
    temperature: float,
    reading: float,
    other_buffer: float,
    other_temperature: float,
    other_reading: float,
    cleaned: str,
) -> tuple[Figure, ...]:
    one, other = Buffer(buffer, temperature, reading), Buffer(other_buffer, other_temperature, other_reading)
    return ph_meter(one, other, shows, cleaned == "yes").figures


def _ph_warmth(shown: float, sample: float, stands_at: float) -> tuple[Figure, ...]:
    return compensated(shown, sample, stands_at)


def _scale_check(
    mass: float, reading: float, division: float, other_mass: float | None, other_reading: float | None
) -> tuple[Figure, ...]:
    return scale_check(mass, reading, division, other_mass, other_reading).figures


ICE_POINT_SHEET = Worksheet(
    name="ice-point",
    title="Thermometer in ice",
    stage="chamber",
    question="Does the thermometer read 0 °C in melting ice?",
    inputs=(
        Number("reading", "Thermometer reads", TEMPERATURE, -30.0, 50.0, usual=MELTING_C),
        _TOLERANCE_K,
        _DIVISION_K,
    ),
    compute=_ice_point,
    example={"reading": "0.4 °C"},
)
BOILING_POINT_SHEET = Worksheet(
    name="boiling-point",
    title="Thermometer in boiling water",
    stage="chamber",
    question="What does water boil at here, and does the thermometer say so?",
    inputs=(
        Number("reading", "Thermometer reads", _HOT, 50.0, 150.0),
        ALTITUDE_INPUT,
        Number(
            "pressure",
            "Air pressure at the place",
            PRESSURE,
            60e3,
            110e3,
            optional=True,
            help="From a barometer that is not set to sea level. It overrides the altitude.",
        ),
        _TOLERANCE_K,
        _DIVISION_K,
    ),
    compute=_boiling_point,
    example={"reading": "98.4 °C", "altitude": "300 m"},
)
SALT_CHECK = Worksheet(
    name="salt-check",
    title="Hygrometer over one salt",
    stage="chamber",
    question="How far is the hygrometer out over a wet salt?",
    inputs=(_SALT, _SALT_TEMPERATURE, _READING_OVER, *_OF_ALL_SALTS),
    compute=_salt_check,
    example={"salt": "nacl", "temperature": "12 °C", "reading": "79 %"},
)
SALT_CHECK_TWO = Worksheet(
    name="salt-check-two",
    title="Hygrometer over two salts",
    stage="chamber",
    question="Which line corrects the hygrometer between two salts?",
    inputs=(
        _SALT,
        _SALT_TEMPERATURE,
        _READING_OVER,
        Choice("other_salt", "Other salt", _SALT_NAMES, default="kcl"),
        Number("other_temperature", "Temperature of the other salt", TEMPERATURE, 0.0, 40.0),
        Number("other_reading", "Hygrometer reads over it", RELATIVE_HUMIDITY, 0.0, 1.0),
        Number("now", "Reading to correct", RELATIVE_HUMIDITY, 0.0, 1.0, optional=True),
        *_OF_ALL_SALTS,
    ),
    compute=_salt_check_two,
    example={
        "temperature": "20 °C",
        "reading": "78 %",
        "other_temperature": "20 °C",
        "other_reading": "86.4 %",
        "now": "80 %",
    },
)
PH_METER = Worksheet(
    name="ph-meter",
    title="pH meter in two buffers",
    stage="chamber",
    question="Is the electrode of the pH meter still good?",
    inputs=(
        Choice("shows", "The meter shows", {"mv": "millivolts", "ph": "pH only"}, default="ph"),
        Number(
            "buffer", "pH of the first buffer", PH, 1.0, 13.0, default=7.0, help="At its temperature, by its label."
        ),
        Number("temperature", "Its temperature", TEMPERATURE, 5.0, 50.0, default=25.0),
        Number("reading", "The meter shows in it", _SHOWN, -1000.0, 1000.0, help="In millivolts or in pH, as chosen."),
        Number("other_buffer", "pH of the second buffer", PH, 1.0, 13.0, default=4.01),
        Number("other_temperature", "Its temperature", TEMPERATURE, 5.0, 50.0, default=25.0),
        Number("other_reading", "The meter shows in it", _SHOWN, -1000.0, 1000.0),
        Choice("cleaned", "Cleaned already", {"no": "no", "yes": "yes, and checked again"}, default="no"),
    ),
    compute=_ph_meter,
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
    inputs=(
        Number("mass", "Check mass", DOSE_MASS, 1e-6, 1000.0),
        Number("reading", "Scale reads", DOSE_MASS, 1e-6, 1000.0),
        Number("division", "Last digit it shows", DOSE_MASS, 1e-6, 1.0, default=1e-4, usual=SHOWN_KG),
        Number("other_mass", "Second check mass", DOSE_MASS, 1e-6, 1000.0, optional=True),
        Number("other_reading", "Scale reads under it", DOSE_MASS, 1e-6, 1000.0, optional=True),
    ),
    compute=_scale_check,
    example={"mass": "100 g", "reading": "100.3 g", "division": "0.1 g"},
)

WORKSHEETS = (ICE_POINT_SHEET, BOILING_POINT_SHEET, SALT_CHECK, SALT_CHECK_TWO, PH_METER, PH_WARMTH, SCALE_CHECK)
