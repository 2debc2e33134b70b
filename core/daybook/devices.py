"""The tablets that wrote into this book, by the names their owner gave them."""

from __future__ import annotations

from core.daybook.book import Book
from core.daybook.facts.device import DeviceNamed


def names(book: Book) -> dict[str, str]:
    """The latest name of each tablet that has one, by its id."""
    facts = (line.fact for line in book.of_kind(DeviceNamed.KIND))
    return {fact.device: fact.name for fact in facts if isinstance(fact, DeviceNamed)}
