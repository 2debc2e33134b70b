"""Laws of compensating a pH: there and back, nothing where nothing differs, and the acid side stays the acid side."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.chamber.ph_temperature import compensated_ph

celsius = st.floats(0, 60)
ph = st.floats(3.5, 10.5)


@given(ph, celsius, celsius)
def test_there_and_back_is_where_one_was(shown: float, sample_c: float, stands_at_c: float):
    there = compensated_ph(shown, sample_c, stands_at_c)
    assert compensated_ph(there, stands_at_c, sample_c) == pytest.approx(shown, abs=1e-12)


@given(celsius, celsius)
def test_nothing_changes_at_ph_7(sample_c: float, stands_at_c: float):
    assert compensated_ph(7.0, sample_c, stands_at_c) == 7.0


@given(st.floats(2, 12), celsius)
def test_nothing_changes_as_warm_as_the_meter_stands(shown: float, stands_at_c: float):
    assert compensated_ph(shown, stands_at_c, stands_at_c) == pytest.approx(shown, abs=1e-12)


@given(st.floats(2, 6.99), celsius, celsius, celsius)
def test_an_acid_sample_the_warmer_it_was_is_the_less_acid(shown: float, one: float, other: float, stands_at_c: float):
    cold, warm = sorted((one, other))
    assert compensated_ph(shown, cold, stands_at_c) <= compensated_ph(shown, warm, stands_at_c)


@given(st.floats(2, 12), celsius, celsius)
def test_no_ph_leaves_the_scale(shown: float, sample_c: float, stands_at_c: float):
    assert 0 <= compensated_ph(shown, sample_c, stands_at_c) <= 14
