"""The first look at a logger's text file: what parts its cells, where its rows begin, which column is what.

Guessed is only what the file settles: by its heads, its units, or by values that leave one meaning. The rest stays open
in the layout and becomes a question.
"""

from __future__ import annotations

from collections import Counter
from typing import Literal, cast

from attrs import evolve

from core.chamber.logs import columns, time_cells, time_styles, timing
from core.chamber.logs.asking import alike
from core.chamber.logs.changing import with_column, with_order
from core.chamber.logs.column import Column, Order, Role
from core.chamber.logs.decoding import UNREAD, Encoding, Separator, cells_of, encoding_of, join, lines_of
from core.chamber.logs.frame import SAMPLE, Frame, frame_of, picked_of
from core.chamber.logs.framing import Above, above_of, decimal_of, fitted
from core.chamber.logs.layout import Layout, lines_in
from core.chamber.logs.long_form import RETURNS, long_form_of, named_in, widened
from core.chamber.logs.naming import named, note_on
from core.chamber.logs.notes import Note
from core.chamber.logs.scales import Unit
from core.chamber.logs.table import Table
from core.chamber.logs.trial import with_losses
from core.chamber.logs.values import echo, number
from core.refusals import OutOfRange, Refusal
from core.sentence import Message, Sentence

PREVIEW = 8


NO_TIME: Message = (
    "No column holds a date and time that is understood; {text} comes nearest. Export it with both, such as "
    "2025-06-20 22:05 or 20.06.2025 22:05."
)
ONE_VALUE_A_ROW: Message = (
    "{column} says in each row which quantity it measured. Export the log with a column for the temperature and one "
    "for the humidity."
)
NO_TABLE: Message = "This file is {form}. Export the log as a table of text (CSV): a row a reading."
NOT_AS_OFFERED: dict[str, Message] = {
    "time": "Then the times of this file cannot be read: export it with date and time in each row.",
    "count": "Then this time is not understood: export the log with date and time in each row.",
    "elapsed": "Then this time is not understood: export the log with date and time in each row.",
    "loss": "Then nothing is read: export the log again, with every row written alike, or leave this file out.",
}


def guess(data: bytes, *, separator: Separator | None = None, decimal: Literal[".", ","] | None = None) -> Layout:
    """The layout of a logger's file, as far as the file settles it. A separator or a decimal mark may be given.

    Raises Refusal on "file" for what is empty, no text, or has no rows with a time and a number.
    """
    encoding = encoding_of(data)
    lines = lines_of(data, encoding)
    _refuse_other_forms(lines)
    return _guess(lines, encoding, separator, decimal)


def _guess(
    lines: list[str], encoding: Encoding, separator: Separator | None, decimal: Literal[".", ","] | None
) -> Layout:
    frame = frame_of(lines, separator)
    above = above_of(lines, frame)
    mark, joined = decimal_of(frame, above.head) if decimal is None else (decimal, decimal == frame.separator)
    table = _table(lines, frame, above, mark or ".", joined)
    roles = timing.columns_of(table)
    may_be_time = () if roles else timing.rising(table)
    if not may_be_time and (not roles or list(roles.values()) == ["date"]):
        raise Refusal("file", Sentence(NO_TIME, {"text": echo(timing.not_understood(table))}))
    long = long_form_of(table, roles, frame, above) if mark and not joined else None
    if long is not None:
        found = _guess(widened(lines, long), encoding, frame.separator, mark or None)
        return evolve(found, long=long, notes=(Note("one-quantity"), *found.notes))
    _refuse_quantities(table, roles)
    guessed = columns.guess(table, roles) if mark else _open(table, roles)
    layout = Layout(
        encoding=encoding,
        separator=frame.separator,
        decimal=mark,
        first_line=above.first + 1,
        width=len(table.head),
        columns=guessed,
        times=time_styles.style_of(table, roles),
        header_line=above.head_line,
        units_line=above.units_line,
        joined=joined,
        preview=tuple(tuple(row) for row in table.rows[:PREVIEW]),
        notes=(*_notes(lines, encoding), *note_on(guessed)),
        may_be_time=may_be_time,
        clocks_apart=timing.clocks_apart(table),
        edges=frame.edges,
    )
    return with_losses(evolve(layout, probes=_probes(lines, layout)), lines, picked_of(lines))


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
    lines = lines_in(data, layout)
    frame = frame_of(lines, layout.separator)
    table = _table(lines, frame, above_of(lines, frame), layout.decimal or ".", layout.joined)
    if {role, layout.columns[index].role} & {"time", "date", "clock"}:
        roles: dict[int, Role] = {at: changed.columns[at].role for at in changed.holding("time", "date", "clock")}
        changed = evolve(changed, times=time_styles.style_of(table, roles))
    changed = evolve(changed, columns=columns.reseen(changed.columns, index, table), probes=_probes(lines, changed))
    return with_losses(changed, lines, picked_of(lines))


def answer(data: bytes, layout: Layout, about: str, key: str) -> Layout:
    """The layout with one of its questions answered by the key of a choice.

    Raises OutOfRange on `about` where the layout asks no such thing or offers no such choice.
    """
    asked = next((each for each in layout.questions if each.about == about), None)
    if asked is None or key not in {choice.key for choice in asked.choices}:
        raise OutOfRange(about, "Choose one of the answers that are offered.")
    if key == "none":
        raise Refusal(about, NOT_AS_OFFERED[about])
    kind, _, column = about.partition(" ")
    if kind == "decimal":
        return guess(data, separator=layout.separator, decimal="," if key == "," else ".")
    if kind == "role":
        return change(data, layout, int(column) - 1, role=cast(Role, key))
    if kind in ("time", "clocks"):
        return _timed(data, layout, kind, key)
    changed = _answered(layout, kind, int(column or 1) - 1, key)
    lines = lines_in(data, layout)
    return with_losses(changed, lines, picked_of(lines))


def _answered(layout: Layout, kind: str, index: int, key: str) -> Layout:
    times = layout.times
    if kind == "order":
        return with_order(layout, cast(Order, key))
    if kind in ("elapsed", "count", "month"):
        field = {"elapsed": "elapsed_unit", "count": "count", "month": "tongue"}[kind]
        return evolve(layout, times=evolve(times, **{field: key}))
    if kind == "loss":
        return evolve(layout, losses_taken=True)
    if kind == "unit":
        for at in alike(layout, index):
            layout = with_column(layout, at, unit=cast(Unit, key))
        return layout
    column = layout.columns[index]
    if kind == "nothing":
        column = evolve(column, means_nothing=column.may_mean_nothing if key == "nothing" else ())
    else:
        column = evolve(column, beside=int(key))
    return evolve(layout, columns=named((*layout.columns[:index], column, *layout.columns[index + 1 :])))


def _timed(data: bytes, layout: Layout, kind: str, key: str) -> Layout:
    """The layout with the column of its time chosen, or with each of several for the columns that follow it."""
    if kind == "time":
        return change(data, layout, int(key) - 1, role="time")
    if key == "each":
        held = [
            evolve(column, role="time") if at in layout.clocks_apart else column
            for at, column in enumerate(layout.columns)
        ]
        return evolve(layout, columns=named(tuple(held)), side_by_side=True)
    layout = evolve(layout, side_by_side=False)
    for at in layout.clocks_apart:
        role: Role = "time" if at == int(key) - 1 else "ignored"
        if layout.columns[at].role != role:
            layout = change(data, layout, at, role=role)
    return layout


def _refuse_other_forms(lines: list[str]) -> None:
    starts = Counter(line.lstrip()[:1] for line in lines[:SAMPLE] if line.strip())
    for form, signs in (("JSON", "{["), ("XML", "<")):
        if sum(starts[sign] for sign in signs) * 2 > starts.total():
            raise Refusal("file", Sentence(NO_TABLE, {"form": form}))


def _refuse_quantities(table: Table, roles: dict[int, Role]) -> None:
    """A column whose words are quantities: each row then has one of them, and one column holds the values of all."""
    for at, label in enumerate(table.head):
        if at not in roles and named_in(table, at):
            raise Refusal("file", Sentence(ONE_VALUE_A_ROW, {"column": _called(at, label)}))
        written = Counter(each.unit for cell in table.column(at) if (each := number(cell, table.decimal)) is not None)
        if written["%"] >= RETURNS and sum(written[unit] for unit in ("°C", "°F", "K")) >= RETURNS:
            raise Refusal("file", Sentence(ONE_VALUE_A_ROW, {"column": _called(at, label)}))


def _called(at: int, label: str) -> Sentence:
    """A column where a sentence begins."""
    number = str(at + 1)
    return Sentence("“{label}”", {"label": label}) if label else Sentence("Column {number}", {"number": number})


def _table(lines: list[str], frame: Frame, above: Above, decimal: str, joined: bool) -> Table:
    lead = time_cells.leading(frame.sample[0][1])
    rows = [join(row, lead) if joined else row for _, row in frame.sample]
    head, units = fitted(above.head, rows), fitted(above.units, rows)
    return Table(rows, head, units, lines[above.first :], frame.separator, decimal)


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


def _notes(lines: list[str], encoding: str) -> tuple[Note, ...]:
    broken = sum(1 for line in lines if UNREAD in line)
    return (Note("no-text", {"count": broken, "encoding": encoding.upper()}),) if broken else ()
