"""When the tank runs dry and the basin is full, read off what was poured."""

from datetime import UTC, datetime, timedelta, timezone

import pytest

from core.chamber.levels import ONLY_ONE, Poured, runs_dry, runs_full, water_a_day
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from core.units import QUART_M3

START = datetime(2024, 3, 1, 8, 0, tzinfo=UTC)


def poured(*days_and_litres: tuple[float, float]) -> list[Poured]:
    return [Poured(START + timedelta(days=days), litres / 1000) for days, litres in days_and_litres]


STEADY = poured((0, 5), (4, 2), (8, 2), (12, 2))


def test_two_litres_in_four_days_are_half_a_litre_a_day():
    assert runs_dry(STEADY, 0.006).rate.show(METRIC) == "0.5 L a day"


def test_the_same_in_quarts():
    assert runs_dry(STEADY, 0.006).rate.show(US) == "0.53 qt a day"


def test_the_first_filling_only_starts_the_count():
    more_at_first = poured((0, 6), (4, 2), (8, 2), (12, 2))
    assert runs_dry(STEADY, 0.006).rate == runs_dry(more_at_first, 0.006).rate


def test_a_full_tank_of_six_litres_lasts_twelve_days_from_the_last_filling():
    outlook = runs_dry(STEADY, 0.006)
    assert abs(outlook.expected - (START + timedelta(days=24))) < timedelta(seconds=1)
    assert outlook.lasts.show(METRIC) == "12 d"


def test_a_tank_filled_half_lasts_half_as_long():
    assert runs_dry(STEADY, 0.006, 0.003).lasts.value == pytest.approx(6 * 86400)


def test_the_day_comes_with_its_spread():
    outlook = runs_dry(STEADY, 0.006)
    assert outlook.earliest < outlook.expected < outlook.latest


def test_the_range_holds_the_fastest_interval():
    outlook = runs_dry(poured((0, 5), (4, 2), (6, 2), (12, 2)), 0.006)
    assert outlook.rate.high == pytest.approx(0.001 / 86400)


def test_one_interval_is_said_to_be_one():
    outlook = runs_dry(STEADY[:2], 0.006)
    assert outlook.rate.cautions == (ONLY_ONE,)
    assert outlook.rate.high == pytest.approx(1.5 * outlook.rate.value)


def test_the_order_does_not_matter():
    assert runs_dry(reversed(STEADY), 0.006) == runs_dry(STEADY, 0.006)


def test_two_jugs_are_one_filling():
    jugs = [*poured((0, 5)), Poured(START + timedelta(days=4), 0.001), Poured(START + timedelta(days=4.02), 0.001)]
    assert runs_dry(jugs, 0.006).rate.cautions == (ONLY_ONE,)


def test_a_change_of_the_clock_does_not_change_the_rate():
    summer = timezone(timedelta(hours=2))
    moved = [Poured(each.at.astimezone(summer), each.volume_m3) for each in STEADY]
    assert runs_dry(moved, 0.006).rate == runs_dry(STEADY, 0.006).rate


def test_a_basin_of_a_litre_that_gathers_a_quarter_a_day_is_full_in_four():
    outlook = runs_full(poured((0, 0.3), (2, 0.5), (4, 0.5)), 0.001)
    assert outlook.lasts.value == pytest.approx(4 * 86400)
    assert outlook.expected == START + timedelta(days=8)


def test_a_basin_found_empty_has_still_a_latest_day():
    outlook = runs_full(poured((0, 0.3), (2, 0.0), (4, 0.5)), 0.001)
    assert outlook.latest > outlook.expected


def test_the_numbers_put_in_give_the_number_got_out():
    assert "6 L ÷ 12 d = 0.5 L a day" in runs_dry(STEADY, 0.006).rate.working[0].say(METRIC)
    assert runs_dry(STEADY, 0.006).lasts.working[-1].say(METRIC) == "6 L ÷ 0.5 L a day = 12 d"


def test_the_plain_rate_is_there_by_itself():
    assert water_a_day(STEADY).value == pytest.approx(0.0005 / 86400)


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: runs_dry(STEADY[:1], 0.006), "poured"),
        (lambda: runs_dry([], 0.006), "poured"),
        (lambda: runs_dry(poured((0, 5), (0.02, 2)), 0.006), "poured"),
        (lambda: runs_dry(poured((0, 5), (4, 7)), 0.006), "poured"),
        (lambda: runs_dry(poured((0, 5), (4, -1)), 0.006), "poured"),
        (lambda: runs_dry(poured((0, 5), (4, float("nan"))), 0.006), "poured"),
        (lambda: runs_full(poured((0, 1), (4, 0)), 0.006), "poured"),
        (lambda: runs_dry(STEADY, 0.0), "holds_m3"),
        (lambda: runs_full(STEADY, float("inf")), "holds_m3"),
        (lambda: runs_dry(STEADY, 0.006, 0.007), "now_holds_m3"),
        (lambda: runs_dry(STEADY, 0.006, 0.0), "now_holds_m3"),
    ],
)
def test_what_cannot_be_read_is_refused_by_field(call, field):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert caught.value.field == field


def test_more_than_the_tank_holds_is_said_in_both_systems():
    with pytest.raises(OutOfRange, match=r"6\.62 L \(7 qt\)"):
        runs_dry(poured((0, 5), (4, 7)), 7 * QUART_M3)
