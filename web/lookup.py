"""From an address to the thing it names, or the page that says there is none."""

from __future__ import annotations

from flask import abort

from core.daybook.batch import Batch, fold
from core.daybook.facts.batch import PieceHung
from core.daybook.piece import Piece
from web.journal import book


def find_batch(batch_id: str) -> Batch:
    batch = fold(book(), batch_id)
    return batch if batch is not None else abort(404)


def find_piece(piece_id: str) -> tuple[Batch, Piece]:
    if piece_id not in book():
        abort(404)
    line = book().line(piece_id)
    if line.id != piece_id or not isinstance(line.fact, PieceHung):
        abort(404)
    batch = find_batch(line.entry.about)
    return batch, batch.piece(piece_id)
