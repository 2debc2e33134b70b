"""The working of set-points and moisture is checked as a cook would: the printed numbers give the result."""

import math
import re

import pytest

from core.chamber import moisture_sheets, setpoint_sheets
from core.quantities import METRIC, US, Reader

_NUMBER = r"\u2212?\d[\d\u00a0]*(?:\.\d+)?"
_POUND, _FOOT, _QUART = 0.45359237, 0.3048, 231 * 0.0254**3 / 4
_UNITS = {
    "g": 1e-3, "kg": 1.0, "lb": _POUND, "oz": _POUND / 16, "%": 1e-2, "% a day": 0.01 / 86400, "Pa": 1.0, "°C": 1.0,
    "K": 1.0, "L": 1e-3, "ml": 1e-6, "qt": _QUART, "tbsp": _QUART / 64, "ft³": _FOOT**3, "g/m³": 1e-3,
    "g/h": 1e-3 / 3600, "kJ/kg": 1e3, "W": 1.0, "s": 1.0, "min": 60.0, "h": 3600.0, "d": 86400.0,
    "L a day": 1e-3 / 86400, "qt a day": _QUART / 86400, "m²/kg": 1.0, "g/(m² h)": 1e-3 / 3600, "W/(m² K)": 1.0,
}  # fmt: skip
_KNOWN = "|".join(sorted(map(re.escape, _UNITS), key=len, reverse=True))
_WITH_UNIT = re.compile(rf"({_NUMBER}) ({_KNOWN})(?![\w/(²³])")
SHEETS = {sheet.name: sheet for sheet in (*setpoint_sheets.WORKSHEETS, *moisture_sheets.WORKSHEETS)}


def _value(text: str) -> float:
    plain = _WITH_UNIT.sub(lambda found: f"({found[1]} * {_UNITS[found[2]]})", text)
    for sign, python in {"\u00a0": "", "×": "*", "÷": "/", "\u2212": "-"}.items():
        plain = plain.replace(sign, python)
    return eval(plain, {"exp": math.exp, "ln": math.log})


def _sums(name: str, reader: Reader) -> list[tuple[str, str]]:
    sheet = SHEETS[name]
    lines = [step.say(reader) for figure in sheet.answer(sheet.example).figures for step in figure.working]
    return [line.rpartition(": ")[2].partition(" = ")[::2] for line in lines if " = " in line]


@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
@pytest.mark.parametrize("name", SHEETS)
def test_the_numbers_put_in_give_the_number_got_out(name: str, reader: Reader):
    sums = _sums(name, reader)
    assert sums
    for left, right in sums:
        assert _value(left) == pytest.approx(_value(right), rel=1e-4), f"{left} = {right}"


@pytest.mark.parametrize("name", SHEETS)
def test_every_example_is_answered_with_the_answer_first(name: str):
    first = {
        "set-point": "vapour_pressure_deficit",
        "equal-drying": "equal_humidity",
        "cold-piece": "wet_for",
        "moisture-load": "given_off",
        "chamber-capacity": "capacity",
        "humidifier-need": "need",
    }
    assert SHEETS[name].answer(SHEETS[name].example).figures[0].key == first[name]
