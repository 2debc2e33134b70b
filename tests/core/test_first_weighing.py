"""The first weight of a piece since it was hung, asked about where it can hardly have lost so much."""

import pytest

from core.dry.first_weighing import AT_ONCE, PER_DAY, question
from core.quantities import METRIC
from core.units import DAY_S


@pytest.mark.parametrize("days", [0.0, 1.0, 3.0, 7.0])
def test_it_is_asked_about_beyond_what_drips_and_dries_in_that_time(days: float):
    most = AT_ONCE + PER_DAY * days
    assert question("J-1", 1.0, 1 - most + 0.001, days * DAY_S) is None
    assert question("J-1", 1.0, 1 - most - 0.001, days * DAY_S) is not None


def test_nine_per_cent_overnight_are_asked_about_with_both_figures():
    asked = question("J-1", 1.25, 1.1375, 0.5 * DAY_S)
    assert asked is not None
    said = asked.say(METRIC).replace("\u00a0", " ")
    assert said.startswith("J-1 lost 9.0 % since it was hung at 1 250 g")


def test_a_usual_first_week_is_not_asked_about():
    assert question("J-1", 1.0, 0.88, 7 * DAY_S) is None


def test_a_clock_set_back_counts_as_no_time():
    assert question("J-1", 1.0, 0.99, -DAY_S) is None
