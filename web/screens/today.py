"""Today: what is to do, most dangerous first; the chamber now; what hangs."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from attrs import frozen
from flask import Blueprint, render_template, request, url_for
from markupsafe import Markup

from core.daybook.ahead import ahead
from core.daybook.batch import Batch, open_batches
from core.daybook.due.batches import due
from core.daybook.due.chamber import chamber_due
from core.daybook.due.copies import copy_due
from core.daybook.due.danger import in_order, is_urgent, presses
from core.daybook.due.instruments import instruments_due
from core.daybook.due.line import Due, Task
from core.daybook.facts.chamber import CHAMBER, AirRead
from core.daybook.weigh_days import are_known, known_weigh_days
from core.ferment.saying import hours_and_minutes
from core.quantities import COUNT, LOSS, Amount
from core.sentence import Message, Rounded, Sentence, Value, day_and_month, in_a_row
from web import days, example, to_come
from web.day_line import day_line
from web.instruments import shelf
from web.journal import book
from web.saying import set_apart
from web.screens.ahead import expected
from web.screens.chamber.in_force import in_force
from web.visitor import copied, now

screen = Blueprint("today", __name__)

STAYS: frozenset[Task] = frozenset(
    {"unread", "hang", "weigh", "sheet", "prepare", "check", "recheck", "replace", "release", "copy"}
)
"""What takes more than one form, or none, goes on where it is. Any other leads back to Today, with its line saved."""
MOST_ROWS = 8
"""More are folded, but none that is urgent."""

_OPENS: dict[Task, tuple[str, str | None]] = {
    "cure": ("mix.weigh_cure", "batch_id"),
    "unread": ("batches.one", "batch_id"),
    "sheet": ("mix.sheet", "batch_id"),
    "reading": ("ferment.read_meat", "batch_id"),
    "temperature": ("ferment.read_meat", "batch_id"),
    "deviation": ("ferment.decide", "batch_id"),
    "salt": ("mix.begin_salting", "batch_id"),
    "turn": ("mix.turn", "batch_id"),
    "unsalt": ("mix.end_salting", "batch_id"),
    "hang": ("dry.hang", "batch_id"),
    "weigh": ("dry.weigh_next", "batch_id"),
    "discard": ("release.take_down", "piece_id"),
    "take-down": ("release.take_down", "piece_id"),
    "look": ("release.inspect", "piece_id"),
    "activity": ("release.measure", "piece_id"),
    "release": ("release.piece", "piece_id"),
    "prepare": ("chamber.run", "run_id"),
    "fill": ("chamber.fill", None),
    "empty": ("chamber.empty_basin", None),
    "check": ("chamber.instrument", "instrument_id"),
    "recheck": ("chamber.instrument", "instrument_id"),
    "replace": ("chamber.instrument", "instrument_id"),
    "copy": ("book.page", None),
}
"""The view a line opens, and the part of its address that says what the line is about; None where there is one only."""

_BUTTONS: dict[Task, Message] = {
    "cure": "Weigh",
    "unread": "Look",
    "sheet": "Weigh out",
    "reading": "Read pH",
    "temperature": "Read",
    "deviation": "Decide",
    "salt": "Salted",
    "turn": "Turned",
    "unsalt": "Taken out",
    "hang": "Hang",
    "weigh": "Weigh",
    "discard": "Discard",
    "take-down": "Take down",
    "look": "Look",
    "activity": "Measure",
    "release": "Decide",
    "prepare": "Continue",
    "fill": "Filled",
    "empty": "Emptied",
    "check": "Check",
    "recheck": "Check again",
    "replace": "Replace",
    "copy": "Save",
}


@frozen
class Row:
    """when: large; beside it, small, what that means: left, since Friday, by 20:00."""

    when: Sentence
    beside: Sentence
    what: Markup
    fact: Sentence | None
    button: Message
    path: str
    is_late: bool


@screen.get("/")
def page():
    if request.args.get("by") == to_come.NOT_NOW:
        to_come.stop()
        return _page(to_come.NOT_NOW)
    return _page("later" if to_come.unknown() else "known")


@screen.get("/to-come")
def coming():
    """How far it is; once it is done, what asks for the page anew. Nothing where it was stopped."""
    doing, step = to_come.go_on(), request.args.get("step", 0, int)
    if doing is None and to_come.unknown():
        return "", 204
    return render_template("today_work.html", doing=doing, step=step)


def _page(weigh_days: str) -> str:
    """weigh_days: known; later, for the page to ask for; week, where they are not to be worked out."""
    waiting, moment = to_do(), now()
    shown = max(MOST_ROWS, sum(is_urgent(line, moment) for line in waiting))
    return render_template(
        "today.html",
        day=days.in_full(moment),
        rows=[_row(line) for line in waiting[:shown]],
        pressing=any(presses(line, moment) for line in waiting),
        more=[_row(line) for line in waiting[shown:]],
        weigh_days=weigh_days,
        air=book().latest(CHAMBER, AirRead),
        line=day_line(),
        set_points=in_force(),
        hanging=[_hangs(batch) for batch in open_batches(book()) if batch.hanging],
        empty=len(book()) == 0,
    )


def to_do() -> list[Due]:
    """All of it, in its order; by forecasts as far as they are worked out."""
    open_, moment = open_batches(book()), now()
    return in_order(
        due(open_, moment, known_weigh_days(book(), open_)),
        chamber_due(book(), moment),
        instruments_due(shelf().in_use(), moment),
        () if example.is_open() else copy_due(book(), copied(), moment),
        now=moment,
    )


def _row(line: Due) -> Row:
    when, beside = _when(line)
    view, subject = _OPENS[line.task]
    address: dict[str, Any] = {subject: line.about} if subject else {}
    if line.task not in STAYS:
        address["from"] = "today"
    return Row(
        when=when,
        beside=beside,
        what=set_apart(line.words, "act"),
        fact=None if line.fact is None else days.near(line.fact),
        button=_BUTTONS[line.task],
        path=url_for(view, **address),
        is_late=line.late(now()),
    )


def _when(line: Due) -> tuple[Sentence, Sentence]:
    """ "3 h 10 min" "left", "Today" "since Friday", "Tuesday" "1 Dec"."""
    moment = now()
    if line.until is not None:
        time = hours_and_minutes((line.until - moment).total_seconds())
        by = Sentence("left; read by {moment}", {"moment": days.clock(line.at.astimezone(moment.tzinfo))})
        return Sentence("{time}", {"time": time}), Sentence("left") if line.late(moment) else by
    at = line.at.astimezone(moment.tzinfo)
    off = (at.date() - moment.date()).days
    if off < 0:
        return Sentence("Today"), Sentence("since {day}", {"day": _short(at)})
    if off == 0:
        words: Message = "since {time}" if at <= moment else "by {time}"
        return Sentence("Today"), Sentence(words, {"time": days.hour(at)})
    if off == 1:
        return Sentence("Tomorrow"), day_and_month(at)
    weekday, date = Sentence(days.WEEKDAYS[at.weekday()]), day_and_month(at)
    return (weekday, date) if off < len(days.WEEKDAYS) else (date, weekday)


def _short(at: datetime) -> Value:
    """ "Friday"; beyond a week the date, with its year where that is another."""
    day = days.day(at)
    return day if isinstance(day, Sentence) or at.year != now().year else day_and_month(at)


@frozen
class Hangs:
    """A batch that hangs: how far it is from its target, in words and as a bar with a tick for each piece."""

    batch: Batch
    words: Sentence
    gone: float
    ticks: tuple[float, ...]
    each: Sentence
    expected: Sentence | None


def _hangs(batch: Batch) -> Hangs:
    target = batch.start.target_loss
    losses = [(piece.tag, piece.loss) for piece in batch.hanging]
    known = [loss for _, loss in losses if loss is not None]
    told: dict[str, Value] = {"count": Amount(len(losses), COUNT), "target": Rounded(Amount(target, LOSS))}
    words = Sentence("{count} piece, not weighed yet", told, plural="{count} pieces, not weighed yet")
    mean = sum(known) / len(known) if known else 0.0
    if known:
        told |= {"lost": Rounded(Amount(mean, LOSS))}
        words = Sentence(
            "{count} piece, {lost} lost of {target}", told, plural="{count} pieces, {lost} lost of {target}"
        )
    each = [Sentence("{tag} {lost}", {"tag": tag, "lost": Rounded(Amount(loss or 0.0, LOSS))}) for tag, loss in losses]
    ticks = tuple(_along(loss / target) for loss in known)
    coming = expected(ahead(book(), batch)) if are_known(book(), batch) else None
    return Hangs(batch, words, _along(mean / target), ticks, Sentence("{pieces}", {"pieces": in_a_row(each)}), coming)


def _along(share: float) -> float:
    """Of the bar, in hundredths."""
    return 100 * min(1.0, max(0.0, share))
