"""Laws of the mean kinetic temperature and of the time above a line."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.warmth import above_s, mean_kinetic_c

temperatures = st.floats(-20, 40)
spans = st.lists(st.tuples(temperatures, st.floats(1, 1e6)), min_size=1, max_size=6)


@given(temperatures)
def test_a_steady_temperature_is_itself(celsius):
    assert mean_kinetic_c([(celsius, 10), (celsius, 5)]) == pytest.approx(celsius)


@given(spans)
def test_it_lies_between_the_coldest_and_the_warmest(known):
    assert min(known)[0] - 1e-6 <= mean_kinetic_c(known) <= max(known)[0] + 1e-6


@given(spans)
def test_it_is_no_lower_than_the_mean(known):
    whole = sum(lasts for _, lasts in known)
    assert mean_kinetic_c(known) >= sum(celsius * lasts for celsius, lasts in known) / whole - 1e-6


@given(spans)
def test_the_order_does_not_matter(known):
    assert mean_kinetic_c(known[::-1]) == pytest.approx(mean_kinetic_c(known))


@given(st.lists(temperatures, min_size=2, max_size=8), temperatures)
def test_above_and_below_make_the_whole(course, line):
    known = list(enumerate(course))
    mirrored = [(at, 2 * line - celsius) for at, celsius in known]
    level = sum(1 for one, other in pairwise(course) if one == other == line)
    assert above_s(known, line) + above_s(mirrored, line) + level == pytest.approx(len(course) - 1)
