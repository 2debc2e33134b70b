"""What a field of a fact may hold: a fact that could not be true is not let into the journal.

A field that is asked for in a box has its bounds, and the form, from that box (`asked`, `boxes`). What is read on an
instrument may lie beyond them once its check has corrected it, and what is made elsewhere than in the box may too: such
a field says what it `holds`.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import attrs
from attrs import NOTHING, Attribute
from attrs.validators import and_, ge, gt, in_, le, lt, max_len, min_len, optional

from core.units import DAY_S
from core.worksheet import Choice, Number

Box = Number | Choice
_BOX = "box"
_Validator = Callable[[Any, "Attribute[Any]", Any], Any]


def finite(_instance: object, attribute: Attribute[Any], value: float) -> None:
    if not -1e12 < value < 1e12:  # a NaN fails this too
        raise ValueError(f"{attribute.name} is not a number")


above_zero = and_(finite, gt(0))
not_negative = and_(finite, ge(0))
share = and_(finite, ge(0), le(1))
some_share = and_(finite, gt(0), le(1))
ph_value = and_(finite, ge(0), le(14))
celsius = and_(finite, gt(-60), lt(150))
name = and_(min_len(1), max_len(60))
"""What somebody calls a thing: no form takes a longer one."""
lasting = and_(finite, ge(0), le(100 * 365 * DAY_S))
"""Seconds of something that ended while somebody waited."""
on_a_clock = and_(finite, gt(-1e11), lt(3e10))
"""Seconds since 1970 that are still in a calendar."""
WITHIN_TIMES, WITHIN_K = 100.0, 20.0


def near(box: Number) -> _Validator:
    """What an instrument's check has corrected, or an older form let in: beyond the box of a mass, not by a world."""
    return and_(finite, ge(box.low / WITHIN_TIMES), le(box.high * WITHIN_TIMES))


def near_c(box: Number) -> _Validator:
    """The same of a temperature."""
    return and_(finite, ge(box.low - WITHIN_K), le(box.high + WITHIN_K))


def asked(box: Box, *, default: Any = NOTHING, holds: _Validator | None = None) -> Any:
    """A field named like its box. default: of an entry that does not hold the field. holds: rather than the box's own
    bounds."""
    allowed = holds or _within(box)
    if isinstance(box, Number) and box.optional and default is NOTHING:
        default = None
    if default is None:
        allowed = optional(allowed)
    return attrs.field(default=default, validator=allowed, metadata={_BOX: box})


def boxes(kind: type[Any], *names: str) -> tuple[Box, ...]:
    """What a fact of this kind is asked for, in the order of its fields: all of it, or what is named."""
    asked = {each.name: each.metadata[_BOX] for each in attrs.fields(kind) if _BOX in each.metadata}
    return tuple(asked[name] for name in names or asked)


def numbers(kind: type[Any], *names: str) -> tuple[Number, ...]:
    """Those of its boxes that take a number."""
    return tuple(each for each in boxes(kind, *names) if isinstance(each, Number))


def _within(box: Box) -> _Validator:
    if isinstance(box, Choice):
        return in_(box.options)

    def within(_instance: object, _attribute: Attribute[Any], value: float) -> None:
        box.check(value)

    return within
