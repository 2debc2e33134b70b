"""Pearson's square against exact fractions: no worked example in print was read."""

import pytest

from core.mix.pearson import shares_for, square
from tests.published.rows import Row, rows

every_row = pytest.mark.parametrize("row", rows("pearson"), ids=lambda row: row.id)


@every_row
def test_the_square_agrees(row: Row):
    lean, _ = square(row.inputs["lean"], row.inputs["fat"], row.inputs["wanted"])
    assert abs(lean - row.expected) <= row.tolerance


@every_row
def test_the_general_form_agrees(row: Row):
    lean, _ = shares_for([row.inputs["lean"], row.inputs["fat"]], [0.5, 0.5], row.inputs["wanted"])
    assert abs(lean - row.expected) <= 1e-9
