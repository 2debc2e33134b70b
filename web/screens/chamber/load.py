"""The chamber's load: what hangs, how much water it gives off, and whether the chamber takes that out again."""

from __future__ import annotations

from typing import Any

import attrs
from attrs import frozen
from flask import render_template, request, url_for

from core.air_sheets import HUMIDITY_INPUT, TEMPERATURE_INPUT
from core.chamber.moisture import FASTEST, FIRST_DAYS, humidifier_need, moisture_load
from core.chamber.moisture_sheets import CHAMBER, HANGING, HUMIDIFIER_NEED, LOSS, PEAK
from core.chamber.rates import ROOM, WATER_A_DAY
from core.daybook.batch import open_batches
from core.daybook.facts.chamber import CHAMBER as THE_CHAMBER
from core.daybook.facts.chamber import AirRead, CapacityStated, SetPointsChosen
from core.daybook.facts.fields import boxes
from core.daybook.load import USUAL_LATER, Burden, Hanging, Word, burden, capacity, hanging, stated_capacity
from core.daybook.set_points import is_moister, set_points
from core.quantities import COUNT, LOSS_RATE, MASS, RELATIVE_HUMIDITY, TEMPERATURE, Amount, Reader
from core.quantities import LOSS as SHARE
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.sentence import Message, Rounded, Sentence, Value, said
from core.units import DAY_S
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, write
from web.forms import Form, from_request, suggested, typed
from web.instruments import corrected_of
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.visitor import now, reader

_NEED = {each.key: each for each in HUMIDIFIER_NEED.inputs}
INPUTS = (
    HANGING,
    LOSS,
    PEAK,
    TEMPERATURE_INPUT,
    HUMIDITY_INPUT,
    CHAMBER,
    _NEED["room_temperature"],
    _NEED["room_humidity"],
    attrs.evolve(
        _NEED["changes"], optional=True, help="Shows what the humidifier adds when nothing hangs: try 5 and 50."
    ),
)
START_C, START_HUMIDITY = 12.0, 0.80
BURDEN_WORDS: dict[Word, Message] = {
    "carries it": "Carries it",
    "near its limit": "Near its limit",
    "overloaded": "Overloaded",
    "more than it has shown": "More than it has shown",
    "not known": "Not known",
}
"""The word at the head of its sentence."""


@frozen
class Answer:
    """The word with its reason, and the figures under it."""

    burden: Burden
    figures: tuple[Figure, ...]


def _answer(form: Form, how: Reader) -> Answer:
    """Raises Refused or Refusal."""
    values: Any = form.read(how)
    if values["changes"] is not None and values["chamber"] is None:
        raise Missing("chamber", "Enter the air in the chamber too, or leave the changes of air empty.")
    given_off = moisture_load(
        values["hanging"], values["loss"], values["temperature"], values["peak"], values["chamber"]
    )
    told = burden(values["hanging"], values["loss"], capacity(book()), _moister(), values["peak"])
    empty: tuple[Figure, ...] = ()
    if values["changes"] is not None:
        empty = humidifier_need(
            values["chamber"],
            values["temperature"],
            values["humidity"],
            values["room_temperature"],
            values["room_humidity"],
            values["changes"],
        )
        empty = tuple(attrs.evolve(each, name=_with_nothing_hanging(each)) for each in empty)
    return Answer(told, (*given_off, *told.figures, *empty))


def _with_nothing_hanging(figure: Figure) -> Sentence:
    return Sentence("With nothing hanging: {figure}", {"figure": said(figure.name)})


@screen.route("/chamber/load", methods=["GET", "POST"])
def load():
    """Begun with what the book knows; the maker may put other figures in."""
    how, typing = reader(), "figures" in request.args
    hangs = hanging(open_batches(book()), now())
    if typing or request.method == "POST":
        form = from_request(INPUTS, request.args if typing else request.form, "")
    else:
        form = Form("", INPUTS, _start(hangs, how))
    try:
        answer = _answer(form, how)
    except (Refused, Refusal) as refused:
        answer, form = None, form.refused(refused)
    if typing:
        return render_template("chamber/load_answer.html", answer=answer, burden_words=BURDEN_WORDS)
    shown = Form("", INPUTS, form.texts) if request.method == "GET" else form
    page = render_template(
        "chamber/load.html",
        form=shown,
        answer=answer,
        hanging=_hanging_said(hangs),
        burden_words=BURDEN_WORDS,
        known=capacity(book()),
        stated=stated_capacity(book()),
    )
    return page, 422 if shown.refusals else 200


def _hanging_said(hangs: Hanging | None) -> Sentence:
    if hangs is None:
        return Sentence("Nothing is recorded as hanging.")
    told: dict[str, Value] = {
        "mass": Rounded(Amount(hangs.mass_kg, MASS)),
        "count": Amount(hangs.pieces, COUNT),
        "weighed": Amount(hangs.weighed, COUNT),
        "first": Amount(FIRST_DAYS * DAY_S, SHARE),
        "later": Amount(USUAL_LATER * DAY_S, SHARE),
    }
    if hangs.weighed == hangs.pieces:
        return Sentence(
            "{mass} in {count} piece are recorded as hanging; the loss of {weighed} is known from weighings.",
            told,
            plural="{mass} in {count} pieces are recorded as hanging; the loss of {weighed} is known from weighings.",
        )
    return Sentence(
        "{mass} in {count} piece are recorded as hanging; the loss of {weighed} is known from weighings, the others "
        "are counted at {first} a day at first and {later} later (from memory).",
        told,
        plural="{mass} in {count} pieces are recorded as hanging; the loss of {weighed} is known from weighings, the "
        "others are counted at {first} a day at first and {later} later (from memory).",
    )


def _start(hangs: Hanging | None, how: Reader) -> dict[str, str]:
    temperature_c, humidity = _air()
    stated = stated_capacity(book())
    texts = {
        "temperature": suggested(temperature_c, TEMPERATURE, how),
        "humidity": suggested(humidity, RELATIVE_HUMIDITY, how),
        "room_temperature": typed(20.0, TEMPERATURE, how),
        "room_humidity": typed(0.5, RELATIVE_HUMIDITY, how),
        "chamber": typed(stated.chamber_m3 if stated else None, ROOM, how),
        "loss": typed(0.01 / DAY_S, LOSS_RATE, how),
    }
    if hangs is None:
        return texts
    loss = min(max(hangs.loss_per_s, LOSS.low), FASTEST)
    return {**texts, "hanging": typed(round(hangs.mass_kg, 3), MASS, how), "loss": _two_digits(loss, how)}


def _two_digits(loss_per_s: float, how: Reader) -> str:
    """A loss a day is known no finer than a hundredth of a per-cent."""
    return typed(max(round(loss_per_s * DAY_S, 4), 0.0001) / DAY_S, LOSS_RATE, how)


def _air() -> tuple[float, float]:
    """The air that is set; where none is, the air that was read; else what is usual."""
    line = set_points(book())
    if line is not None and isinstance(line.fact, SetPointsChosen):
        return line.fact.temperature_c, line.fact.humidity
    read = _read()
    if read is not None and read.humidity is not None:
        return read.temperature_c, read.humidity
    return START_C, START_HUMIDITY


def _read() -> AirRead | None:
    line = book().latest(THE_CHAMBER, AirRead)
    read = None if line is None else corrected_of(line).fact
    return read if isinstance(read, AirRead) else None


def _moister() -> bool | None:
    line, read = set_points(book()), _read()
    if line is None or read is None or not isinstance(line.fact, SetPointsChosen):
        return None
    return is_moister(line.fact, read)


def in_short() -> tuple[Hanging, Burden] | None:
    """What the Chamber page says of the load in a line; None where nothing hangs."""
    hangs = hanging(open_batches(book()), now())
    if hangs is None:
        return None
    try:
        return hangs, burden(hangs.mass_kg, max(hangs.loss_per_s, LOSS.low), capacity(book()), _moister())
    except OutOfRange:  # more than any chamber holds
        return None


def _stated(values: Values, subject: Subject) -> CapacityStated:
    if values["rated_m3_s"] is None and values["chamber_m3"] is None:
        raise Missing("rated_m3_s", "Enter what is stated for the chamber, or how much air it holds.")
    return CapacityStated(**values)


def _capacity_said(fact: CapacityStated) -> Sentence:
    rated, holds = fact.rated_m3_s, fact.chamber_m3
    told = {
        "rated": Rounded(Amount(rated or 0.0, WATER_A_DAY)),
        "holds": Rounded(Amount(holds or 0.0, ROOM)),
    }
    if holds is None:
        return Sentence("The chamber takes out {rated}, as stated", told)
    if rated is None:
        return Sentence("The chamber holds {holds} of air, as stated", told)
    return Sentence("The chamber takes out {rated} and holds {holds} of air, as stated", told)


STATED = declare(
    EntryForm(
        CapacityStated,
        "What is stated for the chamber",
        boxes(CapacityStated),
        _capacity_said,
        fact=_stated,
        correct="Correct what is stated",
    )
)


@screen.route("/chamber/capacity", methods=["GET", "POST"])
def state_capacity():
    stated = stated_capacity(book())
    back = url_for("chamber.load")
    start = STATED.texts_of(stated, reader()) if stated else None
    return write(STATED, Subject(), about=THE_CHAMBER, back=back, back_to=back, start=start)
