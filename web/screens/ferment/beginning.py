"""The clock of the degree-hours starts: by which rule, and what the chamber was set to."""

from __future__ import annotations

from flask import redirect, request, url_for

from core.daybook.facts.ferment import FermentationBegun
from core.daybook.facts.fields import boxes
from core.ferment.rules import LOCAL_RULES, RULES
from core.quantities import TEMPERATURE, Amount
from core.sentence import Rounded, Sentence, Value
from web.entry_forms import EntryForm, Subject, declare, path_of, write
from web.journal import book
from web.lookup import find_batch
from web.screens.ferment.blueprint import screen


def _say(fact: FermentationBegun) -> Sentence:
    canadian = fact.rule == "canada"
    started = Sentence("Degree-hours started, Canadian rule" if canadian else "Degree-hours started, US rule")
    if fact.planned_c is None:
        return started
    planned = Rounded(Amount(fact.planned_c, TEMPERATURE))
    return Sentence("{started}, chamber at {planned}", {"started": started, "planned": planned})


HINTED: dict[str, Value] = {"warm": Rounded(Amount(RULES["us"].base_c, TEMPERATURE)), "local": Sentence(LOCAL_RULES)}

START_CLOCK = declare(
    EntryForm(
        FermentationBegun,
        "Start the degree-hours",
        boxes(FermentationBegun),
        _say,
        save="Start the degree-hours",
        hint=Sentence("Set the time to when the meat was at {warm}. {local}", HINTED),
        correct="Correct the start of the degree-hours",
    )
)


@screen.route("/batches/<batch_id>/ferment", methods=["GET", "POST"])
def begin(batch_id: str):
    """A batch has one clock: started again, it corrects the first start."""
    batch = find_batch(batch_id)
    begun_line = batch.ferment.begun_line_id
    if begun_line is not None and request.method == "GET" and "figures" not in request.args:
        return redirect(url_for("entries.correct", entry_id=begun_line), 303)
    return write(
        START_CLOCK,
        Subject(batch),
        about=batch.id,
        back=path_of(batch),
        back_to=path_of(batch),
        corrects=book().line(begun_line) if begun_line else None,
    )
