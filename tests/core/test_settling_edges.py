"""Where the proof of a chamber begins to say another thing: a finding on each side of each edge, a hair off."""

from functools import cache
from typing import Any

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.advice import OFFSET_PART, advise
from core.chamber.settling.analysis import Analysis, Compressor
from core.chamber.settling.comparing import key_figures
from core.chamber.settling.events import Event
from core.chamber.settling.mapping import Space, fluctuation, pairs
from core.chamber.settling.outline import Trace, on_one_axis, outline
from core.chamber.settling.proof import prove
from core.chamber.settling.runs import Run
from core.chamber.settling.settled import Drift
from core.chamber.settling.statistics import Band, Spread, spread
from core.chamber.settling.staying import Lately, Stay
from core.chamber.settling.wanted import Wanted
from core.refusals import OutOfRange
from core.sentence import as_typed
from tests.core.analysed import analyse, compressor_of
from tests.core.settling_flat import said
from tests.core.telling import told as words_of

HOUR_S, DAY_S = 3600.0, 86_400.0
WANTED = Wanted(Band(12.0, 1.0), Band(0.80, 0.05), apart_k=1.5, held_s=DAY_S, lasts_s=2 * DAY_S)


def test_what_is_wanted_where_nothing_else_is_said():
    """Common practice, without a source: 12.8 °C and 80 %, a day of two, means within 1.5 K."""
    wanted = Wanted()
    assert (wanted.temperature, wanted.humidity) == (Band(12.8, 1.5), Band(0.80, 0.05))
    assert (wanted.apart_k, wanted.held_s, wanted.lasts_s) == (1.5, DAY_S, 2 * DAY_S)


@cache
def steady() -> Analysis:
    """Two days of minutes, all within the bands; the second probe of every two minutes."""
    times_s = [60.0 * place for place in range(2880)]
    air_c = [12.0 + 0.1 * (place % 3) for place in range(2880)]
    first = Series("first", times_s, air_c, [0.80] * 2880)
    return analyse([first, Series("second", times_s[::2], air_c[::2])], WANTED)


LATELY = Lately(86_340.0, 0.9, 0.0, 0.0, 86_340.0, 0.0)


def first(**changes: Any) -> Analysis:
    probe = evolve(steady().probes[0], humidity=None, **changes)
    return evolve(steady(), probes=(probe, steady().probes[1]))


def reason(key: str, found: Analysis) -> tuple[bool | None, str]:
    (one,) = (each for each in prove(found).reasons if each.key == key)
    return one.met, one.text.text


def lately(**changes: float) -> Stay:
    return Stay(None, 0.0, evolve(LATELY, **changes))


@pytest.mark.parametrize(
    ("changes", "events_why_not", "met", "words"),
    [
        ({"inside": 0.0, "outside": 1e-9}, "", False, "does not come between"),
        ({"inside": 0.0, "outside": 0.0}, "", None, "is shown between"),
        ({"inside": 1e-9, "outside": 1.0}, "", False, "is outside"),
        ({"outside": 0.05}, "many", None, "is shown between"),
        ({"outside": 0.0501}, "many", None, "if by doors"),
        ({"outside": 0.25}, "many", None, "if by doors"),
        ({"outside": 0.2501}, "many", False, "is outside"),
        ({"outside": 0.2, "longest_out_s": 901.0}, "many", None, "if by doors"),
        ({"longest_out_s": 900.0}, "", None, "is shown between"),
        ({"longest_out_s": 901.0}, "", False, "at a time"),
        ({"outside": 0.05}, "", None, "is shown between"),
        ({"outside": 0.0501}, "", False, "is outside"),
        ({"inside": 0.9499}, "", None, "is shown between"),
        ({"inside": 0.95}, "", None, "has been between"),
    ],
)
def test_why_a_temperature_does_not_stay(changes: dict[str, float], events_why_not: str, met: bool | None, words: str):
    compressor = Compressor(events_why_not=as_typed(events_why_not) if events_why_not else None)
    found = reason("temperature-first", first(stay=lately(**changes), compressor=compressor))
    assert found[0] is met
    assert words in found[1]


@pytest.mark.parametrize(("held_s", "met"), [(DAY_S - 600, True), (DAY_S - 601, None), (DAY_S, True)])
def test_a_day_held_may_lack_its_last_reading(held_s: float, met: bool | None):
    """Ten minutes of it: the longest a reading may be for."""
    stay = Stay(steady().probes[0].ends_s - held_s, 1.0, evolve(LATELY, inside=1.0))
    assert reason("temperature-first", first(stay=stay))[0] is met


@pytest.mark.parametrize(("lacks_s", "met"), [(600.0, True), (601.0, None)])
def test_two_days_may_lack_their_last_reading(lacks_s: float, met: bool | None):
    assert reason("length", first(ends_s=2 * DAY_S - lacks_s))[0] is met


@pytest.mark.parametrize(("covered", "met"), [(0.95, True), (0.9499, None)])
def test_two_days_are_covered_for_95_per_cent(covered: float, met: bool | None):
    sampled = evolve(steady().probes[0].sampling, covered_s=covered * 2 * DAY_S)
    assert reason("length", first(sampling=sampled))[0] is met


@pytest.mark.parametrize(("hole_s", "met"), [(900.0, True), (901.0, None)])
def test_a_quarter_of_an_hour_may_be_without_a_reading(hole_s: float, met: bool | None):
    assert reason("hole-first", first(stay=lately(longest_hole_s=hole_s)))[0] is met


@pytest.mark.parametrize(
    ("by_k", "give_k", "met"),
    [(0.4, 0.1, True), (-0.4, 0.1, True), (0.4, 0.1001, None), (0.6, 0.1, None), (0.6001, 0.1, False)],
)
def test_half_of_the_half_band_may_be_drifted_in_a_day(by_k: float, give_k: float, met: bool | None):
    assert reason("drift-first", first(drift=Drift(by_k, give_k)))[0] is met


def space(**changes: Any) -> Analysis:
    usual = Space("first", "first", "second", 1.0, 0.1, DAY_S, 0.5, 0.5, 0.5, 0.5, 0.5, (12.0, 12.0))
    return evolve(steady(), space=evolve(usual, **changes))


@pytest.mark.parametrize(("gradient_k", "met"), [(1.4, True), (1.4001, None), (1.6, None), (1.6001, False)])
def test_the_means_may_be_so_far_apart(gradient_k: float, met: bool | None):
    assert reason("gradient", space(gradient_k=gradient_k))[0] is met


@pytest.mark.parametrize(("share", "words"), [(0.7, "The means of"), (0.6999, "were logged together")])
def test_probes_are_logged_together_for_most_of_the_time_it_is_held(share: float, words: str):
    """95 %, less the quarter that doors and defrosts may take."""
    assert words in reason("gradient", space(together_s=share * DAY_S + 1e-6))[1]


@pytest.mark.parametrize(("humidity", "low", "high"), [(Band(0.98, 0.05), 0.93, 1.0), (Band(0.03, 0.05), 0.0, 0.08)])
def test_a_band_of_humidity_ends_with_dry_and_with_full_air(humidity: Band, low: float, high: float):
    found = prove(evolve(steady(), wanted=evolve(WANTED, humidity=humidity))).reasons
    (one,) = (said(each.text) for each in found if each.key == "humidity-first")
    assert (one["low"], one["high"]) == (pytest.approx(low), pytest.approx(high))


@pytest.mark.parametrize(("minutes", "is_told"), [(360, True), (359, False)])
def test_six_hours_of_staying_are_a_state(minutes: int, is_told: bool):
    """The last reading is a minute before the end of its time."""
    values = [20.0] * 600 + [12.0] * (minutes + 1)
    found = analyse([Series("first", [60.0 * place for place in range(len(values))], values)], WANTED)
    assert ("settled" in dict(key_figures(found))) is is_told
    assert (found.centre.stays_since_s == 36_000.0) is is_told


def run(falls_s: float) -> Run:
    return Run(falls_s - 60, falls_s, falls_s - 90, 13.0, falls_s + 90, 11.0)


@pytest.mark.parametrize(
    ("falls_s", "period_s"),
    [((0.0, 600.0), None), ((0.0, 600.0, 1300.0), 650.0), ((0.0, 600.0, 1300.0, 3000.0), 700.0)],
)
def test_the_usual_cycle_of_runs_that_are_not_measured(falls_s: tuple[float, ...], period_s: float | None):
    assert Compressor(tuple(map(run, falls_s))).period_s == period_s


@pytest.mark.parametrize("readings", [1, 2])
def test_two_temperatures_are_the_fewest(readings: int):
    log = Series("first", [0.0, 60.0][:readings], [12.0, 12.1][:readings])
    if readings == 2:
        assert analyse([log]).centre.lasts_s == 60.0
    else:
        with pytest.raises(OutOfRange, match="fewer than two"):
            analyse([log])


@pytest.mark.parametrize(("above", "advised"), [(-1e-9, ["humidifier"]), (0.0, [])])
def test_a_humidity_that_is_low_never_lower_than_a_third_above_its_aim_does_not_overshoot(
    above: float, advised: list[str]
):
    low = 0.80 + OFFSET_PART * 0.05 + above
    damp = Spread(0.80, 0.02, low, 0.99, low, 0.90, DAY_S, 0.5)
    humidity = steady().centre.humidity
    assert humidity is not None
    found = evolve(steady(), centre=evolve(steady().centre, humidity=evolve(humidity, calm=damp)))
    assert [each.key for each in advise(found)] == advised


@pytest.mark.parametrize(("readings", "points"), [(120, 120), (121, 118)])
def test_a_log_of_120_readings_is_drawn_as_it_is(readings: int, points: int):
    """One of 121 by both ends and two of each of 59 parts; its ends are the lowest and the highest of theirs."""
    rising = Series("first", [60.0 * place for place in range(readings)], [place / 10 for place in range(readings)])
    assert len(outline(rising)) == points


def test_a_pause_longer_than_a_part_of_an_outline_has_no_point():
    times_s = [60.0 * place for place in (*range(100), *range(900, 1000))]
    found = outline(Series("first", times_s, [12.0] * 200), 12)
    assert [at for at, _ in found] == [0.0, 15.0, 16.65]


@pytest.mark.parametrize(
    ("readings", "high", "is_counted"),
    [(9, 11.59, True), (9, 11.61, False), (9, 11.94, False), (9, 11.96, True), (10, 11.61, True)],
)
def test_of_few_readings_no_run_may_be_counted_by_a_part_of_the_band_alone(
    readings: int, high: float, is_counted: bool
):
    """A fifth of each cycle down, the rest up, from 11.06 °C to 13; but one hold ends at `high`. The run after it falls
    0.776 K or more; by parts of that, from 0.543 K on and from 0.892 K on. The log ends in the middle of a hold."""
    places = [place % readings / readings for place in range(60 * readings + readings // 2)]
    values = [round(12 + (1 - 2 * part / 0.2 if part < 0.2 else -1 + 2 * (part - 0.2) / 0.8), 2) for part in places]
    foot = 30 * readings + 2
    values[foot : foot + readings] = [min(high, value) for value in values[foot : foot + readings]]
    found = compressor_of(Series("first", [120.0 * place for place in range(len(values))], values))
    assert ("There may be more runs" in words_of(found.why_not)) is not is_counted


@pytest.mark.parametrize(("share", "low"), [(0.0499, 2.0), (0.0501, 1.0)])
def test_a_twentieth_of_the_time_is_below(share: float, low: float):
    assert spread([0.0, 60.0], [1.0, 2.0], lasts_s=[1000 * share, 1000 * (1 - share)]).low_5 == low


@pytest.mark.parametrize(("share", "high"), [(0.9499, 2.0), (0.9501, 1.0)])
def test_a_twentieth_of_the_time_is_above(share: float, high: float):
    assert spread([0.0, 60.0], [1.0, 2.0], lasts_s=[1000 * share, 1000 * (1 - share)]).high_95 == high


@pytest.mark.parametrize("count", [55, 56, 79, 80])
def test_a_leap_in_the_last_window_is_found_whatever_the_number_of_windows(count: int):
    """A window of half an hour is 31 readings; they are looked at by 24 at once."""
    values = [12.0] * (count - 1) + [13.0]
    assert fluctuation([60.0 * place for place in range(5, count + 5)], values) == 0.5


def test_a_log_of_half_an_hour_is_one_window_whenever_it_begins():
    times_s = [1e6 + 60.0 * place for place in range(61)]
    assert fluctuation(times_s, [12.0] * 30 + [12.0 + place / 10 for place in range(31)]) == pytest.approx(1.5)
    assert fluctuation(times_s, [12 + place / 10 for place in range(61)]) == pytest.approx(1.5)


@pytest.mark.parametrize("minutes", [14, 30])
def test_the_window_of_a_log_of_half_an_hour_is_all_of_it_though_it_pauses(minutes: int):
    times_s = [1e6 + 60.0 * place for place in (0, 1, 2, minutes - 2, minutes - 1, minutes)]
    assert fluctuation(times_s, [10.0] * 3 + [12.0] * 3) == 1.0


def test_a_line_between_two_readings_is_straight():
    """A third of the way: 30 of 90 s."""
    times, (one, _) = on_one_axis([Trace([10, 100], [10.0, 16.0], 60.0), Trace([40, 70], [0.0, 0.0], 30.0)])
    assert times.tolist() == [10, 40, 70, 100]
    assert one.tolist() == [10.0, 12.0, 14.0, 16.0]


def test_a_difference_is_rounded_to_a_millionth_of_a_kelvin():
    """A third of a kelvin, straight between two readings."""
    (pair,) = pairs([Series("a", [60.0, 120.0], [12.0] * 2), Series("b", [0.0, 180.0], [12.0, 13.0])])
    assert (pair.difference.lowest, pair.difference.highest) == (-0.666667, -0.333333)


@pytest.mark.parametrize(("why_not", "told"), [("too few readings", 0), ("", 1)])
def test_events_that_cannot_be_told_are_not(why_not: str, told: int):
    door = Event("door", 0.0, 60.0, 120.0, 600.0, 12.0, 13.0)
    assert len(Compressor(events=(door,), events_why_not=as_typed(why_not) if why_not else None).told_events) == told


def advised(lasts_s: list[float], higher_k: list[float]) -> list[str]:
    """Of nine runs, eight hours apart."""
    runs = [
        Run(at - 60, at, at, 12.5 + up, at + lasts, 11.5 + up)
        for at, lasts, up in zip((28_800.0 * turn for turn in range(9)), lasts_s, higher_k, strict=True)
    ]
    centre = evolve(steady().centre, compressor=Compressor(tuple(runs)), humidity=None)
    return [each.key for each in advise(evolve(steady(), centre=centre))]


@pytest.mark.parametrize(
    ("lasts_s", "is_ice"),
    [
        ([900, 900, 1000, 600, 600, 600, 600, 800, 800], True), ([600, 600, 600, 600, 800, 800, 900, 900, 900], False),
        ([600, 600, 600, 600, 600, 600, 600, 600, 900], False), ([600, 600, 600, 600, 600, 600, 780, 780, 780], False),
        ([600, 600, 600, 600, 600, 600, 781, 781, 781], True),
    ],
)  # fmt: skip
def test_ice_is_told_by_the_middle_third_of_the_runs_and_the_last(lasts_s: list[float], is_ice: bool):
    """Half of each third are longer: by more than three tenths."""
    assert advised(lasts_s, [0.0] * 9) == (["ice"] if is_ice else [])


@pytest.mark.parametrize(
    ("higher_k", "drifts"),
    [
        ([0, 0, 0.51, 0, 0, 0, 0, 0.51, 0.51], True), ([0, 0, 0.49, 0, 0, 0, 0, 0.49, 0.49], False),
        ([0.51] * 3 + [0.51] * 3 + [0.51] * 3, False), ([0, 0, 0, 0, 0, 0, -0.51, -0.51, -0.51], True),
    ],
)  # fmt: skip
def test_a_drift_of_the_thermostat_is_told_by_the_middle_third_of_the_runs_and_the_last(
    higher_k: list[float], drifts: bool
):
    """They lie a day apart, and half of the half band may be drifted in it."""
    assert advised([600.0] * 9, higher_k) == (["drift"] if drifts else [])
