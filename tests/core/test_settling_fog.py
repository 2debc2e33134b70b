"""How the humidifier's work is told from the vapour: a log on each side of each edge, worked out by hand."""

import math
from collections.abc import Sequence
from itertools import pairwise
from types import SimpleNamespace
from typing import Any

import pytest

from core.chamber.series import Series
from core.chamber.settling.humid_air import HumidAir, humid_air
from core.chamber.settling.humidity import humid_rhythm
from core.saturation import saturation_in_air_pa
from tests.core.analysed import analyse


def fog(minutes: int = 400) -> HumidAir:
    """Damper for four minutes and drier for 36; a climb is seen to begin two minutes before its first minute."""
    damp = [0.70 + 0.10 * min(at / 4, 1 - (at - 4) / 36) for at in (place % 40 for place in range(minutes))]
    found = humid_air(Series("first", [60.0 * place for place in range(minutes)], [12.0] * minutes, damp))
    assert found is not None
    return found


def an_hour(air: HumidAir, events: Sequence[Any] = ()) -> float | None:
    work = humid_rhythm(air, (), events).work
    return work and work.an_hour


@pytest.mark.parametrize(("minutes", "told"), [(160, 1.5), (120, None)])
def test_three_bursts_are_the_fewest_that_tell_how_often(minutes: int, told: float | None):
    """The first of all may have begun before the log: of four climbs three are counted."""
    assert an_hour(fog(minutes)) == (told and pytest.approx(told))


@pytest.mark.parametrize(
    ("starts_s", "ends_s", "gaps"), [(4600.0, 4680.0, 8), (4600.0, 4680.1, 7), (4919.9, 5000.0, 7), (4920.0, 5000.0, 8)]
)
def test_a_burst_during_a_door_or_up_to_four_minutes_before_is_not_the_humidifier_s(
    starts_s: float, ends_s: float, gaps: int
):
    """Nine bursts, the first at 38 min, the last at 358 min, the second at 78 min, which is 4680 s."""
    event: Any = SimpleNamespace(starts_s=starts_s, ends_s=ends_s)
    assert an_hour(fog(), [event]) == pytest.approx(gaps / (320 / 60))


@pytest.mark.parametrize(
    ("lasts_s", "follows"),
    [((2000.0, 2820.0, 5000.0), True), ((1000.0, 2090.0, 2200.0), True), ((2000.0, 2830.0, 5000.0), False)],
)
def test_a_humidifier_that_works_every_40_minutes_follows_a_compressor_that_does_so_mostly(
    lasts_s: tuple[float, ...], follows: bool
):
    """The middle one of three cycles counts: from 2400 ÷ 1.15 to 2400 ÷ 0.85 s, 2087 to 2824."""
    cycles: list[Any] = [
        SimpleNamespace(before=SimpleNamespace(falls_s=0.0), after=SimpleNamespace(falls_s=each), lasts_s=each)
        for each in lasts_s
    ]
    assert humid_rhythm(fog(), cycles).follows is follows


def test_the_swing_of_the_humidity_is_the_middle_one():
    """Of three cycles with swings of 0.10, 0.20 and 0.40."""
    humidities = [0.5 + height * place / 9 for height in (0.1, 0.2, 0.4) for place in range(10)]
    air = humid_air(Series("first", [60.0 * place for place in range(30)], [12.0] * 30, humidities))
    falls: list[Any] = [SimpleNamespace(falls_s=at * 600.0) for at in range(4)]
    cycles: list[Any] = [SimpleNamespace(before=one, after=two, lasts_s=600.0) for one, two in pairwise(falls)]
    assert air is not None
    swing = humid_rhythm(air, cycles).swing
    assert swing is not None
    assert swing.size == pytest.approx(0.2)


@pytest.mark.parametrize(("dew_c", "is_told"), [(-39.99, True), (-39.8, True), (-40.01, False)])
def test_a_dew_point_is_told_down_to_forty_below(dew_c: float, is_told: bool):
    pressure = saturation_in_air_pa(max(-40.0, dew_c), 101_325.0) * (1 if dew_c > -40 else 0.999)
    humidity = pressure / saturation_in_air_pa(10.0, 101_325.0)
    found = humid_air(Series("first", [0.0, 60.0], [10.0, 10.0], [humidity, humidity]))
    assert found is not None
    assert (abs(found.dew_points_c[0] - dew_c) < 0.005) if is_told else math.isnan(found.dew_points_c[0])


def climbing(*slopes: tuple[int, float]) -> HumidAir:
    """Nine hours, each of these: for so many minutes by so many ten-thousandths a minute; it then falls back."""
    up = [slope for minutes, slope in slopes for _ in range(minutes)]
    hour = [*up, *[-sum(up) / (60 - len(up))] * (60 - len(up))]
    damp = [0.6]
    for by in hour * 9:
        damp.append(damp[-1] + by / 10_000)
    found = humid_air(Series("first", [60.0 * place for place in range(len(damp))], [12.0] * len(damp), damp))
    assert found is not None
    return found


@pytest.mark.parametrize(("part", "told"), [(0.303, 1.0), (0.297, None), (0.1205, None), (0.1195, 2.0)])
def test_a_climb_that_goes_on_at_three_tenths_of_its_pace_is_one_and_at_an_eighth_two(part: float, told: float | None):
    """Between, it may be either."""
    found = an_hour(climbing((6, 40.0), (10, 40 * part), (6, 40.0)))
    assert found == (told and pytest.approx(told, rel=0.04))


@pytest.mark.parametrize(("part", "told"), [(0.603, 2.0), (0.597, None), (0.402, None), (0.398, 1.0)])
def test_a_climb_at_six_tenths_of_the_full_pace_is_a_burst_and_at_four_tenths_none(part: float, told: float | None):
    """Between, it may be one or not."""
    found = an_hour(climbing((6, 40.0), (20, -10.0), (6, 40 * part)))
    assert found == (told and pytest.approx(told, rel=0.06))


@pytest.mark.parametrize(("dry", "mean_c"), [(0, 8.66), (1, 8.66), (2, None)])
def test_readings_without_a_dew_point_are_left_out_of_its_mean(dry: int, mean_c: float | None):
    """12 °C and 80 %, of three readings; the others are bone-dry. Two at the least have a mean."""
    humidities = [0.0] * dry + [0.80] * (3 - dry)
    found = analyse([Series("first", [0.0, 60.0, 120.0], [12.0] * 3, humidities)]).centre.humidity
    assert found is not None
    assert (found.dew_point and found.dew_point.mean) == (mean_c and pytest.approx(mean_c, abs=0.01))


def test_a_humidity_read_every_other_time_stands_for_twice_as_long():
    log = Series("first", [60.0 * place for place in range(6)], [12.0] * 6, [0.8, None] * 3)
    found = humid_air(log)
    assert found is not None
    assert list(found.lasts_s) == [120.0, 120.0, 120.0]


@pytest.mark.parametrize(("at_c", "readings"), [(-40.0, 3), (60.0, 3), (-40.1, 2), (60.1, 2)])
def test_both_ends_of_the_formula_are_within_it(at_c: float, readings: int):
    """One reading further out is left out: with it, both of the ends are looked at one by one."""
    found = humid_air(Series("first", [0.0, 60.0, 120.0, 180.0], [at_c, 12.0, 12.0, 61.0], [0.8] * 4))
    assert found is not None
    assert len(found.times_s) == readings
