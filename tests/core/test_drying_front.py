"""The second model of drying, and the forecast held against it: the verdict does not hang on the first."""

from functools import cache
from itertools import pairwise

import pytest

from tests.core import drying_front
from tests.core.drying_front import Meat, Way, run
from tests.core.drying_model import Step
from tests.core.drying_study import Outcome, covered, median_error, study

MEAT = Meat(mass_kg=0.8, diameter_m=0.05, water=0.58, salt=0.028, fat=0.2)
WAY = Way(within_kg_s=8e-7, off_kg_s=2e-6, hardens=0.5)
CELLAR = (Step(0.0, 12.0, 0.78),)


@cache
def outcomes() -> list[Outcome]:
    return list(study(range(100, 112), 3, drying_front.draw))


def test_the_piece_only_ever_loses_in_dry_air():
    assert all(one < other for one, other in pairwise(run(MEAT, WAY, CELLAR, 0.35).losses))


def test_it_never_dries_beyond_its_air():
    course = run(MEAT, WAY, CELLAR, 0.9)
    left_kg = MEAT.mass_kg * (MEAT.water - course.losses[-1])
    assert drying_front.activity(left_kg, MEAT.lean_kg, MEAT.mass_kg * MEAT.salt) >= 0.78


def test_it_slows_as_its_shell_grows():
    course = run(MEAT, WAY, CELLAR, 0.35)
    days = [course.day_of(loss) for loss in (0.1, 0.2, 0.3)]
    assert days[1] - days[0] < days[2] - days[1]


def test_a_casing_slows_it():
    tight = Way(WAY.within_kg_s, WAY.off_kg_s / 3, WAY.hardens)
    assert run(MEAT, tight, CELLAR, 0.2).day_of(0.2) > run(MEAT, WAY, CELLAR, 0.2).day_of(0.2)


def test_at_half_of_the_loss_the_day_is_near():
    assert median_error(outcomes(), "ours", "half") < 0.15


def test_the_range_holds_the_truth_of_about_eight_in_ten():
    assert covered(outcomes(), "ours") >= 0.65


@pytest.mark.parametrize("other", ["line", "exponential"])
def test_it_is_nearer_than_a_simple_curve(other: str):
    assert median_error(outcomes(), "ours", "half") < median_error(outcomes(), other, "half")
