"""The measurements: which there are, how a row reads, and that the journal they start from is a real one."""

import json

import pytest

from building import bench
from building.bench import Row, as_shown
from building.bench.many_chambers import Chambers, Told
from building.bench.rows import ROWS
from building.bench.sawtooth import two_loggers
from building.bench.ten_thousand import COUNT, OPEN, stored_records
from core.chamber.logs import guess
from core.daybook.batch import batches, open_batches
from core.daybook.book import Book
from tests.core.chamber_study import LUMPS, WALLED, Outcome


@pytest.fixture(scope="module")
def records():
    return stored_records()


def test_every_promise_has_its_measurement():
    assert {
        "start",
        "answer",
        "answer-slowed",
        "journal",
        "first-visit",
        "logs",
        "logs-chart",
        "logs-growth",
    } <= ROWS.keys()


def test_a_measurement_is_one_json_object_with_five_keys(dist, capsys):
    bench.run(["first-visit"])
    assert list(json.loads(capsys.readouterr().out)) == ["name", "value", "unit", "against", "ratio"]


@pytest.mark.parametrize(
    "row", [Row(40, "ms", 50), Row(1.02, "of linear", 1.15), Row(0.96, "share counted exactly", 0.95)]
)
def test_a_ratio_above_one_is_a_goal_reached(row):
    assert as_shown("any", row)["ratio"] > 1


def test_the_journal_is_the_same_each_time(records):
    assert stored_records() == records


def test_the_journal_has_ten_thousand_entries_in_their_order(records):
    assert [record["seq"] for record in records] == list(range(1, COUNT + 1))


def test_the_journal_holds_corrections_and_three_open_batches(records):
    book = Book(record["entry"] for record in records)
    assert len(open_batches(book)) == OPEN
    assert any("corrects" in record["entry"] for record in records)
    assert all(batch.pieces for batch in batches(book))


def test_the_loggers_files_are_the_same_each_time_and_as_long_as_asked():
    files = two_loggers(400)
    assert files == two_loggers(400)
    assert [len(data.splitlines()) for data in files.values()] == [201, 201]


def test_the_loggers_files_can_be_read_without_a_question():
    assert [guess(data).questions for data in two_loggers(400).values()] == [(), ()]


def test_chambers_that_were_looked_at_are_not_looked_at_again():
    seen: Told = {"60 s": [Outcome(5000, 60.0)]}
    assert Chambers(told={"walled": seen}).outcomes("walled", WALLED) is seen


def test_what_was_measured_until_it_was_stopped_counts_and_nothing_else_is_begun():
    seen: Told = {"60 s": [Outcome(5000, 60.0)]}
    stopped = Chambers(is_stopped=True, told={"walled": seen})
    assert stopped.outcomes("walled", WALLED) is seen
    with pytest.raises(KeyboardInterrupt):
        stopped.outcomes("settling", LUMPS)
