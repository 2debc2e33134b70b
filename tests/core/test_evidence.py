"""What the daybook hands to the judge: never a sample that was drier, never a look that nobody had."""

from datetime import timedelta, timezone

import pytest

from core.daybook.curing import known_cure
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.ferment import DeviationDecided
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.release.readiness import judge
from core.release.salted import Salted
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.workshop import Workshop


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    key = kitchen.begin(least_s=20.0 * 86400)
    kitchen.cure(key)
    kitchen.read(key, None, at=0.5, temperature_c=20)
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


def test_a_piece_with_all_its_evidence_is_ready(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=31)
    assert judge(known(kitchen, batch, piece)).word == "ready"


def test_a_piece_hung_too_few_days_is_held(kitchen: Kitchen, batch: str):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4, 0.89)
    kitchen.note(PieceInspected(), piece, at=20)
    assert judge(known(kitchen, batch, piece, day=21)).word == "hold"


# A whole muscle's time in salt


def muscle(
    kitchen: Kitchen, ended: SaltingEnded | None = None, out: float = 22.0, hung: float = 23.0
) -> tuple[str, str]:
    batch = kitchen.begin("Loin", "whole-muscle")
    kitchen.note(CureWeighed(0.031, 0.0625, 0.0, 0.372, "us", "meat", "dry-rub"), batch)
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0, mass_kg=2.0), batch, 1)
    if ended is not None:
        kitchen.note(ended, batch, out)
    return batch, kitchen.hang(batch, at=hung)


COLD = SaltingEnded("", None, 2.5, 4.0)


def salted(kitchen: Kitchen, batch: str, piece: str):
    found = known(kitchen, batch, piece, day=60).salted
    assert found is not None
    return found


def test_its_time_in_salt_is_told(kitchen: Kitchen):
    found = salted(kitchen, *muscle(kitchen, COLD))
    assert (found.method, found.shape, found.thickness_m) == ("weighed", "slab", 0.05)
    assert (found.coldest_c, found.warmest_c, found.mass_kg) == (2.5, 4.0, 2.0)
    assert found.lasts_s == pytest.approx(21 * 86400)


def test_a_sausage_has_no_time_in_salt(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch)).salted is None


def test_without_an_entry_of_its_salting_nothing_is_known_of_it(kitchen: Kitchen):
    batch = kitchen.begin("Loin", "whole-muscle")
    assert salted(kitchen, batch, kitchen.hang(batch)) == Salted()


def test_a_piece_hung_before_it_came_out_had_only_the_time_until_then(kitchen: Kitchen):
    assert salted(kitchen, *muscle(kitchen, COLD, hung=11.0)).lasts_s == pytest.approx(10 * 86400)


def test_that_it_never_came_out_leaves_its_time_open(kitchen: Kitchen):
    assert salted(kitchen, *muscle(kitchen)).lasts_s is None


@pytest.mark.parametrize(("at", "between"), [(5.0, (1.0, 8.0)), (21.9, (1.0, 8.0)), (22.5, (2.5, 4.0))])
def test_every_temperature_read_in_that_time_counts(kitchen: Kitchen, at: float, between):
    batch, piece = muscle(kitchen, COLD)
    for temperature_c in (1.0, 8.0):
        kitchen.read(batch, None, at, temperature_c)
    found = salted(kitchen, batch, piece)
    assert (found.coldest_c, found.warmest_c) == between


def test_a_reading_alone_does_not_tell_how_cold_it_was_all_the_time(kitchen: Kitchen):
    batch, piece = muscle(kitchen, SaltingEnded())
    kitchen.read(batch, None, 5, 3.0)
    found = salted(kitchen, batch, piece)
    assert (found.coldest_c, found.warmest_c) == (None, None)


def test_the_planned_temperature_counts_where_it_was_warmer(kitchen: Kitchen):
    batch, piece = muscle(kitchen, COLD)
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 6.0), batch, 1)
    assert salted(kitchen, batch, piece).warmest_c == 6.0


def muscle_word(kitchen: Kitchen, ended: SaltingEnded | None, out: float = 22.0) -> str:
    batch, piece = muscle(kitchen, ended, out)
    kitchen.weigh(piece, 0.6, 60)
    kitchen.note(ActivityMeasured(0.88), piece, 60)
    kitchen.note(PieceInspected(), piece, 60)
    return judge(known(kitchen, batch, piece, day=61)).word


@pytest.mark.parametrize(
    ("ended", "out", "word"),
    [
        (COLD, 22.0, "ready"),
        (COLD, 2.0, "hold"),
        (COLD, 15.0, "hold"),
        (SaltingEnded("", None, None, 4.0), 22.0, "hold"),
        (SaltingEnded("", None, 2.5, None), 22.0, "hold"),
        (SaltingEnded("", None, 2.5, 8.0), 22.0, "hold"),
        (SaltingEnded("", None, 0.0, 4.0), 22.0, "hold"),
        (None, 22.0, "hold"),
    ],
)
def test_a_whole_muscle_is_ready_only_where_its_salt_is_through_and_it_was_cold(kitchen, ended, out, word):
    assert muscle_word(kitchen, ended, out) == word


def test_a_decision_to_throw_a_whole_muscle_away_counts(kitchen: Kitchen):
    batch, piece = muscle(kitchen, COLD)
    kitchen.note(DeviationDecided("discard", "Ana", "not-tested"), batch, 30)
    assert judge(known(kitchen, batch, piece, day=60)).word == "discard"


# Contradictions


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


def salted_with(kitchen: Kitchen, *ends: tuple[float, float | None, float | None]) -> Salted:
    """A muscle that went into salt on day 1 and was noted as out on each day, coldest, warmest; hung on day 50."""
    muscle = kitchen.begin(style="whole-muscle")
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0), muscle, at=1)
    for at, cold, warm in ends:
        kitchen.note(SaltingEnded("", None, cold, warm), muscle, at=at)
    found = known(kitchen, muscle, kitchen.hang(muscle, at=50), day=90).salted
    assert found is not None
    return found


def test_the_coldest_and_the_warmest_typed_the_wrong_way_round_hide_no_warmth(kitchen: Kitchen):
    found = salted_with(kitchen, (40, 8.0, 1.0))
    assert (found.coldest_c, found.warmest_c) == (1.0, 8.0)


@pytest.mark.parametrize("ends", [[(10, 3.0, 9.0), (40, 2.0, 4.0)], [(10, 2.0, 4.0), (40, 3.0, 9.0)]])
def test_out_of_salt_twice_it_was_out_with_the_first_and_the_warmest_counts(kitchen: Kitchen, ends):
    found = salted_with(kitchen, *ends)
    assert (found.lasts_s, found.coldest_c, found.warmest_c) == (9 * 86400, 2.0, 9.0)


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


@pytest.mark.parametrize(("day", "signs"), [(50.0, ()), (50.01, None)])
def test_a_look_tells_of_a_piece_that_nobody_weighed_since_for_a_month(kitchen: Kitchen, batch: str, day: float, signs):
    piece = piece_that_lost(kitchen, batch, "J-1", 0.4)
    kitchen.note(PieceInspected(()), piece, at=20)
    assert known(kitchen, batch, piece, day=day).signs == signs
