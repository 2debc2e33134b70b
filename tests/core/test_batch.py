"""A batch is the fold of its entries: its stage, its readings, what each piece has lost."""

import pytest

from core.daybook.batch import batches, fold, open_and_finished, open_batches
from core.daybook.book import Book
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceHung,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.cure import RULES, HouseRule
from core.daybook.facts.ferment import DeviationDecided
from tests.core.kitchen import DAY, NOON, Kitchen


@pytest.fixture
def hung(kitchen: Kitchen) -> tuple[str, str]:
    """A cured, acid batch with one piece of a kilogram."""
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.1)
    return batch, kitchen.hang(batch)


def test_a_batch_is_named_as_it_was_begun(kitchen: Kitchen):
    assert kitchen.batch(kitchen.begin("Fennel fine")).name == "Fennel fine"


def test_there_is_no_batch_of_an_unknown_id():
    assert fold(Book(), "01a2138b-1620-7c23-a1d4-5ab52d4a3d83") is None


def test_a_piece_is_no_batch(kitchen: Kitchen, hung):
    assert fold(kitchen.book, hung[1]) is None


def test_a_correction_is_no_batch(kitchen: Kitchen):
    batch = kitchen.begin()
    correction = kitchen.note(BatchStarted("Finer", "fermented", 12.4, 0.35), batch, corrects=batch, written=1)
    assert fold(kitchen.book, correction) is None


def test_a_withdrawn_batch_is_none(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.take_back(batch)
    assert fold(kitchen.book, batch) is None


def test_a_withdrawn_batch_is_not_listed(kitchen: Kitchen):
    kitchen.take_back(kitchen.begin())
    assert batches(kitchen.book) == []


def test_a_batch_brought_back_is_whole_again(kitchen: Kitchen, hung):
    batch, piece = hung
    kitchen.take_back(batch, written=3)
    kitchen.note(BatchStarted("Juniper coarse", "fermented", 12.4, 0.35), batch, corrects=batch, written=4)
    assert [each.id for each in kitchen.batch(batch).pieces] == [piece]


def test_batches_are_listed_newest_first(kitchen: Kitchen):
    kitchen.begin("second", at=5)
    kitchen.begin("third", at=9)
    kitchen.begin("first", at=1)
    assert [batch.name for batch in batches(kitchen.book)] == ["third", "second", "first"]


def test_a_new_batch_is_to_be_mixed(kitchen: Kitchen):
    assert kitchen.batch(kitchen.begin()).stage == "mix"


def test_a_cured_sausage_is_to_ferment(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    assert kitchen.batch(batch).stage == "ferment"


def test_a_cured_whole_muscle_is_to_dry(kitchen: Kitchen):
    batch = kitchen.begin(style="whole-muscle")
    kitchen.cure(batch)
    assert kitchen.batch(batch).stage == "dry"


@pytest.mark.parametrize(("ph", "stage"), [(5.31, "ferment"), (5.3, "dry"), (5.1, "dry")])
def test_a_sausage_dries_once_it_is_acid(kitchen: Kitchen, ph: float, stage: str):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, ph)
    assert kitchen.batch(batch).stage == stage


def test_a_warm_reading_without_ph_leaves_it_fermenting(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, None, temperature_c=22.0)
    assert kitchen.batch(batch).stage == "ferment"


def test_ph_that_rises_again_does_not_bring_it_back_to_ferment(kitchen: Kitchen, hung):
    kitchen.read(hung[0], 5.6, at=20)
    assert kitchen.batch(hung[0]).stage == "dry"


def test_a_taken_back_reading_does_not_count(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.take_back(kitchen.read(batch, 5.1))
    assert kitchen.batch(batch).stage == "ferment"


def test_a_piece_short_of_its_loss_keeps_the_batch_drying(kitchen: Kitchen, hung):
    batch, piece = hung
    other = kitchen.hang(batch, "J-2")
    kitchen.weigh(piece, 0.6, at=30)
    kitchen.weigh(other, 0.7, at=30)
    assert kitchen.batch(batch).stage == "dry"


def test_a_piece_never_weighed_keeps_the_batch_drying(kitchen: Kitchen, hung):
    batch, piece = hung
    kitchen.hang(batch, "J-2")
    kitchen.weigh(piece, 0.6, at=30)
    assert kitchen.batch(batch).stage == "dry"


def test_a_batch_whose_pieces_have_all_lost_enough_is_to_be_settled(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.65, at=30)
    assert kitchen.batch(hung[0]).stage == "release"


def test_a_loss_reached_to_the_gram_is_reached_whatever_the_last_binary_digit_says(kitchen: Kitchen):
    """(0.7 − 0.455) ÷ 0.7 is 0.35 less a hair in binary, and exactly 35 % on the scale."""
    batch = kitchen.begin(style="whole-muscle", target_loss=0.35)
    kitchen.cure(batch)
    kitchen.weigh(kitchen.hang(batch, start_kg=0.7), 0.455, at=30)
    assert kitchen.batch(batch).stage == "release"


def test_only_hanging_pieces_keep_a_batch_drying(kitchen: Kitchen, hung):
    batch, piece = hung
    other = kitchen.hang(batch, "J-2")
    kitchen.weigh(piece, 0.6, at=30)
    kitchen.note(PieceTakenDown("discard"), other, at=5)
    assert kitchen.batch(batch).stage == "release"


def test_a_batch_is_finished_when_every_piece_is_taken_down(kitchen: Kitchen, hung):
    kitchen.note(PieceTakenDown("ready"), hung[1], at=30)
    assert kitchen.batch(hung[0]).finished


def test_a_batch_without_pieces_is_not_finished(kitchen: Kitchen):
    assert not kitchen.batch(kitchen.begin()).finished


THROWN_AWAY, KEPT = DeviationDecided("discard", "Ana", "not-tested"), DeviationDecided("keep", "Ana", "clean")


def test_a_batch_that_was_condemned_before_it_was_hung_is_finished(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(THROWN_AWAY, batch, at=4)
    assert kitchen.batch(batch).finished
    assert open_batches(kitchen.book) == []


def test_a_batch_that_is_kept_all_the_same_is_not_finished(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(KEPT, batch, at=4)
    assert not kitchen.batch(batch).finished


def test_a_condemned_batch_that_hangs_is_open_until_its_pieces_are_down(kitchen: Kitchen, hung):
    kitchen.note(THROWN_AWAY, hung[0], at=4)
    assert not kitchen.batch(hung[0]).finished


def test_a_decision_that_is_taken_back_opens_the_batch_again(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.take_back(kitchen.note(THROWN_AWAY, batch, at=4))
    assert not kitchen.batch(batch).finished


def test_a_taking_down_taken_back_hangs_the_piece_again(kitchen: Kitchen, hung):
    kitchen.take_back(kitchen.note(PieceTakenDown("ready"), hung[1], at=30))
    assert [each.id for each in kitchen.batch(hung[0]).hanging] == [hung[1]]


def test_open_and_finished_batches_are_told_apart(kitchen: Kitchen, hung):
    kitchen.note(PieceTakenDown("ready"), hung[1], at=30)
    other = kitchen.begin()
    open_, finished = open_and_finished(kitchen.book)
    assert ([batch.id for batch in open_], [batch.id for batch in finished]) == ([other], [hung[0]])


def test_readings_stand_in_the_order_in_which_they_were_read(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.read(batch, 5.2, at=2)
    kitchen.read(batch, 5.7, at=1)
    assert [reading.ph for reading in kitchen.batch(batch).readings] == [5.7, 5.2]


def test_the_last_ph_is_not_the_lowest(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.read(batch, 4.9, at=1)
    kitchen.read(batch, 5.2, at=2)
    folded = kitchen.batch(batch)
    assert (folded.lowest_ph, folded.last_ph) == (4.9, 5.2)


def test_a_temperature_alone_is_no_ph(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.read(batch, 5.2, at=1)
    kitchen.read(batch, None, at=2, temperature_c=22.0)
    assert kitchen.batch(batch).last_ph == 5.2


def test_without_a_reading_there_is_no_ph(kitchen: Kitchen):
    folded = kitchen.batch(kitchen.begin())
    assert (folded.lowest_ph, folded.last_ph) == (None, None)


def test_a_piece_never_weighed_has_no_known_loss(kitchen: Kitchen, hung):
    assert kitchen.piece(*hung).loss is None


def test_loss_is_counted_from_the_start_weight(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.9, at=7)
    kitchen.weigh(hung[1], 0.75, at=14)
    assert kitchen.piece(*hung).loss == pytest.approx(0.25)


def test_a_piece_was_weighed_when_it_was_last_weighed(kitchen: Kitchen, hung):
    assert kitchen.piece(*hung).weighed_at == kitchen.piece(*hung).hung_at
    for at, mass_kg in [(9, 0.9), (16, 0.8), (23, 0.75)]:
        kitchen.weigh(hung[1], mass_kg, at=at)
    assert kitchen.piece(*hung).weighed_at == NOON + 23 * DAY


def test_the_last_weighing_is_the_last_that_happened_and_not_the_last_written(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.75, at=14)
    kitchen.weigh(hung[1], 0.9, at=7)
    assert kitchen.piece(*hung).mass_kg == 0.75


def test_correcting_a_weighing_changes_the_loss(kitchen: Kitchen, hung):
    weighing = kitchen.weigh(hung[1], 0.57, at=14)
    kitchen.note(PieceWeighed(0.75), hung[1], at=14, corrects=weighing, written=15)
    assert kitchen.piece(*hung).loss == pytest.approx(0.25)


def test_correcting_the_start_weight_changes_the_loss(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.75, at=14)
    kitchen.note(PieceHung("J-1", 1.5), hung[0], at=2, corrects=hung[1], written=15)
    assert kitchen.piece(*hung).loss == pytest.approx(0.5)


def test_a_weighing_taken_back_leaves_the_one_before(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.9, at=7)
    kitchen.take_back(kitchen.weigh(hung[1], 0.09, at=14))
    assert kitchen.piece(*hung).mass_kg == 0.9


def test_correcting_when_a_piece_was_hung_changes_since_when(kitchen: Kitchen, hung):
    kitchen.note(PieceHung("J-1", 1.0), hung[0], at=1, corrects=hung[1], written=15)
    assert kitchen.piece(*hung).hung_at == NOON + DAY


def test_a_withdrawn_piece_vanishes(kitchen: Kitchen, hung):
    kitchen.take_back(hung[1])
    assert kitchen.batch(hung[0]).pieces == ()


def test_a_withdrawn_piece_stays_in_the_log(kitchen: Kitchen, hung):
    kitchen.take_back(hung[1])
    assert hung[1] in [line.id for line in kitchen.batch(hung[0]).lines]


def test_pieces_of_another_batch_are_not_here(kitchen: Kitchen, hung):
    kitchen.hang(kitchen.begin("other"), "O-1")
    assert [piece.id for piece in kitchen.batch(hung[0]).pieces] == [hung[1]]


def test_a_sample_knows_what_the_piece_had_lost_when_it_was_taken(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.8, at=7)
    kitchen.note(ActivityMeasured(0.93), hung[1], at=8)
    kitchen.weigh(hung[1], 0.6, at=21)
    assert [sample.loss for sample in kitchen.piece(*hung).activities] == [pytest.approx(0.2)]


def test_a_sample_of_the_moment_of_a_weighing_counts_that_weighing(kitchen: Kitchen, hung):
    kitchen.weigh(hung[1], 0.8, at=7)
    kitchen.note(ActivityMeasured(0.93), hung[1], at=7)
    assert kitchen.piece(*hung).activities[0].loss == pytest.approx(0.2)


def test_a_sample_before_any_weighing_had_lost_nothing_that_is_known(kitchen: Kitchen, hung):
    kitchen.note(ActivityMeasured(0.96), hung[1], at=3)
    kitchen.weigh(hung[1], 0.8, at=7)
    assert kitchen.piece(*hung).activities[0].loss == 0


def test_correcting_a_weighing_changes_what_a_later_sample_had_lost(kitchen: Kitchen, hung):
    weighing = kitchen.weigh(hung[1], 0.6, at=7)
    kitchen.note(ActivityMeasured(0.93), hung[1], at=8)
    kitchen.note(PieceWeighed(0.8), hung[1], at=7, corrects=weighing, written=9)
    assert kitchen.piece(*hung).activities[0].loss == pytest.approx(0.2)


def test_an_uninspected_piece_was_not_looked_at(kitchen: Kitchen, hung):
    assert kitchen.piece(*hung).inspected is None


def test_a_sound_look_finds_no_sign(kitchen: Kitchen, hung):
    kitchen.note(PieceInspected(), hung[1], at=9)
    assert kitchen.piece(*hung).signs == ()


def test_a_later_sound_look_does_not_take_back_an_earlier_find(kitchen: Kitchen, hung):
    kitchen.note(PieceInspected(("slime",)), hung[1], at=9)
    kitchen.note(PieceInspected(), hung[1], at=10)
    assert kitchen.piece(*hung).signs == ("slime",)


def test_correcting_a_find_takes_it_back(kitchen: Kitchen, hung):
    found = kitchen.note(PieceInspected(("slime",)), hung[1], at=9)
    kitchen.note(PieceInspected(), hung[1], at=9, corrects=found, written=10)
    assert kitchen.piece(*hung).signs == ()


def test_a_sign_found_twice_is_told_once(kitchen: Kitchen, hung):
    kitchen.note(PieceInspected(("slime",)), hung[1], at=9)
    kitchen.note(PieceInspected(("smell", "slime")), hung[1], at=10)
    assert kitchen.piece(*hung).signs == ("slime", "smell")


def test_the_cure_that_was_corrected_counts(kitchen: Kitchen):
    batch = kitchen.begin()
    cure = kitchen.cure(batch)
    kitchen.note(CureWeighed(0.025, 0.0625), batch, corrects=cure, written=1)
    folded = kitchen.batch(batch)
    assert folded.cure is not None
    assert (folded.cure.cure_kg, folded.cure_line_id) == (0.025, cure)


def test_of_a_cure_weighed_twice_the_later_counts_and_its_moment(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch, at=1)
    later = kitchen.note(CureWeighed(0.04, 0.0625), batch, at=2)
    found = kitchen.batch(batch)
    assert found.cure is not None
    assert (found.cure.cure_kg, found.cure_line_id, found.cured_at) == (0.04, later, NOON + 2 * DAY)


def test_the_house_limits_are_those_of_when_it_was_cured(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(HouseRule("us", 120e-6), RULES, at=0.5)
    assert kitchen.batch(batch).house == ()
    kitchen.cure(batch, at=1)
    kitchen.note(HouseRule("us", 100e-6), RULES, at=2)
    assert [each.nitrite_ppm for each in kitchen.batch(batch).house] == [pytest.approx(120.0)]


def test_of_two_looks_and_two_endings_the_later_counts(kitchen: Kitchen, hung):
    batch, piece = hung
    kitchen.note(PieceInspected(), piece, at=5)
    look = kitchen.note(PieceInspected(), piece, at=6)
    kitchen.note(PieceTakenDown("discard"), piece, at=7)
    kitchen.note(PieceTakenDown("ready"), piece, at=8)
    found = kitchen.piece(batch, piece)
    assert found.inspected is not None
    assert (found.inspected.id, found.taken_down) == (look, PieceTakenDown("ready"))


def test_the_log_holds_batch_and_pieces_in_time_order(kitchen: Kitchen, hung):
    batch, piece = hung
    kitchen.weigh(piece, 0.9, at=7)
    kitchen.read(batch, 5.0, at=3)
    moments = [line.entry.happened_at for line in kitchen.batch(batch).lines]
    assert len(moments) == 6
    assert moments == sorted(moments)


def test_a_reading_corrected_into_a_hung_piece_opens_its_batch_again(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(PieceTakenDown("ready"), kitchen.hang(batch), at=30)
    reading = kitchen.read(batch, 5.5)
    assert open_batches(kitchen.book) == []
    kitchen.note(PieceHung("J-2", 1.0), batch, at=2, corrects=reading, written=31)
    assert [each.id for each in open_batches(kitchen.book)] == [batch]


def test_a_finished_batch_with_another_correction_is_passed_over_unread(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(PieceTakenDown("ready"), kitchen.hang(batch), at=30)
    kitchen.note(Reading(5.2), batch, at=1, corrects=kitchen.read(batch, 5.5), written=31)
    assert not kitchen.book.was_corrected_into("piece-hung", about=batch)
    assert open_batches(kitchen.book) == []
