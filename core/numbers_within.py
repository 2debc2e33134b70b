"""A number that stands in a constant text, with the reader's decimal mark: "pH 5.3", "0.5 % of the mass".

Only the text itself is looked at, never what goes into it: a name that somebody typed stays as it was typed. A law's
section, a row or a version is no decimal number: a unit follows one, or a word that says so goes before it. In a sum
all are such.
"""

from __future__ import annotations

import re
from functools import lru_cache

from core import units
from core.units import Unit

_SYMBOLS = {each.symbol for each in vars(units).values() if isinstance(each, Unit)} - {""}
_UNIT = "|".join(re.escape(symbol) for symbol in sorted(_SYMBOLS, key=len, reverse=True))
_BEFORE_A_UNIT = rf"(?<![\w.])[0-9]+\.(?=[0-9]+[ \u00a0]?(?:{_UNIT})(?!\w))"
_AFTER_A_NAME = r"(?:(?<=pH[ \u00a0])|(?<=activity )|(?<=example ))[0-9]+\.(?=[0-9])"
_IN_A_SENTENCE = re.compile(f"{_BEFORE_A_UNIT}|{_AFTER_A_NAME}")
_IN_A_SUM = re.compile(r"(?<=[0-9])\.(?=[0-9])")


@lru_cache(4096)
def with_mark(text: str, mark: str, *, is_sum: bool = False) -> str:
    """text: constant, its values still in braces. mark: of the reader."""
    found = _IN_A_SUM if is_sum else _IN_A_SENTENCE
    return text if mark == "." else found.sub(lambda number: number[0][:-1] + mark, text)
