"""The set-points in force, how far the air lies from them, and the drying force in a word."""

import math

import pytest

from core.air import vapour_pressure_deficit
from core.chamber.drying_force import SCALE, grade
from core.chamber.programmes import BY_KEY
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.set_points import apart, is_moister, set_points
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from tests.core.kitchen import Kitchen

CHOSEN = SetPointsChosen(12.0, 0.80)


def said(air: AirRead, chosen: SetPointsChosen = CHOSEN, reader=METRIC) -> list[str]:
    return [each.say(reader, 4) for each in apart(chosen, air)]


def test_without_a_choice_there_is_none():
    assert set_points(Kitchen().book) is None


def test_the_last_choice_is_in_force():
    kitchen = Kitchen()
    kitchen.note(CHOSEN, CHAMBER, at=1)
    kitchen.note(SetPointsChosen(14.0, 0.75), CHAMBER, at=2)
    line = set_points(kitchen.book)
    assert line is not None
    assert line.fact == SetPointsChosen(14.0, 0.75)


@pytest.mark.parametrize("air", [AirRead(12.0, 0.80), AirRead(12.5, 0.83), AirRead(11.5, 0.77)])
def test_what_no_instrument_can_tell_apart_is_as_set(air: AirRead):
    assert said(air) == ["Temperature as set", "Humidity as set"]


@pytest.mark.parametrize("temperature_c", [12.502, 11.498])
def test_a_hair_further_than_a_thermometer_tells_is_not_as_set(temperature_c: float):
    assert said(AirRead(temperature_c, 0.80))[0].startswith("0.502 K ")


@pytest.mark.parametrize("humidity", [0.8301, 0.7699])
def test_a_hair_further_than_a_hygrometer_tells_is_not_as_set(humidity: float):
    assert said(AirRead(12.0, humidity))[1].startswith("3.01 % of humidity ")


@pytest.mark.parametrize(("humidity", "moister"), [(0.86, False), (0.8601, True)])
def test_a_differential_wider_than_the_hygrometer_goes_before_it(humidity: float, moister: bool):
    wide = SetPointsChosen(12.0, 0.80, humidity_differential=0.06)
    assert is_moister(wide, AirRead(12.0, humidity)) is moister


@pytest.mark.parametrize(("humidity", "moister"), [(0.83, False), (0.8301, True)])
def test_a_differential_narrower_than_the_hygrometer_does_not(humidity: float, moister: bool):
    narrow = SetPointsChosen(12.0, 0.80, humidity_differential=0.01)
    assert is_moister(narrow, AirRead(12.0, humidity)) is moister


@pytest.mark.parametrize(
    ("air", "warmth"), [(AirRead(14.0), "2 K warmer than set"), (AirRead(9.0), "3 K colder than set")]
)
def test_warmer_and_colder(air: AirRead, warmth: str):
    assert said(air) == [warmth]


def test_a_difference_is_told_in_the_readers_units():
    assert said(AirRead(14.0), reader=US) == ["3.6 °F warmer than set"]


@pytest.mark.parametrize(("humidity", "word"), [(0.86, "above"), (0.74, "below")])
def test_moister_and_drier(humidity: float, word: str):
    assert said(AirRead(12.0, humidity))[1] == f"6 % of humidity {word} what is set"


def test_within_its_differential_the_air_is_as_set():
    wide = SetPointsChosen(12.0, 0.80, temperature_differential_k=2.0, humidity_differential=0.06)
    assert said(AirRead(14.0, 0.86), wide) == ["Temperature as set", "Humidity as set"]


@pytest.mark.parametrize(("humidity", "moister"), [(None, None), (0.83, False), (0.84, True), (0.5, False)])
def test_moister_than_set(humidity: float | None, moister: bool | None):
    assert is_moister(CHOSEN, AirRead(12.0, humidity)) is moister


@pytest.mark.parametrize(
    ("force_pa", "word"),
    [
        (-50, "none"), (-0.01, "none"), (0, "faint"), (99.9, "faint"), (100, "gentle"), (199.9, "gentle"),
        (200, "moderate"), (349.9, "moderate"), (350, "brisk"), (499.9, "brisk"), (500, "hard"), (900, "hard"),
    ],
)  # fmt: skip
def test_the_force_in_a_word(force_pa: float, word: str):
    assert grade(force_pa).word == word


@pytest.mark.parametrize("force_pa", [math.nan, math.inf])
def test_what_is_no_force_has_no_word(force_pa: float):
    with pytest.raises(OutOfRange):
        grade(force_pa)


def test_each_step_says_its_span():
    """The first and the last are open."""
    assert [each.span.say(METRIC) for each in (SCALE[0], SCALE[2], SCALE[5])] == [
        "below 0 Pa",
        "100 Pa to 200 Pa",
        "500 Pa and more",
    ]


def test_the_scale_leaves_no_gap():
    assert [each.to_pa for each in SCALE[:-1]] == [each.from_pa for each in SCALE[1:]]


@pytest.mark.parametrize(
    ("key", "word"),
    [
        ("slow-european", "faint"),
        ("whole-rest", "gentle"),
        ("dry-65mm", "gentle"),
        ("dry-practice", "moderate"),
        ("whole-italian", "moderate"),
        ("dry-us", "brisk"),
        ("whole-ham", "hard"),
    ],
)
def test_the_printed_programmes_fall_where_the_scale_says(key: str, word: str):
    printed = BY_KEY[key]
    assert printed.temperature_c is not None
    assert printed.humidity is not None
    middle = (sum(printed.temperature_c) / 2, sum(printed.humidity) / 2)
    assert grade(vapour_pressure_deficit(*middle, 0.97).value).word == word
