"""A batch of a formula: made four ways, told before it is begun, and faithful to its version."""

import pytest

from core.daybook.facts.batch import BatchStarted
from tests.web.conftest import Visitor
from tests.web.test_formulas import keep

MADE = {
    "meat": ({"meat_kg": "10"}, 10.0),
    "raw": ({"raw_kg": "10"}, 10 / 1.0372),
    "finished": ({"finished_kg": "6.5"}, 10 / 1.0372),
    "casings": ({"count": "10", "diameter_m": "60", "length_m": "500"}, 14.8440 / 1.0372),
}


@pytest.mark.parametrize("by", MADE)
def test_a_batch_is_scaled_four_ways(visitor: Visitor, by: str):
    formula = keep(visitor)
    texts, meat_kg = MADE[by]
    page = visitor.fill(f"{formula}/batch/{by}", **texts)
    begun = visitor.fact(page.saved)
    assert isinstance(begun, BatchStarted)
    assert begun.meat_kg == pytest.approx(meat_kg, rel=1e-4)
    assert (begun.scaled_by, begun.formula) == (by, formula.split("/")[-1])
    assert page.path.startswith(f"/batches/{page.saved}/sheet")


@pytest.mark.parametrize("by", MADE)
def test_the_result_is_shown_before_the_batch_is_begun(visitor: Visitor, by: str):
    formula = keep(visitor)
    page = visitor.get(f"{formula}/batch/{by}", figures="1", name="Try", density="1.05", **MADE[by][0])
    assert set(page.figures) == {"meat", "raw", "finished"}
    assert len(visitor.book) == 1


def test_a_batch_may_be_made_in_pounds(visitor: Visitor):
    visitor.settings(units="us")
    page = visitor.fill(f"{keep(visitor)}/batch/meat", meat_kg="22 lb")
    assert visitor.fact(page.saved).meat_kg == pytest.approx(22 * 0.45359237)


def test_a_batch_keeps_its_version_when_the_formula_is_changed(visitor: Visitor):
    formula = keep(visitor)
    batch = visitor.fill(f"{formula}/batch/meat", meat_kg="10").path.partition("/sheet")[0]
    visitor.fill(f"{formula}/change", **{"meat-1-share": "70", "meat-2-share": "30"})
    assert "8 000 g" in visitor.get(f"{batch}/sheet").text.replace("\u00a0", " ")
    assert "version 1" in visitor.get(formula).text


def test_a_batch_corrected_stays_the_batch_of_its_formula(visitor: Visitor):
    page = visitor.fill(f"{keep(visitor)}/batch/meat", meat_kg="10")
    before = visitor.fact(page.saved)
    visitor.fill(f"/entries/{page.saved}/correct", meat_kg="9")
    after = visitor.fact(page.saved)
    assert (after.meat_kg, after.formula, after.scaled_by) == (9.0, before.formula, "meat")


def test_a_whole_muscle_is_not_scaled_by_casings(visitor: Visitor):
    assert "casings" not in visitor.get(f"{keep(visitor, 'rubbed-loin')}/batch").text


def test_a_way_of_scaling_there_is_not_is_not_found(visitor: Visitor):
    assert visitor.get(f"{keep(visitor)}/batch/guess").status == 404


def test_a_batch_leads_to_its_version_even_where_that_was_taken_back(visitor: Visitor):
    formula = keep(visitor)
    changed = visitor.fill(f"{formula}/change", name="Juniper finer")
    batch = visitor.fill(f"{formula}/batch/meat", meat_kg="10").path.partition("/sheet")[0]
    visitor.send(visitor.get(formula, saved=changed.saved).form("/undo"))
    link = next(each["href"] for each in visitor.get(f"{batch}/sheet").all("a") if formula in each["href"])
    assert "A deleted version" in visitor.get(link).text
