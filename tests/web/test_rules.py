"""The page of rules, house rules, and the exception that a licence makes."""

import pytest

from core.mix.rules import rule_sets
from tests.web.conftest import Visitor

WHY = {"why": "A trial under supervision", "authority": "letter 12 of the county office", "decided_by": "Ana"}


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return visitor.start_batch()


def test_every_product_of_every_set_is_on_the_page(visitor: Visitor):
    text = visitor.get("/rules").text
    assert not [rule.what for rule_set in rule_sets() for rule in rule_set.rules if rule.what not in text]


def test_every_row_shows_how_it_was_verified(visitor: Visitor):
    page = visitor.get("/rules")
    marks = [each["data-verified"] for each in page.elements if "data-verified" in each.attributes]
    assert len(marks) >= len(page.all("tr")) - len(page.all("thead"))
    assert set(marks) == {"seen", "copy", "memory"}


def test_a_row_from_memory_says_so(visitor: Visitor):
    assert "from memory, not checked" in visitor.get("/rules").text


def test_the_editions_that_were_read_are_dated(visitor: Visitor):
    text = visitor.get("/rules").text
    assert all(rule.as_of in text for rule_set in rule_sets() for rule in rule_set.rules)


def test_sums_and_the_cure_lead_to_the_rules(visitor: Visitor, batch: str):
    for path in ("/sums", f"{batch}/cure"):
        assert any(each["href"] == "/rules" for each in visitor.get(path).all("a"))


def test_a_house_rule_is_listed(visitor: Visitor):
    page = visitor.fill("/rules/house", rules="us", nitrite_ppm="120", why="what we are used to")
    assert "House rule under the rules of United States: at most 120 ppm of nitrite: what we are used to" in page.text


def test_a_house_rule_is_held(visitor: Visitor, batch: str):
    visitor.fill("/rules/house", rules="us", nitrite_ppm="120")
    page = visitor.fill(f"{batch}/cure", dose="0.25 %")
    assert "the limit for chopped meat is 120 ppm (the law: 156.25 ppm, rule of the house)" in page.beside("dose")


def test_a_house_rule_taken_back_holds_no_more(visitor: Visitor, batch: str):
    saved = visitor.fill("/rules/house", rules="us", nitrite_ppm="120").saved
    visitor.post(f"/entries/{saved}/withdraw")
    assert visitor.fill(f"{batch}/cure", dose="0.25 %").status == 200


def test_a_looser_house_rule_is_refused(visitor: Visitor):
    page = visitor.fill("/rules/house", rules="us", nitrite_ppm="700")
    assert "may only be stricter" in page.beside("nitrite_ppm")


def test_a_house_rule_of_nothing_is_refused(visitor: Visitor):
    assert visitor.fill("/rules/house", rules="us").status == 422


def test_a_house_rule_can_be_corrected(visitor: Visitor):
    saved = visitor.fill("/rules/house", rules="us", nitrite_ppm="120").saved
    page = visitor.fill(f"/entries/{saved}/correct", nitrite_ppm="100")
    assert (page.path.partition("?")[0], "at most 100 ppm" in page.text) == ("/rules", True)


def test_without_an_exception_a_dose_over_the_limit_is_refused(visitor: Visitor, batch: str):
    assert visitor.fill(f"{batch}/cure", dose="0.4 %").status == 422


def test_with_an_exception_it_is_recorded(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    page = visitor.fill(f"{batch}/cure", dose="0.4 %")
    assert (page.status, page.figures["nitrite"]) == (200, "250 ppm")


def test_the_exception_is_said_beside_the_figure(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    said = visitor.fill(f"{batch}/cure", dose="0.4 %").texts("p", "caution")[0]
    assert said.startswith("Over the limit (9 CFR 424.21(c), 156.25 ppm). Allowed by an exception on record: A trial")


def test_the_exception_is_said_in_the_verdict(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    visitor.fill(f"{batch}/cure", dose="0.4 %")
    piece = visitor.hang(batch)
    assert "An exception on record allows it: A trial under supervision" in visitor.get(piece).text


def test_an_exception_taken_back_leaves_the_batch_over_its_limit(visitor: Visitor, batch: str):
    saved = visitor.fill(f"{batch}/exception", **WHY).saved
    visitor.fill(f"{batch}/cure", dose="0.4 %")
    visitor.post(f"/entries/{saved}/withdraw")
    assert "the limit for chopped meat is 156.25 ppm" in visitor.get(batch).text


@pytest.mark.parametrize("missing", sorted(WHY))
def test_an_exception_says_why_by_whose_leave_and_who_decided(visitor: Visitor, batch: str, missing: str):
    page = visitor.fill(f"{batch}/exception", **WHY | {missing: ""})
    assert page.beside(missing).startswith("Enter the")
