"""JSON from outside: a file somebody chose, or standard input. Deep nesting would end the tablet's interpreter."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

DEEPEST = 50
"""Nothing of ours nests deeper than five; in the browser some thousands overflow the stack beyond any exception."""

_BRACKETS = re.compile(r'"(?:[^"\\]|\\.)*"|([\[{])|([\]}])', re.DOTALL)


class Doubled(ValueError):
    """One key stands twice in an object: which of its values is meant, nobody can tell."""

    def __init__(self, key: str) -> None:
        super().__init__(f"“{key}” stands twice.")
        self.key = key


def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """The object of these pairs, as json.loads asks for it. Raises Doubled."""
    held: dict[str, Any] = {}
    for key, value in pairs:
        if key in held:
            raise Doubled(key)
        held[key] = value
    return held


def _loads(text: str) -> Any:
    return json.loads(text, object_pairs_hook=once)


def parse(text: str, loads: Callable[[str], Any] = _loads) -> Any:
    """As json.loads, or as a `loads` that reads numbers in its own way.

    Raises ValueError for what is no JSON, for what nests deeper than DEEPEST, and Doubled for a key that stands twice.
    """
    depth = 0
    for found in _BRACKETS.finditer(text):
        depth += bool(found[1]) - bool(found[2])
        if depth > DEEPEST:
            raise ValueError("nested too deeply")
    return loads(text)
