"""Where something begins to be so: the first number of all, to the last bit."""

import math

import pytest

from core.roots import begins, zero_of


@pytest.mark.parametrize("where", [0.0, 1e-9, 1.0, math.pi, 9.999])
def test_it_is_the_first_number_of_which_it_is_so(where: float):
    found = begins(lambda number: number >= where, -1.0, 10.0)
    assert found == where
    assert math.nextafter(found, -1.0) < where


def test_so_of_none_it_is_the_far_end():
    assert begins(lambda _: False, 0.0, 7.0) == 7.0


def test_between_one_number_and_itself_there_is_nothing_to_look_for():
    assert begins(lambda _: True, 7.0, 7.0) == 7.0


@pytest.mark.parametrize("where", [-0.5, 0.0, 0.25, 0.9])
def test_a_rising_function_is_followed_to_its_zero(where: float):
    assert zero_of(lambda at: (at - where) ** 3 + (at - where), -1.0, 1.0) == pytest.approx(where, abs=1e-9)
