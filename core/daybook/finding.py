"""Where words stand in the book: in whatever was typed or chosen, as it now stands after its corrections."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, cast

from core.daybook.book import Book, Line
from core.finding import holds, words_of

NO_WORD = re.compile("[0-9a-f-]{32,}")
"""The name of a file or of an entry."""


def lines_with(book: Book, sought: str) -> list[Line]:
    """Newest first. Records are searched as they came and only those found are read: there may be thirty thousand."""
    parts = words_of(sought)
    found = [record["id"] for record in book.records() if parts and holds(" ".join(_texts(record["fact"])), parts)]
    lines = {line.id: line for key in found if (line := book.line(key)).entry.id == key}
    return sorted(lines.values(), key=lambda line: line.order, reverse=True)


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        if not NO_WORD.fullmatch(value):
            yield value
        return
    if isinstance(value, dict):
        value = [*cast(dict[str, Any], value).values()]
    if isinstance(value, list) and not (value and isinstance(value[0], float)):  # a logger's thousands
        for each in cast(list[Any], value):
            yield from _texts(each)
