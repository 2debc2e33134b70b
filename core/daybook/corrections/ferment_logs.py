"""A fermentation's log, corrected by the checks of the thermometer that wrote it."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import evolve

from core.daybook.facts.ferment import FermentLogTaken
from core.daybook.instruments import Shelf


def corrected_log(shelf: Shelf, taken: FermentLogTaken, at: datetime) -> FermentLogTaken | None:
    """By the check of its thermometer in force when it began. None where that had failed its check, by the log's end at
    the latest: what it logged is no evidence."""
    instrument = shelf.find(taken.thermometer)
    if instrument is None:
        return taken
    last_at = at + timedelta(seconds=taken.times_s[-1])
    first, last = (instrument.in_force("temperature", each) for each in (at, last_at))
    if any(each is not None and each.failed for each in (first, last)):
        return None
    if first is None or first.correction is None:
        return taken
    apply = first.correction.apply
    return evolve(taken, temperatures_c=tuple(map(apply, taken.temperatures_c)), highest_c=apply(taken.highest_c))
