"""Diffusion against Crank's tables, days in salt against the trade's rules and the law's least days."""

import pytest

from core.mix import diffusion
from core.mix.salting import Piece, time_to
from core.mix.salting_rules import brine_strength, by_rule, minimums
from core.units import INCH_M, POUND_KG
from tests.published.rows import Row, rows

DAY_S = 86400.0


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "slab_mean" | "slab_centre" | "cylinder_mean" | "cylinder_centre" | "sealed_slab_centre":
            return getattr(diffusion, row.quantity)(given["fo"])
        case "root_of_j0":
            return diffusion.root_of_j0(given["number"])
        case "days":
            piece = Piece(given["shape"], given["mm"] / 1000)
            return time_to(piece, given["manner"], given["d_m2_s"], given["share"]) / DAY_S
        case "by_mass":
            figures = by_rule(given["lb"] * POUND_KG, None)
            return next(each.value for each in figures if each.key == given["key"]) / DAY_S
        case "by_inch":
            return by_rule(None, given["inches"] * INCH_M)[0].value / DAY_S
        case "brine":
            return brine_strength(given["salt"], given["water"]).value
        case "to_go":
            figures = minimums(given["cut"], given["product"], given["salted"] * DAY_S, given["in_all"] * DAY_S)
            return next(each.value for each in figures if each.key == given["key"]) / DAY_S
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("salt_in_muscle"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
