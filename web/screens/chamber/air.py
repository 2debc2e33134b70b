"""The chamber's air, read off whatever hangs in it."""

from __future__ import annotations

from core.air import moist_air
from core.daybook.facts.chamber import AirRead
from core.daybook.facts.fields import boxes
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.sentence import Rounded, Sentence
from core.working import Figure
from web.entry_forms import EntryForm, Subject, declare
from web.forms import ReadWith
from web.screens.chamber.blueprint import of_chamber, screen


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
