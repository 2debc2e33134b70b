"""What the daybook hands to the judge: never a sample that was drier, never a look that nobody had."""

from datetime import timedelta, timezone

import pytest

from core.daybook.evidence import evidence_for, ingoing_nitrite_ppm
from core.daybook.facts import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
)
from core.release.readiness import judge
from tests.core.kitchen import DAY, NOON, Kitchen


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    key = kitchen.begin(least_days=20.0)
    kitchen.cure(key)
    kitchen.read(key, 5.6, at=1, temperature_c=20)
    kitchen.read(key, 4.9, at=2, temperature_c=20)
    kitchen.read(key, 5.0, at=3, temperature_c=20)
    return key


def piece_that_lost(kitchen: Kitchen, batch: str, tag: str, loss: float, activity: float | None = None) -> str:
    piece = kitchen.hang(batch, tag)
    kitchen.weigh(piece, 1 - loss, at=20)
    if activity is not None:
        kitchen.note(ActivityMeasured(activity), piece, at=20)
    return piece


def known(kitchen: Kitchen, batch: str, piece: str, day: float = 32.0):
    folded = kitchen.batch(batch)
    return evidence_for(folded, folded.piece(piece), NOON + day * DAY)


def test_batch_and_piece_are_told(kitchen: Kitchen, batch: str):
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4))
    assert (evidence.style, evidence.target_loss, evidence.least_days) == ("fermented", 0.35, 20.0)
    assert evidence.loss == pytest.approx(0.4)


def test_lowest_and_last_ph_are_told_apart(kitchen: Kitchen, batch: str):
    evidence = known(kitchen, batch, kitchen.hang(batch))
    assert (evidence.lowest_ph, evidence.last_ph) == (4.9, 5.0)


def test_a_piece_never_weighed_has_no_loss(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch)).loss is None


def test_days_hung_are_counted_from_the_hanging(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch, at=2), day=32.5).days_hung == pytest.approx(30.5)


def test_days_hung_do_not_depend_on_the_zone_of_the_clock(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch, at=2)
    folded = kitchen.batch(batch)
    east = (NOON + 3 * DAY).astimezone(timezone(timedelta(hours=11)))
    assert evidence_for(folded, folded.piece(piece), east).days_hung == pytest.approx(1.0)


def test_nitrite_is_counted_on_the_meat(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch)).ingoing.nitrite_ppm == pytest.approx(156.25)


def test_without_a_weighed_cure_the_nitrite_is_not_known(kitchen: Kitchen):
    batch = kitchen.begin()
    assert known(kitchen, batch, kitchen.hang(batch)).ingoing.nitrite_ppm is None


def test_of_a_salt_that_no_curing_salt_is_the_nitrite_is_not_known(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(CureWeighed(0.031, 0.9), batch)
    assert ingoing_nitrite_ppm(kitchen.batch(batch)) is None


def test_meat_put_right_later_changes_the_nitrite(kitchen: Kitchen, batch: str):
    kitchen.note(BatchStarted("Juniper coarse", "fermented", 6.2, 0.35), batch, corrects=batch, written=4)
    assert ingoing_nitrite_ppm(kitchen.batch(batch)) == pytest.approx(312.5)


def test_where_nobody_looked_the_signs_are_not_known(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch)).signs is None


def test_where_somebody_looked_and_found_nothing_the_signs_are_none(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    kitchen.note(PieceInspected(), piece, at=9)
    assert known(kitchen, batch, piece).signs == ()


def test_a_look_taken_back_was_no_look(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    kitchen.take_back(kitchen.note(PieceInspected(), piece, at=9))
    assert known(kitchen, batch, piece).signs is None


def test_a_find_taken_back_leaves_no_sign(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    kitchen.take_back(kitchen.note(PieceInspected(("slime",)), piece, at=9))
    assert known(kitchen, batch, piece).signs is None


def test_no_sample_means_no_water_activity(kitchen: Kitchen, batch: str):
    evidence = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4))
    assert (evidence.water_activity, evidence.activity_from_mate) == (None, False)


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


def test_a_piece_with_all_its_evidence_is_ready(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=31)
    assert judge(known(kitchen, batch, piece)).word == "ready"


def test_a_piece_hung_too_few_days_is_held(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=20)
    assert judge(known(kitchen, batch, piece, day=21)).word == "hold"
