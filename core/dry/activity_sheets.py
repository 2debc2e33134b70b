"""The single sums of a drying piece: its water activity, what it is made of, where the air ends it, how warm it was."""

from __future__ import annotations

from attrs import evolve

from core.dry.activity import Mix
from core.dry.activity_figures import dried_composition, end_of_drying, loss_wanted, water_activity
from core.dry.warmth import mean_kinetic_c
from core.quantities import (
    FRACTION,
    HOURS,
    LOSS,
    PARTS_PER_MILLION,
    RELATIVE_HUMIDITY,
    SUGAR_DOSE,
    TEMPERATURE,
    WATER_ACTIVITY,
    Amount,
)
from core.refusals import Missing
from core.sentence import Message, Sentence
from core.sources import MEAN_KINETIC
from core.units import HOUR_S
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

_OF_RAW: Message = "Of the raw mix, as its formula or a table of meats has it."
WATER = Number("water", "Water in the raw mix", FRACTION, 0.025, 0.8, usual=(0.3, 0.8), help=_OF_RAW)
SALT = Number("salt", "Salt in the raw mix", FRACTION, 0.0, 0.12, help="All of it, curing salt too.")
SUGAR = Number("sugar", "Sugar in the raw mix", SUGAR_DOSE, 0.0, 0.1, optional=True)
FERMENTS = Choice("ferments", "Does it ferment?", {"yes": "Yes", "no": "No"})
LOST = Number("loss", "Loss since it was hung", LOSS, 0.0, 0.7)
MEASURED = Number("measured", "Water activity, measured", WATER_ACTIVITY, 0.3, 1.0, optional=True)
WANTED = Number("wanted", "Water activity wanted", WATER_ACTIVITY, 0.76, 0.98)
PROTEIN = Number("protein", "Protein in the raw mix", FRACTION, 0.02, 0.4, help=_OF_RAW)
FAT = Number("fat", "Fat in the raw mix", FRACTION, 0.0, 0.7, optional=True)
NITRITE = Number("nitrite", "Nitrite that went in", PARTS_PER_MILLION, 1e-6, 0.01, optional=True)
AIR_C = Number("temperature_c", "Temperature of the chamber", TEMPERATURE, 0.0, 40.0)
HUMIDITY = Number("humidity", "Relative humidity of the chamber", RELATIVE_HUMIDITY, 0.70, 0.98)
MOST_HOURS_S = 20_000 * HOUR_S
WARM = Number("temperature_1", "Temperature, step 1", TEMPERATURE, -50.0, 80.0)
LASTS = Number("lasts_1", "Time, step 1", HOURS, 0.0, MOST_HOURS_S, usual=(HOUR_S, 9000 * HOUR_S))
WINDOW: Message = "Over all the time given. A long time hides a warm month: look at each month too."


def _mix(water: float, salt: float, sugar: float | None, ferments: str) -> Mix:
    return Mix(water, salt, sugar or 0.0, ferments == "yes")


def _activity(
    water: float, salt: float, sugar: float | None, ferments: str, loss: float, measured: float | None
) -> tuple[Figure, ...]:
    return water_activity(_mix(water, salt, sugar, ferments), loss, measured)


def _loss(water: float, salt: float, sugar: float | None, ferments: str, wanted: float) -> tuple[Figure, ...]:
    return loss_wanted(_mix(water, salt, sugar, ferments), wanted)


def _end(water: float, salt: float, temperature_c: float, humidity: float) -> tuple[Figure, ...]:
    return end_of_drying(Mix(water, salt), temperature_c, humidity)


def _mean_kinetic(**typed: float | None) -> tuple[Figure, ...]:
    spans: list[tuple[float, float]] = []
    for number in (1, 2, 3):
        celsius, lasts_s = typed[f"temperature_{number}"], typed[f"lasts_{number}"]
        if celsius is not None and lasts_s is not None:
            spans.append((celsius, lasts_s))
        elif celsius is not None or lasts_s is not None:
            missing = f"temperature_{number}" if celsius is None else f"lasts_{number}"
            raise Missing(missing, "Enter both the temperature and the time of this step, or neither.")
    value = mean_kinetic_c(spans)
    steps = tuple(
        Sentence("{temperature} for {lasts}", {"temperature": Amount(c, TEMPERATURE), "lasts": Amount(s, HOURS)})
        for c, s in spans
    )
    last = Sentence(
        "The one temperature at which as much happens, by exp(−10 000 K ÷ T) weighed by time: {value}",
        {"value": Amount(value, TEMPERATURE)},
    )
    name: Message = "Mean kinetic temperature"
    return (Figure("mean_kinetic", name, value, TEMPERATURE, (*steps, last), MEAN_KINETIC, (WINDOW,)),)


ACTIVITY_SHEET = Worksheet(
    name="dried-activity",
    title="Water activity worked out",
    stage="dry",
    question="What water activity has this loss brought it to?",
    inputs=(WATER, SALT, SUGAR, FERMENTS, LOST, MEASURED),
    compute=_activity,
    example={"water": "58 %", "salt": "2.8 %", "sugar": "5 g/kg", "ferments": "yes", "loss": "35 %"},
)
LOSS_SHEET = Worksheet(
    name="loss-for-activity",
    title="Loss for a water activity",
    stage="dry",
    question="How much must this mix lose to come to a water activity?",
    inputs=(WATER, SALT, SUGAR, FERMENTS, WANTED),
    compute=_loss,
    example={"water": "58 %", "salt": "2.8 %", "ferments": "yes", "wanted": "0.90"},
)
COMPOSITION_SHEET = Worksheet(
    name="dried-composition",
    title="What a dried piece is made of",
    stage="dry",
    question="How much water, protein, salt and nitrite are in it once it has dried?",
    inputs=(WATER, SALT, LOST, PROTEIN, FAT, NITRITE),
    compute=dried_composition,
    example={"water": "58 %", "salt": "2.8 %", "loss": "35 %", "protein": "16 %", "fat": "22 %", "nitrite": "120 ppm"},
)
END_SHEET = Worksheet(
    name="end-of-drying",
    title="Where the air ends the drying",
    stage="dry",
    question="How far can this air dry it at all?",
    inputs=(WATER, SALT, AIR_C, HUMIDITY),
    compute=_end,
    example={"water": "58 %", "salt": "2.8 %", "temperature_c": "12 °C", "humidity": "78 %"},
)
MEAN_KINETIC_SHEET = Worksheet(
    name="mean-kinetic",
    title="Mean kinetic temperature",
    stage="dry",
    question="How warm was it, all told?",
    inputs=(
        *(WARM, LASTS),
        *(evolve(WARM, key="temperature_2", label="Temperature, step 2", optional=True),),
        *(evolve(LASTS, key="lasts_2", label="Time, step 2", optional=True),),
        *(evolve(WARM, key="temperature_3", label="Temperature, step 3", optional=True),),
        *(evolve(LASTS, key="lasts_3", label="Time, step 3", optional=True),),
    ),
    compute=_mean_kinetic,
    example={
        **{"temperature_1": "12 °C", "lasts_1": "600 h"},
        **{"temperature_2": "18 °C", "lasts_2": "72 h"},
    },
)
WORKSHEETS = (ACTIVITY_SHEET, LOSS_SHEET, COMPOSITION_SHEET, END_SHEET, MEAN_KINETIC_SHEET)
