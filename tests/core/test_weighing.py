"""Doses on a scale: rounding, what is too small, and the blend that helps."""

import pytest

from core.mix.blend import blend_for, preblend
from core.mix.weighing import aim_kg, difference, refuse_too_small, rounding, weighable, worst
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.sources import COMMON_PRACTICE
from core.working import Figure
from core.worksheets import find
from tests.core.telling import in_words

GRAM, TENTH = 1e-3, 1e-4


def test_twenty_divisions_are_the_least_that_is_weighed_to_five_per_cent():
    assert [weighable(kg, GRAM) for kg in (0.020, 0.0199)] == [True, False]


def test_the_aim_is_what_the_scale_shows():
    assert aim_kg(0.0236, GRAM) == pytest.approx(0.024)


def test_a_cure_is_never_rounded_up():
    assert aim_kg(0.0236, GRAM, never_up=True) == pytest.approx(0.023)


def test_a_dose_on_a_division_is_not_rounded_down_by_a_hair():
    assert aim_kg(0.031, GRAM, never_up=True) == pytest.approx(0.031)


def on_scale(**texts: str) -> tuple[Figure, ...]:
    return find("weigh-dose").answer(texts).figures


def test_a_cure_of_2_5_grams_is_2_grams_on_a_scale_of_1_gram():
    assert on_scale(wanted_kg="2.5 g", division_kg="1 g")[0].value == pytest.approx(0.002)


def test_a_spice_of_2_5_grams_is_3():
    assert on_scale(wanted_kg="2.5 g", division_kg="1 g", of="other")[0].value == pytest.approx(0.003)


def test_a_dose_that_the_scale_cannot_weigh_says_so_beside_it():
    (said,) = in_words(on_scale(wanted_kg="2.5 g", division_kg="1 g")[0].cautions)
    assert said == "A scale that shows 1 g may be 60 % out on 2.5 g. Use one that shows 0.01 g."


def test_a_dose_that_it_can_weigh_is_shown_without_a_word():
    assert in_words(on_scale(wanted_kg="31 g", division_kg="1 g")[0].cautions) == ()


NEAREST = (
    "23.6 g in steps of 1 g, to the nearest: 24 g",
    "24 g ÷ 23.6 g − 1 = 1.69492 %",
    "(0.4 g + 1 g) ÷ 23.6 g = 5.9322 %",
)
DOWN = (
    "23.6 g in steps of 1 g, down, for more would be the greater harm: 23 g",
    "23 g ÷ 23.6 g − 1 = −2.54237 %",
    "(0.6 g + 1 g) ÷ 23.6 g = 6.77966 %",
)


@pytest.mark.parametrize(("never_up", "said"), [(False, NEAREST), (True, DOWN)])
def test_the_working_of_a_dose_on_a_scale(never_up: bool, said: tuple[str, ...]):
    weigh, change, out = rounding(0.0236, GRAM, never_up=never_up)
    steps = (*weigh.working, *change.working, out.working[-1])
    assert tuple(step.say(METRIC).replace("\u2212", "−") for step in steps) == said


def test_the_salt_of_a_blend_is_rounded_up_so_that_the_blend_is_never_stronger():
    """4 g in 56 g of blend: 10 g of cure want 130 g of salt; 4.4 g in 56 g want 117.3, so 118."""
    assert blend_for(0.0044, 0.0516, GRAM).dose_kg < 0.0044


def test_rounding_and_reading_both_count():
    assert worst(0.0236, GRAM) == pytest.approx((0.0004 + 0.001) / 0.0236)


@pytest.mark.parametrize(("dose", "fits"), [(0.020, True), (0.031, True), (0.0204, False), (0.004, False)])
def test_what_a_scale_of_one_gram_can_weigh(dose: float, fits: bool):
    assert weighable(dose, GRAM) is fits


def test_a_dose_too_small_is_refused_with_both_ways_out():
    with pytest.raises(OutOfRange, match=r"25 % out on 4 g. Use one that shows 0\.1 g, or a blend") as caught:
        refuse_too_small("Curing salt", 0.004, GRAM)
    assert caught.value.field == "mass_kg"


def test_a_dose_that_fits_is_not_refused():
    refuse_too_small("Curing salt", 0.031, GRAM)


def test_rounding_says_what_it_does_to_the_dose():
    figures = {figure.key: figure.value for figure in rounding(0.0236, GRAM)}
    assert figures["change"] == pytest.approx(0.024 / 0.0236 - 1)


@pytest.mark.parametrize(("wanted", "aimed"), [(0.002496, 0.002), (0.002504, 0.003)])
def test_the_nearest_division_changes_at_the_half(wanted: float, aimed: float):
    assert aim_kg(wanted, GRAM) == pytest.approx(aimed)


@pytest.mark.parametrize("wanted", [0.0, -0.5])
def test_no_dose_is_never_out(wanted: float):
    assert worst(wanted, GRAM) == 0.0


@pytest.mark.parametrize(("wanted", "shown"), [(0.0012346, "1.23 g"), (0.0123456, "12.3 g")])
def test_a_dose_too_small_is_shown_in_three_figures(wanted: float, shown: str):
    with pytest.raises(OutOfRange, match=f"% out on {shown}. Use one"):
        refuse_too_small("Curing salt", wanted, GRAM)


@pytest.mark.parametrize("wanted", [0.0, -0.5, float("inf"), float("nan")])
def test_what_is_no_dose_is_not_rounded(wanted: float):
    with pytest.raises(OutOfRange) as caught:
        rounding(wanted, GRAM)
    assert caught.value.field == "wanted_kg"


def test_a_scale_may_show_whole_kilograms():
    assert weighable(20.0, 1.0)
    with pytest.raises(OutOfRange):
        weighable(20.0, 1.001)


def test_the_difference_is_a_share_of_the_wanted():
    assert difference(10.0, 10.3).value == pytest.approx(0.03)


@pytest.mark.parametrize("division", [0, -1, float("nan"), 2])
def test_a_scale_that_shows_nothing_is_refused(division: float):
    with pytest.raises(OutOfRange):
        weighable(1.0, division)


def test_a_blend_makes_the_dose():
    blend = blend_for(0.004, 0.052, GRAM)
    assert blend.dose_kg == pytest.approx(0.004, rel=1e-3)
    assert blend.worst <= 0.05


def test_without_salt_there_is_no_blend_even_of_a_dose_that_can_be_weighed():
    with pytest.raises(OutOfRange):
        blend_for(0.031, 0.0, GRAM)


def test_a_blend_is_out_at_worst_by_a_division_too_much_of_cure_and_of_blend():
    """40 g of cure and 520 g of salt, 56 g taken for 4 g: 57 × 41 ÷ 560 = 4.173 g."""
    found = blend_for(0.004, 0.052, GRAM)
    assert (found.cure_kg, found.salt_kg, found.take_kg) == pytest.approx((0.04, 0.52, 0.056))
    assert found.worst == pytest.approx(57 * 41 / 560 / 4 - 1)


@pytest.mark.parametrize(
    ("field", "dose", "salt", "division"),
    [
        ("dose_kg", -0.5, 0.052, GRAM), ("dose_kg", 0.0, 0.052, GRAM),
        ("dose_kg", 1000.0, 0.052, GRAM), ("dose_kg", 1000.5, 0.052, GRAM),
        ("salt_kg", 0.004, -1e-9, GRAM), ("salt_kg", 0.004, 1000.0, GRAM), ("salt_kg", 0.004, 1000.5, GRAM),
        ("division_kg", 0.004, 0.052, -0.5), ("division_kg", 0.004, 0.052, 0.0), ("division_kg", 0.004, 0.052, 1.001),
    ],
)  # fmt: skip
def test_what_is_no_weight_is_not_blended(field: str, dose: float, salt: float, division: float):
    with pytest.raises(OutOfRange, match="must") as caught:
        blend_for(dose, salt, division)
    assert caught.value.field == field


@pytest.mark.parametrize(("dose", "salt", "division"), [(999.9, 0.052, GRAM), (0.004, 999.9, GRAM), (40.0, 520.0, 1.0)])
def test_up_to_its_end_a_weight_is_blended(dose: float, salt: float, division: float):
    assert blend_for(dose, salt, division).dose_kg == pytest.approx(dose, rel=0.05)


def test_no_salt_at_all_is_a_weight_of_salt_but_too_little_for_a_blend():
    with pytest.raises(OutOfRange, match="Even with all of its salt"):
        blend_for(0.004, 0.0, GRAM)


def test_what_all_of_it_weighs_is_said_in_three_figures():
    with pytest.raises(OutOfRange, match=r"weighs only 7\.34 g, too little"):
        blend_for(0.001, 0.0063456, GRAM)


def test_only_how_large_a_blend_is_rests_on_common_practice():
    practice = [figure.key for figure in preblend(0.0044, 0.0516, GRAM) if figure.source == COMMON_PRACTICE]
    assert practice == ["blend_cure"]


@pytest.mark.parametrize(("dose", "salt"), [(0.004, 0.052), (0.0025, 0.025), (0.002, 0.03)])
def test_the_cure_of_a_blend_is_a_whole_number_of_tens_of_divisions(dose: float, salt: float):
    tens = blend_for(dose, salt, GRAM).cure_kg / (10 * GRAM)
    assert tens == pytest.approx(round(tens))


def test_a_blend_brings_no_more_salt_than_the_batch_takes():
    assert blend_for(0.0025, 0.025, GRAM).taken_salt_kg <= 0.025


def test_a_batch_too_small_even_for_a_blend_is_told_so():
    with pytest.raises(OutOfRange, match=r"weighs only 11 g.*shows 0\.01 g, or make a larger batch"):
        blend_for(0.001, 0.010, GRAM)


def test_without_salt_there_is_no_blend():
    with pytest.raises(OutOfRange):
        blend_for(0.001, 0.0, GRAM)


def test_a_blend_that_is_not_needed_says_so():
    assert "no blend is needed" in " ".join(in_words(preblend(0.031, 0.31, GRAM)[0].cautions))


def test_a_blend_says_what_salt_is_left():
    figures = {figure.key: figure.value for figure in preblend(0.0025, 0.025, GRAM)}
    assert figures["salt_left"] == pytest.approx(0.0005, abs=1e-6)
