"""Laws of diffusion: the longer the less is left, the rounder the sooner."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.crank import left_behind_film, left_in

FORMS = ("slab", "cylinder", "sphere")
times = st.floats(0, 5)


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
