"""Laws of the order of what is to do."""

from datetime import timedelta
from itertools import pairwise
from typing import get_args

from hypothesis import given
from hypothesis import strategies as st

from core.daybook.due.danger import danger, in_order
from core.daybook.due.line import Due, Task
from core.sentence import Sentence
from tests.core.kitchen import NOON

moments = st.integers(-500, 500).map(lambda hours: NOON + timedelta(hours=hours))
LINES = st.lists(
    st.builds(
        Due,
        st.sampled_from(get_args(Task)),
        st.sampled_from(["one", "two", "three"]),
        st.just(Sentence("{act}", {"act": "do"})),
        moments,
        until=st.none() | moments,
    )
)


@given(LINES, moments)
def test_no_line_of_lesser_danger_stands_before_one_of_greater(lines, now):
    ranks = [danger(line, now) for line in in_order(lines, now=now)]
    assert ranks == sorted(ranks)


@given(LINES, moments)
def test_lines_of_one_danger_stand_by_time(lines, now):
    for earlier, later in pairwise(in_order(lines, now=now)):
        assert danger(earlier, now) != danger(later, now) or earlier.at <= later.at


@given(LINES, moments, st.randoms(use_true_random=False))
def test_the_order_of_what_was_written_does_not_matter(lines, now, chance):
    shuffled = list(lines)
    chance.shuffle(shuffled)
    told, as_drawn = ([(each.task, each.at) for each in in_order(some, now=now)] for some in (shuffled, lines))
    assert told == as_drawn


@given(LINES, moments)
def test_nothing_is_lost(lines, now):
    assert len(in_order(lines, now=now)) == len(lines)
