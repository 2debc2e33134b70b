"""The chamber's air since a batch was hung, as the forecaster takes it.

Between two changes of its set-points it is what loggers wrote, day by day; else what was read in the chamber, on the
mean; what is set, where nobody read. A day without a log goes on as the one before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from statistics import fmean

from core.daybook.air_logs import Logged, logged_between, means
from core.daybook.book import Book
from core.daybook.corrections.readings import corrected
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.instruments import Shelf
from core.dry.pace import Air
from core.units import DAY_S

FINEST = 0.005
"""Of humidity: no hygrometer tells finer, and one more reading need not draw every curve anew."""
MOST_CHANGES, MOST_READINGS = 12, 200
SAME_C, SAME_HUMIDITY = 1.0, 0.03
"""Days of a log that differ by no more are one air: about what two loggers differ by. Common practice; no published
source."""
A_DAY, LEAST_OF_A_DAY_S = timedelta(days=1), DAY_S / 4
_AirRead = tuple[datetime, AirRead]


def air_since(book: Book, hung_at: datetime) -> tuple[Air, ...]:
    """From when it was hung; empty where nobody chose set-points, read a humidity or brought a log of one."""
    chosen = [
        (line.entry.happened_at, line.fact)
        for line in book.recent(CHAMBER, SetPointsChosen, MOST_CHANGES)
        if isinstance(line.fact, SetPointsChosen)
    ]
    before = [each for each in chosen if each[0] <= hung_at]
    changes = [*before[-1:], *(each for each in chosen if each[0] > hung_at)]
    readings = [each for each in book.kept("air-read", CHAMBER, lambda: _readings(book)) if each[0] >= hung_at]
    logs = [each for each in logged_between(book, hung_at) if each.humidity is not None]
    if not changes:
        return tuple(_stretch(hung_at, None, None, readings, logs, hung_at)) if readings or logs else ()
    ends = [*(at for at, _ in changes[1:]), None]
    stretches = (
        _stretch(at, fact, end, readings, logs, hung_at) for (at, fact), end in zip(changes, ends, strict=True)
    )
    return tuple(air for each in stretches for air in each)


def _stretch(
    at: datetime,
    fact: SetPointsChosen | None,
    end: datetime | None,
    readings: Sequence[_AirRead],
    logs: Sequence[Logged],
    hung_at: datetime,
) -> Iterator[Air]:
    """The air between two changes of what is set."""
    from_s = max((at - hung_at).total_seconds(), 0.0)
    days = _days([each for each in logs if each.at >= at and (end is None or each.at < end)])
    for place, day in enumerate(days):
        begins_s = (day[0].at - hung_at).total_seconds()
        temperature_c, humidity = means(day)
        yield _air(begins_s if place else from_s, temperature_c, humidity or 0.0)
    unlogged = max(at, days[-1][-1].ends) if days else at
    within = [each for each in readings if each[0] >= unlogged and (end is None or each[0] < end)]
    if within:
        begins_s = (within[0][0] - hung_at).total_seconds()
        humidities = [fact.humidity for _, fact in within if fact.humidity is not None]
        yield _air(begins_s if days else from_s, fmean(fact.temperature_c for _, fact in within), fmean(humidities))
    elif fact is not None and not days:
        yield Air(from_s, fact.temperature_c, fact.humidity)


def _days(logs: Sequence[Logged]) -> list[list[Logged]]:
    """A log in days, those that follow each other in the same air together. A day with a few hours of it goes with the
    one before."""
    found: list[list[Logged]] = []
    for day in _by_day(logs):
        is_short = sum(each.known_s for each in day) < LEAST_OF_A_DAY_S
        if found and (is_short or _is_same(found[-1], day)):
            found[-1] += day
        else:
            found.append(day)
    return found


def _by_day(logs: Sequence[Logged]) -> list[list[Logged]]:
    found: dict[int, list[Logged]] = {}
    for each in logs:
        found.setdefault((each.at - logs[0].at) // A_DAY, []).append(each)
    return list(found.values())


def _is_same(one: Sequence[Logged], other: Sequence[Logged]) -> bool:
    (one_c, one_humidity), (other_c, other_humidity) = means(one), means(other)
    return abs(one_c - other_c) <= SAME_C and abs((one_humidity or 0.0) - (other_humidity or 0.0)) <= SAME_HUMIDITY


def _air(from_s: float, temperature_c: float, humidity: float) -> Air:
    return Air(from_s, round(temperature_c, 1), round(humidity / FINEST) * FINEST)


def _readings(book: Book) -> list[_AirRead]:
    shelf = Shelf(book)
    found: list[_AirRead] = []
    for line in book.recent(CHAMBER, AirRead, MOST_READINGS):
        at = line.entry.happened_at
        fact = corrected(shelf, line.fact, at).fact
        if isinstance(fact, AirRead) and fact.humidity is not None:
            found.append((at, fact))
    return found
