"""Salt on its way to the centre of a whole muscle: how far it is, and whether that is enough."""

import pytest

from core.mix.salting import NOT_THROUGH, Piece, at_the_centre, equalised

LOIN = Piece("slab", 0.05)


@pytest.mark.parametrize("manner", ["weighed", "excess"])
def test_when_the_days_are_over_the_centre_has_the_share_that_was_wanted(manner):
    days = equalised(LOIN, manner, 3.0, 0.9)[0]
    assert at_the_centre(LOIN, manner, 3.0, days.value, 0.9).value == pytest.approx(0.9, abs=1e-6)


def test_too_early_it_is_told():
    assert NOT_THROUGH in at_the_centre(LOIN, "weighed", 3.0, 2 * 86_400.0, 0.9).cautions


def test_long_after_it_is_not():
    assert at_the_centre(LOIN, "weighed", 3.0, 60 * 86_400.0, 0.9).cautions == ()


def test_its_range_is_that_of_published_diffusivities():
    now = at_the_centre(LOIN, "weighed", 3.0, 5 * 86_400.0, 0.9)
    assert now.low is not None
    assert now.high is not None
    assert 0 < now.low < now.value < now.high <= 1
