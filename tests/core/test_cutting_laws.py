"""Laws of a cut: alone it loses nothing, and what hangs on goes on as the whole would have."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.test_cutting import cut, hung

shares = st.floats(0.1, 0.95)


@given(before_kg=st.floats(0.5, 1.0), left=shares)
def test_a_cut_alone_loses_nothing(before_kg: float, left: float):
    kitchen, batch, piece = hung()
    assert cut(kitchen, batch, piece, before_kg, before_kg * left).loss == pytest.approx(1 - before_kg, abs=1e-12)


@given(left=shares, dries=shares)
def test_the_rest_loses_as_it_would_have_whole(left: float, dries: float):
    whole, whole_batch, whole_piece = hung()
    whole.weigh(whole_piece, 0.8 * dries, 30)
    kitchen, batch, piece = hung()
    cut(kitchen, batch, piece, 0.8, 0.8 * left)
    kitchen.weigh(piece, 0.8 * left * dries, 30)
    assert kitchen.piece(batch, piece).loss == pytest.approx(whole.piece(whole_batch, whole_piece).loss)
