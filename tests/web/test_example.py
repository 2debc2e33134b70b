"""The example season: marked on every page, left by one tap, and never mixed with one's own book."""

import pytest

from tests.web.conftest import Visitor

MARK = "An invented kitchen: nothing here is about your meat"


@pytest.fixture
def guest(visitor: Visitor) -> Visitor:
    """In the example."""
    visitor.send(visitor.get("/").form("/example"))
    return visitor


def test_an_empty_book_offers_it(visitor: Visitor):
    assert "See an example" in visitor.get("/").text


@pytest.mark.parametrize("path", ["/", "/batches", "/chamber", "/sums", "/sums/moist-air", "/yours", "/nowhere"])
def test_every_page_says_that_it_is_one(guest: Visitor, path: str):
    assert MARK in guest.get(path).text


def test_it_holds_batches_at_their_stages_with_each_verdict(guest: Visitor):
    page = guest.get("/batches")
    assert {"Hawthorn loin", "Fennel short", "Sloe coarse", "Juniper early"} <= {link.text for link in page.all("a")}
    assert "1 ready, 2 hold and 1 discard" in page.text


def test_a_verdict_says_that_it_is_an_example(guest: Visitor):
    batch = next(link["href"] for link in guest.get("/batches").all("a") if link.text == "Sloe coarse")
    assert set(guest.get(batch).verdicts) == {"ready (example)", "hold (example)", "discard (example)"}


def test_what_is_written_in_it_comes_nowhere_near_ones_own_book(guest: Visitor):
    page = guest.fill("/chamber/air", temperature_c="13", humidity="78")
    assert "Saved" in page.text
    assert len(guest.book) == 0


def test_one_tap_leaves_it_and_nothing_of_it_stays(guest: Visitor):
    page = guest.send(guest.get("/chamber").form("/example/leave"))
    assert MARK not in page.text
    assert "The book is empty" in page.text


def test_ones_own_entries_do_not_show_in_it(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.post("/example")
    assert visitor.get(batch).status == 404


@pytest.mark.parametrize("path", ["/yours/export", "/yours/start-over", "/yours/tablet"])
def test_it_is_neither_saved_nor_deleted_nor_named(guest: Visitor, path: str):
    assert guest.get(path).path == "/yours"


def test_entered_anew_it_is_fresh(guest: Visitor):
    guest.fill("/batches/new", name="Mine", style="fermented", meat_kg="3", target_loss="35")
    guest.post("/example")
    assert "Mine" not in guest.get("/batches").text
