"""Whose water activity a piece may lean on: its own, or that of a mate that had lost no more."""

import pytest

from core.daybook.facts.batch import (
    ActivityMeasured,
    PieceTakenDown,
    PieceWeighed,
)
from tests.core.kitchen import Kitchen
from tests.core.proven import known, piece_that_lost


def test_no_sample_means_no_water_activity(kitchen: Kitchen, batch: str):
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4))
    assert (evidence.water_activity, evidence.activity_from_mate) == (None, False)


def test_the_loss_at_the_sample_is_told(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.3, 0.88)
    kitchen.weigh(piece, 0.6, at=25)
    assert known(kitchen, batch, piece).activity_loss == pytest.approx(0.3)


def test_its_own_sample_is_its_own(kitchen: Kitchen, batch: str):
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89))
    assert (evidence.water_activity, evidence.activity_from_mate) == (0.89, False)


def test_a_piece_may_lean_on_a_mate_that_had_lost_less(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.36, 0.90)
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4))
    assert (evidence.water_activity, evidence.activity_from_mate) == (0.90, True)


def test_a_piece_may_lean_on_a_mate_that_had_lost_the_same(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.4, 0.90)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4)).water_activity == 0.90


def test_a_piece_never_leans_on_a_mate_that_had_lost_more(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.45, 0.85)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4)).water_activity is None


def test_a_piece_never_weighed_leans_on_nobody(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.36, 0.90)
    assert known(kitchen, batch, kitchen.hang(batch, "J-2")).water_activity is None


def test_the_sample_nearest_in_dryness_counts(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.30, 0.94)
    piece_that_lost(kitchen, batch, "J-2", 0.38, 0.91)
    piece_that_lost(kitchen, batch, "J-3", 0.45, 0.86)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-4", 0.4)).water_activity == 0.91


def test_of_samples_equally_dry_its_own_counts(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.4, 0.95)
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4, 0.89))
    assert (evidence.water_activity, evidence.activity_from_mate) == (0.89, False)


def test_of_mates_equally_dry_the_wetter_counts(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, batch, "J-1", 0.36, 0.88)
    piece_that_lost(kitchen, batch, "J-2", 0.36, 0.92)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-3", 0.4)).water_activity == 0.92


def test_of_its_own_samples_at_one_weight_the_wetter_counts(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.92)
    kitchen.note(ActivityMeasured(0.88), piece, at=21)
    assert known(kitchen, batch, piece).water_activity == 0.92


def test_what_a_mate_had_lost_counts_and_not_what_it_has_lost_since(kitchen: Kitchen, batch: str):
    mate = piece_that_lost(kitchen, batch, "J-1", 0.3, 0.94)
    kitchen.weigh(mate, 0.5, at=30)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.35)).water_activity == 0.94


def test_a_piece_that_was_weighed_wrongly_loses_the_sample_that_was_drier(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4)
    mate = piece_that_lost(kitchen, batch, "J-2", 0.38, 0.90)
    assert known(kitchen, batch, piece).water_activity == 0.90
    weighing = next(each.line_id for each in kitchen.piece(batch, piece).weighings)
    kitchen.note(PieceWeighed(0.7), piece, at=20, corrects=weighing, written=21)
    assert known(kitchen, batch, piece).water_activity is None
    assert known(kitchen, batch, mate).water_activity == 0.90


def test_a_mate_already_taken_down_still_tells(kitchen: Kitchen, batch: str):
    mate = piece_that_lost(kitchen, batch, "J-1", 0.36, 0.90)
    kitchen.note(PieceTakenDown("ready"), mate, at=22)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4)).water_activity == 0.90


def test_a_withdrawn_mate_tells_nothing(kitchen: Kitchen, batch: str):
    kitchen.take_back(piece_that_lost(kitchen, batch, "J-1", 0.36, 0.90))
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-2", 0.4)).water_activity is None


def test_a_withdrawn_sample_tells_nothing(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4)
    kitchen.take_back(kitchen.note(ActivityMeasured(0.85), piece, at=20))
    assert known(kitchen, batch, piece).water_activity is None


def test_a_piece_of_another_batch_is_no_mate(kitchen: Kitchen, batch: str):
    piece_that_lost(kitchen, kitchen.begin("other"), "O-1", 0.36, 0.90)
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4)).water_activity is None


def sampled_mate(kitchen: Kitchen, batch: str, weighed: dict[float, float], sampled: float) -> None:
    """Another piece: what it weighed on which day, and a favourable sample of it."""
    mate = kitchen.hang(batch, "J-2")
    for at, mass_kg in weighed.items():
        kitchen.weigh(mate, mass_kg, at=at)
    kitchen.note(ActivityMeasured(0.88), mate, at=sampled)


@pytest.mark.parametrize(
    ("weighed", "counts"),
    [
        ({}, False),
        ({10.0: 0.85}, False),
        ({18.999: 0.85}, False),
        ({19.0: 0.85}, True),
        ({20.0: 0.85, 30.0: 0.55}, True),
        ({10.0: 0.85, 30.0: 0.55}, False),
        ({10.0: 0.85, 30.0: 0.81}, True),
    ],
)
def test_a_mate_whose_loss_at_its_sample_is_not_known_lends_no_water_activity(
    kitchen: Kitchen, batch: str, weighed: dict[float, float], counts: bool
):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.2)
    sampled_mate(kitchen, batch, weighed, sampled=20.0)
    assert (known(kitchen, batch, piece).water_activity is not None) is counts


def test_a_piece_never_weighed_still_knows_its_own_last_sample(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    for at, activity in ((19, 0.93), (20, 0.9)):
        kitchen.note(ActivityMeasured(activity), piece, at=at)
    assert known(kitchen, batch, piece).water_activity == 0.9


@pytest.mark.parametrize(("activity", "told"), [(0.92, False), (0.925, True)])
def test_a_drier_mate_that_is_wetter_speaks_against_the_piece(
    kitchen: Kitchen, batch: str, activity: float, told: bool
):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.36, 0.89)
    piece_that_lost(kitchen, batch, "J-2", 0.45, activity)
    assert ("activity-rose" in known(kitchen, batch, piece).contradictions) is told
