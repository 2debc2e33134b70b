"""Laws of the journal: any order and any number of learnings give the same book; nothing breaks it."""

import json
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from core.daybook.batch import batches, open_and_finished, open_batches
from core.daybook.book import Book
from core.daybook.due.batches import due
from core.daybook.entries import Entry, NotAnEntry, entry_id, from_record, to_record
from core.daybook.evidence import evidence_for
from core.daybook.facts import Unknown, Withdrawn
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
from core.daybook.weigh_days import weigh_days
from core.quantities import METRIC
from core.release.readiness import judge
from tests.core.kitchen import NOON, Kitchen

law = settings(max_examples=60, deadline=None)  # a journal is much to draw

shares = st.floats(0.0, 1.0)
losses = st.floats(0.01, 0.75)
masses = st.floats(1e-3, 60.0)
names = st.text(min_size=1, max_size=8)
BEGINS_BATCH = st.builds(
    BatchStarted, names, st.sampled_from(["fermented", "whole-muscle"]), masses, losses, st.none() | st.floats(0, 99)
)
ABOUT_BATCH = st.one_of(
    st.builds(CureWeighed, masses, shares, shares),
    st.builds(Reading, st.none() | st.floats(0, 14), st.none() | st.floats(-10, 60)),
    st.builds(PieceHung, names, masses),
)
ABOUT_PIECE = st.one_of(
    st.builds(PieceWeighed, masses),
    st.builds(ActivityMeasured, st.floats(0.3, 1.0)),
    st.builds(PieceInspected, st.lists(st.sampled_from(["smell", "slime", "new-sign"])).map(tuple), names),
    st.builds(PieceTakenDown, st.sampled_from(["ready", "hold", "discard"])),
)
ANY = st.one_of(BEGINS_BATCH, ABOUT_BATCH, ABOUT_PIECE, st.builds(Withdrawn), st.just(Unknown("ripeness-felt", {})))
days = st.integers(0, 60)


@st.composite
def journals(draw: st.DrawFn) -> list[dict]:
    """Batches, pieces, what happened to them, and corrections of anything by anything, withdrawals included."""
    records: list[dict] = []

    def add(fact, about: str | None = None, corrects: str | None = None) -> str:
        happened, written = (NOON + timedelta(days=draw(days)) for _ in range(2))
        key = entry_id(written, len(records).to_bytes(10, "big"))
        clock, device = draw(st.integers(0, 4)), draw(st.sampled_from(["", "0a", "0b"]))
        records.append(to_record(Entry(key, about or key, happened, written, fact, corrects, clock, device)))
        return key

    for _ in range(draw(st.integers(0, 2))):
        batch = add(draw(BEGINS_BATCH))
        pieces = []
        for fact in draw(st.lists(ABOUT_BATCH, max_size=4)):
            key = add(fact, batch)
            if isinstance(fact, PieceHung):
                pieces.append(key)
        for piece in pieces:
            for fact in draw(st.lists(ABOUT_PIECE, max_size=3)):
                add(fact, piece)
    for _ in range(draw(st.integers(0, 3)) if records else 0):
        target = draw(st.sampled_from(records))
        known = [from_record(target).fact] if target["kind"] != "withdrawn" else [Withdrawn()]
        add(draw(st.sampled_from(known) | ANY), target["about"], target["id"])
    return records


def told(book: Book) -> list:
    return [book.line(record["id"]).versions for record in book.records()]


@law
@given(journals(), st.randoms(use_true_random=False))
def test_the_order_of_learning_does_not_matter(records, chance):
    shuffled = list(records)
    chance.shuffle(shuffled)
    assert told(Book(shuffled)) == told(Book(records))


@law
@given(journals(), st.randoms(use_true_random=False))
def test_learning_one_by_one_with_a_look_in_between_gives_the_same_batches(records, chance):
    shuffled = list(records)
    chance.shuffle(shuffled)
    book = Book()
    for record in shuffled:
        book.learn([record])
        batches(book)
    assert batches(book) == batches(Book(records))


@law
@given(st.lists(st.tuples(st.booleans(), st.booleans(), st.floats(0.1, 9.9), days), min_size=1, max_size=8))
def test_what_was_corrected_with_all_in_sight_stands_however_wrong_the_clocks_are(steps):
    """Two tablets correct one weight in turns, sometimes after reading the other's file; the one that has seen all
    corrects it last, on the day its clock says."""
    first = Kitchen()
    weighing = first.weigh("piece", 1.0, at=5)
    tablets = {"0a": list(first.records), "0b": list(first.records)}

    def correct(device: str, mass_kg: float, day: int) -> None:
        moment = NOON + timedelta(days=day)
        key = entry_id(moment, (sum(map(len, tablets.values())) * 2 + (device == "0b")).to_bytes(10, "big"))
        clock = Book(tablets[device]).clock + 1
        entry = Entry(key, "piece", NOON, moment, PieceWeighed(mass_kg), weighing, clock, device)
        tablets[device].append(to_record(entry))

    for on_the_second, reads_first, mass_kg, day in steps:
        here, there = ("0b", "0a") if on_the_second else ("0a", "0b")
        if reads_first:
            tablets[here] += tablets[there]
        correct(here, mass_kg, day)
    tablets["0a"] += tablets["0b"]
    assert told(Book(tablets["0a"])) == told(Book([*tablets["0b"], *tablets["0a"]]))
    correct("0a", 0.5, 0)
    assert Book(tablets["0a"]).line(weighing).fact == PieceWeighed(0.5)


@law
@given(journals(), st.integers(1, 3))
def test_learning_again_changes_nothing(records, times):
    book = Book(records)
    assert sum(book.learn(records) for _ in range(times)) == 0
    assert told(book) == told(Book(records))


@law
@given(journals(), st.data())
def test_the_union_of_two_exports_is_the_same_either_way(records, data):
    mine = data.draw(st.lists(st.sampled_from(records), unique_by=lambda each: each["id"])) if records else []
    one, other = Book(mine), Book(records)
    one.learn(list(other.records()))
    other.learn(mine)
    assert list(one.records()) == list(other.records())
    assert told(one) == told(other)


@law
@given(journals())
def test_an_export_read_into_an_empty_book_is_the_same_book(records):
    book = Book(records)
    again = Book(json.loads(json.dumps(list(book.records()))))
    assert told(again) == told(book)


@law
@given(journals())
def test_no_entry_is_ever_lost_from_its_line(records):
    book = Book(records)
    held = {entry.id for versions in told(book) for entry in versions}
    assert held == {record["id"] for record in records}


@law
@given(journals())
def test_open_batches_are_those_that_are_not_finished(records):
    book = Book(records)
    assert open_batches(book) == open_and_finished(book)[0]


@st.composite
def nearly_finished(draw: st.DrawFn) -> list[dict]:
    """A batch whose every hung piece is down, one of its other entries corrected: into a hung piece as often as not."""
    kitchen = Kitchen()
    batch = kitchen.begin()
    others = [kitchen.read(batch, 5.5, at=1), kitchen.cure(batch, at=1)]
    for number in range(draw(st.integers(1, 3))):
        kitchen.note(PieceTakenDown("ready"), kitchen.hang(batch, f"J-{number}"), at=30)
    target = draw(st.sampled_from(others))
    for _ in range(draw(st.integers(1, 2))):
        fact = draw(st.sampled_from([PieceHung("J-9", 1.0), Reading(5.4, None), Withdrawn()]))
        corrected = kitchen.note(fact, batch, at=2, corrects=target, written=draw(st.integers(31, 60)))
        target = draw(st.sampled_from([target, corrected]))
    if draw(st.booleans()):
        kitchen.note(PieceTakenDown("ready"), others[0], at=40)
    return kitchen.records


def test_a_batch_with_a_piece_that_a_correction_hung_is_open_until_that_is_down():
    still_open: list[bool] = []

    @law
    @given(nearly_finished(), st.randoms(use_true_random=False))
    def holds(records: list[dict], chance) -> None:
        chance.shuffle(records)
        book = Book(records)
        assert open_batches(book) == open_and_finished(book)[0]
        still_open.append(bool(open_batches(book)))

    holds()
    assert 0.1 < sum(still_open) / len(still_open) < 0.9


@law
@given(journals(), days)
def test_whatever_was_written_can_be_judged_and_told(records, day):
    now, book = NOON + timedelta(days=day), Book(records)
    for batch in batches(book):
        for line in due([batch], now, weigh_days(book, batch)):
            assert batch.name in line.words.say(METRIC)
        for piece in batch.hanging:
            assert judge(evidence_for(batch, piece, now)).word in ("ready", "hold", "discard")


@law
@given(journals(), days)
def test_a_sample_that_was_drier_than_the_piece_is_never_leant_on(records, day):
    for batch in batches(Book(records)):
        for piece in batch.pieces:
            activity = evidence_for(batch, piece, NOON + timedelta(days=day)).water_activity
            if activity is not None and piece.loss is not None:
                samples = [sample for mate in batch.pieces for sample in mate.activities]
                assert any(each.water_activity == activity and each.loss <= piece.loss for each in samples)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=8,
)
KEYS = ("id", "about", "kind", "happened_at", "written_at", "fact", "corrects")


@law
@given(json_values)
def test_any_json_is_an_entry_or_is_refused(value):
    try:
        from_record(value)
    except NotAnEntry:
        return
    raise AssertionError("a value without an id is an entry")


@law
@given(journals().filter(bool), st.sampled_from(KEYS), json_values)
def test_a_record_with_one_part_spoilt_is_refused_or_can_be_learnt(records, key, value):
    record = {**records[0], key: value}
    try:
        entry = from_record(record)
    except NotAnEntry:
        return
    assert Book([record]).line(entry.id).versions == (entry,)


@law
@given(st.datetimes(min_value=NOON.replace(tzinfo=None)), st.binary(min_size=10, max_size=10))
def test_an_id_is_always_in_time_order(moment, chance):
    aware = moment.replace(tzinfo=NOON.tzinfo)
    assert entry_id(aware, chance) < entry_id(aware + timedelta(milliseconds=2), chance) or aware.year > 9998
