"""Pages and printed lines in the made-up language: none is in plain English, and no two messages are glued into one."""

from tests.made_up import CLOSE, OPEN, left_at_the_command_line, left_over, runs, said


def test_no_page_shows_plain_english():
    assert [f"{each.where}: {each.text}" for each in left_over()] == []


def test_the_command_line_prints_no_plain_english():
    assert [f"{each.where}: {each.text}" for each in left_at_the_command_line()] == []


def test_a_message_keeps_its_values_and_grows_by_a_third():
    assert said("Add {salt} now") == f"{OPEN}Ádd {{salt}} ñów~~~~{CLOSE}"


def test_a_run_is_what_one_element_says_without_a_break():
    assert list(runs('<p title="a">one <b>two</b></p>')) == ["a", "one", "two"]
