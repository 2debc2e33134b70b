"""When the tank runs dry and the basin is full, read off what was poured."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone

import pytest

from core.chamber.levels import ONLY_ONE, Poured, runs_dry, runs_full
from core.quantities import METRIC, US, Reader
from core.refusals import OutOfRange
from core.units import QUART_M3
from tests.core.telling import in_words

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
    assert in_words(outlook.rate.cautions) == (ONLY_ONE,)
    assert outlook.rate.high == pytest.approx(1.5 * outlook.rate.value)


def test_the_order_does_not_matter():
    assert runs_dry(reversed(STEADY), 0.006) == runs_dry(STEADY, 0.006)


def test_two_jugs_are_one_filling():
    jugs = [*poured((0, 5)), Poured(START + timedelta(days=4), 0.001), Poured(START + timedelta(days=4.02), 0.001)]
    assert in_words(runs_dry(jugs, 0.006).rate.cautions) == (ONLY_ONE,)


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


@pytest.mark.parametrize(("reader", "holds"), [(METRIC, " 6.62 L,"), (US, " 7 qt,")])
def test_more_than_the_tank_holds_is_said_in_the_reader_s_units(reader: Reader, holds: str):
    with pytest.raises(OutOfRange) as caught:
        runs_dry(poured((0, 5), (4, 7)), 7 * QUART_M3)
    assert holds in caught.value.said.say(reader)


@pytest.mark.parametrize(("apart", "count"), [(timedelta(hours=1), 2), (timedelta(hours=1, seconds=1), 3)])
def test_an_hour_apart_is_one_filling_and_a_second_more_is_two(apart: timedelta, count: int):
    second = Poured(START + timedelta(days=4) + apart, 0.001)
    fillings = [*poured((0, 5), (4, 2)), second]
    assert (in_words(runs_dry(fillings, 0.006).rate.cautions) == (ONLY_ONE,)) is (count == 2)


@pytest.mark.parametrize(
    ("days", "low", "high"),
    [
        (((0, 5), (4, 2), (8, 2)), 0.375, 0.625),  # a quarter either way
        (((0, 5), (4, 2)), 0.25, 0.75),  # half, of one interval
        (((0, 5), (4, 1), (8, 3)), 0.25, 0.75),  # what was measured
        (((0, 5), (4, 0), (8, 4)), 0.05, 1.0),  # a tenth of the mean at the least
    ],
)
def test_the_spread_of_the_rate(days: tuple[tuple[float, float], ...], low: float, high: float):
    """Litres a day about half a litre."""
    rate = runs_dry(poured(*days), 0.006).rate
    assert (rate.value, rate.low, rate.high) == pytest.approx(tuple(x / 86.4e6 for x in (0.5, low, high)), rel=1e-9)


def test_the_moments_are_those_of_the_spread():
    outlook = runs_dry(STEADY, 0.006)
    last = START + timedelta(days=12)
    days = [(each - last).total_seconds() / 86_400 for each in (outlook.earliest, outlook.expected, outlook.latest)]
    assert days == pytest.approx([9.6, 12, 16], rel=1e-9)
    assert [each / 86_400 for each in (outlook.lasts.low, outlook.lasts.high)] == pytest.approx([9.6, 16], rel=1e-9)


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: runs_dry(STEADY, 0.9999), None), (lambda: runs_dry(STEADY, 1.0), "holds_m3"),
        (lambda: runs_full(STEADY, 0.9999), None), (lambda: runs_full(STEADY, 1.0), "holds_m3"),
        (lambda: runs_dry(STEADY, 0.006, 0.006 * (1 + 0.995e-5)), None),
        (lambda: runs_dry(STEADY, 0.006, 0.006 * (1 + 1.005e-5)), "now_holds_m3"),
        (lambda: runs_dry(STEADY, 0.002 / (1 + 0.995e-5)), None),
        (lambda: runs_dry(STEADY, 0.002 / (1 + 1.005e-5)), "poured"),
        (lambda: runs_dry(poured((0, 5), (4, 999.9)), 0.99995), None),
        (lambda: runs_dry(poured((0, 5), (4, 1000)), 0.99995), "poured"),
        (lambda: runs_dry(poured((0, 0), (4, 2)), 0.99995), None),
        (lambda: runs_dry(poured((0, 5), (4, 3), (8, -0.001)), 0.99995), "poured"),
        (lambda: runs_full(poured((0, 9), (4, 2)), 0.006), None),
    ],
)  # fmt: skip
def test_each_limit_has_a_hair_on_either_side(call: Callable[[], object], field: str | None):
    try:
        call()
        refused = None
    except OutOfRange as refusal:
        refused = refusal.field
    assert refused == field
