"""Licences: what others wrote and this daybook is made of, each with its terms."""

from __future__ import annotations

from importlib import import_module

from flask import Blueprint, render_template

screen = Blueprint("licences", __name__)


@screen.get("/licences")
def page():
    return render_template("licences.html", licences=_written_down())


def _written_down() -> list[tuple[str, str, str]]:
    """What the build wrote out of the packages; run from its sources the app has none."""
    try:
        return import_module("web._licences").LICENCES
    except ImportError:
        return []
