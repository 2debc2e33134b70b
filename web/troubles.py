"""What is wrong with the book itself, or with the clock it is written by: said above whatever may lean on it."""

from __future__ import annotations

from flask import request

from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence
from web import example
from web.journal import book

UNREADABLE: Message = "{count} entry in this book cannot be read, and nothing is counted from it."
UNREADABLE_ALL: Message = "{count} entries in this book cannot be read, and nothing is counted from them."
TOLD_ON = ("today.page", "book.page")


def troubles() -> tuple[Sentence, ...]:
    if example.is_open() or request.endpoint not in TOLD_ON:
        return ()
    return tuple(_unreadable())


def _unreadable() -> list[Sentence]:
    """As many as were met: a book is read only as far as somebody asks."""
    count = book().not_records + len(book().unreadable)
    return [Sentence(UNREADABLE, {"count": Amount(count, COUNT)}, plural=UNREADABLE_ALL)] if count else []
