"""When to weigh next, and whether a piece has slowed."""

import pytest

from core.dry.curve import Hung, fit
from core.dry.next_weighing import WHY, has_slowed, next_weighing
from core.quantities import METRIC
from core.units import DAY_S
from tests.core.drying_pieces import CELLAR, TWELVE, losing


def after(*days, scale_kg=0.001, target=0.35, half_d=14.0):
    piece = losing(days, half_d=half_d)
    return next_weighing(fit([Hung(0.8, piece.weighings, scale_kg)], CELLAR), 0, target)


def test_a_new_piece_is_weighed_after_a_day():
    assert after().at_s == DAY_S


def test_a_piece_whose_course_is_known_is_weighed_more_seldom():
    assert after(*TWELVE).at_s - 18 * DAY_S > after(2).at_s - 2 * DAY_S


def test_a_coarse_scale_learns_later():
    assert after(2, 4, scale_kg=0.01).at_s >= after(2, 4).at_s


def test_no_piece_is_left_longer_than_a_week():
    assert after(*TWELVE, scale_kg=0.05).at_s <= 25 * DAY_S


def test_before_its_target_it_is_weighed_again():
    assert after(*TWELVE, target=0.27).why == "target"


def test_a_piece_at_its_target_is_done_by_weight():
    assert after(*TWELVE, target=0.1).why == "done"


@pytest.mark.parametrize("why", WHY)
def test_every_reason_is_a_sentence(why):
    assert WHY[why].endswith(".")


def test_a_piece_that_keeps_its_curve_has_not_slowed():
    assert not has_slowed(fit([losing(TWELVE)], CELLAR), 0)


def test_a_piece_that_all_but_stopped_has_slowed():
    piece = losing(TWELVE)
    stopped = (*piece.weighings, (26 * DAY_S, piece.weighings[-1][1] - 0.001))
    assert has_slowed(fit([Hung(0.8, stopped)], CELLAR), 0)


def test_two_weighings_show_no_slowing():
    assert not has_slowed(fit([losing((2, 4))], CELLAR), 0)


def test_it_says_why():
    assert after().says.say(METRIC) == WHY[after().why]
