"""On which day each hanging piece is to be weighed next, by what its weight would teach (`core.dry.next_weighing`).

It takes too long for a page that shows all batches at once: it is worked out piece by piece and kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from functools import lru_cache

from attrs import frozen

from core.daybook.ahead import ahead
from core.daybook.batch import Batch
from core.daybook.book import Book
from core.daybook.drying import drying_of
from core.dry.next_weighing import Why, next_weighing

_KEPT = "weigh days"
_next_weighing = lru_cache(maxsize=4096)(next_weighing)


@frozen
class WeighDay:
    at: datetime
    why: Why


def weigh_days(book: Book, batch: Batch) -> Mapping[str, WeighDay]:
    """By the piece; nothing of one that nothing is known of, or that has lost its target."""
    return book.kept(_KEPT, batch.id, lambda: dict(_weigh_days(book, batch)))


def _weigh_days(book: Book, batch: Batch) -> Iterator[tuple[str, WeighDay]]:
    drying = drying_of(book, batch)
    for place, piece in enumerate(drying.pieces if drying is not None else ()):
        if drying is None or piece.taken_down is not None:
            continue
        found = _next_weighing(drying.fit, place, drying.target)
        if found.why != "done":
            yield piece.id, WeighDay(drying.hung_at + timedelta(seconds=found.at_s), found.why)


def are_known(book: Book, batch: Batch) -> bool:
    return book.has_kept(_KEPT, batch.id)


def known_weigh_days(book: Book, batches: Iterable[Batch]) -> dict[str, WeighDay]:
    """Of those batches that they were worked out for since the book last learned something."""
    known = (weigh_days(book, batch) for batch in batches if are_known(book, batch))
    return {piece: day for days in known for piece, day in days.items()}


def work_out(book: Book, batches: Iterable[Batch]) -> Iterator[int]:
    """Each piece's day and when to weigh it, kept for who asks later. Yields how many pieces are done."""
    done = 0
    for batch in batches:
        drying = drying_of(book, batch)
        for place, piece in enumerate(drying.pieces if drying is not None else ()):
            if drying is not None and piece.taken_down is None:
                drying.forecast(piece.id)
                _next_weighing(drying.fit, place, drying.target)
                done += 1
                yield done
        ahead(book, batch)
        weigh_days(book, batch)
