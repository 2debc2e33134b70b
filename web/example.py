"""The example: a season of an invented kitchen in a book of its own, which is kept nowhere.

It is open in one tab, from one tap to another. What is written meanwhile goes into it and never to the device's store.
"""

from __future__ import annotations

from typing import Any

from flask import Flask, current_app, redirect, request, url_for

from core.daybook.book import Book
from core.daybook.entries import to_record
from core.daybook.season import season
from web.visitor import now

COOKIE = "example"
"""Kept by the page for its tab only (web/browser/cookies.js)."""
OWN_ONLY = frozenset(
    {"book.export", "book.import_", "book.copy_saved", "book.start_over", "book.who_writes", "book.tablet"}
)
"""What is about the device's own book: an example that was saved, or read in, could pass for it."""


def is_open() -> bool:
    return request.cookies.get(COOKIE) == "yes"


def forget() -> None:
    current_app.extensions.pop(COOKIE, None)


def example_book() -> Book:
    """Told as of now when it is first asked for."""
    books: dict[str, Any] = current_app.extensions
    if COOKIE not in books:
        books[COOKIE] = Book()
        books[COOKIE].learn([to_record(entry) for entry in season(now())])
    return books[COOKIE]


def keep_apart(app: Flask) -> None:
    app.before_request(_only_what_is_its_own)


def _only_what_is_its_own() -> Any:
    if is_open() and request.endpoint in OWN_ONLY:
        return redirect(url_for("book.page"), 303)
    return None
