"""The film of air around a piece: its formulas entered here a second time, its ends with a hair on either side."""

from collections.abc import Callable

import pytest

from core.chamber.film import AirFilm, dry_air, film, latent_heat_j_kg, wet_flux_kg_m2s, wet_surface_c
from core.refusals import OutOfRange
from core.vapour import absolute_humidity_kg_m3


@pytest.mark.parametrize(
    ("temperature_c", "density", "viscosity", "conductivity", "heat_capacity", "diffusivity"),
    [
        (0.0, 101_325 / (287.05 * 273.15), 17.166e-6, 0.024376, 1006.7, 21.78e-6),
        (20.0, 101_325 / (287.05 * 293.15), 18.1332e-6, 0.0258598, 1015.99, 21.78e-6 * (293.15 / 273.15) ** 1.81),
    ],
)
def test_dry_air(
    temperature_c: float,
    density: float,
    viscosity: float,
    conductivity: float,
    heat_capacity: float,
    diffusivity: float,
):
    """Massman 1998 for the diffusivity (from memory); lines through CoolProp's figures for the rest."""
    air = dry_air(temperature_c)
    assert (air.density, air.viscosity, air.conductivity, air.heat_capacity, air.diffusivity) == pytest.approx(
        (density, viscosity, conductivity, heat_capacity, diffusivity), rel=1e-9
    )
    assert air.prandtl == pytest.approx(viscosity * heat_capacity / conductivity, rel=1e-9)
    assert air.lewis == pytest.approx(conductivity / density / heat_capacity / diffusivity, rel=1e-9)


@pytest.mark.parametrize(("thickness_m", "speed_m_s"), [(0.06, 0.1), (0.3, 3.0)])
def test_the_film_is_churchill_and_bernstein_s(thickness_m: float, speed_m_s: float):
    """Their equation of 1977 for a cylinder in cross-flow (from memory), and Lewis' for the vapour."""
    air = dry_air(12.0)
    reynolds, prandtl = air.density * speed_m_s * thickness_m / air.viscosity, air.prandtl
    rough = (1 + (reynolds / 282_000) ** (5 / 8)) ** (4 / 5)
    nusselt = 0.3 + 0.62 * reynolds**0.5 * prandtl ** (1 / 3) * rough / (1 + (0.4 / prandtl) ** (2 / 3)) ** (1 / 4)
    around = film(thickness_m, speed_m_s, 12.0)
    assert around.heat_w_m2k == pytest.approx(nusselt * air.conductivity / thickness_m, rel=1e-9)
    assert around.vapour_m_s == pytest.approx(
        around.heat_w_m2k / (air.density * air.heat_capacity * air.lewis ** (2 / 3)), rel=1e-9
    )


def test_the_heat_of_evaporation():
    """ASHRAE Handbook Fundamentals 2017, chapter 1: 2501 kJ/kg at 0 °C, 2.326 less with each kelvin."""
    assert latent_heat_j_kg(0.0) == 2_501_000.0
    assert latent_heat_j_kg(10.0) == pytest.approx(2_477_740.0)


def test_a_wet_surface_settles_where_the_air_s_heat_pays_for_its_water():
    around = AirFilm(8.0, 0.007)
    surface_c, leaves = wet_surface_c(12.0, 0.75, around), wet_flux_kg_m2s(12.0, 0.75, around)
    held = absolute_humidity_kg_m3(surface_c, 1.0) - absolute_humidity_kg_m3(12.0, 0.75)
    assert leaves == pytest.approx(0.007 * held, rel=1e-9)
    assert latent_heat_j_kg(surface_c) * leaves == pytest.approx(8.0 * (12.0 - surface_c), rel=1e-9)


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: film(0.01, 0.1, 12.0), None), (lambda: film(0.00999, 0.1, 12.0), "thickness"),
        (lambda: film(0.3, 0.1, 12.0), None), (lambda: film(0.3001, 0.1, 12.0), "thickness"),
        (lambda: film(0.06, 0.02, 12.0), None), (lambda: film(0.06, 0.01999, 12.0), "air_speed"),
        (lambda: film(0.06, 3.0, 12.0), None), (lambda: film(0.06, 3.001, 12.0), "air_speed"),
        (lambda: dry_air(-5.0), None), (lambda: dry_air(-5.001), "temperature"),
        (lambda: dry_air(40.0), None), (lambda: dry_air(40.01), "temperature"),
    ],
)  # fmt: skip
def test_each_limit_has_a_hair_on_either_side(call: Callable[[], object], field: str | None):
    try:
        call()
        refused = None
    except OutOfRange as refusal:
        refused = refusal.field
    assert refused == field
