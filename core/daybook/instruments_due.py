"""Which instruments want a check, or a hand: those never checked, checked too long ago, recalibrated, or failed."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.due import Due
from core.daybook.instruments import Instrument
from core.daybook.put_right import plain
from core.sentence import Sentence

TOLD_AHEAD = timedelta(days=7)
"""A check that is due half a year from now is no line yet."""
DAYS_A_MONTH = 30.44


def instruments_due(instruments: Iterable[Instrument], now: datetime) -> list[Due]:
    """One line for each instrument in use that wants something within a week."""
    lines = (_line(each, now) for each in instruments if each.retired_at is None)
    return [line for line in lines if line.at <= now + TOLD_AHEAD]


def _line(instrument: Instrument, now: datetime) -> Due:
    named = f"the {instrument.kind_words} {plain(instrument.name)}"
    standing = (instrument.in_force(each, now) for each in instrument.measures)
    failed = next((check for check in standing if check is not None and check.failed), None)
    recalibrated = next((at for at in instrument.recalibrated if at <= now), None)
    checked_at = instrument.last_checked_at(now)
    if recalibrated is not None and (checked_at is None or (failed is not None and failed.at < recalibrated)):
        return Due("check", instrument.id, Sentence(f"Check {named}: it was adjusted"), recalibrated)
    if failed is not None:
        verb = "Clean" if failed.check.word == "clean" else "Replace"
        words = f"{verb} {named}: it failed its {failed.name} of {failed.at.day} {failed.at:%b}"
        return Due("check", instrument.id, Sentence(words), failed.at)
    if checked_at is not None:
        words = f"Check {named}: last checked {_long_ago(now - checked_at)}"
        return Due("check", instrument.id, Sentence(words), checked_at + instrument.check_every)
    return Due("check", instrument.id, Sentence(f"Check {named}: never checked yet"), instrument.added_at)


def _long_ago(since: timedelta) -> str:
    days = since.days
    if days < 2 * DAYS_A_MONTH:
        return "today" if days < 1 else f"{days} day{'' if days == 1 else 's'} ago"
    return f"{days / DAYS_A_MONTH:.0f} months ago"
