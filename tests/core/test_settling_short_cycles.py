"""Noise where a cycle has few readings: what swings regularly is no noise, and what does not is."""

from random import Random

import pytest

from core.chamber.settling.short_cycles import without_corners
from core.chamber.settling.swing import sigma_of
from core.chamber.settling.trace import step


def cycles(*periods: int) -> list[float]:
    """Up by 2 K at once, and down: so many readings each."""
    return [11 + 2 * (period - 1 - place) / (period - 1) for period in periods for place in range(period)]


@pytest.mark.parametrize(("period", "is_noise"), [(3, True), (4, False), (12, False), (13, True)])
def test_corners_of_cycles_of_four_to_twelve_readings_are_no_noise(period: int, is_noise: bool):
    found = without_corners(0.5, cycles(*[period] * 20), 0.01)
    assert found == (0.5 if is_noise else pytest.approx(0.1, rel=0.25))


@pytest.mark.parametrize(("periods", "is_noise"), [(11, True), (12, False)])
def test_ten_periods_tell_what_is_regular(periods: int, is_noise: bool):
    """Between the first peak that is seen as one and the last."""
    assert (without_corners(0.5, cycles(*[8] * periods), 0.01) == 0.5) is is_noise


@pytest.mark.parametrize(("longer", "is_noise"), [(10, False), (11, True)])
def test_periods_that_differ_by_more_than_a_third_are_noise(longer: int, is_noise: bool):
    """Quartiles of 8 and 10 readings lie 2 apart, 0.25 of 8; of 8 and 11, 3, 0.375."""
    periods = [8, 8, 8, longer] * 3 + [8, longer] * 4
    assert (without_corners(0.5, cycles(*periods), 0.01) == 0.5) is is_noise


def test_of_noise_nothing_is_taken_away():
    chance = Random(1)
    for sigma in (0.1, 0.3, 1.0):
        noise = [round(chance.gauss(12, sigma), 2) for _ in range(576)]
        assert without_corners(sigma_of(noise, step(noise)), noise, 0.01) == sigma_of(noise, step(noise))


def test_no_less_is_left_than_the_step_accounts_for():
    assert without_corners(0.5, cycles(*[8] * 20), 0.5) == pytest.approx(0.5 / 12**0.5)


def test_what_is_little_noise_anyhow_stays():
    assert without_corners(0.02, cycles(*[8] * 20), 0.01) == 0.02


def test_what_does_not_move_at_all_stays():
    assert without_corners(0.5, [12.0] * 300, 0.0) == 0.5


def test_a_thousand_readings_tell_whether_it_is_regular():
    chance = Random(1)
    calm, noisy = cycles(*[8] * 125), [chance.gauss(12, 0.6) for _ in range(1000)]
    assert without_corners(0.5, calm + noisy, 0.01) < 0.5
    assert without_corners(0.5, noisy + calm, 0.01) == 0.5
