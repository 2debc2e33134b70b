"""What is looked at of a file to tell its columns: rows of it, and what stands above them."""

from __future__ import annotations

from collections.abc import Callable

from attrs import frozen

MOSTLY = 0.8

Row = list[str]


@frozen
class Table:
    """What is looked at: sampled rows, the heads and units above them, and every line from the first row on."""

    rows: list[Row]
    head: Row
    units: Row
    lines: list[str]
    separator: str
    decimal: str

    def column(self, at: int) -> Row:
        return [row[at].strip() for row in self.rows if row[at].strip()]


def mostly(cells: Row, is_so: Callable[[str], bool]) -> bool:
    count = sum(1 for cell in cells if is_so(cell))
    return bool(cells) and count >= MOSTLY * len(cells)
