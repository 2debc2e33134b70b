"""The chamber's last day as a line in its band: how moist it was, beside what is set."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import frozen

from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.set_points import set_points
from core.quantities import RELATIVE_HUMIDITY, Amount
from core.sentence import Rounded, Sentence
from web.instruments import corrected_of
from web.journal import book
from web.visitor import now

DAY = timedelta(days=1)
LEAST_READINGS, MOST_READINGS = 3, 24
LEAST_SPAN = 0.06
"""A hygrometer's own wavering must not look like weather."""
WIDTH, HEIGHT, EDGE = 256.0, 48.0, 3.0


@frozen
class DayLine:
    """In the drawing's own lengths. band: its top and its height, the set-point a line where no tolerance is known."""

    points: str
    band: tuple[float, float] | None
    words: Sentence


def day_line() -> DayLine | None:
    """None below three readings of the humidity within a day."""
    read = _readings()
    if len(read) < LEAST_READINGS:
        return None
    wanted = _wanted()
    values = [value for _, value in read]
    low, high = min(values + list(wanted or ())), max(values + list(wanted or ()))
    middle, span = (low + high) / 2, max(high - low, LEAST_SPAN)

    def y(value: float) -> float:
        return EDGE + (HEIGHT - 2 * EDGE) * (0.5 - (value - middle) / span)

    points = " ".join(f"{WIDTH * (1 - (now() - at) / DAY):.1f},{y(value):.1f}" for at, value in read)
    band = None if wanted is None else (y(wanted[1]), max(1.0, y(wanted[0]) - y(wanted[1])))
    told = {
        "low": Rounded(Amount(min(values), RELATIVE_HUMIDITY)),
        "high": Rounded(Amount(max(values), RELATIVE_HUMIDITY)),
    }
    return DayLine(points, band, Sentence("24 h: {low} to {high}", told))


def _readings() -> list[tuple[datetime, float]]:
    recent = [line for line in book().recent(CHAMBER, AirRead, MOST_READINGS) if line.entry.happened_at > now() - DAY]
    facts = [(line.entry.happened_at, corrected_of(line).fact) for line in recent if line.entry.happened_at <= now()]
    return [(at, fact.humidity) for at, fact in facts if isinstance(fact, AirRead) and fact.humidity is not None]


def _wanted() -> tuple[float, float] | None:
    """What is set, either way by its tolerance; None while nothing is."""
    line = set_points(book())
    if line is None or not isinstance(line.fact, SetPointsChosen):
        return None
    either_way = line.fact.humidity_differential or 0.0
    return line.fact.humidity - either_way, line.fact.humidity + either_way
