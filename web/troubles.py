"""What is wrong with the book itself, or with the clock it is written by: said above whatever may lean on it."""

from __future__ import annotations

from datetime import timedelta

from flask import request

from core.daybook.entries import NO_MOMENT, entry_id, moment_of_id
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence
from web import example
from web.journal import book
from web.visitor import now

UNREADABLE: Message = "{count} entry in this book cannot be read, and nothing is counted from it."
UNREADABLE_ALL: Message = "{count} entries in this book cannot be read, and nothing is counted from them."
AHEAD: Message = (
    "This device's clock says {now}, and {count} entry is later than that. Set the clock if it is wrong; if the entry "
    "is, correct its time."
)
AHEAD_ALL: Message = (
    "This device's clock says {now}, and {count} entries are later than that. Set the clock if it is wrong; if the "
    "entries are, correct their times."
)
BEHIND: Message = (
    "This device's clock says {now}, which is before this daybook was made. Set the clock, then correct the time."
)
LEAPT: Message = (
    "The entry before this one is of {before}. If less time has passed, this device's clock runs ahead: set it, and "
    "correct the time of what was saved."
)
TOLD_ON = ("today.page", "book.page", "batches.one", "release.piece", "chamber.page")
OLDEST_YEAR = 2026
"""No clock that is right is before it."""
SLACK = timedelta(minutes=30)
LONG = timedelta(days=180)
"""Between two seasons a kitchen may rest for some months."""


def troubles() -> tuple[Sentence, ...]:
    if example.is_open() or not (request.endpoint in TOLD_ON or "saved" in request.args):
        return ()
    return (*_unreadable(), *_clock())


def _unreadable() -> list[Sentence]:
    """As many as were met: a book is read only as far as somebody asks."""
    count = book().not_records + len(book().unreadable)
    return [Sentence(UNREADABLE, {"count": Amount(count, COUNT)}, plural=UNREADABLE_ALL)] if count else []


def _clock() -> list[Sentence]:
    if now().year < OLDEST_YEAR:
        return [Sentence(BEHIND, {"now": now()})]
    if ahead := _ahead():
        return [Sentence(AHEAD, {"now": now(), "count": Amount(ahead, COUNT)}, plural=AHEAD_ALL)]
    before = moment_of_id(book().next_newest)
    is_new = request.args.get("saved") == book().newest
    if is_new and before != NO_MOMENT and now() - before > LONG:
        return [Sentence(LEAPT, {"before": before.astimezone(now().tzinfo).date()})]
    return []


def _ahead() -> int:
    """Entries later than now, as they stand. Written ahead and corrected since, they are no trouble any more."""
    limit = now() + SLACK
    lines = {book().line(key).id: book().line(key) for key in book().written_after(entry_id(limit, bytes(10)))}
    return sum(line.entry.happened_at > limit and not line.withdrawn for line in lines.values())
