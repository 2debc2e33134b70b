"""The first look at a logger's text file: what parts its cells, where its rows begin, which column is what.

Guessed is only what the file settles: by its heads, its units, or by values that leave one meaning. The rest stays open
in the layout and becomes a question.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import compress
from typing import Literal, cast

from attrs import evolve, frozen

from core.chamber.logs import columns, timing
from core.chamber.logs.decoding import UNREAD, Separator, cells_of, encoding_of, lines_of
from core.chamber.logs.layout import Column, Layout, Order, Role, Unit, with_column, with_order
from core.chamber.logs.naming import note_on
from core.chamber.logs.timing import Table
from core.chamber.logs.values import number, unit_of
from core.refusals import OutOfRange, Refusal

SEPARATORS: tuple[Separator, ...] = ("\t", ";", "|", ",", " ")
SAMPLE = 400
"""Lines looked at for the structure: half from the front, half spread over the rest. Dates are looked at in all."""
ENOUGH = 0.3
"""A separator that this share of the lines bears out is one; blanks, which stand in every time, are then none."""
PREVIEW = 8
MOST_COLUMNS = 200

Row = list[str]


FARTHEST_HEAD = 12
_PATTERN = re.compile(r"[dmyhsajt ./:\-]+", re.IGNORECASE)


@frozen
class Frame:
    """What a file's lines have in common under one separator. `sample`: index of the line, its cells."""

    separator: Separator
    width: int
    sample: tuple[tuple[int, Row], ...]
    first: int
    share: float


@frozen
class Above:
    """What stands above the rows, lines counted from 1; `first` is the index of the first row."""

    head: Row
    head_line: int | None
    units: Row
    units_line: int | None
    first: int


def guess(data: bytes, *, separator: Separator | None = None, decimal: Literal[".", ","] | None = None) -> Layout:
    """The layout of a logger's file, as far as the file settles it. A separator or a decimal mark may be told.

    Raises Refusal on "file" for what is empty, no text, or has no rows with a time and a number.
    """
    encoding = encoding_of(data)
    lines = lines_of(data, encoding)
    frame = _frame(lines, separator)
    above = _above(lines, frame)
    mark, joined = _decimal(frame, above.head) if decimal is None else (decimal, decimal == frame.separator)
    table = _table(lines, frame, above, mark or ".", joined)
    roles = timing.columns_of(table)
    guessed = columns.guess(table, roles) if mark else _open(table, roles)
    layout = Layout(
        encoding=encoding,
        separator=frame.separator,
        decimal=mark,
        first_line=above.first + 1,
        width=len(table.head),
        columns=guessed,
        times=timing.style_of(table, roles),
        header_line=above.head_line,
        units_line=above.units_line,
        joined=joined,
        preview=tuple(tuple(row) for row in table.rows[:PREVIEW]),
        notes=(*_notes(lines, encoding), *note_on(guessed)),
    )
    return evolve(layout, probes=_probes(lines, layout))


def change(
    data: bytes,
    layout: Layout,
    index: int,
    *,
    role: Role | None = None,
    unit: Unit | None = None,
    probe: str | None = None,
) -> Layout:
    """The layout with one column changed by hand; what hangs on a changed role is looked at anew: time, unit, probes.

    Raises OutOfRange as `with_column` does.
    """
    changed = with_column(layout, index, role=role, unit=unit, probe=probe)
    if role is None:
        return changed
    lines = lines_of(data, layout.encoding)
    frame = _under(lines, _picked(lines), layout.separator) or _frame(lines, layout.separator)
    table = _table(lines, frame, _above(lines, frame), layout.decimal or ".", layout.joined)
    if {role, layout.columns[index].role} & {"time", "date", "clock"}:
        roles: dict[int, Role] = {at: changed.columns[at].role for at in changed.holding("time", "date", "clock")}
        changed = evolve(changed, times=timing.style_of(table, roles))
    return evolve(changed, columns=columns.reseen(changed.columns, index, table), probes=_probes(lines, changed))


def answer(data: bytes, layout: Layout, about: str, key: str) -> Layout:
    """The layout with one of its questions answered by the key of a choice.

    Raises OutOfRange on `about` where the layout asks no such thing or offers no such choice.
    """
    asked = next((each for each in layout.questions if each.about == about), None)
    if asked is None or key not in {choice.key for choice in asked.choices}:
        raise OutOfRange(about, "Choose one of the answers that are offered.")
    kind, _, column = about.partition(" ")
    if kind == "decimal":
        return guess(data, separator=layout.separator, decimal="," if key == "," else ".")
    if kind == "order":
        return with_order(layout, cast(Order, key))
    if kind == "elapsed":
        return evolve(layout, times=evolve(layout.times, elapsed_unit=key))
    if kind == "unit":
        return with_column(layout, int(column) - 1, unit=cast(Unit, key))
    return change(data, layout, int(column) - 1, role=cast(Role, key))


def _table(lines: list[str], frame: Frame, above: Above, decimal: str, joined: bool) -> Table:
    lead = timing.leading(frame.sample[0][1])
    rows = [join(row, lead) if joined else row for _, row in frame.sample]
    head, units = _fitted(above.head, rows), _fitted(above.units, rows)
    return Table(rows, head, units, lines[above.first :], frame.separator, decimal)


def _frame(lines: list[str], told: Separator | None) -> Frame:
    """The separator under which most lines are rows of one width with a time and a number."""
    picked = _picked(lines)
    frames = [_under(lines, picked, separator) for separator in ((told,) if told else SEPARATORS)]
    found = [frame for frame in frames if frame is not None]
    if not found:
        raise Refusal(
            "file", "No rows with a time and a number were found. Export the log as text (CSV) with its times."
        )
    marked = [frame for frame in found if frame.separator != " " and frame.share > ENOUGH]
    return max(marked or found, key=lambda frame: frame.share)  # the first of equals


def _picked(lines: list[str]) -> list[int]:
    written = list(compress(range(len(lines)), map(str.strip, lines)))  # an empty text counts as no
    if len(written) <= SAMPLE:
        return written
    front, rest = written[: SAMPLE // 2], written[SAMPLE // 2 :]
    step = len(rest) / (SAMPLE // 2)
    return front + [rest[int(i * step)] for i in range(SAMPLE // 2)]


def _under(lines: list[str], picked: list[int], separator: Separator) -> Frame | None:
    rows = [(index, cells) for index in picked if (cells := cells_of(lines[index], separator)) and len(cells) >= 2]
    fit = [(index, cells) for index, cells in rows if len(cells) <= MOST_COLUMNS and timing.is_row(cells)]
    if not fit:
        return None
    width = Counter(len(cells) for _, cells in fit).most_common(1)[0][0]
    sample = tuple((index, cells) for index, cells in fit if len(cells) == width)
    return Frame(separator, width, sample, sample[0][0], len(sample) / len(picked))


def _above(lines: list[str], frame: Frame) -> Above:
    """The head and the units that stand above the first row. A broken line between them and it is a broken row."""
    units: Row = []
    units_line: int | None = None
    for index in range(frame.first - 1, max(-1, frame.first - 1 - FARTHEST_HEAD), -1):
        cells = cells_of(lines[index].lstrip("# "), frame.separator) or []
        if not units and _are_units(cells):
            units, units_line = cells, index + 1
        elif _are_heads(cells, frame):
            return Above(cells, index + 1, units, units_line, units_line or index + 1)
    return Above([], None, units, units_line, units_line or _first_row(lines, frame))


def _first_row(lines: list[str], frame: Frame) -> int:
    """Where no head tells: the first fitting row, or an earlier one of the same width whose values are missing."""
    first = frame.first
    for index in range(frame.first - 1, -1, -1):
        cells = cells_of(lines[index], frame.separator) or []
        if len(cells) != frame.width or not any(timing.is_moment(cell) for cell in cells):
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
    if len(filled) < 2 or any(number(text, ".") or number(text, ",") or timing.is_moment(text) for text in filled):
        return False
    return len(texts) <= frame.width + 1 and len(filled) * 2 > frame.width - 1


def _fitted(cells: Row, rows: list[Row]) -> Row:
    """Heads or units, one a column; none where they are fewer or more than the columns, for they may be shifted."""
    width = len(rows[0])
    texts = [cell.strip(" \t\u00a0\"'#\ufeff\0") for cell in cells]
    while texts and not texts[-1]:
        texts.pop()
    empty_at_the_end = min(next((n for n, cell in enumerate(reversed(row)) if cell.strip()), width) for row in rows)
    return [*texts, *[""] * (width - len(texts))] if width - empty_at_the_end <= len(texts) <= width else [""] * width


def _decimal(frame: Frame, head: Row) -> tuple[Literal[".", ",", ""], bool]:
    """The decimal mark, and whether it is the separator too; "" where 12,5 may be one value or two."""
    numbers = {
        mark: [found for _, row in frame.sample for cell in row if (found := number(cell, mark))] for mark in ".,"
    }
    for thousands in (3, 0):  # 1,250 may be grouped: three decimals count only where there are no others
        pointed, comma = (sum(1 for each in numbers[mark] if each.decimals not in (0, thousands)) for mark in ".,")
        if pointed or comma:
            return ("," if comma >= pointed else "."), False
    lead = timing.leading(frame.sample[0][1])
    pairs, odd = divmod(frame.width - lead, 2)
    filled = len([cell for cell in head if cell.strip()])
    if frame.separator != "," or odd or not pairs or filled == frame.width or not _could_be_fractions(frame, lead):
        return ".", False
    return (",", True) if filled == lead + pairs else ("", False)


def _could_be_fractions(frame: Frame, lead: int) -> bool:
    fractions = [row[at] for _, row in frame.sample for at in range(lead + 1, frame.width, 2)]
    return all(cell.isdecimal() and len(cell) <= 3 for cell in fractions)


def join(cells: Sequence[str], lead: int) -> Row:
    """Cells of a row whose values were parted at their decimal commas, joined again. Half a number becomes none."""
    pairs = zip(cells[lead::2], cells[lead + 1 :: 2], strict=False)
    return [*cells[:lead], *(f"{whole},{part}" if whole and part else whole + part and "?" for whole, part in pairs)]


def _open(table: Table, roles: dict[int, Role]) -> tuple[Column, ...]:
    return tuple(Column(roles.get(at, "ignored"), label) for at, label in enumerate(table.head))


def _probes(lines: list[str], layout: Layout) -> tuple[str, ...]:
    """The names in the probe column, as they come: those of three rows at least, or of one in fifty."""
    named = layout.holding("probe")
    if not named or layout.joined:
        return ()
    at, label = named[0], layout.columns[named[0]].label
    rows = (cells_of(line, layout.separator) for line in lines[layout.first_line - 1 :] if line)
    names = Counter(row[at].strip() for row in rows if row is not None and len(row) == layout.width)
    least = min(3, max(1, sum(names.values()) // 50))
    return tuple(name for name, count in names.items() if name not in ("", label) and count >= least)


def _notes(lines: list[str], encoding: str) -> tuple[str, ...]:
    broken = sum(1 for line in lines if UNREAD in line)
    return (f"{broken} lines hold signs that are no text in {encoding.upper()}.",) if broken else ()
