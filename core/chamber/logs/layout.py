"""How a logger's text file is laid out: what delimits its cells, which column holds what, and what has to be asked.

A layout is guessed, shown with the file's first rows, changed column by column and only then used. Whatever the file
itself does not settle stays open and is a question: a layout with an open question reads nothing.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.chamber.logs.asking import questions
from core.chamber.logs.column import Column, Loss, Question, Role, TimeStyle
from core.chamber.logs.decoding import Encoding, Separator, lines_of
from core.chamber.logs.long_form import LongForm, widened
from core.chamber.logs.notes import Note


@frozen
class Layout:
    """A file's layout. Lines count from 1, as an editor shows them."""

    encoding: Encoding
    separator: Separator
    decimal: Literal[".", ",", ""]
    first_line: int
    width: int
    columns: tuple[Column, ...]
    times: TimeStyle
    header_line: int | None = None
    units_line: int | None = None
    joined: bool = False
    """The decimal comma is also the separator: each value takes two cells."""
    probes: tuple[str, ...] = ()
    """The names that the probe column holds; a row with any other name is not taken."""
    preview: tuple[tuple[str, ...], ...] = ()
    notes: tuple[Note, ...] = ()
    may_be_time: tuple[int, ...] = ()
    """Columns, from 0, that may hold the time where none is known to: what is asked."""
    clocks_apart: tuple[int, ...] = ()
    """Columns, from 0, that hold a time each, where more than one runs."""
    side_by_side: bool | None = None
    """Whether each of them times the columns that follow it; None while that is asked."""
    edges: tuple[tuple[int, int], ...] = ()
    """Of columns set out under each other: where the cells of each begin and end, so that an empty one is seen."""
    long: LongForm | None = None
    """Where each row of the file holds one quantity: its lines are widened first, and the columns are of those."""
    losses: tuple[Loss, ...] = ()
    losses_taken: bool = False
    """Whether the person said that what is not read may be left out."""

    @property
    def questions(self) -> tuple[Question, ...]:
        """What is still open, in the order to ask it."""
        return tuple(questions(self))

    def holding(self, *roles: Role) -> tuple[int, ...]:
        """The columns with these roles, counted from 0."""
        return tuple(index for index, column in enumerate(self.columns) if column.role in roles)


def lines_in(data: bytes, layout: Layout) -> list[str]:
    """The file's lines as the layout's columns are found in them."""
    lines = lines_of(data, layout.encoding)
    return lines if layout.long is None else widened(lines, layout.long)
