"""Checks a line of working as a reader would: do the numbers put in give the number got out?"""

import math
import re

from core.quantities import Reader
from core.working import Figure

_UNITS = r"(?<=[0-9)]) (?:°C|°F|g/kg|kg/kg|J/\(g K\)|kJ/kg|g/m³|hPa|Pa|inHg|K|kg|g|m|ft|%)(?![\w/³])"
_SIGNS = {"\u00a0": "", "×": "*", "÷": "/", "\u2212": "-", "^": "**"}


def sums_in(figure: Figure, reader: Reader) -> list[tuple[str, float, float]]:
    """Each line that is a sum: the line, what its left side comes to, and what it says it comes to."""
    lines = [step.say(reader) for step in figure.working]
    return [(line, *map(_value, line.split(" = "))) for line in lines if " = " in line]


def _value(text: str) -> float:
    for sign, plain in _SIGNS.items():
        text = text.replace(sign, plain)
    return eval(re.sub(_UNITS, "", text), {"exp": math.exp})
