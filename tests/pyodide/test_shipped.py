"""Inside Pyodide: what is shipped is whole."""

import importlib
import importlib.metadata
import json
import pkgutil

import pytest

import core
import web


def modules():
    for package in (core, web):
        yield from (found.name for found in pkgutil.walk_packages(package.__path__, f"{package.__name__}."))


@pytest.mark.parametrize("name", [name for name in modules() if not name.endswith("__main__")])
def test_every_module_finds_all_it_imports(name):
    importlib.import_module(name)


def test_the_app_comes_from_the_shipped_zip():
    assert web.__file__.startswith("/lib/app.zip/")


def test_the_app_knows_which_build_it_is():
    assert len(importlib.import_module("web._build").BUILD_ID) == 16


def test_the_app_answers_its_first_page():
    host = importlib.import_module("web.host")
    host.start("", "test")
    host.learn("[]")
    head, _, _ = host.answer(json.dumps({"method": "GET", "path": "/", "headers": {}}), None)
    assert json.loads(head)["status"] == 200


def test_the_calendars_library_writes_from_the_zip():
    """It is asked for by few, and so imported late."""
    host = importlib.import_module("web.host")
    host.start("", "test")
    head, body, _ = host.answer(json.dumps({"method": "GET", "path": "/to-do.ics", "headers": {}}), None)
    assert json.loads(head)["status"] == 200
    assert body.startswith(b"BEGIN:VCALENDAR\r\n")


@pytest.mark.parametrize("package", ["flask", "werkzeug"])
def test_a_package_that_asks_for_its_own_version_finds_it(package):
    assert importlib.metadata.version(package)


@pytest.mark.parametrize("module", ["tkinter", "sqlite3", "unittest", "multiprocessing"])
def test_a_module_that_is_not_shipped_is_named_when_asked_for(module):
    with pytest.raises(ModuleNotFoundError, match=module):
        importlib.import_module(module)
