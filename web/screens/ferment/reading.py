"""Fermenting: pH and temperature of the meat, read until it is acid."""

from __future__ import annotations

from flask import url_for

from core.daybook.dated import MeatReading
from core.daybook.facts.batch import Reading
from core.daybook.facts.fields import boxes
from core.quantities import PH, TEMPERATURE, Amount, Reader
from core.refusals import Missing
from core.sentence import Message, Rounded, Sentence, Value
from web.days import ago
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.forms import OptionalChoice, ReadWith, typed
from web.instruments import ANOTHER
from web.lookup import find_batch
from web.screens.ferment.blueprint import screen

PLACES: dict[str, Message] = {"chamber": "in the chamber, beside the meat", "core": "in the meat"}


def _fact(values: Values, subject: Subject) -> Reading:
    if values["ph"] is None and values["temperature_c"] is None:
        raise Missing("ph", "Enter the pH, the temperature, or both.")
    was = subject.was.place if isinstance(subject.was, Reading) else "chamber"
    if values["temperature_c"] is None or (was is None and values["place"] == "chamber"):
        values |= {"place": None}  # an older entry's None means the chamber: corrected, it stays what it was
    return Reading(**values)


def _texts(fact: Reading, how: Reader) -> dict[str, str]:
    return {
        "ph": typed(fact.ph, PH, how),
        "temperature_c": typed(fact.temperature_c, TEMPERATURE, how),
        "place": fact.place or "chamber",
        "meter": fact.meter or ANOTHER,
        "thermometer": fact.thermometer or ANOTHER,
    }


def _say(fact: Reading) -> Sentence:
    read = {
        "ph": None if fact.ph is None else Rounded(Amount(fact.ph, PH)),
        "temperature": None if fact.temperature_c is None else Rounded(Amount(fact.temperature_c, TEMPERATURE)),
    }
    told = {name: value for name, value in read.items() if value is not None}
    if fact.temperature_c is None:
        return Sentence("Read: pH {ph}", told)
    if fact.place == "core":
        return Sentence(
            "Read: {temperature} in the meat" if fact.ph is None else "Read: pH {ph} at {temperature} in the meat", told
        )
    return Sentence("Read: {temperature}" if fact.ph is None else "Read: pH {ph} at {temperature}", told)


READING = declare(
    EntryForm(
        Reading,
        "Read pH and temperature",
        (
            *boxes(Reading),
            OptionalChoice(  # a form drawn by an older version asked for none
                "place",
                "Temperature read",
                PLACES,
                default="chamber",
                help="Degree-hours count the chamber; where the meat is warmer, they count the meat.",
            ),
            ReadWith("meter", "pH meter", ("ph-meter",)),
            ReadWith("thermometer", "Thermometer", ("thermometer", "hygrometer")),
        ),
        _say,
        fact=_fact,
        texts=_texts,
        save="Save the reading",
        correct="Correct this reading",
    )
)


def _last_said(last: MeatReading) -> Sentence:
    read: dict[str, Value] = {"ago": ago(last.at)}
    if last.ph is not None:
        read["ph"] = Rounded(Amount(last.ph, PH))
    if last.temperature_c is not None:
        read["temperature"] = Rounded(Amount(last.temperature_c, TEMPERATURE))
    told = Sentence("Last: pH {ph} at {temperature}, {ago}", read)
    if last.temperature_c is None:
        told = Sentence("Last: pH {ph}, {ago}", read)
    elif last.ph is None:
        told = Sentence("Last: {temperature}, {ago}", read)
    for note in last.corrected.notes:
        told = Sentence("{told}, {note}", {"told": told, "note": note})
    return told


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
        last=None if last is None else _last_said(last),
        template="ferment/reading.html",
    )
