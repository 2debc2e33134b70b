"""Laws of the moisture load and of what a chamber carries."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.chamber.capacity import capacity_as_rated, carries
from core.chamber.film import film, wet_flux_kg_m2s, wet_surface_c
from core.chamber.moisture import moisture_load
from core.units import DAY_S
from core.vapour import dew_point_c

MASSES = st.floats(0.01, 400)
LOSSES = st.floats(0.0005, 0.1).map(lambda share: share / DAY_S)
AIR = st.tuples(st.floats(-5, 40), st.floats(0.3, 0.99))
SPEEDS = st.floats(0.02, 3)


def values(figures):
    return {figure.key: figure.value for figure in figures}


@given(mass=MASSES, loss=LOSSES, times=st.floats(0.1, 2))
def test_the_load_is_linear_in_the_mass(mass, loss, times):
    once, more = values(moisture_load(mass, loss)), values(moisture_load(times * mass, loss))
    assert more == pytest.approx({key: times * value for key, value in once.items()})


@given(mass=MASSES, loss=LOSSES)
def test_what_just_takes_the_load_carries_just_the_mass(mass, loss):
    load = values(moisture_load(mass, loss))
    capacity = capacity_as_rated(load["coil"]) if load["coil"] * DAY_S < 1 else None
    if capacity is not None:
        assert values(carries(capacity, loss, mass))["carries"] == pytest.approx(mass)
        assert values(carries(capacity, loss, mass))["burden"] == pytest.approx(1)


@given(mass=MASSES, loss=LOSSES)
def test_the_first_days_are_never_under_the_mean(mass, loss):
    load = values(moisture_load(mass, loss))
    assert load["peak"] >= load["given_off"] * (1 - 1e-12)


@given(air=AIR, speed=SPEEDS)
def test_a_wet_surface_settles_between_the_dew_point_and_the_air(air, speed):
    assert dew_point_c(*air) <= wet_surface_c(*air, film(0.06, speed, air[0])) <= air[0]


@given(air=AIR, slow=SPEEDS, fast=SPEEDS)
def test_faster_air_never_dries_less(air, slow, fast):
    slow, fast = sorted((slow, fast))
    fluxes = [wet_flux_kg_m2s(*air, film(0.06, each, air[0])) for each in (slow, fast)]
    assert 0 <= fluxes[0] <= fluxes[1] * (1 + 1e-9)
