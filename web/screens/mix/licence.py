"""More than the limit may go in only where a rule or a licence allows it, and the batch says which and who decided."""

from __future__ import annotations

from flask import url_for

from core.daybook.facts import LicensedException
from core.quantities import Manner
from web.entry_forms import EntryForm, Subject, declare, path_of, write
from web.finding import find_batch
from web.forms import Words
from web.screens.mix.blueprint import screen


def _say(fact: LicensedException, how: Manner) -> str:
    return f"Licensed exception: {fact.why} ({fact.authority}; decided by {fact.decided_by})"


EXCEPTION = declare(
    EntryForm(
        LicensedException,
        "A licensed exception",
        (
            Words("why", "Reason", 300, example="a trial under a veterinary office"),
            Words("authority", "Rule or licence that allows it", 200, example="the county office's letter 12"),
            Words("decided_by", "Name of who decided", 60, example="Ana"),
        ),
        _say,
        save="Record the exception",
        hint="It lets this batch's cure pass its limit, and stands beside the figure wherever that is shown. Nothing "
        "here makes it safe: that is for who licensed it.",
    )
)


@screen.route("/batches/<batch_id>/exception", methods=["GET", "POST"])
def licensed_exception(batch_id: str):
    batch = find_batch(batch_id)
    back = url_for("mix.weigh_cure", batch_id=batch.id)
    return write(EXCEPTION, Subject(batch), about=batch.id, back=lambda _: back, back_to=path_of(batch))
