"""When it first reached its band, what is undisturbed, and how far it drifted."""

import pytest

from core.chamber.settling.events import Event
from core.chamber.settling.settled import arrived, drift_a_day, undisturbed
from core.chamber.settling.statistics import Band

BAND = Band(12.0, 1.0)


def minutes(count: int) -> list[float]:
    return [60.0 * place for place in range(count)]


def test_a_quarter_of_an_hour_after_an_event_is_not_calm_yet():
    event = Event("defrost", 600.0, 600.0, 1200.0, 1500.0, 11.0, 15.0)
    calm = undisturbed(minutes(60), [event])
    assert [index for index, is_calm in enumerate(calm) if not is_calm] == list(range(10, 40))


def test_it_arrives_with_the_first_reading_in_the_band():
    assert arrived(minutes(4), [20, 16, 12.5, 14], BAND) == 120


def test_it_never_arrives_where_no_reading_is_in_the_band():
    assert arrived(minutes(2), [20, 16], BAND) is None


def test_drift_is_the_slope_of_a_day():
    times_s = minutes(600)
    found = drift_a_day(times_s, [12 + at_s / 86_400 for at_s in times_s])
    assert found is not None
    assert found.by_k == pytest.approx(1)


def test_a_drift_read_off_fewer_readings_is_less_sure():
    times_s = minutes(1440)
    swinging = [12 + place % 2 for place in range(1440)]
    whole, few = drift_a_day(times_s, swinging), drift_a_day(times_s[::9], swinging[::9])
    assert whole is not None
    assert few is not None
    assert few.give_k > 2 * whole.give_k


def test_drift_wants_six_hours():
    assert drift_a_day(minutes(359), [12.0] * 359) is None
