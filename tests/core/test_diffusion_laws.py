"""Laws of salting: more time never means less salt, and the time to a share is the time at which it is there."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.mix.salting import Piece, centre_share, time_to

pieces = st.one_of(
    st.builds(Piece, st.sampled_from(["slab", "cylinder"]), st.floats(0.01, 0.3)),
    st.builds(Piece, st.just("block"), st.floats(0.01, 0.3), st.floats(0.01, 0.3), st.none() | st.floats(0.01, 0.3)),
)
manners = st.sampled_from(["weighed", "excess"])
d = st.floats(1e-10, 7e-10)


@given(pieces, manners, d, st.floats(0, 100), st.floats(0, 100))
def test_more_time_never_means_less_salt(piece, method, d_m2_s, days, more):
    earlier, later = (centre_share(piece, method, d_m2_s, each * 86400) for each in (days, days + more))
    assert later >= earlier - 1e-9


@given(pieces, manners, d, st.floats(0, 1000))
def test_a_share_is_a_share(piece, method, d_m2_s, days):
    assert -1e-9 <= centre_share(piece, method, d_m2_s, days * 86400) <= 1 + 1e-9


@given(pieces, manners, d, st.floats(0.02, 0.98))
def test_the_time_to_a_share_is_when_it_is_there(piece, method, d_m2_s, share):
    assert centre_share(piece, method, d_m2_s, time_to(piece, method, d_m2_s, share)) == pytest.approx(share, abs=1e-6)


@given(pieces, manners, d, st.floats(0.1, 0.9), st.floats(1.1, 3))
def test_time_goes_with_the_square_of_the_size(piece, method, d_m2_s, share, times):
    larger = Piece(
        piece.shape,
        piece.thickness_m * times,
        piece.width_m and piece.width_m * times,
        piece.length_m and piece.length_m * times,
    )
    assert time_to(larger, method, d_m2_s, share) == pytest.approx(
        times**2 * time_to(piece, method, d_m2_s, share), rel=1e-6
    )
