"""The page of rules, house rules, and the exception that a licence makes."""

import pytest

from core.mix.rules import rule_sets
from tests.web.conftest import Visitor

WHY = {
    **{"why": "A trial under supervision", "authority": "letter 12 of the county office", "decided_by": "Ana"},
    **{"rule": "Food act, section 9", "substance": "nitrite", "most": "190"},
}


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
    page = visitor.fill("/rules/house", rules="us", nitrite="120", why="what we are used to")
    assert "House rule under the rules of United States: at most 120 ppm of nitrite: what we are used to" in page.text


def test_a_house_rule_is_held(visitor: Visitor, batch: str):
    visitor.fill("/rules/house", rules="us", nitrite="120")
    page = visitor.fill(f"{batch}/cure", dose="0.25 %")
    assert "The limit for chopped meat is 120 ppm (the law: 156.25 ppm, rule of the house)" in page.beside("dose")


def test_a_house_rule_taken_back_holds_no_more(visitor: Visitor, batch: str):
    saved = visitor.fill("/rules/house", rules="us", nitrite="120").saved
    visitor.post(f"/entries/{saved}/withdraw")
    assert visitor.fill(f"{batch}/cure", dose="0.25 %").status == 200


def test_a_looser_house_rule_is_refused(visitor: Visitor):
    page = visitor.fill("/rules/house", rules="us", nitrite="700")
    assert "may only be stricter" in page.beside("nitrite")


def test_a_house_rule_of_nothing_is_refused(visitor: Visitor):
    assert visitor.fill("/rules/house", rules="us").status == 422


def test_a_house_rule_can_be_corrected(visitor: Visitor):
    saved = visitor.fill("/rules/house", rules="us", nitrite="120").saved
    page = visitor.fill(f"/entries/{saved}/correct", nitrite="100")
    assert (page.path.partition("?")[0], "at most 100 ppm" in page.text) == ("/rules", True)


def test_without_an_exception_a_dose_over_the_limit_is_refused(visitor: Visitor, batch: str):
    assert visitor.fill(f"{batch}/cure", dose="0.4 %").status == 422


def test_with_an_exception_it_is_recorded(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    page = visitor.fill(f"{batch}/cure", dose="0.3 %")
    assert (page.status, page.figures["nitrite"]) == (200, "187 ppm")


def test_the_exception_is_said_beside_the_figure(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    said = visitor.fill(f"{batch}/cure", dose="0.3 %").by_id("mix").all("p.caution")[0].text
    assert said.startswith(
        "Over the limit (9 CFR 424.21(c), 156.25 ppm). Allowed up to 190 ppm by an exception on record, Food act, "
        "section 9: A trial"
    )


def test_the_exception_is_said_in_the_verdict(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    visitor.fill(f"{batch}/cure", dose="0.3 %")
    piece = visitor.hang(batch)
    text = visitor.get(piece).text
    assert "An exception on record (Food act, section 9) allows 190 ppm: A trial under supervision" in text
    assert "It passes only by an exception on record, Food act, section 9, up to 190 ppm" in text
    assert "decided by Ana" in text


def test_above_the_exceptions_own_figure_the_dose_is_refused_with_both_numbers(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY)
    said = visitor.fill(f"{batch}/cure", dose="0.31 %").beside("dose")
    assert said == "193.75 ppm of nitrite is too much. The exception on record allows 190 ppm (Food act, section 9)."


def test_no_exception_lets_a_dose_over_the_ceiling_pass(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/exception", **WHY | {"most": "9000 ppm"})
    assert "No exception goes above 200 ppm" in visitor.fill(f"{batch}/cure", dose="0.33 %").beside("dose")


def test_a_bare_fraction_is_no_exceptions_figure(visitor: Visitor, batch: str):
    assert "must be between 1 ppm" in visitor.fill(f"{batch}/exception", **WHY | {"most": "0.00019"}).beside("most")


def test_a_house_rule_may_forbid_it_or_name_a_figure_but_not_a_bare_fraction(visitor: Visitor):
    assert visitor.fill("/rules/house", rules="us", nitrate="0").status == 200
    page = visitor.fill("/rules/house", rules="us", nitrite="0.00012")
    assert "must be 0, or between 1 ppm" in page.beside("nitrite")


def test_an_exception_taken_back_leaves_the_batch_over_its_limit(visitor: Visitor, batch: str):
    saved = visitor.fill(f"{batch}/exception", **WHY).saved
    visitor.fill(f"{batch}/cure", dose="0.3 %")
    visitor.post(f"/entries/{saved}/withdraw")
    assert "The limit for chopped meat is 156.25 ppm" in visitor.get(batch).text


@pytest.mark.parametrize("missing", sorted(WHY.keys() - {"substance"}))
def test_an_exception_says_why_by_whose_leave_and_who_decided(visitor: Visitor, batch: str, missing: str):
    page = visitor.fill(f"{batch}/exception", **WHY | {missing: ""})
    assert page.beside(missing).startswith("Enter")
