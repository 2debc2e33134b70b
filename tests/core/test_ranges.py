"""How far each sum of the chamber, the air and the mix reaches: its ends are let through, a hair beyond is refused."""

import math
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

import pytest

from core import air, saturation, vapour, water
from core.chamber import (
    capacity,
    cold_piece,
    drying_force,
    film,
    humidifier,
    levels,
    moisture,
    ph_temperature,
    setpoints,
)
from core.dry import shrink
from core.mix import casings, composition, salting, scaling, starter, sugar
from core.mix.formula import Formula, Ingredient, Meat
from core.refusals import OutOfRange
from core.units import DAY_S
from core.working import Figure
from tests.core.telling import in_words

HAIR = 1e-4
CUT = composition.CUTS["10074"]
NOON = datetime(2026, 11, 2, 12, tzinfo=UTC)
CARRIES = capacity.capacity_as_rated(0.001 / DAY_S)


def poured(volume_m3: float, apart: timedelta = timedelta(days=1)):
    return [levels.Poured(NOON, 0.001), levels.Poured(NOON + apart, volume_m3)]


BETWEEN = [
    # what is asked, lowest, highest; both are let through
    (lambda at: air.vapour_pressure_deficit(12, 0.8, at), 0.0, 1.0),
    (lambda at: air.vapour_pressure_deficit(12, 0.8, 0.97, at), -20.0, 60.0),
    (lambda at: vapour.vapour_pressure_pa(at, 0.5), -20.0, 60.0),
    (lambda at: vapour.vapour_pressure_pa(12, at), 0.0, 1.0),
    (lambda at: vapour.vapour_pressure_pa(12, 0.5, at), 60e3, 110e3),
    (vapour.station_pressure_pa, -500.0, 4000.0),
    (saturation.saturation_pressure_pa, -40.0, 60.0),
    (saturation.ice_saturation_pressure_pa, -40.0, 0.01),
    (water.constants, 0.0, 30.0),
    (lambda at: water.equilibrium(at, 20), 0.02, 0.3),
    (lambda at: water.equilibrium(0.1, 20, at), 100e-6, 0.01),
    (humidifier.solubility, 0.0, 60.0),
    (lambda at: moisture.moisture_load(1, 1e-8, at), -5.0, 40.0),
    (lambda at: moisture.moisture_load(1, at / DAY_S), 0.0, 0.1),
    (lambda at: moisture.humidifier_need(0.5, 12, 0.8, 20, 0.5, at), 0.0, 1000.0),
    (lambda at: cold_piece.cold_piece(at, 12, 0.8, 0.06), -1.0, 60.0),
    (lambda at: cold_piece.cold_piece(2, 12, 0.8, at), 0.01, 0.3),
    (lambda at: cold_piece.cold_piece(2, 12, 0.8, 0.06, at), 2.0, 60.0),
    (lambda at: film.film(at, 0.1, 12), 0.01, 0.3),
    (lambda at: film.film(0.06, at, 12), 0.02, 3.0),
    (film.dry_air, -5.0, 40.0),
    (lambda at: setpoints.equal_humidity(12, 0.96, 0.97, at), -20.0, 60.0),
    (lambda at: ph_temperature.compensated_ph(at, 12, 25), 2.0, 12.0),
    (lambda at: ph_temperature.compensated_ph(5, at, 25), 0.0, 60.0),
    (lambda at: ph_temperature.compensated_ph(5, 12, at), 0.0, 60.0),
    (lambda at: casings.fill_kg(1, at, 0.4), 0.005, 0.5),
    (lambda at: casings.fill_kg(1, 0.05, at), 0.01, 1000.0),
    (lambda at: casings.fill_kg(1, 0.05, 0.4, at), 500.0, 1500.0),
    (lambda at: composition.made_of(CUT, at), 0.0, 1.0),
    (salting.diffusivity, 0.0, 15.0),
    (lambda at: sugar.ph_from(5.8, at), 0.0, 0.05),
    (lambda at: shrink.target_weight(1, at), 0.0, 0.75),
]
OPEN = [
    # above the first, below the second; neither is let through
    (lambda at: humidifier.charge(at, 1.0), 0.0, 1.0),
    (lambda at: levels.runs_full(poured(1e-4), at), 0.0, 1.0),
    (lambda at: moisture.moisture_load(at, 1e-8), 0.0, 1000.0),
    (lambda at: capacity.carries(CARRIES, 1e-8, at), 0.0, 1000.0),
    (lambda at: capacity.capacity_from_basin(at, DAY_S), 0.0, 1.0),
    (lambda at: capacity.capacity_as_rated(at / DAY_S), 0.0, 1.0),
    (lambda at: starter.starter(at, 0.025, 100), 0.0, 1e5),
    (lambda at: shrink.target_weight(at, 0.35), 0.0, 1000.0),
]


def refuses(call, at: float) -> bool:
    try:
        call(at)
    except OutOfRange:
        return True
    return False


@pytest.mark.parametrize(("call", "low", "high"), BETWEEN)
def test_the_ends_are_let_through_and_no_more(call, low: float, high: float):
    hair = HAIR * (high - low)
    ends = (low - hair, low, high, high + hair)
    assert [refuses(call, at) for at in ends] == [True, False, False, True]


@pytest.mark.parametrize(("call", "low", "high"), OPEN)
def test_the_ends_are_refused_and_no_more(call, low: float, high: float):
    hair = HAIR * (high - low)
    ends = (low, low + hair, high - hair, high)
    assert [refuses(call, at) for at in ends] == [True, False, False, True]


def test_a_basin_needs_six_hours():
    assert not refuses(lambda at: capacity.capacity_from_basin(0.001, at), 6 * 3600)
    assert refuses(lambda at: capacity.capacity_from_basin(0.001, at), 6 * 3600 - 1)


def test_a_chamber_has_some_air_and_at_most_100_cubic_metres():
    need = lambda at: moisture.humidifier_need(at, 12, 0.8, 20, 0.5, 20)  # noqa: E731
    assert [refuses(need, at) for at in (0, 0.01, 100, 100.01)] == [True, False, False, True]


def test_casings_are_counted_whole_from_1_to_10_000():
    fill = lambda at: casings.fill_kg(at, 0.05, 0.4)  # noqa: E731
    assert [refuses(fill, at) for at in (0, 1, 1.5, 10_000, 10_001)] == [True, False, True, False, True]


def test_cells_from_one_to_ten_million_million():
    count = lambda at: starter.starter(10, 0.025, 100, cells_per_gram=at)  # noqa: E731
    assert [refuses(count, at) for at in (0.99, 1, 1e13, 1.01e13)] == [True, False, False, True]


def test_what_dissolves_at_20_degrees_and_no_more():
    charge = lambda at: humidifier.charge(0.001, at)  # noqa: E731
    assert [refuses(charge, at) for at in (-0.01, 0, 95.67, 95.69)] == [True, False, False, True]


def test_a_batch_is_less_than_ten_tonnes():
    formula = Formula("Any", "fermented", (Meat("Shoulder", 1.0, 0.2, "10074"),), (Ingredient("Salt", "salt", 0.025),))
    of = lambda at: scaling.by_meat(formula, at)  # noqa: E731
    assert [refuses(of, at) for at in (0, 0.01, 9_999.9, 10_000)] == [True, False, False, True]


STEPS_PA = {"none": -1e-9, "faint": 99.99, "gentle": 199.99, "moderate": 349.99, "brisk": 499.99, "hard": 5000.0}


@pytest.mark.parametrize(("word", "up_to"), STEPS_PA.items())
def test_the_scale_of_drying_forces_up_to_a_hair_below_each_step(word: str, up_to: float):
    assert drying_force.grade(up_to).word == word


@pytest.mark.parametrize(
    ("word", "start"), [("faint", 0), ("gentle", 100), ("moderate", 200), ("brisk", 350), ("hard", 500)]
)
def test_a_step_of_the_scale_begins_with_its_first_pascal(word: str, start: float):
    assert drying_force.grade(start).word == word


def a_day(poured_: Iterable[levels.Poured]) -> Figure:
    return levels.runs_dry(poured_, 0.01).rate


def test_pourings_an_hour_apart_are_one_and_a_second_more_are_two():
    an_hour = timedelta(hours=1)
    assert refuses(lambda at: a_day(poured(0.001, timedelta(seconds=at))), an_hour.total_seconds())
    assert a_day(poured(0.001, an_hour + timedelta(seconds=1))).value > 0


def test_one_interval_is_told_half_either_way_and_two_a_quarter():
    one = a_day(poured(0.002))
    two = a_day([*poured(0.002), levels.Poured(NOON + timedelta(days=2), 0.002)])
    day = 0.002 / DAY_S
    assert (one.low, one.value, one.high) == pytest.approx((0.5 * day, day, 1.5 * day))
    assert (two.low, two.value, two.high) == pytest.approx((0.75 * day, day, 1.25 * day))


def test_intervals_that_differ_more_than_a_quarter_are_told_as_they_were():
    times = [timedelta(0), timedelta(days=1), timedelta(days=2)]
    figure = a_day(levels.Poured(NOON + at, m3) for at, m3 in zip(times, (1e-3, 1e-3, 3e-3), strict=True))
    assert (figure.low, figure.high) == pytest.approx((0.001 / DAY_S, 0.003 / DAY_S))


def test_a_tank_is_topped_up_to_its_mark_and_no_higher():
    assert not refuses(lambda at: levels.runs_dry(poured(at), 0.002), 0.002)
    assert refuses(lambda at: levels.runs_dry(poured(at), 0.002), 0.002 * (1 + 1e-4))
    assert refuses(lambda at: levels.runs_dry(poured(0.001), 0.002, at), 0.002 * (1 + 1e-4))
    assert refuses(lambda at: levels.runs_dry(poured(0.001), 0.002, at), 0.0)


def test_away_from_the_usual_charge_the_lowering_is_an_estimate():
    def spread(molality: float) -> list[float]:
        figures = humidifier.charge(0.001, molality * 998.2 * 0.0840066)
        (lowering,) = [each for each in figures if each.key == "lowering"]
        assert bool(in_words(lowering.cautions)) == (lowering.low / lowering.value < 0.9)
        return [-math.log1p(-each) / (2 * molality * 0.018015) for each in (lowering.low, lowering.high)]

    usual, estimate = pytest.approx([0.895, 0.925], rel=1e-6), pytest.approx([0.8, 1.0], rel=1e-6)
    assert [spread(at) == usual for at in (0.1499, 0.1501, 0.1999, 0.2001)] == [False, True, True, False]
    assert spread(0.1499) == estimate


def test_the_first_days_are_one_and_a_half_per_cent_from_one_to_two():
    (peak,) = [each for each in moisture.moisture_load(10, 0.005 / DAY_S) if each.key == "peak"]
    assert (peak.low, peak.value, peak.high) == pytest.approx((0.1 / DAY_S, 0.15 / DAY_S, 0.2 / DAY_S))


@pytest.mark.parametrize("time_s", [6 * 3600 - 1.0, math.inf])
def test_what_a_basin_shows_takes_six_hours_and_not_for_ever(time_s: float):
    with pytest.raises(OutOfRange):
        capacity.capacity_from_basin(0.001, time_s)
