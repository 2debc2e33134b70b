"""A logger's file of the fermentation: brought, laid out as those of a proof run are, and one probe of it taken."""

from __future__ import annotations

from typing import Any

import attrs
from flask import url_for

from core.chamber.logs import Log
from core.daybook.batch import Batch
from core.daybook.facts.ferment import MOST_POINTS, FermentLogTaken
from core.ferment.logged import summarised
from core.quantities import COUNT, HOURS, TEMPERATURE, Amount
from core.sentence import Message, Rounded, Sentence
from core.worksheet import Choice
from web import taken_log
from web.entry_forms import EntryForm, Subject, Values, declare, path_of
from web.files import keep_file
from web.forms import Form, Input, ReadWith
from web.instruments import ANOTHER, offer
from web.journal import record
from web.lookup import find_batch
from web.screens.chamber.proofs.drafts import Draft, find_draft
from web.screens.ferment.blueprint import screen
from web.screens.ferment.reading import PLACES
from web.visitor import reader

_PLACE = Choice("place", "The probe was", PLACES, default="chamber")
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


COUNTS: Message = "Its temperatures count for the degree-hours."


@screen.route("/batches/<batch_id>/logger", methods=["GET", "POST"])
def bring_log(batch_id: str):
    batch = find_batch(batch_id)

    def then(draft: Draft) -> str:
        return url_for("ferment.take_log", batch_id=batch.id, draft_id=draft.id)

    return taken_log.bring(
        then,
        Sentence(COUNTS),
        above=batch.name,
        back=path_of(batch),
        to=url_for("ferment.bring_log", batch_id=batch.id),
    )


@screen.route("/batches/<batch_id>/logger/<draft_id>", methods=["GET", "POST"])
def take_log(batch_id: str, draft_id: str):
    batch, draft = find_batch(batch_id), find_draft(draft_id)

    def written(data: bytes, log: Log, form: Form) -> str:
        return _take(batch, data, log, form)

    return taken_log.take(
        draft,
        _inputs,
        written,
        above=batch.name,
        back=path_of(batch),
        to=url_for("ferment.take_log", batch_id=batch.id, draft_id=draft.id),
        another=url_for("ferment.bring_log", batch_id=batch.id),
        start={"place": "chamber", "thermometer": ANOTHER},
    )


def _inputs(log: Log) -> tuple[Input, ...]:
    return taken_log.inputs(log, _PLACE, offer(_READ_ON, FermentLogTaken, None))


def _take(batch: Batch, data: bytes, log: Log, form: Form) -> str:
    values: dict[str, Any] = form.read(reader())
    chosen = taken_log.chosen_probe(log, values)
    began = taken_log.began(log, chosen.times_s[0], values)
    made = summarised(chosen.times_s, chosen.temperatures_c, MOST_POINTS)
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
