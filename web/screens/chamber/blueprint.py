"""The chamber's screens are many; they share one blueprint, and one way to write an entry about the chamber."""

from __future__ import annotations

from flask import Blueprint, url_for

from core.daybook.facts.chamber import CHAMBER
from web.entry_forms import EntryForm, Subject, write

screen = Blueprint("chamber", __name__)


def of_chamber(declared: EntryForm, start: dict[str, str] | None = None):
    back = url_for("chamber.page")
    return write(declared, Subject(), about=CHAMBER, back=back, back_to=back, start=start)
