"""Laws of the cure: more never makes less, and there and back is where one began."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from core.mix.curing_salt import CuringSalt
from core.mix.limits import LIMITS
from core.refusals import OutOfRange
from tests.core.dosing import dose_for, from_dose, ppm

meat = st.floats(0.01, 1000)
strengths = st.floats(0.001, 0.1)
salts = st.builds(CuringSalt, strengths, st.one_of(st.just(0.0), st.floats(0.001, 0.1)))
methods = st.sampled_from(["comminuted", "dry-rub"])


def value(figures, key: str) -> float:
    return next(each.value for each in figures if each.key == key)


@given(meat, salts, st.floats(0, 10), st.floats(0, 10))
def test_more_cure_never_makes_fewer_ppm(meat_kg, salt, one_kg, other_kg):
    less, more = sorted((one_kg, other_kg))
    assert ppm("nitrite", meat_kg, less, salt) <= ppm("nitrite", meat_kg, more, salt)


@given(meat, strengths, st.floats(0, 156.25), methods)
def test_the_dose_for_a_ppm_makes_that_ppm(meat_kg, strength, wanted, method):
    salt = CuringSalt(strength)
    cure_kg = value(dose_for(meat_kg, wanted, salt, method), "cure")
    assert value(from_dose(meat_kg, cure_kg, salt, method), "nitrite") == pytest.approx(wanted * 1e-6, rel=1e-9)


@given(meat, salts, st.floats(0, 0.2), methods)
def test_a_dose_is_shown_only_within_both_limits(meat_kg, salt, share, method):
    cure_kg = share * meat_kg
    limit = LIMITS[method]
    try:
        from_dose(meat_kg, cure_kg, salt, method)
    except OutOfRange:
        over = (
            ppm("nitrite", meat_kg, cure_kg, salt) > limit.nitrite_ppm
            or ppm("nitrate", meat_kg, cure_kg, salt) > limit.nitrate_ppm
        )
        assert over
    else:
        assert ppm("nitrite", meat_kg, cure_kg, salt) <= limit.nitrite_ppm * (1 + 1e-8)
        assert ppm("nitrate", meat_kg, cure_kg, salt) <= limit.nitrate_ppm * (1 + 1e-8)


@given(st.integers(1, 10**6), st.integers(0, 10**5), st.integers(10, 1000))
def test_ppm_agree_with_exact_fractions(meat_g, cure_dg, strength_per_myriad):
    salt = CuringSalt(strength_per_myriad / 10**4)
    exact = Fraction(cure_dg, 10) * Fraction(strength_per_myriad, 10**4) / meat_g * 10**6
    assert ppm("nitrite", meat_g / 1000, cure_dg / 10**4, salt) == pytest.approx(float(exact), rel=1e-12)


@given(meat, salts, methods)
def test_the_dose_a_refusal_names_is_never_over_the_limit(meat_kg, salt, method):
    assume(meat_kg > 1)
    with pytest.raises(OutOfRange) as caught:
        from_dose(meat_kg, meat_kg * 0.99, CuringSalt(max(salt.nitrite, 0.01), salt.nitrate), method)
    grams = float(caught.value.sentence.split("): ")[1].split(" g")[0].replace("\u00a0", ""))
    from_dose(meat_kg, grams / 1000, CuringSalt(max(salt.nitrite, 0.01), salt.nitrate), method)
