"""The example season: entries like any others, told so that they end now."""

from datetime import UTC, datetime, timedelta, timezone

import pytest

from core.daybook.book import Book
from core.daybook.entries import from_record, to_record
from core.daybook.season import season

NOW = datetime(2026, 11, 30, 18, 0, tzinfo=timezone(timedelta(hours=1)))


@pytest.mark.parametrize("now", [NOW, datetime(2028, 2, 29, 0, 1, tzinfo=UTC)])
def test_it_ends_now_and_nothing_lies_ahead(now: datetime):
    moments = [each.happened_at for each in season(now)]
    assert moments == sorted(moments)
    assert now - timedelta(days=1) < moments[-1] <= now


def test_its_entries_are_kept_and_read_back_like_any():
    told = season(NOW)
    assert [from_record(to_record(each)) for each in told] == list(told)


def test_a_book_takes_every_one_of_them():
    book = Book()
    book.learn([to_record(each) for each in season(NOW)])
    assert len(book) == len(season(NOW))


def test_it_is_the_same_at_the_same_moment():
    assert season(NOW) == season(NOW)
