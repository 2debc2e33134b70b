"""The mean kinetic temperature and the time above a line."""

import pytest

from core.dry.warmth import above_s, mean_kinetic_c
from core.refusals import OutOfRange, Refused
from core.worksheets import find


@pytest.mark.parametrize("spans", [[], [(12, 0)], [(12, -1), (12, 5)], [(90, 5)]])
def test_no_time_and_no_such_temperature_are_refused(spans):
    with pytest.raises(OutOfRange):
        mean_kinetic_c(spans)


def test_half_a_straight_rise_through_the_line_is_above_it():
    assert above_s([(0, 10), (100, 14)], 12) == 50


def test_all_of_what_stays_above_is_above():
    assert above_s([(0, 13), (100, 14), (150, 13)], 12) == 150


def test_what_stays_on_the_line_is_not_above_it():
    assert above_s([(0, 12), (100, 12)], 12) == 0


def test_a_step_needs_both_its_temperature_and_its_time():
    with pytest.raises(Refused) as caught:
        find("mean-kinetic").answer({"temperature_1": "12 °C", "lasts_1": "10 h", "temperature_2": "18 °C"})
    assert caught.value.refusals[0].field == "lasts_2"
