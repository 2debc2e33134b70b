"""Batches: the list, a new one, and a whole life on one page, walked to each verdict."""

import re

from core.daybook.facts.batch import BatchStarted
from tests.web.conftest import Visitor, alike


def test_the_list_of_an_empty_book(visitor: Visitor):
    page = visitor.get("/batches")
    assert page.status == 200
    assert "No batch yet." in page.text


def test_a_new_batch_is_recorded_as_typed(visitor: Visitor):
    batch = visitor.start_batch("Fennel fine", "whole-muscle", meat_kg="4 lb 2 oz", target_loss="40", least_s="21")
    fact = visitor.fact(batch.split("/")[-1])
    assert alike(fact, BatchStarted("Fennel fine", "whole-muscle", 1.8710685, 0.4, 21.0 * 86400))


def test_a_batch_without_least_days_has_none(visitor: Visitor):
    assert visitor.fact(visitor.start_batch().split("/")[-1]).least_s is None


def test_a_new_batch_opens_its_own_page(visitor: Visitor):
    page = visitor.get(visitor.start_batch("Fennel fine"))
    assert page.texts("h1") == ["Fennel fine"]


def test_a_new_batch_starts_with_the_usual_loss(visitor: Visitor):
    assert visitor.get("/batches/new").typed("target_loss") == "35"


def test_there_is_no_page_for_an_unknown_batch(visitor: Visitor):
    page = visitor.get("/batches/01a2138b-1620-7c23-a1d4-5ab52d4a3d83")
    assert page.status == 404
    assert "This page is not in the book" in page.text


def test_a_piece_is_no_batch(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid())
    assert visitor.get(piece.replace("/pieces/", "/batches/")).status == 404


def test_the_list_says_that_the_cure_is_missing(visitor: Visitor):
    visitor.start_batch()
    assert "cure not weighed" in visitor.get("/batches").text


def test_the_list_tells_the_ph_of_a_fermenting_batch(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    visitor.fill(f"{batch}/reading", ph="5.6")
    assert "pH 5.6" in visitor.get("/batches").text


def test_the_list_tells_loss_and_verdicts_of_a_drying_batch(visitor: Visitor):
    visitor.dried()
    assert "lost 36.0 %; 1 hold" in visitor.get("/batches").text


def test_a_finished_batch_stands_under_its_own_head(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down")
    page = visitor.get("/batches")
    assert "Finished" in page.texts("h2")


def test_a_batch_of_each_stage_is_drawn(visitor: Visitor):
    fresh, (dried, _) = visitor.start_batch("fresh"), visitor.dried()
    acid = visitor.cured_and_acid()
    assert [visitor.get(path).status for path in (fresh, acid, dried)] == [200] * 3


def test_a_piece_with_all_its_evidence_is_ready(visitor: Visitor):
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect")
    assert set(visitor.get(batch).verdicts) == {"ready"}


def test_a_piece_that_nobody_looked_at_is_held(visitor: Visitor):
    batch, _ = visitor.dried()
    assert set(visitor.get(batch).verdicts) == {"hold"}


def test_a_piece_with_a_bad_smell_is_thrown_away(visitor: Visitor):
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", signs="smell")
    assert set(visitor.get(batch).verdicts) == {"discard"}


def test_the_log_tells_each_step_with_its_piece(visitor: Visitor):
    batch, _ = visitor.dried()
    log = next(each.text for each in visitor.get(batch).all("section", "log"))
    assert "J-1: Weighed: 800 g" in log
    assert "Batch begun: Juniper coarse, 12.4 kg of meat" in log


def test_a_meat_weight_corrected_below_the_limit_tells_so_on_the_page(visitor: Visitor):
    batch = visitor.cured_and_acid()
    visitor.hang(batch)
    key = batch.split("/")[-1]
    page = visitor.fill(f"/entries/{key}/correct", meat_kg="1.24")
    assert page.status == 200
    assert re.search(r"1\s563 ppm of nitrite is too much", page.text)


def test_a_meat_weight_corrected_below_the_limit_is_never_ready(visitor: Visitor):
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect")
    page = visitor.fill(f"/entries/{batch.split('/')[-1]}/correct", meat_kg="1.24")
    assert "ready" not in page.verdicts


def test_charts_come_with_the_same_as_a_table(visitor: Visitor):
    batch, _ = visitor.dried()
    visitor.fill(f"{batch}/reading", ph="4.9")
    page = visitor.get(batch)
    assert len(page.all("svg")) == len([each for each in page.texts("summary") if each == "The same as a table"]) == 2


def test_two_readings_of_one_moment_are_drawn(visitor: Visitor):
    batch = visitor.start_batch()
    for ph in ("5.6", "5.1"):
        visitor.fill(f"{batch}/reading", ph=ph, happened="2026-11-02T08:00")
    assert visitor.get(batch).status == 200


def test_a_piece_taken_down_keeps_its_verdict_on_its_page(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down", note="to the table")
    assert "Taken down with the verdict hold" in visitor.get(piece).text
