"""Every way of curing, by exact fractions; two cures at once, potassium salts, and what is refused or licensed."""

from fractions import Fraction

import pytest
from attrs import evolve

from core.mix.cure import CureMix, Dose
from core.mix.cure_dose import dosed, dosed_for, figures, to_weigh
from core.mix.cure_notes import IN_WATER_ONLY
from core.mix.curing_salt import CuringSalt, mistaken_for_another
from core.mix.ingoing import Ingoing
from core.mix.licence import Licence, ceilings, over_ceiling
from core.mix.limit_check import check_limits, largest_kg
from core.mix.rule import METHODS
from core.mix.rules import Curing
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange
from core.working import Figure
from tests.core.dosing import dose_for, from_dose
from tests.core.telling import in_words, named

CURE = CuringSalt(0.0625)
WEAK = CuringSalt(0.005)
US, EU, CA = Curing(), Curing("eu", "not-heated"), Curing("ca", "meat")
PUMP = Curing("us", "meat", "pump")
TRIAL = Licence("A trial", "letter 12", "Ana", "Food act, section 9", "nitrite", 190.0)


def brine(cure_kg: float = 0.24, salt: CuringSalt = CURE, **more: float) -> CureMix:
    masses = {"other_salt_kg": 1.2, "water_kg": 10.0, "sugar_kg": 0.4, "taken": 0.1} | more
    return CureMix(5.0, (Dose(salt, cure_kg),), **masses)


def figure(made: tuple[Figure, ...], key: str) -> Figure:
    return next(each for each in made if each.key == key)


def refusal(call, *arguments, **named) -> OutOfRange:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments, **named)
    return caught.value


def test_pumped_meat_takes_the_pumps_share_of_the_brine():
    exact = Fraction(240) * Fraction(625, 10000) * Fraction(1, 10) / (Fraction(10000) + 1200 + 400 + 240)
    assert figure(figures(brine(), PUMP), "nitrite").value == pytest.approx(float(exact), rel=1e-12)


def test_meat_in_brine_by_pick_up_is_reckoned_like_pumped_meat():
    by_pick_up = figure(figures(brine(), Curing("us", "meat", "pick-up")), "nitrite").value
    assert by_pick_up == figure(figures(brine(), PUMP), "nitrite").value


def test_meat_in_brine_to_the_end_is_divided_by_meat_and_brine():
    exact = Fraction(40) * Fraction(625, 10000) / (Fraction(5000) + 10000 + 1200 + 400 + 40)
    made = figures(brine(0.04), Curing("us", "meat", "immersion"))
    assert figure(made, "nitrite").value == pytest.approx(float(exact), rel=1e-12)


def test_canada_divides_by_the_whole_raw_mixture():
    charge = CureMix(8.0, (Dose(CURE, 0.02),), 0.2, other_kg=0.4)
    exact = Fraction(20) * Fraction(625, 10000) / (8000 + 20 + 200 + 400)
    assert figure(figures(charge, CA), "together").value == pytest.approx(float(exact), rel=1e-12)


def test_canada_counts_pumped_meat_with_what_was_pumped_in():
    exact = Fraction(15) * Fraction(1, 10) / Fraction(11, 10) / 11840
    made = figures(brine(), Curing("ca", "meat", "pump"))
    assert figure(made, "together").value == pytest.approx(float(exact), rel=1e-12)


def test_the_same_dose_is_fewer_ppm_in_canada_than_in_the_us():
    charge = CureMix(10.0, (Dose(CURE, 0.02),), 0.25, other_kg=0.5)
    assert figure(figures(charge, CA), "nitrite").value < figure(figures(charge, US), "nitrite").value


def test_dry_salting_counts_all_that_was_rubbed_on():
    made = figure(from_dose(5.0, 0.05, CURE, "dry-salting"), "nitrite")
    assert made.value == pytest.approx(625e-6)


def test_dry_salting_says_that_its_salt_is_a_most():
    total = figure(from_dose(5.0, 0.04, CURE, "dry-salting", 0.3), "total_salt")
    assert any(said.startswith("At most") for said in in_words(total.cautions))


def test_brine_leaves_the_pumps_share_of_its_salt_in_the_meat():
    exact = (Fraction(1200) + 240 * Fraction(9375, 10000)) * Fraction(1, 10) / 11840
    assert figure(figures(brine(), PUMP), "total_salt").value == pytest.approx(float(exact), rel=1e-12)


@pytest.mark.parametrize("method", list(METHODS))
def test_what_all_the_salt_cannot_say_is_said_where_it_is_so(method):
    said = in_words(figure(figures(brine(0.01), Curing("us", "meat", method)), "total_salt").cautions)
    assert (IN_WATER_ONLY in said) is (method == "immersion")
    assert any(each.startswith("At most:") for each in said) is (method == "dry-salting")


def test_brine_leaves_the_pumps_share_of_the_cures_own_salt_in_the_meat():
    """0.1 × 0.24 kg × 93.75 % ÷ 11.84 kg of brine."""
    own = figure(figures(brine(), PUMP), "cure_salt").value
    assert own == pytest.approx(float(Fraction("0.1") * Fraction("0.24") * Fraction("0.9375") / Fraction("11.84")))


def test_two_cures_at_once_are_added_up():
    charge = CureMix(10.0, (Dose(CURE, 0.012), Dose(WEAK, 0.1)))
    exact = (12 * Fraction(625, 10000) + 100 * Fraction(5, 1000)) / 10000
    assert figure(figures(charge, US), "nitrite").value == pytest.approx(float(exact), rel=1e-12)


def test_two_cures_are_over_together_though_neither_is_alone():
    charge = CureMix(10.0, (Dose(CURE, 0.02), Dose(CURE, 0.02)))
    assert "250 ppm of nitrite" in refusal(figures, charge, US).sentence


def test_potassium_nitrite_is_counted_mole_for_mole_as_sodium_nitrite():
    salt = CuringSalt(0.0625, nitrite_of="potassium")
    made = figure(from_dose(10.0, 0.02, salt, "comminuted"), "nitrite")
    assert made.value == pytest.approx(125e-6 * 68.99476928 / 85.1033)


def test_the_us_chart_holds_a_potassium_salt_by_its_own_weight():
    salt = CuringSalt(0.0625, nitrite_of="potassium")
    (nitrite, *_) = check_limits(CureMix(10.0, (Dose(salt, 0.02),)), US)
    assert nitrite.ppm == pytest.approx(125)


def test_us_bacon_takes_148_ppm_of_potassium_nitrite():
    salt = CuringSalt(0.0625, nitrite_of="potassium")
    bacon = Curing("us", "bacon", "dry-rub")
    most = largest_kg(CureMix(10.0, (Dose(salt, 0.0),)), bacon)
    assert most * 0.0625 / 10 * 1e6 == pytest.approx(246.7, abs=0.1)


@pytest.mark.parametrize(
    ("product", "nitrate", "some"), [("bacon", 0.04, False), ("bacon", 0.0, True), ("meat", 0.04, True)]
)
def test_where_no_nitrate_may_be_added_no_dose_of_a_salt_that_holds_some_is_right(product, nitrate: float, some: bool):
    """9 CFR 424.21(c): nitrate in meat other than bacon."""
    most = largest_kg(CureMix(10.0, (Dose(CuringSalt(0.0625, nitrate), 0.0),)), Curing("us", product, "dry-rub"))
    assert (most > 0.001) if some else (most == 0.0)


def test_the_eu_is_passed_at_120_ppm_of_sodium_nitrite():
    assert figure(from_dose(10.0, 0.0191, CURE, EU), "nitrite_ion").value < 80e-6
    assert refusal(from_dose, 10.0, 0.0193, CURE, EU).field == "dose"


def test_an_eu_refusal_counts_the_ion_and_names_the_regulation():
    said = refusal(from_dose, 10.0, 0.025, CURE, EU).sentence
    assert said.startswith(
        "104 ppm of nitrite, counted as ion, is too much. The limit for meat that is not heat-treated"
    )
    assert "80 ppm (Reg. (EU) 2023/2108): 19.19 g of this curing salt (" in said


def test_meat_that_may_take_no_nitrite_is_refused_any():
    said = refusal(from_dose, 10.0, 0.001, CURE, Curing("eu", "rohwurst")).sentence
    assert said.startswith("For Rohwürste (salami, Kantwurst) no nitrite may be added")


def test_bacon_is_refused_nitrate():
    salt = CuringSalt(0.0625, 0.04)
    assert "no nitrate" in refusal(from_dose, 5.0, 0.01, salt, Curing("us", "bacon", "dry-rub")).sentence


def test_pumped_bacon_without_ascorbate_is_told_to_have_some():
    made = figures(brine(0.2), Curing("us", "bacon", "pump"))
    assert any("550 ppm of ascorbate" in said for said in in_words(figure(made, "nitrite").cautions))


@pytest.mark.parametrize(("ppm", "asked"), [(549.7, True), (549.8, False), (550.0, False)])
def test_pumped_bacon_is_asked_for_its_550_ppm_of_ascorbate(ppm: float, asked: bool):
    """9 CFR 424.22(b): 550 ppm, held to one part in 2000. In 10.2 kg of brine at a pump of 10 %."""
    kg = ppm * 1e-6 * 10.2 / (0.1 - ppm * 1e-6)
    bacon = brine(0.2, CuringSalt(0.06), other_salt_kg=0.0, sugar_kg=0.0, accelerator_kg=kg)
    said = in_words(figure(figures(bacon, Curing("us", "bacon", "pump")), "accelerator").cautions)
    assert ("9 CFR 424.22(b) asks for 550 ppm in pumped bacon." in said) is asked


def test_too_much_ascorbate_is_refused_on_its_own_field():
    assert refusal(figures, brine(accelerator_kg=0.2), PUMP).field == "accelerator_kg"


def test_ascorbate_is_figured_like_the_nitrite_beside_it():
    made = figure(figures(brine(0.2, accelerator_kg=0.06), PUMP), "accelerator")
    assert made.value == pytest.approx(0.06 * 0.1 / 11.86)


def test_canada_says_what_does_not_count_as_cured():
    made = figure(from_dose(10.0, 0.012, CURE, CA), "together")
    assert "Less than 100 ppm does not count as cured (CFIA 4.13.1)." in in_words(made.cautions)


def test_a_limit_from_memory_is_said_to_be():
    made = figures(brine(0.2, CuringSalt(0.0625, 0.04)), PUMP)
    assert any("from memory" in said for said in in_words(figure(made, "nitrate").cautions))


def test_the_limit_stands_in_the_name_of_the_figure():
    assert named(figure(figures(brine(), PUMP), "nitrite")) == "Nitrite going in, of 200 ppm allowed by 9 CFR 424.21(c)"


def test_a_licence_lets_a_dose_pass_and_says_so_first():
    made = figures(CureMix(10.0, (Dose(CURE, 0.03),)), US, licence=TRIAL)
    assert in_words(figure(made, "nitrite").cautions)[0] == (
        "Over the limit (9 CFR 424.21(c), 156.25 ppm). Allowed up to 190 ppm by an exception on record, Food act, "
        "section 9: A trial (letter 12; decided by Ana)."
    )


def refused(licence: Licence | None, grams: float, how: Curing = US, salt: CuringSalt = CURE) -> str:
    with pytest.raises(OutOfRange) as caught:
        figures(CureMix(10.0, (Dose(salt, grams / 1000),)), how, licence)
    return caught.value.sentence


def test_above_the_exceptions_own_figure_both_numbers_are_said():
    assert refused(TRIAL, 31.0) == (
        "193.75 ppm of nitrite is too much. The exception on record allows 190 ppm (Food act, section 9)."
    )


def test_above_the_ceiling_no_exception_helps():
    assert refused(evolve(TRIAL, most_ppm=5000.0), 33.0) == (
        "206.25 ppm of nitrite, counted as the sodium salt on the green weight, is too much. No exception goes above "
        "200 ppm (9 CFR 424.21(c), its limit for the finished product)."
    )


def test_an_exception_without_its_figure_lifts_nothing_and_is_asked_for_it():
    said = refused(Licence("A trial", "letter 12", "Ana"), 26.0)
    assert "The limit for chopped meat is 156.25 ppm" in said
    assert "The exception on record names no figure" in said


def test_an_exception_that_allows_none_says_0_ppm():
    assert "The exception on record allows 0 ppm (Food act" in refused(evolve(TRIAL, most_ppm=0.0), 26.0)


@pytest.mark.parametrize("gap", [{"rule": " "}, {"substance": None}, {"most_ppm": None}])
def test_an_exception_that_lacks_its_rule_its_substance_or_its_figure_lifts_nothing(gap):
    assert "names no figure" in refused(evolve(TRIAL, **gap), 26.0)


def test_an_exception_for_nitrate_does_not_lift_the_nitrite():
    assert "The limit for chopped meat is 156.25 ppm" in refused(evolve(TRIAL, substance="nitrate"), 26.0)


def test_a_dose_wanted_follows_the_same_exception():
    meat = CureMix(10.0, (Dose(CURE, 0.0),))
    assert dosed(meat, US, 189.0, TRIAL).cure_kg == pytest.approx(0.03024)
    with pytest.raises(OutOfRange, match="The exception on record allows 190 ppm"):
        dosed(meat, US, 191.0, TRIAL)


CEILINGS = [
    *((method, "nitrite", 200.0) for method in ("comminuted", "immersion", "pick-up", "pump")),
    *((method, "nitrite", 625.0) for method in ("dry-rub", "dry-salting")),
    ("comminuted", "nitrate", 1718.75),
    *((method, "nitrate", 2187.5) for method in ("dry-rub", "dry-salting")),
    *((method, "nitrate", 700.0) for method in ("immersion", "pick-up", "pump")),
]


@pytest.mark.parametrize(("method", "substance", "most_ppm"), CEILINGS)
def test_the_ceiling_is_the_highest_figure_of_the_us_chart_for_the_method(method, substance, most_ppm):
    """9 CFR 424.21(c), 2015 edition: 200 ppm in the finished product, 1 oz, 2¾ oz and 3½ oz to 100 lb; 700 ppm of
    nitrate in pickle is from memory."""
    found = {each.substance: each for each in ceilings(method)}[substance]
    assert found.most_ppm == most_ppm
    assert ("from memory" in found.words) == (most_ppm == 700.0)
    assert (found.source.verified == "memory") == (most_ppm == 700.0)


@pytest.mark.parametrize(("method", "substance", "most_ppm"), CEILINGS)
@pytest.mark.parametrize(("off", "passed"), [(1.0004, 0), (1.0006, 1)])
def test_the_ceiling_is_passed_a_hair_above_it(method, substance, most_ppm, off, passed):
    made = Ingoing(**{"nitrite_ppm": 0.0, "nitrate_ppm": 0.0} | {f"{substance}_ppm": most_ppm * off})
    assert [each.substance for each, _ in over_ceiling(made, method)] == [substance] * passed


def test_a_dose_within_its_own_rules_is_not_held_to_the_ceiling():
    """Canada counts on the whole mixture: 200 ppm of it can be more than 200 ppm of the meat."""
    charge = CureMix(10.0, (Dose(CURE, 0.04),), 0.3, other_kg=4.0)
    assert figures(charge, CA)


def test_a_licence_says_nothing_of_a_dose_within_the_limit():
    made = figures(CureMix(10.0, (Dose(CURE, 0.02),)), US, licence=TRIAL)
    assert not any("exception" in said for said in in_words(figure(made, "nitrite").cautions))


@pytest.mark.parametrize("how", [US, EU, CA, PUMP, Curing("us", "meat", "immersion"), Curing("ca", "meat", "pick-up")])
def test_the_dose_for_a_ppm_makes_it(how: Curing):
    made = dosed(brine(0.0), how, 90.0)
    assert figure(figures(made, how), "nitrite").value == pytest.approx(90e-6, rel=1e-12)


def test_the_dose_beside_a_second_cure_makes_up_the_rest():
    charge = CureMix(10.0, (Dose(CURE, 0.0), Dose(WEAK, 0.1)))
    assert dosed(charge, US, 120).doses[0].kg == pytest.approx((0.0012 - 0.0005) / 0.0625)


def test_it_is_the_first_cure_that_must_bring_the_nitrite_wanted():
    nitrate = CuringSalt(0.0, 0.04)
    charge = CureMix(10.0, (Dose(CURE, 0.0), Dose(nitrate, 0.1)))
    assert dosed(charge, US, 120).doses[0].kg == pytest.approx(0.0012 / 0.0625)
    swapped = CureMix(10.0, (Dose(nitrate, 0.0), Dose(CURE, 0.01)))
    assert refusal(dosed, swapped, US, 120).field == "nitrite"


def test_a_second_cure_that_makes_enough_leaves_none_to_weigh():
    charge = CureMix(10.0, (Dose(CURE, 0.0), Dose(WEAK, 0.25)))
    assert dosed(charge, US, 100).doses[0].kg == 0


def test_a_brine_too_weak_for_the_wanted_ppm_is_told():
    weak = brine(0.0, CuringSalt(0.001), taken=0.05)
    assert refusal(dosed_for, weak, PUMP, 60.0).field == "wanted"


def test_more_wanted_than_the_set_allows_is_refused():
    assert refusal(dose_for, 10.0, 125.0, CURE, EU).field == "wanted"


@pytest.mark.parametrize(("method", "missing"), [("pump", "taken"), ("pick-up", "taken"), ("immersion", "water_kg")])
def test_a_brine_asks_for_what_it_lacks(method, missing: str):
    charge = CureMix(5.0, (Dose(CURE, 0.2),), water_kg=0.0 if missing == "water_kg" else 10.0)
    with pytest.raises(Missing) as caught:
        figures(charge, Curing("us", "meat", method))
    assert caught.value.field == missing


def test_a_first_cure_that_meets_no_limit_beside_the_second_is_refused_as_such():
    both = CureMix(10.0, (Dose(CURE, 0.01), Dose(CURE, 0.03)))
    assert "no weight of this curing salt meets it beside the rest" in refusal(figures, both, US).sentence


def test_the_right_dose_of_a_pump_is_a_share_of_the_brine_with_that_dose_in_it():
    """0.1 × (0.0625 x + 0.0005) = 200 ppm × (11.7 + x): x = 0.37851 kg of 12.0785 kg of brine."""
    both = brine(0.5)
    both = evolve(both, doses=(*both.doses, Dose(WEAK, 0.1)))
    said = refusal(figures, both, PUMP).sentence
    assert ": 378.51 g of this curing salt (3.13" in said
    assert "% of the brine)" in said


def test_without_any_nitrite_the_working_begins_with_the_first_cure():
    none = CureMix(10.0, (Dose(CuringSalt(0.0, 0.04), 0.01), Dose(CuringSalt(0.0, 0.05), 0.02)))
    assert figure(figures(none, US), "nitrite").working[0].values["cure"].value == 0.01


def test_a_row_of_0_is_shown_as_none_may_be_added():
    only_nitrate = CureMix(10.0, (Dose(CuringSalt(0.0, 0.04), 0.04),))
    step = figure(figures(only_nitrate, Curing("eu", "rohwurst")), "nitrite_ion").working[-1]
    assert step.say(METRIC) == "Limit for Rohwürste (salami, Kantwurst), Reg. (EU) 2023/2108: none may be added"


def test_grams_stand_beside_a_dose_that_was_a_share():
    assert to_weigh(CureMix(12.4, (Dose(CURE, 0.031),))).show(METRIC) == "31.0 g"


def test_the_grams_beside_a_dose_are_those_of_the_first_cure():
    weigh = to_weigh(CureMix(10.0, (Dose(CURE, 0.025), Dose(WEAK, 0.1))))
    assert weigh.value == 0.025
    assert weigh.working[0].values["cure"].value == 0.025
    assert weigh.working[0].values["share"].value == pytest.approx(0.0025)


def test_a_concentrate_used_as_all_the_salt_is_named():
    assert "concentrate" in refusal(from_dose, 10.0, 0.25, CURE, "comminuted").sentence


def test_a_complete_mix_used_like_a_concentrate_is_named():
    said = in_words(figure(from_dose(10.0, 0.025, WEAK, "comminuted"), "nitrite").cautions)
    assert any("twelve times too little" in each for each in said)


@pytest.mark.parametrize(("salt", "share"), [(CURE, 0.0025), (CURE, 0.01), (WEAK, 0.025), (WEAK, 0.0), (WEAK, 0.01)])
def test_an_ordinary_dose_is_not_taken_for_the_other_kind(salt: CuringSalt, share: float):
    assert mistaken_for_another(salt, share) is None


def test_nitrate_typed_as_a_fraction_is_refused_beside_it():
    assert refusal(CuringSalt, 0.0625, 0.0004).field == "nitrate"
