"""A part is cut off: what hangs on has lost no more and no less than the whole had."""

import pytest

from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import ActivityMeasured, PieceCut
from core.daybook.facts.instruments import InstrumentAdded, MassesChecked
from core.daybook.piece import Piece
from core.dry.shrink import start_of_rest
from tests.core.kitchen import DAY, NOON, Kitchen


def cut(kitchen: Kitchen, batch: str, piece: str, before_kg: float, after_kg: float, at: float = 20) -> Piece:
    kitchen.note(PieceCut(before_kg, after_kg), piece, at)
    return kitchen.piece(batch, piece)


def hung() -> tuple[Kitchen, str, str]:
    kitchen = Kitchen()
    batch = kitchen.begin()
    return kitchen, batch, kitchen.hang(batch)


def test_a_piece_cut_in_half_is_not_dry_by_it():
    kitchen, batch, piece = hung()
    assert cut(kitchen, batch, piece, 0.9, 0.45).loss == pytest.approx(0.1)
    assert kitchen.batch(batch).stage != "release"


def test_what_hangs_on_weighs_what_it_weighs():
    kitchen, batch, piece = hung()
    assert cut(kitchen, batch, piece, 0.9, 0.45).mass_kg == 0.45


def test_cut_twice_it_is_counted_from_what_is_left_of_what_was_left():
    kitchen, batch, piece = hung()
    cut(kitchen, batch, piece, 0.9, 0.45, at=20)
    assert cut(kitchen, batch, piece, 0.4, 0.2, at=30).start_kg == pytest.approx(0.25)


def test_a_weighing_before_the_cut_that_is_entered_after_it_is_of_the_whole():
    kitchen, batch, piece = hung()
    cut(kitchen, batch, piece, 0.9, 0.45, at=20)
    kitchen.weigh(piece, 0.95, at=10)
    weighings = kitchen.piece(batch, piece).weighings
    assert [each.mass_kg for each in weighings] == pytest.approx([0.475, 0.45])


def test_a_cut_taken_back_never_was():
    kitchen, batch, piece = hung()
    kitchen.take_back(kitchen.note(PieceCut(0.9, 0.45), piece, 20))
    assert (kitchen.piece(batch, piece).start_kg, kitchen.piece(batch, piece).is_cut) == (1.0, False)


def test_a_sample_knows_what_had_been_lost_when_it_was_taken():
    kitchen, batch, piece = hung()
    kitchen.weigh(piece, 0.8, 10)
    kitchen.note(ActivityMeasured(0.9), piece, 10.1)
    (activity,) = cut(kitchen, batch, piece, 0.7, 0.35).activities
    assert activity.loss == pytest.approx(0.2)


def test_cut_on_a_scale_that_had_failed_nothing_proves_its_loss():
    kitchen, batch, piece = hung()
    scale = kitchen.note(InstrumentAdded("Table", "scale"))
    kitchen.note(MassesChecked(1.0, 1.4, 0.001), scale, 5)
    kitchen.note(PieceCut(0.9, 0.45, scale), piece, 20)
    kitchen.weigh(piece, 0.3, 30)
    assert kitchen.piece(batch, piece).proven_loss is None


def test_a_rest_no_smaller_than_the_whole_makes_nothing_of_it_larger():
    kitchen, batch, piece = hung()
    assert cut(kitchen, batch, piece, 0.9, 0.95).start_kg == 1.0


def test_what_the_rest_weighed_when_it_was_hung():
    """Start × after ÷ before: 1,000 × 450 ÷ 900 = 500 g."""
    assert start_of_rest(1.0, 0.9, 0.45).value == pytest.approx(0.5)


@pytest.mark.parametrize(("before_kg", "is_doubted"), [(0.85, False), (0.5, True), (1.1, True)])
def test_a_cut_whose_first_weight_cannot_be_so_is_doubted(before_kg: float, is_doubted: bool):
    """Weighed 0.9 kg the day before: half a kilogram, or more than it ever weighed, is a slip."""
    kitchen, batch, piece = hung()
    kitchen.weigh(piece, 0.9, 19)
    cut(kitchen, batch, piece, before_kg, before_kg / 2)
    folded = kitchen.batch(batch)
    doubts = evidence_for(folded, folded.piece(piece), NOON + 30 * DAY).contradictions
    assert bool(doubts) is is_doubted
