"""What is usual of one scale is not usual read on the other; the answer to a question is read as it was meant."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.quantities import METRIC, US, Reader
from core.reading import is_bare
from core.usual import CHAMBER_C, FERMENT_C, THAWING_C, as_typed
from tests.core.test_usual import LOST


@given(st.sampled_from([CHAMBER_C, FERMENT_C, THAWING_C]), st.floats(0, 1))
def test_no_usual_temperature_of_one_scale_is_usual_read_on_the_other(usual, place):
    low, high = usual
    at_c = low + place * (high - low)
    assert not low <= (at_c - 32) / 1.8 <= high
    assert not low <= at_c * 1.8 + 32 <= high


@given(st.sampled_from([METRIC, US, Reader("metric", ",")]), st.floats(0.0001, 0.7))
def test_the_text_that_answers_the_question_is_read_as_the_same_value(reader, value):
    text = as_typed(value, LOST.quantity, reader)
    assert not is_bare(text)
    assert LOST.read(text, reader) == pytest.approx(value, rel=1e-5)
