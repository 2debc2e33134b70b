"""The small sums that the proof of a chamber is made of: each worked out by hand, each bound from both sides."""

import math
from types import SimpleNamespace
from typing import Any

import pytest

from core.chamber.series import Series
from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.humidity import humid_rhythm
from core.chamber.settling.mapping import fluctuation, instability, pairs, space
from core.chamber.settling.measures import A_HOUR, FAHRENHEIT_A_DAY, FAHRENHEIT_AN_HOUR, KELVIN_A_DAY, KELVIN_AN_HOUR
from core.chamber.settling.outline import Trace, hours, on_one_axis, outline
from core.chamber.settling.sampling import Sampling, sampling
from core.chamber.settling.settled import arrived, drift_a_day, undisturbed
from core.chamber.settling.statistics import Band, spread, time_at
from core.chamber.settling.staying import stay
from core.chamber.settling.trace import noise, percentile, smooth, step
from core.refusals import OutOfRange
from tests.core.telling import told

HOUR_S, DAY_S = 3600.0, 86_400.0
MINUTES = [60.0 * minute for minute in range(121)]


@pytest.mark.parametrize(
    ("values", "sigma"),
    [
        ([], 0.0), ([1.0, 2.0], 0.0), ([0.0, 0.0, 1.0], 0.0), ([float(n) for n in range(9)], 0.0),
        ([0.0, 0.0, 1.0, 0.0, 0.0], 0.0), ([0.0, 1.0, 0.0, 1.0], 1.4826 * 4 / math.sqrt(6)),
        ([0.0, 1.0, 0.0, 3.0, 0.0], 1.4826 * 4 / math.sqrt(6)),
    ],
)  # fmt: skip
def test_the_noise_is_told_by_the_median_of_second_differences(values: list[float], sigma: float):
    """1.4826 of their median distance from their middle one, by √6."""
    assert noise(values) == pytest.approx(sigma)


@pytest.mark.parametrize(
    ("values", "least"),
    [
        ([], 0.0),
        ([1.0, 1.0], 0.0),
        ([1.0, 1.5, 1.2], 0.2),
        ([1.0, 1.0000009, 1.1], 0.099999),
        ([1.0, 1.0000011], 1e-6),
    ],
)
def test_the_step_is_the_smallest_difference_of_two_values(values: list[float], least: float):
    assert step(values) == pytest.approx(least, abs=1e-9)


@pytest.mark.parametrize(("share", "value"), [(0.0, 1.0), (1.0, 5.0), (0.5, 2.0), (0.25, 1.5), (0.75, 3.5)])
def test_a_percentile_lies_straight_between_its_neighbours(share: float, value: float):
    assert percentile([1.0, 2.0, 5.0], share) == value


@pytest.mark.parametrize(
    ("values", "width", "means"),
    [
        ([1.0, 2.0, 6.0, 4.0, 7.0], 3, [1.0, 3.0, 4.0, 17 / 3, 7.0]),
        ([1.0, 2.0, 6.0, 4.0, 7.0], 5, [1.0, 3.0, 4.0, 17 / 3, 7.0]),
        ([1.0, 2.0, 6.0, 4.0, 7.0], 1, [1.0, 2.0, 6.0, 4.0, 7.0]),
        ([1.0, 2.0, 6.0, 4.0], 9, [1.0, 3.0, 4.0, 4.0]),
        ([1.0, 2.0], 9, [1.0, 2.0]),
        ([0.0, 0.0, 0.0, 5.0, 0.0, 0.0, 0.0], 5, [0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 0.0]),
    ],
)
def test_a_trace_is_smoothed_over_its_neighbours(values: list[float], width: int, means: list[float]):
    assert smooth(values, width) == pytest.approx(means)


@pytest.mark.parametrize(("value", "holds"), [(10.5, True), (10.4999, False), (13.5, True), (13.5001, False)])
def test_a_band_holds_both_its_edges(value: float, holds: bool):
    assert Band(12.0, 1.5).holds(value) is holds


@pytest.mark.parametrize(("target", "half"), [(12.0, 0.0), (12.0, math.inf), (math.inf, 1.0), (math.nan, 1.0)])
def test_a_band_has_a_width_and_a_middle(target: float, half: float):
    with pytest.raises(OutOfRange):
        Band(target, half)


def test_each_value_has_the_time_of_all_its_readings():
    assert time_at([1.0, 2.0, 1.0, 1.0], [60.0, 90.0, 60.0, 60.0]) == {1.0: 180.0, 2.0: 90.0}


@pytest.mark.parametrize(("values", "low", "high"), [(list(range(1, 21)), 1, 19), (list(range(1, 41)), 2, 38)])
def test_a_twentieth_of_the_readings_lies_below_and_above(values: list[int], low: int, high: int):
    found = spread([60.0 * n for n in range(len(values))], values, Band(10.5, 5.0))
    assert (found.low_5, found.high_95, found.lowest, found.highest) == (low, high, 1, values[-1])
    assert found.in_band == pytest.approx(10 / len(values))
    assert found.covered_s == 60 * len(values)


def test_the_spread_weighs_by_time():
    found = spread([0.0, 60.0], [1.0, 4.0], lasts_s=[60.0, 120.0])
    assert (found.mean, found.deviation) == (pytest.approx(3.0), pytest.approx(math.sqrt(2)))


@pytest.mark.parametrize(
    ("window_s", "half"), [(1800.0, 0.5), (1799.0, 0.483333), (7200.0, 2.0), (7199.0, 1.983333), (3600.0, 1.0)]
)
def test_the_fluctuation_is_half_of_what_the_worst_window_spans(window_s: float, half: float):
    """A ramp of a thirtieth of a kelvin a minute, over two hours."""
    ramp = [minute / 30 for minute in range(121)]
    assert fluctuation(MINUTES, ramp, window_s) == pytest.approx(half, abs=1e-5)


@pytest.mark.parametrize("at", [0, 1, 23, 24, 25, 60, 119, 120])
def test_a_leap_is_found_wherever_it_is(at: int):
    values = [12.0] * 121
    values[at] = 13.0
    assert fluctuation(MINUTES, values) == 0.5


def test_the_usual_interval_tells_how_many_readings_a_window_holds():
    ramp = [minute / 30 for minute in range(121)]
    assert fluctuation(MINUTES, ramp, usual_s=120.0) == pytest.approx(0.25)


@pytest.mark.parametrize(
    ("count", "apart_s", "is_told"), [(30, 63.0, True), (29, 70.0, False), (31, 60.0, True), (31, 59.9, False)]
)
def test_the_instability_wants_thirty_readings_and_half_an_hour(count: int, apart_s: float, is_told: bool):
    times = [apart_s * n for n in range(count)]
    found = instability(times, [12.0] * (count - 1) + [13.0])
    assert found == (pytest.approx(1 - 1 / count) if is_told else None)


def test_the_instability_is_the_greater_of_both_ways():
    assert instability(MINUTES, [12.0] * 120 + [11.0]) == pytest.approx(1 - 1 / 121)


def series(name: str, *values: float, times: list[float] | None = None) -> Series:
    return Series(name, times or [60.0 * n for n in range(len(values))], values)


def test_the_figures_of_space_are_those_of_their_standards():
    """Three probes over four minutes, one of them out of step at the third reading."""
    found = space([series("a", 12, 12, 12, 12), series("b", 13, 13, 15, 13), series("c", 11, 12, 11, 12)], "a")
    assert found is not None
    assert (found.centre, found.warmest, found.coldest) == ("a", "b", "c")
    assert found.means_c == pytest.approx((12.0, 13.5, 11.5))
    assert (found.gradient_k, found.variation_k) == (pytest.approx(2.0), pytest.approx(1.5))
    assert (found.overall_k, found.uniformity_k) == (pytest.approx(2.0), pytest.approx(2.0))
    assert (found.inhomogeneity_k, found.widest_k, found.together_s) == (3.0, 4.0, 240.0)
    # The two apart differ by 2, 1, 4 and 1: a deviation of √1.5, and three standard errors of four readings.
    assert found.gradient_give_k == pytest.approx(3 * math.sqrt(1.5) / 2)


@pytest.mark.parametrize(("centre", "name", "variation_k"), [("c", "c", 2.0), (None, "a", 1.5), ("x", "a", 1.5)])
def test_the_centre_is_the_probe_that_is_named_or_the_first(centre: str | None, name: str, variation_k: float):
    found = space([series("a", 12, 12), series("b", 13.5, 13.5), series("c", 11.5, 11.5)], centre)
    assert found is not None
    assert (found.centre, found.variation_k) == (name, pytest.approx(variation_k))


def test_the_uniformity_is_that_of_the_worst_half_hour():
    """31 readings a minute apart span it; 31 of two hours' are a kelvin apart."""
    apart = [1.0 if 40 <= n < 71 else 0.0 for n in range(121)]
    found = space([Series("a", MINUTES, [12.0] * 121), Series("b", MINUTES, [12.0 + each for each in apart])])
    assert found is not None
    assert (found.uniformity_k, found.overall_k) == (1.0, pytest.approx(31 / 121))


def test_a_log_shorter_than_half_an_hour_is_its_own_worst():
    found = space([series("a", 12, 12, 12), series("b", 12, 12, 15)])
    assert found is not None
    assert found.uniformity_k == pytest.approx(1.0)


@pytest.mark.parametrize(("pause_s", "readings"), [(360.0, 4), (361.0, 2)])
def test_a_probe_is_read_straight_between_its_readings_but_not_over_a_gap(pause_s: float, readings: int):
    """A gap is three of its intervals, here of two minutes; the other's readings in it are then not compared."""
    one = series("a", 12, 12, 12, 12, times=[0.0, 120.0, 240.0, 300.0])
    other = series("b", 12, 13, 14, 15, 17, times=[0.0, 120.0, 120.0 + pause_s, 240.0 + pause_s, 360.0 + pause_s])
    (pair,) = pairs([one, other])
    found = space([one, other])
    assert found is not None
    kept = [0.0, 1.0, 1 + 120 / pause_s, 1 + 180 / pause_s][:readings]
    assert pair.difference.highest == pytest.approx(-min(kept))
    assert pair.difference.lowest == pytest.approx(-max(kept), abs=1e-6)


def test_probes_that_share_one_reading_are_no_pair():
    assert pairs([series("a", 12, 12, times=[0.0, 60.0]), series("b", 12, 12, times=[60.0, 120.0])]) == ()
    assert space([series("a", 12, 12, times=[0.0, 60.0]), series("b", 12, 12, times=[60.0, 120.0])]) is None


@pytest.mark.parametrize(
    ("period_s", "most_s"), [(None, 75.0), (600.0, 75.0), (608.0, 76.0), (2400.0, 300.0), (2408.0, 300.0), (60.0, 75.0)]
)
def test_a_cycle_wants_eight_readings(period_s: float | None, most_s: float):
    """Of ten minutes where none is seen; and a reading every five minutes at least."""
    assert sampling([0.0, 60.0], 60.0, period_s).most_s == most_s


@pytest.mark.parametrize(("interval_s", "enough"), [(60.6, True), (60.7, False)])
def test_an_interval_may_be_a_hundredth_longer(interval_s: float, enough: bool):
    assert Sampling(interval_s, None, 60.0, 0.0).is_enough is enough


@pytest.mark.parametrize(("interval_s", "most_s", "shown_s"), [(60, 75, 75.75), (60, 300, 90), (120, 75, 121.2)])
def test_readings_no_further_apart_show_what_is_between(interval_s: float, most_s: float, shown_s: float):
    assert Sampling(interval_s, None, most_s, 0.0).shown_s == pytest.approx(shown_s)


@pytest.mark.parametrize(("last_s", "covered_s"), [(90.0, 150.0), (90.1, 60.0)])
def test_what_is_covered_is_the_time_between_readings_that_show_it(last_s: float, covered_s: float):
    assert sampling([0.0, 60.0, 60.0 + last_s], 60.0, 2400.0).covered_s == covered_s


@pytest.mark.parametrize(("at_s", "calm"), [(599, True), (600, False), (1200 + 899, False), (1200 + 900, True)])
def test_a_quarter_of_an_hour_behind_an_event_is_not_calm(at_s: float, calm: bool):
    event: Any = SimpleNamespace(starts_s=600.0, ends_s=1200.0)
    assert undisturbed([0.0, at_s, 9000.0], [event])[1] is calm


def test_it_arrives_with_its_first_reading_at_the_edge():
    assert arrived([0.0, 60.0, 120.0], [15.0, 13.5, 12.0], Band(12.0, 1.5)) == 60.0


@pytest.mark.parametrize(("count", "lasts_s", "is_told"), [(3, 21_600, True), (3, 21_599, False), (2, 30_000, False)])
def test_a_drift_wants_three_readings_and_six_hours(count: int, lasts_s: float, is_told: bool):
    times = [lasts_s * n / (count - 1) for n in range(count)]
    assert (drift_a_day(times, [12.0] * count) is not None) is is_told


def test_a_drift_and_what_it_may_be_off_by():
    """Four readings six hours apart that rise by a zigzag; worked out by least squares."""
    found = drift_a_day([n * 21_600.0 for n in range(4)], [12.1, 12.15, 12.6, 12.65])
    assert found is not None
    # Σ(t − t̄)(y − ȳ) ÷ Σ(t − t̄)² in quarter days: (−1.5·−0.275 −0.5·−0.225 +0.5·0.225 +1.5·0.275) ÷ 5 = 0.21
    assert found.by_k == pytest.approx(0.84)
    left = (2 * 0.275**2 + 2 * 0.225**2 - 0.21**2 * 5) / 2
    assert found.give_k == pytest.approx(3 * 4 * math.sqrt(left / 5))


def stays(values: list[float], calm: list[bool] | None = None, window_s: float = DAY_S, step_s: float = 60.0):
    times = [step_s * n for n in range(len(values))]
    return stay(times, values, Band(12.0, 1.0), 1.5 * step_s, calm, window_s)


def test_lately_counts_only_the_window_and_from_the_first_reading_inside():
    found = stays([20.0] * 10 + [12.0] * 91)
    assert (found.since_s, found.inside, found.lately.from_s) == (600.0, 1.0, 600.0)
    late = stays([12.0] * 101, window_s=1800.0).lately
    assert (late.from_s, late.inside, late.outside) == (4200.0, 1.0, 0.0)


def test_what_is_between_a_reading_inside_and_one_outside_is_half_outside():
    found = stays([12.0] * 50 + [20.0] * 3 + [12.0] * 48).lately
    assert (found.inside, found.outside) == (pytest.approx(96 / 100), pytest.approx(3 / 100))
    assert (found.longest_out_s, found.out_until_s) == (120.0, 52 * 60.0)


def test_the_first_of_two_departures_alike_is_told():
    found = stays([12.0] * 20 + [20.0] * 5 + [12.0] * 20 + [20.0] * 5 + [12.0] * 20).lately
    assert (found.longest_out_s, found.out_until_s) == (240.0, 24 * 60.0)


@pytest.mark.parametrize(("outside", "is_stay"), [(14, True), (15, False)])
def test_out_and_on_its_way_for_a_quarter_of_an_hour_is_a_departure(outside: int, is_stay: bool):
    found = stays([12.0] * 400 + [20.0] * outside + [12.0] * 400)
    assert (found.since_s == 0.0) is is_stay


@pytest.mark.parametrize(("excused", "is_stay"), [(99, True), (100, False)])
def test_a_quarter_of_the_time_may_be_excused(excused: int, is_stay: bool):
    """Of 400 minutes: the readings that are excused, and the way to them and back."""
    calm = [True] * 150 + [False] * excused + [True] * (401 - 150 - excused)
    found = stays([12.0] * 401, calm)
    assert ((found.since_s == 0.0), found.inside) == (is_stay, 1.0)


@pytest.mark.parametrize(("apart_s", "kind"), [(90.0, "edge"), (90.1, "hole")])
def test_readings_further_apart_than_show_it_are_a_hole(apart_s: float, kind: str):
    found = stay([0.0, 60.0, 60.0 + apart_s, 120.0 + apart_s], [12.0] * 2 + [20.0] * 2, Band(12.0, 1.0), 90.0).lately
    assert found.longest_hole_s == (apart_s if kind == "hole" else 0.0)


@pytest.mark.parametrize(("count", "points"), [(120, 120), (121, 120)])
def test_a_log_of_120_readings_is_its_own_outline(count: int, points: int):
    found = outline(Series("low", [60.0 * n for n in range(count)], [12 + n % 2 for n in range(count)]))
    assert len(found) <= points
    assert (found[0], found[-1][0]) == ((0.0, 12.0), round((count - 1) / 60, 3))


def test_an_outline_keeps_lowest_and_highest_of_each_of_its_parts():
    found = outline(Series("low", [60.0 * n for n in range(1000)], [12 + n / 1000 for n in range(1000)]), 22)
    assert [at for at, _ in found] == [
        round(n / 60, 3) for n in sorted({0, 999, *range(0, 1000, 100), *range(99, 1000, 100)})
    ]


def test_an_hour_of_the_clock_has_its_own_readings():
    log = Series("low", [1800.0, 3599.0, 3600.0, 10_800.0], [12, 13, 14, 15], [0.7, None, 0.8, None])
    told = [(hour.begins_s, hour.mean_c, hour.humidity, hour.driest, hour.dampest) for hour in hours(log)]
    assert told == [(0.0, 12.5, 0.7, 0.7, 0.7), (3600.0, 14.0, 0.8, 0.8, 0.8), (10_800.0, 15.0, None, None, None)]


@pytest.mark.parametrize(("pause_s", "axis"), [(180.0, [0, 60, 240]), (181.0, [0, 60, 120, 241])])
def test_a_pause_of_more_than_three_intervals_has_a_time_without_a_value(pause_s: float, axis: list[float]):
    times, (values,) = on_one_axis([Trace([0, 60, 60 + pause_s], [1, 2, 3], 60.0)])
    assert times.tolist() == axis
    assert any(map(math.isnan, values)) is (len(axis) == 4)


def test_traces_of_one_clock_and_two_intervals_keep_the_gaps_of_both():
    times = [0.0, 60.0, 300.0]
    axis, columns = on_one_axis([Trace(times, [1, 2, 3], 60.0), Trace(times, [1, 2, 3], 90.0)])
    assert axis.tolist() == [0, 60, 120, 300]
    assert [math.isnan(each[2]) for each in columns] == [True, False]


def air(vapour: list[float], step_s: float = 60.0, humidities: list[float] | None = None) -> HumidAir:
    count = len(vapour)
    times = [step_s * n for n in range(count)]
    nothing = [0.0] * count
    return HumidAir(times, [step_s] * count, nothing, humidities or nothing, vapour, nothing, nothing)


def fog(every: int, count: int, climbs: int = 4) -> list[float]:
    """Vapour that climbs for some minutes and falls slowly again."""
    return [100.0 * min(at / climbs, 1 - (at - climbs) / (every - climbs)) for at in (n % every for n in range(count))]


@pytest.mark.parametrize(("step_s", "why"), [(150.0, ""), (151.0, "log every 2 min or oftener")])
def test_a_humidifier_is_told_from_readings_two_and_a_half_minutes_apart(step_s: float, why: str):
    found = humid_rhythm(air(fog(40, 400), step_s), ())
    assert why in told(found.why_not)
    assert (found.work is None) is bool(why)


@pytest.mark.parametrize(("count", "why"), [(16, "no bursts"), (15, "too few humidities")])
def test_sixteen_humidities_are_enough_to_look(count: int, why: str):
    assert why in told(humid_rhythm(air([0.0] * count), ()).why_not)


def test_how_often_it_works_is_the_mean_of_its_gaps():
    found = humid_rhythm(air(fog(40, 400)), ())
    assert found.work is not None
    assert found.work.an_hour == pytest.approx(1.5, rel=0.02)
    assert (found.follows, found.swing) == (False, None)


def cycle(falls_s: float, lasts_s: float) -> Any:
    before, after = SimpleNamespace(falls_s=falls_s), SimpleNamespace(falls_s=falls_s + lasts_s)
    return SimpleNamespace(before=before, after=after, lasts_s=lasts_s)


@pytest.mark.parametrize(
    ("lasts_s", "follows"), [(2400.0, True), (2090.0, True), (2080.0, False), (2820.0, True), (2830.0, False)]
)
def test_it_follows_the_compressor_where_their_rhythms_differ_by_less_than_15_per_cent(lasts_s: float, follows: bool):
    """40 min ÷ 1.15 is 2087 s, ÷ 0.85 is 2824 s."""
    assert humid_rhythm(air(fog(40, 400)), [cycle(0.0, lasts_s)]).follows is follows


def test_a_door_s_vapour_is_not_the_humidifier_s():
    event: Any = SimpleNamespace(starts_s=4800.0, ends_s=5400.0)
    with_door, without = (humid_rhythm(air(fog(40, 400)), (), events).work for events in ([event], []))
    assert with_door is not None
    assert without is not None
    assert with_door.an_hour < without.an_hour


@pytest.mark.parametrize(("steps", "swing"), [(3, None), (4, 4 / 64)])
def test_a_swing_of_more_than_three_of_the_logger_s_steps_is_told(steps: int, swing: float | None):
    humidities = [0.75 + (n % (steps + 1)) / 64 for n in range(100)]
    found = humid_rhythm(air([0.0] * 100, humidities=humidities), [cycle(0.0, 1800.0)])
    assert (found.swing and found.swing.size) == (swing and pytest.approx(swing))


@pytest.mark.parametrize(("lasts_s", "is_told"), [(480.0, True), (420.0, False)])
def test_a_cycle_of_eight_readings_shows_its_swing(lasts_s: float, is_told: bool):
    humidities = [0.80 + (n % 6) / 100 for n in range(100)]
    found = humid_rhythm(air([0.0] * 100, humidities=humidities), [cycle(0.0, lasts_s)])
    assert (found.swing is not None) is is_told


@pytest.mark.parametrize(
    ("unit", "value", "si"),
    [
        (A_HOUR, 1.0, 1 / 3600), (KELVIN_AN_HOUR, 1.0, 1 / 3600), (FAHRENHEIT_AN_HOUR, 9.0, 5 / 3600),
        (KELVIN_A_DAY, 1.0, 1 / 86_400), (FAHRENHEIT_A_DAY, 9.0, 5 / 86_400),
    ],
)  # fmt: skip
def test_the_units_of_a_proof(unit, value: float, si: float):
    assert unit.to_si(value) == pytest.approx(si)
