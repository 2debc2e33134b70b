"""A hanging batch handed to the forecaster: its pieces, the chamber's air since, and what an earlier batch lends."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from functools import lru_cache

from attrs import frozen

from core.daybook.batch import Batch, batches
from core.daybook.book import Book
from core.daybook.facts.instruments import MassesChecked
from core.daybook.formulas import formula_of
from core.daybook.hanging_air import air_since
from core.daybook.piece import Piece
from core.dry.activity import Mix
from core.dry.curve import NOTHING_LENT, Fit, Hung, Lent, fit
from core.dry.forecast import Forecast, forecast
from core.dry.lending import lend
from core.dry.pace import MIDDLING, MUSCLE, Air
from core.mix.balance import raw
from core.refusals import Refusal

STEP_SHARE = 0.7
"""A scale that shows whole steps strays by so much of one, its repeatability counted. Common practice; no published
source."""
LEAST_STEP_KG, USUAL_STEP_KG = 0.0001, 0.001


@frozen
class Drying:
    """pieces: those that hang or hung, in the order of the fit; such as were weighed on a failed scale when they were
    hung are left out. hung_at: when the first of them was. air: empty where nobody knows it."""

    batch_id: str
    hung_at: datetime
    air: tuple[Air, ...]
    pieces: tuple[Piece, ...]
    fit: Fit
    target: float

    def place(self, piece_id: str) -> int:
        return next(place for place, piece in enumerate(self.pieces) if piece.id == piece_id)

    def seconds(self, moment: datetime) -> float:
        return (moment - self.hung_at).total_seconds()

    def forecast(self, piece_id: str) -> Forecast:
        return _forecast(self.fit, self.place(piece_id), self.target)


def drying_of(book: Book, batch: Batch) -> Drying | None:
    """None where nothing hangs yet. Kept until the book learns something; its curves, until it learns of them."""
    return book.kept("drying", batch.id, lambda: drying_until(book, batch, None))


def drying_until(book: Book, batch: Batch, until: datetime | None) -> Drying | None:
    """until: as if nothing had been weighed after it."""
    pieces = tuple(each for each in batch.pieces if each.start_reading is None or not each.start_reading.proves_nothing)
    if not pieces:
        return None
    hung_at = min(piece.hung_at for piece in pieces)
    air = air_since(book, hung_at)
    hung = tuple(_hung(book, piece, hung_at, until) for piece in pieces)
    found = _fitted(hung, air, _lent(book, batch, air, hung_at), mix_of(batch))
    return Drying(batch.id, hung_at, air, pieces, found, batch.start.target_loss)


# Most entries change no weight of most batches.
_fitted = lru_cache(maxsize=256)(fit)
_forecast = lru_cache(maxsize=4096)(forecast)


def mix_of(batch: Batch) -> Mix:
    """As its formula has it; a middling sausage or a lean muscle where there is none that can be computed."""
    muscle = batch.start.style == "whole-muscle"
    if batch.formula is None:
        return MUSCLE if muscle else MIDDLING
    try:
        made = raw(batch.formula)
    except Refusal:
        return MUSCLE if muscle else MIDDLING
    water, salt, sugar = (round(part / made.total, 3) for part in (made.water, made.salt, made.sugar))
    return Mix(water, salt, sugar, batch.ferments) if 0.3 <= water <= 0.8 else MIDDLING


def _hung(book: Book, piece: Piece, hung_at: datetime, until: datetime | None = None) -> Hung:
    """Weighings on a scale that had failed its check are left out."""
    sound = [each for each in piece.weighings if each.proves and (until is None or each.at <= until)]
    weighings = tuple(((each.at - hung_at).total_seconds(), each.mass_kg) for each in sound)
    return Hung(piece.start_kg, weighings, _scale_kg(book, piece), (piece.hung_at - hung_at).total_seconds())


def _scale_kg(book: Book, piece: Piece) -> float:
    checked = None if piece.hung.scale is None else book.latest(piece.hung.scale, MassesChecked)
    step_kg = checked.fact.division_kg if checked and isinstance(checked.fact, MassesChecked) else USUAL_STEP_KG
    return STEP_SHARE * max(step_kg, LEAST_STEP_KG)


def _lent(book: Book, batch: Batch, air: Sequence[Air], hung_at: datetime) -> Lent:
    """By the latest batch of the same formula and casing that hung before this one and has been taken down."""
    formula = formula_of(book, batch.start.formula)
    if formula is None or not air:
        return NOTHING_LENT
    for earlier in batches(book):
        if (
            earlier.id != batch.id
            and earlier.finished
            and min(piece.hung_at for piece in earlier.pieces) < hung_at
            and formula_of(book, earlier.start.formula) == formula
            and earlier.pieces[0].hung.casing == batch.pieces[0].hung.casing
        ):
            since = min(piece.hung_at for piece in earlier.pieces)
            then = air_since(book, since)
            if then:
                pieces = tuple(_hung(book, piece, since) for piece in earlier.pieces)
                return lend(_fitted(pieces, then, NOTHING_LENT, mix_of(earlier)), air[-1])
    return NOTHING_LENT
