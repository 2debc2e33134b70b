"""Book: how it is kept, a file of it to keep elsewhere, and reading such a file back in. And the settings."""

from __future__ import annotations

import json
from datetime import datetime
from typing import Any

from flask import Blueprint, Response, current_app, make_response, redirect, render_template, request, url_for

from core.daybook.devices import names
from core.daybook.entries import MOST_LETTERS, NO_MOMENT, moment_of
from core.daybook.facts.device import DEVICES, DeviceNamed
from core.quantities import COUNT, Amount
from core.refusals import Refusal
from core.sentence import Message, Sentence, Value
from web import copied, visitor
from web.entry_forms import EntryForm, Subject, declare, write
from web.files import keep_file
from web.forms import Words
from web.journal import book, record_as_it_came
from web.screens.entries import local_path
from web.screens.helping import CHAPTERS
from web.visitor import TEN_YEARS_S, device, keep_copied, kept, now, writer

screen = Blueprint("book", __name__)

Options = tuple[tuple[str, Message], ...]
SETTINGS: dict[str, tuple[Message, Options]] = {
    "units": ("Units", (("metric", "kg °C"), ("us", "lb °F"))),
    "decimal": ("Decimal mark", (("point", "1.5"), ("comma", "1,5"))),
    "theme": ("Light", (("auto", "As the device"), ("light", "Day"), ("dark", "Night"))),
    "keys": ("Number keys", (("page", "The page's own"), ("tablet", "The tablet's"))),
}
"""What can be set: its head, and what it may be."""


@screen.get("/yours")
def page():
    return _page()


def _page(refusal: Refusal | None = None) -> str:
    return render_template(
        "book.html",
        **_copies(),
        since=_since(),
        kept=kept(),
        settings=_set(),
        build=current_app.config["BUILD_ID"],
        writer=writer(),
        tablet=names(book()).get(device(), ""),
        refusal=refusal,
        came=_came(),
        **{key: request.args.get(key, 0, int) for key in ("differ", "unread", "no_entries", "twice")},
    )


def _copies() -> dict[str, Any]:
    """How much there is, and how much of it a copy elsewhere has."""
    last = visitor.copied()
    return {"count": len(book()), "copied": last, "since_copy": len(book()) - last.entries if last else None}


def _since() -> datetime | None:
    """When the first entry was written that this device holds."""
    written = (moment_of(record.get("written_at")) for record in book().records())
    return next((moment for moment in written if moment != NO_MOMENT), None)


def _set() -> list[tuple[str, Message, Options, str]]:
    how = visitor.reader()
    chosen = {"units": how.system, "decimal": "comma" if how.decimal == "," else "point"}
    chosen |= {"theme": visitor.theme(), "keys": visitor.keys()}
    return [(name, head, options, chosen[name]) for name, (head, options) in SETTINGS.items()]


@screen.get("/yours/help")
def help_page():
    return render_template("help.html", chapters=CHAPTERS)


@screen.get("/yours/start-over")
def start_over():
    """Asked once, with a copy offered first; the page itself deletes, for the book is kept by it."""
    return render_template("start_over.html", **_copies())


def _came() -> Sentence | None:
    """What was read in just now."""
    if "read" not in request.args:
        return None
    entries = Sentence("{count} new entry", _counted("read"), plural="{count} new entries")
    if "files" not in request.args:
        return Sentence("{entries}.", {"entries": entries})
    files = Sentence("{count} file", _counted("files"), plural="{count} files")
    return Sentence("{entries}, with {files}.", {"entries": entries, "files": files})


def _counted(key: str) -> dict[str, Value]:
    return {"count": Amount(request.args.get(key, 0, int), COUNT)}


@screen.get("/yours/export")
def export():
    """Every entry, as written. The page lays the raw files beside it, in a zip. Two such files merge by union."""
    written = json.dumps(
        {"format": copied.FORMAT, "version": 1, "entries": list(book().records())}, ensure_ascii=False, indent=1
    )
    response = Response(written, mimetype="application/json")
    response.headers["Content-Disposition"] = f'attachment; filename="curing-daybook-{now():%Y-%m-%d}.json"'
    return response


@screen.post("/yours/copied")
def copy_saved():
    """The page tells of a copy once the browser has it: one that was stopped is none."""
    response = Response(status=204)
    keep_copied(response, request.args.get("entries", 0, int))
    return response


@screen.post("/yours/import")
def import_():
    try:
        came = copied.read(request.files.get("file"))
        new, differing = _new_and_differing(came.entries)
        for entry in new:
            record_as_it_came(entry)
        for data in came.files:
            keep_file(data)
    except Refusal as refusal:
        return _page(refusal), 422
    told = {
        "files": len(came.files),
        "differ": differing,
        "unread": came.unread,
        "no_entries": came.no_entries,
        "twice": came.twice,
    }
    said_of_it: dict[str, Any] = {key: count for key, count in told.items() if count}
    return redirect(url_for("book.page", read=len(new), **said_of_it), 303)


def _new_and_differing(entries: list[dict[str, Any]]) -> tuple[list[dict[str, Any]], int]:
    """Those that this book does not hold, and how many it holds with other content: an entry never changes, so those
    were altered outside."""
    new = [entry for entry in entries if entry["id"] not in book()]
    held = {record["id"]: record for record in book().records()}
    return new, sum(held.get(entry["id"], entry) != entry for entry in entries)


def _say_named(fact: DeviceNamed) -> Sentence:
    return Sentence("A tablet named: {name}", {"name": fact.name})


NAMED = declare(
    EntryForm(
        DeviceNamed,
        "Name this tablet",
        (Words("name", "Name", MOST_LETTERS, example="Kitchen", help="It is shown beside what is written on it."),),
        _say_named,
        fact=lambda values, subject: DeviceNamed(_device_of(subject), **values),
        save="Name it",
        correct="Correct this name",
    )
)


def _device_of(subject: Subject) -> str:
    """Corrected, it stays the name of its own tablet."""
    return subject.was.device if isinstance(subject.was, DeviceNamed) else device()


@screen.route("/yours/tablet", methods=["GET", "POST"])
def tablet():
    back = url_for("book.page")
    return write(NAMED, Subject(), about=DEVICES, back=back, back_to=back)


@screen.post("/settings/writer")
def who_writes():
    """The name that stands beside what is written from now on, kept by the page; an empty one takes it away."""
    response = make_response(redirect(url_for("book.page"), 303))
    name = " ".join(request.form.get("writer", "").split())[:MOST_LETTERS]
    response.set_cookie("writer", name, max_age=TEN_YEARS_S if name else 0, samesite="Lax")
    return response


@screen.post("/settings")
def settings():
    """Units, decimal mark and theme, kept by the page; back to where one was."""
    response = make_response(redirect(local_path(request.form.get("back", "")) or url_for("today.page"), 303))
    for name, (_, options) in SETTINGS.items():
        chosen = request.form.get(name, "")
        if chosen in dict(options):
            response.set_cookie(name, chosen, max_age=TEN_YEARS_S, samesite="Lax")
    return response
