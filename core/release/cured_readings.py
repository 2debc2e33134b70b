"""What the published ways of curing pork against trichinae ask of a piece: each a reading with its box."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import frozen

from core.quantities import COUNT, DAYS, FRACTION, HOURS, LENGTH, MASS, TEMPERATURE, Quantity
from core.sentence import Message, Said
from core.units import DAY_S, HOUR_S
from core.usual import GRIND_M, SMOKE_C, Range
from core.worksheet import Choice, Number

YES = 1.0
_YES_NO: dict[str, Message] = {"not-known": "not known", "yes": "yes", "no": "no"}


def _number(
    key: str, label: Message, quantity: Quantity, low: float, high: float, help_: Said = "", usual: Range | None = None
) -> Number:
    return Number(key, label, quantity, low, high, optional=True, help=help_, usual=usual)


def _cold(key: str, label: Message, help_: Said = "", usual: Range | None = None) -> Number:
    return _number(key, label, TEMPERATURE, -10.0, 70.0, help_, usual)


NUMBERS = (
    _number("grind_m", "Largest pieces of meat", LENGTH, 0.001, 0.3, "The plate of the grinder, or as cut.", GRIND_M),
    _number("salted", "Salt in the mix", FRACTION, 0.001, 0.3, "To the whole raw mix, the stricter basis."),
    _number("across_m", "Diameter as stuffed", LENGTH, 0.005, 0.3, "Of an oval, its girth ÷ 3.14."),
    _number("deep_m", "Depth of the mass", LENGTH, 0.005, 1.0, "As it was held before stuffing."),
    _number("held_s", "Held before drying", HOURS, 0.0, 60 * DAY_S, "At one temperature or warmer."),
    _cold("held_c", "Coldest while held", "In the middle of it: a room is warmer than the meat."),
    _number("smoked_s", "Smoked", HOURS, 0.0, 60 * DAY_S),
    _cold("smoked_c", "Coldest in the smoke", usual=SMOKE_C),
    _number("hot_s", "Hottest stretch of the smoke", HOURS, 0.0, 60 * DAY_S, "Without a break."),
    _cold("hot_c", "Coldest in that stretch", usual=SMOKE_C),
    _number("rise_s", "Time to reach that heat", HOURS, 0.0, 10 * DAY_S),
    _number("heaviest_kg", "Heaviest piece", MASS, 0.05, 60.0, "Of the lot, as it went into salt."),
    _number("mix_salt", "Salt in the curing mix", FRACTION, 0.0, 1.0),
    _number("contact_s", "With salt on it", DAYS, 0.0, 400 * DAY_S),
    _number("rest_s", "At rest after it", DAYS, 0.0, 400 * DAY_S, "Without salt, in the cold, to even out."),
    _cold("lay_c", "Coldest in salt and at rest"),
    _cold("lay_most_c", "Warmest in salt and at rest"),
    _number("overhauled", "Times overhauled", COUNT, 0.0, 20.0),
    _number("soaked_s", "Soaked", HOURS, 0.0, 5 * DAY_S, "0 if it was not."),
    _cold("soaked_c", "Warmest of the soak"),
    _number("brine", "Brine in the meat", FRACTION, 0.001, 0.3, "Salt ÷ (salt + water), from a laboratory."),
    _cold("dried_c", "Coldest while it dried", "Of the drying room, all the time that counts."),
    _number("dried_s", "Time drying", DAYS, 0.0, 1000 * DAY_S),
    _number("since_s", "Time since the cure", DAYS, 0.0, 1000 * DAY_S),
)
CHOICES = (
    Choice(
        "bare",
        "Casing without a coating",
        _YES_NO,
        default="not-known",
        listed=True,
    ),
    Choice("unwashed", "Never washed while drying", _YES_NO, default="not-known", listed=True),
    Choice(
        "scheduled",
        "A log shows every step of its heating",
        _YES_NO,
        default="not-known",
        listed=True,
        help="The steps stand below, beside the days.",
    ),
)
BOXES: Mapping[str, Number | Choice] = {each.key: each for each in (*NUMBERS, *CHOICES)}
Readings = Mapping[str, float]
"""Those that are known, by the keys of their boxes, SI; of a choice 1 is yes and 0 is no."""


@frozen
class Condition:
    """One reading against one limit, both bounds inclusive; without either it must be known."""

    reading: str
    least: float | None = None
    most: float | None = None

    def is_met(self, readings: Readings) -> bool | None:
        given = readings.get(self.reading)
        if given is None:
            return None
        near = 1e-9 * max(abs(self.least or 0.0), abs(self.most or 0.0))
        return (self.least is None or given >= self.least - near) and (self.most is None or given <= self.most + near)


def readings_of(given: Mapping[str, float | str | None]) -> Readings:
    """What was typed: of a choice a yes or a no."""
    words = {"yes": YES, "no": 0.0}
    values = {key: words.get(value) if isinstance(value, str) else value for key, value in given.items()}
    return {key: value for key, value in values.items() if value is not None and key in BOXES}


def days(count: float) -> float:
    return count * DAY_S


def hours(count: float) -> float:
    return count * HOUR_S
