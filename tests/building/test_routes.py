"""The routes that are written down for the tablet are those the screens have, and lead to the same views."""

from types import SimpleNamespace

import pytest

from building.routes import written_down
from core.daybook.book import Book
from web import routing
from web.app import create_app


@pytest.fixture(scope="module")
def made() -> SimpleNamespace:
    name, text = written_down()
    namespace: dict[str, object] = {}
    exec(compile(text, name, "exec"), namespace)
    return SimpleNamespace(ROUTES=namespace["ROUTES"], SCREENS=namespace["SCREENS"])


def _rules(app) -> set[tuple[str, str, frozenset[str]]]:
    return {(rule.rule, rule.endpoint, frozenset(rule.methods)) for rule in app.url_map.iter_rules()}


def test_the_routes_are_the_same_ones(made: SimpleNamespace, monkeypatch: pytest.MonkeyPatch):
    asked = create_app(Book())
    monkeypatch.setattr(routing, "written_down", made)
    assert _rules(create_app(Book())) == _rules(asked)


@pytest.mark.parametrize("path", ["/", "/batches", "/chamber", "/sums", "/sums/cure-ppm", "/yours", "/nowhere"])
def test_a_page_is_the_same_one(made: SimpleNamespace, monkeypatch: pytest.MonkeyPatch, path: str):
    clock = {"Daybook-Now": "2026-11-25T17:30:00+01:00"}
    asked = create_app(Book()).test_client().get(path, headers=clock)
    monkeypatch.setattr(routing, "written_down", made)
    answer = create_app(Book()).test_client().get(path, headers=clock)
    assert (answer.status_code, answer.data) == (asked.status_code, asked.data)


def test_every_screen_can_be_imported_by_its_name(made: SimpleNamespace):
    assert {module for *_, module, _ in made.ROUTES} <= set(made.SCREENS)
