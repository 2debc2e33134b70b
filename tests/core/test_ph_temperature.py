"""A pH read on a meter that does not compensate for temperature."""

import pytest

from core.chamber.ph_temperature import compensated, compensated_ph
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from tests.core.telling import in_words


def test_read_colder_than_the_meter_stands_it_is_further_from_7():
    assert compensated_ph(5.2, 12.0, 25.0) == pytest.approx(7 - 1.8 * 298.15 / 285.15)


def test_read_warmer_than_the_meter_stands_it_is_nearer_to_7():
    assert compensated_ph(5.2, 35.0, 25.0) == pytest.approx(5.2584, abs=1e-4)


def test_ten_kelvin_make_seven_hundredths_at_ph_5():
    assert compensated_ph(5.0, 35.0, 25.0) - 5.0 == pytest.approx(0.065, abs=0.001)


def test_its_working_puts_the_kelvins_in():
    assert [step.say(METRIC) for step in compensated(5.2, 12.0, 25.0)[0].working] == [
        "Taken at 12 °C, with the meter set to 25 °C:",
        "7 + (5.2 − 7) × 298.15 K ÷ 285.15 K = 5.11794",
    ]


def test_its_working_says_the_temperatures_in_the_readers_units():
    assert "53.6 °F" in compensated(5.2, 12.0, 25.0)[0].working[0].say(US)


def test_the_meats_own_ph_is_said_to_be_left_alone():
    assert "the meat's own pH is another matter" in in_words(compensated(5.2, 12.0, 25.0)[0].cautions)[0]


@pytest.mark.parametrize(
    ("shown", "sample_c", "stands_at_c", "field"),
    [
        (5.2, -0.1, 25.0, "sample"),
        (5.2, 60.1, 25.0, "sample"),
        (5.2, float("nan"), 25.0, "sample"),
        (5.2, 20.0, 61.0, "stands_at"),
        (1.9, 20.0, 25.0, "shown"),
        (12.1, 20.0, 25.0, "shown"),
    ],
)
def test_what_lies_outside_is_refused(shown: float, sample_c: float, stands_at_c: float, field: str):
    with pytest.raises(OutOfRange) as caught:
        compensated(shown, sample_c, stands_at_c)
    assert caught.value.field == field
