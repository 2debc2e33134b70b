"""Tags of the pieces of a batch: the order they are read in, and what the next one will be called."""

from __future__ import annotations

import re
from collections.abc import Sequence

_SERIES = re.compile(r"(.*?)([0-9]{1,9})", re.DOTALL)


def tag_order(tag: str) -> tuple[tuple[str, int], ...]:
    """A key to sort by: J-2 stands before J-10."""
    parts = re.split(r"([0-9]+)", tag.casefold())
    return tuple((text, int(number or 0)) for text, number in zip(parts[::2], [*parts[1::2], ""], strict=True))


def series(first: str, count: int) -> list[str]:
    """So many tags, numbered from the first: F-1, F-2, F-3. Of one that ends in no number all but it are empty."""
    found = _SERIES.fullmatch(first.strip())
    if found is None:
        return [first.strip(), *[""] * (count - 1)]
    head, digits = found.groups()
    return [f"{head}{number:0{len(digits)}}" for number in range(int(digits), int(digits) + count)]


def next_tag(tags: Sequence[str]) -> str:
    """What comes after the last of them in its series, as long as no other is called so; empty where it has none."""
    series = _SERIES.fullmatch(tags[-1]) if tags else None
    if series is None:
        return ""
    head, digits = series.groups()
    taken = {tag.casefold() for tag in tags}
    after = (f"{head}{number:0{len(digits)}}" for number in range(int(digits) + 1, int(digits) + len(tags) + 1))
    return next((tag for tag in after if tag.casefold() not in taken), "")
