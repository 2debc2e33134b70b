"""The tank's and the basin's water as it was logged: how much a day, and when is it the next one's turn?

Counted from the last preparation run on, which empties both, and over the last pourings only: the chamber asks for more
or less as the meat dries and the weather turns.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from itertools import pairwise

from attrs import evolve, frozen

from core.chamber.levels import LARGEST_M3, ONE_FILLING, Outlook, Poured, runs_dry, runs_full
from core.daybook.book import Book, Line
from core.daybook.facts.chamber import CHAMBER, BasinEmptied, BasinKnown, HumidifierCharged, HumidifierFilled
from core.daybook.facts.preparation import PreparationBegun
from core.refusals import OutOfRange
from core.sentence import Message, Said
from core.units import HOUR_S

COUNTED = 10
"""So many pourings back are looked at (common practice; no published source)."""


@frozen
class Tank:
    """level_m3: after the last filling. holds_m3: to its mark, or the level of the first filling where none was given.

    outlook is None while too little is known; why says what is missing.
    """

    filled_at: datetime
    level_m3: float
    holds_m3: float
    outlook: Outlook | None
    why: Said

    def left_m3(self, moment: datetime) -> float:
        """At its usual rate since the last filling; what was filled, where no rate is known."""
        if self.outlook is None:
            return self.level_m3
        gone_m3 = self.outlook.rate.value * (moment - self.filled_at).total_seconds()
        return min(max(self.level_m3 - gone_m3, 0.0), self.level_m3)


@frozen
class Basin:
    holds_m3: float | None
    emptied_at: datetime | None
    emptied: tuple[Poured, ...]
    outlook: Outlook | None
    why: Said


FILL_TWICE: Message = "After two fillings, more than an hour apart, you will see when it runs dry."
EMPTY_TWICE: Message = "After emptying it twice, more than an hour apart, you will see when it is full."
HOLDS_UNKNOWN: Message = "Enter how much the basin holds to see when it is full."


def tank(book: Book) -> Tank | None:
    """None until the humidifier was filled for the first time since the last preparation run."""
    lines = _since_run(book, [*book.recent(CHAMBER, HumidifierCharged, COUNTED), *_filled(book)])[-COUNTED:]
    if not lines:
        return None
    mark_m3 = tank_mark_m3(book)
    used: list[Poured] = []
    level_m3 = 0.0
    for line in lines:
        poured_m3, new_level_m3 = _filling(line, level_m3, mark_m3)
        used.append(Poured(line.entry.happened_at, max(0.0, level_m3 + poured_m3 - new_level_m3)))
        level_m3 = new_level_m3
    holds_m3 = max(mark_m3 or 0.0, level_m3)
    if len(used) < 2:
        return Tank(lines[-1].entry.happened_at, level_m3, holds_m3, None, FILL_TWICE)
    try:
        outlook, why = runs_dry(used, holds_m3, level_m3), ""
    except OutOfRange as refusal:
        outlook, why = None, refusal.said
    return Tank(lines[-1].entry.happened_at, level_m3, holds_m3, outlook, why)


def tank_mark_m3(book: Book) -> float | None:
    """The tank's own highest mark, as the last charge gave it."""
    charge = book.latest(CHAMBER, HumidifierCharged)
    return charge.fact.tank_m3 if charge is not None and isinstance(charge.fact, HumidifierCharged) else None


def _filling(line: Line, level_m3: float, mark_m3: float | None) -> tuple[float, float]:
    """What went in, and how much the tank holds after it. A charge fills it again as high as it stood; the first one
    stands as high as what went in."""
    fact = line.fact
    if isinstance(fact, HumidifierFilled):
        return fact.water_m3, fact.now_holds_m3 or mark_m3 or max(level_m3, fact.water_m3)
    assert isinstance(fact, HumidifierCharged)
    return fact.water_m3, max(level_m3, fact.water_m3)


def _filled(book: Book) -> list[Line]:
    return book.recent(CHAMBER, HumidifierFilled, COUNTED)


def basin(book: Book) -> Basin:
    known = book.latest(CHAMBER, BasinKnown)
    holds_m3 = known.fact.holds_m3 if known and isinstance(known.fact, BasinKnown) else None
    lines = _since_run(book, book.recent(CHAMBER, BasinEmptied, COUNTED))
    emptied = tuple(
        Poured(line.entry.happened_at, line.fact.volume_m3) for line in lines if isinstance(line.fact, BasinEmptied)
    )
    emptied_at = emptied[-1].at if emptied else None
    if holds_m3 is None:
        return Basin(None, emptied_at, emptied, None, HOLDS_UNKNOWN)
    if len(emptied) < 2:
        return Basin(holds_m3, emptied_at, emptied, None, EMPTY_TWICE)
    try:
        return Basin(holds_m3, emptied_at, emptied, runs_full(emptied, holds_m3), "")
    except OutOfRange as refusal:
        return Basin(holds_m3, emptied_at, emptied, None, refusal.said)


def most_drained(emptied: Iterable[Poured]) -> tuple[float, float] | None:
    """The fastest that the basin was seen to fill: how much, in how many seconds. None before it can be told."""
    fillings: list[Poured] = []
    for each in sorted(emptied, key=lambda each: each.at):
        if fillings and each.at - fillings[-1].at <= ONE_FILLING:
            each = evolve(each, volume_m3=each.volume_m3 + fillings.pop().volume_m3)
        fillings.append(each)
    intervals = [(later.volume_m3, (later.at - earlier.at).total_seconds()) for earlier, later in pairwise(fillings)]
    usable = [each for each in intervals if 0 < each[0] < LARGEST_M3 and each[1] >= 6 * HOUR_S]
    return max(usable, key=lambda each: each[0] / each[1], default=None)


def _since_run(book: Book, lines: list[Line]) -> list[Line]:
    begun = book.latest(CHAMBER, PreparationBegun)
    kept = [line for line in lines if begun is None or line.entry.happened_at > begun.entry.happened_at]
    return sorted(kept, key=lambda line: line.order)
