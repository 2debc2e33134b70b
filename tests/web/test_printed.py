"""What is made for paper: labels that say what may be eaten and how it is kept, and the record with every line."""

import pytest

from tests.web.conftest import Visitor
from tests.web.reading import Page


def label(page: Page, at: int = 0) -> str:
    return page.all("ul", "labels")[0].all("li")[at].text


def sound(visitor: Visitor) -> tuple[str, str]:
    batch, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    return batch, piece


def test_a_ready_piece_says_so_with_its_days_and_how_it_is_kept(visitor: Visitor):
    batch, _ = sound(visitor)
    told = label(visitor.get(f"{batch}/labels"))
    assert told.startswith("Juniper coarse J-1 ready Keep it in the refrigerator.")
    assert "Hung 2 Nov 2026, 1 250 g. Weighed 2 Dec 2026, 800 g: 36.0 % lost." in told.replace("\u00a0", " ")
    assert "As of 2 Dec 2026, 08:00" in told


def test_a_dry_enough_piece_needs_no_cold(visitor: Visitor):
    batch, piece = visitor.dried(activity="0.84")
    visitor.fill(f"{piece}/inspect", found="sound")
    assert "Keep it cool, dry and covered." in label(visitor.get(f"{batch}/labels"))


def test_a_piece_on_hold_says_what_would_settle_it(visitor: Visitor):
    batch, _ = visitor.dried()
    told = label(visitor.get(f"{batch}/labels"))
    assert "hold Look at it, smell it" in told
    assert "Keep it" not in told


@pytest.mark.parametrize(
    ("signs", "told"),
    [("slime", "discard Thrown away."), (None, "hold Taken down before it was ready: not to be eaten.")],
)
def test_a_piece_that_is_down_keeps_the_verdict_it_was_taken_down_with(visitor: Visitor, signs: str | None, told: str):
    batch, piece = visitor.dried()
    if signs:
        visitor.fill(f"{piece}/inspect", found="wrong", signs=signs)
    visitor.fill(f"{piece}/take-down")
    visitor.wait(days=3)
    assert told in label(visitor.get(f"{batch}/labels"))


def test_a_ready_piece_that_is_down_says_how_it_is_kept(visitor: Visitor):
    batch, piece = sound(visitor)
    visitor.fill(f"{piece}/take-down")
    visitor.wait(days=60)  # its inspection tells of it no more, but it was ready when it was taken down
    assert "ready Keep it in the refrigerator." in label(visitor.get(f"{batch}/labels"))


def test_the_record_has_every_line_once(visitor: Visitor):
    visitor.dried()
    visitor.fill("/chamber/air", temperature_c="12.4", humidity="78")
    visitor.fill("/chamber/instruments/add", name="Larder", kind="hygrometer")
    visitor.start_batch("Fennel fine")
    page = visitor.get("/yours/record")
    assert len(page.all("ol", "record")) == 3
    assert sum(len(each.all("li")) for each in page.all("ol", "record")) == len(visitor.book)
    assert "J-1: Weighed: 800 g" in [each.replace("\u00a0", " ") for each in page.texts("span", "words")]


def test_the_record_says_what_was_deleted(visitor: Visitor):
    _, piece = visitor.dried()
    weighed = visitor.fill(f"{piece}/weigh", mass_kg="790").saved
    visitor.post(f"/entries/{weighed}/withdraw")
    assert visitor.get("/yours/record").texts("em") == ["deleted"]


@pytest.mark.parametrize("path", ["{batch}", "{batch}/labels", "/yours/record"])
def test_there_is_a_button_to_print(visitor: Visitor, path: str):
    batch, _ = visitor.dried()
    buttons = visitor.get(path.format(batch=batch)).all("button")
    assert [each.text for each in buttons if "data-print" in each.attributes] == ["Print"]
