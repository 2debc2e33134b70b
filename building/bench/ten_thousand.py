"""Ten thousand entries of an invented kitchen: some five years, sixty batches, three of them open."""

import hashlib
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from core.daybook.entries import Entry, entry_id, to_record
from core.daybook.facts import Fact
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceHung,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.chamber import CHAMBER, AirRead

COUNT = 10_000
BATCHES, OPEN = 60, 3
PIECES = 11
WEIGHINGS = 10
MISTYPED = 97  # one weighing in so many is corrected later
BEGUN = datetime(2021, 11, 1, 9, tzinfo=UTC)
BETWEEN = timedelta(days=30)


def entries() -> list[Entry]:
    """In the order in which they were written, the same each time. COUNT is made up by readings of the air."""
    batches = [entry for nth in range(BATCHES) for entry in _batch(nth)]
    missing = COUNT - len(batches)
    air = [
        _entry(CHAMBER, BEGUN + each * timedelta(days=2), AirRead(12.5, 0.78), f"air {each}") for each in range(missing)
    ]
    return sorted([*batches, *air], key=lambda entry: (entry.written_at, entry.id))


def stored_records() -> list[dict[str, object]]:
    """As web/browser/store.js keeps them."""
    return [{"id": entry.id, "seq": seq, "entry": to_record(entry)} for seq, entry in enumerate(entries(), 1)]


def _batch(nth: int) -> Iterator[Entry]:
    day = BEGUN + nth * BETWEEN
    is_open = nth >= BATCHES - OPEN
    started = _entry(None, day, BatchStarted(f"Salame {nth}", "fermented", 12.0, 0.35), f"batch {nth}")
    yield started
    yield _entry(
        started.id,
        day + timedelta(hours=1),
        CureWeighed(cure_kg=0.03, nitrite=0.0625),
        f"cure {nth}",
    )
    for each in range(8):
        fact = Reading(5.8 - 0.12 * each, 22.0)
        yield _entry(started.id, day + timedelta(hours=8 * (each + 1)), fact, f"reading {nth} {each}")
    for piece in range(PIECES):
        yield from _piece(started.id, day + timedelta(days=3), f"{nth}-{piece}", is_open)


def _piece(batch_id: str, day: datetime, tag: str, is_open: bool) -> Iterator[Entry]:
    hung = _entry(batch_id, day, PieceHung(tag, 1.0), f"hung {tag}")
    yield hung
    for week in range(1, WEIGHINGS + 1 - 6 * is_open):
        weighed = _entry(hung.id, day + timedelta(weeks=week), PieceWeighed(_mass_kg(week)), f"weighed {tag} {week}")
        yield weighed
        if int(weighed.id[-4:], 16) % MISTYPED == 0:
            fact = PieceWeighed(_mass_kg(week) + 0.002)
            yield _entry(hung.id, weighed.happened_at, fact, f"corrected {tag} {week}", corrects=weighed.id)
    if is_open:
        return
    last = day + timedelta(weeks=WEIGHINGS, hours=1)
    yield _entry(hung.id, last, PieceInspected(), f"inspected {tag}")
    yield _entry(hung.id, last + timedelta(minutes=5), ActivityMeasured(0.87), f"activity {tag}")
    yield _entry(hung.id, last + timedelta(minutes=9), PieceTakenDown("ready"), f"down {tag}")


def _mass_kg(week: int) -> float:
    return round(0.6 + 0.4 * 0.8**week, 3)


def _entry(about: str | None, moment: datetime, fact: Fact, name: str, corrects: str | None = None) -> Entry:
    """name: stands for chance. A correction is written a day after."""
    written = moment if corrects is None else moment + timedelta(days=1)
    key = entry_id(written, hashlib.sha256(name.encode()).digest())
    return Entry(key, key if about is None else about, moment, written, fact, corrects)
