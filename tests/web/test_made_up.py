"""Every page in the made-up language: nothing is in plain English but what is listed, and the list only shrinks."""

from pathlib import Path

from tests.made_up import CLOSE, OPEN, left_over, runs, said

LISTED = Path(__file__).parent.parent / "fixtures/left_in_english.txt"


def test_no_page_shows_english_that_is_not_listed():
    listed = set(LISTED.read_text("utf-8").splitlines())
    assert [f"{each.where}: {each.text}" for each in left_over() if each.text not in listed] == []


def test_a_message_keeps_its_values_and_grows_by_a_third():
    assert said("Add {salt} now") == f"{OPEN}Ádd {{salt}} ñów~~~~{CLOSE}"


def test_a_run_is_what_one_element_says_without_a_break():
    assert list(runs('<p title="a">one <b>two</b></p>')) == ["a", "one", "two"]
