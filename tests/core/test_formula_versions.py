"""Formulas in the book: each version an entry, none overwritten, and a batch keeps the one it was made with."""

import pytest

from core.daybook.facts.formula import FormulaKept
from core.daybook.formulas import FormulaLine, fold_formula, formula_at, formula_of, formulas, version_at
from tests.core.kitchen import DAY, NOON
from tests.core.mixing import FORMULA, Table, fields


@pytest.fixture
def table() -> Table:
    return Table()


def test_a_formula_has_its_versions_in_order(table: Table):
    kept = table.keep()
    table.change(kept, name="Juniper finer")
    folded = fold_formula(table.book, kept)
    assert folded is not None
    assert [each.formula.name for each in folded.versions] == ["Juniper coarse", "Juniper finer"]
    assert folded.name == "Juniper finer"


def test_a_version_taken_back_is_none(table: Table):
    kept = table.keep()
    table.take_back(table.change(kept, name="Juniper finer"))
    assert [each.name for each in formulas(table.book)] == ["Juniper coarse"]


def test_a_formula_taken_back_is_gone_but_its_version_can_still_be_read(table: Table):
    kept = table.keep()
    table.take_back(kept)
    assert formulas(table.book) == []
    assert formula_at(table.book, kept) == FormulaKept(**fields(FORMULA))
    assert formula_of(table.book, kept) is None


def kept_as(table: Table, formula_id: str) -> FormulaLine:
    folded = fold_formula(table.book, formula_id)
    assert folded is not None
    return folded


def test_a_version_is_found_by_its_entry_and_numbered_in_their_order(table: Table):
    kept = table.keep()
    second = table.change(kept, name="Juniper finer")
    folded = kept_as(table, kept)
    found = [version_at(table.book, folded, each) for each in (kept, second)]
    assert [(each and (each.id, each.number, each.formula.name)) for each in found] == [
        (kept, 1, "Juniper coarse"),
        (second, 2, "Juniper finer"),
    ]


def test_a_version_that_was_taken_back_is_read_without_a_number(table: Table):
    kept = table.keep()
    table.take_back(gone := table.change(kept, name="Juniper finer", at=3.0))
    version = version_at(table.book, kept_as(table, kept), gone)
    assert version is not None
    assert (version.number, version.formula.name, version.at) == (0, "Juniper finer", NOON + 3 * DAY)
    assert (version.id, version.entries) == (gone, (gone,))


def test_the_version_of_another_formula_and_of_no_entry_is_none_of_this(table: Table):
    kept, other = table.keep(), table.keep()
    folded = kept_as(table, kept)
    assert [version_at(table.book, folded, each) for each in (other, "no entry")] == [None, None]


def test_a_batch_keeps_the_version_it_was_made_with(table: Table):
    kept = table.keep()
    batch = table.begin(formula=kept, at=0.5)
    table.change(kept, name="Juniper finer")
    assert table.batch(batch).formula == FormulaKept(**fields(FORMULA))
    assert formula_of(table.book, kept) == kept


@pytest.mark.parametrize("version", [None, "no entry"])
def test_no_version_belongs_to_no_formula(table: Table, version: str | None):
    table.keep()
    assert formula_of(table.book, version) is None
    assert formula_at(table.book, version) is None


@pytest.mark.parametrize("version", [None, "0190a6f0-0000-7000-8000-000000000000"])
def test_a_version_that_this_book_does_not_hold_belongs_to_no_formula(table: Table, version: str | None):
    """A batch from another tablet may name one."""
    assert formula_of(table.book, version) is None
