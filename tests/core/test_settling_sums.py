"""The proof's small sums by hand: how a figure is shown, how often to log, the end of a log, drift, mean and map."""

import math

import pytest

from core.chamber.series import Series
from core.chamber.settling.mapping import instability, space
from core.chamber.settling.measures import (
    DRIFT,
    FINE_DIFFERENCE,
    FINE_TEMPERATURE,
    LASTS,
    SPEED,
    STARTS,
    after,
)
from core.chamber.settling.sampling import sampling
from core.chamber.settling.settled import drift_a_day
from core.chamber.settling.statistics import Band, spread
from core.chamber.settling.staying import Stay, stay
from core.chamber.settling.wanted import Wanted
from core.quantities import METRIC, US, Amount, Quantity
from core.reading import read

BAND = Band(12.0, 1.0)


@pytest.mark.parametrize(
    ("value", "quantity", "metric", "us"),
    [
        (1.236 / 3600, STARTS, "1.24 /h", "1.24 /h"),
        (6.26 / 3600, SPEED, "6.3 K/h", "11.3 °F/h"),
        (6.24 / 3600, SPEED, "6.2 K/h", "11.2 °F/h"),
        (0.216 / 86_400, DRIFT, "0.22 K/d", "0.39 °F/d"),
        (12.504, FINE_TEMPERATURE, "12.50 °C", "54.51 °F"),
        (0.504, FINE_DIFFERENCE, "0.50 K", "0.91 °F"),
        (11_000, LASTS, "3.1 h", "3.1 h"),
        (10_800, LASTS, "3.0 h", "3.0 h"),
        (10_600, LASTS, "176.7 min", "176.7 min"),
        (60, LASTS, "1.0 min", "1.0 min"),
        (59, LASTS, "59 s", "59 s"),
        (5.4, LASTS, "5 s", "5 s"),
    ],
)
def test_how_a_figure_of_the_proof_is_shown(value: float, quantity: Quantity, metric: str, us: str):
    amount = Amount(value, quantity)
    assert (amount.show(METRIC), amount.show(US)) == (metric, us)


@pytest.mark.parametrize(
    ("typed", "quantity", "value"),
    [
        ("3.6 K/h", SPEED, 0.001), ("6.48 °F/h", SPEED, 0.001),
        ("0.864 K/d", DRIFT, 1e-5), ("1.5552 °F/d", DRIFT, 1e-5),
    ],
)  # fmt: skip
def test_what_such_a_unit_is(typed: str, quantity: Quantity, value: float):
    assert read(typed, quantity) == pytest.approx(value, rel=1e-9)


def test_how_long_into_the_log():
    assert after(1600.0, 1000.0) == Amount(600.0, LASTS)


@pytest.mark.parametrize(
    ("period_s", "most_s"), [(None, 75.0), (600.0, 75.0), (400.0, 75.0), (1600.0, 200.0), (2400.0, 300.0), (9e4, 300.0)]
)
def test_readings_stand_an_eighth_of_a_cycle_apart_at_the_most(period_s: float | None, most_s: float):
    """A cycle of ten minutes where none is seen, and never more than five minutes."""
    assert sampling([0.0, 60.0], 60.0, period_s).most_s == most_s


@pytest.mark.parametrize(("interval_s", "is_enough"), [(75.0, True), (75.7, True), (75.8, False)])
def test_a_logger_may_be_a_hundredth_late(interval_s: float, is_enough: bool):
    assert sampling([0.0, interval_s], interval_s, None).is_enough is is_enough


@pytest.mark.parametrize(("interval_s", "shown_s"), [(60.0, 75.75), (40.0, 60.0), (100.0, 101.0)])
def test_what_is_between_two_readings_is_shown(interval_s: float, shown_s: float):
    """A step and a half, no more than the most, no less than the logger's own step."""
    assert sampling([0.0, interval_s], interval_s, None).shown_s == pytest.approx(shown_s)


def test_only_time_between_near_readings_is_covered():
    assert sampling([0, 40, 80, 140, 201, 241], 40.0, None).covered_s == 40 + 40 + 60 + 40


def of(*pieces: tuple[int, float], window_s: float = 86_400.0) -> Stay:
    """So many minutes of each value."""
    values = [value for count, value in pieces for _ in range(count)]
    return stay([60.0 * at for at in range(len(values))], values, BAND, 90.0, window_s=window_s)


@pytest.mark.parametrize(
    ("window_s", "inside_s", "out_s", "edge_s", "out_until_s"),
    [
        (86_400, 11_880, 1140, 120, 7140), (13_140, 11_880, 1140, 120, 7140), (6600, 5940, 600, 60, 7140),
        (6000, 5940, 0, 60, 7140), (3000, 3000, 0, 0, 10_140),
    ],
)  # fmt: skip
def test_the_end_of_a_log_by_hand(window_s: float, inside_s: float, out_s: float, edge_s: float, out_until_s: float):
    """A hundred readings inside, twenty out, a hundred inside: 13 140 s, of which a minute each way is an edge."""
    lately = of((100, 12.0), (20, 14.0), (100, 12.0), window_s=window_s).lately
    all_s = inside_s + out_s + edge_s
    assert lately.from_s == 13_140 - all_s
    assert lately.inside == pytest.approx(inside_s / all_s)
    assert lately.outside == pytest.approx((out_s + edge_s / 2) / all_s)
    assert (lately.longest_out_s, lately.out_until_s, lately.longest_hole_s) == (out_s, out_until_s, 0)


@pytest.mark.parametrize(("first", "second", "out_until"), [(10, 5, 109), (5, 10, 214), (5, 5, 104)])
def test_the_longest_time_outside_is_told_with_its_end(first: int, second: int, out_until: int):
    lately = of((100, 12.0), (first, 14.0), (100, 12.0), (second, 14.0), (100, 12.0)).lately
    assert (lately.longest_out_s, lately.out_until_s) == (60 * (max(first, second) - 1), 60 * out_until)


def test_before_it_first_arrives_nothing_is_lately():
    assert of((100, 14.0), (100, 12.0)).lately.from_s == 100 * 60
    assert of((100, 14.0), (100, 12.0)).lately.inside == 1
    assert of((100, 14.0)).lately.from_s == 0


def test_the_share_inside_is_of_the_time_since_it_stays():
    found = of((50, 14.0), (100, 12.0), (1, 14.0), (100, 12.0))
    assert (found.since_s, found.inside) == (3000, pytest.approx(1 - 120 / 12_000))


def test_a_drift_s_uncertainty_by_hand():
    """0, 1 and 0 K at 0, 3 and 6 h: no slope; 3 × 86 400 × √((2/3) ÷ (2 × 10 800²)) = 24 ÷ √3."""
    found = drift_a_day([0.0, 10_800.0, 21_600.0], [0.0, 1.0, 0.0])
    assert found is not None
    assert (found.by_k, found.give_k) == pytest.approx((0.0, 24 / math.sqrt(3)))


@pytest.mark.parametrize(
    ("times_s", "is_told"),
    [([0, 10_800, 21_600], True), ([0, 10_800, 21_599], False), ([0, 21_600], False)],
)
def test_a_drift_takes_three_readings_and_six_hours(times_s: list[float], is_told: bool):
    assert (drift_a_day(times_s, [12.0] * len(times_s)) is not None) is is_told


@pytest.mark.parametrize(
    ("times_s", "covered_s"), [([0, 60, 180, 240], 300), ([0, 60, 120, 10_000, 10_060], 420), ([0, 60], 120)]
)
def test_the_time_for_which_there_are_readings(times_s: list[float], covered_s: float):
    assert spread(times_s, [12.0] * len(times_s)).covered_s == covered_s


def test_a_spread_by_hand():
    """60 s of 10, 120 s of 13, 60 s of 16: mean 13, deviation √(2 × 60 × 9 ÷ 240)."""
    found = spread([0, 60, 180], [10, 13, 16], BAND, [60, 120, 60])
    assert (found.mean, found.deviation, found.in_band) == pytest.approx((13, math.sqrt(4.5), 0.5))
    assert (found.low_5, found.high_95, found.lowest, found.highest) == (10, 16, 10, 16)


MINUTES = tuple(60.0 * minute for minute in range(120))


def test_a_map_by_hand():
    """One stands at 12, one turns between 12 and 13, one at 11: widths 1 and 2, means 12, 12.5 and 11."""
    probes = [
        Series("still", MINUTES, [12.0] * 120),
        Series("restless", MINUTES, [12.0 + minute % 2 for minute in range(120)]),
        Series("low", MINUTES, [11.0] * 120),
    ]
    found = space(probes)
    assert found is not None
    assert (found.centre, found.warmest, found.coldest) == ("still", "restless", "low")
    assert found.means_c == (12, 12.5, 11)
    assert (found.gradient_k, found.variation_k, found.overall_k) == (1.5, 1, 1.5)
    assert (found.widest_k, found.inhomogeneity_k, found.together_s) == (2, 1, 7200)
    assert found.gradient_give_k == pytest.approx(3 * 0.5 / math.sqrt(120))
    other = space(probes, "restless")
    assert other is not None
    assert (other.centre, other.variation_k, other.inhomogeneity_k) == ("restless", 1.5, 2)


@pytest.mark.parametrize(
    ("count", "step_s", "is_told"), [(30, 63, True), (29, 70, False), (31, 60, True), (31, 59, False)]
)
def test_an_instability_asks_for_thirty_readings_and_half_an_hour(count: int, step_s: float, is_told: bool):
    """DKD-R 5-7."""
    assert (instability([step_s * at for at in range(count)], [12.0] * count) is not None) is is_told


def test_an_instability_is_to_whichever_side_is_further():
    times_s = [60.0 * at for at in range(100)]
    assert instability(times_s, [12.0] * 99 + [11.0]) == pytest.approx(0.99)
    assert instability(times_s, [12.0] * 99 + [13.0]) == pytest.approx(0.99)


def test_what_is_wanted_where_nobody_says_otherwise():
    """Two days, of which one has held; probes no more than 1.5 K apart: common practice; no published source."""
    assert (Wanted().lasts_s, Wanted().held_s, Wanted().apart_k) == (172_800, 86_400, 1.5)
