"""A log brought down to stretches of whole hours: its means, its warmest, and its gaps."""

import pytest

from core.chamber.series import Series
from core.chamber.stretches import stretched
from core.refusals import OutOfRange
from core.units import HOUR_S

MINUTES = [60.0 * minute for minute in range(180)]


def test_an_hour_is_its_mean_and_its_warmest_reading():
    warm = [12.0 if at_s < HOUR_S else 14.0 for at_s in MINUTES]
    warm[30] = 15.0
    found = stretched(Series("", MINUTES, warm, [0.8] * 180), 1000)
    assert found.begins_s == (0.0, 3600.0, 7200.0)
    assert found.temperatures_c == (12.05, 14.0, 14.0)
    assert found.highest_c == (15.0, 14.0, 14.0)
    assert (found.humidities, found.known_s) == ((0.8,) * 3, (3600.0,) * 3)


def test_hours_without_a_reading_are_no_stretch():
    times = [at_s for at_s in MINUTES if not HOUR_S / 2 <= at_s < 2 * HOUR_S]
    found = stretched(Series("", times, [12.0] * len(times)), 1000)
    assert found.begins_s == (0.0, 7200.0)
    assert found.known_s[0] == 29 * 60 + 180
    assert found.humidities == ()


def test_a_last_reading_stands_no_longer_than_its_stretch():
    found = stretched(Series("", MINUTES[:2], [12.0, 13.0]), 1000)
    assert found.known_s == (120.0,)


def test_a_long_log_is_kept_in_longer_stretches():
    found = stretched(Series("", [at * HOUR_S for at in range(2400)], [12.0] * 2400), 1200)
    assert (len(found.begins_s), found.stretch_s) == (1200, 2 * HOUR_S)


def test_a_slow_logger_has_stretches_as_long_as_its_interval():
    found = stretched(Series("", [at * 2 * HOUR_S for at in range(10)], [12.0] * 10), 1200)
    assert (found.stretch_s, found.known_s) == (2 * HOUR_S, (2 * HOUR_S,) * 10)


def test_where_one_hour_has_no_humidity_the_others_keep_theirs():
    humidities = [float("nan") if at_s < HOUR_S else 0.75 for at_s in MINUTES]
    assert stretched(Series("", MINUTES, [12.0] * 180, humidities), 1000).humidities == (None, 0.75, 0.75)


def test_a_single_temperature_is_refused():
    with pytest.raises(OutOfRange):
        stretched(Series("", [0.0], [12.0]), 1000)
