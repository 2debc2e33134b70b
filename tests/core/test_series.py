"""A probe's series: what is refused, how long a reading stands, where a gap is."""

import math

import pytest

from core.chamber.checks import Correction
from core.chamber.series import Series, held_s, interval_s, stretches
from core.refusals import OutOfRange

TIMES = (0.0, 60.0, 120.0)


def refusal(*given) -> str:
    with pytest.raises(OutOfRange) as caught:
        Series("low", *given)
    assert caught.value.field == "log"
    return caught.value.sentence


def test_a_series_keeps_what_it_is_given():
    series = Series("low", [0, 60], [12.0, 12.1], [0.8, None])
    assert [list(each) for each in (series.times_s, series.temperatures_c)] == [[0, 60], [12.0, 12.1]]
    assert series.humidities[0] == 0.8
    assert math.isnan(series.humidities[1])


@pytest.mark.parametrize(
    "times_s", [(0.0, 60.0, 60.0), (0.0, 60.0, 30.0), (0.0, math.nan, 120.0), (0.0, 60.0, math.inf)]
)
def test_times_that_do_not_rise_are_refused(times_s: tuple[float, ...]):
    assert "must rise" in refusal(times_s, (12.0, 12.0, 12.0))


@pytest.mark.parametrize("warm", [(12.0, 12.0), (12.0, math.inf, 12.0), (12.0, 121.0, 12.0), (-61.0, 12.0, 12.0)])
def test_temperatures_that_do_not_fit_are_refused(warm: tuple[float, ...]):
    assert "temperature" in refusal(TIMES, warm)


@pytest.mark.parametrize("humid", [(0.8, 0.8), (0.8, 80.0, 0.8), (-0.1, 0.8, 0.8), (0.8, math.inf, 0.8)])
def test_humidities_that_do_not_fit_are_refused(humid: tuple[float, ...]):
    assert "humidity" in refusal(TIMES, (12.0, 12.0, 12.0), humid)


def test_a_row_without_a_temperature_is_not_warm():
    assert list(Series("low", TIMES, (12.0, math.nan, 12.2)).warm().times_s) == [0.0, 120.0]


def test_a_probe_that_never_measures_humidity_has_none():
    assert not Series("low", TIMES, (12.0, 12.1, 12.2)).has_humidity


def test_a_part_holds_both_its_ends():
    assert list(Series("low", TIMES, (12.0, 12.1, 12.2)).between(60.0, 120.0).times_s) == [60.0, 120.0]


def test_a_part_without_ends_is_the_whole():
    series = Series("low", TIMES, (12.0, 12.1, 12.2))
    assert series.between(None, None) is series


def test_a_correction_puts_every_temperature_right():
    series = Series("low", TIMES, (12.0, 12.1, math.nan)).put_right(Correction(-0.4), None)
    assert series.temperatures_c[:2].tolist() == pytest.approx([11.6, 11.7])
    assert math.isnan(series.temperatures_c[2])


def test_a_humidity_put_right_stays_a_humidity():
    series = Series("low", TIMES, (12.0, 12.1, 12.2), (0.8, 0.99, None)).put_right(None, Correction(0.02))
    assert series.humidities[:2].tolist() == pytest.approx([0.82, 1.0])


def test_only_the_readings_with_a_humidity_are_humid():
    humid = Series("low", TIMES, (12.0, 12.1, 12.2), (0.8, None, 0.81)).humid()
    assert [list(column) for column in humid] == [[0.0, 120.0], [12.0, 12.2], [0.8, 0.81]]


def test_the_usual_interval_is_the_median():
    assert interval_s((0, 60, 120, 600, 660, 720)) == 60


def test_a_reading_stands_until_the_next_but_not_across_a_gap():
    assert held_s((0, 60, 120, 600, 660, 720)) == [60, 60, 180, 60, 60, 60]


def test_a_gap_parts_two_stretches():
    assert stretches((0, 60, 120, 600, 660, 720)) == [(0, 3), (3, 6)]


def test_a_missing_reading_is_no_gap():
    assert stretches((0, 60, 180, 240)) == [(0, 4)]
