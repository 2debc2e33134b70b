"""One column of a log's sampled rows, as its numbers and texts."""

from __future__ import annotations

from collections import Counter

from attrs import frozen

from core.chamber.logs.table import Table
from core.chamber.logs.values import Number, number

MOST_PROBES = 50
LEAST_FOR_DECIMALS = 20
NEARLY_ALL = 0.95
RETURNS = 3
"""How often each name of a probe comes, at least."""


@frozen
class Seen:
    """One column of the sample. row_by_row: its numbers, None for a cell that holds none."""

    label: str
    unit_below: str
    cells: list[str]
    numbers: list[Number | None]
    row_by_row: list[Number | None]
    mark: str = ""
    """Its decimal mark, where that is not the file's."""

    @property
    def values(self) -> list[float]:
        return [each.value for each in self.numbers if each is not None]

    @property
    def is_text(self) -> bool:
        return bool(self.cells) and len(self.values) * 2 < len(self.cells)

    @property
    def are_whole(self) -> bool:
        return all(each.decimals == 0 for each in self.numbers if each is not None)

    @property
    def is_constant(self) -> bool:
        return len(self.values) >= LEAST_FOR_DECIMALS and len(set(self.values)) == 1

    @property
    def may_number_probes(self) -> bool:
        """A few whole numbers that return, as channels do; fifty distinct numbers are readings."""
        counts = Counter(self.cells)
        return (
            not self.is_text
            and self.are_whole
            and 1 < len(counts) <= MOST_PROBES
            and len(counts) * 5 <= len(self.cells)
            and min(counts.values()) >= RETURNS
        )

    @property
    def decimals(self) -> int | None:
        """How many decimals all cells have but a few that may be broken; None where loggers drop zeros at the end."""
        counts = Counter(each.decimals for each in self.numbers if each is not None)
        if len(self.values) < LEAST_FOR_DECIMALS:
            return None
        decimals = max(counts, key=counts.__getitem__)
        return decimals or None if counts[decimals] >= NEARLY_ALL * len(self.values) else None


def see(table: Table, at: int) -> Seen:
    cells = [row[at].strip() for row in table.rows]
    numbers, mark = [number(cell, table.decimal) for cell in cells], ""
    if cells and 2 * numbers.count(None) > len(cells):
        other = "," if table.decimal == "." else "."
        others = [number(cell, other) for cell in cells]
        if others.count(None) < numbers.count(None):
            numbers, mark = others, other
    filled = [(cell, each) for cell, each in zip(cells, numbers, strict=True) if cell]
    return Seen(
        table.head[at], table.units[at], [cell for cell, _ in filled], [each for _, each in filled], numbers, mark
    )
