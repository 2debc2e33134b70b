"""Today: what wants doing, the chamber now, and what is hanging."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, render_template, url_for

from core.daybook.batch import open_batches
from core.daybook.due.batches import due, in_order
from core.daybook.due.chamber import chamber_due
from core.daybook.due.instruments import instruments_due
from core.daybook.due.line import Due, Task
from core.daybook.facts.chamber import CHAMBER, AirRead
from web.instruments import shelf
from web.journal import book
from web.screens.chamber.set_points import in_force
from web.visitor import now

screen = Blueprint("today", __name__)

_OPENS: dict[Task, tuple[str, str | None]] = {
    "cure": ("mix.weigh_cure", "batch_id"),
    "sheet": ("mix.sheet", "batch_id"),
    "reading": ("ferment.read_meat", "batch_id"),
    "deviation": ("ferment.decide", "batch_id"),
    "salt": ("mix.begin_salting", "batch_id"),
    "turn": ("mix.turn", "batch_id"),
    "unsalt": ("mix.end_salting", "batch_id"),
    "hang": ("dry.hang", "batch_id"),
    "weigh": ("dry.weigh_next", "batch_id"),
    "release": ("batches.one", "batch_id"),
    "prepare": ("chamber.run", "run_id"),
    "fill": ("chamber.fill", None),
    "empty": ("chamber.empty_basin", None),
    "check": ("chamber.instrument", "instrument_id"),
}
"""The view a line opens, and the part of its address that says what the line is about; None for the chamber's own."""


@screen.get("/")
def page():
    open_ = open_batches(book())
    waiting = in_order(due(open_, now()), chamber_due(book(), now()), instruments_due(shelf().in_use(), now()))
    lines = [(line, _opens(line)) for line in waiting]
    return render_template(
        "today.html",
        due=[each for each in lines if each[0].late(now())],
        later=[each for each in lines if not each[0].late(now())],
        air=book().latest(CHAMBER, AirRead),
        set_points=in_force(),
        batches=open_,
        empty=len(book()) == 0,
    )


def _opens(line: Due) -> str:
    view, subject = _OPENS[line.task]
    address: dict[str, Any] = {subject: line.about} if subject else {}
    return url_for(view, **address)
