"""Dilutions, limits and conditions of sanitisers against print."""

import pytest

from core.chamber.sanitising import no_rinse_ppm
from core.chamber.sanitising_agents import AGENTS, conditions
from core.chamber.sanitising_stock import CHLORINE_IN_HYPOCHLORITE, stock_kg, stock_m3
from core.quantities import VOLUME
from core.reading import read
from core.units import GALLON
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "made_ppm":
            return read(given["stock"], VOLUME) / stock_m3(1.0, read(given["volume"], VOLUME), given["strength"])
        case "stock_ml" | "stock_gal":
            stock = stock_m3(given["target_ppm"], read(given["volume"], VOLUME), given["strength"])
            return stock * 1e6 if row.quantity == "stock_ml" else GALLON.from_si(stock)
        case "stock_g":
            return 1000 * stock_kg(given["target_ppm"], read(given["volume"], VOLUME), given["strength"])
        case "least_ppm":
            least = AGENTS[given["agent"]].least_ppm
            assert least is not None
            return least
        case "strongest":
            return AGENTS[given["agent"]].strongest
        case "hypochlorite_percent":
            return given["percent"] * CHLORINE_IN_HYPOCHLORITE
        case "limit_ppm":
            limit = no_rinse_ppm(AGENTS[given["agent"]], given["label_ppm"])
            assert limit is not None
            return limit
        case "least_f":
            least_c = conditions(given["agent"], given["ppm"], given["ph"]).least_c
            assert least_c is not None
            return least_c * 1.8 + 32
        case "contact_s":
            return conditions(given["agent"], given["ppm"]).contact_s
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("sanitising"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
