"""What the checks of a hygrometer ask for, box by box: the sums, the forms and what is kept of a check read these."""

from __future__ import annotations

from typing import Literal

from attrs import evolve

from core.chamber.checks_salts import SALTS
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE
from core.worksheet import Choice, Number

Bulk = Literal["small", "bulky"]

TOLERANCE = 0.03  # of relative humidity; common practice; no published source
APART_K = 0.2  # what cannot be excluded in a closed box left alone; common practice; no published source

HUMIDITY_STEP = evolve(RELATIVE_HUMIDITY, key="humidity_step", example_metric="1 %", example_us="1 %")
SALT = Choice("salt", "Salt", {key: salt.name for key, salt in SALTS.items()}, default="nacl")
OTHER_SALT = evolve(SALT, key="other_salt", label="Other salt", default="kcl")
SALT_TEMPERATURE = Number(
    "temperature_c", "Temperature of the salt", TEMPERATURE, 0.0, 40.0, help="Of the salt itself, inside the box."
)
OTHER_TEMPERATURE = Number("other_temperature_c", "Temperature of the other salt", TEMPERATURE, 0.0, 40.0)
READING = Number("reading", "Hygrometer reads", RELATIVE_HUMIDITY, 0.0, 1.0)
OTHER_READING = Number("other_reading", "Hygrometer reads over it", RELATIVE_HUMIDITY, 0.0, 1.0)
NOW = Number("now", "Reading to correct", RELATIVE_HUMIDITY, 0.0, 1.0, optional=True)
TOLERANCE_INPUT = Number(
    "tolerance",
    "Tolerance, either way",
    HUMIDITY_STEP,
    0.001,
    0.5,
    default=TOLERANCE,
    help="3 % is common practice; no published source.",
)
DIVISION = Number("division", "Last digit it shows", HUMIDITY_STEP, 0.0, 0.1, default=0.001)
APART = Number(
    "apart_k",
    "Salt and sensor may differ by",
    TEMPERATURE_DIFFERENCE,
    0.0,
    5.0,
    default=APART_K,
    help="What you cannot rule out. 0.2 K in a closed box left alone is common practice; no published source.",
)
BULK = Choice("bulk", "Sensor", {"small": "small, bare", "bulky": "bulky, in a case"}, default="bulky")
