"""To do as a calendar file: read back by its own library, and by RFC 5545 letter for letter."""

from datetime import UTC, date, datetime, timedelta

import pytest
from icalendar import Calendar

from core.daybook.book import Book
from core.daybook.due.line import BOOK, Due
from core.daybook.facts.chamber import CHAMBER
from core.quantities import Reader
from core.sentence import Sentence
from tests.core.kitchen import NOON, Kitchen
from tests.web.conftest import MORNING, Visitor
from web.calendar_file import calendar_of

HARD_NAMES = (
    "Fennel; 12, coarse",
    "back\\slash",
    'quote"d',
    "Würstchen " * 12,
    "two\nlines",
    "tab\tand \x07 bell",
    "🥩 beef",
)


def events(visitor: Visitor) -> list:
    return Calendar.from_ical(visitor.get("/to-do.ics").html).walk("VEVENT")


def by_uid(visitor: Visitor) -> dict[str, object]:
    return {str(each["uid"]): each for each in events(visitor)}


def of_lines(*lines: Due, now: datetime = NOON) -> bytes:
    kitchen = Kitchen()
    kitchen.begin()
    return calendar_of(Book(kitchen.records), lines, now, Reader())


def line(name: str = "Fennel", **more) -> Due:
    return Due("cure", "b-1", Sentence("Weigh {batch}", {"batch": name}), **{"at": NOON} | more)


def only(written: bytes):
    (event,) = Calendar.from_ical(written).walk("VEVENT")
    return event


def test_today_offers_it_with_its_lines(visitor: Visitor):
    visitor.start_batch()
    (link,) = [each for each in visitor.get("/").all("a") if each.text == "Add these to a calendar"]
    assert link["href"] == "/to-do.ics"
    assert "download" in link.attributes


def test_while_the_days_are_worked_out_it_is_not_offered(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid())
    assert "Add these to a calendar" not in visitor.get("/").text


def test_it_is_a_calendar_named_by_the_day(visitor: Visitor):
    visitor.start_batch()
    head = visitor.get("/to-do.ics").headers
    assert head["Content-Type"] == "text/calendar; charset=utf-8"
    assert head["Content-Disposition"] == 'attachment; filename="curing-daybook-2026-11-02.ics"'


def test_each_line_of_today_is_an_event(visitor: Visitor):
    visitor.start_batch("uncured")
    visitor.hang(visitor.cured_and_acid())
    lines = [each.text for each in visitor.get("/").all("p", "what")]
    assert len(lines) == len(events(visitor)) == len(by_uid(visitor))
    assert all(any(line.startswith(str(each["summary"])) for line in lines) for each in events(visitor))


def test_it_says_the_same_until_the_book_learns_something(visitor: Visitor):
    visitor.start_batch()
    first = visitor.get("/to-do.ics").html
    visitor.wait(minutes=20)
    assert visitor.get("/to-do.ics").html == first


def test_read_in_again_what_has_moved_is_the_same_event_and_newer(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid())
    (before,) = (each for each in events(visitor) if "Weigh" in each["summary"])
    visitor.wait(days=3)
    visitor.fill(f"{piece}/weigh", mass_kg="1200")
    (after,) = (each for each in events(visitor) if "Weigh" in each["summary"])
    assert after["uid"] == before["uid"]
    assert after["dtstart"].dt > before["dtstart"].dt
    assert after["sequence"] > before["sequence"]
    assert after["dtstamp"].dt > before["dtstamp"].dt


def test_two_tablets_with_the_same_book_name_their_events_alike(visitor: Visitor, other: Visitor):
    visitor.start_batch()
    visitor.fill("/chamber/air", temperature_c="12")
    other.read_in(visitor.get("/yours/export").html)
    other.now = visitor.now
    assert by_uid(other).keys() == by_uid(visitor).keys()


def test_its_stamp_is_when_something_was_last_written(visitor: Visitor):
    visitor.start_batch()
    visitor.wait(days=2)
    (event,) = events(visitor)
    assert abs(event["dtstamp"].dt - MORNING) < timedelta(minutes=1)


def test_work_of_a_day_stands_on_its_day_and_overdue_work_on_today():
    later = NOON + timedelta(days=3)
    assert only(of_lines(line(at=later)))["dtstart"].dt == later.date()
    assert only(of_lines(line(at=NOON - timedelta(days=9))))["dtstart"].dt == NOON.date()


def test_the_day_is_the_visitors_own():
    late = datetime(2026, 11, 3, 23, 30, tzinfo=UTC)
    assert only(of_lines(line(at=late), now=NOON.astimezone(MORNING.tzinfo)))["dtstart"].dt == date(2026, 11, 4)


def test_a_clock_that_runs_has_its_minute_and_its_last_safe_moment():
    at, until = NOON + timedelta(hours=5), NOON + timedelta(hours=6)
    event = only(of_lines(line(at=at, until=until)))
    assert event["dtstart"].dt == at
    assert f"The last safe moment is {until:%-d %b %Y, %H:%M}." in event["description"]


def test_each_event_says_how_old_it_is():
    assert "As the daybook knew it on" in only(of_lines(line()))["description"]


def test_the_chamber_and_the_book_are_told_apart_from_those_of_another():
    def uid(about: str) -> str:
        return only(of_lines(Due("fill", about, Sentence("Fill"), NOON)))["uid"]

    assert all(about not in uid(about).partition("-")[2].partition("@")[0] for about in (CHAMBER, BOOK))


@pytest.mark.parametrize("name", HARD_NAMES)
def test_a_name_comes_back_as_it_was_typed(name: str):
    shown = name.replace("\n", " ").replace("\t", " ").replace("\x07", "")
    assert str(only(of_lines(line(name)))["summary"]) == f"Weigh {shown}"


@pytest.mark.parametrize("name", HARD_NAMES)
def test_no_line_of_the_file_is_longer_than_75_octets(name: str):
    """RFC 5545, 3.1: lines end in CR and LF, and a longer one is folded."""
    written = of_lines(line(name))
    assert written.endswith(b"\r\n")
    lines = written.split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert not any(b"\n" in each or b"\r" in each for each in lines)


def test_it_holds_what_the_standard_asks_of_a_calendar_and_of_an_event():
    """RFC 5545, 3.6 and 3.6.1."""
    file = Calendar.from_ical(of_lines(line()))
    assert {"PRODID", "VERSION"} <= set(file)
    assert {"UID", "DTSTAMP", "DTSTART"} <= set(only(of_lines(line())))
