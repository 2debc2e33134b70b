"""Times counted on where a clock was put back an hour or set: what decides it, each bound from both sides."""

from array import array

import pytest

from core.chamber.logs.clock_changes import count_on, moment
from core.chamber.logs.rows import Rows
from core.sentence import Sentence
from tests.core.telling import in_words
from tests.core.telling import told as told_of

FRIDAY_S = 20_259 * 86_400.0
"""20 June 2025, no day on which clocks change."""
TEN_MIN = 600.0


def at(clock: str) -> float:
    hour, minute, *second = map(int, clock.split(":"))
    return FRIDAY_S + 3600.0 * hour + 60.0 * minute + (second[0] if second else 0)


def every(step_s: float, first: str, count: int) -> list[float]:
    return [at(first) + step_s * n for n in range(count)]


def rows_of(times: list[float], alike: dict[int, int] | None = None) -> Rows:
    """Rows whose values all differ, but that those of `alike` are those of another row."""
    rows = Rows(1)
    rows.times, rows.lines = array("d", times), array("L", range(2, len(times) + 2))
    values = [float(n) for n in range(len(times))]
    for one, other in (alike or {}).items():
        values[one] = values[other]
    rows.values = (array("d", values),)
    return rows


def told(times: list[float], step: float = TEN_MIN, alike: dict[int, int] | None = None) -> str:
    """In a word: a clock that was not put back an hour may still have been set."""
    rows = rows_of(times, alike)
    said = " ".join(in_words(count_on(rows, step)))
    moved = [after - before for before, after in zip(times, rows.times, strict=True)]
    assert (max(moved) > 0) is bool(said)
    return "hour" if "put back an hour" in said else "set" if "set back" in said else said


def clocks(text: str) -> list[float]:
    return [at(each) for each in text.split()]


BEFORE = "9:00 9:10 9:20 9:30 9:40 9:50 "
FIRST, AGAIN = "10:00 10:10 10:20 10:30 10:40 10:50 ", "10:00 10:10 10:20 10:30 10:40 10:50 "
AFTER = "11:00 11:10 11:20 11:30"


@pytest.mark.parametrize(
    ("first", "again", "word"),
    [
        (BEFORE + FIRST, AGAIN + AFTER, "hour"),
        # 4.8 rows are 48 minutes of every ten
        (BEFORE + FIRST, "10:00 10:10 10:30 10:40 10:50 " + AFTER, "hour"),
        (BEFORE + FIRST, "10:00 10:10 10:40 10:50 " + AFTER, ""),
        (BEFORE + "10:00 10:20 10:30 10:40 10:50 ", AGAIN + AFTER, "hour"),
        (BEFORE + "10:00 10:30 10:40 10:50 ", AGAIN + AFTER, ""),
        # half a step before the hour and behind it
        ("9:00 9:10 9:55 10:10 10:20 10:30 10:50 ", AGAIN + AFTER, "hour"),
        ("9:00 9:10 9:54:59 10:10 10:20 10:30 10:50 ", AGAIN + AFTER, ""),
        (BEFORE + FIRST, "10:00 10:10 10:20 10:30 10:55 11:20 11:40", "hour"),
        (BEFORE + FIRST, "10:00 10:10 10:20 10:30 10:55:01 11:20 11:40", ""),
        # in order, and no time twice
        (BEFORE + "10:00 10:10 10:20 10:20 10:30 10:40 10:50 ", AGAIN + AFTER, ""),
        (BEFORE + FIRST, "10:00 10:10 10:20 10:20 10:30 10:40 10:50 " + AFTER, "set"),
        # the log's first and last row count
        ("10:10 10:20 10:30 10:40 10:50 ", AGAIN + AFTER, "hour"),
        (BEFORE + FIRST, "10:00 10:10 10:20 10:30 10:40", "hour"),
        (BEFORE + FIRST, "10:00 10:10 10:20 10:30", "set"),
    ],
)
def test_an_hour_is_lived_twice_where_it_is_full_and_in_order_both_times(first: str, again: str, word: str):
    assert told(clocks(first) + clocks(again)) == word


@pytest.mark.parametrize(("equal", "word"), [(2, "hour"), (3, "")])
def test_and_where_less_than_half_of_it_has_the_same_values(equal: int, word: str):
    times = clocks(BEFORE + FIRST + AGAIN + AFTER)
    assert told(times, alike={12 + n: 6 + n for n in range(equal)}) == word


@pytest.mark.parametrize(
    ("step", "late_s", "is_hour"),
    [
        (60, 31, True), (60, 32, False), (60, -31, True), (60, -32, False),
        (600, 120, True), (600, 121, False), (600, -120, True), (600, -121, False),
    ],
)  # fmt: skip
def test_an_hour_is_one_within_half_a_step_and_a_second_or_two_minutes(step: float, late_s: float, is_hour: bool):
    before, again = every(step, "8:00", round(10_800 / step)), every(step, "10:00", round(7200 / step))
    assert told([*before, *(each + late_s for each in again)], step) == ("hour" if is_hour else "set")


@pytest.mark.parametrize(("step", "word"), [(1800.0, "hour"), (1801.0, "set")])
def test_every_half_hour_is_often_enough_on_any_day(step: float, word: str):
    assert told(every(1800.0, "6:00", 10) + every(1800.0, "10:00", 5), step) == word


def test_a_row_before_the_last_one_is_not_taken_for_one_of_the_hour():
    """Every half hour 1.6 rows are an hour: of 9:00 and 10:30 only the second is."""
    assert told(clocks("7:00 7:30 8:00 8:30 9:00 10:30 10:00 10:30 11:00 11:30"), 1800.0) == ""
    assert told(clocks("7:00 7:30 8:00 8:30 9:00 9:30 10:00 10:30 10:00 11:30 12:00"), 1800.0) == ""


def test_all_from_there_on_is_an_hour_later_and_the_line_is_told():
    times = clocks(BEFORE + FIRST + AGAIN + AFTER)
    rows = rows_of(times)
    assert list(in_words(count_on(rows, TEN_MIN))) == [
        "Line 14: the clock was put back an hour (20 Jun 2025, 10:50 was followed by 20 Jun 2025, 10:00). Times from "
        "here on are counted on from before the change."
    ]
    assert list(rows.times) == [*times[:12], *(each + 3600 for each in times[12:])]


def half_day(again: list[float]) -> list[float]:
    return every(TEN_MIN, "0:00", 72) + again


def test_a_clock_that_was_set_back_goes_on_a_step_later_and_the_line_is_told():
    times = half_day(every(TEN_MIN, "10:00", 30))
    rows = rows_of(times)
    assert list(in_words(count_on(rows, TEN_MIN))) == [
        "Line 74: the clock was set back by 120 min (20 Jun 2025, 11:50 was followed by 20 Jun 2025, 10:00). Times "
        "from here on are counted on from before it."
    ]
    assert list(rows.times) == every(TEN_MIN, "0:00", 102)


@pytest.mark.parametrize(("pause_s", "word"), [(900, "set"), (901, "")])
def test_a_clock_that_was_set_nowhere_jumps_ahead_by_more_than_a_step_and_a_half(pause_s: float, word: str):
    again = every(TEN_MIN, "10:00", 30)
    assert told(half_day([*again, again[-1] + pause_s])) == word


def test_nor_falls_back_a_second_time():
    assert told(half_day([*every(TEN_MIN, "10:00", 30), *every(TEN_MIN, "13:00", 5)])) == ""


@pytest.mark.parametrize(("back_s", "word"), [(60, ""), (61, "set")])
def test_two_minutes_are_the_least_that_is_set(back_s: float, word: str):
    before = every(60, "8:00", 100)
    assert told([*before, *(before[-1] - back_s + 60 * n for n in range(50))], 60) == word


@pytest.mark.parametrize(("back_s", "word"), [(85_799, "set"), (85_800, "")])
def test_and_less_than_a_day_the_most(back_s: float, word: str):
    before = every(TEN_MIN, "0:00", 300)
    assert told([*before, *(before[-1] - back_s + TEN_MIN * n for n in range(200))]) == word


@pytest.mark.parametrize(
    ("again", "repeats", "word"),
    [(30, 5, "set"), (30, 6, ""), (8, 3, "set"), (8, 4, "")],
)
def test_what_is_read_again_is_a_repeat_where_it_is_half_of_either_part(again: int, repeats: int, word: str):
    """Twelve rows before the fall; as many behind it, or eight where the log ends."""
    times = half_day(every(TEN_MIN, "10:00", again))
    assert told(times, alike={72 + n: 60 + n for n in range(repeats)}) == word


@pytest.mark.parametrize(("repeats", "word"), [(3, "set"), (4, "")])
def test_the_rows_before_the_fall_may_be_the_fewer(repeats: int, word: str):
    """Every quarter of an hour from 10:00 to 11:45: eight rows, and eleven behind the fall."""
    before = [*every(TEN_MIN, "0:00", 60), *every(900, "10:00", 8)]
    times = [*before, *every(TEN_MIN, "10:00", 30)]
    assert told(times, alike={68 + 3 * n: 60 + 2 * n for n in range(repeats)}) == word


@pytest.mark.parametrize(("clock", "text"), [("9:59:29", "20 Jun 2025, 09:59"), ("0:00", "20 Jun 2025, 00:00")])
def test_a_moment_is_shown_to_the_minute(clock: str, text: str):
    assert told_of(Sentence("{at}", {"at": moment(at(clock))})) == text


def test_what_begins_again_from_before_its_first_row_is_another_log():
    assert told([at("10:00"), at("10:10"), *every(TEN_MIN, "9:50", 20)]) == ""
