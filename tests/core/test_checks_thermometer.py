"""A thermometer in ice and in boiling water."""

import math

import pytest

from core.chamber.checks_thermometer import boiling_point, boiling_point_c, both_points, ice_point
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from tests.core.telling import in_words


def figure(check, key: str):
    return next(each for each in check.figures if each.key == key)


def refused_field(call, *arguments) -> str:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments)
    return caught.value.field


@pytest.mark.parametrize(
    ("reading_c", "word"), [(0.0, "accept"), (1.0, "accept"), (-1.0, "accept"), (1.2, "adjust"), (-4.0, "replace")]
)
def test_ice_tells_a_good_probe_from_a_bad_one(reading_c: float, word: str):
    assert ice_point(reading_c).word == word


def test_the_first_figure_says_what_it_came_to():
    check = ice_point(1.6)
    assert in_words(check.figures[0].cautions)[0] == check.sentence.say(METRIC)
    assert check.sentence.say(US).startswith("Adjust: it is outside the tolerance of ±1.8 °F.")


def test_the_tolerance_may_be_set():
    assert ice_point(0.7, tolerance_k=0.5).word == "adjust"


def test_what_is_added_puts_the_reading_right():
    assert ice_point(0.4).correction.apply(12.4) == pytest.approx(12.0)


def test_half_the_last_digit_stays_unsure():
    assert figure(ice_point(0.4, division_k=0.2), "uncertainty").value == pytest.approx(0.1)


def test_at_300_metres_water_boils_at_99_degrees():
    truth = figure(boiling_point(98.4, 300.0), "truth")
    assert (truth.show(METRIC), truth.show(US)) == ("99.0 °C", "210.2 °F")


def test_from_the_height_alone_the_weather_stays_unsure():
    truth = figure(boiling_point(98.4, 300.0), "truth")
    assert truth.value - truth.low == pytest.approx(0.57, abs=0.01)
    assert truth.high - truth.value == pytest.approx(0.56, abs=0.01)


def test_a_pressure_that_was_read_goes_before_the_height():
    check = boiling_point(98.4, 2000.0, 97_773.0)
    assert figure(check, "truth").value == pytest.approx(98.978, abs=1e-3)
    assert figure(check, "uncertainty").value == pytest.approx(0.05)


def test_a_check_less_sure_than_the_tolerance_says_so():
    said = in_words(boiling_point(99.9, 0.0, tolerance_k=0.3).figures[0].cautions)
    assert any("more than the tolerance" in each for each in said)


def test_ice_and_boiling_water_together_make_a_line():
    line = both_points(ice_point(0.5), boiling_point(98.5, pressure_pa=101_325.0))
    assert (line.apply(0.5), line.apply(98.5)) == pytest.approx((0.0, boiling_point_c(101_325.0)))


@pytest.mark.parametrize("pressure_pa", [59_999.0, 110_001.0, math.nan, math.inf])
def test_the_boiling_point_is_not_extrapolated(pressure_pa: float):
    assert refused_field(boiling_point_c, pressure_pa) == "pressure_pa"


@pytest.mark.parametrize("reading_c", [-31.0, 60.0, math.nan])
def test_what_never_stood_in_ice_is_refused(reading_c: float):
    assert refused_field(ice_point, reading_c) == "reading_c"


def test_a_height_beyond_the_formula_is_refused():
    assert refused_field(boiling_point, 90.0, 5000.0) == "altitude_m"


@pytest.mark.parametrize(
    ("reading_c", "name"), [(0.4, "What it should read − what it reads"), (0.6, "Add to every reading")]
)
def test_only_what_is_to_be_adjusted_is_told_to_add(reading_c: float, name: str):
    assert figure(ice_point(reading_c, 0.5, 0.1), "offset").name == name
