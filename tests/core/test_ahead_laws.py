"""Whatever stands in the book, a forecast can be made of it."""

from hypothesis import given, settings
from hypothesis import strategies as st

from core.daybook.ahead import ahead
from core.daybook.batch import batches
from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from tests.core.kitchen import Kitchen
from tests.core.test_air_logs import log

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


def _written() -> list[dict[str, object]]:
    kitchen = Kitchen()
    batch = kitchen.begin()
    pieces = [kitchen.hang(batch, tag) for tag in ("J-1", "J-2")]
    kitchen.note(SetPointsChosen(12.0, 0.78), CHAMBER, at=1)
    kitchen.note(AirRead(12.5, 0.80), CHAMBER, at=3)
    for at, share in ((4, 0.95), (8, 0.90), (12, 0.86)):
        for piece in pieces:
            kitchen.weigh(piece, share, at)
    kitchen.note(log(3, humidity=0.72), CHAMBER, at=9)
    return kitchen.records


WRITTEN = _written()


@settings(max_examples=30)
@given(st.permutations(WRITTEN))
def test_a_forecast_does_not_depend_on_the_order_of_entries(records: list[dict[str, object]]):
    found, known = (ahead(book, batches(book)[0]) for book in (Book(records), Book(WRITTEN)))
    assert [each.forecast for each in found] == [each.forecast for each in known]
