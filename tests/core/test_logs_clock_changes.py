"""A clock on the wall that was put back or set: what is counted on, what is refused; each bound from both sides."""

from array import array
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest

from core.chamber.logs import Log, guess, read
from core.chamber.logs.clock_changes import count_on
from core.chamber.logs.rows import Rows
from core.refusals import Refusal
from tests.core.telling import in_words, told

HEAD = "Time,Temp (°C),RH (%)"
SUNDAY = datetime(2025, 10, 26, tzinfo=UTC)


def rows_at(times: list[datetime]) -> list[str]:
    return [f"{time:%Y-%m-%d %H:%M:%S},{12 + i % 13 / 10:.1f},{80 + i % 11 / 10:.1f}" for i, time in enumerate(times)]


def log_of(lines: list[str]) -> Log:
    data = "\n".join((HEAD, *lines, "")).encode()
    return read(data, guess(data))


def every(minutes: float, start: datetime, count: int) -> list[datetime]:
    return [start + timedelta(minutes=minutes * i) for i in range(count)]


def steps(log: Log) -> set[int]:
    times = log.series[0].times_s
    return {round(b - a) for a, b in pairwise(times)}


def put_back(minutes: int, turn: datetime, count: int = 30) -> list[datetime]:
    """The wall's time of a logger whose clock is put back an hour at `turn`."""
    start = turn - timedelta(minutes=minutes * (count // 2))
    return [time if time < turn else time - timedelta(hours=1) for time in every(minutes, start, count)]


@pytest.mark.parametrize("minutes", [45, 60, 90, 120, 180])
def test_a_coarse_logger_s_hour_is_counted_on(minutes: int):
    log = log_of(rows_at(put_back(minutes, SUNDAY + timedelta(hours=3))))
    assert steps(log) == {minutes * 60}
    assert "the clock was put back an hour" in told(log.remarks[0])


@pytest.mark.parametrize(
    ("turn", "counted"),
    [
        (datetime(2025, 10, 26, 3, tzinfo=UTC), True),
        (datetime(2025, 11, 2, 2, tzinfo=UTC), True),
        (datetime(2025, 4, 6, 3, tzinfo=UTC), True),
        (datetime(2025, 9, 28, 3, tzinfo=UTC), True),
        (datetime(2025, 3, 30, 3, tzinfo=UTC), True),
        (datetime(2025, 8, 31, 3, tzinfo=UTC), False),
        (datetime(2025, 12, 7, 3, tzinfo=UTC), False),
        (datetime(2025, 5, 4, 3, tzinfo=UTC), False),
        (datetime(2025, 10, 25, 3, tzinfo=UTC), False),
        (datetime(2025, 10, 27, 3, tzinfo=UTC), False),
        (datetime(2025, 10, 26, 4, tzinfo=UTC), True),
        (datetime(2025, 10, 26, 5, tzinfo=UTC), False),
    ],
)
def test_a_coarse_logger_is_believed_on_a_sunday_before_four_in_a_month_of_the_change(turn: datetime, counted: bool):
    log = log_of(rows_at(put_back(60, turn)))
    assert any("counted on from before" in remark for remark in in_words(log.remarks)) == counted
    assert bool(log.skipped) != counted


def test_an_hour_s_row_that_is_repeated_is_no_change_of_the_clock():
    lines = rows_at(every(60, SUNDAY - timedelta(hours=10), 20))
    log = log_of([*lines[:12], lines[11], *lines[12:]])
    assert len(log.skipped) == 1
    assert not log.remarks


@pytest.mark.parametrize(("late_s", "counted"), [(-121, False), (-120, True), (120, True), (121, False)])
def test_an_hour_is_believed_within_two_minutes(late_s: int, counted: bool):
    times = put_back(60, SUNDAY + timedelta(hours=3))
    late = [time + timedelta(seconds=late_s if at >= 15 else 0) for at, time in enumerate(times)]
    rows = Rows(1)
    rows.times = array("d", [time.timestamp() for time in late])
    rows.lines = array("L", range(len(late)))
    rows.values = (array("d", [float(at) for at in range(len(late))]),)
    said = count_on(rows, 3600.0)
    assert any("put back an hour" in each for each in in_words(said)) == counted


@pytest.mark.parametrize("minutes", [3, 5, 25, 45, 75])
def test_a_clock_that_was_set_back_once_is_counted_on(minutes: int):
    times = every(10, datetime(2025, 6, 20, tzinfo=UTC), 100)
    log = log_of(
        rows_at([time if at < 50 else time - timedelta(minutes=minutes + 10) for at, time in enumerate(times)])
    )
    assert steps(log) == {600}
    assert f"the clock was set back by {minutes + 10} min" in told(log.remarks[0])


def test_rows_that_were_moved_are_put_back_where_they_were():
    lines = rows_at(every(10, datetime(2025, 6, 20, tzinfo=UTC), 100))
    log = log_of([*lines[:50], *lines[60:], *lines[50:60]])
    assert steps(log) == {600}
    assert in_words(log.remarks) == ("The rows were not in order of time; they were sorted.",)


def test_a_part_that_is_written_twice_is_repeats():
    lines = rows_at(every(10, datetime(2025, 6, 20, tzinfo=UTC), 100))
    log = log_of([*lines, *lines[70:]])
    assert len(log.series[0].times_s) == 100
    assert len(log.skipped) == 30


@pytest.mark.parametrize(("at", "counted"), [(20, True), (19, False)])
def test_what_begins_again_before_half_of_it_is_another_log(at: int, counted: bool):
    times = every(10, datetime(2025, 6, 20, tzinfo=UTC), 80)
    lines = rows_at([time if n < at else time - timedelta(minutes=105) for n, time in enumerate(times)])
    if counted:
        assert "set back by 105 min" in told(log_of(lines).remarks[0])
    else:
        assert not any("set back" in remark for remark in in_words(log_of(lines).remarks))


@pytest.mark.parametrize("days", [2, 300, 3000])
def test_a_clock_that_was_lost_is_refused_with_its_line(days: int):
    times = every(10, datetime(2025, 6, 20, tzinfo=UTC), 100)
    lines = rows_at([time if at < 50 else time - timedelta(days=days) for at, time in enumerate(times)])
    with pytest.raises(Refusal, match="At line 52 the clock falls back from 20 Jun 2025, 08:10 to"):
        log_of(lines)


def test_the_later_half_first_is_put_in_order():
    lines = rows_at(every(30, datetime(2025, 6, 20, tzinfo=UTC), 200))
    log = log_of([*lines[100:], *lines[:100]])
    assert steps(log) == {1800}
    assert not log.skipped
