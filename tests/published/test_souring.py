"""Sugar and pH against what is printed of them: the rule of thumb, its objection and the buffer of meat."""

import pytest

from core.mix.sugar import BUFFER_MOL, SUGARS, ph_from
from tests.published.rows import Row, rows

LACTIC_KG_PER_MOL = 0.09008
DEXTROSE = SUGARS["dextrose"]


def _agrees(row: Row) -> bool:
    given = row.inputs
    match row.quantity:
        case "ph_by_rule":
            return abs((ph_from(given["start"], given["sugar"])[0].high or 0) - row.expected) <= row.tolerance
        case "ph_within":
            (ph,) = ph_from(given["start"], given["sugar"])
            return (ph.low or 0) <= row.expected <= (ph.high or 0)
        case "ph_by_buffer_below":
            return (ph_from(given["start"], given["sugar"])[0].low or 0) < row.expected
        case "lactic_share":
            made = given["sugar"] * DEXTROSE.acid_mol_per_kg * LACTIC_KG_PER_MOL
            return abs(made - row.expected) <= row.tolerance
        case "fall_at_buffer":
            fall = given["sugar"] * DEXTROSE.acid_mol_per_kg / given["buffer"]
            return abs(fall - row.expected) <= row.tolerance
        case "buffer_between":
            return BUFFER_MOL[0] <= given["buffer"] <= BUFFER_MOL[1]
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("souring"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert _agrees(row)
