"""Laws of the mixing table: scaling conserves the formula, mass closes, fat is met, a blend stays within its bound."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from core.mix import balance, scaling
from core.mix.blend import blend_for
from core.mix.composition import CUTS
from core.mix.formula import Formula, Ingredient, Meat
from core.mix.pearson import shares_for
from core.mix.weighing import aim_kg, weighable, worst
from core.quantities import METRIC
from core.refusals import OutOfRange

CLOSES = 1e-9
share = st.floats(0.01, 1.0)
fat = st.floats(0.0, 1.0)
mass = st.floats(0.05, 900.0)
OTHERS = ("salt", "sugar", "water", "spice", "culture", "other")


@st.composite
def formulas(draw: st.DrawFn) -> Formula:
    weights = draw(st.lists(share, min_size=1, max_size=6))
    meats = tuple(
        Meat(f"Meat {at}", weight / sum(weights), draw(fat), draw(st.sampled_from(sorted(CUTS))))
        for at, weight in enumerate(weights)
    )
    others = draw(st.lists(st.tuples(st.sampled_from(OTHERS), st.floats(0.0, 0.5)), max_size=8))
    parts = tuple(Ingredient(f"Part {at}", role, dose) for at, (role, dose) in enumerate(others))
    cure = Ingredient("Cure", "cure", draw(st.floats(0, 0.0025)), nitrite=0.0625)
    return Formula(
        "Any", "fermented", meats, (*parts, cure), target_loss=draw(st.floats(0, 0.7)), brined=draw(st.booleans())
    )


def scaled(formula: Formula, way: str, size: float) -> scaling.Scaled:
    match way:
        case "meat":
            return scaling.by_meat(formula, size)
        case "raw":
            return scaling.by_raw(formula, size)
        case "finished":
            return scaling.by_finished(formula, size)
        case _:
            return scaling.by_casings(formula, 1 + int(size), 0.05, 0.4)


ways = st.sampled_from(("meat", "raw", "finished", "casings"))


@given(formulas(), ways, mass)
def test_scaling_by_any_way_conserves_the_formula(formula: Formula, way: str, size: float):
    found = scaled(formula, way, size)
    wanted = [*(meat.share for meat in formula.meats), *(each.per_meat for each in formula.ingredients)]
    assert [row.mass_kg / found.meat_kg for row in found.portions] == pytest.approx(wanted, abs=CLOSES)


@given(formulas(), ways, mass)
def test_the_meats_make_the_meat_block(formula: Formula, way: str, size: float):
    found = scaled(formula, way, size)
    meats = sum(row.mass_kg for row in found.portions if row.role == "meat")
    assert meats == pytest.approx(found.meat_kg, rel=CLOSES)


@given(formulas(), mass)
def test_every_way_leads_back_to_the_same_meat(formula: Formula, meat_kg: float):
    found = scaling.by_meat(formula, meat_kg)
    assert scaling.by_raw(formula, found.hung_kg).meat_kg == pytest.approx(meat_kg, rel=CLOSES)
    assert scaling.by_finished(formula, found.finished_kg).meat_kg == pytest.approx(meat_kg, rel=CLOSES)


@given(formulas(), mass)
def test_what_is_weighed_is_what_hangs_unless_it_lies_in_brine(formula: Formula, meat_kg: float):
    found = scaling.by_meat(formula, meat_kg)
    weighed = sum(row.mass_kg for row in found.portions)
    if formula.brined:
        assert found.hung_kg <= weighed * (1 + CLOSES)
    else:
        assert found.hung_kg == pytest.approx(weighed, rel=CLOSES)


@given(formulas())
def test_the_parts_of_the_raw_mix_close_to_its_mass(formula: Formula):
    content = balance.raw(formula)
    assert sum(balance.parts(content)) == pytest.approx(content.total, abs=CLOSES)
    assert all(part >= -CLOSES for part in balance.parts(content))
    if not formula.brined:
        assert content.total == pytest.approx(1 + sum(each.per_meat for each in formula.ingredients), rel=CLOSES)


@given(formulas(), st.floats(0, 0.75))
def test_drying_takes_only_water_and_closes(formula: Formula, loss: float):
    content = balance.raw(formula)
    try:
        dried = balance.dried(content, loss)
    except OutOfRange:
        assert loss * content.total > content.water
        return
    assert dried.total == pytest.approx(content.total * (1 - loss), rel=CLOSES)
    assert balance.parts(dried)[1:] == balance.parts(content)[1:]


@given(formulas(), st.floats(0, 1))
def test_the_wanted_fat_is_met_by_whole_and_positive_shares(formula: Formula, way: float):
    fats = [meat.fat for meat in formula.meats]
    wanted = min(fats) + way * (max(fats) - min(fats))
    shares = shares_for(fats, [meat.share for meat in formula.meats], wanted)
    made = sum(fat * share for fat, share in zip(fats, shares, strict=True))
    assert made == pytest.approx(wanted, abs=CLOSES)
    assert all(0 <= each <= 1 + CLOSES for each in shares)


@given(st.floats(1e-4, 10), st.sampled_from((1e-5, 1e-4, 1e-3, 5e-3)), st.booleans())
def test_whatever_lies_within_a_division_of_the_aim_is_within_the_worst(dose: float, division: float, down: bool):
    aimed = aim_kg(dose, division, never_up=down)
    for shown in (aimed - division, aimed + division):
        assert abs(shown / dose - 1) <= worst(dose, division, never_up=down) + CLOSES


@given(st.floats(1e-4, 0.02), st.floats(0, 20), st.sampled_from((1e-4, 1e-3)))
def test_a_blend_holds_the_dose_whichever_way_its_weighings_are_out(dose: float, times: float, division: float):
    assume(not weighable(dose, division))
    salt = dose * times
    try:
        blend = blend_for(dose, salt, division)
    except OutOfRange:
        return
    total = blend.cure_kg + blend.salt_kg
    for out in (-division, division):
        got = (blend.take_kg + out) * (blend.cure_kg + out) / total
        assert abs(got / dose - 1) <= 0.05 + CLOSES
    assert blend.taken_salt_kg <= salt * (1 + 0.05) + division


def test_pure_fat_takes_nothing_out_of_a_dry_brine():
    fat_alone = Formula("Fat", "whole-muscle", (Meat("Back", 1.0, 1.0, "10004"),), (), brined=True)
    assert balance.uptake(fat_alone, Ingredient("Salt", "salt", 0.03)) == 0


def test_a_meat_without_salt_has_no_line_in_the_salt():
    formula = Formula(
        "Plain", "fermented", (Meat("Shoulder", 1.0, 0.2, "10074"),), (Ingredient("Salt", "salt", 0.025),)
    )
    (salt,) = [each for each in balance.figures(formula, 0.3) if each.key == "salt"]
    assert not [step for step in salt.working if "Shoulder" in step.say(METRIC)]
