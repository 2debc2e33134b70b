"""A day is said as one says it; its date only where it is a week off or more."""

import pytest

from tests.web.conftest import Visitor


def begun_line(visitor: Visitor, days: float) -> str:
    visitor.start_batch()
    visitor.wait(days=days)
    return visitor.get("/batches").texts("li")[0]


@pytest.mark.parametrize(
    ("days", "said"),
    [(0, "today"), (1, "yesterday"), (2, "Monday"), (6, "Monday"), (7, "2026")],
)
def test_the_day_a_batch_was_begun_is_said_as_one_says_it(visitor: Visitor, days: float, said: str):
    line = begun_line(visitor, days)
    assert said in line
    assert ("2026" in line) is (days >= 7)


def test_today_says_whether_anything_hangs(visitor: Visitor):
    batch = visitor.start_batch()
    assert "nothing hung yet" in visitor.get("/").text
    visitor.hang(batch)
    assert "1 hanging" in visitor.get("/").text


def test_a_piece_says_what_it_lost_and_its_target(visitor: Visitor):
    piece = visitor.hang(visitor.start_batch(), start="1000")
    visitor.wait(days=9)
    visitor.fill(f"{piece}/weigh", mass_kg="650")
    assert "lost 35.0 %, target 35.0 %" in visitor.get(piece).text.replace("\u00a0", " ")
