"""How a logger's text file is laid out: what delimits its cells, which column holds what, and what has to be asked.

A layout is guessed, shown with the file's first rows, changed column by column and only then used. Whatever the file
itself does not settle stays open and is a question: a layout with an open question reads nothing.
"""

from __future__ import annotations

from collections import Counter
from itertools import compress
from typing import Literal

from attrs import frozen

from core.chamber.logs import fixed_width, time_cells
from core.chamber.logs.asking import questions
from core.chamber.logs.column import Column, Loss, Question, Role, TimeStyle
from core.chamber.logs.decoding import Encoding, Separator, cells_of, lines_of
from core.chamber.logs.long_form import LongForm, widened
from core.chamber.logs.notes import Note
from core.refusals import Refusal

SEPARATORS: tuple[Separator, ...] = ("\t", ";", "|", ",", " ")
SAMPLE = 400
"""Lines looked at for the structure: half from the front, half spread over the rest. Dates are looked at in all."""
ENOUGH = 0.3
"""A separator that this share of the lines bears out is one; blanks, which stand in every time, are then none."""
MOST_COLUMNS = 200

Row = list[str]


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


@frozen
class Frame:
    """What a file's lines have in common under one separator. `sample`: index of the line, its cells."""

    separator: Separator
    width: int
    sample: tuple[tuple[int, Row], ...]
    first: int
    share: float
    edges: tuple[tuple[int, int], ...] = ()


def frame_of(lines: list[str], told: Separator | None) -> Frame:
    """The delimiter's guess: the separator under which most lines are rows of one width with a time and a number."""
    picked = picked_of(lines)
    frames = [frame_under(lines, picked, separator) for separator in ((told,) if told else SEPARATORS)]
    found = [frame for frame in frames if frame is not None]
    if not found:
        raise Refusal(
            "file", "No rows with a time and a number were found. Export the log as text (CSV) with its times."
        )
    marked = [frame for frame in found if frame.separator != " " and frame.share > ENOUGH]
    return max(marked or found, key=lambda frame: frame.share)  # the first of equals


def picked_of(lines: list[str]) -> list[int]:
    written = list(compress(range(len(lines)), map(str.strip, lines)))  # an empty text counts as no
    if len(written) <= SAMPLE:
        return written
    front, rest = written[: SAMPLE // 2], written[SAMPLE // 2 :]
    step = len(rest) / (SAMPLE // 2)
    return front + [rest[int(i * step)] for i in range(SAMPLE // 2)]


def frame_under(lines: list[str], picked: list[int], separator: Separator) -> Frame | None:
    edges = fixed_width.edges_of([lines[index] for index in picked]) if separator == " " else ()
    cut = [
        (index, fixed_width.cells_at(lines[index], edges) if edges else cells_of(lines[index], separator))
        for index in picked
    ]
    rows = [(index, cells) for index, cells in cut if cells and len(cells) >= 2]
    fit = [(index, cells) for index, cells in rows if len(cells) <= MOST_COLUMNS and time_cells.is_row(cells)]
    if not fit:
        return None
    widths = Counter(len(cells) for _, cells in fit)
    width = max(widths, key=widths.__getitem__)
    sample = tuple((index, cells) for index, cells in fit if len(cells) == width)
    return Frame(separator, width, sample, sample[0][0], len(sample) / len(picked), edges)
