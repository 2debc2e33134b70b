"""What is to do as an iCalendar file (RFC 5545), for the calendar that somebody looks at anyway.

It says the same until the book learns something: read in once more it moves what has moved and doubles nothing. What is
done meanwhile stays in that calendar, for the daybook cannot reach it: so each line says how old it is.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from datetime import UTC, datetime
from typing import Any, cast

from core.daybook.book import Book
from core.daybook.due.line import BOOK, Due
from core.daybook.facts.chamber import CHAMBER
from core.quantities import Reader
from core.sentence import Message, Sentence

NAMED_BY = "curing-daybook"
AS_OF: Message = "As the daybook knew it on {moment}. Look there before you act on it."


def calendar_of(book: Book, lines: Iterable[Due], now: datetime, reader: Reader) -> bytes:
    """An event for each line; what is overdue stands on today. now: of the visitor, with the offset of their days."""
    from icalendar import Calendar, Event  # here, for few ask for it

    known_at = _last_written(book, now)
    file = cast(Any, Calendar())
    for name, value in (("prodid", f"-//{NAMED_BY}//EN"), ("version", "2.0"), ("method", "PUBLISH")):
        file.add(name, value)
    for line in lines:
        event = cast(Any, Event())
        event.add("uid", _uid(book, line))
        event.add("dtstamp", known_at.astimezone(UTC))
        event.add("sequence", len(book))
        event.add("dtstart", _start(line, now))
        event.add("summary", _plain(line.words.say(reader)))
        event.add("description", "\n".join(_plain(each.say(reader)) for each in _described(line, known_at, now)))
        event.add("transp", "TRANSPARENT")
        file.add_component(event)
    return file.to_ical()


def _uid(book: Book, line: Due) -> str:
    """The same for the same work, whichever tablet says it; the chamber and the book have no id of their own."""
    about = min(each["id"] for each in book.records()) if line.about in (CHAMBER, BOOK) else line.about
    return f"{line.task}-{about}@{NAMED_BY}"


def _start(line: Due, now: datetime) -> Any:
    """A clock that runs has its minute; all else is a day's work."""
    at = max(line.at, now) if line.until is None else line.at
    return at.astimezone(UTC) if line.until is not None else at.astimezone(now.tzinfo).date()


def _described(line: Due, known_at: datetime, now: datetime) -> Iterable[Sentence]:
    if line.fact is not None:
        yield line.fact
    if line.until is not None:
        yield Sentence("The last safe moment is {moment}.", {"moment": line.until.astimezone(now.tzinfo)})
    yield Sentence(AS_OF, {"moment": known_at.astimezone(now.tzinfo)})


def _last_written(book: Book, now: datetime) -> datetime:
    """When the book last learned something, by what it holds: not when the file was asked for."""
    return max((datetime.fromisoformat(each["written_at"]) for each in book.records()), default=now)


def _plain(text: str) -> str:
    """Without what no calendar can hold: a tab is a space, and a name may have come from another program's file."""
    return "".join(" " if each.isspace() else each for each in text if each.isspace() or _is_shown(each))


def _is_shown(letter: str) -> bool:
    return unicodedata.category(letter) != "Cc"
