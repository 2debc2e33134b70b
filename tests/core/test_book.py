"""The book: learning is harmless and in any order; what was corrected stands as it was corrected, and keeps both."""

import sys

import pytest

from core.daybook.batch import fold, open_batches
from core.daybook.book import Book
from core.daybook.entries import Entry, from_record, to_record
from core.daybook.facts import Unknown, Withdrawn
from core.daybook.facts.batch import BatchStarted, PieceHung, PieceTakenDown, PieceWeighed, Reading
from core.daybook.facts.chamber import CHAMBER, AirRead
from tests.core.effort import effort_s
from tests.core.kitchen import DAY, NOON, Kitchen, fresh

on_cpython = pytest.mark.skipif(sys.platform == "emscripten", reason="timed on CPython")


def weight(book: Book, key: str) -> float:
    fact = book.line(key).fact
    assert isinstance(fact, PieceWeighed)
    return fact.mass_kg


def corrected(kitchen: Kitchen, key: str, mass_kg: float, written: float) -> str:
    return kitchen.note(PieceWeighed(mass_kg), "piece", corrects=key, written=written)


def test_an_empty_book_holds_nothing():
    assert len(Book()) == 0


def test_learning_tells_how_many_were_new(kitchen: Kitchen):
    kitchen.weigh("piece", 0.8, at=1)
    assert Book().learn(kitchen.records) == 1


def test_learning_twice_is_harmless(kitchen: Kitchen):
    kitchen.weigh("piece", 0.8, at=1)
    book = kitchen.book
    assert book.learn(kitchen.records) == 0
    assert len(book.about("piece")) == 1


def test_learning_a_correction_twice_is_harmless(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=2)
    book = Book([*kitchen.records, *kitchen.records])
    assert len(book.line(key).versions) == 2


def test_records_come_out_as_they_went_in(kitchen: Kitchen):
    kitchen.weigh("piece", 0.8, at=1)
    kitchen.note(Unknown("ripeness-felt", {"thumb": 3}), "piece", at=2)
    assert list(kitchen.book.records()) == kitchen.records


def test_records_come_out_in_the_order_of_their_ids(kitchen: Kitchen):
    for day in (3, 1, 2):
        kitchen.weigh("piece", 0.8, at=day)
    ids = [record["id"] for record in kitchen.book.records()]
    assert ids == sorted(ids)


def test_lines_stand_in_the_order_in_which_things_happened(kitchen: Kitchen):
    late = kitchen.weigh("piece", 0.8, at=3)
    early = kitchen.weigh("piece", 0.9, at=1)
    assert [line.id for line in kitchen.book.about("piece")] == [early, late]


def test_a_line_that_was_never_corrected_has_one_version(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    assert len(kitchen.book.line(key).versions) == 1


def test_a_correction_counts(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=2)
    assert weight(kitchen.book, key) == 0.9


def test_a_correction_keeps_what_was_written_before(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=2)
    assert [entry.fact.mass_kg for entry in kitchen.book.line(key).versions] == [0.8, 0.9]  # type: ignore[union-attr]


def test_a_corrected_line_keeps_its_id(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    later = corrected(kitchen, key, 0.9, written=2)
    assert kitchen.book.line(later).id == key


def test_a_correction_makes_no_line_of_its_own(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=2)
    assert len(kitchen.book.about("piece")) == 1


def test_a_correction_may_move_the_moment(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=5)
    other = kitchen.weigh("piece", 0.9, at=3)
    kitchen.note(PieceWeighed(0.8), "piece", at=1, corrects=key, written=6)
    assert [line.id for line in kitchen.book.about("piece")] == [key, other]


def test_a_correction_of_a_correction_counts(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    second = corrected(kitchen, key, 0.9, written=2)
    corrected(kitchen, second, 0.85, written=3)
    assert weight(kitchen.book, key) == 0.85


def test_of_two_corrections_the_one_that_had_seen_the_other_counts_whatever_the_clocks_say(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    clock = kitchen.book.clock
    kitchen.note(PieceWeighed(0.9), "piece", corrects=key, written=900, clock=clock + 1, device="aa")
    kitchen.note(PieceWeighed(0.7), "piece", corrects=key, written=2, clock=clock + 2, device="bb")
    assert weight(kitchen.book, key) == 0.7


@pytest.mark.parametrize(("device", "counts"), [("aa", 0.9), ("cc", 0.7)])
def test_of_two_that_knew_nothing_of_each_other_the_device_decides(kitchen: Kitchen, device: str, counts: float):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.note(PieceWeighed(0.9), "piece", corrects=key, written=2, clock=2**40, device="bb")
    kitchen.note(PieceWeighed(0.7), "piece", corrects=key, written=3, clock=2**40, device=device)
    assert weight(kitchen.book, key) == weight(Book(kitchen.records[::-1]), key) == counts


def test_of_two_corrections_from_before_there_was_a_clock_the_one_written_later_counts(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.note(PieceWeighed(0.7), "piece", corrects=key, written=3, clock=0, device="")
    kitchen.note(PieceWeighed(0.9), "piece", corrects=key, written=2, clock=0, device="")
    assert weight(kitchen.book, key) == 0.7


def test_the_clock_is_the_greatest_that_was_seen(kitchen: Kitchen):
    assert Book().clock == 0
    for clock in (7, 9, 8):
        kitchen.note(PieceWeighed(0.8), "piece", clock=clock)
    assert kitchen.book.clock == 9


def test_two_corrections_are_both_kept(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=3)
    corrected(kitchen, key, 0.7, written=2)
    assert len(kitchen.book.line(key).versions) == 3


def test_a_form_that_lay_open_counts_when_it_is_saved_and_not_when_it_was_drawn(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    drawn_early = fresh(NOON + 1.5 * DAY)
    corrected(kitchen, key, 0.9, written=2)
    clock = kitchen.book.clock + 1
    late = Entry(drawn_early, "piece", NOON + DAY, NOON + 3 * DAY, PieceWeighed(0.7), key, clock, "ee")
    assert weight(Book([*kitchen.records, to_record(late)]), key) == 0.7


def test_a_withdrawn_line_says_so(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.take_back(key)
    assert kitchen.book.line(key).withdrawn


def test_a_withdrawn_line_stays_in_the_record(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.note(Withdrawn(), "piece", corrects=key, written=2)
    assert [line.id for line in kitchen.book.about("piece")] == [key]


def test_what_was_withdrawn_can_come_back(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.take_back(key, written=2)
    corrected(kitchen, key, 0.8, written=3)
    assert weight(kitchen.book, key) == 0.8


def test_a_correction_that_arrives_before_its_original_waits_unseen(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    corrected(kitchen, key, 0.9, written=2)
    assert Book(kitchen.records[1:]).about("piece") == []


def test_a_correction_that_arrives_before_its_original_counts_once_both_are_there(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    correction = corrected(kitchen, key, 0.9, written=2)
    book = Book(kitchen.records[1:])
    assert book.line(correction).id == correction
    book.learn(kitchen.records[:1])
    assert weight(book, key) == 0.9
    assert book.line(correction).id == key


def test_a_link_missing_between_two_corrections_may_arrive_last(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    second = corrected(kitchen, key, 0.9, written=2)
    corrected(kitchen, second, 0.85, written=3)
    book = Book([kitchen.records[0], kitchen.records[2]])
    assert weight(book, key) == 0.8
    book.learn(kitchen.records)
    assert weight(book, key) == 0.85


def test_a_line_read_before_a_correction_is_read_anew_after_it(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    book = kitchen.book
    assert weight(book, key) == 0.8
    corrected(kitchen, key, 0.9, written=2)
    book.learn(kitchen.records)
    assert weight(book, key) == 0.9


def test_an_entry_that_corrects_itself_does_not_hang_the_book(kitchen: Kitchen):
    key = kitchen.weigh("piece", 0.8, at=1)
    kitchen.records[0]["corrects"] = key
    assert kitchen.book.line(key).id == key


def test_a_ring_of_corrections_does_not_hang_the_book(kitchen: Kitchen):
    one, two = kitchen.weigh("piece", 0.8, at=1), kitchen.weigh("piece", 0.9, at=2)
    three = corrected(kitchen, one, 0.7, written=3)
    kitchen.records[0]["corrects"], kitchen.records[1]["corrects"] = two, one
    book = kitchen.book
    assert all(book.line(key).versions for key in (one, two, three))


def test_the_latest_of_a_kind_passes_over_what_was_taken_back(kitchen: Kitchen):
    kept = kitchen.note(AirRead(12.0), CHAMBER, at=1)
    kitchen.take_back(kitchen.note(AirRead(40.0), CHAMBER, at=2))
    latest = kitchen.book.latest(CHAMBER, AirRead)
    assert latest is not None
    assert latest.id == kept


def test_the_latest_of_a_kind_is_told_as_it_was_corrected(kitchen: Kitchen):
    kitchen.note(AirRead(12.0), CHAMBER, at=1)
    last = kitchen.note(AirRead(40.0), CHAMBER, at=2)
    kitchen.note(AirRead(14.0), CHAMBER, at=2, corrects=last, written=3)
    latest = kitchen.book.latest(CHAMBER, AirRead)
    assert latest is not None
    assert (latest.id, latest.fact) == (last, AirRead(14.0))


def test_the_latest_of_a_kind_is_of_its_own_subject_though_anothers_was_corrected(kitchen: Kitchen):
    own, other = kitchen.begin(), kitchen.begin("Fennel fine")
    kept = kitchen.read(own, 5.2, at=1)
    corrected_one = kitchen.read(other, 5.6, at=2)
    kitchen.note(Reading(5.5), other, at=2, corrects=corrected_one, written=3)
    latest = kitchen.book.latest(own, Reading)
    assert latest is not None
    assert latest.id == kept


def test_a_correction_whose_beginning_has_not_come_is_no_latest(kitchen: Kitchen):
    kept = kitchen.note(AirRead(12.0), CHAMBER, at=1)
    begun = kitchen.note(AirRead(40.0), CHAMBER, at=2)
    kitchen.note(AirRead(14.0), CHAMBER, at=2, corrects=begun, written=3)
    latest = Book([record for record in kitchen.records if record["id"] != begun]).latest(CHAMBER, AirRead)
    assert latest is not None
    assert latest.id == kept


def test_the_beginnings_of_a_kind_are_of_one_subject_however_few_of_the_kind_there_are(kitchen: Kitchen):
    own, other = kitchen.begin(), kitchen.begin("Fennel fine")
    piece = kitchen.hang(own)
    kitchen.hang(other, "F-1")
    for at in range(1, 6):
        kitchen.read(own, 5.2, at=at)
    assert kitchen.book.beginnings("piece-hung", about=own) == [piece]
    assert len(kitchen.book.beginnings("reading", about=own)) == 5


@pytest.mark.parametrize("taken_back", [False, True])
def test_a_piece_was_corrected_into_one_only_where_a_correction_says_so(kitchen: Kitchen, taken_back: bool):
    batch = kitchen.begin()
    piece = kitchen.hang(batch)
    if taken_back:
        kitchen.take_back(piece)
    else:
        kitchen.note(PieceHung("J-9", 1.0), batch, 2, corrects=piece, written=3)
    assert kitchen.book.was_corrected_into("piece-hung", about=batch) is not taken_back


def test_every_link_of_a_chain_of_corrections_is_of_its_one_line(kitchen: Kitchen):
    first = kitchen.weigh("piece", 0.9, at=1)
    chain = [first]
    for written in (2, 3, 4):
        chain.append(corrected(kitchen, chain[-1], 0.9 - written / 100, written))
    assert [kitchen.book.line(key).id for key in chain] == [first] * 4
    assert weight(kitchen.book, first) == pytest.approx(0.86)


def test_records_from_before_there_was_a_clock_leave_it_at_nothing(kitchen: Kitchen):
    kitchen.begin()
    record = {key: value for key, value in kitchen.records[0].items() if key != "clock"}
    assert Book([record]).clock == 0


def test_the_latest_of_a_kind_is_the_last_to_happen_whenever_it_was_written(kitchen: Kitchen):
    last = kitchen.note(AirRead(12.0), CHAMBER, at=3)
    kitchen.note(AirRead(13.0), CHAMBER, at=2)
    latest = kitchen.book.latest(CHAMBER, AirRead)
    assert latest is not None
    assert latest.id == last


def test_the_latest_of_a_kind_reads_no_other_entry_that_was_never_corrected(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
):
    for hour in range(1, 9):
        kitchen.note(AirRead(12.0), CHAMBER, at=hour)
    book, read = kitchen.book, []
    monkeypatch.setattr("core.daybook.book.entry_of", lambda record: read.append(record) or from_record(record))
    book.latest(CHAMBER, AirRead)
    assert len(read) == 1


def test_there_is_no_latest_of_a_kind_that_never_happened():
    assert Book().latest(CHAMBER, AirRead) is None


def years(batches: int) -> Kitchen:
    """About 25 entries a batch; all but the last batch are finished."""
    kitchen = Kitchen()
    for number in range(batches):
        batch = kitchen.begin(f"Batch {number}", at=number)
        kitchen.cure(batch, at=number)
        for tag in range(4):
            piece = kitchen.hang(batch, f"{number}-{tag}", at=number)
            for week in range(4):
                kitchen.weigh(piece, 0.9 - week / 20, at=number + 7 * week)
            if number < batches - 1:
                kitchen.note(PieceTakenDown("ready"), piece, at=number + 30)
    return kitchen


@on_cpython
def test_the_effort_of_learning_grows_as_the_entries_do():
    """How long ten thousand take is measured by the bench. By the square it would be ten times what is linear."""
    few, many = years(40).records, years(400).records
    linear_s = effort_s(lambda: Book(few)) * len(many) / len(few)
    assert effort_s(lambda: Book(many)) < 3 * linear_s


def test_looking_for_open_batches_reads_only_the_open_ones(monkeypatch):
    kitchen = years(8)
    book, read = kitchen.book, []
    monkeypatch.setattr("core.daybook.book.entry_of", lambda record: read.append(record) or from_record(record))
    assert [batch.name for batch in open_batches(book)] == ["Batch 7"]
    assert len(read) == 1 + 1 + 4 + 4 * 4


def test_a_batch_with_one_piece_still_hanging_is_open():
    kitchen = years(2)
    first = kitchen.records[0]["id"]
    taken_down = next(record["id"] for record in kitchen.records if record["kind"] == "piece-taken-down")
    kitchen.take_back(taken_down)
    assert {batch.id for batch in open_batches(kitchen.book)} >= {first}


def test_a_batch_whose_last_piece_was_taken_back_is_finished():
    kitchen = years(2)
    book, first = kitchen.book, kitchen.records[0]["id"]
    extra = kitchen.hang(first, "by mistake", at=31)
    kitchen.take_back(extra)
    book.learn(kitchen.records)
    assert first not in {batch.id for batch in open_batches(book)}


def test_a_batch_whose_only_piece_was_taken_down_and_then_taken_back_is_open():
    kitchen = Kitchen()
    batch = kitchen.begin()
    piece = kitchen.hang(batch)
    kitchen.note(PieceTakenDown("ready"), piece, at=30)
    kitchen.take_back(piece)
    assert [each.id for each in open_batches(kitchen.book)] == [batch]


def test_open_batches_stand_newest_first_by_when_they_were_begun(kitchen: Kitchen):
    kitchen.note(fact=BatchStarted("second", "fermented", 5.0, 0.35), at=5, written=5)
    kitchen.note(fact=BatchStarted("first", "fermented", 5.0, 0.35), at=1, written=6)
    assert [batch.name for batch in open_batches(kitchen.book)] == ["second", "first"]


def test_what_was_folded_holds_until_the_book_learns_something(kitchen: Kitchen):
    batch = kitchen.begin()
    book = Book(kitchen.records)
    before = fold(book, batch)
    assert fold(book, batch) is before
    book.learn(kitchen.records)
    assert fold(book, batch) is before


@pytest.mark.parametrize("about", ["the batch", "something else"])
def test_what_was_folded_is_folded_again_once_the_book_has_learned(kitchen: Kitchen, about: str):
    batch = kitchen.begin()
    book = Book(kitchen.records)
    before = fold(book, batch)
    kitchen.note(Reading(5.2, 22.0), batch if about == "the batch" else kitchen.begin(), at=1)
    book.learn(kitchen.records)
    after = fold(book, batch)
    assert after is not before
    assert (after == before) is (about == "something else")


def test_two_kinds_of_fold_of_one_subject_are_two(kitchen: Kitchen):
    book = Book(kitchen.records)
    assert [book.kept(kind, "a", lambda kind=kind: kind) for kind in ("batch", "instrument", "batch")] == [
        "batch",
        "instrument",
        "batch",
    ]
