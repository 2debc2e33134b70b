"""JSON from outside: a file somebody chose, or standard input. Deep nesting would end the tablet's interpreter."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

DEEPEST = 50
"""Nothing of ours nests deeper than five; in the browser some thousands overflow the stack beyond any exception."""

_BRACKETS = re.compile(r'"(?:[^"\\]|\\.)*"|([\[{])|([\]}])', re.DOTALL)


def parse(text: str, loads: Callable[[str], Any] = json.loads) -> Any:
    """As json.loads, or as a `loads` that reads numbers in its own way.

    Raises ValueError for what is no JSON, and for what nests deeper than DEEPEST.
    """
    depth = 0
    for found in _BRACKETS.finditer(text):
        depth += bool(found[1]) - bool(found[2])
        if depth > DEEPEST:
            raise ValueError("nested too deeply")
    return loads(text)
