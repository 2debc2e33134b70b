"""Each limit and each caution of the cure, with a row a hair below it and a hair above.

Limits are held to one part in 2000 (`SLACK`): 156.25 ppm pass up to 156.328. Values of the rules are pinned with their
sources in `tests/published/cure.csv`; here it is where each of them begins to bite.
"""

import math
from datetime import date

import pytest
from attrs import evolve

from core import sentence
from core.mix import limits
from core.mix.cure import CureMix, Dose, basis, dose_making_kg, require_charge
from core.mix.cure_dose import dosed_for, figures
from core.mix.cure_figures import ingoing
from core.mix.curing_salt import CuringSalt, mistaken_for_another, second_salt
from core.mix.licence import require_allowed
from core.mix.limit_check import LimitCheck, check_limits, largest_kg
from core.mix.rule import METHODS
from core.mix.rules import RULE_SETS, Curing, products_for, rules_for
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange
from core.working import Figure
from tests.core.telling import in_words, named

CURE = CuringSalt(0.0625)
NITRATE = CuringSalt(0.0, 0.04)
ION, NITRATE_ION = 46.005 / 68.99476928, 62.004 / 84.99376928
"""Of the sodium salts, by the standard atomic weights N 14.007, O 15.999, Na 22.98976928."""
HOWS = [
    Curing(key, product, method) for key in RULE_SETS for method in METHODS for product in products_for(key, method)
]
ROWS = [(how, rule) for how in HOWS for rule in how.held]
every_row = pytest.mark.parametrize(
    ("how", "rule"), ROWS, ids=[f"{how.rules}-{how.product}-{how.method}-{rule.substance}" for how, rule in ROWS]
)


def charge(nitrite_ppm: float = 0.0, nitrate_ppm: float = 0.0, meat_kg: float = 10.0, **more: float) -> CureMix:
    """So many ppm of the sodium salts on the green weight of ground or rubbed meat."""
    doses = [Dose(CuringSalt(0.05), nitrite_ppm * 1e-6 * meat_kg / 0.05)]
    if nitrate_ppm:
        doses.append(Dose(NITRATE, nitrate_ppm * 1e-6 * meat_kg / 0.04))
    return CureMix(meat_kg, tuple(doses), **more)


def figure(made: tuple[Figure, ...], key: str) -> Figure:
    return next(each for each in made if each.key == key)


def said(of: CureMix, how: Curing, key: str = "nitrite") -> str:
    return " ".join(in_words(figure(ingoing(of, how), key).cautions))


@every_row
@pytest.mark.parametrize(("of", "within"), [(1 + 4.9e-4, True), (1 + 5.1e-4, False), (1.0, True), (0.99, True)])
def test_a_row_lets_its_limit_pass_and_a_two_thousandth_more(how: Curing, rule, of: float, within: bool):
    assert LimitCheck(rule, rule.most_ppm * of).within is (within or rule.most_ppm == 0)


@every_row
def test_a_row_that_lets_none_pass_lets_none_pass(how: Curing, rule):
    if rule.most_ppm == 0:
        assert LimitCheck(rule, 0.0).within
        assert not LimitCheck(rule, 1e-6).within


@pytest.mark.parametrize(("ppm", "enough"), [(99.95025, True), (99.94975, False), (100.0, True)])
def test_the_least_of_a_row_is_held_alike(ppm: float, enough: bool):
    (rule,) = Curing("ca", "meat").held
    assert LimitCheck(rule, ppm).enough is enough


def test_a_row_without_a_least_is_always_enough():
    assert all(LimitCheck(rule, 0.0).enough for rule in Curing().held)


@pytest.mark.parametrize(
    ("how", "nitrite", "passes"),
    [
        (Curing(), 156.32, True), (Curing(), 156.34, False),
        (Curing("us", "meat", "dry-rub"), 625.3, True), (Curing("us", "meat", "dry-rub"), 625.32, False),
        (Curing("us", "bacon", "dry-rub"), 200.09, True), (Curing("us", "bacon", "dry-rub"), 200.11, False),
        (Curing("us", "home-mix"), 200.09, True), (Curing("us", "home-mix"), 200.11, False),
        (Curing("eu", "not-heated"), 80.03 / ION, True), (Curing("eu", "not-heated"), 80.05 / ION, False),
        (Curing("eu", "sterilised"), 55.02 / ION, True), (Curing("eu", "sterilised"), 55.03 / ION, False),
        (Curing("eu", "not-heated", on=date(2025, 10, 8)), 150.07, True),
        (Curing("eu", "not-heated", on=date(2025, 10, 8)), 150.08, False),
    ],
)  # fmt: skip
def test_a_charge_is_held_to_its_limit(how: Curing, nitrite: float, passes: bool):
    if passes:
        require_allowed(charge(nitrite), how, None, field="dose")
        return
    with pytest.raises(OutOfRange):
        require_allowed(charge(nitrite), how, None, field="dose")


def test_the_old_text_of_the_eu_begins_on_1_june_2013():
    """Reg. (EU) 1129/2011 applies from 1 June 2013 (from memory)."""
    assert rules_for("eu", "not-heated", "comminuted", date(2013, 5, 31)) == ()
    assert len(rules_for("eu", "not-heated", "comminuted", date(2013, 6, 1))) == 2


EU_NITRITE, EU_NITRATE = "80 mg/kg counted as nitrite ion", "90 mg/kg counted as nitrate ion"
CANADA = "nitrite and nitrate together may be at most 200 ppm"
FINISHED = "no more than 200 ppm of nitrite may be left in the finished product"
BOTULISM, LEAST = "Below 50 ppm nitrite is not counted on", "Canada asks for at least 100 ppm"
US, RUB, HOME = Curing(), Curing("us", "meat", "dry-rub"), Curing("us", "home-mix", "comminuted")
EU, CA = Curing("eu", "not-heated"), Curing("ca", "meat")


@pytest.mark.parametrize(
    ("how", "ppm", "words", "there"),
    [
        (US, 79.99 / ION, EU_NITRITE, False), (US, 80.01 / ION, EU_NITRITE, True), (EU, 80.01 / ION, EU_NITRITE, False),
        (US, 80.0 / ION, EU_NITRITE, False),
        (RUB, 200.09, FINISHED, False), (RUB, 200.11, FINISHED, True), (HOME, 200.05, FINISHED, False),
        (US, 49.98, BOTULISM, False), (US, 49.97, BOTULISM, True), (US, 50.0, BOTULISM, False),
        (EU, 49.97, BOTULISM, True), (CA, 49.97, BOTULISM, True),
        (HOME, 156.32, "For an inspected plant the limit would be lower", False),
        (HOME, 156.34, "For an inspected plant the limit would be lower", True),
        (US, 156.0, "For an inspected plant the limit would be lower", False),
    ],
)  # fmt: skip
def test_a_caution_stands_from_its_limit_on(how: Curing, ppm: float, words: str, there: bool):
    assert (words in said(charge(ppm), how)) is there


@pytest.mark.parametrize(
    ("ppm", "there"), [(89.99 / NITRATE_ION, False), (90.0 / NITRATE_ION, False), (90.01 / NITRATE_ION, True)]
)
def test_nitrate_is_cautioned_about_from_the_90_of_the_eu_on(ppm: float, there: bool):
    assert (EU_NITRATE in said(charge(50, ppm), US, "nitrate")) is there
    assert EU_NITRATE not in said(charge(50, ppm), EU, "nitrate")


def on_mixture(both_ppm: float, besides_kg: float = 1.0) -> CureMix:
    """So many ppm of nitrite on the whole raw mixture, the cure's own weight counted."""
    cure_kg = both_ppm * 1e-6 * (10.0 + besides_kg) / (0.05 - both_ppm * 1e-6)
    return CureMix(10.0, (Dose(CuringSalt(0.05), cure_kg),), 0.3, other_kg=besides_kg - 0.3)


@pytest.mark.parametrize(("ppm", "there"), [(200.09, False), (200.11, True)])
def test_canada_is_compared_on_the_whole_raw_mixture(ppm: float, there: bool):
    made = on_mixture(ppm)
    assert basis(made, "dry-rub", "meat").ppm(made, made.substance_kg("nitrite", "sodium")) > 219
    assert (CANADA in said(made, RUB)) is there


@pytest.mark.parametrize(("ppm", "there"), [(99.96, False), (99.94, True)])
def test_the_hundred_of_canada_is_counted_on_the_whole_raw_mixture(ppm: float, there: bool):
    assert (LEAST in said(on_mixture(ppm), US)) is there


@pytest.mark.parametrize(("ion", "there"), [(79.99, False), (80.01, True)])
def test_beside_canadas_rules_the_eu_is_compared_on_the_green_weight(ion: float, there: bool):
    made = charge(ion / ION, other_salt_kg=0.3, other_kg=0.7)
    mixture = figure(ingoing(made, CA), "nitrite_ion").value * 1e6
    assert mixture < 74
    assert (EU_NITRITE in said(made, CA)) is there


def test_nitrate_counts_to_the_hundred_and_the_two_hundred_of_canada():
    assert LEAST not in said(charge(60, 45), US)
    assert LEAST in said(charge(60, 30), US)
    assert CANADA in said(charge(150, 60), US)
    assert CANADA not in said(charge(150, 40), US)


def test_what_canada_counts_is_named_where_it_is_asked_and_where_it_is_shown():
    made = on_mixture(150)
    assert named(figure(figures(made, CA), "nitrite")) == "Nitrite going in, on the whole raw mixture"
    assert named(figure(figures(made, CA), "together")).startswith(
        "Nitrite and nitrate together, on the whole raw mixture"
    )
    assert (
        named(figure(figures(charge(100), US), "nitrite")) == "Nitrite going in, of 156 ppm allowed by 9 CFR 424.21(c)"
    )


@pytest.mark.parametrize(("salt", "there"), [(0.2475, True), (0.24999, True), (0.25, False), (0.2500001, False)])
def test_the_2_5_per_cent_of_canada(salt: float, there: bool):
    made = CureMix(10.0, (Dose(CuringSalt(0.05, other=0.95), 0.02),), salt)
    words = "Canada asks for at least 2.5 % salt in fermented meat"
    assert (words in said(made, US, "total_salt")) is there


@pytest.mark.parametrize("method", list(METHODS))
def test_whole_meat_by_us_rules_is_told_of_bacon_however_it_is_cured(method):
    made = CureMix(5.0, (Dose(CURE, 0.005),), 0.2, water_kg=5.0, taken=0.1)
    words = "Bacon has lower limits of its own (9 CFR 424.22(b)) and takes no nitrate (9 CFR 424.21(c)) in the US."
    assert (words in said(made, Curing("us", "meat", method))) is (method != "comminuted")


@pytest.mark.parametrize(
    ("how", "title"),
    [
        (US, "FSIS Directive 7620.3, Processing Inspectors' Calculations Handbook"),
        (CA, "CFIA, Meat Hygiene Manual of Procedures, archived"),
        (EU, "Reg. (EC) 1333/2008, Annex II, part E, consolidated 18 August 2026, with Reg. (EU) 2023/2108"),
    ],
)
def test_each_rule_set_is_named_for_its_own_reckoning(how: Curing, title: str):
    assert sentence.said(figure(figures(charge(100), how), "nitrite").source.title).say(METRIC) == title
    assert sentence.said(figure(dosed_for(charge(0.0), how, 100.0), "cure").source.title).say(METRIC) == title


def test_bacon_itself_is_not_told_of_bacon():
    made = CureMix(5.0, (Dose(CURE, 0.005),), 0.2)
    assert "Bacon has" not in said(made, Curing("us", "bacon", "dry-rub"))
    assert "Bacon has" not in said(made, Curing("eu", "dry-bacon", "dry-rub"))


def test_a_belly_in_its_skin_is_held_to_a_trade_figure_that_is_called_one():
    with pytest.raises(OutOfRange) as caught:
        figures(charge(181), Curing("us", "bacon-rind", "dry-rub"))
    assert "180 ppm (200 ppm, potassium salt 246 ppm, less a tenth, trade figure, from 9 CFR 424.22(b))" in (
        caught.value.sentence
    )


def test_the_ban_on_nitrate_in_bacon_stands_in_424_21_c():
    (rule,) = (rule for rule in Curing("us", "bacon", "dry-rub").held if rule.substance == "nitrate")
    assert (rule.cite, rule.source.title) == ("9 CFR 424.21(c)", "9 CFR 424.21(c), chart of substances")


def test_the_numbers_that_others_ask_for_here():
    """FSIS-GD-2023-0002 p. 38 (50; 100 and 2.5 % quoted from CFIA 2020); Reg. (EU) 2023/2108; 9 CFR 424.21(c)."""
    assert (limits.BOTULISM_LEAST_PPM, limits.CANADA_LEAST_PPM, limits.CANADA_LEAST_SALT) == (50, 100, 0.025)
    assert (limits.EU_NITRITE_ION_PPM, limits.EU_NITRATE_ION_PPM) == (80, 90)
    assert (limits.CANADA_MOST_PPM, limits.US_FINISHED_PPM, limits.SLACK) == (200, 200, 5e-4)


def test_both_of_canada_are_each_salt_by_its_weight():
    salt = CuringSalt(0.05, 0.04, nitrite_of="potassium", nitrate_of="potassium")
    (held,) = check_limits(CureMix(10.0, (Dose(salt, 0.01),)), CA)
    assert held.ppm == pytest.approx(0.01 * 0.09 / 10.01 * 1e6)


HEAVY = ("other_salt_kg", "water_kg", "sugar_kg", "other_kg", "accelerator_kg")


@pytest.mark.parametrize("key", HEAVY)
@pytest.mark.parametrize(("kg", "stands"), [(-1e-9, False), (0.0, True), (9_999.9, True), (10_000.0, False)])
def test_what_goes_in_weighs_from_nothing_to_less_than_10_tonnes(key: str, kg: float, stands: bool):
    made = evolve(charge(100), **{key: kg})
    if stands:
        assert require_charge(made, "comminuted") is None
        return
    with pytest.raises(OutOfRange) as caught:
        require_charge(made, "comminuted")
    assert caught.value.field == key


@pytest.mark.parametrize(("meat_kg", "stands"), [(0.0, False), (1e-6, True), (9_999.9, True), (10_000.0, False)])
def test_meat_weighs_more_than_nothing_and_less_than_10_tonnes(meat_kg: float, stands: bool):
    made = CureMix(meat_kg, (Dose(CURE, 0.0),))
    if stands:
        assert require_charge(made, "comminuted") is None
        return
    with pytest.raises(OutOfRange) as caught:
        require_charge(made, "comminuted")
    assert caught.value.field == "meat_kg"


@pytest.mark.parametrize(("kg", "stands"), [(-1e-9, False), (0.0, True), (9_999.9, True), (10_000.0, False)])
def test_a_dose_weighs_from_nothing_to_less_than_10_tonnes(kg: float, stands: bool):
    made = CureMix(10.0, (Dose(CURE, kg),))
    if stands:
        assert require_charge(made, "comminuted") is None
        return
    with pytest.raises(OutOfRange) as caught:
        require_charge(made, "comminuted")
    assert caught.value.field == "dose"


@pytest.mark.parametrize(
    ("nitrite", "stands"), [(0.000999, False), (0.001, True), (0.1, True), (0.1001, False), (0.0, False)]
)
def test_a_curing_salt_holds_a_tenth_of_a_per_cent_to_ten_of_nitrite(nitrite: float, stands: bool):
    if stands:
        assert CuringSalt(nitrite).nitrite == nitrite
        return
    with pytest.raises(OutOfRange) as caught:
        CuringSalt(nitrite)
    assert caught.value.field == "nitrite"


def test_saltpetre_is_all_nitrate():
    assert CuringSalt(0.0, 1.0).table_salt == 0.0


@pytest.mark.parametrize(
    "parts", [(1.001, 0.0, 0.0), (0.0, 1.001, 0.0), (0.05, 0.0, 1.001), (-1e-9, 0.04, 0.0), (0.05, 0.0, -1e-9)]
)
def test_a_part_of_a_curing_salt_is_none_of_it_to_all_of_it(parts: tuple[float, float, float]):
    with pytest.raises(OutOfRange, match="Each part of a curing salt must be between 0 and 100 %"):
        CuringSalt(*parts)


def test_a_curing_salt_may_hold_as_much_nitrate_as_nitrite():
    assert CuringSalt(0.05, 0.05).table_salt == pytest.approx(0.9)


@pytest.mark.parametrize(
    ("substance", "alkali", "ion"),
    [
        ("nitrite", "sodium", ION), ("nitrite", "potassium", 46.005 / 85.1033),
        ("nitrate", "sodium", NITRATE_ION), ("nitrate", "potassium", 62.004 / 101.1023),
    ],
)  # fmt: skip
def test_each_salt_counts_its_ion(substance, alkali, ion: float):
    """By the standard atomic weights N 14.007, O 15.999, Na 22.98976928, K 39.0983."""
    salt = CuringSalt(0.05, 0.04, nitrite_of=alkali, nitrate_of=alkali)
    assert salt.strength(substance, "ion") == pytest.approx({"nitrite": 0.05, "nitrate": 0.04}[substance] * ion)


def test_a_second_salt_holds_no_nitrate_where_its_label_says_0():
    assert second_salt(0.0625, 0.0) == CURE


@pytest.mark.parametrize(("nitrate", "stands"), [(0.000999, False), (0.001, True), (0.0, True)])
def test_nitrate_in_a_curing_salt_is_a_tenth_of_a_per_cent_at_least(nitrate: float, stands: bool):
    if stands:
        assert CuringSalt(0.0625, nitrate).nitrate == nitrate
        return
    with pytest.raises(OutOfRange) as caught:
        CuringSalt(0.0625, nitrate)
    assert caught.value.field == "nitrate"


@pytest.mark.parametrize(("other", "stands"), [(0.9375, True), (0.93751, False)])
def test_the_parts_of_a_curing_salt_are_no_more_than_the_whole(other: float, stands: bool):
    if stands:
        assert CuringSalt(0.0625, 0.0, other).table_salt == pytest.approx(0.0, abs=1e-12)
        return
    with pytest.raises(OutOfRange) as caught:
        CuringSalt(0.0625, 0.0, other)
    assert caught.value.field == "nitrate"


@pytest.mark.parametrize(
    ("salt", "share", "word"),
    [
        (0.0101, 0.01, ""), (0.0101, 0.010001, "concentrate"), (0.01, 0.010001, ""),
        (0.01, 0.00499, "complete mix"), (0.01, 0.005, ""), (0.01, 0.0, ""), (0.0101, 0.00499, ""),
    ],
)  # fmt: skip
def test_when_one_kind_of_cure_is_dosed_like_the_other(salt: float, share: float, word: str):
    told = mistaken_for_another(CuringSalt(salt), share)
    assert bool(word) is (told is not None)
    assert told is None or word in told.say(METRIC)


@pytest.mark.parametrize(("ppm", "stands"), [(-0.001, False), (0.0, True), (156.0, True)])
def test_what_is_wanted_is_0_ppm_or_more(ppm: float, stands: bool):
    if stands:
        assert dosed_for(charge(0.0), US, ppm)[0].value == pytest.approx(ppm * 1e-6 * 10 / 0.05)
        return
    with pytest.raises(OutOfRange) as caught:
        dosed_for(charge(0.0), US, ppm)
    assert caught.value.field == "wanted"


@pytest.mark.parametrize(
    ("ppm", "answer"), [(1e6, "less than 1,000,000 ppm"), (1e6 - 1, "The limit for"), (-1.0, "0 ppm or more")]
)
def test_more_than_the_whole_is_not_held_to_a_limit_but_no_answer_at_all(ppm: float, answer: str):
    with pytest.raises(OutOfRange, match=answer):
        dosed_for(charge(0.0), US, ppm)


@pytest.mark.parametrize(
    ("ppm", "answer"), [(125_000.0, "No weight of this curing salt"), (124_999.0, "The limit for")]
)
def test_a_dose_of_10_tonnes_is_no_weight(ppm: float, answer: str):
    """125 000 ppm of 5000 kg are 625 kg of nitrite: 10 000 kg of a cure of 6.25 %."""
    with pytest.raises(OutOfRange, match=answer):
        dosed_for(CureMix(5000.0, (Dose(CURE, 0.0),)), US, ppm)


def test_a_first_cure_without_nitrate_is_not_held_back_by_the_nitrate_of_the_second():
    """156.25 ppm, 9 CFR 424.21(c), in 10 kg with a cure of 5 %; the 2000 ppm of nitrate are over their own limit."""
    assert largest_kg(charge(0.0, 2000.0), US) == pytest.approx(156.25e-6 * 10 / 0.05)


def test_too_much_ascorbate_is_refused_with_what_it_makes_and_the_limit():
    """⅞ oz to 100 lb: 9 CFR 424.21(c)."""
    with pytest.raises(OutOfRange) as caught:
        require_allowed(charge(100.0, accelerator_kg=0.006), US, None, field="dose")
    assert caught.value.sentence == (
        "600 ppm of ascorbate or erythorbate is too much. The limit for cured meat is 546.875 ppm (⅞ oz to 100 lb, 9 "
        "CFR 424.21(c))."
    )


def test_it_is_the_first_cure_that_may_be_taken_for_another():
    both = CureMix(10.0, (Dose(CURE, 0.15), Dose(CuringSalt(0.005), 0.01)))
    with pytest.raises(OutOfRange, match=r"Curing salt of 6.25 % nitrite is a concentrate"):
        require_allowed(both, US, None, field="dose")


@pytest.mark.parametrize(("ppm", "kg"), [(0.0, 0.0), (1e-9, math.inf), (100.0, math.inf)])
def test_no_weight_of_a_salt_without_nitrite_makes_any_but_none_of_it_makes_none(ppm: float, kg: float):
    (nitrite,) = (rule for rule in US.held if rule.substance == "nitrite")
    assert dose_making_kg(CureMix(10.0, (Dose(NITRATE, 0.01),)), "comminuted", nitrite, ppm) == kg


@pytest.mark.parametrize("method", ["pump", "pick-up"])
@pytest.mark.parametrize("on", ["meat", "mixture"])
def test_no_share_of_the_brine_is_supposed_where_none_is_known(method, on):
    assert basis(CureMix(5.0, (Dose(CURE, 0.2),), water_kg=10.0), method, on).share == 0.0


@pytest.mark.parametrize("method", ["immersion", "pick-up", "pump"])
@pytest.mark.parametrize(("water_kg", "stands"), [(0.0, False), (1e-6, True)])
def test_a_brine_has_water(method, water_kg: float, stands: bool):
    made = CureMix(5.0, (Dose(CURE, 0.2),), water_kg=water_kg, taken=0.1)
    if stands:
        assert require_charge(made, method) is None
        return
    with pytest.raises(Missing) as caught:
        require_charge(made, method)
    assert caught.value.field == "water_kg"


@pytest.mark.parametrize(("method", "word"), [("pump", "pump"), ("pick-up", "pick-up")])
def test_the_share_of_the_brine_is_asked_for_by_its_name(method, word: str):
    with pytest.raises(Missing, match=f"Enter the {word}: brine in the meat"):
        require_charge(CureMix(5.0, (Dose(CURE, 0.2),), water_kg=10.0), method)


@pytest.mark.parametrize(
    ("taken", "said"), [(-0.5, "more than 0"), (0.0, "more than 0"), (0.0099, "is none"), (1.01, "at most 100 %")]
)
def test_a_share_of_the_brine_that_cannot_be_is_refused_with_its_reason(taken: float, said: str):
    with pytest.raises(OutOfRange, match=said):
        require_charge(CureMix(5.0, (Dose(CURE, 0.2),), water_kg=10.0, taken=taken), "pump")
