"""Laws of all shapes: more takes longer, time and share undo each other."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dry.activity import Mix
from core.dry.shapes import MOST, shapes

ALL = {shape.key: shape for shape in shapes(0.78, Mix(water=0.58, salt=0.028))}
keys = st.sampled_from(list(ALL))
shares = st.floats(0.005, MOST)


@given(keys, shares, shares)
def test_more_takes_longer(key, one, other):
    less, more = sorted((one, other))
    assert ALL[key].log_time(less) <= ALL[key].log_time(more)


@given(keys, shares)
def test_time_and_share_undo_each_other(key, share):
    assert ALL[key].gone(ALL[key].log_time(share)) == pytest.approx(share, rel=1e-3)
