"""What is made for paper: a label for each piece of a batch, and the record of the whole book."""

from __future__ import annotations

from collections.abc import Iterable

from attrs import frozen
from flask import Blueprint, render_template

from core.daybook.batch import Batch, Piece, batches
from core.daybook.book import Line
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import PieceTakenDown
from core.release.readiness import how_to_keep, judge
from core.sentence import Message, Sentence
from web.entry_forms import say
from web.journal import book
from web.lookup import find_batch
from web.visitor import now, reader

screen = Blueprint("printed", __name__)


@frozen
class Label:
    """word: of a piece that is down the verdict it was taken down with. then: how it is kept, or what is to be done."""

    piece: Piece
    word: str
    then: Sentence
    down: Line | None


@screen.get("/batches/<batch_id>/labels")
def labels(batch_id: str):
    batch = find_batch(batch_id)
    return render_template("printed/labels.html", batch=batch, labels=[_label(batch, each) for each in batch.pieces])


def _label(batch: Batch, piece: Piece) -> Label:
    down = next((line for line in reversed(piece.lines) if isinstance(line.fact, PieceTakenDown)), None)
    moment = now() if down is None else down.entry.happened_at
    evidence = evidence_for(batch, piece, moment)
    verdict = judge(evidence)
    word = verdict.word if piece.taken_down is None else piece.taken_down.verdict
    if word == "ready":
        return Label(piece, word, how_to_keep(evidence), down)
    if piece.taken_down is None:
        return Label(piece, word, verdict.next_step, down)
    gone: Message = "Thrown away." if word == "discard" else "Taken down before it was ready: not to be eaten."
    return Label(piece, word, Sentence(gone), down)


@screen.get("/yours/record")
def record():
    """Every line as it stands: of each batch with its pieces, then all else."""
    every = batches(book())
    told = {line.id for batch in every for line in batch.lines}
    others = [each for each in map(book().line, _beginnings()) if each.id not in told]
    return render_template(
        "printed/record.html",
        batches=[(batch, _said(batch.lines)) for batch in every],
        tags={line.id: piece.tag for batch in every for piece in batch.pieces for line in piece.lines},
        others=_said(sorted(others, key=lambda line: line.order)),
    )


def _beginnings() -> Iterable[str]:
    return (record["id"] for record in book().records() if record.get("corrects") is None)


def _said(lines: Iterable[Line]) -> list[tuple[Line, str]]:
    return [(line, say(line, reader())) for line in lines]
