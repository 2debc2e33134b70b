"""Words that somebody looks for, in a text: each of them begins one of its words."""

from __future__ import annotations

from collections.abc import Sequence


def words_of(text: str) -> list[str]:
    return "".join(each if each.isalnum() else " " for each in text.casefold()).split()


def holds(text: str, sought: Sequence[str]) -> bool:
    folded = text.casefold()
    if not all(part in folded for part in sought):  # most texts: not worth their words
        return False
    words = words_of(text)
    return all(any(word.startswith(part) for word in words) for part in sought)
