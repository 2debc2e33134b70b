"""The screens, as a standard Flask application. It runs under CPython and, unchanged, in the browser's worker."""

from __future__ import annotations

import pkgutil
import traceback
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

from flask import Flask, g, render_template, request
from jinja2 import ChoiceLoader, FunctionLoader, ModuleLoader, StrictUndefined
from werkzeug.exceptions import HTTPException

from core.daybook.book import Book
from web import drawing, example, visitor
from web.routing import lay_routes

COMPILED = Path(__file__).with_name("compiled_templates")
"""Made by the build, in what it ships and nowhere else: compiling the first page's took a tenth of the start."""

BESIDE_THE_FORM = {"HX-Retarget": "#problem", "HX-Reswap": "innerMorph"}

Commit = Callable[[list[dict[str, Any]]], None]


def create_app(book: Book, commit: Commit | None = None, build_id: str = "source") -> Flask:
    """commit stores the entries a request asked for; without one they go straight into the book (tests).

    app.extensions["files"] takes and gives the raw files, by name: a dict, unless a host lays its own there.
    """
    app = Flask(__name__, template_folder=None, static_folder=None)
    app.jinja_env.loader = ChoiceLoader([ModuleLoader(COMPILED), FunctionLoader(_template)])
    app.jinja_env.undefined = StrictUndefined
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.extensions["daybook"] = book
    app.extensions["files"] = {}
    app.config["BUILD_ID"] = build_id
    store = commit or book.learn
    lay_routes(app)
    drawing.prepare(app)
    example.keep_apart(app)
    app.register_error_handler(HTTPException, _not_here)
    app.register_error_handler(Exception, _broken)

    @app.after_request
    def commit_entries(response: Any) -> Any:
        asked: Iterable[dict[str, Any]] = g.pop("entries", ())
        files: dict[str, bytes] = g.pop("files", {})
        if made := visitor.new_device():
            response.set_cookie("device", made, max_age=visitor.TEN_YEARS_S, samesite="Lax")
        if response.status_code < 400 and example.is_open():
            example.example_book().learn(list(asked))
        elif response.status_code < 400:
            app.extensions["files"].update(files)
            if asked:
                store(list(asked))
        return response

    return app


def _template(name: str) -> str | None:
    """From the package, which may be a zip: the usual file loader cannot read there."""
    try:
        data = pkgutil.get_data("web", f"templates/{name}")
    except OSError:
        return None
    return None if data is None else data.decode()


def _not_here(error: HTTPException) -> tuple[str, int, dict[str, str]]:
    """A form whose subject is gone, taken back in another tab, stays on the screen as it was typed."""
    if error.code == 404 and _is_form_of_the_page():
        return render_template("gone.html"), 404, BESIDE_THE_FORM
    return render_template("not_here.html", error=error), error.code or 500, {}


def _broken(error: Exception) -> tuple[str, int, dict[str, str]]:
    """Say plainly that it broke, give a report to copy, and leave the form on the screen as it was typed."""
    report = "".join(traceback.format_exception(error))
    typed = [(name, value) for name, value in request.form.items(multi=True) if name != "entry"]
    if _is_form_of_the_page():
        return render_template("problem.html", report=report, typed=typed), 500, BESIDE_THE_FORM
    return render_template("broken.html", report=report, typed=typed), 500, {}


def _is_form_of_the_page() -> bool:
    return "HX-Request" in request.headers and request.method == "POST"
