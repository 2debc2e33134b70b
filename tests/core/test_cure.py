"""Curing salt: exact figures, limits met and passed, and what no curing salt is."""

from fractions import Fraction

import pytest

from core.mix.curing_salt import CuringSalt
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from core.working import Figure
from tests.core.dosing import dose_for, from_dose, ppm
from tests.core.telling import in_words

CURE = CuringSalt(0.0625)
SLOW = CuringSalt(0.0625, 0.04)


def figure(figures: tuple[Figure, ...], key: str) -> Figure:
    return next(each for each in figures if each.key == key)


def refusal(call, *arguments) -> OutOfRange:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments)
    return caught.value


def test_31_grams_in_12_4_kilograms_make_156_ppm():
    made = figure(from_dose(12.4, 0.031, CURE, "comminuted"), "nitrite")
    assert made.show(METRIC) == "156 ppm"
    assert made.value == pytest.approx(float(Fraction(31, 1000) * Fraction(625, 10000) / Fraction(124, 10)), rel=1e-12)


def test_the_working_shows_the_numbers_put_in():
    made = figure(from_dose(12.4, 0.031, CURE, "comminuted"), "nitrite")
    assert [step.say(METRIC) for step in made.working] == [
        "Curing salt × its nitrite = sodium nitrite: 31 g × 6.25 % = 1.9375 g",
        "Sodium nitrite ÷ green weight of meat: 1.9375 g ÷ 12 400 g = 156.25 ppm".replace("12 400", "12\u00a0400"),
        "Limit for chopped meat, 9 CFR 424.21(c): ¼ oz to 100 lb = 156.25 ppm",
    ]


def test_the_working_keeps_one_unit_for_a_reader_in_pounds():
    made = figure(from_dose(12.4, 0.031, CURE, "comminuted"), "nitrite")
    assert made.working[1].say(US) == made.working[1].say(METRIC)


@pytest.mark.parametrize("meat_kg", [0.1, 0.3, 0.7, 1.0, 3.3, 12.4, 99.9])
def test_a_quarter_per_cent_of_a_6_25_salt_just_meets_the_limit(meat_kg: float):
    assert figure(from_dose(meat_kg, 0.0025 * meat_kg, CURE, "comminuted"), "nitrite").value == pytest.approx(156.25e-6)


def test_an_ounce_as_a_scale_shows_it_is_not_over_the_ounce_the_rule_prints():
    assert figure(from_dose(25 * 0.45359237, 0.02835, CURE, "comminuted"), "nitrite").value > 156.25e-6


def test_a_dose_a_thousandth_over_the_limit_is_refused():
    assert refusal(from_dose, 12.4, 0.031 * (1 + 1e-3), CURE, "comminuted").field == "dose"


def test_ten_times_the_dose_is_refused_with_what_it_makes_the_limit_and_the_right_dose():
    said = refusal(from_dose, 12.4, 0.31, CURE, "comminuted").sentence
    assert said == (
        "1\u00a0563 ppm of nitrite is too much. The limit for chopped meat is 156.25 ppm (¼ oz to 100 lb, "
        "9 CFR 424.21(c)): 31 g of this curing salt (0.25 % of the meat). Curing salt of 6.25 % nitrite is "
        "a concentrate, about 2.5 g to the kilogram; it is not all the salt."
    )


@pytest.mark.parametrize("strength", [0.004, 0.0055, 0.006, 0.0588, 0.0625])
def test_the_dose_a_refusal_names_passes(strength: float):
    salt = CuringSalt(strength)
    said = refusal(from_dose, 7.3, 1.0, salt, "comminuted").sentence
    grams = float(said.split("): ")[1].split(" g")[0])
    per_cent = float(said.split("curing salt (")[1].split(" %")[0])
    from_dose(7.3, grams / 1000, salt, "comminuted")
    from_dose(7.3, per_cent / 100 * 7.3, salt, "comminuted")


def test_nitrate_has_a_limit_of_its_own():
    assert "of nitrate" in refusal(from_dose, 1.0, 0.0044, CuringSalt(0.001, 0.4), "comminuted").sentence


def test_a_dry_rub_may_take_625_ppm():
    assert figure(from_dose(1.0, 0.01, CURE, "dry-rub"), "nitrite").value == pytest.approx(625e-6)


def test_625_ppm_in_ground_meat_is_refused():
    assert refusal(from_dose, 1.0, 0.01, CURE, "comminuted").field == "dose"


def test_nitrate_is_shown_where_there_is_some():
    assert figure(from_dose(10.0, 0.025, SLOW, "comminuted"), "nitrate").show(METRIC) == "100 ppm"


def test_nitrate_is_not_shown_where_there_is_none():
    assert "nitrate" not in {each.key for each in from_dose(10.0, 0.025, CURE, "comminuted")}


def test_the_ion_is_two_thirds_of_the_salt():
    ion = figure(from_dose(10.0, 0.025, CURE, "comminuted"), "nitrite_ion")
    assert ion.value == pytest.approx(156.25e-6 * 46.005 / 68.99476928)


def test_all_salt_counts_the_cures_own():
    total = figure(from_dose(10.0, 0.025, CURE, "comminuted", 0.25), "total_salt")
    assert total.value == pytest.approx(float((Fraction(25) * Fraction(9375, 10000) + 250) / 10000))


def test_all_salt_is_not_told_where_the_other_salt_is_unknown():
    assert "total_salt" not in {each.key for each in from_dose(10.0, 0.025, CURE, "comminuted")}


def test_dose_for_156_ppm():
    assert figure(dose_for(12.4, 156, CURE, "comminuted"), "cure").value == pytest.approx(
        float(Fraction(156, 10**6) * Fraction(124, 10) / Fraction(625, 10000))
    )


def test_dose_for_also_tells_the_share_of_the_meat():
    assert figure(dose_for(12.4, 156.25, CURE, "comminuted"), "share").value == pytest.approx(0.0025)


def test_more_nitrite_wanted_than_allowed_is_refused_on_its_own_field():
    assert refusal(dose_for, 12.4, 157, CURE, "comminuted").field == "wanted"


def test_a_salt_without_nitrite_makes_no_nitrite():
    assert refusal(dose_for, 12.4, 100, CuringSalt(0.0, 0.02), "comminuted").field == "nitrite"


def cautions(cure_kg: float, method="comminuted", salt: CuringSalt = CURE) -> str:
    return " ".join(in_words(figure(from_dose(1.0, cure_kg, salt, method), "nitrite").cautions))


def test_every_dose_says_that_nitrite_can_poison():
    assert "Nitrite can poison: weigh" in cautions(0.001)


def test_every_dose_defers_to_label_and_law():
    assert "label" in cautions(0.001)


def test_above_80_mg_of_ion_the_stricter_eu_limit_is_named():
    assert "(EU) 2023/2108" in cautions(0.00192)


def test_at_119_ppm_the_eu_limit_is_not_named():
    assert "2023/2108" not in cautions(0.0019)


def test_above_200_ppm_in_all_canada_is_named():
    assert "Canada is stricter" in cautions(0.0025, salt=SLOW)


def test_a_dose_below_50_ppm_is_cautioned_against_botulism():
    assert "botulism" in cautions(0.00079)


def test_a_dose_of_50_ppm_is_not():
    assert "botulism" not in cautions(0.0008)


def test_a_dry_rub_says_that_bacon_has_its_own_limits():
    assert "Bacon" in cautions(0.001, "dry-rub")


@pytest.mark.parametrize(
    ("parts", "field"),
    [
        ((6.25,), "nitrite"),
        ((-0.0625,), "nitrite"),
        ((float("nan"),), "nitrite"),
        ((1.0,), "nitrite"),
        ((0.11,), "nitrite"),
        ((0.000625,), "nitrite"),
        ((0.0,), "nitrite"),
        ((0.0625, -0.04), "nitrate"),
        ((0.0625, 0.95), "nitrate"),
        ((0.0625, 0.0, float("inf")), "other"),
    ],
)
def test_what_no_curing_salt_is(parts: tuple[float, ...], field: str):
    assert refusal(CuringSalt, *parts).field == field


def test_near_pure_nitrite_is_refused_with_the_reason():
    assert "poisons" in refusal(CuringSalt, 0.99).sentence


def test_a_fraction_typed_as_a_per_cent_is_refused_with_what_to_type():
    assert "6.25 for 6.25 %" in refusal(CuringSalt, 0.000625).sentence


@pytest.mark.parametrize("meat_kg", [0.0, -1.0, float("nan"), float("inf")])
def test_meat_that_weighs_nothing_is_refused(meat_kg: float):
    assert refusal(from_dose, meat_kg, 0.01, CURE, "comminuted").field == "meat_kg"


@pytest.mark.parametrize("cure_kg", [-0.001, float("nan"), float("inf")])
def test_a_dose_that_is_no_weight_is_refused(cure_kg: float):
    assert refusal(from_dose, 1.0, cure_kg, CURE, "comminuted").field == "dose"


def test_the_bare_formula_takes_the_fraction_not_the_per_cent():
    assert ppm("nitrite", 1.0, 0.001, CURE) == pytest.approx(62.5)


def test_the_bare_formula_of_nitrate_divides_by_the_meat():
    """FSIS Directive 7620.3, ch. 3: 1 g of a cure of 4 % in 2 kg makes 20 ppm."""
    assert ppm("nitrate", 2.0, 0.001, CuringSalt(0.0, 0.04)) == pytest.approx(20.0)
