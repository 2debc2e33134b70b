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
