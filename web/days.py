"""When something is, as one says it: "yesterday", "Friday 17:30", "3 days ago", "1:05:00 left"."""

from __future__ import annotations

import math
from collections.abc import Iterable
from datetime import datetime
from itertools import groupby

from attrs import evolve

from core.daybook.book import Line
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence, Value
from web.visitor import now

NEAR_DAYS: dict[int, Message] = {-1: "yesterday", 0: "today", 1: "tomorrow"}
WEEKDAYS: tuple[Message, ...] = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS: tuple[Message, ...] = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
OVER: Message = "The time is over."
TIME_LEFT: Message = "{time} left"
MINUTES_OF_AN_HOUR, MINUTES_OF_A_DAY = 60, 60 * 24


def day(moment: datetime) -> Value:
    """The date where it is a week off or more, to either side."""
    off = _days_off(moment)
    if not _is_near(moment):
        return moment.date()
    return Sentence(NEAR_DAYS[off] if off in NEAR_DAYS else WEEKDAYS[moment.weekday()])


def hour(moment: datetime) -> str:
    return f"{moment:%H:%M}"


def clock(moment: datetime) -> Value:
    return Sentence("{day} {time}", {"day": day(moment), "time": hour(moment)}) if _is_near(moment) else moment


def near(told: Sentence) -> Sentence:
    """The same sentence, its moments as one says them."""
    return evolve(told, values={name: _near(value) for name, value in told.values.items()})


def _near(value: Value) -> Value:
    if isinstance(value, Sentence):
        return near(value)
    return clock(value) if isinstance(value, datetime) else value


def in_full(moment: datetime) -> Sentence:
    """ "Monday 30 November", for the head of that very day."""
    month, weekday = Sentence(MONTHS[moment.month - 1]), Sentence(WEEKDAYS[moment.weekday()])
    return Sentence("{weekday} {day} {month}", {"weekday": weekday, "day": str(moment.day), "month": month})


def left(until: datetime) -> Sentence:
    """The page counts on in the same words (web/browser/time_left.js)."""
    seconds = math.ceil((until - now()).total_seconds())
    if seconds <= 0:
        return Sentence(OVER)
    hours, minutes = seconds // 3600, seconds // 60 % 60
    time = f"{hours}:{minutes:02}:{seconds % 60:02}" if hours else f"{minutes}:{seconds % 60:02}"
    return Sentence(TIME_LEFT, {"time": time})


def ago(moment: datetime) -> Sentence:
    """In one word or two."""
    minutes = int((now() - moment).total_seconds() // 60)
    if minutes < 2:
        return Sentence("just now")
    if minutes < MINUTES_OF_AN_HOUR:
        return Sentence("{count} minute ago", _counted(minutes), plural="{count} minutes ago")
    if minutes < MINUTES_OF_A_DAY:
        return Sentence("{count} hour ago", _counted(minutes // MINUTES_OF_AN_HOUR), plural="{count} hours ago")
    return Sentence("{count} day ago", _counted(minutes // MINUTES_OF_A_DAY), plural="{count} days ago")


def by_day(lines: Iterable[tuple[Line, str]]) -> list[list[tuple[Line, str]]]:
    """A log's lines, in their order, those of one day together."""
    return [list(each) for _, each in groupby(lines, key=lambda line: line[0].entry.happened_at.date())]


def _counted(count: int) -> dict[str, Value]:
    return {"count": Amount(count, COUNT)}


def _days_off(moment: datetime) -> int:
    return (moment.date() - now().date()).days


def _is_near(moment: datetime) -> bool:
    return abs(_days_off(moment)) < len(WEEKDAYS)
