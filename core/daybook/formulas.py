"""A formula is the fold of its versions: each is an entry, none is overwritten, and a batch keeps the one it was made
with.
"""

from __future__ import annotations

from datetime import datetime

from attrs import frozen

from core.daybook.book import Book, Line
from core.daybook.entries import NotAnEntry
from core.daybook.facts.formula import FormulaChanged, FormulaKept
from core.mix.formula import Formula


@frozen
class Version:
    """number: 1 for the first, 0 for one taken back. id: of its entry as it now stands. entries: of that and of those
    before it was corrected."""

    id: str
    number: int
    at: datetime
    formula: Formula
    entries: tuple[str, ...]


@frozen
class FormulaLine:
    """A formula that is kept. versions: oldest first; the last one is in use."""

    id: str
    versions: tuple[Version, ...]
    lines: tuple[Line, ...]

    @property
    def current(self) -> Version:
        return self.versions[-1]

    @property
    def name(self) -> str:
        return self.current.formula.name

    def version(self, entry_id: str) -> Version | None:
        """The version that an entry is of, though its words were corrected since."""
        return next((each for each in self.versions if entry_id in each.entries), None)


def fold_formula(book: Book, formula_id: str) -> FormulaLine | None:
    """The formula as it stands, or None where none was begun by this id or its beginning was taken back."""
    if formula_id not in book:
        return None
    begun = book.line(formula_id)
    if begun.id != formula_id or not isinstance(begun.fact, FormulaKept):
        return None
    lines = book.about(formula_id)
    kept = [line for line in lines if isinstance(line.fact, FormulaKept | FormulaChanged)]
    kept.sort(key=lambda line: (line.id != formula_id, line.order))  # the first stays first, whatever its moment became
    versions = (
        Version(line.entry.id, number, line.entry.happened_at, line.fact, tuple(each.id for each in line.versions))
        for number, line in enumerate(kept, 1)
        if isinstance(line.fact, Formula)
    )
    return FormulaLine(formula_id, tuple(versions), tuple(lines))


def formulas(book: Book) -> list[FormulaLine]:
    """Every formula begun and not taken back, by name."""
    found = (fold_formula(book, key) for key in book.beginnings("formula-kept"))
    return sorted((each for each in found if each is not None), key=lambda each: (each.name.casefold(), each.id))


def formula_at(book: Book, version_id: str | None) -> Formula | None:
    """The very version an entry holds, whatever came after it, even where it was taken back since."""
    if version_id is None or version_id not in book:
        return None
    try:
        fact = book.entry(version_id).fact
    except NotAnEntry:
        return None
    return fact if isinstance(fact, FormulaKept | FormulaChanged) else None


def version_at(book: Book, kept: FormulaLine, entry_id: str) -> Version | None:
    """The version of this formula that an entry is of: a batch may name one that was taken back since."""
    formula = formula_at(book, entry_id)
    if formula is None or book.entry(entry_id).about != kept.id:
        return None
    return kept.version(entry_id) or Version(entry_id, 0, book.entry(entry_id).happened_at, formula, (entry_id,))


def formula_of(book: Book, version_id: str | None) -> str | None:
    """The id of the formula that a version belongs to, as far as it is still kept."""
    if formula_at(book, version_id) is None or version_id is None:
        return None
    about = book.entry(version_id).about
    return about if fold_formula(book, about) is not None else None
