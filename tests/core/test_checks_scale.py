"""A scale under one check mass, and under two."""

import pytest

from core.chamber.checks_scale import scale_check
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange
from tests.core.telling import in_words


def figure(check, key: str):
    return next(each for each in check.figures if each.key == key)


def keys(check) -> set[str]:
    return {each.key for each in check.figures}


def refused_field(*arguments) -> str:
    with pytest.raises((OutOfRange, Missing)) as caught:
        scale_check(*arguments)
    return caught.value.field


def test_a_perfect_scale_weighs_fifty_divisions_to_two_per_cent():
    check = scale_check(0.1, 0.1, 1e-4)
    assert figure(check, "smallest_2").show(METRIC) == "5.00 g"
    assert figure(check, "smallest_5").show(METRIC) == "2.00 g"


def test_an_error_in_the_factor_raises_the_least_weight():
    assert figure(scale_check(0.1, 0.101, 1e-4), "smallest_2").value == pytest.approx(1e-4 / (0.02 - 0.01))


def test_an_error_at_zero_raises_the_least_weight():
    check = scale_check(0.1, 0.1005, 1e-4, 0.2, 0.2005)
    assert figure(check, "smallest_2").value == pytest.approx((1e-4 + 5e-4) / 0.02)


def test_a_scale_further_out_than_the_share_weighs_nothing_to_it_and_says_so():
    check = scale_check(0.1, 0.103, 1e-4)
    assert not keys(check) & {"smallest_2"}
    assert any("error alone is more than 2 %" in each for each in in_words(check.figures[0].cautions))


@pytest.mark.parametrize(("reading_kg", "said"), [(0.1, True), (0.1 + 1e-9, False), (0.1 - 1e-9, False)])
def test_a_scale_that_reads_right_needs_no_correction(reading_kg: float, said: bool):
    assert ("No correction needed." in in_words(figure(scale_check(0.1, reading_kg, 1e-4), "gain").cautions)) is said


def test_one_mass_gives_a_factor_through_zero():
    correction = scale_check(0.1, 0.101, 1e-4).correction
    assert (correction.apply(0.0), correction.apply(0.101)) == pytest.approx((0.0, 0.1))


def test_two_masses_give_a_line_through_both():
    correction = scale_check(0.1, 0.1005, 1e-4, 0.5, 0.503).correction
    assert (correction.apply(0.1005), correction.apply(0.503)) == pytest.approx((0.1, 0.5))


@pytest.mark.parametrize(
    ("reading_kg", "word"), [(0.1, "accept"), (0.1005, "accept"), (0.101, "adjust"), (0.102, "replace")]
)
def test_half_a_per_cent_is_let_pass(reading_kg: float, word: str):
    assert scale_check(0.1, reading_kg, 1e-4).word == word


def test_one_division_is_always_let_pass():
    assert scale_check(0.1, 0.101, 1e-3).word == "accept"


def test_the_worse_of_two_masses_decides():
    assert scale_check(0.1, 0.1, 1e-4, 0.5, 0.51).word == "replace"


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((0.0, 0.1, 1e-4), "mass_kg"),
        ((0.1, 0.0, 1e-4), "reading_kg"),
        ((0.1, 0.1, 0.2), "division_kg"),
        ((0.1, 0.1, 1e-4, 0.2), "other_reading_kg"),
        ((0.1, 0.1, 1e-4, None, 0.2), "other_mass_kg"),
        ((0.1, 0.1, 1e-4, 0.1, 0.2), "other_mass_kg"),
        ((0.1, 0.2, 1e-4, 0.2, 0.1), "other_reading_kg"),
        ((float("nan"), 0.1, 1e-4), "mass_kg"),
    ],
)
def test_what_is_no_check_is_refused_beside_its_field(arguments, field: str):
    assert refused_field(*arguments) == field
