"""From a logger's file and its layout to one series a probe, with every row that was not taken and why."""

from __future__ import annotations

import hashlib
from collections.abc import Generator
from itertools import pairwise

from attrs import evolve, frozen

from core.chamber.logs.changing import check
from core.chamber.logs.decoding import cut_at_the_end
from core.chamber.logs.layout import Layout, lines_in
from core.chamber.logs.log import Log, build_log
from core.chamber.logs.moments import reader
from core.chamber.logs.taking import Tables
from core.chamber.logs.trial import is_much
from core.chamber.logs.values import echo
from core.quantities import COUNT, Amount
from core.refusals import Refusal
from core.sentence import Message, Sentence

ROWS_A_STEP = 4096
ANOTHER_LOG: Message = "At line {line} another log begins ({text}). Save each as a file of its own."
MOSTLY_LOST: Message = (
    "{lost} of {of} lines of this log cannot be read, the first of them line {line}: {why} Export it with every row "
    "written alike."
)
OPEN_TIMES = ("order", "elapsed", "count", "month", "time", "clocks")


@frozen
class Progress:
    """How far a reading is, in lines."""

    done: int
    of: int


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
    lines = lines_in(data, layout)
    name = hashlib.sha256(data).hexdigest()
    if not layout.side_by_side:
        return (yield from _one(name, lines, layout))
    logs: list[Log] = []
    for part in _parts(layout):
        logs.append((yield from _one(name, lines, part)))
    return _together(layout, logs)


def _one(name: str, lines: list[str], layout: Layout) -> Generator[Progress, None, Log]:
    tables = Tables(layout)
    last = len(lines) - 1 if cut_at_the_end(lines[layout.first_line - 1 :], layout.separator) else len(lines)
    for start in range(layout.first_line - 1, last, ROWS_A_STEP):
        yield Progress(start, len(lines))
        tables.take(lines, start, min(start + ROWS_A_STEP, last))
    if last < len(lines) and lines[-1].strip():
        tables.skip(len(lines), "The file ends inside this line: its last value may be cut off.")
    yield Progress(len(lines), len(lines))
    _refuse_other_logs(tables, lines)
    _refuse_what_is_mostly_lost(tables)
    return build_log(name, layout, tables.by_probe, tables.skipped)


def _refuse_other_logs(tables: Tables, lines: list[str]) -> None:
    """Heads that come again are those of a page, unless they or the title above are others: that is another log."""
    layout = tables.layout
    own = [column.label for column in layout.columns]
    title = _title(lines[: layout.header_line])
    for line, labels in tables.heads_again.items():
        other = _title(lines[:line])
        if labels[: len(own)] != own or (title and other and title != other):
            begun = {"line": str(line), "text": echo(other if labels[: len(own)] == own else labels[-1])}
            raise Refusal("log", Sentence(ANOTHER_LOG, begun))


def _title(down_to_head: list[str]) -> str:
    """The words that stand by themselves above a head, without the digits that number pages."""
    above = next((line for line in reversed(down_to_head[:-1]) if line.strip()), "")
    is_alone = not any(character.isdecimal() or character in ",;\t|" for character in above.rstrip(",;\t| "))
    return "".join(above.split()) if is_alone else ""


def _refuse_what_is_mostly_lost(tables: Tables) -> None:
    """What the sampled lines did not show was not asked about either: then it is refused, with a line to look at."""
    lost, of = len(tables.lost_lines), len(tables.lost_lines) + tables.taken
    if tables.layout.losses_taken or not is_much(lost, of):
        return
    first = next(each for each in tables.skipped if each.line in tables.lost_lines)
    told = {"lost": Amount(lost, COUNT), "of": Amount(of, COUNT), "line": str(first.line), "why": first.why}
    raise Refusal("log", Sentence(MOSTLY_LOST, told))


def _parts(layout: Layout) -> list[Layout]:
    """Logs that stand side by side, each with the columns from its time to the next one's."""
    starts = [*layout.holding("time"), len(layout.columns)]
    parts: list[Layout] = []
    for first, end in pairwise(starts):
        first = 0 if not parts else first
        held = [
            column if first <= at < end else evolve(column, role="ignored") for at, column in enumerate(layout.columns)
        ]
        if any(column.role in ("temperature", "humidity") for column in held):
            parts.append(evolve(layout, columns=tuple(held), side_by_side=False))
    return parts


def _together(layout: Layout, logs: list[Log]) -> Log:
    skipped = sorted((each for log in logs for each in log.skipped), key=lambda each: each.line)
    remarks = dict.fromkeys(each for log in logs for each in log.remarks)
    series = tuple(each for log in logs for each in log.series)
    return evolve(logs[0], layout=layout, series=series, skipped=tuple(skipped), remarks=tuple(remarks))


def preview_times(layout: Layout) -> tuple[float, ...]:
    """When the rows shown were measured, as they would be read; NaN where one would not. Nothing while it is asked."""
    moments = layout.holding("time", "date")
    if not moments or not layout.times.kind or any(each.about in OPEN_TIMES for each in layout.questions):
        return ()
    clocks = layout.holding("clock")
    moment = reader(layout.times, moments[0], clocks[0] if clocks else None, layout.decimal or ".")
    return tuple(moment(list(row)) for row in layout.preview)
