"""Rows taken from a log's lines as its layout says, and every line or value that is not taken, with the reason."""

from __future__ import annotations

from array import array
from collections.abc import Callable
from math import isnan

from attrs import frozen

from core.chamber.logs import heads
from core.chamber.logs.column import Column
from core.chamber.logs.decoding import cells_of, join
from core.chamber.logs.fixed_width import cells_at
from core.chamber.logs.layout import Layout
from core.chamber.logs.moments import column_reader, reader
from core.chamber.logs.rows import Rows, Skipped
from core.chamber.logs.values import Memo, echo, looks_broken, value_of
from core.quantities import COUNT, Amount
from core.sentence import Message, Said, Sentence, said

BLOCK = 256
"""Lines taken at once where none of them is odd."""
ONE_CELL: Message = "This line has {count} cell where {wanted} belong."
CELLS: Message = "This line has {count} cells where {wanted} belong."
SUMS_UP = Memo(heads.sums_up)
"""For each text whether its row sums up others."""


@frozen
class _Wanted:
    """A value column: where it stands, what its texts mean, and why one means nothing."""

    at: int
    column: Column
    meaning: Memo
    why: Callable[[str], Sentence | None]


class Tables:
    """The rows taken so far, by the name of the probe; "" where the columns tell the probes apart."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.skipped: list[Skipped] = []
        self.lost_lines: dict[int, None] = {}
        self.lost_values: dict[int, list[tuple[int, str]]] = {}
        """By column from 0: the lines and the texts."""
        self.heads_again: dict[int, list[str]] = {}
        moments = layout.holding("time", "date")[0]
        clocks = layout.holding("clock")
        decimal = layout.decimal or "."
        how = (layout.times, moments, clocks[0] if clocks else None, decimal)
        self._moment, self._moments_in = reader(*how), column_reader(*how)
        self._moment_columns = layout.holding("time", "date", "clock")
        self._wanted = [_wanted(at, layout.columns[at], decimal) for at in layout.holding("temperature", "humidity")]
        self._probe_at = (layout.holding("probe") or (None,))[0]
        names = layout.probes if self._probe_at is not None else ("",)
        self.by_probe = {name: Rows(len(self._wanted)) for name in names}
        self._raw_width = layout.width if not layout.joined else 2 * layout.width - len(self._moment_columns)
        last = layout.columns[-1]
        self._last_may_be_cut = last.role != "ignored" and last.decimals is None
        self._latest: Rows | None = None
        self._may_sum_up = [at for at, column in enumerate(layout.columns) if column.role == "ignored"]

    @property
    def taken(self) -> int:
        return sum(len(rows.times) for rows in self.by_probe.values())

    def skip(self, line: int, why: Said) -> None:
        """A line that is not taken, or not all of it."""
        self.skipped.append(Skipped(line, said(why)))

    def _lose(self, line: int, why: Said) -> None:
        """A line that holds something, of which nothing is read."""
        self.skip(line, why)
        self.lost_lines[line] = None

    def take(self, lines: list[str], start: int, end: int) -> None:
        for at in range(start, end, BLOCK):
            block = min(at + BLOCK, end)
            if not self._take_at_once(lines[at:block], at + 1):
                self._take_one_by_one(lines, at, block)

    def _take_at_once(self, block: list[str], first_line: int) -> bool:
        """Take lines with nothing amiss a column at a time, which is quicker. Else False, and none taken."""
        rows = self.by_probe.get("")
        if rows is None or self.layout.joined or '"' in "".join(block):
            return False
        split_by = None if self.layout.separator == " " else self.layout.separator
        table = [line.split(split_by) for line in block]
        if set(map(len, table)) != {self._raw_width}:
            return False
        columns = tuple(zip(*table, strict=True))
        if any(map(SUMS_UP.__getitem__, {cell for at in self._may_sum_up for cell in set(columns[at])})):
            return False
        times = array("d", self._moments_in(columns))
        values = [array("d", map(each.meaning.__getitem__, columns[each.at])) for each in self._wanted]
        if any(isnan(sum(each)) for each in (times, *values)):
            return False
        rows.times.extend(times)
        rows.lines.extend(range(first_line, first_line + len(block)))
        for kept, new in zip(rows.values, values, strict=True):
            kept.extend(new)
        self._latest = rows
        return True

    def _take_one_by_one(self, lines: list[str], start: int, end: int) -> None:
        separator, width, joined = self.layout.separator, self._raw_width, self.layout.joined
        split_by = None if separator == " " else separator
        moment, wanted, probe_at, edges = self._moment, self._wanted, self._probe_at, self.layout.edges
        rows = self.by_probe.get("")
        for index in range(start, end):
            line = lines[index]
            cells = (
                cells_at(line, edges) if edges else cells_of(line, separator) if '"' in line else line.split(split_by)
            )
            if cells is None or len(cells) != width:
                cells = self._mended(cells, line, index + 1)
                if cells is None:
                    continue
            if joined:
                cells = join(cells, len(self._moment_columns))
            at = moment(cells)
            if at != at:
                self._skip_moment(cells, index + 1)
                continue
            if any(SUMS_UP[cells[each]] for each in self._may_sum_up):
                self.skip(index + 1, "This line sums up others: it is not a reading.")
                continue
            if probe_at is not None:
                rows = self.by_probe.get(cells[probe_at].strip())
            if rows is None:
                told = {"cell": echo(cells[probe_at or 0])}
                self._lose(index + 1, Sentence("{cell} is not one of this file's probes.", told))
                continue
            rows.times.append(at)
            rows.lines.append(index + 1)
            is_whole = True
            for each, values in zip(wanted, rows.values, strict=True):
                cell = cells[each.at]
                value = each.meaning[cell]
                values.append(value)
                if value != value:
                    is_whole &= self._skip_value(each, cell, index + 1)
            if not is_whole:
                rows.drop_last()
                continue
            self._latest = rows

    def _mended(self, cells: list[str] | None, line: str, number: int) -> list[str] | None:
        """A line of another width: without empty cells at its end it may still be a row; else say why it is none."""
        if not line or line.isspace():
            return None
        if cells is None and self.layout.edges:
            self._lose(number, "The cells of this line do not stand under those of the others.")
        elif cells is None:
            self._lose(number, "A quotation mark is not closed in this line.")
        elif len(cells) > self._raw_width and not any(cell.strip() for cell in cells[self._raw_width :]):
            return cells[: self._raw_width]
        else:
            told = {"count": Amount(len(cells), COUNT), "wanted": str(self._raw_width)}
            self._lose(number, Sentence(ONE_CELL, told, plural=CELLS))
        if self._last_may_be_cut and self._latest is not None and self._latest.lines[-1] == number - 1:
            self._latest.drop_last()
            self.skip(number - 1, "The line after this one is broken: the last value here may be cut off.")
        self._latest = None
        return None

    def _skip_moment(self, cells: list[str], number: int) -> None:
        told = " ".join(cells[at].strip() for at in self._moment_columns)
        labels = [self.layout.columns[at].label for at in self._moment_columns]
        if any(labels) and [cells[at].strip() for at in self._moment_columns] == labels:
            self.heads_again[number] = [cell.strip() for cell in cells]
            self.skip(number, "The column heads are repeated here.")
        elif told:
            self._lose(number, Sentence("{cell} is not a time as this file writes them.", {"cell": echo(told)}))
        elif any(cells[each.at].strip() for each in self._wanted):
            self._lose(number, "This line has no time.")

    def _skip_value(self, wanted: _Wanted, cell: str, number: int) -> bool:
        """List a value that was not taken. False where the whole line may be broken."""
        why = wanted.why(cell)
        if why is None:
            return True
        self.lost_values.setdefault(wanted.at, []).append((number, cell))
        is_whole = not looks_broken(cell, wanted.column.mark or self.layout.decimal or ".")
        label = wanted.column.label or Sentence("Column {number}", {"number": str(wanted.at + 1)})
        text: Message = "{column}: {why}" if is_whole else "{column}: {why} Nothing of this line was taken."
        self.skip(number, Sentence(text, {"column": label, "why": why}))
        return is_whole


def _wanted(at: int, column: Column, decimal: str) -> _Wanted:
    return _Wanted(
        at,
        column,
        Memo(lambda cell: value_of(cell, column, decimal)[0]),
        lambda cell: value_of(cell, column, decimal)[1],
    )
