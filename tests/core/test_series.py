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
    series = Series("low", TIMES, (12.0, 12.1, math.nan)).corrected(Correction(-0.4), None)
    assert series.temperatures_c[:2].tolist() == pytest.approx([11.6, 11.7])
    assert math.isnan(series.temperatures_c[2])


def test_a_humidity_corrected_stays_a_humidity():
    series = Series("low", TIMES, (12.0, 12.1, 12.2), (0.8, 0.99, None)).corrected(None, Correction(0.02))
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


def test_a_series_lasts_from_its_first_reading_to_its_last():
    assert Series("low", (1000.0, 1060.0, 1120.0), (12.0, 12.1, 12.2)).lasts_s == 120


def test_one_reading_has_no_interval():
    assert Series("low", (1000.0,), (12.0,)).interval_s == 0
    assert Series("low", (1000.0,), (12.0,)).held_s == [0]


@pytest.mark.parametrize(("last_s", "gaps"), [(210.0, ()), (210.5, ((120.0, 210.5),))])
def test_a_pause_of_more_than_a_step_and_a_half_is_a_gap(last_s: float, gaps: tuple[tuple[float, float], ...]):
    assert Series("low", (0, 60, 120, last_s), (12.0,) * 4).gaps == gaps


@pytest.mark.parametrize(
    ("times_s", "usual_s"), [((0, 1, 2, 7, 12), 5), ((0, 1, 3, 6, 10), 3), ((0, 1, 2, 3, 8, 13), 1), ((0, 5), 5)]
)
def test_of_an_even_number_of_steps_the_longer_of_the_two_in_the_middle_is_usual(
    times_s: tuple[float, ...], usual_s: float
):
    assert interval_s(times_s) == usual_s


@pytest.mark.parametrize(("pause_s", "parts"), [(180, [(0, 6)]), (181, [(0, 3), (3, 6)])])
def test_a_pause_of_three_steps_parts_nothing_yet(pause_s: float, parts: list[tuple[int, int]]):
    times_s = (0, 60, 120, 120 + pause_s, 180 + pause_s, 240 + pause_s)
    assert stretches(times_s) == parts
    assert held_s(times_s) == [60, 60, 180, 60, 60, 60]


def test_a_usual_step_that_is_told_is_taken():
    assert stretches((0, 60, 120), 10) == [(0, 1), (1, 2), (2, 3)]
    assert held_s((0, 60, 120), 10) == [30, 30, 10]


@pytest.mark.parametrize(
    ("warm", "humid", "is_refused"),
    [(-60.0, 0.0, False), (-60.1, 0.0, True), (120.0, 1.0, False), (120.1, 1.0, True), (12.0, 1.001, True)],
)
def test_what_a_logger_can_have_measured(warm: float, humid: float, is_refused: bool):
    if is_refused:
        assert refusal((0.0, 60.0), (12.0, warm), (0.8, humid))
    else:
        assert Series("low", (0.0, 60.0), (12.0, warm), (0.8, humid))
