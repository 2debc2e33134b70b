"""What every template may use: the reader's manner, quantities shown in it, dates, and the frame of the page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from functools import partial
from typing import Any

from flask import Flask, request, url_for

from core import quantities
from core.chamber.rates import AIR_SPEED, LASTING
from core.daybook.book import Line
from core.daybook.corrections.readings import CorrectedReading
from core.meat import ACID_PH, STYLES
from core.quantities import Amount, Quantity, Reader
from core.sentence import Message, Sentence, Value, in_a_row, said
from core.sources import Source
from core.verdict import Reason
from core.worksheet import Choice, Number
from web import days, example, visitor
from web.entry_forms import form_of
from web.entry_forms import say as say_line
from web.forms import Input, Moment, OptionalChoice, Ticks, Words
from web.instruments import corrected_of
from web.journal import book, fresh_id
from web.photos import Photo
from web.saying import say
from web.troubles import troubles

PLACES: tuple[tuple[str, Message, str], ...] = (
    ("today.page", "Today", "today"),
    ("batches.all_of_them", "Batches", "batches"),
    ("chamber.page", "Chamber", "chamber"),
    ("sums.all_of_them", "Sums", "sums"),
    ("book.page", "Book", "book"),
)
"""The tabs: where each leads, its word, and its mark in frame.css."""
STAGE_WORDS: dict[str, Message] = {
    "mix": "mixing",
    "ferment": "fermenting",
    "dry": "drying",
    "release": "to be decided",
}
NOT_OFFERED = frozenset({"", "m³", "mg", "Pa", "s", "K", "K s", "m²/s"})
"""Units that may be typed but that nobody picks from a list in a kitchen."""

MOST_IN_A_ROW, ROW_LETTERS, MOST_OPEN, MOST_UNFOLDED = 3, 36, 4, 6

KINDS_OF_INPUT: dict[str, tuple[type, ...]] = {
    "number": (Number,),
    "choice": (Choice, OptionalChoice),
    "words": (Words,),
    "moment": (Moment,),
    "ticks": (Ticks,),
    "photo": (Photo,),
}
"""As the templates ask for them: `{% if each is choice %}`."""


def prepare(app: Flask) -> None:
    filters: dict[str, Any] = app.jinja_env.filters
    filters |= {"amount": _amount, "step": _step, "told": _told, "roughly": _roughly, "say": say}
    filters |= {"said_once": _said_once}
    filters |= {"with_note": _with_note, "with_notes": _with_notes}
    filters |= {"corrected": corrected_of, "hour": days.hour, "by_day": days.by_day}
    moments = {
        "date": datetime.date,
        "day": days.day,
        "clock": days.clock,
        "stamp": _itself,
        "left": days.left,
        "ago": days.ago,
    }
    filters |= {name: partial(_when, words) for name, words in moments.items()}
    names: dict[str, Any] = app.jinja_env.globals
    names |= {"say": say, "q": quantities, "stage_words": STAGE_WORDS, "styles": STYLES, "acid_ph": ACID_PH}
    names |= {"lasting": LASTING, "air_speed": AIR_SPEED}
    names |= {"units_for": units_for, "is_a_row": is_a_row, "labels_of": labels_of}
    names |= {"seldom_of": seldom_of, "options_of": options_of}
    names |= {"troubles": troubles}
    names |= {"correctable": correctable, "fresh_id": fresh_id, "now": visitor.now}
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
        "example": example.is_open(),
        "places": PLACES,
        "place": _place(request.path),
        "saved": _saved(how),
        "here": _here(),
        "edition": len(book()),  # a form's ids change with the book: after a save it starts fresh, never before
    }


_PLACE_OF = {
    "": "today",
    "chamber": "chamber",
    "sums": "sums",
    "rules": "sums",
    "sources": "sums",
    "yours": "book",
    "licences": "book",
}
"""By the first part of the address; every other belongs to the batches."""


def _place(path: str) -> str:
    return _PLACE_OF.get(path.strip("/").split("/")[0], "batches")


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


def _amount(value: float | None, quantity: Quantity) -> str:
    return "—" if value is None else Amount(value, quantity).show(visitor.reader())


def _step(step: Sentence) -> str:
    return step.say(visitor.reader())


def _told(step: Sentence) -> str:
    """A step as a sentence: four digits are enough to tell 34.96 % from a target of 35 %."""
    return step.say(visitor.reader(), 4)


def _roughly(step: Sentence) -> str:
    """A step as a sentence to be read in passing: 1.7 K, not 1.722."""
    return step.say(visitor.reader(), 2)


def _said_once(reasons: Iterable[Reason]) -> list[tuple[Reason, list[Source]]]:
    """Two rules may want the same of a piece: it is said once, with the source of each."""
    found: dict[tuple[bool | None, str], tuple[Reason, list[Source]]] = {}
    for each in reasons:
        _, sources = found.setdefault((each.met, _told(each.text)), (each, []))
        if each.source not in sources:
            sources.append(each.source)
    return list(found.values())


def _with_note(words: str, read: CorrectedReading | None) -> str:
    """What is said of a value that was read, with what was corrected in it."""
    return _with_notes(words, () if read is None or read.note is None else (read.note,))


def _with_notes(words: str, notes: Iterable[Sentence]) -> str:
    for note in notes:
        words = Sentence("{told}, {note}", {"told": words, "note": note}).say(visitor.reader(), 4)
    return words


def units_for(each: Any) -> list[str]:
    """The unit a bare number has in this box, then the others one may pick; empty where there is no unit."""
    if not isinstance(each, Number):
        return [say(each.unit)] if hasattr(each, "unit") else []
    bare = each.quantity.bare(visitor.reader().system).symbol
    others = [unit.symbol for unit in each.quantity.units if unit.symbol not in NOT_OFFERED and unit.symbol != bare]
    return [bare, *others] if bare else []


def is_a_row(each: Choice | OptionalChoice) -> bool:
    """Whether the options stand side by side, one tap away: few short words, or a choice that nothing has made yet.
    Any other is one line that opens."""
    words = [say(each.options[key]) for key in each.options]
    is_open = each.default is None and len(words) <= MOST_OPEN
    return is_open or (len(words) <= MOST_IN_A_ROW and sum(map(len, words)) <= ROW_LETTERS)


def seldom_of(inputs: Sequence[Input]) -> list[Input]:
    """What is folded away until it is wanted: the optional boxes beside such as must be filled; where none must be,
    those that are more than a screen holds."""
    optional = [each for each in inputs if getattr(each, "optional", False)]
    needs_numbers = any(isinstance(each, Number) and not each.optional and each.default is None for each in inputs)
    folded = optional if needs_numbers else optional[MOST_UNFOLDED:]
    return [
        each for at, each in enumerate(inputs) if each in folded or (_is_made(each) and _is_between(inputs, at, folded))
    ]


def _is_between(inputs: Sequence[Input], at: int, folded: Sequence[Input]) -> bool:
    before = next((each for each in reversed(inputs[:at]) if not _is_made(each)), None)
    after = next((each for each in inputs[at:] if not _is_made(each)), None)
    return before in folded and after in folded


def _is_made(each: Input) -> bool:
    """A choice that has its usual answer: between boxes that are folded it is about them."""
    return isinstance(each, Choice) and each.default is not None and not each.listed


def labels_of(inputs: Sequence[Input]) -> Sentence:
    return Sentence("{labels}", {"labels": in_a_row([said(each.label) for each in inputs])})


def options_of(each: Choice | Ticks) -> Sentence:
    return Sentence("{options}", {"options": in_a_row([said(words) for words in each.options.values()])})


def correctable(line: Line) -> bool:
    return form_of(type(line.fact)) is not None


def _when(words: Callable[[datetime], Value], moment: datetime) -> str:
    return Sentence("{when}", {"when": words(moment)}).say(visitor.reader())


def clock(moment: datetime) -> str:
    return _when(days.clock, moment)


def _itself(moment: datetime) -> Value:
    """For what is printed and read on another day."""
    return moment
