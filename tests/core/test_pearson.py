"""Pearson's square and its general form."""

from fractions import Fraction

import pytest

from core.mix.pearson import shares_for, square, two_meats
from core.refusals import Missing, OutOfRange


def test_the_square_in_whole_numbers():
    assert square(0.10, 0.70, 0.25) == pytest.approx((Fraction(45, 60), Fraction(15, 60)))


def test_the_order_of_the_meats_does_not_matter():
    assert square(0.70, 0.10, 0.25) == pytest.approx((0.25, 0.75))


@pytest.mark.parametrize(("wanted", "word"), [(0.05, "leaner"), (0.8, "fatter")])
def test_what_cannot_be_reached_is_refused_with_what_can(wanted: float, word: str):
    with pytest.raises(OutOfRange, match=rf"10 % to 70 % fat.*add a {word} meat") as caught:
        square(0.10, 0.70, wanted)
    assert caught.value.field == "wanted"


def test_two_meats_in_the_general_form_are_the_square():
    assert shares_for([0.1, 0.7], [0.9, 0.1], 0.25) == pytest.approx(square(0.1, 0.7, 0.25))


def test_meats_of_like_fat_keep_their_proportion():
    pork, beef, _ = shares_for([0.07, 0.07, 0.89], [0.5, 0.3, 0.2], 0.3)
    assert pork / beef == pytest.approx(0.5 / 0.3)


def test_a_formula_that_has_the_fat_already_is_left_alone():
    shares = (0.5, 0.3, 0.2)
    fats = (0.07, 0.18, 0.89)
    assert shares_for(fats, shares, sum(f * s for f, s in zip(fats, shares, strict=True))) == pytest.approx(shares)


def test_a_meat_of_no_share_stays_out():
    assert shares_for([0.05, 0.1, 0.7], [0, 0.5, 0.5], 0.4)[0] == 0


def test_a_meat_of_no_share_does_not_widen_the_reach():
    with pytest.raises(OutOfRange):
        shares_for([0.0, 0.1, 0.7], [0, 0.5, 0.5], 0.05)


@pytest.mark.parametrize(("wanted", "shares"), [(0.1, (1, 0)), (0.7, (0, 1))])
def test_the_ends_of_the_reach_are_reached(wanted: float, shares: tuple[float, float]):
    assert shares_for([0.1, 0.7], [0.5, 0.5], wanted) == pytest.approx(shares)


def test_meats_all_alike_keep_their_shares():
    assert shares_for([0.2, 0.2], [3, 1], 0.2) == pytest.approx((0.75, 0.25))


def test_no_meat_at_all_is_asked_for():
    with pytest.raises(Missing):
        shares_for([0.2], [0], 0.2)


def test_weights_follow_from_the_block():
    figures = {figure.key: figure.value for figure in two_meats(0.1, 0.7, 0.25, 8)}
    assert (figures["lean_mass"], figures["fat_mass"]) == pytest.approx((6, 2))


def test_a_lean_meat_of_no_share_stays_out_however_steep_the_others_are():
    """The shares turn by a factor of a thousand between two meats that are a thousandth of fat apart."""
    none, much, little = shares_for([0.0, 0.9, 0.901], [0, 0.5, 0.5], 0.900001)
    assert (none, much, little) == pytest.approx((0, 0.999, 0.001))
