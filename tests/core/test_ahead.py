"""What is to come of a batch that hangs, from its entries: each piece's day, and what it should weigh."""

import pytest

from core.daybook.ahead import ahead, should_weigh, weighed_in_round
from core.daybook.drying import drying_of
from core.daybook.facts.batch import PieceCut, PieceTakenDown
from core.daybook.facts.chamber import CHAMBER, SetPointsChosen
from core.daybook.facts.formula import FormulaKept
from core.daybook.hanging_air import air_since
from core.dry.doubt import question
from core.quantities import METRIC
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.mixing import FORMULA, fields


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


def dried(kitchen: Kitchen, batch: str, tag: str = "J-1", since: float = 2, until: int = 20, pace: float = 1.0) -> str:
    """A piece of a kilogram, weighed every third day as it loses by the root of time."""
    piece = kitchen.hang(batch, tag, at=since)
    for day in range(3, until, 3):
        kitchen.weigh(piece, round(1 - 0.06 * pace * day**0.5, 3), at=since + day)
    return piece


def set_to(kitchen: Kitchen, humidity: float, at: float, celsius: float = 12.0) -> None:
    kitchen.note(SetPointsChosen(celsius, humidity), CHAMBER, at)


def forecasts(kitchen: Kitchen, batch: str) -> dict[str, float | None]:
    book = kitchen.book
    found = ahead(book, kitchen.batch(batch))
    return {each.piece.tag: None if each.likely is None else (each.likely - NOON) / DAY for each in found}


def test_a_piece_that_dries_has_a_day(kitchen: Kitchen):
    batch = kitchen.begin()
    dried(kitchen, batch)
    (day,) = forecasts(kitchen, batch).values()
    assert day == pytest.approx(2 + (0.35 / 0.06) ** 2, rel=0.25)


def test_a_piece_taken_down_has_none_and_still_tells_of_the_others(kitchen: Kitchen):
    batch = kitchen.begin()
    down = dried(kitchen, batch, "J-1")
    kitchen.hang(batch, "J-2")
    kitchen.note(PieceTakenDown("ready"), down, at=30)
    found = drying_of(kitchen.book, kitchen.batch(batch))
    assert (list(forecasts(kitchen, batch)), len(found.pieces)) == (["J-2"], 2)


def test_pieces_hung_a_week_apart_are_counted_each_from_its_own_day(kitchen: Kitchen):
    batch = kitchen.begin()
    dried(kitchen, batch, "J-1", since=2)
    dried(kitchen, batch, "J-2", since=9)
    days = forecasts(kitchen, batch)
    assert days["J-2"] - days["J-1"] == pytest.approx(7, abs=1)


def test_the_air_is_what_was_set_when_it_was_hung_and_since(kitchen: Kitchen):
    for humidity, at in ((0.9, 0), (0.82, 1), (0.76, 10)):
        set_to(kitchen, humidity, at)
    air = air_since(kitchen.book, NOON + 2 * DAY)
    assert [(each.from_s / 86400, each.humidity) for each in air] == [(0, 0.82), (8, 0.76)]


def test_no_air_is_known_where_nothing_was_set(kitchen: Kitchen):
    assert air_since(kitchen.book, NOON) == ()


def test_drier_air_from_now_on_brings_the_day_nearer(kitchen: Kitchen):
    batch = kitchen.begin()
    set_to(kitchen, 0.82, 0)
    dried(kitchen, batch)
    (as_it_is,) = forecasts(kitchen, batch).values()
    set_to(kitchen, 0.72, 21)
    (drier,) = forecasts(kitchen, batch).values()
    assert drier < as_it_is


def test_a_cut_moves_no_day(kitchen: Kitchen):
    batch = kitchen.begin()
    piece = dried(kitchen, batch)
    (before,) = forecasts(kitchen, batch).values()
    mass_kg = kitchen.piece(batch, piece).mass_kg
    kitchen.note(PieceCut(mass_kg, mass_kg / 2), piece, at=20.01)
    (after,) = forecasts(kitchen, batch).values()
    assert after == pytest.approx(before, rel=0.03)


def test_a_finished_batch_of_the_formula_tells_of_the_next_before_it_is_weighed(kitchen: Kitchen):
    formula = kitchen.note(FormulaKept(**fields(FORMULA)))
    set_to(kitchen, 0.78, 0)
    first = kitchen.begin(formula=formula)
    for tag in ("J-1", "J-2"):
        piece = dried(kitchen, first, tag, until=60, pace=0.8)
        kitchen.note(PieceTakenDown("ready"), piece, at=70)
    alone, lent = kitchen.begin("Alone", at=71), kitchen.begin("Next", at=71, formula=formula)
    days = {}
    for batch in (alone, lent):
        kitchen.hang(batch, "N-1", at=72)
        (days[batch],) = ahead(kitchen.book, kitchen.batch(batch))
    widths = {key: each.forecast.latest_s or 1e9 for key, each in days.items()}
    assert widths[lent] < widths[alone]


def test_what_each_should_weigh_is_near_what_it_will(kitchen: Kitchen):
    batch = kitchen.begin()
    dried(kitchen, batch)
    should = should_weigh(kitchen.book, kitchen.batch(batch), NOON + 24 * DAY)
    assert should["J-1"].mass_kg == pytest.approx(1 - 0.06 * 22**0.5, abs=0.01)


def test_two_swapped_in_one_round_are_known_by_what_was_before_it(kitchen: Kitchen):
    batch = kitchen.begin()
    dried(kitchen, batch, "J-1", pace=0.8)
    other = dried(kitchen, batch, "J-2", pace=1.3)
    moment = NOON + 24 * DAY
    kitchen.weigh(other, 0.78, at=23.95)
    should = should_weigh(kitchen.book, kitchen.batch(batch), moment)
    typed = weighed_in_round(kitchen.batch(batch), moment)
    assert typed == {"J-2": 0.78}
    assert question("J-1", 0.64, should, typed).say(METRIC).endswith("Were the two swapped?")


def test_a_piece_never_weighed_is_not_asked_about(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.hang(batch, "J-1")
    assert should_weigh(kitchen.book, kitchen.batch(batch), NOON + 24 * DAY) == {}
