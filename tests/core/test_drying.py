"""A hanging batch handed to the forecaster: its air, its mix, its pieces, and what an earlier batch lends."""

import pytest

from core.daybook.batch import fold
from core.daybook.book import Book
from core.daybook.drying import Drying, drying_of, mix_of
from core.daybook.facts.batch import PieceTakenDown
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.hanging_air import air_since
from core.dry.pace import MIDDLING, MUSCLE, Air
from core.units import DAY_S
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.mixing import Table


def hung_two(kitchen: Kitchen, style: str = "fermented") -> tuple[str, str, str]:
    batch = kitchen.begin(style=style)
    first, second = kitchen.hang(batch, "J-1", 1.0, at=2), kitchen.hang(batch, "J-2", 0.8, at=4)
    for at, share in ((6, 0.95), (9, 0.92), (13, 0.885)):
        kitchen.weigh(first, share, at)
    return batch, first, second


def drying(kitchen: Kitchen, batch: str) -> Drying | None:
    return of_book(kitchen.book, batch)


def of_book(book: Book, batch: str) -> Drying | None:
    folded = fold(book, batch)
    assert folded is not None
    return drying_of(book, folded)


def test_nothing_hung_is_no_drying():
    kitchen = Kitchen()
    assert drying(kitchen, kitchen.begin()) is None


def test_a_weighed_piece_has_its_day():
    kitchen = Kitchen()
    batch, first, _ = hung_two(kitchen)
    found = drying(kitchen, batch).forecast(first)
    assert found.weighings == 3
    assert found.earliest_s < found.likely_s


def test_a_piece_hung_later_counts_from_its_own_hanging():
    kitchen = Kitchen()
    batch, first, second = hung_two(kitchen)
    known = drying(kitchen, batch)
    assert [known.fit.pieces[known.place(each)].hung_s / DAY_S for each in (first, second)] == [0, 2]


def test_where_nobody_chose_or_read_the_air_it_is_not_known():
    assert air_since(Kitchen().book, NOON) == ()


def test_the_air_is_what_is_set_where_nobody_read():
    kitchen = Kitchen()
    kitchen.note(SetPointsChosen(12.0, 0.80), CHAMBER, at=0)
    kitchen.note(SetPointsChosen(12.0, 0.75), CHAMBER, at=10)
    assert air_since(kitchen.book, NOON + 2 * DAY) == (Air(0.0, 12.0, 0.80), Air(8 * DAY_S, 12.0, 0.75))


def test_what_was_read_comes_before_what_is_set():
    kitchen = Kitchen()
    kitchen.note(SetPointsChosen(12.0, 0.80), CHAMBER, at=0)
    for at, humidity in ((3, 0.82), (4, 0.84)):
        kitchen.note(AirRead(13.0, humidity), CHAMBER, at=at)
    (air,) = air_since(kitchen.book, NOON + 2 * DAY)
    assert (air.temperature_c, air.humidity) == pytest.approx((13.0, 0.83))


def test_what_was_read_before_it_hung_tells_nothing_of_it():
    kitchen = Kitchen()
    kitchen.note(AirRead(13.0, 0.60), CHAMBER, at=0)
    assert air_since(kitchen.book, NOON + 2 * DAY) == ()


@pytest.mark.parametrize(("style", "mix"), [("fermented", MIDDLING), ("whole-muscle", MUSCLE)])
def test_without_a_formula_the_mix_is_a_middling_one(style, mix):
    kitchen = Kitchen()
    batch, *_ = hung_two(kitchen, style)
    assert mix_of(kitchen.batch(batch)) == mix


def test_drier_air_brings_the_day_nearer():
    days = []
    for humidity in (0.82, 0.72):
        kitchen = Kitchen()
        kitchen.note(SetPointsChosen(12.0, humidity), CHAMBER, at=0)
        batch, first, _ = hung_two(kitchen)
        days.append(drying(kitchen, batch).forecast(first).likely_s)
    assert days[1] < days[0]


def test_it_is_kept_until_the_book_learns_something():
    kitchen = Kitchen()
    batch, *_ = hung_two(kitchen)
    book = kitchen.book
    assert of_book(book, batch) is of_book(book, batch)


def _batch_by_formula(table: Table, version: str, at: float, paces: tuple[float, ...]) -> tuple[str, str]:
    batch = table.begin(formula=version, at=at)
    piece = table.hang(batch, "J-1", 1.0, at=at + 2)
    for day, share in enumerate(paces):
        table.weigh(piece, share, at=at + 2 + 7 * (day + 1))
    return batch, piece


def test_an_earlier_batch_of_the_same_formula_lends_its_pace():
    latest = []
    for lends in (False, True):
        table = Table()
        table.note(SetPointsChosen(12.0, 0.78), CHAMBER, at=0)
        version = table.keep()
        if lends:
            _, piece = _batch_by_formula(table, version, 0, (0.93, 0.88, 0.84, 0.81, 0.78, 0.755, 0.735))
            table.note(PieceTakenDown("hold"), piece, at=60)
        batch, piece = _batch_by_formula(table, version, 70, ())
        found = drying(table, batch).forecast(piece)
        latest.append(found.latest_s / found.earliest_s)
    assert latest[1] < latest[0]
