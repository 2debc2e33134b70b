"""Crank's solutions: their ends, their course, and that one wholly open film is no film."""

import math

import pytest

from core.dry.crank import biot_roots, left_behind_film, left_in
from core.refusals import OutOfRange

FORMS = ("slab", "cylinder", "sphere")


@pytest.mark.parametrize("form", FORMS)
def test_at_the_start_all_is_still_to_go(form):
    assert left_in(form, 0) == 1


@pytest.mark.parametrize("form", FORMS)
def test_long_after_nothing_is_left(form):
    assert left_in(form, 10) < 1e-9


def test_the_roots_solve_their_equation():
    assert [root * math.tan(root) for root in biot_roots(2.0)[:10]] == pytest.approx([2.0] * 10, rel=1e-9)


@pytest.mark.parametrize("fourier", [-0.1, float("nan")])
def test_a_time_before_the_start_is_refused(fourier):
    with pytest.raises(OutOfRange):
        left_in("slab", fourier)


def test_a_film_without_a_resistance_to_compare_is_refused():
    with pytest.raises(OutOfRange):
        left_behind_film(0.0, 0.1)
