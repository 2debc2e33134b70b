"""Mixing day: the dose as a per-cent or a weight, what it makes while one types, and the limit."""

import re

import pytest

from tests.web.conftest import Visitor


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return visitor.start_batch()


def cure_of(visitor: Visitor, batch: str, **values: str):
    page = visitor.fill(f"{batch}/cure", **{"dose": "0.25 %", "nitrite": "6.25"} | values)
    return visitor.fact(page.saved)


@pytest.mark.parametrize("dose", ["0.25", "0.25 %", "0.25%", "31 g", "31g", "0.031 kg", "1/4", "¼ %", "0,25"])
def test_a_dose_may_be_a_share_or_a_weight(visitor: Visitor, batch: str, dose: str):
    assert cure_of(visitor, batch, dose=dose).cure_kg == pytest.approx(0.031)


def test_the_form_starts_from_the_usual_strength(visitor: Visitor, batch: str):
    assert visitor.get(f"{batch}/cure").typed("nitrite") == "6.25"


def test_saving_leads_back_to_the_batch_with_its_figures(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/cure", dose="0.25 %")
    assert page.path.startswith(batch)
    assert page.figures["nitrite"] == "156 ppm"


def test_other_salt_is_kept(visitor: Visitor, batch: str):
    assert cure_of(visitor, batch, other_salt_kg="310").other_salt_kg == pytest.approx(0.31)


@pytest.mark.parametrize("dose", ["2.5 %", "310 g"])
def test_a_dose_ten_times_too_high_is_refused_beside_its_box(visitor: Visitor, batch: str, dose: str):
    page = visitor.fill(f"{batch}/cure", dose=dose)
    assert page.status == 422
    assert re.search(r"1\s563 ppm of nitrite is too much", page.beside("dose"))


def test_a_refused_dose_names_the_dose_that_makes_the_limit(visitor: Visitor, batch: str):
    assert "31 g" in visitor.fill(f"{batch}/cure", dose="310 g").beside("dose")


def test_a_dose_over_the_limit_is_told_while_one_types(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/cure", figures="1", dose="2.5 %", nitrite="6.25", nitrate="0")
    assert "The limit for chopped meat is 156.25 ppm" in page.texts("p", "refusal")[0]


def test_a_dose_within_the_limit_is_figured_while_one_types(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/cure", figures="1", dose="0.2 %", nitrite="6.25", nitrate="0")
    assert page.figures["nitrite"] == "125 ppm"


def test_a_dose_still_being_typed_is_no_fault(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/cure", figures="1", dose="", nitrite="6.25", nitrate="0")
    assert (page.status, page.text) == (200, "The answer stands here as you type.")


def test_figures_record_nothing(visitor: Visitor, batch: str):
    before = len(visitor.book)
    visitor.get(f"{batch}/cure", figures="1", dose="0.2 %", nitrite="6.25", nitrate="0")
    assert len(visitor.book) == before


def test_figures_asked_for_by_post_record_nothing(visitor: Visitor, batch: str):
    before = len(visitor.book)
    visitor.post(f"{batch}/cure?figures=1", dose="0.2 %", nitrite="6.25", nitrate="0")
    assert len(visitor.book) == before


@pytest.mark.parametrize("dose", ["-1 g", "-0.25 %"])
def test_less_than_no_dose_is_refused(visitor: Visitor, batch: str, dose: str):
    assert "less than nothing" in visitor.fill(f"{batch}/cure", dose=dose).beside("dose")


@pytest.mark.parametrize("dose", ["0", "0 g"])
def test_meat_without_curing_salt_is_noted_as_such(visitor: Visitor, batch: str, dose: str):
    assert "No curing salt used" in visitor.fill(f"{batch}/cure", dose=dose).text


def test_a_per_cent_may_be_written_as_a_word(visitor: Visitor, batch: str):
    assert "156 ppm" in visitor.fill(f"{batch}/cure", dose="0.25 per cent").text


def test_a_whole_muscle_is_held_to_the_limit_for_dry_cured_meat(visitor: Visitor):
    muscle = visitor.start_batch(style="whole-muscle")
    assert "625 ppm" in visitor.fill(f"{muscle}/cure", dose="1 %").text


def test_a_sausage_is_held_to_the_limit_for_chopped_meat(visitor: Visitor, batch: str):
    assert "156.25 ppm" in visitor.fill(f"{batch}/cure", dose="1 %").beside("dose")


def test_the_cure_weighed_again_corrects_the_first(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/cure", dose="0.25 %")
    visitor.post(f"{batch}/cure", dose="0.2 %", nitrite="6.25", nitrate="0")
    assert visitor.get(batch).text.count("Cure weighed") == 1


@pytest.mark.parametrize("dose", ["150 %", "9999999999999 kg", "200 kg"])
def test_a_dose_beyond_all_meat_is_refused(visitor: Visitor, batch: str, dose: str):
    page = visitor.fill(f"{batch}/cure", dose=dose)
    assert (page.status, page.beside("dose").startswith("The dose is a small part")) == (422, True)


def test_letters_are_answered_with_both_ways_to_say_it(visitor: Visitor, batch: str):
    assert visitor.fill(f"{batch}/cure", dose="?!").beside("dose").endswith("for example 0.25 % or 31 g.")


def test_a_strength_that_no_curing_salt_has_is_refused_beside_it(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/cure", dose="31 g", nitrite="62.5 %")
    assert "not a curing salt" in page.beside("nitrite")
