"""A log of weeks in stretches of whole hours: what a piece went through, small enough to be kept in the journal."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Sequence

from attrs import frozen

from core.chamber.series import Series
from core.refusals import OutOfRange
from core.units import HOUR_S

FINEST_C, FINEST_HUMIDITY = 100, 1000
"""Parts of a degree and of the whole that are kept: finer than any logger."""


@frozen
class Stretches:
    """One for each stretch that holds a reading. begins_s: from the first reading. humidities: empty where the probe
    has no hygrometer. known_s: for how long its readings stand, no longer than the stretch."""

    stretch_s: float
    begins_s: tuple[float, ...]
    temperatures_c: tuple[float, ...]
    highest_c: tuple[float, ...]
    known_s: tuple[float, ...]
    humidities: tuple[float | None, ...]


def stretched(series: Series, most: int) -> Stretches:
    """In whole hours, at most so many. series: what it measured of warmth. Raises OutOfRange on "file"."""
    warm = series.warm()
    if len(warm) < 2:
        raise OutOfRange("file", "This log has fewer than two temperatures.")
    first_s = warm.times_s[0]
    stretch_s = HOUR_S * math.ceil(max((warm.lasts_s + HOUR_S) / most, warm.interval_s, HOUR_S) / HOUR_S)
    members = defaultdict[int, list[int]](list)
    for at, at_s in enumerate(warm.times_s):
        members[int((at_s - first_s) / stretch_s)].append(at)
    held = warm.held_s
    humid = [_mean(warm.humidities, each) for each in members.values()] if warm.has_humidity else []
    return Stretches(
        stretch_s,
        tuple(each * stretch_s for each in members),
        tuple(_rounded(_mean(warm.temperatures_c, each), FINEST_C) for each in members.values()),
        tuple(max(warm.temperatures_c[at] for at in each) for each in members.values()),
        tuple(min(max(round(sum(held[at] for at in each)), 1.0), stretch_s) for each in members.values()),
        tuple(None if math.isnan(each) else _rounded(each, FINEST_HUMIDITY) for each in humid),
    )


def _mean(column: Sequence[float], members: Sequence[int]) -> float:
    """Of those that were measured; NaN where none was."""
    found = [column[at] for at in members if column[at] == column[at]]
    return math.fsum(found) / len(found) if found else math.nan


def _rounded(value: float, parts: int) -> float:
    return round(value * parts) / parts
