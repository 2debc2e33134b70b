"""Brine against what agencies print of the salometer and what others measured of its density."""

import pytest

from core.mix.brine import SATURATED, density_kg_per_m3, recipe
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "salt_of_degrees":
            return given["degrees"] * SATURATED
        case "density":
            return density_kg_per_m3(given["salt"])
        case "salt_to_water":
            salt, water, *_ = recipe(0.001, given["share"])
            return salt.value / water.value
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("brine"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
