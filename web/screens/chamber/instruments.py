"""The instruments: put on the list, checked, recalibrated, retired; and what their checks do to later readings."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

from attrs import evolve, frozen
from flask import abort, render_template, url_for

from core.chamber.checks import NO_CORRECTION, Correction
from core.daybook.corrections.compensation import buffers_c, stands_at_c
from core.daybook.corrections.figures import NAMES, correction_in_words
from core.daybook.facts import kind_of
from core.daybook.facts.fields import boxes
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    InstrumentAdded,
    InstrumentRecalibrated,
    InstrumentRetired,
    SaltChecked,
)
from core.daybook.instrument_checks import CHECKED_BY, Measured
from core.daybook.instruments import CHECK_EVERY, KIND_WORDS, Checked, Instrument
from core.quantities import DAYS, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount, Reader
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, Value, in_a_row, said
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, Values, declare, noted, say, write
from web.forms import Words, typed
from web.instruments import shelf
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.screens.chamber.instrument_checks import WAYS, Way
from web.screens.chamber.instrument_words import KIND_TITLES, OUTCOMES, shown
from web.visitor import now, reader

LONG_AGO = timedelta(days=2)
"""A reading over one salt older than this does not start a check over two."""

_OFTEN = [
    Sentence("{kind} {days}", {"kind": said(KIND_WORDS[kind]), "days": Amount(often.total_seconds(), DAYS)})
    for kind, often in CHECK_EVERY.items()
]
EMPTY_MEANS = Sentence("Empty means: {often} (common practice; no published source).", {"often": in_a_row(_OFTEN)})


def _added(values: Values, subject: Subject) -> InstrumentAdded:
    name = values["name"].casefold()
    known = (each for each in shelf().in_use() if subject.instrument is None or each.id != subject.instrument.id)
    if any(each.name.casefold() == name for each in known):
        taken = {"name": values["name"]}
        raise OutOfRange("name", Sentence("There is an instrument {name} already. Give this one another name.", taken))
    if values["tolerance_k"] is not None and values["kind"] not in ("thermometer", "hygrometer"):
        raise OutOfRange("tolerance_k", "Leave this empty: it reads no temperature that is checked.")
    if values["tolerance_humidity"] is not None and values["kind"] != "hygrometer":
        raise OutOfRange("tolerance_humidity", "Leave this empty: only a hygrometer reads humidity.")
    if values["stands_at_c"] is not None and values["kind"] != "ph-meter":
        raise OutOfRange("stands_at_c", "Leave this empty: only a pH meter reads pH.")
    return InstrumentAdded(**values)


def _say_added(fact: InstrumentAdded) -> Sentence:
    told: dict[str, Value] = {"name": fact.name, "kind": said(KIND_WORDS[fact.kind])}
    if fact.stands_at_c is None:
        return Sentence("Instrument added: {name}, {kind}", told)
    told["temperature"] = Rounded(Amount(fact.stands_at_c, TEMPERATURE))
    return Sentence("Instrument added: {name}, {kind}, set to {temperature}", told)


KINDS: dict[str, Message] = {**KIND_WORDS, "hygrometer": "hygrometer, logger’s probe"}
ADD = declare(
    EntryForm(
        InstrumentAdded,
        "Add an instrument",
        (
            Words("name", "Name", 40, example="Larder", help="What you call it, or where it hangs."),
            Choice("kind", "What it is", KINDS),
            *(evolve(each, help=EMPTY_MEANS) for each in boxes(InstrumentAdded, "check_every_s")),
            *boxes(InstrumentAdded, "tolerance_k", "tolerance_humidity"),
            Words("probe", "Probe’s name in the logger’s files", optional=True, help="So that its log finds it."),
            *boxes(InstrumentAdded, "stands_at_c"),
        ),
        _say_added,
        fact=_added,
        texts=lambda fact, how: {
            "name": fact.name,
            "kind": fact.kind,
            "check_every_s": typed(fact.check_every_s, DAYS, how),
            "tolerance_k": typed(fact.tolerance_k, TEMPERATURE_DIFFERENCE, how),
            "tolerance_humidity": typed(fact.tolerance_humidity, RELATIVE_HUMIDITY, how),
            "probe": fact.probe,
            "stands_at_c": typed(fact.stands_at_c, TEMPERATURE, how),
        },
        save="Add it",
        correct="Correct this instrument",
    )
)


RECALIBRATED = declare(
    EntryForm(
        InstrumentRecalibrated,
        "It was recalibrated",
        (Words("note", "What was done", 120, optional=True, help="For example: calibrated, or a new electrode."),),
        lambda fact: noted("I adjusted it", fact.note),
        save="It was recalibrated",
        hint="From this moment on the old correction is no longer applied. Check it again.",
    )
)
RETIRE = declare(
    EntryForm(
        InstrumentRetired,
        "Retire it",
        (Words("note", "Why", 120, optional=True),),
        lambda fact: noted("Retired", fact.note),
        save="Retire it",
        hint="What was read on it stays as it is. No form offers it any more.",
    )
)


@frozen
class InForce:
    """What the checks say of one thing it measures, now, and what a pH's temperature does to it after that."""

    name: str
    words: Sentence
    compensated: Sentence | None
    check: Checked | None
    corrects: bool


def find_instrument(instrument_id: str) -> Instrument:
    return shelf().find(instrument_id) or abort(404)


def _in_force(instrument: Instrument) -> list[InForce]:
    """In words; what the instrument is not for is left out until it has been checked."""
    found: list[InForce] = []
    for measured in instrument.measures:
        check, correction = instrument.in_force(measured, now()), instrument.correction(measured, now())
        if check is not None or measured == instrument.measures[0]:
            words, then = _words_of(measured, check, correction), _compensated(instrument, check)
            found.append(InForce(NAMES[measured], words, then, check, correction is not None))
    return found


def _words_of(measured: Measured, check: Checked | None, correction: Correction | None) -> Sentence:
    if check is None:
        return Sentence("No valid check: readings are taken as they are.")
    if check.failed:
        return Sentence("It failed its check: its readings are not corrected, and prove nothing.")
    if correction is None and measured == "ph":
        return Sentence("Its electrode was checked in millivolts: the pH it shows is taken as it is.")
    if correction is None:
        return Sentence(NO_CORRECTION)
    return correction_in_words(measured, correction)


def _compensated(instrument: Instrument, check: Checked | None) -> Sentence | None:
    stands = stands_at_c(instrument, check)
    if stands is None or (check is not None and check.failed):
        return None
    told = {"stands": Amount(stands, TEMPERATURE)}
    if buffers_c(check) is None:
        return Sentence("It is set to {stands}: each pH is then compensated for the temperature read with it.", told)
    return Sentence(
        "It is set to {stands}, as warm as its buffers were: each pH is then compensated for the temperature read with "
        "it.",
        told,
    )


def ways_for(instrument: Instrument) -> dict[str, Way]:
    """By the last part of the address, the likeliest first."""
    order = CHECKED_BY[instrument.kind]
    found = {key: way for key, way in WAYS.items() if way.form.kind in order}
    return dict(sorted(found.items(), key=lambda item: order.index(item[1].form.kind)))


@screen.get("/chamber/instruments")
def instruments():
    every = shelf().all()
    return render_template(
        "chamber/instruments.html",
        in_use=[each for each in every if each.retired_at is None],
        retired=[each for each in every if each.retired_at is not None],
        outcomes=OUTCOMES,
    )


@screen.route("/chamber/instruments/add", methods=["GET", "POST"])
def add_instrument():
    return write(
        ADD,
        Subject(),
        about=None,
        back=lambda written: url_for("chamber.instrument", instrument_id=written),
        back_to=url_for("chamber.instruments"),
    )


@screen.get("/chamber/instruments/<instrument_id>")
def instrument(instrument_id: str):
    found = find_instrument(instrument_id)
    return render_template(
        "chamber/instrument.html",
        instrument=found,
        kind=KIND_TITLES[found.kind],
        measured=NAMES[found.measures[0]],
        outcomes=OUTCOMES,
        checks=[shown(each) for each in found.checks],
        in_force=_in_force(found),
        ways=ways_for(found),
        log=[(line, say(line, reader())) for line in reversed(found.lines)],
    )


@screen.route("/chamber/instruments/<instrument_id>/check/<way>", methods=["GET", "POST"])
def check_instrument(instrument_id: str, way: str):
    found = find_instrument(instrument_id)
    chosen = ways_for(found).get(way) or abort(404)
    start = _start(found, chosen, reader())
    return _about(found, chosen.form, start, template="chamber/check.html", way=chosen, key=way)


@screen.route("/chamber/instruments/<instrument_id>/recalibrate", methods=["GET", "POST"])
def recalibrate(instrument_id: str):
    return _about(find_instrument(instrument_id), RECALIBRATED)


@screen.route("/chamber/instruments/<instrument_id>/retire", methods=["GET", "POST"])
def retire_instrument(instrument_id: str):
    return _about(find_instrument(instrument_id), RETIRE)


def _about(found: Instrument, declared: EntryForm, start: dict[str, str] | None = None, **context: Any):
    back = url_for("chamber.instrument", instrument_id=found.id)
    return write(declared, Subject(instrument=found), about=found.id, back=back, back_to=back, start=start, **context)


def _start(found: Instrument, way: Way, how: Reader) -> dict[str, str]:
    """What does not change from check to check."""
    last = next((check.line.fact for check in found.checks if isinstance(check.line.fact, way.form.kind)), None)
    texts = {key: text for key, text in way.form.texts_of(last, how).items() if key in way.kept} if last else {}
    if way.form.kind is BoilingPointChecked and last is None:
        return texts | _height_of_the_place(how)
    return texts | _first_of_two_salts(found, how) if way is WAYS["salts"] else texts


def _first_of_two_salts(found: Instrument, how: Reader) -> dict[str, str]:
    """Each salt takes an hour: what was read over the first is saved as a check of its own, and begins this one."""
    newest = found.checks[0] if found.checks else None
    if newest is None or now() - newest.at > LONG_AGO or not isinstance(newest.line.fact, SaltChecked):
        return {}
    return WAYS["salt"].form.texts_of(newest.line.fact, how)


def _height_of_the_place(how: Reader) -> dict[str, str]:
    """The kitchen stands where it stood when another thermometer was checked."""
    earlier = (line.fact for line in reversed(book().of_kind(kind_of(BoilingPointChecked))))
    last = next((fact for fact in earlier if isinstance(fact, BoilingPointChecked)), None)
    return {} if last is None else {"altitude_m": WAYS["boiling"].form.texts_of(last, how)["altitude_m"]}
