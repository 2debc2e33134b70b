"""What is to come of the pieces that hang: each one's day, and what it should weigh now."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.book import Book
from core.daybook.drying import drying_of, drying_until
from core.daybook.piece import Piece
from core.dry.doubt import Expected, expected
from core.dry.forecast import Forecast

A_ROUND = timedelta(hours=12)
"""All pieces of a batch are weighed within it, as a rule; no published source."""


@frozen
class Ahead:
    """A hanging piece's forecast, counted from when its batch was hung."""

    piece: Piece
    hung_at: datetime
    forecast: Forecast

    def day(self, at_s: float | None) -> datetime | None:
        return None if at_s is None else self.hung_at + timedelta(seconds=at_s)

    @property
    def likely(self) -> datetime | None:
        """None where no day can be named: the air may not take it so far."""
        return self.day(self.forecast.likely_s)


def ahead(book: Book, batch: Batch) -> tuple[Ahead, ...]:
    """Of each piece that hangs, in the order of the tags. Kept until the book learns something."""
    return book.kept("ahead", batch.id, lambda: tuple(_ahead(book, batch)))


def _ahead(book: Book, batch: Batch) -> Iterable[Ahead]:
    drying = drying_of(book, batch)
    known = () if drying is None else drying.pieces
    for piece in batch.hanging:
        if drying is not None and piece in known:
            yield Ahead(piece, drying.hung_at, drying.forecast(piece.id))


def should_weigh(book: Book, batch: Batch, moment: datetime) -> dict[str, Expected]:
    """What each hanging piece should weigh at the moment, by its tag, as far as was known before this round of
    weighings; a piece not weighed before, or weighed later, is left out."""
    drying = book.kept("before this round", batch.id, lambda: drying_until(book, batch, moment - A_ROUND))
    if drying is None:
        return {}
    weighed = ((at, piece) for at, piece in enumerate(drying.pieces) if drying.fit.pieces[at].known)
    return {
        piece.tag: expected(drying.fit, at, drying.seconds(moment))
        for at, piece in weighed
        if piece.taken_down is None and drying.fit.last_known(at).at_s < drying.seconds(moment)
    }


def weighed_in_round(batch: Batch, moment: datetime) -> dict[str, float]:
    """What hanging pieces weighed in the round that goes on at the moment, by tag."""
    return {
        piece.tag: piece.mass_kg
        for piece in batch.hanging
        if piece.weighings and moment - A_ROUND <= piece.weighed_at <= moment
    }
