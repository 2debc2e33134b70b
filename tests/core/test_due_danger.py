"""In which order things are to be done: the most dangerous first, then by time."""

from typing import get_args

import pytest

from core.daybook.due.danger import RANKS, in_order, is_urgent
from core.daybook.due.line import Due, Task
from core.sentence import Sentence
from tests.core.kitchen import DAY, NOON

NOW = NOON + 10 * DAY


def line(task: Task, day: float = 0.0, about: str = "one", runs: bool = False) -> Due:
    return Due(task, about, Sentence("{act}", {"act": task}), NOON + day * DAY, until=NOW + DAY if runs else None)


def test_every_task_has_its_one_rank():
    ranked = [task for tasks in RANKS for task in tasks]
    assert sorted(ranked) == sorted(get_args(Task))


@pytest.mark.parametrize(
    ("greater", "lesser"),
    [
        ("reading", "discard"), ("reading", "deviation"), ("deviation", "discard"), ("discard", "replace"),
        ("discard", "weigh"), ("recheck", "weigh"), ("replace", "check"), ("cure", "weigh"), ("take-down", "weigh"),
        ("weigh", "fill"), ("fill", "check"), ("check", "copy"),
    ],
)  # fmt: skip
def test_the_greater_danger_comes_first_however_long_the_lesser_has_waited(greater: Task, lesser: Task):
    """Our own order, no source."""
    assert [each.task for each in in_order([line(lesser, 1)], [line(greater, 9)], now=NOW)] == [greater, lesser]


def test_of_one_danger_the_longest_overdue_comes_first():
    lines = in_order([line("weigh", 5, "late"), line("weigh", 3, "later")], now=NOW)
    assert [each.about for each in lines] == ["later", "late"]


def test_what_is_not_due_yet_comes_after_all_that_is_and_by_time_alone():
    lines = in_order([line("cure", 14), line("copy", 12), line("check", 9), line("weigh", 13)], now=NOW)
    assert [each.task for each in lines] == ["check", "copy", "weigh", "cure"]


def test_a_clock_that_runs_comes_first_before_its_reading_is_due():
    lines = in_order([line("discard", 9), line("reading", 10.4, runs=True)], now=NOW)
    assert [each.task for each in lines] == ["reading", "discard"]


@pytest.mark.parametrize(
    ("task", "day", "urgent"),
    [
        ("reading", 9, True), ("deviation", 9, True), ("discard", 10, True), ("replace", 9, True), ("recheck", 9, True),
        ("cure", 9, False), ("weigh", 0, False), ("discard", 10.001, False), ("copy", 0, False),
    ],
)  # fmt: skip
def test_urgent_is_what_is_due_and_may_hurt_somebody(task: Task, day: float, urgent: bool):
    assert is_urgent(line(task, day), NOW) is urgent
