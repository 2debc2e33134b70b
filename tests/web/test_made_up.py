"""Pages and printed lines in the made-up language: none is in plain English, and no two messages are glued into one."""

from tests.core.proof_files import low
from tests.made_up import CLOSE, LANGUAGE, OPEN, left_at_the_command_line, left_on, left_over, runs, said, speak
from tests.web.conftest import Visitor
from tests.web.proving import AMBIGUOUS, PICTURE, hand, laid_out, tables_of, two


def test_no_page_shows_plain_english():
    assert [f"{each.where}: {each.text}" for each in left_over()] == []


def test_a_proof_shows_no_plain_english_from_its_files_to_its_saved_run(visitor: Visitor):
    speak()
    visitor.settings(language=LANGUAGE, decimal="comma")
    looked = two(visitor)
    kept = visitor.send(looked.form("/save"))
    pages = [
        *(hand(visitor, ("low.csv", data)) for data in (PICTURE, AMBIGUOUS.encode(), low())),
        *(laid_out(visitor, ("low.csv", low())), two(visitor, temperature_c="far"), looked, tables_of(visitor, looked)),
        *(kept, visitor.get(f"/chamber/proofs/{kept.saved}"), visitor.get("/chamber/proofs/compare")),
        visitor.get(f"/entries/{kept.saved}/correct"),
    ]
    typed = ["low.csv", "high.csv", "low", "high", "far", "Time,Temp (°C)", "Time", "Temp (°C)", "RH (%)"]
    assert [f"{each.where}: {each.text}" for each in left_on(pages, typed)] == []


def test_the_command_line_prints_no_plain_english():
    assert [f"{each.where}: {each.text}" for each in left_at_the_command_line()] == []


def test_a_message_keeps_its_values_and_grows_by_a_third():
    assert said("Add {salt} now") == f"{OPEN}Ádd {{salt}} ñów~~~~{CLOSE}"


def test_a_run_is_what_one_element_says_without_a_break():
    assert list(runs('<p title="a">one <b>two</b></p>')) == ["a", "one", "two"]
