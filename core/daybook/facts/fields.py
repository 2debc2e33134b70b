"""What a field of a fact may hold: a fact that could not be true is not let into the journal."""

from __future__ import annotations

from typing import Any

from attrs import Attribute
from attrs.validators import and_, ge, gt, le, lt


def finite(_instance: object, attribute: Attribute[Any], value: float) -> None:
    if not -1e12 < value < 1e12:  # a NaN fails this too
        raise ValueError(f"{attribute.name} is not a number")


above_zero = and_(finite, gt(0))
not_negative = and_(finite, ge(0))
share = and_(finite, ge(0), le(1))
ph_value = and_(finite, ge(0), le(14))
celsius = and_(finite, gt(-60), lt(150))
