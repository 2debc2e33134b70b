"""A logger's file of the chamber while pieces hang: its air goes into their forecast, its warmth into their record."""

from __future__ import annotations

from typing import Any

import attrs
from flask import url_for

from core.chamber.logs import Log
from core.chamber.stretches import stretched
from core.daybook.facts.air_log import MOST_STRETCHES, AirLogTaken
from core.daybook.facts.chamber import CHAMBER
from core.quantities import COUNT, HOURS, TEMPERATURE, Amount
from core.sentence import Message, Rounded, Sentence
from web import taken_log
from web.entry_forms import EntryForm, Subject, Values, declare
from web.files import keep_file
from web.forms import Form, Input, ReadWith
from web.instruments import ANOTHER, offer
from web.journal import record
from web.saying import say
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import Draft, find_draft
from web.visitor import reader

_READ_ON = ReadWith("instrument", "Logged with", ("hygrometer", "thermometer"))
COUNTS: Message = "Its air counts for the forecast of what hangs, and for how warm each piece was."


def _say(fact: AirLogTaken) -> Sentence:
    count = Sentence("{count} reading", {"count": Amount(fact.readings, COUNT)}, plural="{count} readings")
    told = {
        "probe": fact.probe,
        "readings": count,
        "time": Rounded(Amount(fact.ends_s, HOURS)),
        "highest": Rounded(Amount(max(fact.highest_c), TEMPERATURE)),
    }
    if fact.probe:
        return Sentence("Air logged {probe}: {readings} over {time}, {highest} at most", told)
    return Sentence("Air logged: {readings} over {time}, {highest} at most", told)


def _corrected(values: Values, subject: Subject) -> AirLogTaken:
    assert isinstance(subject.was, AirLogTaken)
    return attrs.evolve(subject.was, **values)


TAKEN = declare(
    EntryForm(
        AirLogTaken,
        "Log of the chamber’s air",
        (_READ_ON,),
        _say,
        fact=_corrected,
        texts=lambda fact, how: {"instrument": fact.instrument or ANOTHER},
        hint="Another time puts the whole log there; another file is another entry.",
        correct="Correct this log",
    )
)


@screen.route("/chamber/air/logger", methods=["GET", "POST"])
def bring_air_log():
    def then(draft: Draft) -> str:
        return url_for("chamber.take_air_log", draft_id=draft.id)

    return taken_log.bring(then, Sentence(COUNTS), to=url_for("chamber.bring_air_log"), **_belongs())


@screen.route("/chamber/air/logger/<draft_id>", methods=["GET", "POST"])
def take_air_log(draft_id: str):
    return taken_log.take(
        find_draft(draft_id),
        _inputs,
        _take,
        to=url_for("chamber.take_air_log", draft_id=draft_id),
        another=url_for("chamber.bring_air_log"),
        start={"instrument": ANOTHER},
        **_belongs(),
    )


def _belongs() -> dict[str, Any]:
    return {"above": say("Chamber"), "back": url_for("chamber.page")}


def _inputs(log: Log) -> tuple[Input, ...]:
    return taken_log.inputs(log, offer(_READ_ON, AirLogTaken, None))


def _take(data: bytes, log: Log, form: Form) -> str:
    values: dict[str, Any] = form.read(reader())
    chosen = taken_log.chosen_probe(log, values)
    began = taken_log.began(log, chosen.times_s[0], values)
    made = stretched(chosen, MOST_STRETCHES)
    fact = AirLogTaken(
        file=keep_file(data),
        stretch_s=made.stretch_s,
        begins_s=made.begins_s,
        temperatures_c=made.temperatures_c,
        highest_c=made.highest_c,
        known_s=made.known_s,
        readings=len(chosen),
        humidities=made.humidities,
        probe=chosen.probe,
        instrument=values.get("instrument"),
    )
    return record(fact, about=CHAMBER, happened_at=began, token=form.token)
