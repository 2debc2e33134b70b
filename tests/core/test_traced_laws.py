"""A traced sum is worth what the same sum of floats is, and its line, worked out, comes to that."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.quantities import MASS, RATIO
from core.traced import traced

SIZES = st.floats(0.001, 1000)


@given(SIZES, SIZES, SIZES)
def test_the_value_is_to_the_bit_that_of_the_same_sum_of_floats(a: float, b: float, c: float):
    one, two, three = traced("one", a, MASS), traced("two", b, MASS), traced("three", c, MASS)
    assert (one * (1 - two) / three + (one - three)).value == a * (1 - b) / c + (a - c)


@given(SIZES, SIZES, SIZES)
def test_the_text_worked_out_gives_the_value(a: float, b: float, c: float):
    one, two, three = traced("one", a, RATIO), traced("two", b, RATIO), traced("three", c, RATIO)
    for each in (one - (two - three), one / (two / three), (one + two) * three, one - two * three, one / (two * three)):
        shown = each.text.format(one=repr(a), two=repr(b), three=repr(c))
        python = shown.replace("−", "-").replace("×", "*").replace("÷", "/")
        assert eval(python) == pytest.approx(each.value, rel=1e-9, abs=1e-6)
