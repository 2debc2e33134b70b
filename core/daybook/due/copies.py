"""When the book should be copied: what is kept on one tablet only is lost with it."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import frozen

from core.daybook.book import Book
from core.daybook.due.line import BOOK, Due
from core.quantities import COUNT, Amount
from core.sentence import Sentence, Value

COPY_EVERY = timedelta(days=7)
"""One browser clears what a site holds after seven days without a visit (its maker's own announcement; from memory)."""


@frozen
class Copied:
    """The last copy that was saved on this tablet, and how many entries the book held then."""

    at: datetime
    entries: int


def copy_due(book: Book, copied: Copied | None, now: datetime) -> list[Due]:
    """One line where something was written since the last copy, or ever, a week after that copy, or that entry.

    A copy of more entries than there are is of another book, from before this one was begun anew.
    """
    if copied is not None and copied.entries > len(book):
        copied = None
    since = len(book) - (copied.entries if copied else 0)
    at = copied.at if copied else _begun_at(book)
    if not since or at is None or at + COPY_EVERY > now:
        return []
    words = Sentence("{act} of the book", {"act": Sentence("Save a copy")})
    counted: dict[str, Value] = {"count": Amount(since, COUNT)}
    if copied is None:
        fact = Sentence("no copy yet of {count} entry", counted, plural="no copy yet of {count} entries")
    else:
        fact = Sentence("{count} entry since the last one", counted, plural="{count} entries since the last one")
    return [Due("copy", BOOK, words, at + COPY_EVERY, fact)]


def _begun_at(book: Book) -> datetime | None:
    first = next(book.records(), None)
    return None if first is None else datetime.fromisoformat(first["written_at"])
