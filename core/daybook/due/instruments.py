"""Which instruments want a check, or a hand: those never checked, checked too long ago, recalibrated, or failed."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.due.line import Due, Task
from core.daybook.instruments import Instrument
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence, Value

TOLD_AHEAD = timedelta(days=7)
"""A check that is due half a year from now is no line yet."""
DAYS_A_MONTH = 30.44


def instruments_due(instruments: Iterable[Instrument], now: datetime) -> list[Due]:
    """One line for each instrument in use that wants something within a week."""
    lines = (_line(each, now) for each in instruments if each.retired_at is None)
    return [line for line in lines if line.at <= now + TOLD_AHEAD]


def _line(instrument: Instrument, now: datetime) -> Due:
    standing = (instrument.in_force(each, now) for each in instrument.measures)
    failed = next((check for check in standing if check is not None and check.failed), None)
    recalibrated = next((at for at in instrument.recalibrated if at <= now), None)
    checked_at = instrument.last_checked_at(now)
    if recalibrated is not None and failed is not None and failed.at < recalibrated:
        return _due("recheck", "Check", instrument, recalibrated, Sentence("it failed, and was adjusted"))
    if recalibrated is not None and checked_at is None:
        return _due("check", "Check", instrument, recalibrated, Sentence("it was adjusted"))
    if failed is not None:
        fact = Sentence("it failed its {check} of {at}", {"check": Sentence(failed.name), "at": failed.at.date()})
        if failed.check.word == "clean":
            return _due("recheck", "Clean", instrument, failed.at, fact)
        return _due("replace", "Replace", instrument, failed.at, fact)
    if checked_at is None:
        return _due("check", "Check", instrument, instrument.added_at, Sentence("never checked yet"))
    fact = Sentence("last checked {ago}", {"ago": _long_ago(now - checked_at)})
    return _due("check", "Check", instrument, checked_at + instrument.check_every, fact)


def _due(task: Task, act: Message, instrument: Instrument, at: datetime, fact: Sentence) -> Due:
    named: dict[str, Value] = {"kind": Sentence(instrument.kind_words), "name": instrument.name}
    return Due(task, instrument.id, Sentence("{act} the {kind} {name}", {"act": Sentence(act), **named}), at, fact)


def _long_ago(since: timedelta) -> Sentence:
    days = since.days
    if days < 1:
        return Sentence("today")
    if days < 2 * DAYS_A_MONTH:
        return Sentence("{count} day ago", {"count": Amount(days, COUNT)}, plural="{count} days ago")
    return Sentence("{count} months ago", {"count": Amount(round(days / DAYS_A_MONTH), COUNT)})
