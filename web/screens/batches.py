"""Batches: the list, a new one, and a batch's whole life on one page."""

from __future__ import annotations

from collections import Counter

import attrs
from flask import Blueprint, render_template, url_for

from core.daybook.batch import Batch, open_and_finished
from core.daybook.curing import known_cure
from core.daybook.evidence import verdicts
from core.daybook.facts.batch import BatchStarted
from core.daybook.facts.fields import boxes
from core.daybook.formulas import formula_of
from core.daybook.sheet import sheet_of
from core.meat import STYLES, Style
from core.mix.measures import GOING_IN
from core.quantities import COUNT, LOSS, MASS, PH, Amount
from core.refusals import Refusal
from core.sentence import Message, Rounded, Said, Sentence, listed
from core.working import Figure
from core.worksheet import Choice
from web import charts
from web.entry_forms import EntryForm, Subject, Values, declare, say, write
from web.forms import Words
from web.journal import book
from web.lookup import find_batch
from web.screens.ferment.panel import panel
from web.screens.ferment.panel import summary as ferment_summary
from web.screens.mix.cure import batch_figures
from web.screens.mix.salt_panel import salt_panel, salt_summary
from web.visitor import now, reader

screen = Blueprint("batches", __name__)

BEGUN: dict[Style, Message] = {
    "fermented": "Fermented sausage, {meat} of meat, begun {moment}.",
    "slow": "Slow sausage, not meant to sour to pH 5.3, {meat} of meat, begun {moment}.",
    "whole-muscle": "Whole muscle, {meat} of meat, begun {moment}.",
}
_EACH: dict[str, Message] = {"ready": "{count} ready", "hold": "{count} hold", "discard": "{count} discard"}


def _say(fact: BatchStarted) -> Sentence:
    told = {"name": fact.name, "meat": Rounded(Amount(fact.meat_kg, MASS))}
    return Sentence("Batch begun: {name}, {meat} of meat", told)


def _begun(values: Values, subject: Subject) -> BatchStarted:
    """Corrected, it stays the batch of its formula."""
    return attrs.evolve(subject.was, **values) if isinstance(subject.was, BatchStarted) else BatchStarted(**values)


START = declare(
    EntryForm(
        BatchStarted,
        "Start a batch",
        (
            Words("name", "Name", example="Juniper coarse", help="What you will call it in the cellar."),
            Choice("style", "Kind", STYLES, default="fermented"),
            *boxes(BatchStarted),
        ),
        _say,
        fact=_begun,
        save="Start the batch",
        correct="Correct this batch",
    )
)


@screen.get("/batches")
def all_of_them():
    """One line a batch, those that want work first."""
    open_, finished = open_and_finished(book())
    summaries = {batch.id: _summary(batch) for batch in open_ + finished}
    return render_template("batches/all.html", open=open_, finished=finished, summaries=summaries)


@screen.route("/batches/new", methods=["GET", "POST"])
def new():
    return write(
        START,
        Subject(),
        about=None,
        back=lambda written: url_for("batches.one", batch_id=written),
        back_to=url_for("batches.all_of_them"),
    )


@screen.get("/batches/<batch_id>")
def one(batch_id: str):
    batch, how = find_batch(batch_id), reader()
    return render_template(
        "batches/one.html",
        batch=batch,
        sheet=sheet_of(batch),
        formula_id=formula_of(book(), batch.start.formula),
        verdicts=verdicts(batch, now()),
        cure=_cure(batch),
        mixed=_ppm(batch),
        ferment=panel(batch, now()),
        salt=salt_panel(batch, now()),
        log=[(line, say(line, how)) for line in reversed(batch.lines)],
        begun=BEGUN,
        tags={line.id: piece.tag for piece in batch.pieces for line in piece.lines},
        loss_chart=charts.losses(batch),
    )


def _cure(batch: Batch) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What the cure makes; or what is wrong with it, where the meat's weight was corrected after it was weighed."""
    if batch.cure is None:
        return (), None
    try:
        return batch_figures(batch), None
    except Refusal as refusal:
        return (), refusal


def _summary(batch: Batch) -> Said:
    """The one figure that matters at the batch's stage, and the verdicts where there are some."""
    if batch.stage == "mix":
        if batch.cure is None:
            return Sentence("cure not weighed")
        return salt_summary(batch, now()) or ""
    if fermenting := ferment_summary(batch, now()):
        return fermenting
    if batch.stage == "ferment":
        return _ppm(batch) if batch.last_ph is None else Sentence("pH {ph}", {"ph": Amount(batch.last_ph, PH)})
    losses = [piece.loss for piece in batch.hanging if piece.loss is not None]
    if not losses:
        return _ppm(batch)
    words = Counter(verdict.word for verdict in verdicts(batch, now()).values())
    told = [Sentence(_EACH[word], {"count": Amount(count, COUNT)}, plural=_EACH[word]) for word, count in words.items()]
    lost = Rounded(Amount(sum(losses) / len(losses), LOSS))
    return Sentence("lost {loss}; {verdicts}", {"loss": lost, "verdicts": listed(told)})


def _ppm(batch: Batch) -> Said:
    cure = known_cure(batch)
    if cure is None:
        return ""
    told = {"nitrite": Rounded(Amount(cure.nitrite_ppm * 1e-6, GOING_IN))}
    if cure.over_by_licence:
        return Sentence("{nitrite} nitrite, over the limit by an exception", told)
    return Sentence("{nitrite} nitrite", told)
