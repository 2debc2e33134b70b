"""A batch is the fold of its entries: nothing about it is kept anywhere else."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from functools import cached_property
from typing import Any, Literal

from attrs import frozen

from core.daybook.book import Book, Line
from core.daybook.corrections.readings import corrected
from core.daybook.dated import MeatReading
from core.daybook.facts import Unreadable
from core.daybook.facts.batch import BatchEnded, BatchStarted, CureWeighed, PieceHung, Reading
from core.daybook.facts.meat import MeatNoted
from core.daybook.ferment_notes import NOTHING_NOTED, FermentNotes, ferment_notes
from core.daybook.formulas import formula_at
from core.daybook.house import house_limits
from core.daybook.instruments import Shelf
from core.daybook.piece import Piece, fold_piece
from core.daybook.salt_notes import Salting, salting_of
from core.daybook.tags import tag_order
from core.daybook.weighed import Weighed, block_kg, weighed_rows
from core.meat import ACID_PH
from core.mix.formula import Formula
from core.mix.rules import HouseLimit
from core.release.readiness import SLACK

Stage = Literal["mix", "ferment", "dry", "release"]


@frozen
class Batch:
    id: str
    started_at: datetime
    start: BatchStarted
    cure: CureWeighed | None
    cure_line_id: str | None
    formula: Formula | None
    weighed: dict[str, Weighed]
    """Rows of the weighing sheet by their keys; of one weighed twice the later counts."""
    readings: tuple[MeatReading, ...]
    pieces: tuple[Piece, ...]
    lines: tuple[Line, ...]
    ferment: FermentNotes = NOTHING_NOTED
    salting: Salting | None = None
    cured_at: datetime | None = None
    house: tuple[HouseLimit, ...] = ()
    """As they stood when it was cured."""
    meat: MeatNoted | None = None
    meat_line_id: str | None = None
    given_up: Line | None = None

    @property
    def name(self) -> str:
        return self.start.name

    @property
    def meat_kg(self) -> float:
        """The meat block: as weighed on the sheet once every meat is, until then as the batch was begun."""
        return block_kg(self.formula, self.weighed) or self.start.meat_kg

    @property
    def ferments(self) -> bool:
        """Whether it is meant to sour; only then does it wait for its pH before it is hung."""
        return self.start.style == "fermented"

    @property
    def in_salt(self) -> bool:
        return self.salting is not None and self.salting.ended_at is None and not self.pieces

    @property
    def phs(self) -> tuple[MeatReading, ...]:
        return tuple(reading for reading in self.readings if reading.ph is not None)

    @property
    def proven_phs(self) -> tuple[float, ...]:
        return tuple(reading.ph for reading in self.readings if reading.ph is not None and reading.ph_proves)

    @property
    def lowest_ph(self) -> float | None:
        return min(self.proven_phs, default=None)

    @property
    def last_ph(self) -> float | None:
        return self.phs[-1].ph if self.phs else None

    @property
    def hanging(self) -> tuple[Piece, ...]:
        return tuple(piece for piece in self.pieces if piece.taken_down is None)

    @property
    def stage(self) -> Stage:
        """The stage that wants work now: the first one not yet done."""
        if self.cure is None or self.in_salt:
            return "mix"
        if self.ferments and (self.lowest_ph is None or self.lowest_ph > ACID_PH):
            return "ferment"
        target = self.start.target_loss
        if not self.pieces or any(_is_short_of(target, piece.proven_loss) for piece in self.hanging):
            return "dry"
        return "release"

    @property
    def cure_is_unread(self) -> bool:
        """Something was weighed, and its entry cannot be read: who weighs it again may double the nitrite."""
        unread = (line.fact.kind for line in self.lines if isinstance(line.fact, Unreadable))
        return self.cure is None and any(kind in ("cure-weighed", "ingredient-weighed") for kind in unread)

    @property
    def finished(self) -> bool:
        """Every piece is down; or none was hung, and the batch was condemned or given up."""
        return not self.hanging if self.pieces else self.condemned or self.given_up is not None

    @property
    def condemned(self) -> bool:
        return self.ferment.decided is not None and self.ferment.decided.decision == "discard"

    @cached_property
    def lines_by_kind(self) -> Mapping[type[Any], Sequence[Line]]:
        """Each kind's in the order of time; a line that was taken back is of the kind that says so."""
        found: dict[type[Any], list[Line]] = {}
        for line in self.lines:
            found.setdefault(type(line.fact), []).append(line)
        return found

    def piece(self, piece_id: str) -> Piece:
        return next(piece for piece in self.pieces if piece.id == piece_id)


def _is_short_of(target: float, loss: float | None) -> bool:
    return loss is None or loss < target - SLACK


def fold(book: Book, batch_id: str) -> Batch | None:
    """The batch as it stands, or None where no such batch was begun or its beginning was taken back."""
    return book.kept("batch", batch_id, lambda: _fold(book, batch_id))


def _fold(book: Book, batch_id: str) -> Batch | None:
    if batch_id not in book:
        return None
    begun = book.line(batch_id)
    if begun.id != batch_id or not isinstance(begun.fact, BatchStarted):
        return None
    lines, shelf = book.about(batch_id), Shelf(book)
    cures = [(line, line.fact) for line in lines if isinstance(line.fact, CureWeighed)]
    cured_at = cures[-1][0].entry.happened_at if cures else None
    endings = [line for line in lines if isinstance(line.fact, BatchEnded)]
    meats = [(line, line.fact) for line in lines if isinstance(line.fact, MeatNoted)]
    hung = [fold_piece(book, shelf, line, line.fact) for line in lines if isinstance(line.fact, PieceHung)]
    pieces = sorted(hung, key=lambda piece: tag_order(piece.tag))
    return Batch(
        id=batch_id,
        started_at=begun.entry.happened_at,
        start=begun.fact,
        cure=cures[-1][1] if cures else None,
        cure_line_id=cures[-1][0].id if cures else None,
        formula=formula_at(book, begun.fact.formula),
        weighed=weighed_rows(shelf, lines),
        readings=tuple(_meat_reading(shelf, line) for line in lines if isinstance(line.fact, Reading)),
        pieces=tuple(pieces),
        lines=tuple(_in_time([*lines, *(each for piece in pieces for each in piece.lines)])),
        ferment=ferment_notes(shelf, lines),
        salting=salting_of(lines),
        cured_at=cured_at,
        house=() if cured_at is None else house_limits(book, cured_at),
        given_up=endings[-1] if endings else None,
        meat=meats[-1][1] if meats else None,
        meat_line_id=meats[-1][0].id if meats else None,
    )


def _meat_reading(shelf: Shelf, line: Line) -> MeatReading:
    found = corrected(shelf, line.fact, line.entry.happened_at)
    fact: Reading = found.fact
    return MeatReading(line.entry.happened_at, line.id, fact.ph, fact.temperature_c, found, fact.place)


def _in_time(lines: Iterable[Line]) -> list[Line]:
    return sorted(lines, key=lambda line: line.order)


def batches(book: Book) -> list[Batch]:
    """Every batch begun and not taken back, newest first."""
    found = (fold(book, line.id) for line in book.of_kind("batch-started"))
    return [batch for batch in found if batch is not None][::-1]


def open_and_finished(book: Book) -> tuple[list[Batch], list[Batch]]:
    """Batches that still want something, and those that are finished; newest first."""
    every = batches(book)
    return [batch for batch in every if not batch.finished], [batch for batch in every if batch.finished]


def open_batches(book: Book) -> list[Batch]:
    """Batches that still want something, newest first. Finished ones are known by their raw records, unfolded: years of
    them must not delay the first page."""
    candidates = [key for key in book.beginnings("batch-started") if not _surely_finished(book, key)]
    found = (fold(book, key) for key in candidates)
    still_open = (batch for batch in found if batch is not None and not batch.finished)
    return sorted(still_open, key=lambda batch: (batch.started_at, batch.id), reverse=True)


def _surely_finished(book: Book, batch_id: str) -> bool:
    """Every piece was hung and taken down, nothing of it was corrected, and no correction of something else hung one
    more."""
    pieces = book.beginnings("piece-hung", about=batch_id)
    taken_down = (book.is_plain(piece) and book.has_plain("piece-taken-down", about=piece) for piece in pieces)
    return bool(pieces) and all(taken_down) and not book.was_corrected_into("piece-hung", about=batch_id)
