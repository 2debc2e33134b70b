"""What one cell of a log says: a temperature or a humidity in SI, or why it says none."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from math import isclose

from attrs import frozen

from core.chamber.logs.column import Column
from core.chamber.logs.decoding import KEPT_TEXTS, UNREAD
from core.chamber.logs.scales import NOTHING, SCALES, Unit
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.sentence import Message, Sentence

COLDEST_C, WARMEST_C = -60.0, 120.0
START_UP_C = 85.0
"""What a common kind of digital sensor says before its first measurement; no curing chamber is as hot."""
WETTEST = 1.10
"""Above 100 % a sensor is off by a little; above this it is broken."""
NOT_ONE: dict[str, Message] = {
    "temperature": "{cell} is not a temperature.",
    "humidity": "{cell} is not a humidity.",
}
PART_MISSING: Message = "{cell} has not as many decimals as the rest of its column: a part may be missing."
NO_AIR: Message = "{cell} is outside 0 to {most} relative humidity: no air is."
MOST_TEXTS = 50_000
LONGEST_ECHO = 24
LONGEST_WORD = 16

_MINUS = r"\-\u2212\u2013\uff0d"
"""The hyphen, the minus, and what word processors and East Asian loggers write for it."""
_SIGN = rf"(?P<sign>[{_MINUS}+]?)"
_GROUPED = r"[1-9][0-9]{0,2}(?:(?P<group>[%s' \u00a0\u202f\u2019])[0-9]{3}(?:(?P=group)[0-9]{3})*)"
_POWER = r"(?P<power>[eE][+-][0-9]{1,2})?"
_UNIT = r"(?:[ \u00a0\u202f]*(?P<unit>[^0-9\s.,;:+\-][^0-9]{0,11}))?"
_NUMBER = {
    mark: re.compile(rf"{_SIGN}(?P<whole>{_GROUPED % other}|[0-9]*)(?:[{mark}](?P<part>[0-9]+))?{_POWER}{_UNIT}")
    for mark, other in ((".", ","), (",", "."))
}
_STARTS_AS_A_NUMBER = re.compile(rf"[{_MINUS}+]?[.,]?[0-9]")
_UNITS: dict[str, Unit] = {
    **dict.fromkeys(("°c", "ºc", "˚c", "℃", "c", "degc", "deg c", "celsius", "â°c", "\ufffdc"), "°C"),
    **dict.fromkeys(("°f", "ºf", "˚f", "℉", "f", "degf", "deg f", "fahrenheit", "â°f", "\ufffdf"), "°F"),
    **dict.fromkeys(("k", "kelvin"), "K"),
    **dict.fromkeys(("°", "º", "deg"), ""),
    **dict.fromkeys(("%", "%rh", "% rh", "rh%", "%rf", "% rf", "% r.h.", "% r.f.", "%hr", "%ur", "percent"), "%"),
}


@frozen
class Number:
    """A number as a cell gives it, before its unit is known. `decimals` counts the digits after the mark."""

    value: float
    decimals: int
    unit: Unit
    """As written beside it, "" where nothing is."""


@lru_cache(maxsize=KEPT_TEXTS)
def number(cell: str, decimal: str) -> Number | None:
    """The number in a cell that holds nothing else but a unit we know; None for any other text."""
    found = _NUMBER[decimal].fullmatch(cell.strip(" \t\u00a0\u200e\u200f\ufeff"))
    if found is None or not (found["whole"] or found["part"]):
        return None
    unit = unit_of(found["unit"] or "")
    if unit is None:
        return None
    whole = found["whole"].replace(found["group"], "") if found["group"] else found["whole"]
    part = found["part"] or ""
    value = float(f"{whole or 0}.{part or 0}{found['power'] or ''}")
    return Number(value if found["sign"] in ("", "+") else -value, len(part), unit)


def unit_of(text: str) -> Unit | None:
    """The unit that a whole short text means; "" for no text, None for what is no unit of ours."""
    plain = text.strip(" ()[]{}\u00a0").lower()
    return _UNITS.get(plain) if plain else ""


def value_of(cell: str, column: Column, decimal: str) -> tuple[float, Sentence | None]:
    """The cell in °C or as a fraction and None, or NaN and why. An empty cell is NaN for no reason.

    Humidity from 100 to 110 % is given as it stands, to be capped by who counts it. Raises nothing.
    """
    if not cell or cell.isspace():
        return NOTHING, None
    found = number(cell, column.mark or decimal)
    unit = found and (found.unit or column.unit)
    scale = SCALES.get(unit or "")
    if found is None or scale is None or scale.role != column.role:
        return NOTHING, Sentence(NOT_ONE[column.role], {"cell": echo(cell)})
    if column.means_nothing and found.value in column.means_nothing:
        return NOTHING, None  # as an empty cell: the person said that nothing was measured
    if column.decimals is not None and found.decimals != column.decimals:
        return NOTHING, Sentence(PART_MISSING, {"cell": echo(cell)})
    if column.role == "temperature":
        return _temperature(scale.meaning(found.value), cell)
    return _humidity(scale.meaning(found.value), cell)


def _temperature(value_c: float, cell: str) -> tuple[float, Sentence | None]:
    if not COLDEST_C <= value_c <= WARMEST_C:
        bounds = {"low": Amount(COLDEST_C, TEMPERATURE), "high": Amount(WARMEST_C, TEMPERATURE)}
        return NOTHING, Sentence("{cell} is outside {low} to {high}: no chamber is.", {"cell": echo(cell), **bounds})
    if isclose(value_c, START_UP_C):
        return NOTHING, Sentence("{cell} is what a sensor says before it has measured.", {"cell": echo(cell)})
    return value_c, None


def _humidity(value: float, cell: str) -> tuple[float, Sentence | None]:
    if not 0 <= value <= WETTEST:
        return NOTHING, Sentence(NO_AIR, {"cell": echo(cell), "most": Amount(WETTEST, RELATIVE_HUMIDITY)})
    return value, None


def looks_broken(cell: str, decimal: str) -> bool:
    """Whether a cell is neither a number nor a sensor's word for one missing (ERR, ---): it starts as a number does, is
    too long, or holds what is no text. Then the line may have lost a part, and no cell of it is to be trusted."""
    if number(cell, decimal) is not None:
        return False
    text = cell.strip()
    return bool(_STARTS_AS_A_NUMBER.match(text)) or len(text) > LONGEST_WORD or UNREAD in text or "\0" in text


def echo(cell: str) -> str:
    """A cell in quotation marks: short, on one line, without characters that hide."""
    shown = " ".join("".join(each if each.isprintable() else " " for each in cell).split())
    return f"“{shown}”" if len(shown) <= LONGEST_ECHO else f"“{shown[: LONGEST_ECHO - 1]}…”"


class Memo(dict[str, float]):
    """What each text means, worked out once: a log of a month says a few hundred texts again and again."""

    def __init__(self, meaning: Callable[[str], float]) -> None:
        self._meaning = meaning

    def __missing__(self, text: str) -> float:
        if len(self) >= MOST_TEXTS:
            self.clear()
        value = self[text] = self._meaning(text)
        return value
