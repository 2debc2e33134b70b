"""What the chamber itself waits for: a run that was begun, a tank that runs dry, a basin that fills.

Water is due some days ahead, for the earliest day that its figures allow.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.book import Book
from core.daybook.due.line import Due
from core.daybook.facts.chamber import CHAMBER, HumidifierCharged, HumidifierFilled
from core.daybook.preparation import Run, latest_run
from core.daybook.water import basin, tank
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence

TOLD_AHEAD = timedelta(days=6)
"""No further than a weekday names the day."""


def chamber_due(book: Book, now: datetime) -> list[Due]:
    """One line for each, in no order."""
    run = latest_run(book)
    return [*(_run(run) if run is not None and run.open else ()), *_fill(book, now), *_empty(book, now)]


def _run(run: Run) -> Iterable[Due]:
    """Due since it was begun, or from when what stands has stood long enough."""
    until = run.ready[0].until if run.ready else None
    words = Sentence("{act} the chamber", {"act": Sentence("Continue preparing")})
    done = {"done": Amount(len(run.done), COUNT), "all": Amount(len(run.tasks), COUNT)}
    yield Due("prepare", run.id, words, until or run.begun_at, Sentence("{done} of {all} done", done))


def _fill(book: Book, now: datetime) -> Iterable[Due]:
    words, filled = Sentence("{act} the humidifier", {"act": Sentence("Fill")}), tank(book)
    if filled is None:
        yield from _dry_since_run(book, words)
    elif filled.outlook is not None and filled.outlook.earliest <= now + TOLD_AHEAD:
        by = filled.outlook.earliest
        last: Message = "it may have run dry; filled {moment}" if by <= now else "filled {moment}"
        yield Due("fill", CHAMBER, words, by, Sentence(last, {"moment": filled.filled_at}))


def _dry_since_run(book: Book, words: Sentence) -> Iterable[Due]:
    """A preparation empties the tank: a humidifier that had water before it has none now."""
    run = latest_run(book)
    had_water = any(book.latest(CHAMBER, kind) for kind in (HumidifierCharged, HumidifierFilled))
    if run is not None and run.finished_at is not None and had_water:
        yield Due("fill", CHAMBER, words, run.finished_at, Sentence("empty since the chamber was prepared"))


def _empty(book: Book, now: datetime) -> Iterable[Due]:
    known = basin(book)
    if known.outlook is None or known.outlook.earliest > now + TOLD_AHEAD:
        return
    fact = None if known.emptied_at is None else Sentence("emptied {moment}", {"moment": known.emptied_at})
    yield Due("empty", CHAMBER, Sentence("{act} the basin", {"act": Sentence("Empty")}), known.outlook.earliest, fact)
