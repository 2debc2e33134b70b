"""A hygrometer over one salt and over two: what is let pass, what stays unsure, how long it waits."""

import math

import pytest

from core.chamber.checks_hygrometer import Over, per_kelvin, salt_check, salt_check_two
from core.quantities import METRIC, US
from tests.core.telling import in_words


def figure(check, key: str):
    return next(each for each in check.figures if each.key == key)


def test_a_hygrometer_is_let_pass_within_three_per_cent_and_unsure_by_a_fifth_of_a_kelvin():
    """75.47 % over table salt at 20 °C, of which the table is sure to 0.14 %; half of 0.1 %."""
    check = salt_check(Over("nacl", 20.0, 0.70))
    left = math.hypot(0.0014, 0.0005, 0.2 * per_kelvin(0.7547, 20.0))
    assert figure(check, "uncertainty").value == pytest.approx(left, rel=1e-3)
    assert check.word == "adjust"
    truth = figure(check, "truth").value
    assert salt_check(Over("nacl", 20.0, truth - 0.03)).word == "accept"
    assert salt_check(Over("nacl", 20.0, truth - 0.0301)).word == "adjust"
    assert salt_check(Over("nacl", 20.0, truth - 0.09)).word == "adjust"
    assert salt_check(Over("nacl", 20.0, truth - 0.0901)).word == "replace"


def test_what_a_kelvin_is_worth():
    """By Clausius and Clapeyron: 2454 kJ/kg ÷ (0.46152 kJ/(kg K) × 293.15² K²) = 6.187 % to the kelvin at 20 °C."""
    assert per_kelvin(1.0, 20.0) == pytest.approx(0.06187, rel=0.002)
    assert per_kelvin(0.5, 20.0) == pytest.approx(per_kelvin(1.0, 20.0) / 2)


def test_one_point_speaks_for_ten_per_cent_about_it_and_that_is_said():
    cautions = in_words(salt_check(Over("nacl", 20.0, 0.75)).figures[0].cautions)
    assert any("within about 10 % of it" in each for each in cautions)


@pytest.mark.parametrize(("bulk", "shown"), [("small", "20 min"), ("bulky", "60 min")])
def test_how_long_a_sensor_waits(bulk, shown: str):
    for check in (
        salt_check(Over("nacl", 20.0, 0.75), bulk=bulk),
        salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85), bulk=bulk),
    ):
        assert (figure(check, "wait").show(METRIC), figure(check, "wait").show(US)) == (shown, shown)


@pytest.mark.parametrize(
    ("now", "is_beyond"), [(0.75, False), (0.85, False), (0.7499, True), (0.8501, True), (0.8, False)]
)
def test_beyond_the_two_salts_a_reading_is_less_sure(now: float, is_beyond: bool):
    check = salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85), now)
    assert (
        bool(any("beyond the two salts" in each for each in in_words(figure(check, "corrected").cautions))) is is_beyond
    )


def test_a_reading_between_the_salts_lies_on_the_line_through_both():
    """75.47 % read as 75 and 85.11 % read as 85: midway 80.29."""
    check = salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85), 0.80)
    truth, other = figure(check, "truth").value, figure(check, "other_truth").value
    assert figure(check, "corrected").value == pytest.approx((truth + other) / 2)
    assert figure(check, "gain").value == pytest.approx((other - truth) / 0.1)
    unsure = math.hypot(figure(check, "uncertainty").value, figure(check, "other_uncertainty").value) / 2
    as_corrected = figure(check, "corrected")
    assert (as_corrected.value - as_corrected.low, as_corrected.high - as_corrected.value) == pytest.approx(
        (unsure, unsure)
    )
    assert check.word == "accept"


def test_the_worse_of_two_salts_decides():
    assert salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.80)).word == "adjust"
    assert salt_check_two(Over("nacl", 20.0, 0.70), Over("kcl", 20.0, 0.85)).word == "adjust"


@pytest.mark.parametrize(("now", "end"), [(1.0, 1.0), (0.0, 0.0)])
def test_a_humidity_corrected_ends_at_nothing_and_at_all_there_is(now: float, end: float):
    """75.47 % read as 73 and 85.11 % as 82: 107 hundredths to the reading's hundred."""
    as_corrected = figure(salt_check_two(Over("nacl", 20.0, 0.73), Over("kcl", 20.0, 0.82), now), "corrected")
    assert (as_corrected.value, as_corrected.high if end else as_corrected.low) == (end, end)
    assert any("Held between" in each.say(METRIC) for each in as_corrected.working)


def test_one_that_stays_within_is_not_held():
    as_corrected = figure(salt_check_two(Over("nacl", 20.0, 0.73), Over("kcl", 20.0, 0.82), 0.8), "corrected")
    assert not any("Held between" in each.say(METRIC) for each in as_corrected.working)


def test_what_is_taken_where_nothing_else_is_told():
    """Three per cent let pass, a last digit of 0.1 %, a fifth of a kelvin apart, a bulky sensor."""
    one, other = Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85)
    assert salt_check(one) == salt_check(one, 0.03, 0.001, 0.2, "bulky")
    assert salt_check_two(one, other, 0.8) == salt_check_two(one, other, 0.8, 0.03, 0.001, 0.2, "bulky")
