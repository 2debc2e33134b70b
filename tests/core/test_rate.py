"""The rate as last weighed, and how sure the scale makes it."""

import pytest

from core.dry.rate import latest_rate
from core.units import DAY_S

WEIGHED = ((0.0, 1.0), (2 * DAY_S, 0.97), (7 * DAY_S, 0.93), (8 * DAY_S, 0.925))


def test_it_is_that_of_the_last_two_weighings():
    found = latest_rate(1.0, WEIGHED, 0.0005)
    assert found.per_s * DAY_S == pytest.approx(0.005)


def test_where_the_scale_is_coarse_it_looks_further_back():
    found = latest_rate(1.0, WEIGHED, 0.005)
    assert (found.from_s, found.to_s) == (2 * DAY_S, 8 * DAY_S)


def test_where_nothing_makes_it_sure_it_is_from_the_start():
    assert latest_rate(1.0, WEIGHED, 0.1).from_s == 0


def test_the_order_does_not_matter():
    assert latest_rate(1.0, WEIGHED[::-1], 0.001) == latest_rate(1.0, WEIGHED, 0.001)


def test_two_weighings_within_an_hour_tell_no_rate():
    assert latest_rate(1.0, ((0.0, 1.0), (1800.0, 0.999)), 0.0005) is None


def test_hung_and_not_weighed_tells_no_rate():
    assert latest_rate(1.0, ((0.0, 1.0),), 0.001) is None


def test_the_error_is_the_scales_twice():
    two = ((0.0, 2.0), (4 * DAY_S, 1.9))
    assert latest_rate(2.0, two, 0.001).error_per_s * DAY_S == pytest.approx(2**0.5 * 0.0005 / 4)
