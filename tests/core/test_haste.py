"""Too fast, too slow, and what to change; bounds are ours and the maker's, no published ones."""

import pytest

from core.dry.haste import NO_SOURCE, YOURS, Bounds, judge, stage_of
from core.dry.pace import Air
from core.dry.rate import Rate
from core.quantities import METRIC
from core.units import DAY_S

CELLAR, DRY = Air(0, 12, 0.82), Air(0, 12, 0.70)


def a_day(share: float, error: float = 0.0) -> Rate:
    return Rate(share / DAY_S, error / DAY_S, 0.0, DAY_S)


def said(rate, lost=0.05, air=CELLAR, **more) -> str:
    return " ".join(each.say(METRIC, 3) for each in judge(rate, lost, 0.35, air, **more).says)


@pytest.mark.parametrize(("lost", "stage"), [(0.0, "early"), (0.11, "early"), (0.12, "middle"), (0.24, "late")])
def test_the_way_to_the_target_has_three_stages(lost, stage):
    assert stage_of(lost, 0.35) == stage


@pytest.mark.parametrize(("share", "word"), [(0.021, "too fast"), (0.019, "usual"), (0.006, "usual"), (0.004, "slow")])
def test_early_a_half_to_two_per_cent_a_day_is_usual(share, word):
    assert judge(a_day(share), 0.05, 0.35, CELLAR).word == word


@pytest.mark.parametrize(("share", "word"), [(0.009, "too fast"), (0.007, "usual"), (0.0005, "slow")])
def test_late_it_is_less(share, word):
    assert judge(a_day(share), 0.30, 0.35, CELLAR).word == word


def test_what_the_scale_leaves_open_is_not_called_too_fast():
    assert judge(a_day(0.021, 0.002), 0.05, 0.35, CELLAR).word == "usual"


def test_bounds_are_the_makers_to_set():
    own = Bounds(early=(0.0, 0.03 / DAY_S))
    assert judge(a_day(0.025), 0.05, 0.35, CELLAR, bounds=own).word == "usual"


def test_no_rate_is_not_known():
    assert (judge(None, 0.05, 0.35, CELLAR).word, said(None)) == ("not known", "")


def test_too_fast_says_by_how_much_and_what_to_change():
    assert said(a_day(0.03), air=DRY).startswith(
        "It loses 3.00 % a day; at this stage more than 2.00 % a day is too fast."
    )
    assert "Raise the humidity toward" in said(a_day(0.03), air=DRY)


def test_slow_says_what_to_change():
    assert "Lower the humidity toward" in said(a_day(0.002), air=Air(0, 12, 0.87))


def test_slow_in_dry_air_is_a_rim_to_feel():
    assert judge(a_day(0.002), 0.12, 0.35, DRY).rim == "high"


@pytest.mark.parametrize("air", [CELLAR, DRY, Air(0, 12, 0.9)])
def test_what_has_slowed_is_never_sent_to_drier_air(air):
    assert "Lower" not in said(a_day(0.002), 0.12, air, has_slowed=True)


@pytest.mark.parametrize("rate", [a_day(0.03), a_day(0.002)])
def test_a_judgement_says_that_its_bounds_have_no_source(rate):
    assert NO_SOURCE in said(rate)


def test_a_piece_that_slowed_in_dry_air_may_have_a_dry_rim():
    assert judge(a_day(0.006), 0.12, 0.35, DRY, has_slowed=True).rim == "high"
    assert "Its rim may be dry" in said(a_day(0.006), 0.12, DRY, has_slowed=True)


def test_a_dry_rim_is_never_answered_with_drier_air():
    assert "Lower" not in said(a_day(0.001), 0.12, DRY, has_slowed=True)


def test_a_piece_that_slowed_in_moist_air_is_to_be_felt():
    assert judge(a_day(0.006), 0.12, 0.35, Air(0, 12, 0.9), has_slowed=True).rim == "some"


def test_a_usual_rate_says_nothing():
    assert said(a_day(0.01)) == ""


OWN = Bounds(early=(0.5 * 0.01 / DAY_S, 0.015 / DAY_S))


def test_passed_your_own_bound_it_is_said_to_be_yours():
    words = said(a_day(0.018), bounds=OWN)
    assert "more than 1.50 % a day is too fast" in words
    assert YOURS in words
    assert NO_SOURCE not in words


def test_passed_the_other_bound_which_is_not_yours_it_is_common_practice():
    words = said(a_day(0.004), bounds=OWN)
    assert NO_SOURCE in words
    assert YOURS not in words
