"""Water activity from what is dissolved: its laws, its ends, and what it refuses."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.activity import Mix, activity_at, loss_for, salt_activity, sugar_activity
from core.refusals import OutOfRange

SAUSAGE = Mix(water=0.58, salt=0.028)
losses = st.floats(0, 0.5)


def test_plain_water_has_a_water_activity_of_one():
    assert (salt_activity(0.0), sugar_activity(0.0)) == (1, 1)


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


def test_a_mix_that_is_dry_enough_needs_no_loss():
    assert loss_for(SAUSAGE, 0.97) == 0


@pytest.mark.parametrize("molality", [-0.1, 6.3, float("nan")])
def test_salt_beyond_saturation_is_refused(molality):
    with pytest.raises(OutOfRange):
        salt_activity(molality)


@pytest.mark.parametrize("celsius", [-1, 41])
def test_temperatures_beyond_the_terms_are_refused(celsius):
    with pytest.raises(OutOfRange):
        salt_activity(1.0, celsius)


def test_a_loss_of_all_its_water_is_refused():
    with pytest.raises(OutOfRange):
        activity_at(SAUSAGE, 0.57)


def test_a_water_activity_below_salts_own_is_refused():
    with pytest.raises(OutOfRange):
        loss_for(SAUSAGE, 0.6)
