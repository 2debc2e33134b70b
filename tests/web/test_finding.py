"""Anything in the book by a word of it, with the way to where it stands."""

import pytest

from tests.web.conftest import Visitor


def links(visitor: Visitor, find: str) -> list[str]:
    return [link["href"] for link in visitor.get("/find", find=find).all("a")]


def test_a_batch_is_found_by_its_name(visitor: Visitor):
    batch = visitor.start_batch("Fennel thin")
    assert batch in links(visitor, "fenn")


def test_a_note_on_a_piece_leads_to_its_batch(visitor: Visitor):
    batch = visitor.cured_and_acid()
    piece = visitor.hang(batch, "J-1")
    visitor.fill(f"{piece}/note", words="White on the seam")
    assert batch in links(visitor, "white seam")


def test_a_note_on_the_chamber_leads_there(visitor: Visitor):
    visitor.fill("/chamber/note", words="The fan hums")
    assert "/chamber" in links(visitor, "hums")


@pytest.mark.parametrize("find", ["", "sourdough"])
def test_what_is_nowhere_finds_nothing(visitor: Visitor, find: str):
    batch = visitor.start_batch()
    assert batch not in links(visitor, find)


def test_no_more_than_forty_are_shown_and_the_rest_counted(visitor: Visitor):
    for _ in range(42):
        visitor.fill("/chamber/note", words="The fan hums")
    assert "2 older ones more" in visitor.get("/find", find="fan").text
