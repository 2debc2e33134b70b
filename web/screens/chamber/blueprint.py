"""The chamber's screens are many; they share one blueprint, and one way to write an entry about the chamber."""

from __future__ import annotations

import math
from datetime import datetime
from typing import Any

from flask import Blueprint, url_for

from core.chamber.rates import AIR_SPEED, LASTING
from core.daybook.facts import CHAMBER
from core.working import Step
from web.entry_forms import EntryForm, Subject, write
from web.visitor import manner, now

screen = Blueprint("chamber", __name__)


def of_chamber(declared: EntryForm, start: dict[str, str] | None = None):
    back = url_for("chamber.page")
    return write(declared, Subject(), about=CHAMBER, back=back, back_to=back, start=start)


@screen.context_processor
def _quantities() -> dict[str, Any]:
    return {"lasting": LASTING, "air_speed": AIR_SPEED}


@screen.app_template_filter("roughly")
def roughly(step: Step) -> str:
    """A step as a sentence to be read in passing: 1.7 K, not 1.722."""
    return step.say(manner(), 2)


@screen.app_template_filter("left")
def left(until: datetime) -> str:
    """How long until then: "1:05:00 left". The page counts on in the same words (web/browser/time_left.js)."""
    seconds = math.ceil((until - now()).total_seconds())
    if seconds <= 0:
        return "The time is over."
    hours, minutes = seconds // 3600, seconds // 60 % 60
    return f"{hours}:{minutes:02}:{seconds % 60:02} left" if hours else f"{minutes}:{seconds % 60:02} left"
