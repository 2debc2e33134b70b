"""What is to come of all that hangs, worked out behind Today: 400 pieces take longer than a page may.

It is kept by the book's revision; a page that finds it known shows it at once.
"""

from __future__ import annotations

from collections.abc import Generator, Sequence

from attrs import frozen
from flask import request

from core.daybook.batch import Batch, open_batches
from core.daybook.book import Book
from core.daybook.weigh_days import are_known, work_out
from web import example
from web.journal import book
from web.work import work

FIRST, NOT_NOW = "1", "week"


@frozen
class Doing:
    """How many pieces are done."""

    done: int
    of: int


def unknown() -> list[Batch]:
    """Batches that hang of which nothing was worked out since the book last learned something."""
    return [batch for batch in open_batches(book()) if batch.hanging and not are_known(book(), batch)]


def go_on() -> Doing | None:
    """One slice of work; None where there is nothing to wait for: it is done, or it was stopped."""
    key, waiting = _key(), unknown()
    if not waiting:
        return None
    if request.args.get("step") == FIRST:
        work().begin(key, lambda: _steps(book(), waiting))
    return work().advance(key) if work().is_under_way(key) else None


def stop() -> None:
    work().drop(_key())


def _key() -> str:
    return f"to come {example.is_open()} {book().revision}"


def _steps(of: Book, waiting: Sequence[Batch]) -> Generator[Doing, None, None]:
    count = sum(len(batch.hanging) for batch in waiting)
    for done in work_out(of, waiting):
        yield Doing(done, count)
