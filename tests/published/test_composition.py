"""The make-up of raw meat against the rows of the USDA table as they were read."""

import pytest

from core.mix.composition import CUTS, made_of
from tests.published.rows import Row, rows


@pytest.mark.parametrize("row", rows("composition"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(getattr(CUTS[row.inputs["ndb"]], row.quantity) - row.expected) <= row.tolerance


@pytest.mark.parametrize("ndb", CUTS)
def test_a_row_taken_to_a_whole_moves_by_no_more_than_its_rounding(ndb: str):
    made, cut = made_of(CUTS[ndb]), CUTS[ndb]
    assert (made.water * 100, made.protein * 100, made.fat * 100) == pytest.approx(
        (cut.water, cut.protein, cut.fat), abs=0.05
    )


def test_every_row_of_the_table_is_in_print():
    assert set(CUTS) == {row.inputs["ndb"] for row in rows("composition")}
