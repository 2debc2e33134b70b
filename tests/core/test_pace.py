"""The time that drying counts: by the clock while the air stays, faster and slower as the air changes."""

import pytest

from core.dry.pace import Air, Known, by_the_clock, end_in, equal_times, force_pa
from core.units import DAY_S

CELLAR, DRIER, WARMER = Air(0, 12, 0.80), Air(10 * DAY_S, 12, 0.72), Air(10 * DAY_S, 16, 0.80)
WEIGHED = (Known(5 * DAY_S, 0.08), Known(20 * DAY_S, 0.22))


def test_in_one_air_it_is_the_clock():
    assert equal_times((CELLAR,), WEIGHED) == (5 * DAY_S, 20 * DAY_S)


def test_what_hung_in_moister_air_counts_for_less():
    before, after = equal_times((CELLAR, DRIER), WEIGHED)
    assert before < 5 * DAY_S
    assert after - before < 15 * DAY_S


def test_what_hung_in_colder_air_counts_for_less():
    assert equal_times((CELLAR, WARMER), WEIGHED)[0] < 5 * DAY_S


def test_after_the_change_it_is_the_clock_again():
    later = (*WEIGHED, Known(25 * DAY_S, 0.25))
    times = equal_times((CELLAR, DRIER), later)
    assert times[2] - times[1] == pytest.approx(5 * DAY_S)


def test_a_change_that_is_planned_is_waited_for():
    now = Known(5 * DAY_S, 0.08)
    assert by_the_clock((CELLAR, DRIER), now, 10 * DAY_S, 0.30) > 15 * DAY_S


def test_drier_air_ends_at_a_greater_loss():
    assert end_in(DRIER) > end_in(CELLAR)


def test_a_dried_piece_is_drawn_upon_less():
    assert force_pa(CELLAR, 0.35) < force_pa(CELLAR, 0.05)
