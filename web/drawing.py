"""What every template may use: the reader's manner, quantities shown in it, dates, and the frame of the page."""

from __future__ import annotations

import math
from datetime import datetime
from functools import partial
from typing import Any

from flask import Flask, request, url_for

from core import quantities
from core.chamber.rates import AIR_SPEED, LASTING
from core.daybook.book import Line
from core.meat import ACID_PH, STYLES
from core.quantities import Amount, Quantity, Reader
from core.sentence import Sentence
from core.worksheet import Choice, Number
from web import visitor
from web.entry_forms import form_of
from web.entry_forms import say as say_line
from web.forms import Moment, OptionalChoice, Ticks, Words
from web.instruments import corrected_of
from web.journal import book, fresh_id
from web.saying import say

PLACES = (
    ("today.page", "Today"),
    ("batches.all_of_them", "Batches"),
    ("chamber.page", "Chamber"),
    ("sums.all_of_them", "Sums"),
)
STAGE_WORDS = {"mix": "mixing", "ferment": "fermenting", "dry": "drying", "release": "to be decided"}
NEAR_DAYS = {-1: "yesterday", 0: "today", 1: "tomorrow"}
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
NOT_OFFERED = frozenset({"", "m³", "mg", "Pa", "s", "K", "K s", "m²/s"})
"""Units that may be typed but that nobody picks from a list in a kitchen."""

KINDS_OF_INPUT: dict[str, tuple[type, ...]] = {
    "number": (Number,),
    "choice": (Choice, OptionalChoice),
    "words": (Words,),
    "moment": (Moment,),
    "ticks": (Ticks,),
}
"""As the templates ask for them: `{% if each is choice %}`."""


def prepare(app: Flask) -> None:
    filters: dict[str, Any] = app.jinja_env.filters
    filters |= {"amount": _amount, "step": _step, "told": _told, "roughly": _roughly, "say": say}
    filters |= {"corrected": corrected_of, "day": day, "clock": clock, "hour": hour, "stamp": stamp}
    filters |= {"ago": ago, "left": left}
    names: dict[str, Any] = app.jinja_env.globals
    names |= {"say": say, "q": quantities, "stage_words": STAGE_WORDS, "styles": STYLES, "acid_ph": ACID_PH}
    names |= {"lasting": LASTING, "air_speed": AIR_SPEED}
    names |= {"units_for": units_for, "correctable": correctable, "fresh_id": fresh_id, "now": visitor.now}
    tests: dict[str, Any] = app.jinja_env.tests
    tests |= {name: partial(_is, kinds) for name, kinds in KINDS_OF_INPUT.items()}
    app.context_processor(_frame)


def _is(kinds: tuple[type, ...], each: object) -> bool:
    return isinstance(each, kinds)


def _frame() -> dict[str, Any]:
    how = visitor.reader()
    return {
        "reader": how,
        "theme": visitor.theme(),
        "places": PLACES,
        "place": _place(request.path),
        "saved": _saved(how),
        "here": _here(),
        "edition": len(book()),  # a form's ids change with the book: after a save it starts fresh, never before
    }


_PLACE_OF = {"": "Today", "chamber": "Chamber", "sums": "Sums", "rules": "Sums", "sources": "Sums", "yours": ""}


def _place(path: str) -> str:
    first = path.strip("/").split("/")[0]
    return {"": "Today", "chamber": "Chamber", "sums": "Sums", "rules": "Sums", "sources": "Sums", "yours": ""}.get(
        first, "Batches"
    )


def _here() -> str:
    """Where a switch of units comes back to: this page, or Today where the page cannot be asked for by itself."""
    if request.url_rule is not None and "GET" not in (request.url_rule.methods or ()):
        return url_for("today.page")
    asked = request.query_string.decode(errors="replace").split("&") if request.method == "GET" else []
    query = "&".join(each for each in asked if not each.startswith("step="))  # how often a page that waits has asked
    return f"{request.script_root}{request.path}{'?' if query else ''}{query}"


def _saved(how: Reader) -> dict[str, Any] | None:
    """The last saved line stays in sight, with the way back."""
    key = request.args.get("saved", "")
    if key not in book():
        return None
    line = book().line(key)
    newest = line.versions[-1]
    said = {"at": newest.written_at, "words": say_line(line, how), "withdrawn": line.withdrawn}
    return {"line": line, "token": fresh_id(), **said}


def _amount(value: float | None, quantity: Quantity, how: Reader | None = None) -> str:
    return "—" if value is None else Amount(value, quantity).show(how or visitor.reader())


def _step(step: Sentence) -> str:
    return step.say(visitor.reader())


def _told(step: Sentence) -> str:
    """A step as a sentence: four digits are enough to tell 34.96 % from a target of 35 %."""
    return step.say(visitor.reader(), 4)


def _roughly(step: Sentence) -> str:
    """A step as a sentence to be read in passing: 1.7 K, not 1.722."""
    return step.say(visitor.reader(), 2)


def units_for(each: Any) -> list[str]:
    """The unit a bare number has in this box, then the others one may pick; empty where there is no unit."""
    if not isinstance(each, Number):
        return [each.unit] if hasattr(each, "unit") else []
    bare = each.quantity.bare(visitor.reader().system).symbol
    others = [unit.symbol for unit in each.quantity.units if unit.symbol not in NOT_OFFERED and unit.symbol != bare]
    return [bare, *others] if bare else []


def correctable(line: Line) -> bool:
    return form_of(type(line.fact)) is not None


def day(moment: datetime) -> str:
    """As one says it: "yesterday", "Friday"; the date where it is a week off or more, to either side."""
    off = (moment.date() - visitor.now().date()).days
    if abs(off) >= len(WEEKDAYS):
        return f"{moment.day} {moment:%b %Y}"
    return NEAR_DAYS.get(off) or WEEKDAYS[moment.weekday()]


def hour(moment: datetime) -> str:
    return f"{moment:%H:%M}"


def clock(moment: datetime) -> str:
    near = abs((moment.date() - visitor.now().date()).days) < len(WEEKDAYS)
    return f"{day(moment)}{' ' if near else ', '}{moment:%H:%M}"


def stamp(moment: datetime) -> str:
    """For what is printed and read on another day."""
    return f"{moment.day} {moment:%b %Y}, {moment:%H:%M}"


def left(until: datetime) -> str:
    """How long until then: "1:05:00 left". The page counts on in the same words (web/browser/time_left.js)."""
    seconds = math.ceil((until - visitor.now()).total_seconds())
    if seconds <= 0:
        return "The time is over."
    hours, minutes = seconds // 3600, seconds // 60 % 60
    return f"{hours}:{minutes:02}:{seconds % 60:02} left" if hours else f"{minutes}:{seconds % 60:02} left"


def ago(moment: datetime) -> str:
    """How long since, in one word or two."""
    minutes = int((visitor.now() - moment).total_seconds() // 60)
    if minutes < 2:
        return "just now"
    for size, unit in ((60 * 24, "day"), (60, "hour"), (1, "minute")):
        if minutes >= size:
            count = minutes // size
            return f"{count} {unit}{'' if count == 1 else 's'} ago"
    return "just now"
