"""A logger's file of the fermentation: brought, its open questions answered, one probe taken."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Literal

from attrs import define
from flask import abort, current_app, redirect, render_template, request, url_for

from core.chamber.logs import Layout, Log, answer, guess, read
from core.chamber.series import Series
from core.daybook.batch import Batch
from core.daybook.facts.ferment import MOST_POINTS, FermentLogTaken
from core.ferment.logged import summarised
from core.quantities import HOURS, TEMPERATURE, Amount, Manner
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.worksheet import Choice
from web.entry_forms import EntryForm, Values, declare, path_of, with_saved
from web.files import keep_file
from web.finding import find_batch
from web.forms import LATEST, Form, Input, Moment, from_request
from web.journal import fresh_id, record, sent_token
from web.screens.ferment.blueprint import screen
from web.screens.ferment.reading import PLACES
from web.visitor import manner, now

MOST_WAITING = 3
LARGEST = 20 * 2**20
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_PLACE = Choice("place", "The probe was", PLACES, default="chamber")
_START = Moment("happened", "When the log began", "This file only counts the time since its start.")


def _say(fact: FermentLogTaken, how: Manner) -> str:
    lasted, highest = Amount(fact.lasts_s, HOURS).show(how), Amount(fact.highest_c, TEMPERATURE).show(how)
    inside = " in the meat" if fact.place == "core" else ""
    probe = f" {fact.probe}" if fact.probe else ""
    return f"Log taken{probe}: {fact.readings} readings{inside} over {lasted}, {highest} at most"


def _corrected(values: Values, subject: object) -> FermentLogTaken:
    was = getattr(subject, "was", None)
    assert isinstance(was, FermentLogTaken)
    return FermentLogTaken(
        was.file,
        values["place"],
        was.times_s,
        was.temperatures_c,
        was.highest_c,
        was.lasts_s,
        was.readings,
        was.probe,
    )


TAKEN = declare(
    EntryForm(
        FermentLogTaken,
        "Log of the fermentation",
        (_PLACE,),
        _say,
        fact=_corrected,
        texts=lambda fact, how: {"place": fact.place},
        hint="Another time puts the whole log there; another file is another entry.",
    )
)


@define
class Waiting:
    """A file brought but not yet taken: in memory, for its open questions."""

    batch_id: str
    name: str
    data: bytes
    layout: Layout
    log: Log | None = None


def _waiting() -> dict[str, Waiting]:
    return current_app.extensions.setdefault("ferment_logs", {})


@screen.route("/batches/<batch_id>/logger", methods=["GET", "POST"])
def bring_log(batch_id: str):
    batch = find_batch(batch_id)
    if request.method == "GET":
        return render_template("ferment/bring.html", batch=batch, refusal=None)
    try:
        key = _bring(batch)
    except Refusal as refusal:
        return render_template("ferment/bring.html", batch=batch, refusal=refusal), 422
    return redirect(url_for("ferment.take_log", batch_id=batch.id, key=key), 303)


def _bring(batch: Batch) -> str:
    file = request.files.get("file")
    if file is None or not file.filename:
        raise Missing("file", "Choose the text file that a logger saved.")
    data = file.stream.read(LARGEST + 1)
    if len(data) > LARGEST:
        raise OutOfRange("file", f"This file is larger than {LARGEST // 2**20} MB: no log of a few days is.")
    kept = _waiting()
    while len(kept) >= MOST_WAITING:
        del kept[next(iter(kept))]
    key = fresh_id()
    kept[key] = Waiting(batch.id, file.filename[-80:], data, guess(data))
    return key


@screen.route("/batches/<batch_id>/logger/<key>", methods=["GET", "POST"])
def take_log(batch_id: str, key: str):
    batch = find_batch(batch_id)
    waiting = _waiting().get(key)
    if waiting is None or waiting.batch_id != batch.id:
        abort(404, "A file that was not taken is let go when the daybook is closed.")
    refusals: dict[str, str] = {}
    try:
        if request.method == "POST":
            _answer(waiting)
        log = _read_if_settled(waiting)
        if request.method == "POST" and log is not None and "place" in request.form:
            return _take(batch, key, log)
    except Refusal as refusal:
        refusals = {refusal.field: refusal.sentence}
    except Refused as refused:
        refusals = {each.field: each.sentence for each in refused.refusals}
    page = _draw(batch, key, waiting, refusals)
    return (page, 422) if refusals else page


def _answer(waiting: Waiting) -> None:
    for question in waiting.layout.questions:
        chosen = request.form.get(f"q-{question.about}", "")
        if chosen:
            waiting.layout = answer(waiting.data, waiting.layout, question.about, chosen)


def _read_if_settled(waiting: Waiting) -> Log | None:
    if waiting.log is None and not waiting.layout.questions:
        waiting.log = read(waiting.data, waiting.layout)
    return waiting.log


def _inputs(log: Log) -> tuple[Input, ...]:
    probes = {each.probe: each.probe or "the only one" for each in _with_warmth(log)}
    return (
        *((Choice("probe", "Probe", probes),) if len(probes) > 1 else ()),
        _PLACE,
        *((_START,) if log.clock == "start" else ()),
    )


def _with_warmth(log: Log) -> list[Series]:
    return [each for each in log.series if any(warm == warm for warm in each.temperatures_c)]


def _draw(batch: Batch, key: str, waiting: Waiting, refusals: dict[str, str]) -> str:
    log = waiting.log
    form = None
    if log is not None:
        form = from_request(_inputs(log), request.form, fresh_id())
        texts = {"place": "chamber", **form.texts}
        form = Form(form.token, form.inputs, texts, refusals)
    return render_template(
        "ferment/take.html",
        batch=batch,
        key=key,
        waiting=waiting,
        layout=waiting.layout,
        log=log,
        form=form,
        refusals=refusals,
    )


def _take(batch: Batch, key: str, log: Log):
    form = from_request(_inputs(log), request.form, sent_token())
    values = form.read(manner())
    series = _with_warmth(log)
    if not series:
        raise OutOfRange("file", "No temperature could be read in this file.")
    chosen = next((each for each in series if each.probe == values.get("probe", series[0].probe)), series[0])
    rows = [
        (at_s, warm_c) for at_s, warm_c in zip(chosen.times_s, chosen.temperatures_c, strict=True) if warm_c == warm_c
    ]
    made = summarised([at_s for at_s, _ in rows], [warm_c for _, warm_c in rows], MOST_POINTS)
    place: Literal["core", "chamber"] = "core" if values["place"] == "core" else "chamber"
    began = _began(log, rows[0][0], values)
    if began > now() + LATEST:
        raise OutOfRange("file", "This log begins later than now: check the logger's clock.")
    fact = FermentLogTaken(
        keep_file(_waiting()[key].data),
        place,
        made.times_s,
        made.temperatures_c,
        made.highest_c,
        made.lasts_s,
        made.readings,
        chosen.probe,
    )
    written = record(fact, about=batch.id, happened_at=began, token=form.token)
    return redirect(with_saved(path_of(batch), written), 303)


def _began(log: Log, first_s: float, values: dict[str, object]) -> datetime:
    here = now().tzinfo
    if log.clock == "start":
        began = values["happened"]
        assert isinstance(began, datetime)
        return began + timedelta(seconds=first_s)
    moment = EPOCH + timedelta(seconds=first_s)
    return moment.astimezone(here) if log.clock == "utc" else moment.replace(tzinfo=here)
