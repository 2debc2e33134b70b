"""The chamber's air, read off whatever hangs in it."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import frozen

from core.air import moist_air
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.facts.fields import boxes
from core.daybook.set_points import allowed_k
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.sentence import Rounded, Sentence
from core.working import Figure
from web.entry_forms import EntryForm, Subject, declare
from web.forms import ReadWith
from web.instruments import corrected_of
from web.journal import book
from web.screens.chamber.blueprint import of_chamber, screen
from web.screens.chamber.proofs.pictures import Picture, outline
from web.visitor import now

THESE_DAYS, MOST_READ = timedelta(days=7), 50


def _air(fact: AirRead) -> Sentence:
    temperature = Rounded(Amount(fact.temperature_c, TEMPERATURE))
    if fact.humidity is None:
        return Sentence("Air: {temperature}", {"temperature": temperature})
    humidity = Rounded(Amount(fact.humidity, RELATIVE_HUMIDITY))
    return Sentence("Air: {temperature}, {humidity}", {"temperature": temperature, "humidity": humidity})


def air_figures(fact: AirRead, subject: Subject | None = None) -> tuple[Figure, ...]:
    return () if fact.humidity is None else moist_air(fact.temperature_c, fact.humidity)


AIR = declare(
    EntryForm(
        AirRead,
        "Read the chamber's air",
        (
            *boxes(AirRead),
            ReadWith("instrument", "Read on", ("hygrometer", "thermometer")),
        ),
        _air,
        figures=air_figures,
        save="Save the reading",
        correct="Correct this reading",
    )
)


@screen.route("/chamber/air", methods=["GET", "POST"])
def read_air():
    return of_chamber(AIR)


@frozen
class Course:
    """The temperature as it was read these days, drawn within what is set. since: the first of its readings."""

    picture: Picture
    count: int
    since: datetime


def course(chosen: SetPointsChosen) -> Course | None:
    """None where there are not two readings to draw a line through."""
    lines = book().recent(CHAMBER, AirRead, MOST_READ)
    recent = [line for line in lines if now() - line.entry.happened_at < THESE_DAYS]
    read = [(line.entry.happened_at, corrected_of(line).fact) for line in recent]
    points = [(at.timestamp(), fact.temperature_c) for at, fact in read if isinstance(fact, AirRead)]
    if len(points) < 2 or points[-1][0] == points[0][0]:
        return None
    off = allowed_k(chosen)
    words = Sentence("The temperature read these days, within what is set")
    return Course(
        outline(points, (chosen.temperature_c - off, chosen.temperature_c + off), words), len(points), read[0][0]
    )
