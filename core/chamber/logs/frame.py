"""Under which separator a file's lines are rows: their width, and where the first of them stands."""

from __future__ import annotations

from collections import Counter
from itertools import compress

from attrs import frozen

from core.chamber.logs import fixed_width, time_cells
from core.chamber.logs.decoding import Separator, cells_of
from core.refusals import Refusal

SEPARATORS: tuple[Separator, ...] = ("\t", ";", "|", ",", " ")
SAMPLE = 400
"""Lines looked at for the structure: half from the front, half spread over the rest. Dates are looked at in all."""
ENOUGH = 0.3
"""A separator that this share of the lines bears out is one; blanks, which stand in every time, are then none."""
MOST_COLUMNS = 200

Row = list[str]


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
