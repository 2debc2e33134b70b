"""Around a file's rows: what stands above them, and the decimal mark."""

from __future__ import annotations

import re
from typing import Literal

from attrs import frozen

from core.chamber.logs import fixed_width, time_cells
from core.chamber.logs.decoding import cells_of
from core.chamber.logs.frame import Frame, Row
from core.chamber.logs.values import number, unit_of

FARTHEST_HEAD = 12

_PATTERN = re.compile(r"[dmyhsajt ./:\-]+", re.IGNORECASE)


@frozen
class Above:
    """What stands above the rows, lines counted from 1; `first` is the index of the first row."""

    head: Row
    head_line: int | None
    units: Row
    units_line: int | None
    first: int


def above_of(lines: list[str], frame: Frame) -> Above:
    """The head and the units that stand above the first row. A broken line between them and it is a broken row."""
    units: Row = []
    units_line: int | None = None
    for index in range(frame.first - 1, max(-1, frame.first - 1 - FARTHEST_HEAD), -1):
        cells = _head_cells(lines, index, frame)
        if not units and _are_units(cells):
            units, units_line = cells, index + 1
        elif _are_heads(cells, frame):
            return Above(cells, index + 1, units, units_line, units_line or index + 1)
    return Above([], None, units, units_line, units_line or _first_row(lines, frame))


def _head_cells(lines: list[str], index: int, frame: Frame) -> Row:
    if frame.separator == " " and number(lines[index].split()[0] if lines[index].split() else "", ".") is None:
        under = fixed_width.heads_at(lines[index], [lines[at] for at, _ in frame.sample], frame.width)
        if under is not None and sum(1 for cell in under if cell) > 1:
            return under
    return cells_of(lines[index].lstrip("# "), frame.separator) or []


def _first_row(lines: list[str], frame: Frame) -> int:
    """Where no head tells: the first fitting row, or an earlier one of the same width whose values are missing."""
    first = frame.first
    for index in range(frame.first - 1, -1, -1):
        cells = cells_of(lines[index], frame.separator) or []
        if len(cells) != frame.width or not any(time_cells.is_moment(cell) for cell in cells):
            break
        first = index
    return first


def _are_units(cells: Row) -> bool:
    """Units, and beside them nothing but short words and patterns such as dd.mm.yyyy hh:mm."""
    texts = [text for cell in cells if (text := cell.strip(" ()[]"))]
    known = sum(1 for text in texts if unit_of(text) and (len(text) > 1 or text == "%"))
    return known > 0 and all(unit_of(text) or len(text) <= 3 or _PATTERN.fullmatch(text) for text in texts)


def _are_heads(cells: Row, frame: Frame) -> bool:
    texts = [cell.strip() for cell in cells]
    filled = [text for text in texts if text]
    if len(filled) < 2 or any(number(text, ".") or number(text, ",") or time_cells.is_moment(text) for text in filled):
        return False
    return len(texts) <= frame.width + 1 and len(filled) * 2 > frame.width - 1


def fitted(cells: Row, rows: list[Row]) -> Row:
    """Heads or units, one a column; none where they are fewer or more than the columns, for they may be shifted."""
    width = len(rows[0])
    texts = [cell.strip(" \t\u00a0\"'#\ufeff\0") for cell in cells]
    while texts and not texts[-1]:
        texts.pop()
    empty_at_the_end = min(next((n for n, cell in enumerate(reversed(row)) if cell.strip()), width) for row in rows)
    return [*texts, *[""] * (width - len(texts))] if width - empty_at_the_end <= len(texts) <= width else [""] * width


def decimal_of(frame: Frame, head: Row) -> tuple[Literal[".", ",", ""], bool]:
    """The decimal mark, and whether it is the separator too; "" where 12,5 may be one value or two."""
    numbers = {
        mark: [found for _, row in frame.sample for cell in row if (found := number(cell, mark))] for mark in ".,"
    }
    for thousands in (3, 0):  # 1,250 may be grouped: three decimals count only where there are no others
        pointed, comma = (sum(each.decimals not in (0, thousands) for each in numbers[mark]) for mark in ".,")
        if pointed or comma:
            return ("," if comma >= pointed else "."), False
    lead = time_cells.leading(frame.sample[0][1])
    pairs, odd = divmod(frame.width - lead, 2)
    filled = len([cell for cell in head if cell.strip()])
    if frame.separator != "," or odd or not pairs or filled == frame.width or not _could_be_fractions(frame, lead):
        return ".", False
    return (",", True) if filled == lead + pairs else ("", False)


def _could_be_fractions(frame: Frame, lead: int) -> bool:
    fractions = [row[at] for _, row in frame.sample for at in range(lead + 1, frame.width, 2)]
    return all(cell.isdecimal() and len(cell) <= 3 for cell in fractions)
