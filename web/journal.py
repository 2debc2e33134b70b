"""Writing to the journal. A view records entries; they are in the book only once the host has committed them.

The host (a browser's worker, or a plain server) takes the request's entries after the view has answered, stores them,
and only then lets the book learn them. A host that could not store them asks the same request again with the reason
in the environment; recording then raises NotSaved, and the form shows it as it shows any refusal.
"""

from __future__ import annotations

import secrets
from datetime import datetime

from attrs import evolve
from flask import current_app, g, request

from core.daybook.book import Book
from core.daybook.entries import Entry, entry_id, is_entry_id, to_record
from core.daybook.facts import Fact
from core.language import Message
from core.refusals import Refusal
from web import example
from web.visitor import device, now, writer

REFUSED = "daybook.refused"
"""WSGI environment key: why the last try could not be stored, a key of NOT_SAVED."""
NOT_SAVED: dict[str, Message] = {
    "full": "Not saved: the device's storage is full.",
    "unwritten": "Not saved: the browser could not write to its storage.",
}


class NotSaved(Refusal):
    """The device could not store the entry. The form stays as typed."""


def book() -> Book:
    """The device's own; while the example is open, that one."""
    return example.example_book() if example.is_open() else current_app.extensions["daybook"]


def fresh_id() -> str:
    return entry_id(now(), secrets.token_bytes(10))


def sent_token() -> str:
    """The id that the form was drawn with; a fresh one where it sent none that could be an entry's."""
    sent = request.form.get("entry", "")
    return sent if is_entry_id(sent) else fresh_id()


def require_stored() -> None:
    """Raises NotSaved where the last try could not be stored."""
    if refused := request.environ.get(REFUSED):
        raise NotSaved("", NOT_SAVED[refused])


def record(fact: Fact, *, about: str | None, happened_at: datetime, token: str, corrects: str | None = None) -> str:
    """Ask for one entry to be written; returns its id. about None: the entry begins the thing it is about.

    token is the id the form was drawn with: sending the same form twice writes one entry.
    """
    require_stored()
    entry = Entry(
        token,
        token if about is None else about,
        happened_at,
        now(),
        fact,
        corrects,
        clock=book().clock + len(pending()) + 1,
        device=device(),
        by=writer(),
    )
    if token in book():
        known = book().entry(token)
        if (known.about, known.happened_at, known.fact) == (entry.about, entry.happened_at, fact):
            return token
        key = fresh_id()
        entry = evolve(entry, id=key, about=key if about is None else about)
    pending().append(to_record(entry))
    return entry.id


def record_as_it_came(entry: dict[str, object]) -> None:
    """An entry read from an export: kept to the letter."""
    require_stored()
    pending().append(entry)


def pending() -> list[dict[str, object]]:
    """This request's entries, not yet stored."""
    return g.setdefault("entries", [])
