"""Rows that lie years from all others: each limit from both sides."""

import pytest

from core.chamber.logs.leaps import LONGEST_PAUSE_S, NOT_SET, RAN_AWAY, without_leaps
from core.chamber.logs.rows import Rows, Skipped
from core.refusals import Refusal
from core.sentence import Sentence

BEGUN_S = 1.75e9


def rows(*times: float) -> Rows:
    made = Rows(0)
    for line, at_s in enumerate(times, 2):
        made.times.append(at_s)
        made.lines.append(line)
    return made


def minutes(count: int) -> list[float]:
    return [BEGUN_S + 60.0 * place for place in range(count)]


@pytest.mark.parametrize(("earlier_s", "left"), [(LONGEST_PAUSE_S, 100), (LONGEST_PAUSE_S + 1, 99)])
def test_a_row_more_than_a_year_before_the_rest_is_left_out(earlier_s: float, left: int):
    assert len(without_leaps(rows(BEGUN_S - earlier_s, *minutes(99)), []).times) == left


def test_it_is_told_of_each_line():
    skipped: list[Skipped] = []
    without_leaps(rows(9.5e8, *minutes(98), 4e9), skipped)
    assert skipped == [Skipped(2, Sentence(NOT_SET)), Skipped(101, Sentence(RAN_AWAY))]


def not_set(count: int) -> Rows:
    """Of a hundred rows, the first so many in February 2000."""
    return rows(*(9.5e8 + 60.0 * place for place in range(count)), *minutes(100 - count))


def test_a_twentieth_is_left_out():
    assert len(without_leaps(not_set(5), []).times) == 95


def test_more_are_not_left_out_without_asking():
    with pytest.raises(Refusal, match="At line 8 the clock leaps from 8 Feb 2000"):
        without_leaps(not_set(6), [])


def test_a_log_of_two_years_without_a_pause_is_whole():
    daily = rows(*(BEGUN_S + 86_400.0 * place for place in range(800)))
    assert without_leaps(daily, []) is daily


def test_no_rows_have_no_leap():
    assert not without_leaps(rows(), []).times
