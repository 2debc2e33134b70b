"""A law of haste: what is too fast is never to be dried faster."""

from hypothesis import given
from hypothesis import strategies as st

from core.dry.haste import judge
from core.dry.pace import Air
from core.dry.rate import Rate
from core.quantities import METRIC
from core.units import DAY_S


def a_day(share: float) -> Rate:
    return Rate(share / DAY_S, 0.0, 0.0, DAY_S)


def said(rate: Rate, lost: float, air: Air) -> str:
    return " ".join(each.say(METRIC) for each in judge(rate, lost, 0.35, air).says)


@given(st.floats(0.0205, 0.09), st.floats(0, 0.11), st.floats(0.5, 0.94))
def test_too_fast_never_asks_for_drier_air(share, lost, humidity):
    assert "Lower" not in said(a_day(share), lost, Air(0, 12, humidity))
