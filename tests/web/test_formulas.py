"""Formulas on the screen: rows that grow and shrink, fat set by a tap, versions, and a batch made four ways."""

import pytest

from core.mix.examples import EXAMPLES
from core.mix.formula import Formula
from tests.web.conftest import Visitor
from tests.web.reading import Page

TYPED = {
    "name": "Alder stick",
    "style": "fermented",
    "target_loss": "30",
    "meat-1-name": "Shoulder",
    "meat-1-share": "80",
    "meat-1-fat": "7",
    "meat-1-cut": "10072",
    "meat-2-name": "Back fat",
    "meat-2-share": "20",
    "meat-2-fat": "89",
    "meat-2-cut": "10004",
    "part-1-name": "Salt",
    "part-1-role": "salt",
    "part-1-dose": "2.6",
    "part-1-dose-unit": "%",
    "part-2-name": "Pepper",
    "part-2-role": "spice",
    "part-2-dose": "3",
    "part-2-dose-unit": "g/kg",
}


def keep(visitor: Visitor, example: str = "coarse-salami", **changes: str) -> str:
    """The path of a formula kept from an example."""
    path = f"/formulas/new?example={example}"
    return visitor.send(visitor.get(path).form(f"example={example}"), **changes).path.partition("?")[0]


def formula_of(visitor: Visitor, page: Page) -> Formula:
    return visitor.fact(page.saved)


def form(page: Page) -> dict[str, str]:
    return page.form_with("name").values


def do(visitor: Visitor, what: str, **texts: str) -> Page:
    return visitor.post("/formulas/new", **TYPED | texts, do=what)


def test_the_book_without_formulas_offers_the_examples(visitor: Visitor):
    page = visitor.get("/formulas")
    assert all(each.formula.name in page.text for each in EXAMPLES)


@pytest.mark.parametrize("each", EXAMPLES, ids=lambda each: each.key)
def test_an_example_saved_as_it_is_is_that_formula(visitor: Visitor, each):
    page = visitor.send(visitor.get("/formulas/new", example=each.key).form(f"example={each.key}"))
    kept = formula_of(visitor, page)
    assert (kept.name, kept.cautions, kept.brined) == (
        each.formula.name,
        each.formula.cautions,
        each.formula.brined,
    )
    assert [meat.share for meat in kept.meats] == pytest.approx([meat.share for meat in each.formula.meats])
    assert [part.per_meat for part in kept.ingredients] == pytest.approx(
        [part.per_meat for part in each.formula.ingredients]
    )
    assert [part.in_grams for part in kept.ingredients] == [part.in_grams for part in each.formula.ingredients]


@pytest.mark.parametrize("each", EXAMPLES, ids=lambda each: each.key)
def test_a_formula_shows_what_its_cure_makes_and_its_cautions(visitor: Visitor, each):
    page = visitor.get(keep(visitor, each.key))
    assert page.figures["nitrite"].endswith("ppm")
    assert page.texts("p", "refusal") == []
    assert all(caution in page.text for caution in each.formula.warnings)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_a_formula_is_typed_from_an_empty_page(visitor: Visitor, units: str):
    visitor.settings(units=units)
    kept = formula_of(visitor, visitor.post("/formulas/new", **TYPED))
    assert kept.fat == pytest.approx(0.8 * 0.07 + 0.2 * 0.89)
    assert [part.per_meat for part in kept.ingredients] == pytest.approx([0.026, 0.003])


def test_a_comma_is_read_and_written(visitor: Visitor):
    visitor.settings(decimal="comma")
    page = visitor.post("/formulas/new", **TYPED | {"part-1-dose": "2,55"})
    assert formula_of(visitor, page).ingredients[0].per_meat == pytest.approx(0.0255)
    assert "2,55 %" in page.text.replace("\u00a0", " ")


def test_an_empty_fat_is_that_of_the_cut(visitor: Visitor):
    kept = formula_of(visitor, visitor.post("/formulas/new", **TYPED | {"meat-1-fat": ""}))
    assert kept.meats[0].fat == pytest.approx(0.0714)


def test_thirds_make_a_whole(visitor: Visitor):
    third = {"meat-3-name": "Belly", "meat-3-share": "33.3", "meat-3-cut": "10005"}
    shares = {"meat-1-share": "33.3", "meat-2-share": "33.3"}
    kept = formula_of(visitor, visitor.post("/formulas/new", **TYPED | third | shares))
    assert [meat.share for meat in kept.meats] == pytest.approx([1 / 3] * 3)


def test_shares_that_do_not_make_a_whole_are_refused_beside_the_last(visitor: Visitor):
    page = visitor.post("/formulas/new", **TYPED | {"meat-2-share": "10"})
    assert page.status == 422
    assert page.beside("meat-2-share").startswith("The shares of the meats make 90")


def test_every_box_that_cannot_stand_is_told_at_once(visitor: Visitor):
    page = visitor.post("/formulas/new", **TYPED | {"name": "", "meat-1-share": "much", "part-2-dose": "9999"})
    assert page.beside("name")
    assert page.beside("meat-1-share")
    assert page.beside("part-2-dose")
    assert page.typed("meat-1-share") == "much"


def test_nothing_is_kept_of_a_refused_formula(visitor: Visitor):
    visitor.post("/formulas/new", **TYPED | {"name": ""})
    assert len(visitor.book) == 0


def test_an_empty_row_is_no_row(visitor: Visitor):
    page = visitor.post("/formulas/new", **TYPED | {"part-3-name": "", "part-3-role": "spice", "part-3-dose": ""})
    assert len(formula_of(visitor, page).ingredients) == 2


def test_a_formula_of_no_meat_is_asked_for_one(visitor: Visitor):
    page = visitor.post("/formulas/new", name="Bread", style="fermented", target_loss="30")
    assert page.status == 422
    assert "at least one meat" in page.text


@pytest.mark.parametrize("what", ["add-meat", "add-part", "add-cure"])
def test_a_row_more_loses_nothing_typed_and_saves_nothing(visitor: Visitor, what: str):
    page = do(visitor, what, name="", **{"meat-1-share": "ma"})
    assert page.status == 200
    assert len(visitor.book) == 0
    assert {key: form(page)[key] for key in TYPED} == TYPED | {"name": "", "meat-1-share": "ma"}


def test_a_row_more_takes_the_focus(visitor: Visitor):
    page = do(visitor, "add-part")
    assert "data-focus" in page.named("part-3-name").attributes


def test_the_curing_salt_comes_with_the_usual_strength(visitor: Visitor):
    added = form(do(visitor, "add-cure"))
    assert (added["part-3-role"], added["part-3-nitrite"]) == ("cure", "6.25")


def test_a_row_removed_leaves_the_others_as_they_are(visitor: Visitor):
    left = form(do(visitor, "remove-part-1"))
    assert "part-1-name" not in left
    assert left["part-2-name"] == "Pepper"


def test_enter_saves_and_removes_no_row(visitor: Visitor):
    page = visitor.get("/formulas/new")
    form = next(each for each in page.all("form") if "formula" in each.classes)
    assert next(each for each in page.all("button") if each.inside(form))["name"] == ""


def test_the_shares_are_set_for_the_fat_wanted(visitor: Visitor):
    page = do(visitor, "fat", wanted="25")
    assert float(page.typed("meat-1-share")) == pytest.approx((89 - 25) / 82 * 100)
    assert page.figures["fat_of_meat"] == "25\u00a0%".replace("\u00a0", " ")


def test_a_fat_out_of_reach_is_refused_with_what_can_be_reached(visitor: Visitor):
    page = do(visitor, "fat", wanted="95")
    assert page.status == 422
    assert page.beside("wanted") == "These meats make 7 % to 89 % fat, whatever the shares. For 95 % add a fatter meat."


def test_the_fat_wanted_is_asked_for_where_it_is_missing(visitor: Visitor):
    assert do(visitor, "fat").beside("wanted").startswith("Enter the fat wanted")


def test_the_shares_are_made_whole_by_one_factor(visitor: Visitor):
    page = do(visitor, "whole", **{"meat-1-share": "3", "meat-2-share": "1"})
    assert (page.typed("meat-1-share"), page.typed("meat-2-share")) == ("75", "25")


@pytest.mark.parametrize("what", ["whole", "fat"])
def test_shares_cannot_be_set_by_what_is_no_number(visitor: Visitor, what: str):
    page = do(visitor, what, wanted="25", **{"meat-1-share": "much"})
    assert (page.status, bool(page.beside("meat-1-share"))) == (422, True)


def test_a_button_we_do_not_know_is_refused(visitor: Visitor):
    assert do(visitor, "dance").status == 400


def test_figures_as_one_types_record_nothing(visitor: Visitor):
    page = visitor.get("/formulas/new", figures="1", **TYPED)
    assert page.figures["fat_of_meat"] == "23.4 %"
    assert len(visitor.book) == 0


def test_the_cures_nitrite_is_the_first_figure_of_what_is_written(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "0.2", "part-3-nitrite": "6.25"}
    assert next(iter(visitor.get("/formulas/new", figures="1", **TYPED | cure).figures)) == "nitrite"


def test_a_label_names_the_unit_that_is_chosen(visitor: Visitor):
    labels = visitor.get(f"{keep(visitor)}/change").texts("label")
    assert {"Of the meat %", "Of the meat g/kg"} <= set(labels)


def test_the_cost_to_the_kilogram_says_what_has_no_price(visitor: Visitor):
    page = visitor.get(keep(visitor, **{"meat-1-price": "8"}))
    assert any(each.startswith("Without what has no price: Back fat, Salt") for each in page.texts("p", "caution"))


def test_a_half_typed_formula_has_no_figures_yet(visitor: Visitor):
    assert visitor.get("/formulas/new", figures="1", **TYPED | {"name": ""}).figures == {}


def test_a_cure_over_the_limit_is_told_while_one_types(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "2.5", "part-3-nitrite": "6.25"}
    page = visitor.get("/formulas/new", figures="1", **TYPED | cure)
    assert "156.25 ppm" in page.texts("p", "refusal")[0]


def test_a_cure_of_no_strength_is_refused_beside_it(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "0.2"}
    page = visitor.post("/formulas/new", **TYPED | cure | {"part-3-nitrite": "0"})
    assert "holds nitrite, nitrate or both" in page.beside("part-3-nitrite")


def test_a_cure_whose_nitrite_was_left_empty_is_asked_for_it(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "0.2", "part-3-nitrate": "4"}
    page = visitor.post("/formulas/new", **TYPED | cure)
    assert page.beside("part-3-nitrite") == "Enter the nitrite on the label, or 0 if there is none."


def test_a_cure_of_0_625_is_asked_about(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "0.2", "part-3-nitrite": "0.625"}
    assert "Is 6.25 % meant?" in visitor.post("/formulas/new", **TYPED | cure).beside("part-3-nitrite")


def test_a_formula_kept_with_a_doubtful_strength_is_not_asked_about_it_anew(visitor: Visitor):
    cure = {"part-3-name": "Cure", "part-3-role": "cure", "part-3-dose": "2", "part-3-nitrite": "0.6 %"}
    kept = visitor.post("/formulas/new", **TYPED | cure).path.partition("?")[0]
    assert form(visitor.get(f"{kept}/change"))["part-3-nitrite"] == "0.6 %"


def test_a_changed_formula_is_a_version_of_its_own(visitor: Visitor):
    formula = keep(visitor)
    page = visitor.fill(f"{formula}/change", name="Juniper finer")
    assert "Version 2 of 2" in page.text
    assert "Version 1 of 2" in visitor.get(formula, version=formula.split("/")[-1]).text
    assert visitor.fact(formula.split("/")[-1]).name == "Juniper coarse"


def test_a_changed_formula_keeps_its_cautions(visitor: Visitor):
    formula = keep(visitor)
    page = visitor.fill(f"{formula}/change", name="Juniper finer")
    assert visitor.fact(page.saved).cautions == EXAMPLES[0].formula.cautions


def test_a_change_can_be_undone(visitor: Visitor):
    formula = keep(visitor)
    visitor.send(visitor.fill(f"{formula}/change", name="Juniper finer").form("/undo"))
    assert "Version 1 of 1" in visitor.get(formula).text


def test_a_formula_sent_twice_is_kept_once(visitor: Visitor):
    sent = visitor.get("/formulas/new", example="spreadable").form("example=spreadable")
    assert visitor.send(sent).path == visitor.send(sent).path
    assert len(visitor.book) == 1


def test_a_formula_taken_back_leads_to_the_list(visitor: Visitor):
    formula = keep(visitor)
    page = visitor.send(visitor.get(formula, saved=formula.split("/")[-1]).form("/undo"))
    assert page.path.startswith("/formulas?")
    assert visitor.get(formula).status == 404


def test_the_balance_is_worked_out_at_any_loss(visitor: Visitor):
    formula = keep(visitor)
    assert "At 40.0 % loss" in visitor.get(formula, loss="40").text.replace("\u00a0", " ")


@pytest.mark.parametrize(("loss", "says"), [("90", "It holds"), ("much", "is not a per-cent")])
def test_a_loss_that_cannot_be_is_refused_beside_its_box(visitor: Visitor, loss: str, says: str):
    page = visitor.get(keep(visitor), loss=loss)
    assert page.status == 200
    assert says in page.by_id("loss-refusal").text
    assert page.by_id("loss")["value"] == loss


def test_a_formula_with_prices_says_what_a_kilogram_costs(visitor: Visitor):
    formula = keep(visitor, **{"meat-1-price": "8", "meat-2-price": "3"})
    page = visitor.get(formula)
    assert page.figures["cost-raw"].endswith("a kg")
    assert "Without what has no price" not in page.figures


@pytest.mark.parametrize("path", ["/formulas/none", "/formulas/none/change", "/formulas/none/batch"])
def test_a_formula_there_is_not_is_not_found(visitor: Visitor, path: str):
    assert visitor.get(path).status == 404


def test_a_batch_is_no_formula(visitor: Visitor):
    batch = visitor.start_batch().rpartition("/")[2]
    assert visitor.get(f"/formulas/{batch}").status == 404


def test_a_name_corrected_stays_in_its_version(visitor: Visitor):
    formula = keep(visitor)
    batch = visitor.fill(f"{formula}/batch/meat", meat_kg="10").path.partition("/sheet")[0]
    visitor.fill(f"/entries/{formula.split('/')[-1]}/correct", name="Juniper rough")
    page = visitor.get(formula)
    assert "Version 1 of 1" in page.text
    assert "Juniper rough" in page.texts("h1")
    link = next(each["href"] for each in visitor.get(f"{batch}/sheet").all("a") if "formulas" in each["href"])
    assert visitor.get(link).status == 200


def test_the_next_dose_has_the_unit_of_the_last_one_typed(visitor: Visitor):
    assert form(do(visitor, "add-part"))["part-3-dose-unit"] == "g/kg"
    in_percent = {"part-2-dose": "0.3", "part-2-dose-unit": "%"}
    assert form(do(visitor, "add-part", **in_percent))["part-3-dose-unit"] == "%"
    assert form(do(visitor, "add-part", **in_percent | {"part-2-dose": "3 g/kg"}))["part-3-dose-unit"] == "g/kg"


def test_the_curing_salts_unit_is_not_that_of_the_spices(visitor: Visitor):
    cure = {"part-3-name": "Curing salt", "part-3-role": "cure", "part-3-dose-unit": "%", "part-3-nitrite": "6.25"}
    assert form(do(visitor, "add-part", **cure))["part-4-dose-unit"] == "g/kg"


def test_a_row_opens_where_what_is_behind_it_is_refused(visitor: Visitor):
    page = visitor.post("/formulas/new", **TYPED | {"part-1-price": "cheap"})
    assert ["checked" in each.attributes for each in page.all("input", "more")] == [False, False, True, False]


def test_the_strength_of_a_curing_salt_is_seen_without_opening_its_row(visitor: Visitor):
    assert "6.25 % nitrite on the label" in do(visitor, "add-cure").texts("p", "help")
