"""Water activity from what is dissolved: its laws, its ends, and what it refuses."""

import pytest

from core.dry.activity import Mix, activity_at, loss_for, salt_activity, sugar_activity
from core.refusals import OutOfRange

SAUSAGE = Mix(water=0.58, salt=0.028)


def test_plain_water_has_a_water_activity_of_one():
    assert (salt_activity(0.0), sugar_activity(0.0)) == (1, 1)


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
