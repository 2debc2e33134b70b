"""The weighing sheet on the screen: row by row, as wanted by one tap, what the scale cannot weigh, and the record."""

import pytest

from core.daybook.facts.cure import RULES, HouseRule, LicensedException
from core.daybook.facts.formula import IngredientWeighed
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor
from tests.web.test_formulas import keep


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return made(visitor)


def made(visitor: Visitor, meat: str = "10", example: str = "coarse-salami", **changes: str) -> str:
    return visitor.fill(f"{keep(visitor, example, **changes)}/batch/meat", meat_kg=meat).path.partition("/sheet")[0]


def weigh(visitor: Visitor, batch: str, key: str, mass: str, **more: str):
    return visitor.fill(f"{batch}/sheet/{key}", mass_kg=mass, **more)


def weigh_all(visitor: Visitor, batch: str, meat: str = "8000") -> None:
    weigh(visitor, batch, "meat-1", meat)
    visitor.fill(f"{batch}/sheet/meat-2", **{"as": "wanted"})
    visitor.fill(f"{batch}/cure", dose="19 g", nitrite="6.25")
    for key in ("part-1", *(f"part-{at}" for at in range(3, 8))):
        visitor.fill(f"{batch}/sheet/{key}", **{"as": "wanted", "division_kg": "0.1"})


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_the_batch_leads_to_its_sheet(visitor: Visitor, batch: str):
    page = visitor.get(batch)
    assert f"{batch}/sheet" in [each["href"] for each in page.all("a")]
    assert "0 of 9 rows weighed" in page.text


def test_a_batch_without_a_formula_has_no_sheet(visitor: Visitor):
    batch = visitor.start_batch()
    assert "Weighing sheet" not in visitor.get(batch).text
    assert visitor.get(f"{batch}/sheet").status == 404


def test_today_says_what_is_to_weigh_out(visitor: Visitor, batch: str):
    weigh(visitor, batch, "meat-1", "8000")
    assert "Weigh out Juniper coarse 1 of 9 done" in visitor.get("/").text


def test_saving_leads_to_the_next_row(visitor: Visitor, batch: str):
    page = weigh(visitor, batch, "meat-1", "8000")
    assert page.path.startswith(f"{batch}/sheet/meat-2")
    assert page.texts("h1") == ["Back fat"]


def test_the_screen_stays_awake_while_one_weighs(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/sheet/meat-1")
    assert any("data-awake" in each.attributes for each in page.all("form"))


def test_one_tap_weighs_as_wanted(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/sheet/part-1", **{"as": "wanted"})
    assert visitor.fact(page.saved).mass_kg == pytest.approx(0.26)


def test_one_tap_weighs_what_the_scale_shows(visitor: Visitor):
    batch = made(visitor, "10.37")
    page = visitor.fill(f"{batch}/sheet/part-1", **{"as": "wanted", "division_kg": "5"})
    assert visitor.fact(page.saved).mass_kg == pytest.approx(0.270)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_one_tap_holds_in_either_system(visitor: Visitor, batch: str, units: str):
    visitor.settings(units=units)
    page = visitor.fill(f"{batch}/sheet/meat-1", **{"as": "wanted"})
    assert visitor.fact(page.saved).mass_kg == pytest.approx(8.0)


def test_as_wanted_keeps_the_lot_that_was_typed(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/sheet/part-1", **{"as": "wanted", "lot": "S 12"})
    assert visitor.fact(page.saved).lot == "S 12"


def test_the_difference_is_shown_as_one_types(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/sheet/part-1", figures="1", mass_kg="263", division_kg="1")
    assert page.figures["difference"] == "1.15 %"


def test_a_row_left_empty_is_refused_beside_its_box(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/sheet/meat-1", mass_kg="", lot="S 12")
    assert (page.status, page.typed("lot")) == (422, "S 12")
    assert page.beside("mass_kg").startswith("Enter the weighed") or page.beside("mass_kg").startswith("Enter")


@pytest.mark.parametrize("typed", ["much", "-5", "9999 kg"])
def test_what_is_no_weight_is_refused(visitor: Visitor, batch: str, typed: str):
    page = weigh(visitor, batch, "meat-1", typed)
    assert (page.status, page.typed("mass_kg"), bool(page.beside("mass_kg"))) == (422, typed, True)


def test_a_comma_is_a_decimal_mark(visitor: Visitor, batch: str):
    visitor.settings(decimal="comma")
    page = weigh(visitor, batch, "part-1", "260,5")
    assert visitor.fact(page.saved).mass_kg == pytest.approx(0.2605)


def test_a_row_weighed_again_corrects_the_first(visitor: Visitor, batch: str):
    weigh(visitor, batch, "part-1", "260")
    weigh(visitor, batch, "part-1", "255")
    rows = visitor.book.of_kind("ingredient-weighed")
    assert [line.fact.mass_kg for line in rows] == pytest.approx([0.255])


def test_a_row_there_is_not_is_not_found(visitor: Visitor, batch: str):
    assert visitor.get(f"{batch}/sheet/part-99").status == 404


def test_the_rest_is_asked_for_on_the_meat_as_weighed(visitor: Visitor, batch: str):
    weigh(visitor, batch, "meat-1", "9000")
    weigh(visitor, batch, "meat-2", "2000")
    assert "286.0 g" in plain(visitor.get(f"{batch}/sheet/part-1").text)


def test_the_scale_is_remembered_for_small_things_and_for_meat(visitor: Visitor, batch: str):
    weigh(visitor, batch, "meat-1", "8000", division_kg="5")
    weigh(visitor, batch, "part-3", "30", division_kg="0.1")
    assert visitor.get(f"{batch}/sheet/meat-2").typed("division_kg") == "5"
    assert visitor.get(f"{batch}/sheet/part-4").typed("division_kg") == "0.1"


def test_the_checked_scale_is_offered_and_its_step_taken(visitor: Visitor, batch: str):
    scale = visitor.fill("/chamber/instruments/add", name="Fine scale", kind="scale").path.partition("?")[0]
    visitor.fill(f"{scale}/check/weights", mass_kg="100", reading_kg="101", division_kg="0.1")
    page = visitor.get(f"{batch}/sheet/part-1")
    assert page.typed("division_kg") == "0.1"
    assert "Fine scale" in page.text


def test_a_weight_on_a_checked_scale_is_corrected(visitor: Visitor, batch: str):
    scale = visitor.fill("/chamber/instruments/add", name="Fine scale", kind="scale").path.partition("?")[0]
    visitor.fill(f"{scale}/check/weights", mass_kg="100", reading_kg="101", division_kg="0.1")
    weigh(visitor, batch, "part-1", "262.6")
    assert "260.0 g" in plain(visitor.get(f"{batch}/sheet").text)


def test_a_small_dose_of_spice_is_warned_of(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/sheet/part-7", figures="1", mass_kg="3", division_kg="1")
    assert "33 % out" in page.text


def test_a_cure_too_small_for_the_scale_is_refused_with_a_blend(visitor: Visitor):
    page = visitor.get(f"{made(visitor, '2')}/sheet/part-2", division_kg="1")
    assert "may be 47 % out on 3.8 g. Use one that shows 0.01 g, or a blend" in plain(page.texts("p", "refusal")[0])
    assert {"take", "blend_cure", "blend_salt", "salt_left"} <= set(page.figures)
    assert "Weigh the cure" not in page.texts("a")


def test_a_finer_scale_opens_the_way(visitor: Visitor):
    page = visitor.get(f"{made(visitor, '2')}/sheet/part-2", division_kg="0.01")
    assert page.texts("p", "refusal") == []
    assert "Weigh the cure" in page.texts("a")


def test_a_batch_too_small_for_any_blend_is_told_so(visitor: Visitor):
    page = visitor.get(f"{made(visitor, '0.5')}/sheet/part-2", division_kg="1")
    assert "Even with all of its salt" in page.texts("p", "refusal")[0]
    assert "Weigh the blend" not in page.texts("a")


def test_the_cures_form_starts_from_the_dose_the_sheet_asks_for(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/sheet/part-2", division_kg="0.1")
    form = visitor.get(next(each["href"] for each in page.all("a") if each.text == "Weigh the cure"))
    assert (form.typed("dose"), form.typed("nitrite")) == ("19 g", "6.25")


def test_a_blend_is_weighed_as_a_weaker_curing_salt(visitor: Visitor):
    batch = made(visitor, "2")
    page = visitor.get(f"{batch}/sheet/part-2", division_kg="1")
    form = visitor.get(next(each["href"] for each in page.all("a") if each.text == "Weigh the blend"))
    sheet = visitor.send(form.form_with("dose"))
    assert sheet.figures["nitrite"] == "118 ppm"
    assert "1 of 9 weighed" in sheet.text


def test_the_cure_weighed_ticks_its_row(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/cure", dose="19 g", nitrite="6.25")
    assert page.path.startswith(f"{batch}/sheet")
    assert "1 of 9 weighed" in page.text


def test_a_sheet_all_weighed_says_so_with_its_figures(visitor: Visitor, batch: str):
    weigh_all(visitor, batch)
    page = visitor.get(f"{batch}/sheet")
    assert "9 of 9 weighed" in page.text
    assert "Everything is weighed" in page.text
    assert page.figures["nitrite"] == "118 ppm"


def test_the_ppm_follows_the_meat_as_weighed(visitor: Visitor, batch: str):
    weigh_all(visitor, batch, meat="9000")
    assert visitor.get(f"{batch}/sheet").figures["nitrite"] == "107 ppm"
    assert visitor.get(batch).figures["nitrite"] == "107 ppm"


def test_what_was_weighed_is_in_the_log_and_can_be_undone(visitor: Visitor, batch: str):
    page = weigh(visitor, batch, "part-1", "260", lot="S 12")
    assert "Weighed Salt: 260.0 g, lot S 12" in plain(visitor.get(batch).text)
    visitor.send(page.form("/undo"))
    assert visitor.get(f"{batch}/sheet").text.count("0 of 9 weighed") == 1


def test_a_row_is_corrected_from_the_log(visitor: Visitor, batch: str):
    key = weigh(visitor, batch, "part-1", "260").saved
    visitor.fill(f"/entries/{key}/correct", mass_kg="261")
    fact = visitor.fact(key)
    assert isinstance(fact, IngredientWeighed)
    assert (fact.mass_kg, fact.key, fact.name) == (pytest.approx(0.261), "part-1", "Salt")


def test_costs_go_by_what_was_weighed(visitor: Visitor):
    batch = made(visitor, **{"meat-1-price": "8", "meat-2-price": "3"})
    weigh(visitor, batch, "meat-1", "9000")
    assert visitor.get(f"{batch}/sheet").figures["cost"] == "78.00"


def test_over_the_limit_there_is_no_sheet(visitor: Visitor):
    batch = made(visitor, **{"part-2-dose": "1"})
    page = visitor.get(f"{batch}/sheet")
    assert "156.25 ppm" in page.texts("p", "refusal")[0]
    assert page.all("table") == []
    assert visitor.get(f"{batch}/sheet/meat-1").path == f"{batch}/sheet"


def test_a_brine_is_held_to_the_rules_of_brine(visitor: Visitor):
    batch = made(visitor, "4", "brined-belly")
    page = visitor.get(f"{batch}/sheet/part-3", division_kg="0.1")
    form = visitor.get(next(each["href"] for each in page.all("a") if each.text == "Weigh the cure"))
    assert (form.typed("method"), form.typed("water_kg"), form.typed("dose")) == ("immersion", "2", "7.6 g")
    sheet = visitor.send(form.form_with("dose"))
    assert float(sheet.figures["nitrite"].split()[0]) == pytest.approx(0.0076 * 0.0625 / 6.3276 * 1e6, abs=2)


def test_the_house_limit_shuts_the_sheet_too(visitor: Visitor):
    batch = made(visitor)
    visitor.book.learn(a_house_limit(100.0))
    assert visitor.get(f"{batch}/sheet").all("table") == []


def test_a_licensed_exception_opens_the_sheet(visitor: Visitor):
    batch = made(visitor, **{"part-2-dose": "0.3"})
    kitchen = Kitchen()
    exception = LicensedException("a trial", "the authority", "the maker", "food act, section 9", "nitrite", 190e-6)
    kitchen.note(exception, batch.rpartition("/")[2])
    visitor.book.learn(kitchen.records)
    assert visitor.get(f"{batch}/sheet").all("table") != []


def a_house_limit(ppm: float) -> list[dict]:
    kitchen = Kitchen()
    kitchen.note(HouseRule("us", nitrite=ppm * 1e-6), RULES)
    return kitchen.records
