"""Inside Pyodide: what is shipped is whole."""

import importlib
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
    head, _ = host.answer(json.dumps({"method": "GET", "path": "/", "headers": {}}), None)
    assert json.loads(head)["status"] == 200
