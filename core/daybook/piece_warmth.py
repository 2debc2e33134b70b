"""How warm a piece had it since it was hung, by the logs of the chamber's air; *not known* where nothing was logged.

Where several loggers wrote, the warmest of them counts, hour by hour: nobody knows at which of them the piece hangs.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime

from attrs import frozen

from core.daybook.air_logs import Logged, logged
from core.daybook.book import Book
from core.daybook.facts.batch import PieceTakenDown
from core.daybook.piece import Piece
from core.dry.warmth import mean_kinetic_c
from core.ferment.rules import RULES
from core.quantities import HOURS, TEMPERATURE, Amount
from core.sentence import Message, Rounded, Sentence
from core.units import HOUR_S

LINE_C = RULES["us"].base_c
"""From here on degree-hours count."""
BY_THE_HOUR: Message = (
    "From the mean of each hour, of the warmest logger. Swings within an hour add a few tenths of a degree at most."
)


@frozen
class _Hour:
    """known_s: for how much of it some logger's readings stand."""

    known_s: float
    temperature_c: float
    highest_c: float


@frozen
class PieceWarmth:
    """lasts_s: since it was hung, until it was taken down. known_s: for how much of that something was logged.

    above_s: how long it was warmer than LINE_C, at most: an hour with one such reading counts whole.
    """

    lasts_s: float
    known_s: float
    kinetic_c: float
    warmest_c: float
    above_s: float

    @property
    def says(self) -> tuple[Sentence, ...]:
        told = {
            "kinetic": _shown(self.kinetic_c),
            "warmest": _shown(self.warmest_c),
            "line": _shown(LINE_C),
            "above": _hours(self.above_s),
            "known": _hours(self.known_s),
            "unknown": _hours(self.lasts_s - self.known_s),
        }
        known: Message = "Mean kinetic temperature {kinetic}, {warmest} at the warmest, over {known} logged."
        above: Message = "Warmer than {line}, where degree-hours begin, for {above} at most."
        below: Message = "Never logged warmer than {line}, where degree-hours begin."
        unknown: Message = "Not known for {unknown} since it was hung: nothing was logged."
        says = [Sentence(known, told), Sentence(above if self.above_s else below, told)]
        if self.lasts_s - self.known_s >= HOUR_S / 2:
            says.append(Sentence(unknown, told))
        return (*says, Sentence(BY_THE_HOUR))


def piece_warmth(book: Book, piece: Piece, now: datetime) -> PieceWarmth | None:
    """None where nothing was logged while it hung."""
    until = min(_taken_down(piece) or now, now)
    hours = list(_hours_of(logged(book), piece.hung_at, until))
    if not hours:
        return None
    return PieceWarmth(
        (until - piece.hung_at).total_seconds(),
        sum(each.known_s for each in hours),
        mean_kinetic_c([(each.temperature_c, each.known_s) for each in hours]),
        max(each.highest_c for each in hours),
        sum(each.known_s for each in hours if each.highest_c > LINE_C),
    )


def _taken_down(piece: Piece) -> datetime | None:
    return next((line.entry.happened_at for line in piece.lines if isinstance(line.fact, PieceTakenDown)), None)


def _hours_of(stretches: tuple[Logged, ...], since: datetime, until: datetime) -> Iterator[_Hour]:
    """Counted from when it was hung; the last may be a part of one."""
    whole_s = (until - since).total_seconds()
    logs: dict[int, dict[str, list[_Hour]]] = defaultdict(lambda: defaultdict(list))
    for each in stretches:
        begins_s = (each.at - since).total_seconds()
        ends_s = min(begins_s + each.lasts_s, whole_s)
        hour = int(max(begins_s, 0.0) // HOUR_S)
        while hour * HOUR_S < ends_s:
            within_s = min(ends_s, (hour + 1) * HOUR_S) - max(begins_s, hour * HOUR_S)
            known_s = within_s * each.known_s / each.lasts_s
            logs[hour][each.log].append(_Hour(known_s, each.temperature_c, each.highest_c))
            hour += 1
    for _, by_log in sorted(logs.items()):
        yield _warmest([_of_one_log(members) for members in by_log.values()])


def _of_one_log(members: list[_Hour]) -> _Hour:
    known_s = sum(each.known_s for each in members)
    mean_c = sum(each.known_s * each.temperature_c for each in members) / known_s
    return _Hour(known_s, mean_c, max(each.highest_c for each in members))


def _warmest(logs: list[_Hour]) -> _Hour:
    return _Hour(
        max(each.known_s for each in logs),
        max(each.temperature_c for each in logs),
        max(each.highest_c for each in logs),
    )


def _shown(celsius: float) -> Rounded:
    return Rounded(Amount(celsius, TEMPERATURE))


def _hours(seconds: float) -> Rounded:
    return Rounded(Amount(seconds, HOURS))
