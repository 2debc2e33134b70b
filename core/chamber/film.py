"""The film of air around a hanging piece: how fast do heat and vapour cross it, and how fast can a wet surface dry?

A long round piece in air that moves across it. Radiation is left out here.
"""

from __future__ import annotations

import math

from attrs import frozen

from core.chamber.rates import AIR_SPEED
from core.quantities import LENGTH, TEMPERATURE
from core.refusals import require_between
from core.roots import begins
from core.saturation import KELVIN_AT_ZERO_C
from core.vapour import STANDARD_PA, absolute_humidity_kg_m3, dew_point_c

DRY_AIR_GAS_CONSTANT = 287.05


@frozen
class DryAir:
    """At sea level, SI. diffusivity: of water vapour in it."""

    density: float
    viscosity: float
    conductivity: float
    heat_capacity: float
    diffusivity: float

    @property
    def prandtl(self) -> float:
        return self.viscosity * self.heat_capacity / self.conductivity

    @property
    def lewis(self) -> float:
        return self.conductivity / (self.density * self.heat_capacity) / self.diffusivity


@frozen
class AirFilm:
    """heat_w_m2k: film coefficient. vapour_m_s: the same for vapour, by Lewis."""

    heat_w_m2k: float
    vapour_m_s: float


def film(thickness_m: float, air_speed_m_s: float, temperature_c: float) -> AirFilm:
    """Heat and vapour film of a cylinder in cross-flow at sea level.

    thickness_m: 0.01 to 0.3. air_speed_m_s: 0.02 to 3. temperature_c: −5 to 40. Raises OutOfRange.
    Source: Churchill and Bernstein 1977 (from memory); vapour by Lewis, h ÷ (ρ c (α/D)^⅔).
    """
    require_between("thickness", "Thickness", thickness_m, 0.01, 0.3, LENGTH)
    require_between("air_speed", "Air speed", air_speed_m_s, 0.02, 3.0, AIR_SPEED)
    air = dry_air(temperature_c)
    reynolds = air.density * air_speed_m_s * thickness_m / air.viscosity
    nusselt = 0.3 + (
        0.62
        * math.sqrt(reynolds)
        * air.prandtl ** (1 / 3)
        / (1 + (0.4 / air.prandtl) ** (2 / 3)) ** 0.25
        * (1 + (reynolds / 282_000) ** 0.625) ** 0.8
    )
    heat = nusselt * air.conductivity / thickness_m
    return AirFilm(heat, heat / (air.density * air.heat_capacity * air.lewis ** (2 / 3)))


def dry_air(temperature_c: float) -> DryAir:
    """−5 to 40 °C; from 2 to 25 °C within 0.2 % of CoolProp. Diffusivity: Massman 1998 (from memory).

    Raises OutOfRange.
    """
    require_between("temperature", "Temperature", temperature_c, -5.0, 40.0, TEMPERATURE)
    kelvin = temperature_c + KELVIN_AT_ZERO_C
    return DryAir(
        density=STANDARD_PA / (DRY_AIR_GAS_CONSTANT * kelvin),
        viscosity=(17.166 + 0.04836 * temperature_c) * 1e-6,
        conductivity=(24.376 + 0.07419 * temperature_c) * 1e-3,
        heat_capacity=1006.7 + 0.4645 * temperature_c,
        diffusivity=21.78e-6 * (kelvin / KELVIN_AT_ZERO_C) ** 1.81,
    )


def latent_heat_j_kg(temperature_c: float) -> float:
    """Heat that water takes to become vapour, −20 to 60 °C; within 0.1 % of CoolProp at 0 to 40 °C.

    Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eqs. 30 and 33.
    """
    return 2_501_000.0 - 2326.0 * temperature_c


def wet_surface_c(temperature_c: float, humidity: float, around: AirFilm) -> float:
    """Where a wet surface settles: the air's heat just pays for the water that leaves. Errors as in `core.vapour`."""
    return begins(
        lambda wet_c: _spent(wet_c, temperature_c, humidity, around) >= around.heat_w_m2k * (temperature_c - wet_c),
        dew_point_c(temperature_c, humidity),
        temperature_c,
    )


def _spent(surface_c: float, temperature_c: float, humidity: float, around: AirFilm) -> float:
    return latent_heat_j_kg(surface_c) * _leaves(surface_c, temperature_c, humidity, around)


def wet_flux_kg_m2s(temperature_c: float, humidity: float, around: AirFilm) -> float:
    """Water that leaves a wholly wet surface: more than any meat after its first days gives. Errors as above."""
    return _leaves(wet_surface_c(temperature_c, humidity, around), temperature_c, humidity, around)


def _leaves(surface_c: float, temperature_c: float, humidity: float, around: AirFilm) -> float:
    held = absolute_humidity_kg_m3(surface_c, 1.0) - absolute_humidity_kg_m3(temperature_c, humidity)
    return around.vapour_m_s * held
