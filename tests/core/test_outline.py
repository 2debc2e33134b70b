"""A log in little keeps its ends; traces on one axis keep their gaps."""

import math

import pytest

from core.chamber.series import Series
from core.chamber.settling.outline import Trace, hours, on_one_axis, outline

MINUTES = [60.0 * at for at in range(600)]
SAW = [12 + (at % 60) / 60 for at in range(600)]
SERIES = Series("low", MINUTES, SAW, [0.8] * 600)


def test_an_outline_has_120_points_at_most():
    assert 60 <= len(outline(SERIES)) <= 120


def test_an_outline_keeps_the_extremes():
    values = [value for _, value in outline(SERIES)]
    assert (min(values), max(values)) == (12.0, 12.98)


def test_an_outline_goes_forward_in_time():
    hours_in = [at for at, _ in outline(SERIES)]
    assert hours_in == sorted(set(hours_in))


def test_a_short_log_is_its_own_outline():
    assert outline(Series("low", [0, 60], [12.0, 12.5])) == ((0.0, 12.0), (0.017, 12.5))


def test_an_hour_tells_mean_and_extremes():
    first = next(hours(SERIES))
    assert (first.lowest_c, first.mean_c, first.highest_c) == pytest.approx((12.0, 12 + 29.5 / 60, 12 + 59 / 60))


def test_an_hour_without_humidities_has_none():
    assert next(hours(Series("low", [0, 60], [12.0, 12.5]))).humidity is None


def test_every_hour_with_a_reading_is_told():
    assert [hour.begins_s for hour in hours(SERIES)] == [3600.0 * at for at in range(10)]


def test_traces_of_the_same_times_stay_as_they_are():
    one, other = Trace([0, 60], [1, 2], 60), Trace([0, 60], [3, 4], 60)
    axis, columns = on_one_axis([one, other])
    assert (axis.tolist(), [column.tolist() for column in columns]) == ([0, 60], [[1, 2], [3, 4]])


def test_a_trace_is_straight_between_its_readings():
    _, (one, _) = on_one_axis([Trace([0, 60], [1, 2], 60), Trace([30, 90], [3, 4], 60)])
    assert one[:3].tolist() == [1, 1.5, 2]


def test_a_trace_is_nothing_beyond_its_ends():
    _, (one, other) = on_one_axis([Trace([0, 60], [1, 2], 60), Trace([30, 90], [3, 4], 60)])
    assert math.isnan(one[3])
    assert math.isnan(other[0])


def test_a_gap_has_a_time_of_its_own_without_a_value():
    axis, (column,) = on_one_axis([Trace([0, 60, 600, 660], [1, 2, 3, 4], 60)])
    assert axis.tolist() == [0, 60, 120, 600, 660]
    assert math.isnan(column[2])


def test_an_outline_by_hand():
    """Two parts of six readings, an hour apart: the ends, and of each part the lowest and the highest."""
    values = [5, 1, 9, 5, 5, 5, 5, 5, 2, 8, 5, 5]
    series = Series("low", [3600.0 * (1 + at) for at in range(12)], values)
    assert outline(series, 6) == ((0, 5), (1, 1), (2, 9), (8, 2), (9, 8), (11, 5))
    assert len(outline(series, 12)) == 12


def test_an_outline_is_rounded_to_seconds_and_hundredths():
    assert outline(Series("low", [0, 100], [12.006, 12.004])) == ((0.0, 12.01), (0.028, 12.0))


def test_an_hour_s_humidity_is_that_of_the_readings_that_have_one():
    series = Series("low", [3000.0, 3540.0, 3599.0, 3600.0], [12, 13, 15, 14], [0.8, 0.5, None, None])
    first, second = hours(series)
    assert (first.begins_s, first.mean_c, first.lowest_c, first.highest_c) == (0, pytest.approx(40 / 3), 12, 15)
    assert (first.humidity, first.driest, first.dampest) == (pytest.approx(0.65), 0.5, 0.8)
    assert (second.begins_s, second.mean_c, second.humidity, second.driest) == (3600, 14, None, None)


@pytest.mark.parametrize(("pause_s", "is_gap"), [(180.0, False), (181.0, True)])
def test_a_pause_of_more_than_three_steps_is_a_gap(pause_s: float, is_gap: bool):
    axis, (column, _) = on_one_axis(
        [Trace([0, 60, 60 + pause_s], [1, 2, 4], 60), Trace([90, 60 + pause_s], [7, 8], 300)]
    )
    assert (120 in axis) is is_gap
    assert math.isnan(column[axis.tolist().index(90)]) is is_gap
    if not is_gap:
        assert column[axis.tolist().index(90)] == pytest.approx(2 + 2 * 30 / 180)
