"""A batch of which nothing was hung, and nothing will be: given up, with what became of its meat."""

from __future__ import annotations

from flask import Blueprint, abort

from core.daybook.facts.batch import BatchEnded, Went
from core.sentence import Message, Sentence, said
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, declare, path_of, write
from web.forms import Words
from web.lookup import find_batch

screen = Blueprint("giving_up", __name__)

WENT: dict[Went, Message] = {"thrown-away": "thrown away", "used-otherwise": "used another way"}


def _say(fact: BatchEnded) -> Sentence:
    told = {"went": said(WENT[fact.went])}
    return (
        Sentence("Given up, {went}: {note}", {**told, "note": fact.note})
        if fact.note
        else Sentence("Given up, {went}", told)
    )


ENDED = declare(
    EntryForm(
        BatchEnded,
        "Give the batch up",
        (Choice("went", "Its meat", {**WENT}), Words("note", "Note", 120, optional=True)),
        _say,
        save="Give it up",
        correct="Correct how it was given up",
        hint="It goes to the finished ones and wants nothing more. Cooking does not mend meat "
        "with too much curing salt, with a sign of spoilage, or that stayed too long warm: throw that away.",
    )
)


@screen.route("/batches/<batch_id>/give-up", methods=["GET", "POST"])
def give_up(batch_id: str):
    batch = find_batch(batch_id)
    if batch.pieces:  # each of them is taken down by itself
        abort(404)
    return write(ENDED, Subject(batch), about=batch.id, back=path_of(batch), back_to=path_of(batch))
