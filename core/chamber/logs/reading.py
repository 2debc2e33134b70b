"""From a logger's file and its layout to one series a probe, with every row that was not taken and why."""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Callable, Generator
from math import isnan

from attrs import frozen

from core.chamber.logs.decoding import cells_of, cut_at_the_end, lines_of
from core.chamber.logs.guessing import join
from core.chamber.logs.layout import Column, Layout, check
from core.chamber.logs.moments import column_reader, reader
from core.chamber.logs.rows import Rows
from core.chamber.logs.series import Log, Skipped, settled
from core.chamber.logs.values import Memo, echo, looks_broken, value_of

ROWS_A_STEP = 4096
BLOCK = 256
"""Lines taken at once where none of them is odd."""


@frozen
class Progress:
    """How far a reading is, in lines."""

    done: int
    of: int


@frozen
class _Wanted:
    """A value column: where it stands, what its texts mean, and why one means nothing."""

    at: int
    column: Column
    meaning: Memo
    why: Callable[[str], str]


def read(data: bytes, layout: Layout) -> Log:
    """The log in a file, in one go. Raises Refused where the layout is not settled."""
    steps = reading(data, layout)
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return done.value


def reading(data: bytes, layout: Layout) -> Generator[Progress, None, Log]:
    """The log in a file, in steps: yields how far it is every few thousand lines, returns the Log. It may be stopped.

    Raises Refused at the first step where the layout is not settled.
    """
    check(layout)
    lines = lines_of(data, layout.encoding)
    tables = _Tables(layout)
    last = len(lines) - 1 if cut_at_the_end(lines[layout.first_line - 1 :], layout.separator) else len(lines)
    for start in range(layout.first_line - 1, last, ROWS_A_STEP):
        yield Progress(start, len(lines))
        tables.take(lines, start, min(start + ROWS_A_STEP, last))
    if last < len(lines) and lines[-1].strip():
        tables.skip(len(lines), "The file ends inside this line: its last value may be cut off.")
    yield Progress(len(lines), len(lines))
    name = hashlib.sha256(data).hexdigest()
    return settled(name, layout, tables.by_probe, tables.skipped)


def preview_times(layout: Layout) -> tuple[float, ...]:
    """When the rows shown were measured, as they would be read; NaN where one would not. Nothing while it is asked."""
    moments = layout.holding("time", "date")
    if not moments or not layout.times.kind or any(each.about in ("order", "elapsed") for each in layout.questions):
        return ()
    clocks = layout.holding("clock")
    moment = reader(layout.times, moments[0], clocks[0] if clocks else None, layout.decimal or ".")
    return tuple(moment(list(row)) for row in layout.preview)


class _Tables:
    """The rows taken so far, by the name of the probe; "" where the columns tell the probes apart."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.skipped: list[Skipped] = []
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

    def skip(self, line: int, why: str) -> None:
        self.skipped.append(Skipped(line, why))

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
        moment, wanted, probe_at = self._moment, self._wanted, self._probe_at
        rows = self.by_probe.get("")
        for index in range(start, end):
            line = lines[index]
            cells = cells_of(line, separator) if '"' in line else line.split(split_by)
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
            if probe_at is not None:
                rows = self.by_probe.get(cells[probe_at].strip())
            if rows is None:
                self.skip(index + 1, f"{echo(cells[probe_at or 0])} is not one of this file's probes.")
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
        if cells is None:
            self.skip(number, "A quotation mark is not closed in this line.")
        elif len(cells) > self._raw_width and not any(cell.strip() for cell in cells[self._raw_width :]):
            return cells[: self._raw_width]
        else:
            self.skip(number, f"This line has {len(cells)} cells where {self._raw_width} belong.")
        if self._last_may_be_cut and self._latest is not None and self._latest.lines[-1] == number - 1:
            self._latest.drop_last()
            self.skip(number - 1, "The line after this one is broken: the last value here may be cut off.")
        self._latest = None
        return None

    def _skip_moment(self, cells: list[str], number: int) -> None:
        told = " ".join(cells[at].strip() for at in self._moment_columns)
        labels = [self.layout.columns[at].label for at in self._moment_columns]
        if any(labels) and [cells[at].strip() for at in self._moment_columns] == labels:
            self.skip(number, "The column heads are repeated here.")
        elif told:
            self.skip(number, f"{echo(told)} is not a time as this file writes them.")
        else:
            self.skip(number, "This line has no time.")

    def _skip_value(self, wanted: _Wanted, cell: str, number: int) -> bool:
        """List a value that was not taken. False where the whole line may be broken."""
        why = wanted.why(cell)
        if not why:
            return True
        label = wanted.column.label or f"Column {wanted.at + 1}"
        is_whole = not looks_broken(cell, self.layout.decimal or ".")
        self.skip(number, f"{label}: {why}" + ("" if is_whole else " Nothing of this line was taken."))
        return is_whole


def _wanted(at: int, column: Column, decimal: str) -> _Wanted:
    return _Wanted(
        at,
        column,
        Memo(lambda cell: value_of(cell, column, decimal)[0]),
        lambda cell: value_of(cell, column, decimal)[1],
    )
