"""Mean, spread and time in the band, by the time each reading stands for."""

import math

import pytest

from core.chamber.settling.statistics import Band, Spread, spread
from core.refusals import OutOfRange

BAND = Band(12.0, 1.0)


def even(*values: float) -> Spread:
    return spread([60.0 * place for place in range(len(values))], values, BAND)


def test_the_mean_of_even_readings_is_the_plain_mean():
    assert even(11, 12, 16).mean == pytest.approx(13)


def test_a_reading_before_a_longer_interval_weighs_more():
    assert spread([0, 60, 180, 240], [10, 16, 10, 10]).mean == pytest.approx((10 * 180 + 16 * 120) / 300)


def test_a_gap_counts_for_three_intervals_only():
    assert spread([0, 60, 120, 10_000, 10_060], [10, 10, 20, 10, 10]).mean == pytest.approx((10 * 240 + 20 * 180) / 420)


def test_the_deviation_is_that_of_the_population():
    assert even(10, 14).deviation == pytest.approx(2)


def test_extremes_are_the_extremes():
    assert (even(11, 12, 16).lowest, even(11, 12, 16).highest) == (11, 16)


def test_a_twentieth_of_the_time_is_below_and_above():
    found = even(*range(1, 101))
    assert (found.low_5, found.high_95) == (5, 95)


def test_the_edge_of_the_band_is_within_it():
    assert even(11, 13, 13.1, 10.9).in_band == pytest.approx(0.5)


def test_an_edge_that_is_a_sum_of_decimals_is_within_it():
    assert spread([0, 60], [0.1 + 0.2, 0.3], Band(0.2, 0.1)).in_band == 1


def test_without_a_band_there_is_no_share():
    assert spread([0, 60], [10, 10]).in_band is None


@pytest.mark.parametrize("half", [0.0, -1.0, math.nan, math.inf])
def test_a_band_without_width_is_refused(half: float):
    with pytest.raises(OutOfRange):
        Band(12.0, half)
