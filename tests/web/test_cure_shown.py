"""What the screens show of a cure is never more than what they accept: formula, sheet, weighing, correction."""

from tests.web.conftest import Visitor
from tests.web.test_formulas import keep
from tests.web.test_sheet import plain


def made(visitor: Visitor, meat: str, dose: str) -> tuple[str, str]:
    """The paths of a formula of ground meat with so much of a 6.25 % salt, and of a batch of it."""
    formula = keep(visitor, **{"part-2-dose": dose, "part-2-dose-unit": "%"})
    return formula, visitor.fill(f"{formula}/batch/meat", meat_kg=meat).path.partition("/sheet")[0]


def test_4_03_kilograms_ask_for_a_dose_that_the_form_accepts(visitor: Visitor):
    _, batch = made(visitor, "4.03", "0.25")
    assert "10.0 g" in plain(visitor.get(f"{batch}/sheet").text)
    assert "10.1 g" not in plain(visitor.get(f"{batch}/sheet/part-2").text)
    page = visitor.fill(f"{batch}/cure", dose="10.0 g", nitrite="6.25", nitrate="0")
    assert "Cure weighed: 10.0 g" in plain(page.text)


def test_10_1_grams_are_more_than_4_03_kilograms_take(visitor: Visitor):
    _, batch = made(visitor, "4.03", "0.25")
    assert "156.25 ppm" in visitor.fill(f"{batch}/cure", dose="10.1 g", nitrite="6.25", nitrate="0").beside("dose")


def test_a_formula_shows_its_cure_to_a_thousandth_of_a_per_cent_and_never_more(visitor: Visitor):
    formula, _ = made(visitor, "10", "0.24999")
    assert "0.249 %" in plain(visitor.get(formula).text)
    assert visitor.get(f"{formula}/change").typed("part-2-dose") == "0.24999"


def test_a_share_as_it_is_shown_is_accepted_when_it_is_typed(visitor: Visitor):
    batch = visitor.start_batch(meat_kg="4.03")
    page = visitor.fill(f"{batch}/cure", dose="156.25 ppm", nitrite="6.25", nitrate="0")
    assert plain(page.figures["cure"]) == "10.0 g"
    assert page.figures["nitrite"] == "156 ppm"


def test_a_correction_begins_with_a_dose_that_is_still_accepted(visitor: Visitor):
    batch = visitor.start_batch(meat_kg="4.03")
    visitor.fill(f"{batch}/cure", dose="156.25 ppm", nitrite="6.25", nitrate="0")
    form = visitor.get(f"{batch}/cure").form_with("dose")
    assert plain(form.values["dose"]) == "10.075 g"
    assert visitor.send(form).figures["nitrite"] == "156 ppm"
