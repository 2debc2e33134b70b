"""Laws of weight loss: target and loss undo each other, parts make the whole."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry import rate, shrink

weights = st.floats(0.001, 999)
losses = st.floats(0, 0.75)


@given(weights, losses)
def test_a_piece_at_its_target_weight_has_lost_the_target(start_kg, target):
    target_kg = shrink.target_weight(start_kg, target).value
    assert shrink.loss(start_kg, target_kg).value == pytest.approx(target, abs=1e-9)


@given(weights, weights)
def test_loss_and_yield_make_one(start_kg, now_kg):
    whole = shrink.loss(start_kg, now_kg).value + shrink.yield_(start_kg, now_kg).value
    assert whole == pytest.approx(1, rel=1e-9, abs=1e-9 * now_kg / start_kg)


@given(weights, weights, weights)
def test_a_lighter_piece_has_never_lost_less(start_kg, one_kg, other_kg):
    light, heavy = sorted((one_kg, other_kg))
    assert shrink.lost(start_kg, light) >= shrink.lost(start_kg, heavy)


@given(weights, weights, losses)
def test_what_remains_is_never_below_nothing(start_kg, now_kg, target):
    assert shrink.remaining(start_kg, now_kg, target).value >= 0


@given(weights, losses, losses, st.floats(3600, 1e8))
def test_a_daily_loss_over_its_time_is_the_loss_between(start_kg, one, other, between_s):
    earlier, later = start_kg * (1 - one), start_kg * (1 - other)
    a_second = rate.loss_rate(start_kg, earlier, later, between_s)
    assert a_second * between_s == pytest.approx(other - one, abs=1e-9)
