"""When the pieces of a batch are to be weighed next: by what a weight would teach, and within a week."""

import pytest

from core.daybook.batch import open_batches
from core.daybook.book import Book
from core.daybook.due.batches import due
from core.daybook.due.line import Due
from core.daybook.facts.batch import PieceTakenDown
from core.daybook.weigh_days import are_known, known_weigh_days, weigh_days, work_out
from core.quantities import METRIC
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.proven import soured


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    return soured(kitchen)


def dried(kitchen: Kitchen, batch: str, tag: str, until: int, pace: float = 0.06) -> str:
    """Of a kilogram, hung on day 3 and weighed every third day."""
    piece = kitchen.hang(batch, tag, at=3)
    for day in range(3, until, 3):
        kitchen.weigh(piece, round(1 - pace * day**0.5, 3), at=3 + day)
    return piece


def weighing(book: Book, day: float) -> Due:
    batches = open_batches(book)
    return next(
        line for line in due(batches, NOON + day * DAY, known_weigh_days(book, batches)) if line.task == "weigh"
    )


def worked_out(kitchen: Kitchen) -> Book:
    book = kitchen.book
    list(work_out(book, open_batches(book)))
    return book


def test_until_it_is_worked_out_a_piece_is_due_after_a_week(kitchen: Kitchen, batch: str):
    kitchen.hang(batch, "J-1", at=3)
    assert weighing(kitchen.book, 3).at == NOON + 10 * DAY


def test_a_piece_that_little_is_known_of_is_due_sooner(kitchen: Kitchen, batch: str):
    kitchen.hang(batch, "J-1", at=3)
    line = weighing(worked_out(kitchen), 3)
    assert line.at == NOON + 4 * DAY
    assert line.fact.say(METRIC) == "hung 5 Nov 2026, 12:00; a weight then tells more than the forecast"


def test_before_its_target_it_is_due_in_time(kitchen: Kitchen, batch: str):
    dried(kitchen, batch, "J-1", until=31)
    line = weighing(worked_out(kitchen), 33)
    assert line.at < NOON + 40 * DAY
    assert line.fact.say(METRIC).endswith("; the target may be reached by then")


def test_only_those_due_within_a_day_of_the_first_are_counted(kitchen: Kitchen, batch: str):
    dried(kitchen, batch, "J-1", until=22)
    kitchen.hang(batch, "J-2", at=24)
    book = worked_out(kitchen)
    days = weigh_days(book, open_batches(book)[0])
    first, second = sorted(day.at for day in days.values())
    assert second > first + DAY
    assert weighing(book, 24).words.say(METRIC) == "Weigh 1 piece of Juniper coarse"


def test_a_piece_at_its_target_is_due_after_the_week(kitchen: Kitchen):
    batch = kitchen.begin(least_s=60 * 86400.0)
    kitchen.cure(batch)
    kitchen.read(batch, 4.9, at=1, temperature_c=20)
    dried(kitchen, batch, "J-1", until=43)
    book = worked_out(kitchen)
    assert weigh_days(book, open_batches(book)[0]) == {}
    assert weighing(book, 45).at == NOON + 52 * DAY


def test_a_piece_taken_down_is_not_weighed(kitchen: Kitchen, batch: str):
    kitchen.note(PieceTakenDown("ready"), dried(kitchen, batch, "J-1", until=22), at=30)
    hanging = kitchen.hang(batch, "J-2", at=3)
    book = worked_out(kitchen)
    assert list(weigh_days(book, open_batches(book)[0])) == [hanging]


def test_every_piece_that_hangs_is_counted_while_it_is_worked_out(kitchen: Kitchen, batch: str):
    for tag in ("J-1", "J-2", "J-3"):
        kitchen.hang(batch, tag, at=3)
    assert list(work_out(kitchen.book, open_batches(kitchen.book))) == [1, 2, 3]


def test_what_was_worked_out_is_known_until_the_book_learns_something(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch, "J-1", at=3)
    book = worked_out(kitchen)
    assert are_known(book, open_batches(book)[0])
    kitchen.weigh(piece, 0.97, at=4)
    book.learn(kitchen.records)
    assert not are_known(book, open_batches(book)[0])
