"""What the daybook hands to the judge of a batch and of a look at its piece: never a look that nobody had."""

from datetime import timedelta, timezone

import pytest

from core.daybook.curing import known_cure
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import (
    BatchStarted,
    CureWeighed,
    PieceInspected,
)
from core.release.readiness import judge
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.proven import known, piece_that_lost


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
    assert known_cure(kitchen.batch(batch)) is None


def test_meat_corrected_later_changes_the_nitrite(kitchen: Kitchen, batch: str):
    kitchen.note(BatchStarted("Juniper coarse", "fermented", 6.2, 0.35), batch, corrects=batch, written=4)
    known = known_cure(kitchen.batch(batch))
    assert known is not None
    assert known.nitrite_ppm == pytest.approx(312.5)


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


@pytest.mark.parametrize(("weighed", "signs"), [(16.0, ()), (16.01, None)])
def test_a_look_tells_of_the_piece_as_it_was_within_the_week(kitchen: Kitchen, batch: str, weighed: float, signs):
    piece = kitchen.hang(batch)
    kitchen.note(PieceInspected(), piece, at=9)
    kitchen.weigh(piece, 0.8, weighed)
    assert known(kitchen, batch, piece).signs == signs


def test_what_was_found_long_ago_still_counts(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    kitchen.note(PieceInspected(("slime",)), piece, at=3)
    kitchen.weigh(piece, 0.8, 30)
    assert known(kitchen, batch, piece).signs == ("slime",)


def test_a_find_taken_back_leaves_no_sign(kitchen: Kitchen, batch: str):
    piece = kitchen.hang(batch)
    kitchen.take_back(kitchen.note(PieceInspected(("slime",)), piece, at=9))
    assert known(kitchen, batch, piece).signs is None


def test_a_piece_with_all_its_evidence_is_ready(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=31)
    assert judge(known(kitchen, batch, piece)).word == "ready"


def test_a_piece_hung_too_few_days_is_held(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=20)
    assert judge(known(kitchen, batch, piece, day=21)).word == "hold"


@pytest.mark.parametrize(("day", "signs"), [(50.0, ()), (50.01, None)])
def test_a_look_tells_of_a_piece_that_nobody_weighed_since_for_a_month(kitchen: Kitchen, batch: str, day: float, signs):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4)
    kitchen.note(PieceInspected(()), piece, at=20)
    assert known(kitchen, batch, piece, day=day).signs == signs
