"""Batches: the list, a new one, and a batch's whole life on one page."""

from __future__ import annotations

import attrs
from flask import Blueprint, render_template, request, url_for

from core.daybook.batch import Batch, fold, open_and_finished
from core.daybook.evidence import verdicts
from core.daybook.facts.batch import BatchStarted
from core.daybook.facts.fields import boxes
from core.daybook.formulas import formula_of
from core.daybook.sheet import sheet_of
from core.meat import STYLES, Style
from core.quantities import MASS, Amount
from core.refusals import Refusal
from core.sentence import Message, Rounded, Sentence
from core.working import Figure
from core.worksheet import Choice
from web import drying_charts
from web.entry_forms import EntryForm, Subject, Values, declare, say, write
from web.forms import Words
from web.journal import book
from web.lookup import find_batch
from web.screens.ferment.panel import panel
from web.screens.mix.cure import batch_figures
from web.screens.mix.salt_panel import salt_panel
from web.screens.stages import is_unsalted, steps, summary, waited_for
from web.visitor import now, reader

screen = Blueprint("batches", __name__)

BEGUN: dict[Style, Message] = {
    "fermented": "fermented sausage, {meat}, begun {day}",
    "slow": "slow sausage, not meant to sour to pH 5.3, {meat}, begun {day}",
    "whole-muscle": "whole muscle, {meat}, begun {day}",
}


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
            Choice("style", "Kind", STYLES),
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
    summaries = {batch.id: summary(batch, verdicts(batch, now())) for batch in open_ + finished}
    return render_template("batches/all.html", open=open_, finished=finished, summaries=summaries)


@screen.route("/batches/new", methods=["GET", "POST"])
def new():
    return write(
        START,
        Subject(),
        about=None,
        back=lambda written: url_for("batches.one", batch_id=written),
        back_to=url_for("batches.all_of_them"),
        start=_like(request.args.get("like", "")),
    )


def _like(batch_id: str) -> dict[str, str]:
    """The form as it was filled for an earlier batch; a batch of a formula is made from the formula again."""
    batch = fold(book(), batch_id)
    return {} if batch is None else START.texts_of(batch.start, reader())


@screen.get("/batches/<batch_id>")
def one(batch_id: str):
    batch, how = find_batch(batch_id), reader()
    judged, ferment = verdicts(batch, now()), panel(batch, now())
    return render_template(
        "batches/one.html",
        batch=batch,
        steps=steps(batch, judged, ferment),
        sheet=sheet_of(batch),
        formula_id=formula_of(book(), batch.start.formula),
        verdicts=judged,
        waited_for=waited_for(batch, judged),
        cure=_cure(batch),
        ferment=ferment,
        salt=salt_panel(batch, now()),
        unsalted=is_unsalted(batch),
        log=[(line, say(line, how)) for line in reversed(batch.lines)],
        begun=BEGUN,
        given_up=batch.given_up and say(batch.given_up, how),
        tags={line.id: piece.tag for piece in batch.pieces for line in piece.lines},
        loss_chart=drying_charts.losses(batch),
    )


def _cure(batch: Batch) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What the cure makes; or what is wrong with it, where the meat's weight was corrected after it was weighed."""
    if batch.cure is None:
        return (), None
    try:
        return batch_figures(batch), None
    except Refusal as refusal:
        return (), refusal
