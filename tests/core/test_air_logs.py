"""The chamber's air as loggers wrote it: corrected, thinned for a chart, and taken into the forecast."""

import pytest

from core.daybook.air_logs import air_course, logged
from core.daybook.facts.air_log import AirLogTaken
from core.daybook.facts.batch import PieceWeighed
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.facts.instruments import IcePointChecked, InstrumentAdded
from core.daybook.hanging_air import air_since
from core.dry.pace import Air
from core.units import DAY_S, HOUR_S
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.test_drying import drying, hung_two


def log(days: float = 2, temperature_c: float = 12.0, humidity: float | None = 0.80, **more) -> AirLogTaken:
    count = round(24 * days)
    return AirLogTaken(
        file="0" * 64,
        stretch_s=HOUR_S,
        begins_s=tuple(at * HOUR_S for at in range(count)),
        temperatures_c=(temperature_c,) * count,
        highest_c=(temperature_c + 1,) * count,
        known_s=(HOUR_S,) * count,
        readings=60 * count,
        humidities=() if humidity is None else (humidity,) * count,
        **more,
    )


@pytest.fixture
def kitchen() -> Kitchen:
    return Kitchen()


def since_day(kitchen: Kitchen, day: float = 2) -> tuple[Air, ...]:
    return air_since(kitchen.book, NOON + day * DAY)


def test_a_log_is_the_air_where_nothing_else_is_known(kitchen: Kitchen):
    kitchen.note(log(), CHAMBER, at=2)
    assert since_day(kitchen) == (Air(0.0, 12.0, 0.80),)


def test_a_log_comes_before_what_is_set_and_what_was_read_meanwhile(kitchen: Kitchen):
    kitchen.note(SetPointsChosen(10.0, 0.70), CHAMBER, at=0)
    kitchen.note(AirRead(11.0, 0.75), CHAMBER, at=3)
    kitchen.note(log(), CHAMBER, at=2)
    assert since_day(kitchen) == (Air(0.0, 12.0, 0.80),)


def test_a_change_that_nobody_noted_is_seen_in_the_log(kitchen: Kitchen):
    kitchen.note(SetPointsChosen(12.0, 0.80), CHAMBER, at=0)
    kitchen.note(log(5), CHAMBER, at=2)
    kitchen.note(log(5, humidity=0.70), CHAMBER, at=7)
    assert [(air.from_s / DAY_S, round(air.humidity, 3)) for air in since_day(kitchen)] == [(0, 0.80), (5, 0.70)]


def test_days_that_differ_by_what_loggers_do_are_one_air(kitchen: Kitchen):
    kitchen.note(log(3), CHAMBER, at=2)
    kitchen.note(log(3, temperature_c=12.5, humidity=0.81), CHAMBER, at=5)
    (air,) = since_day(kitchen)
    assert (air.temperature_c, air.humidity) == pytest.approx((12.2, 0.805))


def test_what_was_read_after_the_log_ended_counts_from_then(kitchen: Kitchen):
    kitchen.note(log(2), CHAMBER, at=2)
    kitchen.note(AirRead(11.0, 0.72), CHAMBER, at=6)
    assert since_day(kitchen) == (Air(0.0, 12.0, 0.80), Air(4 * DAY_S, 11.0, 0.72))


def test_a_later_change_of_what_is_set_ends_what_the_log_says(kitchen: Kitchen):
    kitchen.note(SetPointsChosen(12.0, 0.80), CHAMBER, at=0)
    kitchen.note(log(2, humidity=0.82), CHAMBER, at=2)
    kitchen.note(SetPointsChosen(12.0, 0.74), CHAMBER, at=6)
    assert [round(air.humidity, 2) for air in since_day(kitchen)] == [0.82, 0.74]


def test_a_log_without_humidity_says_nothing_of_the_drying(kitchen: Kitchen):
    kitchen.note(log(humidity=None), CHAMBER, at=2)
    assert since_day(kitchen) == ()


def test_drier_air_in_a_log_moves_the_day_without_any_other_entry(kitchen: Kitchen):
    batch, first, _ = hung_two(kitchen)
    kitchen.note(SetPointsChosen(12.0, 0.80), CHAMBER, at=0)
    kitchen.note(log(11, humidity=0.80), CHAMBER, at=2)
    before = drying(kitchen, batch).forecast(first)
    kitchen.note(log(2, humidity=0.70), CHAMBER, at=13)
    after = drying(kitchen, batch).forecast(first)
    assert after.likely_s < before.likely_s


def test_the_order_in_which_logs_were_brought_does_not_matter(kitchen: Kitchen):
    batch, first, _ = hung_two(kitchen)
    logs = [(log(5), 2), (log(5, humidity=0.70), 7)]
    other = Kitchen()
    other.records = list(kitchen.records)
    for each, at in logs:
        kitchen.note(each, CHAMBER, at=at)
    for each, at in reversed(logs):
        other.note(each, CHAMBER, at=at)
    assert drying(kitchen, batch).forecast(first) == drying(other, batch).forecast(first)


@pytest.mark.parametrize(("reads_c", "left"), [(2.0, 10.0), (9.0, None)])
def test_a_log_is_corrected_by_its_check_and_left_out_where_that_failed(kitchen: Kitchen, reads_c: float, left):
    thermometer = kitchen.note(InstrumentAdded("shelf", "thermometer", 30 * DAY_S))
    kitchen.note(IcePointChecked(reads_c), thermometer, at=1)
    kitchen.note(log(1, instrument=thermometer), CHAMBER, at=2)
    found = {each.temperature_c for each in logged(kitchen.book)}
    assert found == (set() if left is None else {left})


def test_a_chart_gets_no_more_points_than_it_asks_for(kitchen: Kitchen):
    kitchen.note(log(10), CHAMBER, at=2)
    course = air_course(kitchen.book, NOON, NOON + 20 * DAY, most=40)
    assert len(course) == 20
    assert (course[0].temperature_c, course[0].humidity) == pytest.approx((12.0, 0.80))
    assert NOON + 2 * DAY < course[0].at < course[-1].at < NOON + 12 * DAY


def test_where_nothing_was_logged_a_chart_has_no_point(kitchen: Kitchen):
    kitchen.note(PieceWeighed(0.8), "x")
    assert air_course(kitchen.book, NOON, NOON + DAY) == ()
