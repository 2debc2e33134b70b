"""An invented kitchen to test the daybook with: what happened there, as records in the order they were written."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone
from itertools import count
from typing import Any

from core.daybook.batch import Batch, fold
from core.daybook.book import Book
from core.daybook.entries import Entry, entry_id, to_record
from core.daybook.facts import Fact, Withdrawn
from core.daybook.facts.batch import BatchStarted, CureWeighed, PieceHung, PieceWeighed, Reading
from core.daybook.facts.meat import MeatNoted
from core.daybook.piece import Piece

OFFSET = timezone(timedelta(hours=1))
NOON = datetime(2026, 11, 2, 12, tzinfo=OFFSET)
DAY = timedelta(days=1)

_chance = count(1)


def fresh(moment: datetime) -> str:
    return entry_id(moment, next(_chance).to_bytes(10, "big"))


class Kitchen:
    """What was written, record by record. `at` is a day's number from NOON on; corrections are written at its end."""

    def __init__(self) -> None:
        self.records: list[dict[str, Any]] = []

    def note(
        self,
        fact: Fact,
        about: str | None = None,
        at: float = 0.0,
        corrects: str | None = None,
        written: float | None = None,
        clock: int | None = None,
        device: str = "ee",
    ) -> str:
        happened = NOON + at * DAY
        written_at = happened if written is None else NOON + written * DAY
        key = fresh(written_at)
        clock = int(written_at.timestamp()) if clock is None else clock
        entry = Entry(key, about or key, happened, written_at, fact, corrects, clock, device)
        self.records.append(to_record(entry))
        return key

    def take_back(self, entry: str, written: float = 90.0) -> str:
        return self.note(Withdrawn(), entry, corrects=entry, written=written)

    def begin(self, name: str = "Juniper coarse", style: str = "fermented", at: float = 0.0, **more: Any) -> str:
        return self.note(BatchStarted(name, style, **{"meat_kg": 12.4, "target_loss": 0.35} | more), at=at)  # type: ignore[arg-type]

    def cure(self, batch: str, at: float = 0.0) -> str:
        return self.note(CureWeighed(0.031, 0.0625), batch, at)

    def tested(self, batch: str, at: float = 0.0) -> str:
        return self.note(MeatNoted("pork", "tested", "P-7", "the meat inspection"), batch, at)

    def read(self, batch: str, ph: float | None, at: float = 1.0, temperature_c: float | None = None) -> str:
        return self.note(Reading(ph, temperature_c), batch, at)

    def hang(self, batch: str, tag: str = "J-1", start_kg: float = 1.0, at: float = 2.0) -> str:
        return self.note(PieceHung(tag, start_kg), batch, at)

    def weigh(self, piece: str, mass_kg: float, at: float) -> str:
        return self.note(PieceWeighed(mass_kg), piece, at)

    @property
    def book(self) -> Book:
        return Book(self.records)

    def batch(self, batch_id: str) -> Batch:
        folded = fold(self.book, batch_id)
        assert folded is not None
        return folded

    def piece(self, batch_id: str, piece_id: str) -> Piece:
        return self.batch(batch_id).piece(piece_id)
