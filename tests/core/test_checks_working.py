"""The working of checks and dilutions, read as a reader would: the printed numbers give the result."""

import math
import re

import pytest

from core.chamber import checks_sheets, sanitising_sheets
from core.quantities import METRIC, US, Reader
from core.worksheet import Worksheet

SHEETS = {sheet.name: sheet for sheet in (*checks_sheets.WORKSHEETS, *sanitising_sheets.WORKSHEETS)}
_ONE = dict.fromkeys(("°C", "°F", "K", "hPa", "inHg", "mV", "m", "ft"), 1.0)
_QUART_ML = 231 * 2.54**3 / 4
_VOLUMES = {"L": 1000.0, "ml": 1.0, "qt": _QUART_ML, "tbsp": _QUART_ML / 64, "tsp": _QUART_ML / 192}
_UNITS = _ONE | _VOLUMES | {"g": 1.0, "kg": 1000.0, "oz": 28.349523125, "lb": 453.59237, "ppm": 1e-6, "%": 1e-2}
_NUMBER = r"\d[\d\u00a0]*(?:\.\d+)?"
_WITH_UNIT = re.compile(rf"({_NUMBER}) ({'|'.join(sorted(map(re.escape, _UNITS), key=len, reverse=True))})(?![\w/])")
_SIGNS = {"\u00a0": "", "×": "*", "÷": "/", "\u2212": "-", "^": "**", "√": "sqrt"}


def _value(text: str, per_cent: float) -> float:
    units = _UNITS | {"%": per_cent}
    plain = _WITH_UNIT.sub(lambda found: f"({found[1]} * {units[found[2]]})", text)
    for sign, python in _SIGNS.items():
        plain = plain.replace(sign, python)
    return eval(plain, {"ln": math.log, "sqrt": math.sqrt})


def _sums(sheet: Worksheet, reader: Reader) -> list[tuple[str, str]]:
    lines = [step.say(reader) for figure in sheet.answer(sheet.example).figures for step in figure.working]
    return [line.rpartition(": ")[2].partition(" = ")[::2] for line in lines if " = " in line]


@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
@pytest.mark.parametrize("name", [name for name in SHEETS if name != "ice-point"])
def test_the_numbers_put_in_give_the_number_got_out(name: str, reader: Reader):
    sums = _sums(SHEETS[name], reader)
    assert sums
    of_salts = name.startswith("salt")  # Greenspan's polynomial counts in per-cent
    per_cent = 1.0 if of_salts else 1e-2
    for left, right in sums:
        largest = max(map(float, re.findall(r"\d+(?:\.\d+)?", left.replace("\u00a0", ""))))
        lost = 1e-5 * largest if "\u2212" in left else 0.0  # a difference keeps fewer digits than its parts
        lost = 1e-5 if left.startswith("ln") else lost
        close = pytest.approx(_value(right, per_cent), rel=3e-5, abs=lost * (per_cent if "%" in left else 1.0))
        assert _value(left, per_cent) == close, f"{left} = {right}"


def test_ice_needs_no_more_than_a_subtraction():
    assert _sums(SHEETS["ice-point"], METRIC)[0] == ("0 °C \u2212 0.4 °C", "\u22120.4 K")
