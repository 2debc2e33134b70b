"""The single sums about set-points, as worksheets."""

from __future__ import annotations

from attrs import evolve

from core.air_sheets import HUMIDITY_INPUT, SURFACE_ACTIVITY, TEMPERATURE_INPUT
from core.chamber.cold_piece import cold_piece
from core.chamber.programmes import BY_KEY, PROCESSES, PROGRAMMES, Programme
from core.chamber.rates import FILM
from core.chamber.setpoints import equal_humidity, equal_temperature, set_point
from core.quantities import LENGTH, RELATIVE_HUMIDITY, TEMPERATURE
from core.refusals import Missing
from core.sentence import Sentence
from core.usual import THAWING_C
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

ACTIVITY_INPUT = evolve(SURFACE_ACTIVITY, key="activity")
NO_PROGRAMME = "none"


def _titled(programme: Programme) -> Sentence:
    """With its process, for a list of them all."""
    told = {"process": Sentence(PROCESSES[programme.process]), "programme": Sentence(programme.name)}
    return Sentence("{process}: {programme}", told)


def _set_point(temperature: float, humidity: float, activity: float, programme: str) -> tuple[Figure, ...]:
    return set_point(temperature, humidity, activity, BY_KEY.get(programme))


def _equal_drying(
    temperature: float,
    humidity: float,
    activity: float,
    other_temperature: float | None = None,
    other_humidity: float | None = None,
) -> tuple[Figure, ...]:
    if other_temperature is None and other_humidity is None:
        raise Missing("other_temperature", "Enter the other temperature, or the other humidity, or both.")
    known = (temperature, humidity, activity)
    there = () if other_temperature is None else (equal_humidity(*known, other_temperature),)
    at_that = () if other_humidity is None else (equal_temperature(*known, other_humidity),)
    return (*there, *at_that, set_point(*known)[0])


def _cold_piece(
    piece: float, temperature: float, humidity: float, thickness: float, film: float | None = None
) -> tuple[Figure, ...]:
    return cold_piece(piece, temperature, humidity, thickness, film)


SET_POINT = Worksheet(
    name="set-point",
    title="Set-point",
    stage="chamber",
    question="How hard does this set-point dry, which surface sweats in it, and what is printed for this stage?",
    inputs=(
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        ACTIVITY_INPUT,
        Choice(
            "programme",
            "Programme to compare with",
            {NO_PROGRAMME: "none", **{each.key: _titled(each) for each in PROGRAMMES}},
            default=NO_PROGRAMME,
        ),
    ),
    compute=_set_point,
    example={"temperature": "12.8 °C", "humidity": "80 %", "programme": "dry-practice"},
)

EQUAL_DRYING = Worksheet(
    name="equal-drying",
    title="Equal drying",
    stage="chamber",
    question="Which other set-point dries just as hard as this one?",
    inputs=(
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        ACTIVITY_INPUT,
        Number("other_temperature", "The other temperature", TEMPERATURE, -20.0, 60.0, optional=True),
        Number("other_humidity", "The other humidity", RELATIVE_HUMIDITY, 0.0, 1.0, optional=True),
    ),
    compute=_equal_drying,
    example={"temperature": "12 °C", "humidity": "80 %", "other_temperature": "15 °C", "other_humidity": "85 %"},
)

COLD_PIECE = Worksheet(
    name="cold-piece",
    title="A cold piece in warm air",
    stage="chamber",
    question="Will a cold piece be wet when it comes into warm air, and for how long?",
    inputs=(
        Number("piece", "Temperature of the piece", TEMPERATURE, -1.0, 60.0, default=2.0, usual=THAWING_C),
        TEMPERATURE_INPUT,
        HUMIDITY_INPUT,
        Number("thickness", "Thickness of the piece", LENGTH, 0.01, 0.3),
        Number(
            "film",
            "Film coefficient",
            FILM,
            2.0,
            60.0,
            optional=True,
            help="Empty means 12 W/(m² K), with 6 to 35 as its range: still to brisk air.",
        ),
    ),
    compute=_cold_piece,
    example={"piece": "2 °C", "temperature": "22 °C", "humidity": "90 %", "thickness": "60 mm"},
)

WORKSHEETS = (SET_POINT, EQUAL_DRYING, COLD_PIECE)
