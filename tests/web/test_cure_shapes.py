"""The cure's form in its shapes: rules, way of curing and product decide what it asks; nothing typed is lost."""

import pytest

from tests.web.conftest import Visitor
from tests.web.reading import Page

PUMPED = {
    "rules": "us",
    "method": "pump",
    "product": "meat",
    "dose": "240 g",
    "nitrite": "6.25",
    "nitrate": "0",
    "water_kg": "10",
    "sugar_kg": "400",
    "other_salt_kg": "1200",
    "taken": "10 %",
}
SALAMI = {"rules": "eu", "product": "not-heated", "dose": "2.4 %", "nitrite": "0.5", "nitrate": "0"}


@pytest.fixture
def ham(visitor: Visitor) -> str:
    return visitor.start_batch("Beech ham", "whole-muscle", meat_kg="5")


@pytest.fixture
def salami(visitor: Visitor) -> str:
    return visitor.start_batch("Alpine salami")


def anew(visitor: Visitor, path: str, **values: str) -> Page:
    return visitor.get(path, anew="1", **values)


def asked(page: Page) -> set[str]:
    return {each["name"] for each in page.elements if each.tag in ("input", "select") and each["type"] != "hidden"}


def test_a_sausage_is_not_asked_how_it_is_cured(visitor: Visitor, salami: str):
    assert "method" not in asked(visitor.get(f"{salami}/cure"))


def test_a_whole_muscle_is_asked_how_it_is_cured(visitor: Visitor, ham: str):
    assert {"rules", "method", "product"} <= asked(visitor.get(f"{ham}/cure"))


def test_a_rub_is_not_asked_for_water(visitor: Visitor, ham: str):
    assert not {"water_kg", "taken"} & asked(visitor.get(f"{ham}/cure"))


def test_pumped_meat_is_asked_for_its_brine_and_its_pump(visitor: Visitor, ham: str):
    assert {"water_kg", "sugar_kg", "taken"} <= asked(anew(visitor, f"{ham}/cure", method="pump"))


def test_meat_in_brine_to_the_end_is_asked_for_no_pump(visitor: Visitor, ham: str):
    page = anew(visitor, f"{ham}/cure", method="immersion")
    assert ("water_kg" in asked(page), "taken" in asked(page)) == (True, False)


def test_canada_asks_for_all_else_in_the_mix(visitor: Visitor, salami: str):
    assert "other_kg" in asked(anew(visitor, f"{salami}/cure", rules="ca"))


@pytest.mark.parametrize(
    ("also", "boxes"),
    [
        ("second", {"second_kg", "second_nitrite", "second_nitrate"}),
        ("potassium", {"nitrite_of", "nitrate_of"}),
        ("accelerator", {"accelerator_kg"}),
    ],
)
def test_what_else_is_in_it_brings_its_boxes(visitor: Visitor, salami: str, also: str, boxes: set[str]):
    assert boxes <= asked(anew(visitor, f"{salami}/cure", also=also))


def test_what_was_typed_stays_in_another_shape(visitor: Visitor, ham: str):
    assert anew(visitor, f"{ham}/cure", **PUMPED).typed("water_kg") == "10"


def test_what_has_no_box_now_is_carried_along(visitor: Visitor, ham: str):
    page = anew(visitor, f"{ham}/cure", **PUMPED | {"method": "dry-rub"})
    assert page.form("/cure").values["water_kg"] == "10"


def test_what_was_carried_comes_back_with_its_box(visitor: Visitor, ham: str):
    rubbed = anew(visitor, f"{ham}/cure", **PUMPED | {"method": "dry-rub"})
    page = visitor.get(f"{ham}/cure", anew="1", **rubbed.form("/cure").values | {"method": "pump"})
    assert page.typed("taken") == "10 %"


def test_a_new_shape_records_nothing(visitor: Visitor, ham: str):
    before = len(visitor.book)
    anew(visitor, f"{ham}/cure", **PUMPED)
    assert len(visitor.book) == before


def test_a_product_of_other_rules_falls_back_to_the_usual_one(visitor: Visitor, salami: str):
    assert anew(visitor, f"{salami}/cure", rules="eu", product="meat").typed("product") == "not-heated"


def test_a_pumped_ham_is_figured_through_its_brine(visitor: Visitor, ham: str):
    page = visitor.get(f"{ham}/cure", figures="1", **PUMPED)
    assert (page.figures["nitrite"], page.figures["salometer"]) == ("126 ppm", "47 degrees")


def test_a_pumped_ham_is_kept_with_its_brine(visitor: Visitor, ham: str):
    fact = visitor.fact(visitor.post(f"{ham}/cure", **PUMPED).saved)
    assert (fact.method, fact.water_kg, fact.taken) == ("pump", 10.0, pytest.approx(0.1))


def test_a_salami_by_eu_rules_counts_the_ion(visitor: Visitor, salami: str):
    page = visitor.post(f"{salami}/cure", **SALAMI)
    assert page.figures["nitrite_ion"] == "80 ppm"


def test_the_batch_names_the_rule_beside_the_ion(visitor: Visitor, salami: str):
    assert "of 80 ppm allowed by Reg. (EU) 2023/2108" in visitor.post(f"{salami}/cure", **SALAMI).text


def test_more_than_the_eu_allows_is_refused_beside_the_dose(visitor: Visitor, salami: str):
    page = visitor.post(f"{salami}/cure", **SALAMI | {"dose": "3 %"})
    assert (page.status, "counted as ion" in page.beside("dose")) == (422, True)


def test_a_refused_form_keeps_its_shape(visitor: Visitor, ham: str):
    page = visitor.post(f"{ham}/cure", **PUMPED | {"dose": "2 kg"})
    assert (page.status, page.typed("taken")) == (422, "10 %")


def test_the_rules_of_an_earlier_day_hold_for_a_cure_weighed_then(visitor: Visitor, salami: str):
    page = visitor.post(f"{salami}/cure", **SALAMI | {"dose": "2.9 %", "happened": "2025-10-08T12:00"})
    assert page.status == 200


def test_the_rules_are_remembered_from_the_last_batch(visitor: Visitor, salami: str):
    visitor.post(f"{salami}/cure", **SALAMI)
    another = visitor.start_batch("Fennel salami")
    assert visitor.get(f"{another}/cure").typed("rules") == "eu"


def test_a_dose_may_be_asked_for_by_its_ppm(visitor: Visitor, salami: str):
    page = visitor.fill(f"{salami}/cure", dose="120 ppm")
    assert (page.figures["nitrite"], page.figures["cure"]) == ("120 ppm", "23.8 g")


def test_a_brines_dose_may_be_asked_for_by_its_ppm(visitor: Visitor, ham: str):
    page = visitor.post(f"{ham}/cure", **PUMPED | {"dose": "120 ppm"})
    assert page.figures["nitrite"] == "120 ppm"


def test_a_ppm_over_the_limit_is_refused_beside_the_dose(visitor: Visitor, salami: str):
    page = visitor.fill(f"{salami}/cure", dose="200 ppm")
    assert "156.25 ppm" in page.beside("dose")


def test_a_per_cent_of_a_brine_says_nothing_and_is_refused(visitor: Visitor, ham: str):
    page = visitor.post(f"{ham}/cure", **PUMPED | {"dose": "2 %"})
    assert page.beside("dose").endswith("for example 240 g or 120 ppm.")


@pytest.mark.parametrize("part", ["second_nitrite", "second_nitrate"])
def test_a_second_cure_is_asked_for_its_whole_label(visitor: Visitor, salami: str, part: str):
    second = {"also": "second", "second_kg": "20 g", "second_nitrite": "6.25", "second_nitrate": "0"} | {part: ""}
    page = visitor.post(f"{salami}/cure", dose="0.1 %", nitrite="6.25", nitrate="0", rules="us", **second)
    assert page.beside(part).startswith("Enter a per-cent for “Nitr")


def test_a_second_cures_boxes_begin_empty(visitor: Visitor, salami: str):
    page = anew(visitor, f"{salami}/cure", also="second")
    assert (page.typed("second_nitrite"), page.typed("second_nitrate")) == ("", "")


def test_canada_says_that_its_ppm_are_on_the_whole_mixture(visitor: Visitor, salami: str):
    assert "Canada’s ppm are on the whole raw mixture." in anew(visitor, f"{salami}/cure", rules="ca").text
    assert "whole raw mixture" not in anew(visitor, f"{salami}/cure", rules="us").text


def test_a_dose_of_0_0025_is_asked_about_and_a_share_is_named(visitor: Visitor, salami: str):
    page = visitor.post(f"{salami}/cure", dose="0.0025", nitrite="6.25", nitrate="0", rules="us")
    assert "0.25 %" in page.beside("dose")


@pytest.mark.parametrize("dose", ["0.05", "0", "0.0025 %"])
def test_a_small_dose_that_is_usual_or_has_its_unit_is_taken(visitor: Visitor, salami: str, dose: str):
    page = visitor.post(f"{salami}/cure", dose=dose, nitrite="6.25", nitrate="0", rules="us")
    assert "saved=" in page.path


def test_a_pump_of_0_2_is_asked_about_in_the_form(visitor: Visitor, ham: str):
    page = visitor.post(f"{ham}/cure", **PUMPED | {"taken": "0.2"})
    assert "20 %" in page.beside("taken")


def test_two_cures_are_added_up(visitor: Visitor, salami: str):
    second = {"also": "second", "second_kg": "100 g", "second_nitrite": "0.5", "second_nitrate": "0"}
    page = visitor.post(f"{salami}/cure", dose="0.1 %", nitrite="6.25", nitrate="0", rules="us", **second)
    assert page.figures["nitrite"] == "102 ppm"


def test_a_second_label_that_no_cure_has_is_refused_beside_it(visitor: Visitor, salami: str):
    second = {"also": "second", "second_kg": "100 g", "second_nitrite": "50 %", "second_nitrate": "0"}
    page = visitor.post(f"{salami}/cure", dose="0.1 %", nitrite="6.25", nitrate="0", rules="us", **second)
    assert "not a curing salt" in page.beside("second_nitrite")


def test_a_correction_starts_in_the_shape_of_its_entry(visitor: Visitor, ham: str):
    saved = visitor.post(f"{ham}/cure", **PUMPED | {"also": "accelerator", "accelerator_kg": "5 g"}).saved
    page = visitor.get(f"/entries/{saved}/correct")
    assert (page.typed("method"), page.typed("accelerator_kg")) == ("pump", "5")


def test_a_correction_can_change_its_shape(visitor: Visitor, ham: str):
    saved = visitor.post(f"{ham}/cure", **PUMPED).saved
    page = visitor.get(f"/entries/{saved}/correct", anew="1", **PUMPED | {"method": "dry-rub"})
    assert "taken" not in asked(page)
    again = visitor.send(page.form("/correct"), dose="0.3 %")
    assert visitor.fact(again.saved).method == "dry-rub"


def test_an_older_entry_goes_on_naming_no_rules(visitor: Visitor, salami: str):
    saved = visitor.fill(f"{salami}/cure", dose="0.2 %").saved
    assert visitor.fact(saved).rules == "us"


@pytest.mark.parametrize(
    ("dose", "meant"), [("0.24", "Is 0.24 kg"), ("0.49", "Is 0.49 kg"), ("24000", "24\u00a0000 g")]
)
def test_in_a_brine_a_bare_dose_that_is_no_usual_weight_is_asked_about(
    visitor: Visitor, ham: str, dose: str, meant: str
):
    page = visitor.post(f"{ham}/cure", **PUMPED | {"dose": dose})
    assert meant.replace("\u00a0", " ") in page.beside("dose").replace("\u00a0", " ")


def test_half_a_gram_in_a_brine_is_not_asked_about(visitor: Visitor, ham: str):
    assert "usual here" not in visitor.post(f"{ham}/cure", **PUMPED | {"dose": "0.5"}).text
