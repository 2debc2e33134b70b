"""Laws of checking: points are met, order does not matter, what a scale can weigh it weighs."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from core.chamber.checks import Point, judge, through_one, through_two
from core.chamber.checks_hygrometer import Over, salt_check, salt_check_two
from core.chamber.checks_ph import Buffer, nernst_v, ph_meter
from core.chamber.checks_salts import SALTS, humidity_over
from core.chamber.checks_scale import scale_check, smallest_kg
from core.chamber.checks_thermometer import boiling_point_c
from core.refusals import OutOfRange

humidity = st.floats(0, 1)
half_width = st.floats(0, 0.1)
points = st.builds(Point, humidity, humidity, half_width)


@given(points, points)
def test_a_line_maps_both_its_points_exactly(one, other):
    assume(abs(one.reading - other.reading) > 0.01 and abs(one.truth - other.truth) > 0.001)
    line = through_two(one, other)
    assert [line.apply(point.reading) for point in (one, other)] == pytest.approx([one.truth, other.truth], abs=1e-9)


@given(points, points, st.floats(0, 1))
def test_between_its_points_a_line_is_no_less_sure_than_the_worse(one, other, share):
    assume(abs(one.reading - other.reading) > 0.01 and abs(one.truth - other.truth) > 0.001)
    between = one.reading + share * (other.reading - one.reading)
    assert through_two(one, other).uncertainty_at(between) <= max(one.uncertainty, other.uncertainty) + 1e-9


@given(points, humidity)
def test_no_humidity_corrected_leaves_the_scale(point, reading):
    assert 0 <= through_one(point).within(0.0, 1.0).apply(reading) <= 1


@given(points, humidity, humidity)
def test_more_read_is_never_less_corrected(point, one, other):
    line = through_one(point).within(0.0, 1.0)
    less, more = sorted((one, other))
    assert line.apply(less) <= line.apply(more)


@given(st.floats(-100, 100), st.floats(-100, 100), st.floats(0.01, 20))
def test_a_greater_error_is_never_judged_better(one, other, tolerance):
    order = ["accept", "adjust", "replace"]
    less, more = sorted((one, other), key=abs)
    assert order.index(judge(less, tolerance)) <= order.index(judge(more, tolerance))


@given(st.sampled_from(sorted(SALTS)), st.floats(0, 40), humidity)
def test_a_salt_check_puts_its_own_reading_right(salt, temperature_c, reading):
    assume(SALTS[salt].coldest_c <= temperature_c <= SALTS[salt].warmest_c)
    check = salt_check(Over(salt, temperature_c, reading))
    assert check.correction.apply(reading) == pytest.approx(humidity_over(SALTS[salt], temperature_c))


@given(st.floats(5, 25), humidity, humidity, humidity)
def test_two_salts_never_put_a_reading_outside_0_to_100_per_cent(temperature_c, one, other, now):
    try:
        check = salt_check_two(Over("nacl", temperature_c, one), Over("kcl", temperature_c, other), now)
    except OutOfRange:
        assert other - one < 0.05
        return
    first = check.figures[0]
    assert 0 <= first.low <= first.value <= first.high <= 1


@given(st.floats(60e3, 110e3), st.floats(60e3, 110e3))
def test_more_pressure_never_boils_sooner(one, other):
    less, more = sorted((one, other))
    assert boiling_point_c(less) <= boiling_point_c(more)


def shown(ph: float, temperature_c: float, slope: float, offset_v: float) -> Buffer:
    return Buffer(ph, temperature_c, 1000 * (offset_v - slope * nernst_v(temperature_c) * (ph - 7)))


@given(st.floats(5, 50), st.floats(5, 50), st.floats(0.5, 1.2), st.floats(-0.1, 0.1), st.floats(3, 5), st.floats(6, 8))
def test_an_electrodes_slope_and_offset_are_found_again(one_c, other_c, slope, offset_v, acid, neutral):
    check = ph_meter(shown(neutral, one_c, slope, offset_v), shown(acid, other_c, slope, offset_v))
    found = {each.key: each.value for each in check.figures}
    assert (found["slope"], found["offset"]) == pytest.approx((slope, offset_v), abs=1e-9)


@given(
    st.sampled_from([1e-5, 1e-4, 1e-3]),
    st.floats(0.97, 1.03),
    st.floats(0, 10),
    st.sampled_from([0.02, 0.05]),
    st.floats(1, 50),
)
def test_a_weight_above_the_least_reads_right_to_the_share(division, factor, tare_kg, share, times):
    """The scale rounds what it shows at the tare and under the load; its factor is known exactly here."""
    correction = scale_check(1.0, factor, division).correction
    least_kg = smallest_kg(correction, division, share)
    assume(least_kg is not None)
    mass_kg = least_kg * times
    tare, load = (round(each / division) * division for each in (tare_kg, tare_kg + factor * mass_kg))
    assert abs((load - tare) - mass_kg) <= share * mass_kg * (1 + 1e-9) + 1e-12


@given(st.floats(0.001, 10), st.floats(0.9, 1.1), st.floats(0.001, 10))
def test_a_scale_corrected_finds_its_check_mass_again(mass_kg, factor, other_kg):
    assume(abs(mass_kg - other_kg) > 1e-3)
    correction = scale_check(mass_kg, factor * mass_kg, 1e-4, other_kg, factor * other_kg).correction
    assert math.isclose(correction.apply(factor * mass_kg), mass_kg, rel_tol=1e-6, abs_tol=1e-9)
