"""Laws of water activity worked out: more dissolved in less water is drier."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.activity import Mix, activity_at, loss_for, salt_activity

SAUSAGE = Mix(water=0.58, salt=0.028)
losses = st.floats(0, 0.5)


@given(st.floats(0, 6.2), st.floats(0, 6.2), st.floats(0, 40))
def test_more_salt_is_drier(one, other, celsius):
    less, more = sorted((one, other))
    assert salt_activity(more, celsius) <= salt_activity(less, celsius)


@given(losses, losses)
def test_more_loss_is_drier(one, other):
    less, more = sorted((one, other))
    assert activity_at(SAUSAGE, more) <= activity_at(SAUSAGE, less)


@given(losses, st.floats(0, 0.03))
def test_sugar_makes_it_drier(loss, sugar):
    assert activity_at(Mix(0.58, 0.028, sugar), loss) <= activity_at(SAUSAGE, loss)


@given(losses)
def test_what_ferments_dissolves_more(loss):
    assert activity_at(SAUSAGE, loss) < activity_at(Mix(0.58, 0.028, ferments=False), loss)


@given(st.floats(0.78, 0.955))
def test_the_loss_for_a_water_activity_brings_it_there(wanted):
    assert activity_at(SAUSAGE, loss_for(SAUSAGE, wanted)) == pytest.approx(wanted, abs=1e-9)
