"""A logger's file that an entry is made of: brought, laid out as for a proof run, and one probe of it taken."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from typing import Any

from flask import redirect, render_template, request, url_for

from core.chamber.logs import Log, read
from core.chamber.logs.naming import called
from core.chamber.series import Series
from core.quantities import COUNT, Amount
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.sentence import Sentence
from core.worksheet import Choice
from web.entry_forms import with_saved
from web.forms import LATEST, Form, Input, Moment, from_request
from web.journal import fresh_id, sent_token
from web.screens.chamber.proofs.drafts import Draft, begin_draft
from web.visitor import now

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_START = Moment("happened", "When the log began", "This file only counts the time since its start.", by_hand=True)


def bring(then: Callable[[Draft], str], counts_for: Sentence, *, above: str, back: str, to: str):
    """The page that asks for the file. then: the path to go to once it is laid out. counts_for: what it is good for.
    above, back: the page it belongs to, by its name and path. to: where the file is sent."""
    told: dict[str, Any] = {"counts_for": counts_for, "above": above, "back": back, "to": to}
    if request.method == "GET":
        return render_template("logs/bring.html", refusal=None, **told)
    try:
        draft = _brought()
    except Refusal as refusal:
        return render_template("logs/bring.html", refusal=refusal, **told), 422
    draft.then = then(draft)
    return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=0), 303)


def _brought() -> Draft:
    file = request.files.get("file")
    if file is None or not file.filename:
        raise Missing("file", "Choose the text file that a logger saved.")
    draft = begin_draft()
    draft.take(file.filename, file.stream.read())
    return draft


def take(
    draft: Draft,
    asked: Callable[[Log], tuple[Input, ...]],
    written: Callable[[bytes, Log, Form], str],
    *,
    above: str,
    back: str,
    to: str,
    another: str,
    start: Mapping[str, str],
):
    """The page that takes one probe of it. asked: its inputs. written: asks for the entry, and may refuse. another:
    where another file is brought. start: the texts of a fresh form."""
    if not draft.files:
        return redirect(another, 303)
    if draft.first_unsettled is not None:
        return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=draft.first_unsettled), 303)
    file = draft.files[0]
    told: dict[str, Any] = {"file": file, "above": above, "back": back, "to": to, "another": another}
    try:
        log = read(file.data, file.layout)
    except (Refusal, Refused) as refused:  # what the layout does not show: a clock of twelve hours that says no half
        return _drawn(None, Form("", ()).refused(refused), told), 422
    if request.method == "GET":
        return _drawn(log, Form(fresh_id(), asked(log), dict(start)), told)
    form = from_request(asked(log), request.form, sent_token())
    try:
        return redirect(with_saved(back, written(file.data, log, form)), 303)
    except (Refusal, Refused) as refused:
        return _drawn(log, form.refused(refused), told), 422


def _drawn(log: Log | None, form: Form, told: Mapping[str, Any]) -> str:
    skipped = _skipped_said(len(log.skipped)) if log else None
    return render_template("logs/take.html", log=log, form=form, skipped=skipped, **told)


def _skipped_said(skipped: int) -> Sentence:
    return Sentence(
        "{count} line or value was not taken",
        {"count": Amount(skipped, COUNT)},
        plural="{count} lines or values were not taken",
    )


def inputs(log: Log, *others: Input | None) -> tuple[Input, ...]:
    """Which probe, what else is asked, and when it began where its clock does not say."""
    probes = {each.probe: called(each.probe) for each in _with_warmth(log)}
    return (
        *((Choice("probe", "Probe", probes),) if len(probes) > 1 else ()),
        *(each for each in others if each is not None),
        *((_START,) if log.clock == "start" else ()),
    )


def chosen_probe(log: Log, values: Mapping[str, Any]) -> Series:
    """Its readings that have a temperature. Raises OutOfRange where there is none."""
    series = _with_warmth(log)
    if not series:
        raise OutOfRange("", "No temperature could be read in this file.")
    return next(each for each in series if each.probe == values.get("probe", series[0].probe)).warm()


def began(log: Log, first_s: float, values: Mapping[str, Any]) -> datetime:
    """first_s: its first reading, on its own clock. Raises OutOfRange where that is to come."""
    at = _moment(log, first_s, values)
    if at > now() + LATEST:
        raise OutOfRange("", "This log begins later than now: check the logger's clock.")
    return at


def _moment(log: Log, first_s: float, values: Mapping[str, Any]) -> datetime:
    here = now().tzinfo
    if log.clock == "start":
        return values["happened"] + timedelta(seconds=first_s)
    moment = EPOCH + timedelta(seconds=first_s)
    return moment.astimezone(here) if log.clock == "utc" else moment.replace(tzinfo=here)


def _with_warmth(log: Log) -> list[Series]:
    return [each for each in log.series if any(warm_c == warm_c for warm_c in each.temperatures_c)]
