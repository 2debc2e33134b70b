"""Which instruments want a check, or a hand: those never checked, checked too long ago, recalibrated, or failed."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.due.line import Due
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
    named: dict[str, Value] = {"kind": Sentence(instrument.kind_words), "name": instrument.name}
    standing = (instrument.in_force(each, now) for each in instrument.measures)
    failed = next((check for check in standing if check is not None and check.failed), None)
    recalibrated = next((at for at in instrument.recalibrated if at <= now), None)
    checked_at = instrument.last_checked_at(now)
    if recalibrated is not None and (checked_at is None or (failed is not None and failed.at < recalibrated)):
        return Due("check", instrument.id, Sentence("Check the {kind} {name}: it was adjusted", named), recalibrated)
    if failed is not None:
        words = _CLEAN if failed.check.word == "clean" else _REPLACE
        failing: dict[str, Value] = {"check": Sentence(failed.name), "at": failed.at.date()}
        return Due("check", instrument.id, Sentence(words, named | failing), failed.at)
    if checked_at is not None:
        words = Sentence("Check the {kind} {name}: last checked {ago}", named | {"ago": _long_ago(now - checked_at)})
        return Due("check", instrument.id, words, checked_at + instrument.check_every)
    return Due(
        "check", instrument.id, Sentence("Check the {kind} {name}: never checked yet", named), instrument.added_at
    )


_CLEAN: Message = "Clean the {kind} {name}: it failed its {check} of {at}"
_REPLACE: Message = "Replace the {kind} {name}: it failed its {check} of {at}"


def _long_ago(since: timedelta) -> Sentence:
    days = since.days
    if days < 1:
        return Sentence("today")
    if days < 2 * DAYS_A_MONTH:
        return Sentence("{count} day ago", {"count": Amount(days, COUNT)}, plural="{count} days ago")
    return Sentence("{count} months ago", {"count": Amount(round(days / DAYS_A_MONTH), COUNT)})
