"""Rows of a log as they come, column by column: what reading fills and putting in order takes."""

from __future__ import annotations

from array import array
from collections.abc import Iterable

from attrs import frozen

from core.sentence import Sentence


@frozen
class Skipped:
    """A line, or one value in it, that was not taken. Lines count from 1."""

    line: int
    why: Sentence


class Rows:
    """Rows as they come: times, line numbers, and one array a value column."""

    def __init__(self, columns: int) -> None:
        self.times = array("d")
        self.lines = array("L")
        self.values = tuple(array("d") for _ in range(columns))

    def all(self) -> tuple[array[float] | array[int], ...]:
        return (self.times, self.lines, *self.values)

    def drop_last(self) -> None:
        for each in self.all():
            each.pop()

    def reverse(self) -> None:
        for each in self.all():
            each.reverse()

    def reordered(self, order: Iterable[int]) -> Rows:
        order = list(order)
        rows = Rows(0)
        rows.times = array("d", [self.times[at] for at in order])
        rows.lines = array("L", [self.lines[at] for at in order])
        rows.values = tuple(array("d", [column[at] for at in order]) for column in self.values)
        return rows

    def same_values(self, one: int, other: int) -> bool:
        return all(v[one] == v[other] or (v[one] != v[one] and v[other] != v[other]) for v in self.values)
