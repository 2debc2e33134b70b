"""The units that a log's numbers may be in, and which of them the numbers themselves leave possible."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from typing import Literal

from attrs import frozen

from core.language import Message

Unit = Literal[
    "", "°C", "°F", "K", "°C/10", "°C/100", "°C/1000", "°F/10", "°F/100", "%", "fraction", "%/10", "%/100", "written"
]
"""Of a temperature or a humidity. "" is not settled; "written": each cell carries its own."""

NOTHING = math.nan
"""What no reading is."""
LIKELY_C = (-30.0, 70.0)
"""From a freezer to a hot smoke: outside it a number without a unit is not taken for that unit."""
STATED_C = (-60.0, 85.0)
"""Outside it the unit in a head is doubted: a sensor that holds is not built for it, and no meat is there."""
LIKELY_HUMIDITY, STATED_HUMIDITY = (0.02, 1.1), (0.0, 1.1)
WHOLE_FROM = {"": 0.0, "10": 0.0, "100": 30.0, "1000": 300.0}
"""Any whole numbers may be tenths; they may be smaller parts where they reach this, three tenths of a degree."""
SURELY_PERCENT, SURELY_FRACTION = 1.5, 0.2


@frozen
class Scale:
    """What a number in a unit means: °C for a temperature, 0 to 1 for a humidity."""

    role: Literal["temperature", "humidity"]
    words: Message
    meaning: Callable[[float], float]
    is_scaled: bool = False


SCALES: dict[Unit, Scale] = {
    "°C": Scale("temperature", "degrees Celsius", lambda value: value),
    "°F": Scale("temperature", "degrees Fahrenheit", lambda value: (value - 32) * 5 / 9),
    "K": Scale("temperature", "kelvin", lambda value: value - 273.15),
    "°C/10": Scale("temperature", "tenths of a degree Celsius", lambda value: value / 10, True),
    "°C/100": Scale("temperature", "hundredths of a degree Celsius", lambda value: value / 100, True),
    "°C/1000": Scale("temperature", "thousandths of a degree Celsius", lambda value: value / 1000, True),
    "°F/10": Scale("temperature", "tenths of a degree Fahrenheit", lambda value: (value / 10 - 32) * 5 / 9, True),
    "°F/100": Scale("temperature", "hundredths of a degree Fahrenheit", lambda value: (value / 100 - 32) * 5 / 9, True),
    "%": Scale("humidity", "per cent", lambda value: value / 100),
    "fraction": Scale("humidity", "0 to 1", lambda value: value),
    "%/10": Scale("humidity", "tenths of a per cent", lambda value: value / 1000, True),
    "%/100": Scale("humidity", "hundredths of a per cent", lambda value: value / 10_000, True),
}


_FACTOR = re.compile(
    r"1\s?/\s?(?P<a>10{1,3})(?!\d)|0[.,](?P<b>0{0,2}1)(?=\s?[°ºc%f])|[x×*]\s?(?P<c>10{1,3})(?!\d)|[°ºcf%]\s?/\s?(?P<d>10{1,3})(?!\d)"
    r"|(?P<m>(?<![^\W\d])m\s?[°º]?\s?c(?![^\W\d])|(?<=_)mc$|milli)|(?P<p>(?<=[(\[ ])‰)",
    re.IGNORECASE,
)


def factor_in(label: str) -> int:
    """By how much a head says that its numbers are multiplied: 10 for "[1/10 °C]", 100 for "x100", 1000 for "m°C"."""
    found = _FACTOR.search(label)
    if found is None:
        return 1
    if found["m"]:
        return 1000
    if found["p"]:
        return 10
    return 10 ** len(found["b"]) if found["b"] else int(found["a"] or found["c"] or found["d"])


def scaled(unit: str, factor: int) -> Unit:
    """The unit of numbers multiplied so, "" where there is none of ours."""
    name = unit if factor == 1 else f"{unit}/{factor}"
    fits: list[Unit] = [each for each in SCALES if each == name]
    return fits[0] if fits else ""


def units_of(role: str) -> tuple[Unit, ...]:
    return tuple(unit for unit, scale in SCALES.items() if scale.role == role)


def trimmed(values: Sequence[float]) -> tuple[float, float]:
    """The least and the largest but for one reading in twenty at each end, which may be broken."""
    ordered = sorted(values)
    return ordered[len(ordered) // 20], ordered[-1 - len(ordered) // 20]


def is_believed(unit: Unit, values: Sequence[float]) -> bool:
    """Whether numbers may be in the unit that a head states."""
    scale = SCALES.get(unit)
    if scale is None or not values:
        return True
    if unit == "%" and trimmed(values)[1] <= SURELY_PERCENT:
        return False
    return _within(scale, values, STATED_C if scale.role == "temperature" else STATED_HUMIDITY)


def units_that_fit(role: str, values: Sequence[float], *, are_whole: bool) -> tuple[Unit, ...]:
    """The units in which numbers without one are those of a place where meat is kept; all but the scaled if none is."""
    if role == "humidity":
        return _humidity_units(values, are_whole)
    unscaled: list[Unit] = [unit for unit in units_of(role) if not SCALES[unit].is_scaled]
    if not values:
        return tuple(unscaled)
    largest = max(map(abs, trimmed(values)))
    candidates: list[Unit] = [
        unit
        for unit in units_of(role)
        if not SCALES[unit].is_scaled or (are_whole and largest >= WHOLE_FROM[unit.partition("/")[2]])
    ]
    fitting: list[Unit] = [unit for unit in candidates if _within(SCALES[unit], values, LIKELY_C)]
    return tuple(fitting or unscaled)


def _humidity_units(values: Sequence[float], are_whole: bool) -> tuple[Unit, ...]:
    if not values:
        return ("%", "fraction")
    low, high = trimmed(values)
    if high > 100 * STATED_HUMIDITY[1]:
        fitting: tuple[Unit, ...] = tuple(
            unit for unit in units_of("humidity") if are_whole and _within(SCALES[unit], values, LIKELY_HUMIDITY)
        )
        return fitting or units_of("humidity")
    if high > SURELY_PERCENT:
        return ("%",)
    return ("fraction",) if low >= SURELY_FRACTION and high <= STATED_HUMIDITY[1] else ("%", "fraction")


def _within(scale: Scale, values: Sequence[float], bounds: tuple[float, float]) -> bool:
    low, high = map(scale.meaning, trimmed(values))
    return bounds[0] <= low and high <= bounds[1]
