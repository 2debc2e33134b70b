"""A logger's file of the fermentation: brought, laid out as those of a proof run are, and one probe of it taken."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

import attrs
from flask import redirect, render_template, request, url_for

from core.chamber.logs import Log, read
from core.chamber.logs.naming import called
from core.chamber.series import Series
from core.daybook.batch import Batch
from core.daybook.facts.ferment import MOST_POINTS, FermentLogTaken
from core.ferment.logged import summarised
from core.quantities import COUNT, HOURS, TEMPERATURE, Amount
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.sentence import Rounded, Sentence
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, with_saved
from web.files import keep_file
from web.forms import LATEST, Form, Input, Moment, ReadWith, from_request
from web.instruments import ANOTHER, offer
from web.journal import fresh_id, record, sent_token
from web.lookup import find_batch
from web.screens.chamber.proofs.drafts import Draft, begin_draft, find_draft
from web.screens.ferment.blueprint import screen
from web.screens.ferment.reading import PLACES
from web.visitor import now, reader

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_PLACE = Choice("place", "The probe was", PLACES, default="chamber")
_START = Moment("happened", "When the log began", "This file only counts the time since its start.", by_hand=True)
_READ_ON = ReadWith("thermometer", "Logged with", ("thermometer", "hygrometer"))


def _say(fact: FermentLogTaken) -> Sentence:
    count = {"count": Amount(fact.readings, COUNT)}
    inside = Sentence("{count} reading in the meat", count, plural="{count} readings in the meat")
    readings = inside if fact.place == "core" else Sentence("{count} reading", count, plural="{count} readings")
    told = {
        "probe": fact.probe,
        "readings": readings,
        "time": Rounded(Amount(fact.lasts_s, HOURS)),
        "highest": Rounded(Amount(fact.highest_c, TEMPERATURE)),
    }
    if fact.probe:
        return Sentence("Log taken {probe}: {readings} over {time}, {highest} at most", told)
    return Sentence("Log taken: {readings} over {time}, {highest} at most", told)


def _corrected(values: Values, subject: Subject) -> FermentLogTaken:
    assert isinstance(subject.was, FermentLogTaken)
    return attrs.evolve(subject.was, **values)


TAKEN = declare(
    EntryForm(
        FermentLogTaken,
        "Log of the fermentation",
        (_PLACE, _READ_ON),
        _say,
        fact=_corrected,
        texts=lambda fact, how: {"place": fact.place, "thermometer": fact.thermometer or ANOTHER},
        hint="Another time puts the whole log there; another file is another entry.",
        correct="Correct this log",
    )
)


@screen.route("/batches/<batch_id>/logger", methods=["GET", "POST"])
def bring_log(batch_id: str):
    batch = find_batch(batch_id)
    if request.method == "GET":
        return render_template("ferment/bring.html", batch=batch, refusal=None)
    try:
        draft = _bring(batch)
    except Refusal as refusal:
        return render_template("ferment/bring.html", batch=batch, refusal=refusal), 422
    return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=0), 303)


def _bring(batch: Batch) -> Draft:
    file = request.files.get("file")
    if file is None or not file.filename:
        raise Missing("file", "Choose the text file that a logger saved.")
    draft = begin_draft()
    draft.take(file.filename, file.stream.read())
    draft.then = url_for("ferment.take_log", batch_id=batch.id, draft_id=draft.id)
    return draft


@screen.route("/batches/<batch_id>/logger/<draft_id>", methods=["GET", "POST"])
def take_log(batch_id: str, draft_id: str):
    batch, draft = find_batch(batch_id), find_draft(draft_id)
    if not draft.files:
        return redirect(url_for("ferment.bring_log", batch_id=batch.id), 303)
    if draft.first_unsettled is not None:
        return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=draft.first_unsettled), 303)
    file = draft.files[0]
    try:
        log = read(file.data, file.layout)
    except (Refusal, Refused) as refused:  # what the layout does not show: a clock of twelve hours that says no half
        return _drawn(batch, draft, None, Form("", ()).refused(refused)), 422
    inputs = _inputs(log)
    if request.method == "GET":
        return _drawn(batch, draft, log, Form(fresh_id(), inputs, {"place": "chamber", "thermometer": ANOTHER}))
    form = from_request(inputs, request.form, sent_token())
    try:
        written = _take(batch, file.data, log, form)
    except (Refusal, Refused) as refused:
        return _drawn(batch, draft, log, form.refused(refused)), 422
    return redirect(with_saved(path_of(batch), written), 303)


def _drawn(batch: Batch, draft: Draft, log: Log | None, form: Form) -> str:
    return render_template(
        "ferment/take.html",
        batch=batch,
        draft=draft,
        file=draft.files[0],
        log=log,
        skipped=_skipped_said(len(log.skipped)) if log else None,
        form=form,
    )


def _skipped_said(skipped: int) -> Sentence:
    return Sentence(
        "{count} line or value was not taken",
        {"count": Amount(skipped, COUNT)},
        plural="{count} lines or values were not taken",
    )


def _inputs(log: Log) -> tuple[Input, ...]:
    probes = {each.probe: called(each.probe) for each in _with_warmth(log)}
    offered = offer(_READ_ON, FermentLogTaken, None)
    return (
        *((Choice("probe", "Probe", probes),) if len(probes) > 1 else ()),
        _PLACE,
        *((offered,) if offered is not None else ()),
        *((_START,) if log.clock == "start" else ()),
    )


def _with_warmth(log: Log) -> list[Series]:
    return [each for each in log.series if any(warm_c == warm_c for warm_c in each.temperatures_c)]


def _take(batch: Batch, data: bytes, log: Log, form: Form) -> str:
    values: dict[str, Any] = form.read(reader())
    series = _with_warmth(log)
    if not series:
        raise OutOfRange("", "No temperature could be read in this file.")
    chosen = next(each for each in series if each.probe == values.get("probe", series[0].probe))
    temperatures = zip(chosen.times_s, chosen.temperatures_c, strict=True)
    rows = [(at_s, warm_c) for at_s, warm_c in temperatures if warm_c == warm_c]
    began = _began(log, rows[0][0], values)
    if began > now() + LATEST:
        raise OutOfRange("", "This log begins later than now: check the logger's clock.")
    made = summarised([at_s for at_s, _ in rows], [warm_c for _, warm_c in rows], MOST_POINTS)
    fact = FermentLogTaken(
        file=keep_file(data),
        place=values["place"],
        times_s=made.times_s,
        temperatures_c=made.temperatures_c,
        highest_c=made.highest_c,
        lasts_s=made.lasts_s,
        readings=made.readings,
        probe=chosen.probe,
        thermometer=values.get("thermometer"),
    )
    return record(fact, about=batch.id, happened_at=began, token=form.token)


def _began(log: Log, first_s: float, values: dict[str, Any]) -> datetime:
    here = now().tzinfo
    if log.clock == "start":
        return values["happened"] + timedelta(seconds=first_s)
    moment = EPOCH + timedelta(seconds=first_s)
    return moment.astimezone(here) if log.clock == "utc" else moment.replace(tzinfo=here)
