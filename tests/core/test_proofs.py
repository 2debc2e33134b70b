"""Proof runs in the book: kept in plain JSON, said again in either unit system, corrected by their instruments."""

import json
from datetime import UTC, date, datetime, timedelta
from functools import cache

import pytest
from attrs import evolve

from core.chamber.logs import guess
from core.chamber.logs.notes import ITS_HEAD_ENDS_IN_IT, Note
from core.chamber.proof_run import FailedCheck, Found, find
from core.chamber.settling.comparing import beside, compare
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from core.daybook.book import Book
from core.daybook.corrections.logs import log_corrections
from core.daybook.entries import Entry, entry_id, from_record, to_record
from core.daybook.facts import Fact
from core.daybook.facts.chamber import CHAMBER, SetPointsChosen
from core.daybook.facts.instruments import IcePointChecked, InstrumentAdded, InstrumentRecalibrated, TwoSaltsChecked
from core.daybook.facts.proofs import ProofFile, ProofProbe, ProofRun
from core.daybook.instruments import Shelf
from core.daybook.kept_words import named_figures
from core.daybook.proofs import (
    band_words,
    given,
    keep_layout,
    layout_of,
    result_of,
    runs,
    usual_wanted,
    wanted_of,
)
from core.quantities import METRIC
from core.refusals import Refusal
from core.sentence import Sentence
from tests.core import proof_files
from tests.core.proof_files import WANTED, high, low
from tests.core.telling import told
from tests.core.workshop import Workshop, day

MOMENT = datetime(2026, 11, 25, 10, 30, tzinfo=UTC)
PROBES = (ProofProbe(0, "Probe 1", "low"), ProofProbe(1, "Probe 1", "high"))


@cache
def found() -> Found:
    return find(proof_files.given())


def proof_run() -> ProofRun:
    return ProofRun(
        name="First run",
        changed="",
        files=tuple(
            ProofFile(letter * 64, f"{letter}.csv", keep_layout(guess(data)))
            for letter, data in (("a", low()), ("b", high()))
        ),
        probes=PROBES,
        temperature_c=WANTED.temperature.target,
        temperature_half_k=WANTED.temperature.half,
        humidity=0.80,
        humidity_half=0.10,
        room_c=20.0,
        result=result_of(found()),
    )


def book_of(*facts: Fact) -> tuple[Book, list[str]]:
    book, ids = Book(), []
    for count, fact in enumerate(facts):
        at = MOMENT - timedelta(days=22) + timedelta(minutes=count)
        key = entry_id(at, bytes([count]) * 10)
        about = (
            ids[0]
            if isinstance(fact, IcePointChecked | InstrumentRecalibrated | TwoSaltsChecked)
            else key
            if isinstance(fact, InstrumentAdded)
            else CHAMBER
        )
        book.learn([to_record(Entry(key, about, at, at, fact))])
        ids.append(key)
    return book, ids


def checked(reading_c: float):
    book, (instrument, _) = book_of(
        InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2), IcePointChecked(reading_c)
    )
    run = evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),))
    return log_corrections(Shelf(book), run, MOMENT)[0]


def test_a_run_comes_back_from_the_journal_as_it_was():
    entry = Entry(entry_id(MOMENT, b"0" * 10), CHAMBER, MOMENT, MOMENT, proof_run())
    assert from_record(json.loads(json.dumps(to_record(entry)))) == entry


def test_a_run_is_small():
    entry = Entry(entry_id(MOMENT, b"0" * 10), CHAMBER, MOMENT, MOMENT, proof_run())
    assert len(json.dumps(to_record(entry))) < 16_000


def test_a_layout_comes_back_but_for_the_rows_shown():
    layout = guess(low())
    assert layout_of(keep_layout(layout)).columns == layout.columns


def test_what_a_layout_says_is_kept_by_its_key_and_its_values():
    note = Note("no-text", {"count": 3, "encoding": "UTF-8"})
    kept = keep_layout(evolve(guess(low()), notes=(note,)))
    assert kept["notes"] == [{"key": "no-text", "values": {"count": 3, "encoding": "UTF-8"}}]
    assert layout_of(kept).notes == (note,)


def test_a_layout_that_was_kept_with_its_words_is_read_and_says_them():
    kept = keep_layout(guess(low()))
    words = {"why_unit": "its numbers, 71 to 90, leave no other", "doubt": ""}
    kept["columns"] = [each | words for each in kept["columns"]]
    kept["columns"][0]["why_unit"] = "its head ends in it"
    kept["losses"] = [{"what": "lines", "count": 6, "of": 100, "line": 7, "text": "x"}]
    read = layout_of(kept)
    assert [told(each.why_unit and each.why_unit.said) for each in read.columns[:2]] == [
        "its head ends in it",
        words["why_unit"],
    ]
    assert (read.columns[0].why_unit, read.columns[0].doubt) == (Note(ITS_HEAD_ENDS_IN_IT), None)
    assert (read.losses[0].count, read.losses[0].column) == (6, None)


def test_a_layout_of_a_newer_daybook_is_refused_in_words():
    with pytest.raises(Refusal, match="newer daybook"):
        layout_of({"encoding": "morse"})


def test_a_run_looked_at_again_comes_to_the_same():
    run = proof_run()
    again = find(given(run, [low(), high()], log_corrections(Shelf(Book()), run, MOMENT)))
    assert result_of(again) == run.result


@pytest.mark.parametrize(("named", "asked"), [("high", "high"), ("", None)])
def test_a_run_looked_at_again_has_the_centre_it_had(named: str, asked: str | None):
    run = evolve(proof_run(), centre=named)
    assert given(run, [low(), high()], log_corrections(Shelf(Book()), run, MOMENT)).centre == asked


def test_its_figures_compare_as_the_analysis_does():
    kept = named_figures(proof_run().result.figures)
    assert beside(kept, kept) == compare(found().analysis, found().analysis)


def test_runs_are_newest_first():
    book, (first, second, third) = book_of(proof_run(), proof_run(), proof_run())
    assert [line.id for line in runs(book)] == [third, second, first]


def test_a_new_run_starts_from_the_usual_band():
    wanted, is_set = usual_wanted(Book())
    assert (wanted.temperature.target, is_set) == (12.8, False)


def test_a_new_run_starts_from_the_set_points_in_force():
    wanted, is_set = usual_wanted(book_of(SetPointsChosen(11.0, 0.75))[0])
    assert (wanted.temperature.target, wanted.humidity and wanted.humidity.target, is_set) == (11.0, 0.75, True)


def test_it_says_what_it_was_held_to():
    assert band_words(proof_run()).say(METRIC) == "Target 11.5 °C ± 1.5 K, 80 % ± 10 %."


def test_it_was_held_to_both_bands():
    assert wanted_of(proof_run()) == Wanted(Band(11.5, 1.5), Band(0.80, 0.10))


@pytest.mark.parametrize(("humidity", "half"), [(None, None), (0.8, None), (None, 0.1)])
def test_without_a_whole_band_of_humidity_it_was_not_asked_for(humidity: float | None, half: float | None):
    run = evolve(proof_run(), humidity=humidity, humidity_half=half)
    assert wanted_of(run) == Wanted(Band(11.5, 1.5), None)
    assert band_words(run).say(METRIC) == "Target 11.5 °C ± 1.5 K; no humidity target."


def test_the_picture_that_is_kept_is_of_the_probe_in_the_centre():
    """The second probe is asked for as the centre: it starts at what its own file says."""
    of_second = result_of(find(evolve(proof_files.given(), centre="high")))
    first_rows = [file.decode().splitlines()[1].split(",")[1] for file in (low(), high())]
    assert [str(each.outline[0][1]) for each in (proof_run().result, of_second)] == first_rows


def test_an_instrument_that_was_checked_puts_its_probe_right():
    result = checked(0.4)
    assert result.temperature is not None
    assert result.temperature.apply(12.4) == pytest.approx(12.0)


def test_it_is_said_by_how_much_and_by_which_check():
    (note,) = checked(0.4).notes
    assert note.say(METRIC) == "“low”: its temperature is corrected by −0.4 K (ice check of 3 Nov 2026)."


@pytest.mark.parametrize(
    ("reading_c", "words"),
    [(-0.4, "is corrected by +0.4 K"), (0.4, "is corrected by −0.4 K"), (0.0, "reads right")],
)
def test_it_is_said_whether_it_is_added_or_taken_off(reading_c: float, words: str):
    (note,) = checked(reading_c).notes
    assert note.say(METRIC, 3).startswith(f"“low”: its temperature {words} (ice check of ")


def test_a_line_through_two_points_is_said_as_one():
    book, (instrument, *_) = book_of(
        InstrumentAdded("Left logger", "hygrometer", tolerance_humidity=0.02),
        TwoSaltsChecked("nacl", 20.0, 0.78, "kcl", 20.0, 0.864),
    )
    run = evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),))
    (note,) = log_corrections(Shelf(book), run, MOMENT)[0].notes
    assert note.say(METRIC, 3).startswith("“low”: its humidity is corrected by a straight line (two-salt check of ")


def test_a_check_made_since_the_log_began_speaks_where_there_was_none():
    book, (instrument, _) = book_of(
        InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2), IcePointChecked(0.4)
    )
    run = evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),), begun_s=0.0)
    assert log_corrections(Shelf(book), run, MOMENT)[0].temperature is not None


def test_a_check_before_the_instrument_was_recalibrated_speaks_for_nothing():
    book, (instrument, _, _) = book_of(
        InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2), IcePointChecked(0.4), InstrumentRecalibrated()
    )
    run = evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),), begun_s=0.0)
    assert log_corrections(Shelf(book), run, MOMENT)[0].temperature is None


def run_begun(at: datetime, instrument: str) -> ProofRun:
    """A log that began at this moment of the clock on the wall."""
    begun_s = (at.replace(tzinfo=UTC) - datetime(1970, 1, 1, tzinfo=UTC)).total_seconds()
    return evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),), begun_s=begun_s)


@pytest.mark.parametrize(("since", "counts"), [(timedelta(0), True), (-timedelta(seconds=1), False)])
def test_a_later_check_speaks_only_where_the_instrument_was_not_adjusted_in_between(since: timedelta, counts: bool):
    """It was adjusted a minute after it was added, and checked a minute later."""
    book, (instrument, adjusted, _) = book_of(
        InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2), InstrumentRecalibrated(), IcePointChecked(0.4)
    )
    run = run_begun(book.entry(adjusted).happened_at + since, instrument)
    assert (log_corrections(Shelf(book), run, MOMENT)[0].temperature is not None) is counts


def test_adjusted_and_checked_at_the_moment_the_run_was_saved_its_log_stays_as_it_is():
    shop = Workshop()
    instrument = shop.add("thermometer", "Left logger")
    shop.note(InstrumentRecalibrated(), instrument, at=1)
    shop.ice(instrument, 0.4, at=1)
    run = run_begun(day(0.5), instrument)
    assert log_corrections(Shelf(shop.book), run, day(1))[0].temperature is None


def test_an_instrument_adjusted_after_the_run_was_saved_keeps_the_check_that_stood_then():
    book, (instrument, checked_at, adjusted) = book_of(
        InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2), IcePointChecked(0.4), InstrumentRecalibrated()
    )
    begun = book.entry(checked_at).happened_at - timedelta(seconds=1)
    run = run_begun(begun, instrument)
    just_before = book.entry(adjusted).happened_at - timedelta(seconds=1)
    assert log_corrections(Shelf(book), run, just_before)[0].temperature is not None
    assert log_corrections(Shelf(book), run, just_before + timedelta(seconds=1))[0].temperature is None


def test_of_a_hygrometer_that_failed_both_its_checks_both_are_said_and_the_temperatures_first():
    book, (instrument, *_) = book_of(
        InstrumentAdded("Left logger", "hygrometer"),
        IcePointChecked(9.0),
        TwoSaltsChecked("nacl", 20.0, 0.3, "kcl", 20.0, 0.864),
    )
    run = evolve(proof_run(), probes=(ProofProbe(0, "Probe 1", "low", instrument),))
    result = log_corrections(Shelf(book), run, MOMENT)[0]
    assert (result.temperature, result.humidity, result.failed) == (
        None,
        None,
        FailedCheck(Sentence("ice check"), date(2026, 11, 3)),
    )
    assert [note.say(METRIC) for note in result.notes] == [
        "“low” failed its ice check of 3 Nov 2026: its temperature is as logged.",
        "“low” failed its two-salt check of 3 Nov 2026: its humidity is as logged.",
    ]


def test_an_instrument_that_failed_puts_nothing_right():
    result = checked(9.0)
    assert result.temperature is None
    assert result.failed == FailedCheck(Sentence("ice check"), date(2026, 11, 3))
