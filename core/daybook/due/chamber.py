"""What the chamber itself waits for: a run that was begun, a tank that runs dry, a basin that fills.

Water is told some days ahead, for the earliest day that its figures allow.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.chamber.levels import Outlook
from core.daybook.book import Book
from core.daybook.due.line import Due, Task
from core.daybook.facts.chamber import CHAMBER
from core.daybook.preparation import Run, latest_run
from core.daybook.water import basin, tank
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence

TOLD_AHEAD = timedelta(days=6)
"""No further than a weekday names the day."""


def chamber_due(book: Book, now: datetime) -> list[Due]:
    """One line for each, in no order."""
    run, filled = latest_run(book), tank(book)
    return [
        *(_run(run) if run is not None and run.open else ()),
        *_water("fill", filled.outlook if filled else None, now),
        *_water("empty", basin(book).outlook, now),
    ]


def _run(run: Run) -> Iterable[Due]:
    """Due since it was begun, or from when what stands has stood long enough."""
    until = run.ready[0].until if run.ready else None
    done = {"done": Amount(len(run.done), COUNT), "all": Amount(len(run.tasks), COUNT)}
    words = Sentence("Continue preparing the chamber: {done} of {all} done", done)
    yield Due("prepare", run.id, words, until or run.begun_at)


_WATER: dict[Task, tuple[Message, Message]] = {
    "fill": ("Fill the humidifier", "Fill the humidifier by {day}"),
    "empty": ("Empty the basin", "Empty the basin by {day}"),
}


def _water(task: Task, outlook: Outlook | None, now: datetime) -> Iterable[Due]:
    if outlook is None or outlook.earliest - now > TOLD_AHEAD:
        return
    by = outlook.earliest.astimezone(now.tzinfo)
    late = by <= now
    at_once, in_time = _WATER[task]
    words = Sentence(at_once) if late else Sentence(in_time, {"day": _day(by, now)})
    yield Due(task, CHAMBER, words, by, says_when=not late)


def _day(moment: datetime, now: datetime) -> Sentence:
    days = (moment.date() - now.date()).days
    return Sentence(("today", "tomorrow")[days] if days < 2 else _WEEKDAYS[moment.weekday()])


_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
