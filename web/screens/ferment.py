"""Fermenting: pH and temperature of the meat, read until it is acid."""

from __future__ import annotations

from flask import Blueprint, url_for

from core.daybook.facts import Reading
from core.quantities import PH, TEMPERATURE, Amount, Manner
from core.refusals import Missing
from core.worksheet import Number
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.finding import find_batch
from web.forms import ReadWith

screen = Blueprint("ferment", __name__)


def _fact(values: Values, subject: Subject) -> Reading:
    if values["ph"] is None and values["temperature_c"] is None:
        raise Missing("ph", "Enter the pH, the temperature, or both.")
    return Reading(**values)


def _say(fact: Reading, how: Manner) -> str:
    parts = []
    if fact.ph is not None:
        parts.append(f"pH {Amount(fact.ph, PH).show(how)}")
    if fact.temperature_c is not None:
        parts.append(Amount(fact.temperature_c, TEMPERATURE).show(how))
    return "Read: " + " at ".join(parts)


READING = declare(
    EntryForm(
        Reading,
        "Read pH and temperature",
        (
            Number("ph", "pH", PH, 3, 8, optional=True, help="Of the meat, not the room."),
            Number("temperature_c", "Temperature", TEMPERATURE, -10, 60, optional=True, help="Beside the meat."),
            ReadWith("meter", "pH meter", ("ph-meter",)),
            ReadWith("thermometer", "Thermometer", ("thermometer", "hygrometer")),
        ),
        _say,
        fact=_fact,
        save="Save the reading",
    )
)


@screen.route("/batches/<batch_id>/reading", methods=["GET", "POST"])
def read_meat(batch_id: str):
    batch = find_batch(batch_id)
    last = batch.readings[-1] if batch.readings else None
    return write(
        READING,
        Subject(batch),
        about=batch.id,
        back=path_of(batch),
        back_to=url_for("batches.one", batch_id=batch_id),
        last=last,
        template="ferment/reading.html",
    )
