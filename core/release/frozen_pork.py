"""How long frozen pork must stay frozen until no trichinella in it lives: the published tables, a step at a time.

They hold for pork of tame swine only: kinds of Trichinella in game survive freezing.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from attrs import frozen

from core.quantities import HOURS, LENGTH, TEMPERATURE, Amount
from core.sentence import Message, Sentence
from core.sources import CFR_TRICHINELLA, EU_TRICHINELLA, Source
from core.units import DAY_S, FAHRENHEIT, HOUR_S, INCH_M

Measured = Literal["product", "core"]
MEASURED: Mapping[Measured, Message] = {
    "product": "a thermometer beside the meat, the warmest place",
    "core": "a logger in the middle of the thickest piece, all the time",
}
Law = Literal["both", "us", "eu"]
LAWS: Mapping[Law, Message] = {"both": "the stricter of both", "us": "United States", "eu": "European Union"}


@frozen
class Step:
    """thickness_m: of the piece, the layer or the box, at most; None where the table does not go by it. at_c: no
    warmer. lasts_s: at least."""

    thickness_m: float | None
    at_c: float
    lasts_s: float


def _f(temperature_f: float) -> float:
    return FAHRENHEIT.to_si(temperature_f)


def _days(thickness_m: float, *rows: tuple[float, float]) -> tuple[Step, ...]:
    return tuple(Step(thickness_m, at_c, days * DAY_S) for at_c, days in rows)


def _hours(*rows: tuple[float, float]) -> tuple[Step, ...]:
    return tuple(Step(None, at_c, hours * HOUR_S) for at_c, hours in rows)


TABLES: Mapping[tuple[Law, Measured], tuple[Step, ...]] = {
    ("us", "product"): (  # table 1
        *_days(6 * INCH_M, (_f(5), 20), (_f(-10), 10), (_f(-20), 6)),
        *_days(27 * INCH_M, (_f(5), 30), (_f(-10), 20), (_f(-20), 12)),
    ),
    ("us", "core"): _hours(  # table 2; it prints -34.5 °C beside -30 °F, the colder of the two
        *((_f(0), 106), (_f(-5), 82), (_f(-10), 63), (_f(-15), 48), (_f(-20), 35), (_f(-25), 22), (-34.5, 8)),
        (_f(-35), 0.5),
    ),
    ("eu", "product"): (  # method 2, and method 1, whose clock is that of the room
        *_days(0.15, (-15, 20), (-23, 10), (-29, 6)),
        *_days(0.25, (-25, 10)),
        *_days(0.50, (-15, 30), (-25, 20), (-29, 12)),
    ),
    ("eu", "core"): _hours(  # method 3
        *((-18, 106), (-21, 82), (-23.5, 63), (-26, 48), (-29, 35), (-32, 22), (-35, 8), (-37, 0.5))
    ),
}
SOURCES: Mapping[Law, Source] = {"both": CFR_TRICHINELLA, "us": CFR_TRICHINELLA, "eu": EU_TRICHINELLA}
NEAR = 1e-9


@frozen
class Frozen:
    """warmest_c: it ever was in that time. None is not known."""

    measured: Measured = "product"
    warmest_c: float | None = None
    lasts_s: float | None = None
    thickness_m: float | None = None
    law: Law = "both"


def asked_s(frozen_meat: Frozen) -> float | None:
    """How long it must stay so; None where no table goes so warm or so thick, or where that is not known.

    Nothing between two rows is made up: the warmer row holds. Under both laws each of them must be met.
    """
    laws: tuple[Law, ...] = ("us", "eu") if frozen_meat.law == "both" else (frozen_meat.law,)
    each = [_by_table(frozen_meat, law) for law in laws]
    known = [lasts_s for lasts_s in each if lasts_s is not None]
    return max(known) if len(known) == len(each) else None


def _by_table(meat: Frozen, law: Law) -> float | None:
    if meat.warmest_c is None:
        return None
    lasts = [
        step.lasts_s
        for step in TABLES[law, meat.measured]
        if meat.warmest_c <= step.at_c + NEAR and _is_thin_enough(meat.thickness_m, step.thickness_m)
    ]
    return min(lasts, default=None)


def _is_thin_enough(thickness_m: float | None, most_m: float | None) -> bool:
    return most_m is None or (thickness_m is not None and thickness_m <= most_m + NEAR)


def is_frozen_long_enough(meat: Frozen) -> bool | None:
    """None where something of it is not known."""
    if meat.warmest_c is None or meat.lasts_s is None or (meat.measured == "product" and meat.thickness_m is None):
        return None
    asked = asked_s(meat)
    return asked is not None and meat.lasts_s >= asked * (1 - NEAR)


def freezing_said(meat: Frozen) -> Sentence:
    """What was noted against what is asked."""
    met, asked = is_frozen_long_enough(meat), asked_s(meat)
    if met is None:
        return Sentence("It was frozen against trichinella, but how cold, how long or how thick is not known.")
    amounts = {"warm": Amount(meat.warmest_c or 0.0, TEMPERATURE), "lasted": Amount(meat.lasts_s or 0.0, HOURS)}
    if asked is None:
        thick = Amount(meat.thickness_m or 0.0, LENGTH)
        words: Message = "No table counts meat frozen at {warm} that is so thick: {thick}."
        if meat.measured == "core":
            words = "No table counts meat frozen at {warm} in its middle."
        return Sentence(words, {**amounts, "thick": thick} if meat.measured == "product" else amounts)
    amounts["asked"] = Amount(asked, HOURS)
    long_enough: Message = "Frozen at {warm} for {lasted}: at least the {asked} that kill trichinella in pork."
    too_short: Message = "Frozen at {warm} for {lasted} only: it takes {asked} to kill trichinella in pork."
    return Sentence(long_enough if met else too_short, amounts)
