"""Sources: every rule, table and handbook that a figure rests on, and how each is known."""

from __future__ import annotations

from flask import Blueprint, render_template, request

from core.sentence import Message
from core.sources import Verified, every_source

screen = Blueprint("sources", __name__)

HEADS: dict[Verified, Message] = {
    "seen": "Read in the text itself",
    "copy": "Read in a copy",
    "memory": "From memory, not checked",
    "practice": "Common practice; no published source",
    "computed": "Worked out from the definition",
}


@screen.get("/sources")
def page():
    """Folded but for those that a mark has led to."""
    known = {
        verified: [each for each in every_source() if each.verified == verified and verified != "practice"]
        for verified in HEADS
    }
    return render_template("sources.html", known=known, heads=HEADS, shown=request.args.get("known", ""))
