"""Columns that only say again what others say: a temperature in the other unit, a dew point without its name."""

from __future__ import annotations

import math

from attrs import evolve

from core.chamber.logs import heads
from core.chamber.logs.column import Column
from core.chamber.logs.scales import Unit
from core.chamber.logs.seen import Seen
from core.chamber.logs.values import Number

MOSTLY = 0.9
AS_ROUNDED_K = 0.2


def without_doubles(columns: list[Column], seen: list[Seen]) -> list[Column]:
    """A temperature given again in °F, and a dew point that its head does not call one, are no probes."""
    warm = [at for at, column in enumerate(columns) if column.role == "temperature"]
    humid = [at for at, column in enumerate(columns) if column.role == "humidity"]
    doubles = {
        at
        for at in warm
        for other in warm
        if other != at
        and (
            _is_double(columns, seen, other, at)
            or (
                heads.role_in(seen[at].label) == "unknown"
                and any(_is_dew_point(columns, seen, at, other, wet) for wet in humid)
            )
        )
    }
    return [evolve(column, role="ignored") if at in doubles else column for at, column in enumerate(columns)]


def _is_double(columns: list[Column], seen: list[Seen], celsius: int, fahrenheit: int) -> bool:
    is_pair = columns[celsius].unit == "°C" and columns[fahrenheit].unit == "°F"
    return is_pair and agree(seen[celsius], "°C", seen[fahrenheit], "°F", AS_ROUNDED_K)


def agree(one: Seen, unit: Unit, other: Seen, other_unit: Unit, within: float) -> bool:
    pairs = [
        (_celsius(a, unit), _celsius(b, other_unit))
        for a, b in zip(one.row_by_row, other.row_by_row, strict=True)
        if a is not None and b is not None
    ]
    close = sum(1 for a, b in pairs if abs(a - b) <= within)
    return bool(pairs) and close >= MOSTLY * len(pairs)


def _celsius(found: Number, unit: Unit) -> float:
    in_f = (found.unit or unit) == "°F"
    return (found.value - 32) * 5 / 9 if in_f else found.value


def _is_dew_point(columns: list[Column], seen: list[Seen], at: int, warm: int, humid: int) -> bool:
    triples = [
        (_celsius(dew, columns[at].unit), _celsius(air, columns[warm].unit), wet.value)
        for dew, air, wet in zip(seen[at].row_by_row, seen[warm].row_by_row, seen[humid].row_by_row, strict=True)
        if dew is not None and air is not None and wet is not None
    ]
    share = 1.0 if columns[humid].unit == "fraction" else 0.01
    close = sum(1 for dew, air, wet in triples if wet > 0 and abs(dew - _rough_dew_point(air, wet * share)) < 0.5)
    apart = sum(1 for dew, air, _ in triples if air - dew > 0.8)
    return bool(triples) and close >= MOSTLY * len(triples) and apart >= MOSTLY * len(triples)


def _rough_dew_point(air_c: float, humidity: float) -> float:
    """Magnus' formula with the constants of WMO-No. 8: enough to recognise a column, not to report a figure."""
    gamma = math.log(humidity) + 17.62 * air_c / (243.12 + air_c)
    return 243.12 * gamma / (17.62 - gamma)
