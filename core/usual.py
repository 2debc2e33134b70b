"""A slip of the finger: a bare number that is possible here, and still not what one usually types.

What is usual is said once for a kind of reading (`USUAL`), and with its box where the box differs. A number typed
without a unit that falls outside is asked about, and the question names what may have been meant: 0.35 in a per-cent
box is 0.35 %, or 35 % written as a fraction. The same number typed with its unit is taken at its word. What is plainly
impossible stays outside `low` and `high`.

The ranges are our own: common practice; no published source. None of them is a limit.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from core.quantities import Amount, Quantity, Reader, show_number
from core.refusals import Unusual
from core.sentence import Message, Rounded, Said, Sentence, Value, listed, said
from core.units import DAY_S, HOUR_S

Range = tuple[float, float]
"""SI, both ends inclusive. Nothing at all, a zero, is never asked about: `low` says whether it may be."""

CHAMBER_C: Range = (0.0, 31.0)
"""No reading of one scale in here is one of the other: 0 °C is 32 °F, and 31 °F is −0.6 °C."""
FERMENT_C: Range = (4.0, 39.0)  # likewise: 4 °C is 39.2 °F
THAWING_C: Range = (-1.0, 30.0)  # likewise: −1 °C is 30.2 °F
FROZEN_C: Range = (-45.0, -12.0)
SMOKE_C: Range = (20.0, 60.0)
GRIND_M: Range = (0.002, 0.05)
MELTING_C: Range = (-5.0, 5.0)
STRAYING: Range = (0.005, 0.2)
SHOWN_KG: Range = (1e-5, 0.005)
SHOWN_K: Range = (0.01, 1.0)
CASING_LONG_M: Range = (0.05, 30.0)
TO_PH_S: Range = (8 * HOUR_S, 240 * HOUR_S)
SANITISER: Range = (10e-6, 1000e-6)
LABEL_LIMIT: Range = (10e-6, 500e-6)
POURED_M3: Range = (0.02e-3, 0.03)

USUAL: Mapping[str, Range] = {
    "mass": (0.2, 100.0),
    "piece_mass": (0.05, 25.0),
    "dose_mass": (0.0005, 20.0),
    "cure_mass": (0.0005, 20.0),
    "volume": (0.25e-3, 0.1),
    "room": (0.03, 30.0),
    "length": (0.012, 0.4),
    "temperature": CHAMBER_C,
    "temperature_difference": (0.05, 5.0),
    "relative_humidity": (0.2, 1.0),
    "humidity_step": (0.0005, 0.1),
    "degree_hours": (10 * HOUR_S, 1500 * HOUR_S),
    "fraction": (0.01, 1.0),
    "loss": (0.05, 0.6),
    "loss_rate": (0.001 / DAY_S, 0.05 / DAY_S),
    "dose": (0.001, 0.05),
    "strength": (0.004, 0.1),
    "per_meat": (0.0005, 0.5),
    "stock_strength": (0.01, 1.0),
    "sugar_dose": (0.001, 0.02),
    "soda_dose": (1.0, 30.0),
    "ppm": (10e-6, 2500e-6),
    "days": (0.5 * DAY_S, 730 * DAY_S),
    "hours": (HOUR_S, 240 * HOUR_S),
    "lasting": (6 * HOUR_S, 14 * DAY_S),
    "contact": (5.0, HOUR_S),
    "water_a_day": (0.02e-3 / DAY_S, 20e-3 / DAY_S),
    "air_speed": (0.02, 2.0),
}
"""What is usual of a kind of reading, by the key of its quantity, where its box says nothing else (`Number.usual`)."""


MEANT: Message = (
    "{label}: This is read as {shown}; usual here is {low} to {high}. Is {meant} meant? Then enter that. "
    "If {shown} is right, enter it with its unit."
)
NONE_MEANT: Message = (
    "{label}: This is read as {shown}; usual here is {low} to {high}. Enter what is meant. "
    "If {shown} is right, enter it with its unit."
)


def is_usual(value: float, usual: Range) -> bool:
    low, high = usual
    slack = 1e-9 * max(abs(low), abs(high))
    return value == 0 or low - slack <= value <= high + slack


def as_typed(value: float, quantity: Quantity, reader: Reader) -> str:
    """The value with the unit of its box, as one would type it to be taken at one's word."""
    bare = quantity.bare(reader.system)
    return f"{_figures(bare.from_si(value), reader)} {bare.symbol}".rstrip()


def ask(field: str, label: Said, value: float, quantity: Quantity, usual: Range, reader: Reader) -> Unusual:
    """The question about a bare number that was read as `value`."""
    low, high = (Rounded(Amount(each, quantity), 3) for each in usual)
    shown = as_typed(value, quantity, reader)
    told: dict[str, Value] = {"label": said(label), "shown": shown, "low": low, "high": high}
    meant = _may_be_meant(value, quantity, usual, reader)
    if not meant:
        return Unusual(field, Sentence(NONE_MEANT, told))
    return Unusual(field, Sentence(MEANT, {**told, "meant": listed(meant, "or")}))


def _may_be_meant(value: float, quantity: Quantity, usual: Range, reader: Reader) -> list[str]:
    """The same figures in another unit of this box, or a number without a unit that is a share, where that is usual."""
    bare = quantity.bare(reader.system)
    figures = bare.from_si(value)
    others = [unit for unit in quantity.units if unit != bare and is_usual(unit.to_si(figures), usual)]
    return [
        f"{_figures(figures, reader)} {unit.symbol}" if unit.symbol else as_typed(unit.to_si(figures), quantity, reader)
        for unit in others[:3]
    ]


def _figures(number: float, reader: Reader) -> str:
    decimals = min(12, max(0, 6 - math.floor(math.log10(abs(number))))) if number else 0
    return show_number(number, decimals, reader, trim=True)
