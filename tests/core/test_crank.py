"""Crank's solutions: their ends, their course, and that one wholly open film is no film."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.crank import biot_roots, left_behind_film, left_in
from core.refusals import OutOfRange

FORMS = ("slab", "cylinder", "sphere")
times = st.floats(0, 5)


@pytest.mark.parametrize("form", FORMS)
def test_at_the_start_all_is_still_to_go(form):
    assert left_in(form, 0) == 1


@pytest.mark.parametrize("form", FORMS)
def test_long_after_nothing_is_left(form):
    assert left_in(form, 10) < 1e-9


@given(st.sampled_from(FORMS), times, times)
def test_the_longer_the_less_is_left(form, one, other):
    earlier, later = sorted((one, other))
    assert left_in(form, later) <= left_in(form, earlier) + 1e-4


@given(times)
def test_a_ball_dries_before_a_long_piece_and_that_before_a_slab(fourier):
    assert left_in("sphere", fourier) <= left_in("cylinder", fourier) + 1e-4 <= left_in("slab", fourier) + 2e-4


@given(st.floats(0.01, 5))
def test_behind_a_film_more_is_left(fourier):
    assert left_behind_film(2.0, fourier) > left_in("slab", fourier)


@given(st.floats(0.01, 5))
def test_a_film_that_resists_nothing_is_none(fourier):
    assert left_behind_film(1000.0, fourier) == pytest.approx(left_in("slab", fourier), abs=3e-3)


def test_the_roots_solve_their_equation():
    import math

    assert [root * math.tan(root) for root in biot_roots(2.0)[:10]] == pytest.approx([2.0] * 10, rel=1e-9)


@pytest.mark.parametrize("fourier", [-0.1, float("nan")])
def test_a_time_before_the_start_is_refused(fourier):
    with pytest.raises(OutOfRange):
        left_in("slab", fourier)


def test_a_film_without_a_resistance_to_compare_is_refused():
    with pytest.raises(OutOfRange):
        left_behind_film(0.0, 0.1)
