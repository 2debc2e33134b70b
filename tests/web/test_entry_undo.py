"""Saved is undone and redone by one tap, once for each tap, and never loses what was written."""

from tests.web.conftest import Visitor
from tests.web.weighing import mass, weighed


def test_a_saved_entry_is_told_with_its_time_and_an_undo(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    assert page.texts("div", "saved")[0].startswith("Saved 08:00 Read: pH 5.6")
    assert "Undo" in page.texts("button")


def test_an_undo_takes_a_new_entry_back(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    undone = visitor.send(page.form("/undo"))
    assert visitor.book.line(page.saved).withdrawn
    assert undone.path.startswith(batch)
    assert undone.texts("div", "saved")[0].startswith("Undone")


def test_an_undo_of_an_undo_brings_it_back(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    visitor.send(visitor.send(page.form("/undo")).form("/undo"))
    assert visitor.fact(page.saved).ph == 5.6


def test_an_undo_of_a_correction_gives_the_old_weight(visitor: Visitor):
    _, key = weighed(visitor)
    page = visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.send(page.form("/undo"))
    assert mass(visitor, key) == 1.0


def test_an_undo_of_a_correction_gives_the_old_time(visitor: Visitor):
    _, key = weighed(visitor)
    before = visitor.book.line(key).entry.happened_at
    page = visitor.fill(f"/entries/{key}/correct", happened="2026-11-01T07:30")
    visitor.send(page.form("/undo"))
    assert visitor.book.line(key).entry.happened_at == before


def test_an_undo_of_an_undone_correction_gives_the_new_weight_again(visitor: Visitor):
    _, key = weighed(visitor)
    page = visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.send(visitor.send(page.form("/undo")).form("/undo"))
    assert mass(visitor, key) == 0.9


def test_the_same_undo_sent_twice_does_not_undo_itself(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    form = page.form("/undo")
    for _ in range(2):
        assert visitor.send(form).status == 200
    assert visitor.book.line(page.saved).withdrawn


def test_taking_back_twice_is_one_taking_back(visitor: Visitor):
    _, key = weighed(visitor)
    pages = [visitor.post(f"/entries/{key}/withdraw") for _ in range(2)]
    visitor.send(pages[-1].form("/undo"))
    assert mass(visitor, key) == 1.0


def test_undoing_a_new_batch_leads_to_a_page_that_is_there(visitor: Visitor):
    page = visitor.get("/batches/new").form("/new")
    started = visitor.send(page, name="Juniper", style="slow", meat_kg="2", target_loss="35")
    undone = visitor.send(started.form("/undo"))
    assert (undone.status, undone.path.partition("?")[0]) == (200, "/batches")


def test_a_restored_batch_is_there_again(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    visitor.send(page.form("/undo"))
    assert visitor.get(batch).status == 200


def test_what_was_deleted_is_struck_in_the_log(visitor: Visitor):
    batch = visitor.start_batch()
    key = visitor.fill(f"{batch}/reading", ph="5.6").saved
    page = visitor.post(f"/entries/{key}/withdraw")
    assert page.texts("li", "withdrawn")[0].removesuffix(" Restore").endswith("deleted")


def test_a_deletion_is_said_in_the_history(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.send(visitor.post(f"/entries/{key}/withdraw").form("/undo"))
    assert visitor.get(f"/entries/{key}/correct").texts("span", "words")[1] == "Deleted"


def test_what_was_taken_back_can_be_brought_back_from_the_log(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="13", humidity="78").saved
    visitor.post(f"/entries/{key}/withdraw")
    visitor.send(visitor.get("/chamber").form("/undo"))
    assert not visitor.book.line(key).withdrawn
