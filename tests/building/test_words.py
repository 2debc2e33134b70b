"""The words of the screens are those of today: turns that were taken out do not come back."""

import ast
import re
from collections.abc import Iterator

import pytest

from building.paths import ROOT

TURNS = {
    "put right": "corrected",
    "puts .{1,20} right": "corrects",
    "set anew": "adjusted",
    "anew": "again",
    "(is|are|was) told": "you will see",
    "wants doing": "to do",
    "stands? still": "no degree-hours are added; steady",
    "stands? for": "covers, is used in place of",
    "reckon": "forecast",
    "what is missing makes it": "what is missing",
    "bears? lime": "limescaled",
    "(is|are) asked": "is needed",
    "(is|are) asked for": "is needed",
    "if known": "optional",
    "taken back": "deleted, undone",
    "bring back": "restore, redo",
    "take this entry back": "delete this entry",
    "(if|no) source\\)": "no published source",
    "believable": "usable",
    "nobody has noted": "not inspected yet",
    "(are|is) gone\\b": "used",
    "knows better": "is more exact",
    "dews\\b|\\bices": "dew or frost forms",
    "let go\\b": "lost",
    "may stray": "tolerance",
    "held against it|is held to\\?": "target and tolerance",
    "read and look|look at it otherwise": "analyse, change the settings",
    "no check stands": "no valid check",
    "go on (with|preparing)": "continue",
    "by the book": "recorded",
    "goes before the": "overrides",
    "exchanged": "swapped",
    "hand it in": "use this file",
    "please|sorry|(?<!aria-)invalid|oops": "what is wrong and what would be right",
}
"""A turn as a pattern, and what is said instead."""


def shown() -> Iterator[tuple[str, str]]:
    """Where, and what: every text of the source that holds a blank and is no docstring, and every template."""
    for path in sorted(
        [*(ROOT / "core").rglob("*.py"), *(ROOT / "web" / "screens").rglob("*.py"), *(ROOT / "web").glob("*.py")]
    ):
        tree = ast.parse(path.read_text())
        silent = {id(each.value) for each in ast.walk(tree) if isinstance(each, ast.Expr)}
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.Constant)
                and isinstance(node.value, str)
                and id(node) not in silent
                and " " in node.value
            ):
                yield f"{path.relative_to(ROOT)}:{node.lineno}", node.value
    for path in sorted((ROOT / "web" / "templates").rglob("*.html")):
        for text in re.split(r"\n+", _said(path.read_text())):
            yield str(path.relative_to(ROOT)), text


def _said(template: str) -> str:
    """Without comments, tags and code; a text within the code stays."""
    for code in (r"\{#.*?#\}", r"\{%.*?%\}", r"\{\{.*?\}\}"):
        template = re.sub(code, lambda found: "\n".join(re.findall(r'"([^"]*)"', found[0])), template, flags=re.DOTALL)
    return re.sub(r"<[^>]*>", " ", template)


TEXTS = tuple(shown())


def test_there_are_texts_to_look_through():
    assert len(TEXTS) > 3000


@pytest.mark.parametrize("turn", TURNS)
def test_a_turn_that_was_taken_out_does_not_come_back(turn: str):
    """The right side of TURNS says what to write instead."""
    found = re.compile(rf"\b({turn})", re.IGNORECASE)
    assert [f"{where}: {text}" for where, text in TEXTS if found.search(text)] == []


@pytest.mark.parametrize(
    ("told", "is_found"),
    [("put right, if you like", True), ("what is right", False), ("It was put\nright", False), ("PUT RIGHT", True)],
)
def test_a_turn_is_found_in_any_case_and_only_where_it_stands(told: str, is_found: bool):
    assert bool(re.search(r"\b(put right)", told, re.IGNORECASE)) is is_found
