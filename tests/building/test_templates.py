"""The templates the tablet gets are the ones we wrote, compiled."""

import re
import zipfile

import pytest
from jinja2 import ModuleLoader

from building import templates
from building.python_zips import APP
from core.daybook.book import Book
from web.app import COMPILED, create_app

PATHS = ("/", "/sums", "/sums/cure-dose", "/chamber/air", "/batches/new", "/yours", "/nowhere")


@pytest.fixture(scope="module")
def compiled(tmp_path_factory):
    """The application with its compiled templates and no others."""
    folder = tmp_path_factory.mktemp("compiled")
    for name, code in templates.compiled():
        (folder / name.rpartition("/")[2]).write_bytes(code)
    app = create_app(Book())
    app.jinja_env.loader = ModuleLoader(folder)
    return app.test_client()


def page(client, path):
    """Without the entry's id that a form is drawn with, which is another each time."""
    return re.sub(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", "", client.get(path).text)


@pytest.mark.parametrize("path", PATHS)
def test_a_page_is_the_same_compiled_and_from_source(compiled, path):
    assert page(compiled, path) == page(create_app(Book()).test_client(), path)


def test_a_checkout_reads_the_sources():
    assert not COMPILED.exists()


def test_the_tablet_gets_every_template_as_bytecode_and_none_as_text(dist):
    names = zipfile.ZipFile(APP).namelist()
    made = [name for name in names if name.startswith("web/compiled_templates/") and name.endswith(".pyc")]
    assert len(made) == len([*templates.SOURCES.rglob("*.html")])
    assert not [name for name in names if name.endswith(".html")]
