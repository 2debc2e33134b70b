"""The templates themselves: each can be read, and none has a line that hides a macro."""

from pathlib import Path

import pytest

import web
from core.daybook.book import Book
from web.app import create_app

FOLDER = Path(web.__file__).parent / "templates"
TEMPLATES = sorted(path.relative_to(FOLDER).as_posix() for path in FOLDER.rglob("*.html"))
LONGEST = 160


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_can_be_read(name: str):
    create_app(Book()).jinja_env.get_template(name)


@pytest.mark.parametrize("name", TEMPLATES)
def test_no_line_of_a_template_is_too_long(name: str):
    lines = (FOLDER / name).read_text("utf-8").splitlines()
    assert [f"{name}:{at}" for at, line in enumerate(lines, 1) if len(line) > LONGEST] == []
