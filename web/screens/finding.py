"""Anything in the book by a word of it: a batch, a tag, a lot, a note."""

from __future__ import annotations

from flask import Blueprint, render_template, request

from core.daybook.finding import lines_with
from web.entry_forms import say
from web.journal import book
from web.screens.entries import batch_of, home_of
from web.visitor import reader

screen = Blueprint("finding", __name__)

MOST, LONGEST = 40, 60


@screen.get("/find")
def page():
    sought = request.args.get("find", "").strip()[:LONGEST]
    lines, how = lines_with(book(), sought), reader()
    batches = {line.id: batch_of(line) for line in lines[:MOST]}
    found = [(line, say(line, how), batches[line.id], home_of(line, batches[line.id])) for line in lines[:MOST]]
    return render_template("finding.html", sought=sought, found=found, more=len(lines) - len(found))
