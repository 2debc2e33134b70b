"""The chamber's air as loggers wrote it, corrected by their checks: stretch by stretch, and thinned for a chart."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import datetime, timedelta
from itertools import zip_longest
from statistics import fmean

from attrs import frozen

from core.daybook.book import Book
from core.daybook.facts.air_log import AirLogTaken
from core.daybook.facts.chamber import CHAMBER
from core.daybook.instrument_checks import Measured
from core.daybook.instruments import Instrument, Shelf

MEASURED: tuple[Measured, Measured] = ("temperature", "humidity")


@frozen
class Logged:
    """One stretch of one probe. log: the id of its line. known_s: for how much of it a reading stands."""

    log: str
    at: datetime
    lasts_s: float
    known_s: float
    temperature_c: float
    highest_c: float
    humidity: float | None

    @property
    def ends(self) -> datetime:
        return self.at + timedelta(seconds=self.lasts_s)


@frozen
class AirPoint:
    """The air at a time of a chart: the mean of what all loggers wrote about then."""

    at: datetime
    temperature_c: float
    humidity: float | None


def logged(book: Book) -> tuple[Logged, ...]:
    """By time. What a logger wrote that had failed its check is left out. Kept until the book learns something."""
    return book.kept("air-logged", CHAMBER, lambda: tuple(sorted(_logged(book), key=lambda each: each.at)))


def logged_between(book: Book, since: datetime, until: datetime | None = None) -> list[Logged]:
    """What began in that time."""
    return [each for each in logged(book) if each.at >= since and (until is None or each.at < until)]


def air_course(book: Book, since: datetime, until: datetime, most: int = 300) -> tuple[AirPoint, ...]:
    """For a chart: at most so many points of equal parts of that time; none where nothing was logged."""
    part_s = (until - since).total_seconds() / most
    parts: dict[int, list[Logged]] = {}
    for each in logged_between(book, since, until):
        parts.setdefault(int((each.at - since).total_seconds() / part_s), []).append(each)
    return tuple(_point(members) for _, members in sorted(parts.items()))


def means(members: Sequence[Logged]) -> tuple[float, float | None]:
    """Of the temperature and of the humidity; each stretch counts for as long as it is known."""
    humid = [each for each in members if each.humidity is not None]
    temperature_c = fmean((each.temperature_c for each in members), (each.known_s for each in members))
    if not humid:
        return temperature_c, None
    return temperature_c, fmean((each.humidity or 0.0 for each in humid), (each.known_s for each in humid))


def _point(members: Sequence[Logged]) -> AirPoint:
    middle = members[0].at + (members[-1].ends - members[0].at) / 2
    return AirPoint(middle, *means(members))


def _logged(book: Book) -> Iterator[Logged]:
    shelf = Shelf(book)
    for line in book.of_kind(AirLogTaken.KIND):
        if isinstance(line.fact, AirLogTaken):
            yield from _stretches(line.id, line.fact, line.entry.happened_at, shelf.find(line.fact.instrument))


def _stretches(log_id: str, log: AirLogTaken, at: datetime, instrument: Instrument | None) -> Iterator[Logged]:
    ends = at + timedelta(seconds=log.ends_s)
    if _has_failed(instrument, "temperature", at, ends):
        return
    no_humidity = _has_failed(instrument, "humidity", at, ends)
    warm, humid = (_by_check(instrument, each, at) for each in MEASURED)
    rows = zip_longest(log.begins_s, log.known_s, log.temperatures_c, log.highest_c, log.humidities)
    for begins_s, known_s, temperature_c, highest_c, humidity in rows:
        yield Logged(
            log_id,
            at + timedelta(seconds=begins_s),
            log.stretch_s,
            known_s,
            warm(temperature_c),
            warm(highest_c),
            None if humidity is None or no_humidity else min(max(humid(humidity), 0.0), 1.0),
        )


def _has_failed(instrument: Instrument | None, measured: Measured, at: datetime, ends: datetime) -> bool:
    """Whether it had failed its check when the log began, or by its end."""
    checks = [] if instrument is None else [instrument.in_force(measured, each) for each in (at, ends)]
    return any(check is not None and check.failed for check in checks)


def _by_check(instrument: Instrument | None, measured: Measured, at: datetime) -> Callable[[float], float]:
    """The correction of the check in force when the log began."""
    correction = None if instrument is None else instrument.correction(measured, at)
    return float if correction is None else correction.apply
