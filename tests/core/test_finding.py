"""Words in the book: what was typed, as it now stands."""

import pytest

from core.daybook.facts.batch import BatchStarted
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.note import NoteTaken
from core.daybook.finding import lines_with
from tests.core.kitchen import Kitchen


@pytest.fixture
def kitchen() -> Kitchen:
    kitchen = Kitchen()
    kitchen.note(NoteTaken("White mould on the Left rack.", "ab" * 32), CHAMBER)
    return kitchen


@pytest.mark.parametrize("sought", ["mould", "MOU", "left rack", "rack white"])
def test_an_entry_is_found_by_the_beginnings_of_its_words(kitchen: Kitchen, sought: str):
    assert [line.fact.words for line in lines_with(kitchen.book, sought)] == ["White mould on the Left rack."]


@pytest.mark.parametrize("sought", ["", " ", "ould", "mould right", "abab"])
def test_no_other_word_finds_it_nor_the_name_of_its_photo(kitchen: Kitchen, sought: str):
    assert lines_with(kitchen.book, sought) == []


def test_the_newest_is_found_first():
    kitchen = Kitchen()
    for days, words in ((3, "mould again"), (1, "mould gone"), (2, "mould there")):
        kitchen.note(NoteTaken(words), CHAMBER, at=days)
    found = [line.fact.words for line in lines_with(kitchen.book, "mould")]
    assert found == [
        "mould again",
        "mould there",
        "mould gone",
    ]


def test_what_was_corrected_is_found_by_what_it_says_now():
    kitchen = Kitchen()
    key = kitchen.begin()
    kitchen.note(BatchStarted("Fennel thin", "fermented", 12.4, 0.35), key, corrects=key, written=1.0)
    assert [line.id for line in lines_with(kitchen.book, "fennel")] == [key]
    assert lines_with(kitchen.book, "juniper") == []


def test_what_was_taken_back_is_not_found():
    kitchen = Kitchen()
    kitchen.take_back(kitchen.begin())
    assert lines_with(kitchen.book, "juniper") == []
