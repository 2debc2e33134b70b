"""A way back leads to a page of the book, and nowhere else."""

import re

import pytest

from tests.web.conftest import MORNING, Visitor

ELSEWHERE = [
    *("//evil.example", "https://evil.example/x", "\\\\evil.example", "/\\evil.example", "////evil.example/x"),
    *("/\t/evil.example", "//[evil", "javascript:alert(1)", "/../evil", "/%2e%2e/evil", "/batches/../../evil", "evil"),
    *("/a\r\nLocation: https://evil.example", "///evil.example", "/;@evil.example", "/batches#//evil.example", ""),
]


@pytest.mark.parametrize("back", ELSEWHERE)
@pytest.mark.parametrize("root", ["", "/sub"])
def test_a_way_back_never_leads_out_of_the_book(visitor: Visitor, back: str, root: str):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    for path in (f"/entries/{key}/undo", "/settings"):
        answer = visitor.client.post(
            path,
            data={"back": back},
            environ_overrides={"SCRIPT_NAME": root},
            headers={"Daybook-Now": MORNING.isoformat()},
        )
        assert re.fullmatch(rf"{root}/(saved=|\?saved=[\w-]+)?", answer.headers["Location"])


def test_a_way_back_outside_the_books_own_path_is_dropped(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/neighbour"}, environ_overrides={"SCRIPT_NAME": "/sub"})
    assert answer.headers["Location"] == "/sub/"


def test_a_way_back_keeps_its_query_but_not_the_old_mark(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/sums?find=salt&saved=x"})
    assert answer.headers["Location"] == "/sums?find=salt"


def test_a_query_with_a_line_break_is_dropped(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/sums?find=a\r\nX: y"})
    assert answer.headers["Location"] == "/sums"
