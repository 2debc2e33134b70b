"""How warm a piece had it, by the logs of the air: what is known, and for how long nothing is."""

import pytest
from attrs import evolve

from core.daybook.facts.batch import PieceTakenDown
from core.daybook.facts.chamber import CHAMBER
from core.daybook.piece_warmth import LINE_C, PieceWarmth, piece_warmth
from core.quantities import METRIC
from core.units import DAY_S, HOUR_S
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.test_air_logs import log


def warmth(kitchen: Kitchen, batch: str, until: float) -> PieceWarmth | None:
    (piece,) = kitchen.batch(batch).pieces
    return piece_warmth(kitchen.book, piece, NOON + until * DAY)


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    batch = kitchen.begin()
    kitchen.hang(batch, at=2)
    return batch


def test_where_nothing_was_logged_nothing_is_known(kitchen: Kitchen, batch: str):
    assert warmth(kitchen, batch, 10) is None


def test_a_log_before_it_was_hung_says_nothing_of_it(kitchen: Kitchen, batch: str):
    kitchen.note(log(2), CHAMBER, at=0)
    assert warmth(kitchen, batch, 10) is None


def test_an_even_log_is_its_own_mean(kitchen: Kitchen, batch: str):
    kitchen.note(log(4), CHAMBER, at=2)
    found = warmth(kitchen, batch, 6)
    assert (found.lasts_s, found.known_s) == (4 * DAY_S, 4 * DAY_S)
    assert (found.kinetic_c, found.warmest_c, found.above_s) == (pytest.approx(12.0), 13.0, 0.0)


def test_a_day_at_ten_and_one_at_fourteen_are_as_worked_in_print(kitchen: Kitchen, batch: str):
    kitchen.note(log(1, temperature_c=10.0), CHAMBER, at=2)
    kitchen.note(log(1, temperature_c=14.0), CHAMBER, at=3)
    assert warmth(kitchen, batch, 4).kinetic_c == pytest.approx(12.22971, abs=1e-5)


def test_days_without_a_log_are_not_known_and_said_so(kitchen: Kitchen, batch: str):
    kitchen.note(log(2), CHAMBER, at=4)
    found = warmth(kitchen, batch, 10)
    assert (found.known_s, found.lasts_s) == (2 * DAY_S, 8 * DAY_S)
    assert "Not known for 144 h" in " ".join(each.say(METRIC) for each in found.says)


def test_what_is_known_of_half_an_hour_is_not_taken_for_the_whole(kitchen: Kitchen, batch: str):
    whole = log(1)
    kitchen.note(evolve(whole, known_s=(HOUR_S / 2,) * 24), CHAMBER, at=2)
    assert warmth(kitchen, batch, 3).known_s == pytest.approx(DAY_S / 2)


def test_an_hour_with_one_reading_above_the_line_counts_whole(kitchen: Kitchen, batch: str):
    calm = log(1)
    kitchen.note(evolve(calm, highest_c=(LINE_C + 1, *calm.highest_c[1:])), CHAMBER, at=2)
    assert warmth(kitchen, batch, 3).above_s == HOUR_S


def test_of_two_loggers_the_warmest_counts_and_the_time_only_once(kitchen: Kitchen, batch: str):
    kitchen.note(log(1), CHAMBER, at=2)
    kitchen.note(log(1, temperature_c=13.0), CHAMBER, at=2)
    found = warmth(kitchen, batch, 3)
    assert (found.kinetic_c, found.known_s) == (pytest.approx(13.0), DAY_S)


def test_what_is_logged_after_it_was_taken_down_does_not_count(kitchen: Kitchen, batch: str):
    (piece,) = kitchen.batch(batch).pieces
    kitchen.note(PieceTakenDown("ready"), piece.id, at=4)
    kitchen.note(log(6), CHAMBER, at=2)
    assert warmth(kitchen, batch, 10).known_s == 2 * DAY_S


def test_a_log_that_does_not_begin_on_the_pieces_hour_loses_nothing(kitchen: Kitchen, batch: str):
    kitchen.note(log(2), CHAMBER, at=2.51)
    assert warmth(kitchen, batch, 10).known_s == pytest.approx(2 * DAY_S)
