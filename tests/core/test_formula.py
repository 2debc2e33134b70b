"""Formulas: what one may be, how it scales, what it is made of, what it costs."""

import pytest
from attrs import evolve

from core.mix import balance, scaling
from core.mix.composition import CUTS, made_of
from core.mix.cost import Bought, cost
from core.mix.examples import EXAMPLES, Example, example
from core.mix.formula import (
    CAUTION_TO_COME,
    FORMULA_CAUTIONS,
    Formula,
    Ingredient,
    Meat,
    portions,
)
from core.mix.formula_cure import made_of_cure, method_of, over_limit
from core.mix.ions import ION_IN_SODIUM_NITRITE
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange
from core.working import Figure
from tests.core.dosing import ppm
from tests.core.telling import in_words

LEAN = Meat("Shoulder {lean}", 0.75, 0.0714, "10072", 8.0)
FAT = Meat("Back fat", 0.25, 0.8869, "10004", 3.0)
SALT = Ingredient("Salt", "salt", 0.026, price_per_kg=1.0)
CURE = Ingredient("Curing salt", "cure", 0.002, nitrite=0.0625)
SALAMI = Formula("Juniper coarse", "fermented", (LEAN, FAT), (SALT, CURE))
BRINED = Formula(
    "Bay belly",
    "whole-muscle",
    (Meat("Belly", 1.0, 0.53, "10005"),),
    (Ingredient("Water", "water", 0.5), Ingredient("Salt", "salt", 0.04), Ingredient("Bay", "spice", 0.001)),
    brined=True,
)

every_example = pytest.mark.parametrize("given", EXAMPLES, ids=lambda given: given.key)


def by_key(figures: tuple[Figure, ...]) -> dict[str, Figure]:
    return {figure.key: figure for figure in figures}


def test_shares_that_do_not_make_a_whole_are_refused():
    with pytest.raises(OutOfRange, match="100 % together"):
        Formula("Half", "fermented", (LEAN,))


def test_a_formula_without_meat_is_refused():
    with pytest.raises(Missing):
        Formula("Bread", "fermented", ())


def test_two_curing_salts_are_refused():
    with pytest.raises(OutOfRange, match="one curing salt"):
        evolve(SALAMI, ingredients=(CURE, CURE))


def test_a_cure_that_no_curing_salt_is_is_refused():
    with pytest.raises(OutOfRange):
        evolve(SALAMI, ingredients=(evolve(CURE, nitrite=0.625),))


def test_every_row_has_a_key_of_its_own():
    assert [row.key for row in portions(SALAMI, 10)] == ["meat-1", "meat-2", "part-1", "part-2"]


def test_the_fat_of_the_block_is_the_meats_together():
    assert SALAMI.fat == pytest.approx(0.75 * 0.0714 + 0.25 * 0.8869)


def test_by_meat_takes_what_lies_on_the_table():
    assert [row.mass_kg for row in scaling.by_meat(SALAMI, 10).portions] == pytest.approx([7.5, 2.5, 0.26, 0.02])


def test_by_raw_mass_all_rows_make_that_mass():
    assert sum(row.mass_kg for row in scaling.by_raw(SALAMI, 12).portions) == pytest.approx(12)


def test_by_finished_mass_the_loss_leaves_that_mass():
    scaled = scaling.by_finished(SALAMI, 6.5)
    assert (scaled.hung_kg, scaled.finished_kg) == pytest.approx((10, 6.5))


def test_by_casings_the_mix_fills_them():
    assert scaling.by_casings(SALAMI, 10, 0.06, 0.5).hung_kg == pytest.approx(10 * 3.14159265 / 4 * 0.0036 * 0.5 * 1050)


@pytest.mark.parametrize("count", [0, 2.5, 1e9])
def test_casings_are_counted_in_whole_ones(count: float):
    with pytest.raises(OutOfRange, match="whole number"):
        scaling.by_casings(SALAMI, count, 0.06, 0.5)


@pytest.mark.parametrize("way", [scaling.by_meat, scaling.by_raw, scaling.by_finished])
@pytest.mark.parametrize("mass", [0, -1, 1e9, float("nan")])
def test_a_weight_that_is_none_is_refused(way, mass: float):
    with pytest.raises(OutOfRange):
        way(SALAMI, mass)


def test_braces_in_a_name_do_not_break_the_working():
    assert any("Shoulder {lean}" in step.say(METRIC) for step in scaling.by_meat(SALAMI, 10).figures[0].working)


def test_a_brine_stays_in_the_tub():
    scaled = scaling.by_meat(BRINED, 10)
    assert scaled.hung_kg < 10.3 < sum(row.mass_kg for row in scaled.portions)


def test_a_brined_piece_ends_as_salty_in_its_water_as_the_brine():
    content = balance.raw(BRINED)
    assert content.salt / content.water == pytest.approx((0.04 - content.salt) / 0.5)


def test_a_brined_piece_takes_up_no_leaves():
    assert balance.uptake(BRINED, BRINED.ingredients[2]) == 0


def test_the_cure_brings_salt_too():
    assert balance.raw(SALAMI).salt == pytest.approx(0.026 + 0.002 * 0.9375)


def test_drying_takes_only_water():
    raw = balance.raw(SALAMI)
    dried = balance.dried(raw, 0.3)
    assert evolve(dried, water=raw.water) == raw


def test_more_than_its_water_cannot_be_lost():
    with pytest.raises(OutOfRange, match="It holds"):
        balance.dried(balance.raw(SALAMI), 0.7)


def test_the_balance_says_raw_and_dried():
    found = by_key(balance.figures(SALAMI, 0.35))
    assert found["fat-dried"].value == pytest.approx(found["fat"].value / 0.65)


def test_the_shares_of_the_balance_make_a_whole():
    found = by_key(balance.figures(SALAMI, 0.35))
    for suffix in ("", "-dried"):
        assert sum(found[part + suffix].value for part in balance.PARTS) == pytest.approx(1, abs=1e-12)


def test_a_cut_that_the_table_lacks_is_refused():
    with pytest.raises(OutOfRange, match="no row 99999"):
        balance.raw(evolve(SALAMI, meats=(Meat("Yak", 1.0, 0.05, "99999"),)))


def test_a_fatter_piece_of_a_cut_keeps_the_make_up_of_its_lean():
    cut = CUTS["10072"]
    assert made_of(cut, 0.3).water / made_of(cut, 0.3).protein == pytest.approx(cut.water / cut.protein)


def test_a_salami_of_the_example_dries_to_what_salami_in_print_holds():
    """USDA rows 07071 and 07926, pork salami: water 34.6 to 36.2 %, protein 21.7 to 22.6 %, fat 33.7 to 37 %."""
    found = by_key(balance.figures(EXAMPLES[0].formula, 0.35))
    assert found["water-dried"].value == pytest.approx(0.355, abs=0.06)
    assert found["protein-dried"].value == pytest.approx(0.22, abs=0.05)
    assert found["fat-dried"].value == pytest.approx(0.355, abs=0.06)


def test_costs_add_up():
    rows = portions(SALAMI, 10)
    figures = by_key(cost([Bought(row.name, row.mass_kg, row.price_per_kg) for row in rows], 10.28, 6.682))
    assert figures["cost"].value == pytest.approx(7.5 * 8 + 2.5 * 3 + 0.26)
    assert figures["cost-finished"].value == pytest.approx(figures["cost"].value / 6.682)


def test_a_cost_names_what_has_no_price():
    figures = cost([Bought("Salt", 0.3, 1.0), Bought("Pepper", 0.01, None)], 10, 6)
    assert in_words(figures[0].cautions) == ("Without what has no price: Pepper.",)


def test_without_any_price_there_is_no_cost():
    assert cost([Bought("Salt", 0.3, None)], 10, 6) == ()


@every_example
def test_an_example_stays_within_every_limit_we_know(given: Example):
    cure = given.formula.cure
    assert cure is not None
    made = ppm("nitrite", 1, cure.per_meat, cure.curing_salt)
    assert over_limit(given.formula) is None
    assert 100 <= made <= 120
    assert made * ION_IN_SODIUM_NITRITE <= 80


@every_example
def test_an_example_has_the_salt_that_fermented_meat_wants(given: Example):
    content = balance.raw(given.formula)
    assert content.salt >= (0.02 if given.formula.brined else 0.0265)


@every_example
def test_an_example_warns(given: Example):
    assert len(given.formula.cautions) >= 3
    assert set(given.formula.cautions) <= set(FORMULA_CAUTIONS)


def test_a_caution_of_a_newer_daybook_is_told_as_such():
    assert evolve(SALAMI, cautions=("beef", "to-come")).warnings == (FORMULA_CAUTIONS["beef"], CAUTION_TO_COME)


@every_example
def test_an_example_can_dry_as_far_as_it_says(given: Example):
    assert balance.figures(given.formula, given.formula.target_loss)


@every_example
def test_an_example_takes_its_fat_from_the_named_row(given: Example):
    assert all(meat.fat == pytest.approx(CUTS[meat.cut].fat / 100) for meat in given.formula.meats)


def test_a_brined_piece_is_held_to_the_rules_of_brine():
    assert [method_of(each.formula) for each in EXAMPLES[2:]] == ["comminuted", "dry-rub", "immersion"]


def test_a_formula_says_what_its_cure_makes():
    assert by_key(made_of_cure(SALAMI))["nitrite"].value == pytest.approx(125e-6)


def test_a_formula_without_cure_makes_nothing():
    assert made_of_cure(evolve(SALAMI, ingredients=(SALT,))) == ()


def test_a_formula_over_the_limit_is_told_with_its_dose():
    refusal = over_limit(evolve(SALAMI, ingredients=(evolve(CURE, per_meat=0.01),)))
    assert refusal is not None
    assert "625 ppm" in refusal.sentence
    assert "2.5 g of this curing salt to the kilogram of meat (0.25 % of the meat)" in refusal.sentence


def test_for_a_batch_the_dose_that_would_be_right_is_that_of_its_meat():
    refusal = over_limit(evolve(SALAMI, ingredients=(evolve(CURE, per_meat=0.01),)), meat_kg=4.0)
    assert refusal is not None
    assert ": 10 g of this curing salt (0.25 % of the meat)" in refusal.sentence


def test_an_example_is_found_by_its_key():
    assert example("spreadable") is not None
    assert example("cake") is None
