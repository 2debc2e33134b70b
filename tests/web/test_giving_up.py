"""A batch of which nothing was hung can be given up: it wants nothing more, and says what became of its meat."""

import pytest

from tests.web.conftest import Visitor


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return visitor.start_batch()


def test_a_batch_given_up_stands_among_the_finished(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/give-up", went="thrown-away")
    assert "finished" in visitor.get("/batches").text


def test_nothing_of_a_batch_given_up_is_asked_for_any_more(visitor: Visitor, batch: str):
    assert "Weigh the cure" in visitor.get("/").text
    visitor.fill(f"{batch}/give-up", went="thrown-away")
    assert "Weigh the cure" not in visitor.get("/").text


def test_its_page_says_what_became_of_its_meat(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/give-up", went="used-otherwise", note="into the soup")
    assert "Given up, used another way: into the soup" in visitor.get(batch).text


def test_what_became_of_the_meat_is_not_guessed(visitor: Visitor, batch: str):
    assert visitor.fill(f"{batch}/give-up").status == 422


def test_a_batch_with_pieces_is_ended_by_them_alone(visitor: Visitor):
    hung = visitor.cured_and_acid()
    visitor.hang(hung, "J-1")
    assert visitor.get(f"{hung}/give-up").status == 404
