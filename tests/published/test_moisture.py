"""Moisture load, films of air and wet surfaces against figures worked out by other means."""

import pytest

from core.chamber.film import dry_air, film, wet_flux_kg_m2s, wet_surface_c
from core.chamber.moisture import moisture_load
from core.units import DAY_S
from tests.published.rows import Row, rows


def _loaded(row: Row, key: str) -> float:
    given = row.inputs
    figures = moisture_load(given["meat_kg"], given["loss_percent"] / 100 / DAY_S, 12.0, None, given["chamber_m3"])
    return next(figure.value for figure in figures if figure.key == key)


def _computed(row: Row) -> float:
    given = row.inputs
    if row.quantity.startswith("air_"):
        return getattr(dry_air(given["temperature_c"]), row.quantity.removeprefix("air_"))
    match row.quantity:
        case "grams_an_hour":
            return _loaded(row, "given_off") * 1000 * 3600
        case "latent_w":
            return _loaded(row, "latent")
        case "rises_s":
            return _loaded(row, "rises_in")
        case "one_per_cent_g":
            return _loaded(row, "one_per_cent") * 1000
    around = film(given["thickness_m"], given["air_speed_m_s"], given["temperature_c"])
    match row.quantity:
        case "film_w_m2k":
            return around.heat_w_m2k
        case "vapour_mm_s":
            return around.vapour_m_s * 1000
        case "wet_surface_c":
            return wet_surface_c(given["temperature_c"], given["humidity"], around)
        case "flux_g_m2h":
            return wet_flux_kg_m2s(given["temperature_c"], given["humidity"], around) * 1000 * 3600
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("moisture"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
