"""Moisture load and what the chamber carries."""

import math

import pytest

from core.chamber.capacity import (
    AT_LEAST,
    CLOSE,
    OVERLOADED,
    OVERLOADED_AT_FIRST,
    RATED_WARM,
    capacity_as_rated,
    capacity_from_basin,
    carries,
)
from core.chamber.film import film
from core.chamber.moisture import NO_PEAK_PRINTED, humidifier_need, moisture_load, wet_limit
from core.chamber.moisture_sheets import CHAMBER_CAPACITY, MOISTURE_LOAD
from core.quantities import LOSS_RATE, METRIC
from core.reading import read
from core.refusals import OutOfRange, Refused
from core.units import DAY_S
from tests.core.telling import in_words

ONE_PER_CENT = 0.01 / DAY_S
HALF_LITRE = 0.0005 / DAY_S


def by_key(figures):
    return {figure.key: figure for figure in figures}


def test_ten_kilograms_at_one_per_cent_a_day():
    figures = by_key(moisture_load(10.0, ONE_PER_CENT, chamber_m3=0.5))
    assert {key: figure.show(METRIC) for key, figure in figures.items()} == {
        "given_off": "4.17 g/h",
        "peak": "6.25 g/h",
        "coil": "0.1 L a day",
        "latent": "2.9 W",
        "latent_peak": "4.3 W",
        "one_per_cent": "0.05 g",
        "rises_in": "46 s",
    }


def test_the_first_days_are_a_range_from_memory():
    peak = by_key(moisture_load(10.0, ONE_PER_CENT))["peak"]
    assert peak.source.verified == "memory"
    assert NO_PEAK_PRINTED in in_words(peak.cautions)
    assert peak.low < peak.value < peak.high


def test_a_mean_above_the_first_days_raises_them():
    figures = by_key(moisture_load(10.0, 3 * ONE_PER_CENT))
    assert figures["peak"].value == figures["given_off"].value


def test_a_peak_that_is_given_is_taken():
    peak = by_key(moisture_load(10.0, ONE_PER_CENT, peak_per_s=2 * ONE_PER_CENT))["peak"]
    assert (peak.value, in_words(peak.cautions)) == (pytest.approx(2 * 10 * ONE_PER_CENT), ())


def test_meat_that_gives_nothing_off_does_not_raise_the_humidity():
    assert "rises_in" not in by_key(moisture_load(10.0, 0.0, chamber_m3=0.5))


def test_wholly_wet_sausage_gives_off_more_than_any_remembered_peak():
    assert wet_limit(10.0, 0.06, 12.0, 0.75, 0.1).value > by_key(moisture_load(10.0, ONE_PER_CENT))["peak"].high


def test_thin_pieces_give_off_more():
    assert wet_limit(10.0, 0.03, 12.0, 0.75, 0.1).value > wet_limit(10.0, 0.06, 12.0, 0.75, 0.1).value


@pytest.mark.parametrize("typed", ["1", "1 %", "1 %/d", "1 % a day"])
def test_a_loss_a_day_may_be_typed_as_a_per_cent(typed: str):
    assert read(typed, LOSS_RATE) == pytest.approx(ONE_PER_CENT)


def test_a_dry_room_asks_the_humidifier_for_water():
    figures = by_key(humidifier_need(0.5, 12.0, 0.8, 20.0, 0.3, 10.0))
    assert figures["need"].value == pytest.approx(10 * figures["once"].value / 1000 / DAY_S)
    assert figures["need"].value > 0


def test_a_damp_room_brings_water_and_says_so():
    need = by_key(humidifier_need(0.5, 12.0, 0.7, 25.0, 0.7, 10.0))["need"]
    assert need.value < 0
    assert "The room brings more water" in in_words(need.cautions)[0]


def test_what_an_empty_chambers_coil_drains_must_be_put_back():
    without, drained = (humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 10.0, each)[0].value for each in (0.0, 1e-6))
    assert drained - without == pytest.approx(1e-9)


def test_a_basin_of_600_ml_in_three_days_carries_25_kilograms_at_0_8_per_cent():
    figures = by_key(carries(capacity_from_basin(0.0006, 3 * DAY_S), 0.8 * ONE_PER_CENT))
    assert figures["capacity"].show(METRIC) == "0.2 L a day"
    assert figures["carries"].value == pytest.approx(25.0)


def test_a_basin_shows_the_least():
    assert AT_LEAST in in_words(capacity_from_basin(0.0006, 3 * DAY_S).cautions)


def test_a_rating_is_doubted_in_the_cold():
    assert RATED_WARM in in_words(capacity_as_rated(HALF_LITRE).cautions)


def test_doubts_about_the_capacity_go_on_to_what_it_carries():
    assert RATED_WARM in in_words(by_key(carries(capacity_as_rated(HALF_LITRE), ONE_PER_CENT))["carries"].cautions)


@pytest.mark.parametrize(
    ("hanging_kg", "told"),
    [(10.0, ()), (22.0, (CLOSE,)), (30.0, (OVERLOADED_AT_FIRST,)), (51.0, (OVERLOADED,))],
)
def test_what_is_overloaded_is_said(hanging_kg: float, told: tuple[str, ...]):
    assert in_words(by_key(carries(capacity_as_rated(HALF_LITRE), ONE_PER_CENT, hanging_kg))["burden"].cautions) == told


def test_the_sheet_takes_a_basin_before_a_rating():
    figures = CHAMBER_CAPACITY.answer({"drained": "0.6 L", "time": "3 d", "rating": "2 L a day"}).figures
    assert figures[0].show(METRIC) == "0.2 L a day"


@pytest.mark.parametrize(
    ("sheet", "texts", "field"),
    [
        (CHAMBER_CAPACITY, {}, "rating"),
        (CHAMBER_CAPACITY, {"drained": "0.6 L"}, "time"),
        (CHAMBER_CAPACITY, {"time": "3 d", "rating": "2 L a day"}, "drained"),
        (MOISTURE_LOAD, {"hanging": "10 kg", "thickness": "60 mm"}, "air_speed"),
        (MOISTURE_LOAD, {"hanging": "10 kg", "air_speed": "0.1 m/s"}, "thickness"),
        (MOISTURE_LOAD, {"hanging": "10 kg", "temperature": "50 °C"}, "temperature"),
    ],
)
def test_half_of_a_pair_is_asked_for(sheet, texts: dict[str, str], field: str):
    with pytest.raises(Refused) as caught:
        sheet.answer(texts)
    assert [each.field for each in caught.value.refusals] == [field]


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: moisture_load(0.0, ONE_PER_CENT), "hanging"),
        (lambda: moisture_load(math.nan, ONE_PER_CENT), "hanging"),
        (lambda: moisture_load(1000.0, ONE_PER_CENT), "hanging"),
        (lambda: moisture_load(10.0, -ONE_PER_CENT), "loss"),
        (lambda: moisture_load(10.0, 11 * ONE_PER_CENT), "loss"),
        (lambda: moisture_load(10.0, ONE_PER_CENT, peak_per_s=math.inf), "peak"),
        (lambda: moisture_load(10.0, ONE_PER_CENT, 41.0), "temperature"),
        (lambda: moisture_load(10.0, ONE_PER_CENT, chamber_m3=0.0), "chamber"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, -1.0), "changes"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1.0, -1.0), "drained"),
        (lambda: capacity_from_basin(0.0, DAY_S), "drained"),
        (lambda: capacity_from_basin(0.001, 3600.0), "time"),
        (lambda: capacity_as_rated(0.0), "rating"),
        (lambda: carries(capacity_as_rated(HALF_LITRE), 0.0), "loss"),
        (lambda: carries(capacity_as_rated(HALF_LITRE), ONE_PER_CENT, 10.0, 0.0), "peak"),
        (lambda: carries(capacity_as_rated(HALF_LITRE), ONE_PER_CENT, 0.0), "hanging"),
        (lambda: film(0.06, 0.01, 12.0), "air_speed"),
        (lambda: film(0.4, 0.1, 12.0), "thickness"),
        (lambda: film(0.06, 0.1, 41.0), "temperature"),
    ],
)
def test_what_cannot_be_is_refused_by_field(call, field: str):
    with pytest.raises(OutOfRange) as caught:
        call()
    assert caught.value.field == field
