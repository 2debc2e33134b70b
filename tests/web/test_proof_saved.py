"""A proof kept: saved once with its files, opened again, compared, corrected, taken elsewhere."""

from __future__ import annotations

from core.daybook.facts.instruments import IcePointChecked, InstrumentAdded
from core.daybook.facts.proofs import ProofRun
from core.outside_json import parse
from tests.core.proof_files import high, low
from tests.web.conftest import Visitor
from tests.web.proving import enter, hand, saved, tables_of, two, waited


def test_a_saved_run_keeps_its_files(visitor: Visitor):
    fact = visitor.fact(saved(visitor, two(visitor)))
    assert [visitor.app.extensions["files"][file.sha256] for file in fact.files] == [low(), high()]


def test_nothing_is_saved_before_it_is_asked_for(visitor: Visitor):
    two(visitor)
    assert len(visitor.book) == 0
    assert visitor.app.extensions["files"] == {}


def test_the_same_tap_twice_saves_once(visitor: Visitor):
    form = two(visitor).form("/save")
    visitor.send(form)
    visitor.send(form)
    assert len(visitor.book) == 1


def test_a_saved_run_stands_on_the_chamber_page_with_its_picture(visitor: Visitor):
    saved(visitor, two(visitor, name="First run"))
    page = visitor.get("/chamber")
    assert "First run" in page.texts("a")
    assert page.all("svg", "outline")[0]["aria-label"] == "Temperature over 48 h, settled"


def test_the_log_of_the_chamber_tells_it(visitor: Visitor):
    saved(visitor, two(visitor, name="First run"))
    assert "Proof “First run”: settled" in visitor.get("/chamber").texts("span", "words")


def test_a_saved_run_opens_at_once_in_the_same_session(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    assert visitor.get(f"/chamber/proofs/{run_id}").all("log-chart")


def test_a_saved_run_has_its_tables(visitor: Visitor):
    page = visitor.get(f"/chamber/proofs/{saved(visitor, two(visitor))}")
    assert "23 Nov 2026, 11:00" in tables_of(visitor, page).texts("th")


def test_after_a_restart_a_saved_run_is_read_again(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.app.extensions.pop("work")
    page = visitor.get(f"/chamber/proofs/{run_id}")
    assert page.verdicts == ["settled"]
    assert waited(visitor, page).all("log-chart")


def without_files(visitor: Visitor) -> str:
    run_id = saved(visitor, two(visitor))
    visitor.app.extensions.pop("work")
    visitor.app.extensions["files"] = {}
    return f"/chamber/proofs/{run_id}"


def test_without_its_files_a_run_shows_what_was_saved(visitor: Visitor):
    page = visitor.get(without_files(visitor))
    assert page.verdicts == ["settled"]
    assert "The log is not on this device" in page.text
    assert "Mean temperature" in page.texts("th")


def test_the_same_files_handed_in_bring_the_log_back(visitor: Visitor):
    path = without_files(visitor)
    page = hand(visitor, ("renamed.csv", low()), ("high.csv", high()), path=f"{path}/hand-in")
    assert waited(visitor, page).all("log-chart")


def test_another_file_is_not_taken_for_the_one_saved(visitor: Visitor):
    path = without_files(visitor)
    page = hand(visitor, ("low.csv", low() + b"\n"), path=f"{path}/hand-in")
    assert page.status == 422
    assert "not the same file" in page.beside_file()


def test_the_raw_file_comes_back_byte_for_byte(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    response = visitor.client.get(f"/chamber/proofs/{run_id}/files/0")
    assert response.data == low()
    assert "low.csv" in response.headers["Content-Disposition"]


def test_a_run_may_be_renamed(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.fill(f"/entries/{run_id}/correct", name="After the fan")
    fact = visitor.fact(run_id)
    assert isinstance(fact, ProofRun)
    assert (fact.name, fact.result.settled) == ("After the fan", True)


def test_a_run_taken_back_is_gone(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.post(f"/entries/{run_id}/withdraw")
    assert visitor.get(f"/chamber/proofs/{run_id}").status == 404


def test_a_run_looked_at_otherwise_is_corrected(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    settings = visitor.post(f"/chamber/proofs/{run_id}/again")
    assert settings.typed("temperature_c") == "11.5"
    page = waited(visitor, visitor.send(settings.form_with("temperature_c"), temperature_c="15"))
    visitor.send(page.form("/save"))
    assert not visitor.fact(run_id).result.settled
    assert len(visitor.book.line(run_id).versions) == 2


def test_two_runs_are_compared_side_by_side(visitor: Visitor):
    saved(visitor, two(visitor, name="First"))
    saved(visitor, two(visitor, name="Second", temperature_c="15"))
    page = visitor.get("/chamber/proofs/compare")
    assert page.verdicts == ["settled", "not settled"]
    assert "Mean temperature" in page.texts("th")


def test_one_run_alone_is_not_compared(visitor: Visitor):
    assert "It takes two saved runs" in visitor.get("/chamber/proofs/compare").text


def test_an_export_holds_the_run(visitor: Visitor, other: Visitor):
    run_id = saved(visitor, two(visitor, name="First run"))
    exported = visitor.client.get("/yours/export").data
    assert parse(exported.decode())["entries"][0]["kind"] == "proof-run"
    other.read_in(exported)
    assert "The log is not on this device" in other.get(f"/chamber/proofs/{run_id}").text


def test_an_instrument_puts_its_probe_right_and_that_is_said(visitor: Visitor):
    instrument = enter(visitor, InstrumentAdded("Left logger", "thermometer", tolerance_k=0.2, probe="low"), about=None)
    enter(visitor, IcePointChecked(0.4), about=instrument)
    page = two(visitor)
    assert "“low”: its temperature is corrected by −0.4 K (ice check of 2 Nov 2026)." in page.text
    assert "Mean temperature as logged" in page.texts("th")
