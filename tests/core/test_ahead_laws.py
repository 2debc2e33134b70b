"""Whatever stands in the book, a forecast can be made of it."""

from hypothesis import given, settings
from hypothesis import strategies as st

from core.daybook.ahead import ahead
from tests.core.kitchen import Kitchen

masses = st.floats(0.01, 60.0)


@settings(max_examples=40)
@given(st.lists(st.tuples(masses, st.floats(2, 90)), max_size=6))
def test_whatever_was_weighed_a_forecast_can_be_made(weighed: list[tuple[float, float]]):
    kitchen = Kitchen()
    batch = kitchen.begin()
    piece = kitchen.hang(batch)
    for mass_kg, at in weighed:
        kitchen.weigh(piece, mass_kg, at)
    (found,) = ahead(kitchen.book, kitchen.batch(batch))
    assert 0 <= found.forecast.comes <= 1.000001
