"""Laws of a dried piece's figures: the loss and the activity agree, the parts stay within the whole."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.activity import Mix
from core.dry.activity_figures import (
    dried_composition,
    end_of_drying,
    loss_wanted,
    water_activity,
)

SAUSAGE = Mix(water=0.58, salt=0.028)


@given(st.floats(0.80, 0.94))
def test_the_loss_and_the_water_activity_agree(wanted):
    (figure,) = loss_wanted(SAUSAGE, wanted)
    assert water_activity(SAUSAGE, figure.value)[0].value == pytest.approx(wanted, abs=1e-6)


@given(st.floats(0.0, 0.5))
def test_the_parts_never_make_more_than_the_whole(loss):
    found = {figure.key: figure for figure in dried_composition(0.58, 0.028, loss, 0.16, 0.22)}
    assert sum(found[key].value for key in ("water", "salt", "protein", "fat")) <= 1 + 1e-9


@given(st.floats(0.70, 0.98), st.floats(0.70, 0.98))
def test_moister_air_ends_it_sooner(one, other):
    drier, moister = sorted((one, other))
    assert end_of_drying(SAUSAGE, 12, drier)[0].value >= end_of_drying(SAUSAGE, 12, moister)[0].value
