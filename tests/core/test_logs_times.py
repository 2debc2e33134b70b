"""Days, months and clocks: what a log's times may mean, when that is asked, and what is told of a clock's jumps."""

from datetime import UTC, datetime, timedelta

import pytest

from core.chamber.logs import Layout, Log, guess, preview_times, read, with_order
from core.refusals import OutOfRange, Refusal
from tests.core.telling import in_words, told

HEAD = "Time,Temp (°C),RH (%)"


def rows_at(times: list[str], first: float = 12.0) -> list[str]:
    return [f"{time},{first + i % 13 / 10:.1f},{80 + i % 11 / 10:.1f}" for i, time in enumerate(times)]


def data_of(rows: list[str], head: str = HEAD) -> bytes:
    return "\n".join((head, *rows, "")).encode()


def every(minutes: int, start: datetime, end: datetime, pattern: str = "%Y-%m-%d %H:%M") -> list[str]:
    count = round((end - start) / timedelta(minutes=minutes))
    return [f"{start + timedelta(minutes=minutes * i):{pattern}}" for i in range(count)]


def at(*parts: int) -> datetime:
    return datetime(*parts, tzinfo=UTC)  # type: ignore[misc, arg-type]


def layout_of(times: list[str], head: str = HEAD) -> Layout:
    return guess(data_of(rows_at(times), head))


def log_of(times: list[str]) -> Log:
    data = data_of(rows_at(times))
    return read(data, guess(data))


def test_dates_that_fit_both_orders_are_asked_about():
    layout = layout_of(every(60, at(2025, 6, 1), at(2025, 6, 8), "%d/%m/%Y %H:%M"))
    assert [question.about for question in layout.questions] == ["order"]


def test_the_likelier_order_is_named_but_not_taken():
    layout = layout_of(every(60, at(2025, 6, 1), at(2025, 6, 8), "%d/%m/%Y %H:%M"))
    assert (layout.questions[0].likelier, layout.times.order) == ("dmy", "")


@pytest.mark.parametrize(("pattern", "order"), [("%d/%m/%Y %H:%M", "dmy"), ("%m/%d/%Y %H:%M", "mdy")])
def test_one_day_after_the_twelfth_settles_the_order(pattern: str, order: str):
    layout = layout_of(every(60, at(2025, 6, 10), at(2025, 6, 14), pattern))
    assert (layout.questions, layout.times.order) == ((), order)


@pytest.mark.parametrize("rows", [1, 2])
def test_a_row_or_two_may_be_broken_and_settle_nothing(rows: int):
    times = (
        every(60, at(2025, 6, 1), at(2025, 6, 8), "%d/%m/%Y %H:%M") + ["13/06/2025 01:00", "14/06/2025 01:00"][:rows]
    )
    assert [question.about for question in layout_of(times).questions] == ["order"]


def test_a_day_deep_in_the_file_settles_the_order():
    times = every(1, at(2025, 6, 8), at(2025, 6, 13), "%d/%m/%Y %H:%M") + every(
        1, at(2025, 6, 13), at(2025, 6, 13, 0, 20), "%d/%m/%Y %H:%M"
    )
    assert layout_of(times).times.order == "dmy"


def test_an_order_that_the_dates_do_not_fit_is_refused():
    layout = layout_of(every(60, at(2025, 6, 1), at(2025, 6, 20), "%d/%m/%Y %H:%M"))
    with pytest.raises(OutOfRange, match="day before month"):
        with_order(layout, "mdy")


def test_a_day_and_month_of_one_number_need_no_question():
    assert layout_of(every(10, at(2025, 6, 6), at(2025, 6, 6, 20), "%d/%m/%Y %H:%M")).questions == ()


def test_times_without_an_offset_are_the_logger_s_own():
    assert log_of(every(10, at(2025, 6, 6), at(2025, 6, 7))).clock == "local"


def test_a_written_offset_makes_the_times_those_of_utc():
    log = log_of([f"2025-06-06T12:{minute:02}:00+02:00" for minute in range(30)])
    assert (log.clock, log.series[0].times_s[0]) == ("utc", at(2025, 6, 6, 10).timestamp())


def test_an_offset_that_changes_with_the_season_leaves_no_jump():
    summer = [f"2025-10-26T02:{minute:02}:00+02:00" for minute in range(0, 60, 10)]
    winter = [f"2025-10-26T02:{minute:02}:00+01:00" for minute in range(0, 60, 10)]
    log = log_of(summer + winter)
    assert len(log.series[0].times_s) == 12
    assert not log.series[0].gaps
    assert not log.skipped


def put_back() -> list[str]:
    return every(10, at(2025, 10, 25, 12), at(2025, 10, 26, 3)) + every(10, at(2025, 10, 26, 2), at(2025, 10, 26, 12))


def test_a_clock_put_back_is_told_and_time_counted_on():
    log = log_of(put_back())
    steps = {round(b - a) for a, b in zip(log.series[0].times_s, log.series[0].times_s[1:], strict=False)}
    assert steps == {600}
    assert "put back an hour" in told(log.remarks[0])
    assert not log.skipped


def test_a_clock_put_back_is_seen_in_a_file_with_the_newest_first():
    data = data_of(rows_at(put_back())[::-1])
    log = read(data, guess(data))
    assert len(log.series[0].times_s) == len(put_back())
    assert "put back an hour" in told(log.remarks[0])


def test_an_hour_written_twice_over_is_repeats_and_no_change_of_the_clock():
    rows = rows_at(every(10, at(2025, 10, 25, 12), at(2025, 10, 26, 12)))
    data = data_of(rows[:60] + rows[54:])
    log = read(data, guess(data))
    assert len(log.skipped) == 6
    assert not any("put back" in remark for remark in in_words(log.remarks))


def test_an_hour_lived_twice_in_sorted_rows_is_told():
    data = data_of(sorted(rows_at(put_back())))
    log = read(data, guess(data))
    assert len(log.skipped) == 6
    assert "come twice" in told(log.remarks[0])


def test_an_hour_that_is_missing_is_told_as_perhaps_the_clock():
    log = log_of(every(10, at(2025, 3, 29, 12), at(2025, 3, 30, 2)) + every(10, at(2025, 3, 30, 3), at(2025, 3, 30, 9)))
    assert "or the clock was put forward an hour" in told(log.remarks[0])
    assert len(log.series[0].gaps) == 1


def test_a_clock_of_twelve_hours_without_morning_and_afternoon_is_refused():
    times = [time.lstrip() for time in every(10, at(2025, 6, 20, 9), at(2025, 6, 20, 17), "%Y-%m-%d %I:%M")]
    with pytest.raises(Refusal, match="AM and PM"):
        log_of(times)


@pytest.mark.parametrize(
    "broken", ["2025-06-31 10:00", "2025-06-20 24:30", "2025-06-20 10:61", "2025/06/20 10:00", "20 June"]
)
def test_a_time_not_written_like_the_others_is_listed(broken: str):
    log = log_of([*every(10, at(2025, 6, 20), at(2025, 6, 21)), broken])
    assert [told(each.why) for each in log.skipped] == [f"“{broken}” is not a time as this file writes them."]


def test_midnight_may_be_written_as_the_end_of_the_day():
    log = log_of([*every(10, at(2025, 6, 20, 12), at(2025, 6, 21)), "2025-06-20 24:00"])
    assert log.series[0].times_s[-1] == at(2025, 6, 21).timestamp()


def test_the_rows_shown_tell_their_times():
    layout = guess(b"Time,Temp (C)\n2025-06-20 10:00,12.0\n2025-06-20 10:01,12.1\n")
    assert preview_times(layout) == (1_750_413_600.0, 1_750_413_660.0)


def test_the_rows_shown_tell_no_times_while_their_order_is_asked():
    assert preview_times(guess(b"Time,Temp (C)\n05/06/2025 10:00,12.0\n05/06/2025 10:01,12.1\n")) == ()
