"""What a whole muscle waits for before it is hung: to go into salt, to be turned, to come out."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.batch import Batch
from core.daybook.due.line import Due
from core.daybook.salt_notes import Salting
from core.daybook.salting import next_turn, planned_end
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence


def waits_for_salt(batch: Batch) -> bool:
    """Nobody noted that it went into salt: then it is not yet time to hang it."""
    return batch.start.style == "whole-muscle" and batch.salting is None


def out_of_salt(batch: Batch) -> datetime:
    ended = batch.salting.ended_at if batch.salting is not None else None
    return ended or batch.started_at


def of_salt(batch: Batch, now: datetime) -> Iterable[Due]:
    if batch.start.style != "whole-muscle" or batch.cure is None or batch.pieces:
        return
    salting = batch.salting
    if salting is None:
        words = Sentence("{act} {batch} into salt", {"act": Sentence("Put"), "batch": batch.name})
        yield Due("salt", batch.id, words, batch.started_at)
    elif salting.ended_at is None:
        end, day = planned_end(salting), _day(salting, now)
        turn = next_turn(salting)
        if turn is not None:
            act: Message = "Turn" if salting.begun.method == "weighed" else "Overhaul"
            words = Sentence("{act} {batch} in its salt", {"act": Sentence(act), "batch": batch.name})
            yield Due("turn", batch.id, words, turn, day)
        words = Sentence("{act} {batch} out of the salt and hang it", {"act": Sentence("Take"), "batch": batch.name})
        yield Due("unsalt", batch.id, words, end, day)


def _day(salting: Salting, now: datetime) -> Sentence:
    """ "day 6 of 12"; the day it went in is the first."""
    day = (now - salting.at).days + 1
    planned = round((planned_end(salting) - salting.at) / timedelta(days=1))
    return Sentence("day {day} of {planned}", {"day": Amount(day, COUNT), "planned": Amount(planned, COUNT)})
