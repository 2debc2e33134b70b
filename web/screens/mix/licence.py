"""More than the limit may go in only where a rule or a licence allows it, and the batch says which and who decided."""

from __future__ import annotations

from flask import url_for

from core.daybook.facts.cure import LicensedException
from core.daybook.facts.fields import boxes
from core.mix.licence import LIFTED
from core.quantities import PARTS_PER_MILLION, Amount
from core.sentence import Rounded, Sentence
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, declare, path_of, write
from web.forms import Words
from web.lookup import find_batch
from web.screens.mix.blueprint import screen


def _say(fact: LicensedException) -> Sentence:
    told = Sentence("Licensed exception, no figure")
    if fact.most is not None:
        most = Rounded(Amount(fact.most, PARTS_PER_MILLION))
        told = Sentence("Licensed exception, up to {most}", {"most": most})
    if fact.rule:
        told = Sentence("{told}, by {rule}", {"told": told, "rule": fact.rule})
    words = {"told": told, "why": fact.why, "authority": fact.authority, "name": fact.decided_by}
    return Sentence("{told}: {why} ({authority}; decided by {name})", words)


EXCEPTION = declare(
    EntryForm(
        LicensedException,
        "A licensed exception",
        (
            Words("why", "Reason", 300, example="a trial under a veterinary office"),
            Words("authority", "Who allows it", 200, example="the county office, letter 12"),
            Words(
                "rule", "Rule it stands on", 300, example="food act, section 9, trials", help="Its title and section."
            ),
            Choice("substance", "Of what", LIFTED),
            *boxes(LicensedException),
            Words("decided_by", "Name of who decided", 60, example="Ana"),
        ),
        _say,
        save="Record the exception",
        hint="It lets this batch's cure pass its limit up to its own figure, but never above the highest figures in 9 "
        "CFR 424.21(c), and stands beside the verdict wherever that is shown. Nothing here makes it safe: that is for "
        "who licensed it.",
        correct="Correct this exception",
    )
)


@screen.route("/batches/<batch_id>/exception", methods=["GET", "POST"])
def licensed_exception(batch_id: str):
    batch = find_batch(batch_id)
    back = url_for("mix.weigh_cure", batch_id=batch.id)
    return write(EXCEPTION, Subject(batch), about=batch.id, back=lambda _: back, back_to=path_of(batch))
