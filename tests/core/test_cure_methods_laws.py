"""Laws of every way of curing: there and back, more never makes less, ion and salt keep their ratio, mass is kept."""

import math

import pytest
from attrs import evolve
from hypothesis import assume, given
from hypothesis import strategies as st

from core.mix.brine import recipe
from core.mix.cure import CureMix, Dose, basis, dose_making_kg, made_ppm
from core.mix.cure_figures import ingoing
from core.mix.curing_salt import CuringSalt
from core.mix.ions import ION_IN_SODIUM_NITRATE, ION_IN_SODIUM_NITRITE
from core.mix.limit_check import check_limits, largest_kg
from core.mix.rule import METHODS, PART_IN
from core.mix.rules import RULE_SETS, Curing, products_for
from core.mix.sugar import ph_from, sugar_for
from tests.core.reaching import reaches

HOWS = [
    Curing(key, product, method) for key in RULE_SETS for method in METHODS for product in products_for(key, method)
]
hows = st.sampled_from(HOWS)
alkalis = st.sampled_from(["sodium", "potassium"])
nitrates = st.one_of(st.just(0.0), st.floats(0.001, 0.05))
salts = st.builds(CuringSalt, st.floats(0.004, 0.07), nitrates, st.just(0.0), alkalis, alkalis)
doses = st.builds(Dose, salts, st.floats(0, 1))


@st.composite
def charges(draw: st.DrawFn) -> CureMix:
    first, second = draw(doses), draw(st.lists(doses, max_size=1))
    return CureMix(
        draw(st.floats(0.5, 100)),
        (first, *second),
        draw(st.floats(0, 5)),
        water_kg=draw(st.floats(1, 50)),
        sugar_kg=draw(st.floats(0, 2)),
        other_kg=draw(st.floats(0, 2)),
        accelerator_kg=draw(st.floats(0, 0.01)),
        taken=draw(st.floats(0.01, 0.6)),
    )


def value(figures, key: str) -> float:
    return next(each.value for each in figures if each.key == key)


def test_forward_after_back_is_where_one_began():
    reached: list[object] = []

    @given(charges(), hows, st.floats(1, 500))
    def law(charge: CureMix, how: Curing, wanted: float):
        rule = next(rule for rule in how.held if "nitrite" in rule.substances)
        cure_kg = dose_making_kg(charge, how.method, rule, wanted)
        assume(0 < cure_kg < 1e4)
        assert made_ppm(charge.with_first(cure_kg), how.method, rule) == pytest.approx(wanted, rel=1e-9)
        reached.append(how)

    reaches(law, reached, 20)


def test_back_after_forward_is_where_one_began():
    reached: list[object] = []

    @given(charges(), hows, st.floats(1e-4, 1))
    def law(charge: CureMix, how: Curing, cure_kg: float):
        rule = next(rule for rule in how.held if "nitrite" in rule.substances)
        ppm = made_ppm(charge.with_first(cure_kg), how.method, rule)
        assume(ppm > made_ppm(charge.with_first(0.0), how.method, rule) * (1 + 1e-6))
        back = dose_making_kg(charge, how.method, rule, ppm)
        assume(not math.isinf(back))
        assert back == pytest.approx(cure_kg, rel=1e-6, abs=1e-9)
        reached.append(how)

    reaches(law, reached, 20)


@given(charges(), hows, st.floats(0, 1), st.floats(0, 1))
def test_more_of_a_cure_alone_never_makes_fewer_ppm(charge: CureMix, how: Curing, one: float, other: float):
    less, more = sorted((one, other))
    alone = evolve(charge, doses=charge.doses[:1])
    for rule in how.held:
        if rule.substance != "accelerator":
            made = made_ppm(alone.with_first(less), how.method, rule)
            assert made <= made_ppm(alone.with_first(more), how.method, rule) * (1 + 1e-12)


@given(charges(), hows)
def test_ion_and_salt_keep_the_molar_ratio(charge: CureMix, how: Curing):
    figures = ingoing(charge, how)
    assert value(figures, "nitrite_ion") == pytest.approx(value(figures, "nitrite") * ION_IN_SODIUM_NITRITE, rel=1e-12)
    if any(each.key == "nitrate" for each in figures):
        assert value(figures, "nitrate_ion") == pytest.approx(
            value(figures, "nitrate") * ION_IN_SODIUM_NITRATE, rel=1e-12
        )


@given(charges())
def test_a_curing_salt_is_all_its_parts(charge: CureMix):
    parts = sum(charge.substance_kg(each, "weighed") for each in ("nitrite", "nitrate")) + charge.own_salt_kg
    assert parts == pytest.approx(charge.cure_kg, rel=1e-9, abs=1e-12)


@given(charges(), hows)
def test_what_went_into_the_meat_and_what_stayed_in_the_tub_are_what_was_weighed(charge: CureMix, how: Curing):
    """Meat and brine in equilibrium hold alike; of a pumped brine the rest is left in the tub."""
    brought = charge.substance_kg("nitrite", "sodium")
    in_meat = basis(charge, how.method, "meat").ppm(charge, brought) * 1e-6 * charge.meat_kg
    if how.method == "immersion":
        left = brought / (charge.meat_kg + charge.pickle_kg) * charge.pickle_kg
    elif how.method in PART_IN:
        left = brought / charge.pickle_kg * (charge.pickle_kg - (charge.taken or 0) * charge.meat_kg)
    else:
        left = 0.0
    assert in_meat + left == pytest.approx(brought, rel=1e-9, abs=1e-15)


def test_the_largest_dose_meets_every_row_and_one_more_meets_not_all():
    reached: list[object] = []

    @given(charges(), hows)
    def law(charge: CureMix, how: Curing):
        plain = evolve(charge, doses=charge.doses[:1], accelerator_kg=0.0)
        most = largest_kg(plain, how)
        assume(0 < most < 1e3)
        assert all(each.within for each in check_limits(plain.with_first(most), how))
        assert not all(each.within for each in check_limits(plain.with_first(most * 1.01), how))
        reached.append(how)

    reaches(law, reached, 20)


@given(charges(), hows, st.floats(0, 5), st.floats(0, 5))
def test_more_plain_salt_is_never_less_salt_in_the_meat(charge: CureMix, how: Curing, one: float, other: float):
    less, more = sorted((one, other))
    shares = [value(ingoing(evolve(charge, other_salt_kg=each), how), "total_salt") for each in (less, more)]
    assert shares[0] <= shares[1] * (1 + 1e-12)


@given(charges(), hows, st.floats(0, 5), st.floats(0, 5))
def test_more_of_all_else_never_makes_more_ppm(charge: CureMix, how: Curing, one: float, other: float):
    less, more = sorted((one, other))
    for rule in how.held:
        fewer, most = (made_ppm(evolve(charge, other_kg=each), how.method, rule) for each in (more, less))
        assert fewer <= most * (1 + 1e-12)


@given(st.floats(0.001, 1), st.floats(0, 0.264))
def test_a_recipes_salt_is_that_of_its_water(volume_m3: float, share: float):
    salt, water = (figure.value for figure in recipe(volume_m3, share)[:2])
    assert water * share / (1 - share) == pytest.approx(salt, rel=1e-9, abs=1e-12)


@given(st.floats(5.0, 7.0), st.floats(4.5, 6.9))
def test_the_most_sugar_for_a_ph_brings_it_there_by_either_end(start: float, wanted: float):
    assume(wanted < start - 0.01)
    most = sugar_for(start, wanted)[0].high
    assume(most is not None and most <= 0.05)
    (ph,) = ph_from(start, most)
    assert ph.low <= wanted + 1e-9
    assert ph.high <= wanted + 1e-9


@given(st.floats(5.0, 7.0), st.floats(0, 0.05), st.floats(0, 0.05))
def test_more_sugar_is_never_less_sour(start: float, one: float, other: float):
    less, more = sorted((one, other))
    assert ph_from(start, more)[0].high <= ph_from(start, less)[0].high
