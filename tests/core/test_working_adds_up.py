"""The working of cure, humidifier and weight loss is checked as a cook would: the printed numbers give the result."""

import math
import re

import pytest

from core.quantities import METRIC, US, Reader
from core.worksheets import find

_NUMBER = r"\d[\d\u00a0]*(?:\.\d+)?"
_UNITS = {
    "g": 1e-3, "kg": 1.0, "lb": 0.45359237, "oz": 0.45359237 / 16, "%": 1e-2, "ppm": 1e-6, "tbsp": 1.0, "d": 86400.0,
    "L": 1e-3, "ml": 1e-6, "qt": 231 * 0.0254**3 / 4, "g/L": 1.0, "tbsp/qt": 0.0138 / (231 * 0.0254**3 / 4),
    "kg/L": 1e3, "L/kg": 1e-3, "degrees": 1e-2, "mol/kg": 1.0, "kg/mol": 1.0,
}  # fmt: skip
_WITH_UNIT = re.compile(rf"({_NUMBER}) ({'|'.join(sorted(map(re.escape, _UNITS), key=len, reverse=True))})(?![\w/])")


CURE_SHEETS = (
    *("cure-ppm", "cure-dose", "cure-pump", "cure-pump-dose", "cure-immersion", "cure-immersion-dose"),
    *("cure-brine", "brine-recipe"),
)
FORMULA_SHEETS = ("fat-mix", "finished-mass", "weigh-dose", "pre-blend")


def _value(text: str) -> float:
    plain = _WITH_UNIT.sub(lambda found: f"({found[1]} * {_UNITS[found[2]]})", text)
    for sign, python in {"\u00a0": "", "×": "*", "÷": "/", "\u2212": "-"}.items():
        plain = plain.replace(sign, python)
    return eval(plain, {"exp": math.exp})


def _sums(name: str, reader: Reader) -> list[tuple[str, str]]:
    """The two sides of every line that ends in a sum, the words before it left out."""
    sheet = find(name)
    lines = [step.say(reader) for figure in sheet.answer(sheet.example).figures for step in figure.working]
    found = [(line.rpartition(": ")[2]).partition(" = ")[::2] for line in lines if " = " in line]
    return [(left, right) for left, right in found if not re.search(r"[a-z]{2,} to ", left)]


@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
@pytest.mark.parametrize("name", [*CURE_SHEETS, "humidifier-charge", "shrink", "target-weight", *FORMULA_SHEETS])
def test_the_numbers_put_in_give_the_number_got_out(name: str, reader: Reader):
    sums = _sums(name, reader)
    assert sums
    for left, right in sums:
        assert _value(left) == pytest.approx(_value(right), rel=2e-5), f"{left} = {right}"
