"""To do, taken elsewhere: a file for any calendar."""

from __future__ import annotations

from flask import Blueprint, Response

from web.calendar_file import calendar_of
from web.journal import book
from web.screens.today import to_do
from web.visitor import now, reader

screen = Blueprint("calendar", __name__)


@screen.get("/to-do.ics")
def to_take_elsewhere():
    written = calendar_of(book(), to_do(), now(), reader())
    response = Response(written, mimetype="text/calendar")
    response.headers["Content-Disposition"] = f'attachment; filename="curing-daybook-{now():%Y-%m-%d}.ics"'
    return response
