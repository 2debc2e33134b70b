"""A probe's series: what is refused, how long a reading stands, where a gap is."""

import math

import pytest

from core.chamber.series import Series, held_s, interval_s, series_of, stretches
from core.refusals import OutOfRange

TIMES = (0.0, 60.0, 120.0)


def refusal(*given) -> str:
    with pytest.raises(OutOfRange) as caught:
        Series("low", *given)
    assert caught.value.field == "log"
    return caught.value.sentence


def test_a_series_keeps_what_it_is_given():
    series = Series("low", [0, 60], [12.0, 12.1], [0.8, None])
    assert (series.times_s, series.temperatures_c, series.humidities) == ((0, 60), (12.0, 12.1), (0.8, None))


@pytest.mark.parametrize(
    "times_s", [(0.0, 60.0, 60.0), (0.0, 60.0, 30.0), (0.0, math.nan, 120.0), (0.0, 60.0, math.inf)]
)
def test_times_that_do_not_rise_are_refused(times_s: tuple[float, ...]):
    assert "must rise" in refusal(times_s, (12.0, 12.0, 12.0))


def test_one_reading_is_refused():
    assert "fewer than two readings" in refusal((0.0,), (12.0,))


@pytest.mark.parametrize("warm", [(12.0, 12.0), (12.0, math.nan, 12.0), (12.0, 101.0, 12.0), (-61.0, 12.0, 12.0)])
def test_temperatures_that_do_not_fit_are_refused(warm: tuple[float, ...]):
    assert "emperature" in refusal(TIMES, warm)


@pytest.mark.parametrize("humid", [(0.8, 0.8), (0.8, 80.0, 0.8), (-0.1, 0.8, 0.8), (0.8, math.nan, 0.8)])
def test_humidities_that_do_not_fit_are_refused(humid: tuple[float, ...]):
    assert "humidity" in refusal(TIMES, (12.0, 12.0, 12.0), humid)


def test_a_row_without_a_temperature_is_left_out():
    assert series_of("low", TIMES, (12.0, math.nan, 12.2)).times_s == (0.0, 120.0)


def test_a_missing_humidity_is_none():
    assert series_of("low", TIMES, (12.0, 12.1, 12.2), (0.8, math.nan, 0.81)).humidities == (0.8, None, 0.81)


def test_a_probe_that_never_measures_humidity_has_none():
    assert series_of("low", TIMES, (12.0, 12.1, 12.2), (math.nan,) * 3).humidities is None


def test_only_the_readings_with_a_humidity_are_humid():
    assert Series("low", TIMES, (12.0, 12.1, 12.2), (0.8, None, 0.81)).humid() == (
        (0.0, 120.0),
        (12.0, 12.2),
        (0.8, 0.81),
    )


def test_the_usual_interval_is_the_median():
    assert interval_s((0, 60, 120, 600, 660, 720)) == 60


def test_a_reading_stands_until_the_next_but_not_across_a_gap():
    assert held_s((0, 60, 120, 600, 660, 720)) == [60, 60, 180, 60, 60, 60]


def test_a_gap_parts_two_stretches():
    assert stretches((0, 60, 120, 600, 660, 720)) == [(0, 3), (3, 6)]


def test_a_missing_reading_is_no_gap():
    assert stretches((0, 60, 180, 240)) == [(0, 4)]
