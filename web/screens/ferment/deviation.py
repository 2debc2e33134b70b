"""A batch that missed its degree-hours: who decided what, and what was tested."""

from __future__ import annotations

from flask import redirect, request, url_for

from core.daybook.facts.ferment import DeviationDecided
from core.ferment.outcome import ASK, TOXIN
from core.refusals import Missing
from core.sentence import Message, Sentence, said
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.forms import Words
from web.journal import book
from web.lookup import find_batch
from web.screens.ferment.blueprint import screen

RESULTS: dict[str, Message] = {
    "not-tested": "not tested",
    "clean": "tested, no staphylococcal toxin found",
    "found": "tested, and something was found",
}
DECISIONS: dict[str, Message] = {"keep": "keep it and continue", "discard": "throw it away"}


def _fact(values: Values, subject: Subject) -> DeviationDecided:
    if values["result"] != "not-tested" and not values["test"]:
        raise Missing("test", "Enter what was tested, for example staphylococcal toxin, two pieces.")
    return DeviationDecided(**values)


def _say(fact: DeviationDecided) -> Sentence:
    outcome = {"decision": said(DECISIONS[fact.decision]), "result": said(RESULTS[fact.result])}
    told = Sentence("Decided by {name}: {decision}, {result}", {"name": fact.decided_by, **outcome})
    if fact.test:
        told = Sentence("{told} ({test})", {"told": told, "test": fact.test})
    return Sentence("{told}; {note}", {"told": told, "note": fact.note}) if fact.note else told


DEVIATION = declare(
    EntryForm(
        DeviationDecided,
        "What was decided",
        (
            Choice("result", "Test", RESULTS, default="not-tested"),
            Words("test", "What was tested, and by whom", 120, optional=True, example="toxin, two pieces"),
            Choice("decision", "Decision", DECISIONS),
            Words("decided_by", "Who answers for it", example="a food-safety authority"),
            Words("note", "Note", 200, optional=True),
        ),
        _say,
        fact=_fact,
        save="Save the decision",
        hint="It stays on hold until a test that found nothing and the decision to keep it are both noted.",
        correct="Correct this decision",
    )
)


@screen.route("/batches/<batch_id>/deviation", methods=["GET", "POST"])
def decide(batch_id: str):
    """Decided again, it corrects the first decision: both stay in the record."""
    batch = find_batch(batch_id)
    decided_line = batch.ferment.decided_line_id
    if decided_line is not None and request.method == "GET" and "figures" not in request.args:
        return redirect(url_for("entries.correct", entry_id=decided_line), 303)
    return write(
        DEVIATION,
        Subject(batch),
        about=batch.id,
        back=path_of(batch),
        back_to=path_of(batch),
        corrects=book().line(decided_line) if decided_line else None,
        template="ferment/deviation.html",
        told=(ASK, TOXIN),
    )
