"""Today: what wants doing, the chamber now, and what is hanging."""

from __future__ import annotations

from flask import Blueprint, render_template, url_for

from core.daybook.batch import open_batches
from core.daybook.due import Due, due
from core.daybook.facts import CHAMBER, AirRead
from web.journal import book
from web.visitor import now

screen = Blueprint("today", __name__)

_OPENS = {
    "cure": "mix.weigh_cure",
    "reading": "ferment.read_meat",
    "hang": "dry.hang",
    "weigh": "dry.weigh_next",
    "release": "batches.one",
}


@screen.get("/")
def page():
    open_ = open_batches(book())
    lines = [(line, _opens(line)) for line in due(open_, now())]
    return render_template(
        "today.html",
        due=[each for each in lines if each[0].late(now())],
        later=[each for each in lines if not each[0].late(now())],
        air=book().latest(CHAMBER, AirRead),
        batches=open_,
        empty=len(book()) == 0,
    )


def _opens(line: Due) -> str:
    return url_for(_OPENS[line.task], batch_id=line.batch_id)
