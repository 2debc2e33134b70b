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


def test_no_kind_is_chosen_for_a_new_batch(visitor: Visitor):
    assert visitor.get("/batches/new").typed("style") == ""


def test_a_batch_without_its_kind_is_not_begun(visitor: Visitor):
    page = visitor.fill("/batches/new", name="Fennel fine", meat_kg="4.2")
    assert page.status == 422
    assert page.beside("style") == "Choose one for “Kind”."
    assert len(visitor.book) == 0


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
    visitor.fill(f"{piece}/inspect", found="sound")
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
    log = visitor.get(batch).by_id("log").text
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
    visitor.fill(f"{piece}/inspect", found="sound")
    page = visitor.fill(f"/entries/{batch.split('/')[-1]}/correct", meat_kg="1.24")
    assert "ready" not in page.verdicts


def test_charts_come_with_the_same_as_a_table(visitor: Visitor):
    batch, _ = visitor.dried()
    visitor.fill(f"{batch}/reading", ph="4.9")
    page = visitor.get(batch)
    assert len(page.all("figure", "chart")) == page.texts("summary").count("The same as a table") == 2


def test_two_readings_of_one_moment_are_drawn(visitor: Visitor):
    batch = visitor.start_batch()
    for ph in ("5.6", "5.1"):
        visitor.fill(f"{batch}/reading", ph=ph, happened="2026-11-02T08:00")
    assert visitor.get(batch).status == 200


def test_a_piece_taken_down_keeps_its_verdict_on_its_page(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down", note="to the table")
    assert "Taken down with the verdict hold" in visitor.get(piece).text


def three_hung(visitor: Visitor) -> str:
    batch = visitor.cured_and_acid()
    for tag in ("J-10", "J-9", "J-1"):
        visitor.hang(batch, tag)
    return batch


def test_pieces_stand_in_the_order_of_their_tags(visitor: Visitor):
    page = visitor.get(three_hung(visitor))
    assert [each.text for row in page.all("ul", "pieces") for each in row.all("a")] == ["J-1", "J-9", "J-10"]


def test_what_all_pieces_wait_for_is_said_once(visitor: Visitor):
    batch = three_hung(visitor)
    visitor.hang(batch, "J-4")
    shared = [each.text for each in visitor.get(batch).all("ul", "shared")[0].all("li")]
    assert [each for each in shared if "Not inspected yet" in each] == [
        "4 pieces: Not inspected yet in its present state. "
        "Look at it, smell it and squeeze it, cut one open, and note what you find."
    ]
    assert len(shared) == len(set(shared))


def test_what_few_pieces_wait_for_names_them(visitor: Visitor):
    shared = visitor.get(three_hung(visitor)).texts("ul", "shared")[0]
    assert "J-1, J-9, J-10: Not inspected yet" in shared


def test_a_piece_to_throw_away_stands_before_what_the_others_wait_for(visitor: Visitor):
    batch = three_hung(visitor)
    spoilt = next(each["href"] for each in visitor.get(batch).all("a") if each.text == "J-9")
    visitor.fill(f"{spoilt}/inspect", signs="slime")
    first = visitor.get(batch).all("ul", "shared")[0]
    assert "alarm" in first.classes
    assert first.text.startswith("J-9: A sign of spoilage: slime on the surface.")


def test_the_strip_marks_the_present_stage_and_says_what_each_came_to(visitor: Visitor):
    batch, _ = visitor.dried()
    steps = visitor.get(batch).all("ol", "strip")[0].all("li")
    assert [each["aria-current"] for each in steps] == ["", "", "", "step"]
    assert [each.text for each in steps] == [
        "Mix done 156 ppm nitrite",
        "Ferment done pH 5.3 within 0 h, in time",
        "Dry done 36.0 % lost of 35.0 %",
        "Release 1 hold",
    ]


def test_a_whole_muscle_has_no_stage_of_fermenting(visitor: Visitor):
    steps = visitor.get(visitor.start_batch(style="whole-muscle")).all("ol", "strip")[0].all("strong")
    assert [each.text for each in steps] == ["Mix", "Dry", "Release"]


def test_the_log_is_folded_by_day_and_only_the_newest_is_open(visitor: Visitor):
    batch, _ = visitor.dried()
    page = visitor.get(batch)
    log = page.by_id("log")
    days = log.all(".of-day")
    assert "open" not in log.attributes
    assert ["open" in each.attributes for each in days] == [True, False]
    assert [each.all("summary")[0].text for each in days] == ["today 2 entries", "2 Nov 2026 5 entries"]


def test_the_head_leads_to_the_log_with_its_length(visitor: Visitor):
    batch, _ = visitor.dried()
    assert {each.text: each["href"] for each in visitor.get(batch).all("a")}["Log · 7"] == "#log"


def test_a_batch_is_made_again_as_it_was_begun(visitor: Visitor):
    batch = visitor.start_batch("Fennel fine", "slow", meat_kg="4.2", target_loss="38", least_s="21")
    visitor.cure(batch)
    again = next(each["href"] for each in visitor.get(batch).all("a") if each.text == "Make this again")
    page = visitor.get(again)
    assert [page.typed(key) for key in ("name", "style", "meat_kg", "target_loss", "least_s")] == [
        *("Fennel fine", "slow", "4.2", "38", "21")
    ]
    visitor.send(page.form("/batches/new"))
    assert visitor.get("/batches").texts("a").count("Fennel fine") == 2


def test_nothing_is_made_again_of_what_is_no_batch(visitor: Visitor):
    assert visitor.get("/batches/new", like="nothing").typed("name") == ""
