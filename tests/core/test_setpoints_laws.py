"""Laws of set-points and of cold pieces, over the range that they are offered for."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from core.air import vapour_pressure_deficit
from core.chamber.cold_piece import cold_piece
from core.chamber.setpoints import coldest_dry_surface, equal_humidity, equal_line, equal_temperature, set_point
from core.refusals import OutOfRange

TEMPERATURES = st.floats(-5, 45)
HUMIDITIES = st.floats(0.3, 1.0)
ACTIVITIES = st.floats(0.7, 1.0)


@given(at=TEMPERATURES, humidity=HUMIDITIES, activity=ACTIVITIES, other=TEMPERATURES)
def test_set_points_of_equal_force_have_an_equal_deficit(at, humidity, activity, other):
    try:
        equal = equal_humidity(at, humidity, activity, other).value
    except OutOfRange:
        assume(False)
    force = vapour_pressure_deficit(at, humidity, activity).value
    assert vapour_pressure_deficit(other, equal, activity).value == pytest.approx(force, rel=1e-9, abs=1e-6)


@given(at=TEMPERATURES, humidity=st.floats(0.3, 0.65), activity=ACTIVITIES, other=st.floats(0.0, 0.65))
def test_temperature_and_humidity_of_equal_force_undo_each_other(at, humidity, activity, other):
    try:
        there = equal_temperature(at, humidity, activity, other).value
    except OutOfRange:
        assume(False)
    assert equal_humidity(at, humidity, activity, there).value == pytest.approx(other, abs=1e-7)


@given(at=TEMPERATURES, humidity=HUMIDITIES, activity=ACTIVITIES)
def test_the_line_of_equal_force_rises_where_the_air_dries_and_falls_where_it_does_not(at, humidity, activity):
    line = [equal for _, equal in equal_line(at, humidity, activity, range(-20, 61, 5))]
    assert line == sorted(line, reverse=humidity > activity)


@given(at=TEMPERATURES, humidity=HUMIDITIES)
def test_the_dew_point_of_a_set_point_is_never_above_it(at, humidity):
    dew = next(figure for figure in set_point(at, humidity) if figure.key == "dew_point")
    assert dew.value <= at


@given(at=st.floats(0, 45), humidity=HUMIDITIES)
def test_above_freezing_a_surface_as_warm_as_the_air_stays_dry(at, humidity):
    assert coldest_dry_surface(at, humidity).value <= at + 0.002


@given(piece=st.floats(-1, 40), at=st.floats(5, 40), humidity=st.floats(0.3, 0.98), thick=st.floats(0.01, 0.3))
def test_a_piece_is_wet_just_when_it_is_colder_than_the_dew_point(piece, at, humidity, thick):
    figure = cold_piece(piece, at, humidity, thick)[0]
    dew = next(each for each in set_point(at, humidity) if each.key == "dew_point").value
    assert (figure.value > 0) == (piece < dew)
    assert 0 <= figure.low <= figure.value <= figure.high


@given(at=st.floats(15, 40), humidity=st.floats(0.6, 0.95), thin=st.floats(0.01, 0.3), thick=st.floats(0.01, 0.3))
def test_a_thicker_piece_is_wet_no_shorter(at, humidity, thin, thick):
    thin, thick = sorted((thin, thick))
    assert cold_piece(2.0, at, humidity, thin)[0].value <= cold_piece(2.0, at, humidity, thick)[0].value
