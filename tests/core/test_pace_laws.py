"""Laws of the time that drying counts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.pace import Air, Known, by_the_clock, force_pa, longer
from core.units import DAY_S

CELLAR, DRIER = Air(0, 12, 0.80), Air(10 * DAY_S, 12, 0.72)
moments = st.floats(1, 60)


@given(moments, moments)
def test_the_longer_the_later(one, other):
    now = Known(3 * DAY_S, 0.05)
    less, more = sorted((one, other))
    days = [by_the_clock((CELLAR, DRIER), now, each * DAY_S, 0.05) for each in (less, more)]
    assert days[0] <= days[1]


@given(moments)
def test_the_clock_and_the_airs_time_undo_each_other(days):
    now = Known(3 * DAY_S, 0.05)
    until_s = by_the_clock((CELLAR, DRIER), now, days * DAY_S, 0.05)
    assert longer((CELLAR, DRIER), now, until_s) == pytest.approx(days * DAY_S)


@given(st.floats(0, 0.7), st.floats(0, 1))
def test_the_force_is_never_nothing(loss, humidity):
    assert force_pa(Air(0, 12, humidity), loss) > 0
