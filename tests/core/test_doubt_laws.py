"""A law of swaps: never are both orders one."""

from hypothesis import given
from hypothesis import strategies as st

from core.dry.doubt import Expected, is_swapped

F_1, F_2 = Expected(0.700, 0.003, 0.720), Expected(0.800, 0.003, 0.822)


@given(st.floats(0.6, 0.9), st.floats(0.6, 0.9))
def test_never_are_both_orders_a_swap(one_kg, other_kg):
    assert not (is_swapped(F_1, one_kg, F_2, other_kg) and is_swapped(F_1, other_kg, F_2, one_kg))
