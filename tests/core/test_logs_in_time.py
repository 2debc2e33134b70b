"""Rows put in the order of time: each fall, pause and repeat from both sides of its bound."""

from array import array
from collections.abc import Sequence
from datetime import UTC, datetime

import pytest

from core.chamber.logs.clock_changes import count_on, moment
from core.chamber.logs.in_time import in_order, usual_step
from core.chamber.logs.rows import Rows, Skipped
from core.refusals import Refusal
from core.sentence import Sentence
from tests.core.telling import in_words, told

HOUR_S, DAY_S = 3600.0, 86_400.0
NOON_S = datetime(2025, 6, 20, 12, tzinfo=UTC).timestamp()
SUNDAY_S = datetime(2025, 10, 26, tzinfo=UTC).timestamp()


def rows_of(times: Sequence[float], values: Sequence[float] | None = None) -> Rows:
    rows = Rows(1)
    rows.times = array("d", times)
    rows.lines = array("L", range(2, len(times) + 2))
    rows.values = (array("d", values or [float(at) for at in range(len(times))]),)
    return rows


def run(first: float, last: float, step: float = 60.0) -> list[float]:
    """Minutes of a day, both ends included, as times."""
    return [NOON_S + 60 * first + step * n for n in range(round((last - first) * 60 / step) + 1)]


def is_put_back(times: Sequence[float], step: float, values: Sequence[float] | None = None) -> bool:
    return any("put back an hour" in said for said in in_words(count_on(rows_of(times, values), step)))


def ordered(times: Sequence[float], values: Sequence[float] | None = None, *, twelve=False, may_jump=True):
    skipped: list[Skipped] = []
    rows, said = in_order(rows_of(times, values), twelve, skipped, may_jump=may_jump)
    return rows, list(in_words(said)), skipped


def refusal_of(times: Sequence[float], **how: bool) -> str:
    try:
        ordered(times, **how)
    except Refusal as refusal:
        return refusal.sentence
    return ""


@pytest.mark.parametrize(
    ("before", "after", "put_back"),
    [
        (run(0, 119), run(60, 180), True),
        ([*run(0, 59), *run(72, 119)], run(60, 180), True),
        ([*run(0, 59), *run(73, 119)], run(60, 180), False),
        (run(0, 119), [*run(60, 107), *run(121, 180)], True),
        (run(0, 119), [*run(60, 106), *run(121, 180)], False),
        (run(60, 119), run(60, 180), True),
        (run(72, 119), run(60, 180), True),
        (run(0, 119), run(60, 119), True),
    ],
)
def test_an_hour_lived_twice_is_nearly_full_on_both_sides(before: list[float], after: list[float], put_back: bool):
    """48 of its 60 minutes are four fifths."""
    assert is_put_back([*before, *after], 60.0) is put_back


@pytest.mark.parametrize(
    ("step", "late_s", "put_back"),
    [
        (60.0, -31, True), (60.0, -32, False), (60.0, 31, True), (60.0, 32, False),
        (600.0, -120, True), (600.0, -121, False), (600.0, 120, True), (600.0, 121, False),
    ],
)  # fmt: skip
def test_a_fall_of_an_hour_is_one_within_half_a_step_or_two_minutes(step: float, late_s: float, put_back: bool):
    after = [NOON_S + HOUR_S + late_s + step * n for n in range(round(HOUR_S * 2 / step))]
    assert is_put_back([*run(0, 120 - step / 60, step), *after], step) is put_back


@pytest.mark.parametrize(("equal", "put_back"), [(29, True), (30, False), (60, False)])
def test_an_hour_with_half_its_values_again_is_no_hour_lived_twice(equal: int, put_back: bool):
    values = [*range(120), *range(60, 60 + equal), *range(1000, 1121 - equal)]
    assert is_put_back([*run(0, 119), *run(60, 180)], 60.0, [float(each) for each in values]) is put_back


def test_half_an_hour_s_logger_shows_an_hour_lived_twice_on_any_day():
    assert is_put_back([*run(0, 90, 1800), *run(60, 180, 1800)], 1800.0)


def test_a_coarser_one_is_not_believed_on_another_day():
    assert not is_put_back([*run(0, 120, 2400), *run(100, 180, 2400)], 2400.0)


@pytest.mark.parametrize(("step", "put_back"), [(DAY_S - 1, True), (DAY_S, False)])
def test_a_logger_of_a_reading_a_day_tells_no_hour(step: float, put_back: bool):
    on_the_day = [SUNDAY_S + HOUR_S - step + HOUR_S, SUNDAY_S + HOUR_S]
    assert is_put_back(on_the_day, step) is put_back


def set_back(by_s: float, step: float = 600.0, before: int = 200, after: int = 60) -> list[float]:
    """So much less than the clock's next step says, once."""
    first = [NOON_S + step * n for n in range(before)]
    return [*first, *(first[-1] + step - by_s + step * n for n in range(after))]


def is_set(times: Sequence[float], step: float = 600.0, values: Sequence[float] | None = None) -> bool:
    return any("set back by" in said for said in in_words(count_on(rows_of(times, values), step)))


@pytest.mark.parametrize(("by_s", "is_told"), [(120, False), (121, True), (300, True)])
def test_a_clock_is_set_by_more_than_two_minutes(by_s: float, is_told: bool):
    assert is_set(set_back(by_s, step=60.0), 60.0) is is_told


@pytest.mark.parametrize(("by_s", "is_told"), [(DAY_S - 1, True), (DAY_S, False)])
def test_a_clock_is_set_by_less_than_a_day(by_s: float, is_told: bool):
    assert is_set(set_back(by_s, before=400, after=200)) is is_told


@pytest.mark.parametrize(("pause_s", "is_told"), [(900.0, True), (900.1, False)])
def test_rows_that_jump_ahead_are_moved_and_no_clock_is_set(pause_s: float, is_told: bool):
    times = set_back(7200.0)
    assert is_set([*times, times[-1] + pause_s]) is is_told


def test_a_clock_may_be_set_back_by_half_a_second_more_than_a_step():
    assert is_set(set_back(600.5))


@pytest.mark.parametrize(("step", "put_back"), [(7200.0, True), (3600.0, False)])
def test_values_that_return_are_no_repeat_where_their_times_differ(step: float, put_back: bool):
    """On the Sunday of the change; only a logger of one reading an hour writes the same time again."""
    times = [SUNDAY_S + 2 * HOUR_S, SUNDAY_S + HOUR_S + step]
    assert is_put_back(times, step, [12.0, 12.0]) is put_back


def test_two_falls_are_no_clock_that_was_set_once():
    times = set_back(7200.0)
    assert not is_set([*times, *(times[-1] + 600 - 7200 + 600 * n for n in range(60))])


@pytest.mark.parametrize(("before", "is_told"), [(24, True), (23, False)])
def test_what_begins_again_before_half_of_it_is_another_log(before: int, is_told: bool):
    """Set back by two hours: twelve rows of it lie behind the fall."""
    assert is_set(set_back(7200.0, before=before)) is is_told


@pytest.mark.parametrize(("equal", "is_told"), [(5, True), (6, False)])
def test_half_of_it_again_is_a_part_that_was_written_twice(equal: int, is_told: bool):
    """Set back by two hours: twelve rows of it lie behind the fall, and twelve before it."""
    values = [float(n) for n in [*range(200), *range(188, 188 + equal), *range(1000, 1060 - equal)]]
    assert is_set(set_back(7200.0), 600.0, values) is is_told


def test_what_follows_a_clock_that_was_set_is_counted_on_from_before():
    rows = rows_of(set_back(7200.0))
    (said,) = in_words(count_on(rows, 600.0))
    assert list(rows.times) == [NOON_S + 600 * n for n in range(260)]
    assert said.startswith("Line 202: the clock was set back by 120 min (21 Jun 2025, 21:10 was followed by 21 Jun")


def test_two_hours_put_back_one_after_the_other_are_both_counted_on():
    rows = rows_of([*run(0, 119), *run(60, 179), *run(120, 200)])
    assert len(count_on(rows, 60.0)) == 2
    assert list(rows.times) == run(0, 320)


@pytest.mark.parametrize(("after_s", "text"), [(0, "12:00"), (29.6, "12:00"), (59.4, "12:00"), (59.6, "12:01")])
def test_a_moment_is_shown_to_the_minute(after_s: float, text: str):
    at = Sentence("{at}", {"at": moment(NOON_S + after_s)})
    assert in_words([at]) == (f"20 Jun 2025, {text}",)


PUT_IN_ORDER = "The rows were not in order of time; they were sorted."


@pytest.mark.parametrize(
    ("order", "said"),
    [([2, 1], [PUT_IN_ORDER]), ([3, 2, 1], []), ([1, 2, 3], []), ([4, 3, 2, 1], [])],
)
def test_rows_with_the_newest_first_are_turned_round_in_silence(order: list[int], said: list[str]):
    rows, told, skipped = ordered([NOON_S + 600 * n for n in order])
    assert list(rows.times) == [NOON_S + 600 * n for n in sorted(order)]
    assert (told, skipped) == (said, [])


@pytest.mark.parametrize(
    ("times", "step"),
    [
        ([], 0.0), ([0.0], 0.0), ([0.0, 60.0], 60.0), ([0.0, 60.0, 120.0, 300.0], 60.0), ([0.0, 10.0, 40.0], 30.0),
        ([0.0, 10.0, 40.0, 90.0], 30.0), ([60.0, 0.0], 0.0), ([0.0, 0.0, 60.0], 60.0), ([0.0, -60.0, 0.0, 30.0], 60.0),
        ([0.0, -60.0, -120.0, -180.0, 0.0], 180.0), ([0.0, 0.0, 0.0, 0.0, 60.0], 60.0),
        ([0.0, 10.0, 40.0, 70.0, 100.0], 30.0),
        ([0.0, 10.0, 20.0, 50.0, 90.0], 30.0), ([0.0, 60.0, 120.0, 150.0, 160.0], 60.0),
    ],
)  # fmt: skip
def test_the_usual_step_is_the_median_of_those_forward(times: list[float], step: float):
    assert usual_step(array("d", times)) == step


@pytest.mark.parametrize("twelve", [False, True])
@pytest.mark.parametrize("last_h", [12, 13])
def test_a_clock_from_12_to_1_without_an_hour_above_is_refused_unless_it_says_which_half(twelve: bool, last_h: int):
    midnight = NOON_S - 12 * HOUR_S
    times = [midnight + 60 * n for n in range(9 * 60, 13 * 60)] + [
        midnight + 60 * n for n in range(60, last_h * 60 + 60)
    ]
    if twelve or last_h == 13:
        assert "AM and PM" not in refusal_of(times, twelve=twelve)
        return
    with pytest.raises(Refusal, match="At line 242 the clock falls from 12 to 1"):
        ordered(times)


@pytest.mark.parametrize(
    ("to_minute", "after_s", "is_refused"),
    [(780, 0, True), (780, 60, True), (780, 61, False), (779, 0, True), (778, 0, False)],
)
def test_a_clock_of_twelve_hours_falls_by_twelve_hours_but_for_a_step(to_minute: int, after_s: float, is_refused: bool):
    midnight = NOON_S - 12 * HOUR_S
    times = [midnight + 60 * n for n in range(540, to_minute)]
    times += [midnight + HOUR_S + after_s + 60 * n for n in range(120)]
    assert ("AM and PM" in refusal_of(times)) is is_refused


def test_a_time_that_comes_again_is_dropped_and_told_with_its_line():
    rows, said, skipped = ordered([NOON_S, NOON_S + 60, NOON_S + 60, NOON_S + 120], [1.0, 2.0, 2.0, 3.0])
    assert (list(rows.times), said) == ([NOON_S, NOON_S + 60, NOON_S + 120], [])
    assert [(each.line, told(each.why)) for each in skipped] == [(4, "This repeats line 3.")]


def test_a_time_that_comes_again_with_other_values_is_dropped_and_told_with_its_line():
    rows, _, skipped = ordered([NOON_S, NOON_S + 60, NOON_S + 60, NOON_S + 120], [1.0, 2.0, 9.0, 3.0])
    assert list(rows.values[0]) == [1.0, 2.0, 3.0]
    assert [(each.line, told(each.why)) for each in skipped] == [
        (4, "Line 3 has the same time with other values; that one was taken.")
    ]


def with_conflicts(count: int, of: int, apart_s: float = 600.0) -> list[float]:
    """So many times that come again, the first of them at line 3."""
    times = [NOON_S + apart_s * n for n in range(of - count)]
    return sorted([*times, *times[:count]])


@pytest.mark.parametrize(
    ("count", "of", "is_refused"),
    [(2, 20, False), (2, 39, False), (3, 20, True), (3, 59, True), (3, 60, False), (50, 999, True), (50, 1000, False)],
)
def test_times_with_other_values_are_refused_from_three_and_one_in_twenty(count: int, of: int, is_refused: bool):
    times = with_conflicts(count, of, 4000.0)
    if not is_refused:
        assert len(ordered(times)[0].times) == of - count
        return
    with pytest.raises(Refusal, match=f"{count} of {of} lines .* the first of them line 3:"):
        ordered(times)


@pytest.mark.parametrize(("span_s", "is_refused"), [(HOUR_S, False), (HOUR_S + 1, True)])
def test_an_hour_that_comes_twice_is_the_clock_s_and_told(span_s: float, is_refused: bool):
    first = [NOON_S + span_s / 10 * n for n in range(11)]
    times = sorted([*first, *first, *(first[-1] + span_s / 10 * n for n in range(1, 9))])
    if is_refused:
        with pytest.raises(Refusal, match="11 of 30 lines"):
            ordered(times)
        return
    said = ordered(times)[1]
    assert said == [
        "The times from 20 Jun 2025, 12:00 to 20 Jun 2025, 13:00 come twice: the clock may have been put back an hour. "
        "From there on the times may be an hour behind."
    ]


@pytest.mark.parametrize(("count", "is_told"), [(8, True), (7, False)])
def test_four_fifths_of_an_hour_make_an_hour_that_comes_twice(count: int, is_told: bool):
    first = [NOON_S + 360.0 * n for n in range(400)]
    said = ordered(sorted([*first, *first[:count]]))[1]
    assert bool(said) is is_told


@pytest.mark.parametrize(("step", "is_told"), [(360.0, True), (357.0, False)])
def test_eight_readings_are_four_fifths_of_an_hour_from_six_minutes_on(step: float, is_told: bool):
    first = [NOON_S + step * n for n in range(400)]
    assert bool(ordered(sorted([*first, *first[:8]]))[1]) is is_told


def test_times_that_come_again_hours_apart_are_no_hour_that_comes_twice():
    first = [NOON_S + 1800.0 * n for n in range(400)]
    assert ordered(sorted([*first, first[0], first[4]]))[1] == []


@pytest.mark.parametrize("hour", [0.5, 23.5])
def test_a_clock_that_shows_an_hour_of_24_is_none_of_twelve(hour: float):
    midnight = NOON_S - 12 * HOUR_S
    times = [midnight + 60 * n for n in [hour * 60 - (1440 if hour > 12 else 0), *range(540, 780), *range(60, 180)]]
    assert "AM and PM" not in refusal_of(times)


@pytest.mark.parametrize(
    ("step", "pause_s", "is_told"),
    [
        (600.0, 4200.0, True), (600.0, 4500.0, True), (600.0, 4500.1, False), (600.0, 3900.0, True),
        (600.0, 3899.9, False), (600.0, HOUR_S, False), (600.0, 600.0, False),
        (60.0, 3660.0, True), (60.0, 3690.0, True), (60.0, 3690.1, False), (60.0, 3630.0, True), (60.0, 3629.9, False),
        (3000.0, 6600.0, True), (3000.0, 7500.0, True), (3000.0, 7500.1, False), (3000.0, 5700.0, True),
        (3000.0, 5699.9, False),
    ],
)  # fmt: skip
def test_an_hour_missing_is_told_within_half_a_step_or_a_quarter_of_an_hour(step: float, pause_s: float, is_told: bool):
    first = [NOON_S + step * n for n in range(50)]
    said = ordered([*first, *(first[-1] + pause_s + step * n for n in range(50))])[1]
    assert [each[:7] for each in said] == (["Between"] if is_told else [])


def test_a_log_whose_clock_is_not_set_tells_nothing_of_an_hour():
    first = [NOON_S + 600 * n for n in range(50)]
    times = [*first, *(first[-1] + 4200 + 600 * n for n in range(50))]
    assert (bool(ordered(times)[1]), bool(ordered(times, may_jump=False)[1])) == (True, False)


@pytest.mark.parametrize(
    ("sections", "shift_s", "is_refused"), [(2, 300.0, True), (2, 0.0, False), (13, 300.0, True), (14, 300.0, False)]
)
def test_logs_one_after_the_other_are_refused_and_shuffled_rows_put_in_order(
    sections: int, shift_s: float, is_refused: bool
):
    """Each section a few seconds later than the one before, or the same times once more."""
    part = [NOON_S + 600 * n for n in range(20)]
    times = [each + shift_s * n / sections for n in range(sections) for each in part]
    if is_refused:
        with pytest.raises(Refusal, match=r"At line 22 the log begins again \(20 Jun 2025, 15:10 is followed by 20 J"):
            ordered(times, may_jump=False)
        return
    values = [float(at % 20) for at in range(len(times))]
    assert ordered(times, values, may_jump=False)[1] == [PUT_IN_ORDER]


@pytest.mark.parametrize(
    ("later_s", "count", "is_refused"), [(449.9, 41, True), (449.9, 40, False), (450.0, 41, False)]
)
def test_rows_put_in_order_most_of_which_come_much_quicker_are_two_logs(later_s: float, count: int, is_refused: bool):
    """450 s are three quarters of ten minutes; so many of 40 more steps are quicker."""
    first = [NOON_S + 600 * n for n in range(40)]
    times = [*first, *(first[-1] + 600 + later_s * n for n in range(count)), first[20] + 1]
    assert ("begins again" in refusal_of(times, may_jump=False)) is is_refused


def test_the_line_at_which_a_log_begins_again_is_the_one_that_falls_back():
    part = [NOON_S + 600 * n for n in range(20)]
    again = [each + 100 for each in part]
    assert refusal_of([part[0], *part, *again], may_jump=False).startswith("At line 23 the log begins again")
    assert refusal_of([part[10], *part, *again], may_jump=False).startswith("At line 3 the log begins again")


def test_a_row_alone_is_in_order():
    assert list(ordered([NOON_S])[0].times) == [NOON_S]


def test_a_log_whose_clock_is_not_set_is_not_counted_on():
    assert "set back" in ordered(set_back(7200.0))[1][0]
    assert ordered(set_back(7200.0), may_jump=False)[1] == [PUT_IN_ORDER]


@pytest.mark.parametrize(("gap_s", "is_lost"), [(1200.0, False), (1201.0, True)])
@pytest.mark.parametrize("side", ["behind", "before"])
def test_a_clock_that_falls_to_where_the_log_was_two_steps_before_is_not_lost(gap_s: float, is_lost: bool, side: str):
    early = [NOON_S + 600 * n for n in range(40)]
    late = [each + 10 * DAY_S for each in early]
    if side == "behind":  # the log goes on where it was before it jumped ahead
        times = [*early, *late, *(early[-1] + gap_s + 600 * n for n in range(40))]
    else:
        times = [*late, *early, *(late[-1] + gap_s + 600 * n for n in range(40))]
    assert ("lost its time" in refusal_of(times, may_jump=False)) is is_lost


def test_a_clock_is_lost_though_one_reading_only_was_taken_by_it():
    late = [NOON_S + 10 * DAY_S + 600 * n for n in range(40)]
    times = [*late, NOON_S, *(late[-1] + 1201 + 600 * n for n in range(40))]
    assert "lost its time" in refusal_of(times, may_jump=False)


@pytest.mark.parametrize(("pause_s", "is_lost"), [(108_000.0, False), (108_001.0, True)])
def test_of_a_coarse_logger_ten_steps_lie_apart(pause_s: float, is_lost: bool):
    """Of a reading in three hours: thirty hours."""
    back_s = 2 * 39 * 10_800 + pause_s
    assert ("lost its time" in refusal_of(lost(back_s, 40, 10_800.0), may_jump=False)) is is_lost


def lost(days_s: float, count: int = 40, step: float = 600.0) -> list[float]:
    first = [NOON_S + step * n for n in range(count)]
    return [*first, *(first[-1] - days_s + step * n for n in range(count))]


@pytest.mark.parametrize(
    ("back_s", "is_lost"), [(DAY_S + 90_000, True), (3 * DAY_S, True), (DAY_S, False), (DAY_S + 1, False)]
)
def test_a_clock_that_falls_into_times_of_its_own_far_behind_is_lost(back_s: float, is_lost: bool):
    said = refusal_of(lost(back_s), may_jump=False)
    assert said.startswith("At line 42 the clock falls back from 20 Jun 2025, 18:30 to") is is_lost


@pytest.mark.parametrize(("pause_s", "is_lost"), [(DAY_S, False), (DAY_S + 1, True)])
def test_what_lies_apart_lies_more_than_a_day_apart(pause_s: float, is_lost: bool):
    """Forty rows of ten minutes end 23 400 s after they begin."""
    back_s = 2 * 23_400 + pause_s
    said = refusal_of(lost(back_s), may_jump=False)
    assert ("lost its time" in said) is is_lost
