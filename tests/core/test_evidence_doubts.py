"""A reading that contradicts the others holds the piece until it is corrected or read again."""

import pytest

from core.daybook.facts.batch import (
    ActivityMeasured,
    PieceInspected,
    Reading,
)
from core.release.readiness import judge
from tests.core.kitchen import Kitchen
from tests.core.proven import known, piece_that_lost
from tests.core.workshop import Workshop


def settled(kitchen: Kitchen, batch: str) -> str:
    piece = kitchen.hang(batch)
    kitchen.weigh(piece, 0.7, 20)
    kitchen.note(ActivityMeasured(0.91), piece, 20)
    kitchen.weigh(piece, 0.6, 30)
    kitchen.note(ActivityMeasured(0.89), piece, 30)
    kitchen.note(PieceInspected(), piece, 31)
    return piece


CONTRADICTING = {
    "ph": lambda kitchen, batch, piece: kitchen.read(batch, 7.9, 2.5),
    "ph, lower": lambda kitchen, batch, piece: kitchen.read(batch, 3.6, 2.5),
    "weight-rose": lambda kitchen, batch, piece: kitchen.weigh(piece, 0.75, 25),
    "weight-fell": lambda kitchen, batch, piece: kitchen.weigh(piece, 0.45, 31),
    "activity-rose": lambda kitchen, batch, piece: kitchen.note(ActivityMeasured(0.95), piece, 25),
    "activity-fell": lambda kitchen, batch, piece: kitchen.note(ActivityMeasured(0.75), piece, 25),
    "activity": lambda kitchen, batch, piece: kitchen.note(ActivityMeasured(0.089), piece, 10),
}


@pytest.mark.parametrize("what", CONTRADICTING)
def test_a_reading_that_contradicts_the_others_holds_what_was_ready(kitchen: Kitchen, batch: str, what: str):
    piece = settled(kitchen, batch)
    assert judge(known(kitchen, batch, piece)).word == "ready"
    CONTRADICTING[what](kitchen, batch, piece)
    judged = judge(known(kitchen, batch, piece))
    assert judged.word == "hold"
    assert f"contradiction-{what.partition(',')[0]}" in [each.key for each in judged.missing]


def test_a_mate_that_contradicts_it_holds_it(kitchen: Kitchen, batch: str):
    piece = settled(kitchen, batch)
    piece_that_lost(kitchen, batch, "J-2", 0.35, 0.84)
    assert judge(known(kitchen, batch, piece)).word == "hold"


def test_a_mate_drier_than_this_piece_contradicts_nothing(kitchen: Kitchen, batch: str):
    piece = settled(kitchen, batch)
    piece_that_lost(kitchen, batch, "J-2", 0.45, 0.70)
    assert judge(known(kitchen, batch, piece)).word == "ready"


def test_once_corrected_the_contradiction_is_gone(kitchen: Kitchen, batch: str):
    piece = settled(kitchen, batch)
    kitchen.take_back(kitchen.weigh(piece, 0.75, 25))
    assert judge(known(kitchen, batch, piece)).word == "ready"


@pytest.mark.parametrize(
    ("phs", "told"),
    [
        ([(14.0, 5.5), (14.1, 5.15)], True),
        ([(14.0, 5.5), (14.1, 5.2)], False),
        ([(13.99, 5.5), (14.1, 5.0)], False),
        ([(14.0, 5.5), (14.1, 5.0), (14.2, 5.05)], False),
    ],
)
def test_a_ph_that_falls_again_after_two_weeks_is_asked_about_until_it_is_read_once_more(
    kitchen: Kitchen, batch: str, phs: list[tuple[float, float]], told: bool
):
    for at, ph in phs:
        kitchen.read(batch, ph, at=at)
    assert ("ph-fell" in known(kitchen, batch, kitchen.hang(batch)).contradictions) is told


def test_two_phs_of_a_batch_are_enough_to_ask_about_a_fall(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.read(batch, 5.5, at=15)
    kitchen.read(batch, 5.0, at=15.1)
    assert "ph-fell" in known(kitchen, batch, kitchen.hang(batch)).contradictions


def test_a_fall_read_on_a_meter_that_failed_is_not_asked_about():
    shop = Workshop()
    batch, meter = shop.begin(), shop.add("ph-meter", "Pen")
    shop.buffers(meter, seven=7.0, four=4.9, at=1)
    shop.read(batch, 5.5, at=15)
    shop.note(Reading(5.0, None, meter), batch, at=15.1)
    assert "ph-fell" not in known(shop, batch, shop.hang(batch)).contradictions
