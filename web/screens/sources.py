"""Sources: every rule, table and handbook that a figure rests on, and how each is known."""

from __future__ import annotations

from flask import Blueprint, render_template

from core.sources import KNOWN_HOW, every_source

screen = Blueprint("sources", __name__)


@screen.get("/sources")
def page():
    known = {
        verified: [each for each in every_source() if each.verified == verified and verified != "practice"]
        for verified in KNOWN_HOW
    }
    return render_template("sources.html", known=known, words=KNOWN_HOW)
