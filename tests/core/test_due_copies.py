"""When the book is to be copied elsewhere."""

import pytest

from core.daybook.due.copies import COPY_EVERY, Copied, copy_due
from core.quantities import METRIC
from tests.core.kitchen import DAY, NOON, Kitchen


@pytest.fixture
def kitchen() -> Kitchen:
    kitchen = Kitchen()
    kitchen.cure(kitchen.begin(at=1), at=2)
    return kitchen


def test_an_empty_book_needs_no_copy():
    assert copy_due(Kitchen().book, None, NOON) == []


def test_it_is_copied_once_a_week():
    """Our own choice: no longer than the browser that clears soonest waits."""
    assert COPY_EVERY == 7 * DAY


def test_never_copied_it_is_due_a_week_after_its_first_entry(kitchen: Kitchen):
    (line,) = copy_due(kitchen.book, None, NOON + 8 * DAY)
    assert line.at == NOON + 8 * DAY
    assert line.fact is not None
    assert (line.words.say(METRIC), line.fact.say(METRIC)) == ("Save a copy of the book", "no copy yet of 2 entries")


def test_it_is_due_a_week_after_the_last_copy_and_counts_what_came_since(kitchen: Kitchen):
    (line,) = copy_due(kitchen.book, Copied(NOON + 3 * DAY, 1), NOON + 10 * DAY)
    assert line.at == NOON + 10 * DAY
    assert line.fact is not None
    assert line.fact.say(METRIC) == "1 entry since the last one"


@pytest.mark.parametrize("copied", [None, Copied(NOON + DAY, 1)])
def test_before_its_day_nothing_is_told(kitchen: Kitchen, copied: Copied | None):
    assert copy_due(kitchen.book, copied, NOON + 7.999 * DAY) == []


def test_where_nothing_was_written_since_no_copy_is_missing(kitchen: Kitchen):
    assert copy_due(kitchen.book, Copied(NOON, 2), NOON + 90 * DAY) == []


def test_a_copy_of_more_than_there_is_was_of_another_book(kitchen: Kitchen):
    assert copy_due(kitchen.book, Copied(NOON, 3), NOON + 90 * DAY) == copy_due(kitchen.book, None, NOON + 90 * DAY)
