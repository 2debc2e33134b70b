"""Sentences that were worded before it was known who reads them: refusals, cautions and help.

Their amounts take the reader's decimal mark; the sections of a law they name ("9 CFR 424.21(c)") do not.
"""

from __future__ import annotations

import re

from core import quantities
from core.quantities import Quantity
from web import visitor

_UNITS = {unit.symbol for each in vars(quantities).values() if isinstance(each, Quantity) for unit in each.units} - {""}
_UNIT = "|".join(re.escape(symbol) for symbol in sorted(_UNITS, key=len, reverse=True))
_BEFORE_A_UNIT = rf"(?<![\w.])[0-9]+\.(?=[0-9]+[ \u00a0]?(?:{_UNIT})(?!\w))"
_AFTER_A_NAME = r"(?:(?<=pH[ \u00a0])|(?<=activity )|(?<=example ))[0-9]+\.(?=[0-9])"
_WITH_POINT = re.compile(f"{_BEFORE_A_UNIT}|{_AFTER_A_NAME}")


def spoken(sentence: str) -> str:
    """The sentence with the reader's decimal mark."""
    mark = visitor.reader().decimal
    return sentence if mark == "." else _WITH_POINT.sub(lambda found: found[0][:-1] + mark, sentence)
