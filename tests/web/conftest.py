"""A visitor with a tablet of her own: a book, the application, a clock that the test sets."""

from __future__ import annotations

import io
from datetime import datetime, timedelta, timezone
from typing import Any

import attrs
import pytest
from flask import Flask

from core.daybook.book import Book
from tests.web.reading import Page, SentForm
from web.app import create_app
from web.visitor import CLOCK_HEADER
from web.work import Work

MORNING = datetime(2026, 11, 2, 8, 0, 12, 345000, tzinfo=timezone(timedelta(hours=1)))
MOST_HOPS = 5
BETWEEN_ASKING = timedelta(milliseconds=7)


class Visitor:
    """Asks for pages as the tablet does: her clock in a header, her settings in cookies, redirects followed."""

    def __init__(self, app: Flask, book: Book) -> None:
        self.app, self.book = app, book
        self.now = MORNING
        self.client = app.test_client()

    def wait(self, **time: float) -> None:
        self.now += timedelta(**time)

    def settings(self, **cookies: str) -> None:
        for name, value in cookies.items():
            self.client.set_cookie(name, value)

    def get(self, path: str, **query: str) -> Page:
        return self._ask("GET", path, query_string=query or None)

    def post(self, path: str, **values: Any) -> Page:
        return self._ask("POST", path, data=values)

    def send(self, form: SentForm, **changes: str) -> Page:
        """The form as drawn, with what she changes in it. A drawn button's own value is not sent unless named."""
        if "happened" in changes:
            changes = {"when": "moment"} | changes
        return self.post(form.action, **form.values | changes)

    def fill(self, path: str, **values: str) -> Page:
        """Draws the form at the path, fills it in and sends it."""
        return self.send(self.get(path).form(path), **values)

    def read_in(self, text: str | bytes, name: str = "daybook.json") -> Page:
        data = text.encode() if isinstance(text, str) else text
        return self.post("/yours/import", file=(io.BytesIO(data), name))

    def _ask(self, method: str, path: str, **body: Any) -> Page:
        for _ in range(MOST_HOPS):
            self.now += BETWEEN_ASKING
            response = self.client.open(path, method=method, headers={CLOCK_HEADER: self.now.isoformat()}, **body)
            if response.status_code not in (301, 302, 303):
                break
            method, path, body = "GET", response.headers["Location"], {}
        html = response.get_data(as_text=True)
        return Page(response.status_code, path, dict(response.headers), html)

    def start_batch(self, name: str = "Juniper coarse", style: str = "fermented", **more: str) -> str:
        values = {"name": name, "style": style, "meat_kg": "12.4", "target_loss": "35"} | more
        return self.fill("/batches/new", **values).path.partition("?")[0]

    def cure(self, batch: str, dose: str = "0.25 %") -> str:
        return self.fill(f"{batch}/cure", dose=dose, nitrite="6.25").saved

    def hang(self, batch: str, tag: str = "J-1", start: str = "1250") -> str:
        """The piece's path."""
        return f"/pieces/{self.fill(f'{batch}/hang', tag=tag, start_kg=start).saved}"

    def meat(self, piece: str) -> str:
        """Its pork was tested."""
        return self.fill(f"{piece}/meat", kind="pork", proof="tested", lot="P-7").saved

    def cured_and_acid(self) -> str:
        batch = self.start_batch()
        self.cure(batch)
        self.fill(f"{batch}/reading", ph="5.1", temperature_c="22")
        return batch

    def dried(self, weight: str = "800", activity: str = "0.89") -> tuple[str, str]:
        """A batch with one piece that has everything but an inspection."""
        batch = self.cured_and_acid()
        piece = self.hang(batch)
        self.meat(piece)
        self.wait(days=30)
        self.fill(f"{piece}/weigh", mass_kg=weight)
        self.fill(f"{piece}/activity", water_activity=activity)
        return batch, piece

    def fact(self, entry_id: str) -> Any:
        """What stands now of an entry."""
        return self.book.line(entry_id).fact


def _app() -> Flask:
    """Made once, for its templates take longer to compile than to fill; each test lays its own book into it."""

    def store(entries: list[dict[str, Any]]) -> None:
        app.extensions["daybook"].learn(entries)

    app = create_app(Book(), store)
    return app


@pytest.fixture(scope="session")
def apps() -> tuple[Flask, Flask]:
    return _app(), _app()


def _visitor(app: Flask) -> Visitor:
    app.extensions.update(daybook=Book(), files={}, work=Work(), proof_drafts={})
    return Visitor(app, app.extensions["daybook"])


@pytest.fixture
def visitor(apps: tuple[Flask, Flask]) -> Visitor:
    return _visitor(apps[0])


@pytest.fixture
def other(apps: tuple[Flask, Flask]) -> Visitor:
    """Another tablet with an empty book."""
    return _visitor(apps[1])


def alike(one: Any, other: Any, rel: float = 1e-6) -> bool:
    """Two facts of one kind that differ in nothing but the last digits."""
    pairs = zip(attrs.astuple(one), attrs.astuple(other), strict=True)
    return type(one) is type(other) and all(
        mine == pytest.approx(theirs, rel=rel) if isinstance(theirs, float) else mine == theirs
        for mine, theirs in pairs
    )
