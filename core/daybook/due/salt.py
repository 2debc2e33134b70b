"""What a whole muscle waits for before it is hung: to go into salt, to be turned, to come out."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from core.daybook.batch import Batch
from core.daybook.due.line import Due
from core.daybook.salting import next_turn, planned_end
from core.sentence import Message, Sentence


def waits_for_salt(batch: Batch) -> bool:
    """Nobody noted that it went into salt: then it is not yet time to hang it."""
    return batch.start.style == "whole-muscle" and batch.salting is None


def out_of_salt(batch: Batch) -> datetime:
    ended = batch.salting.ended_at if batch.salting is not None else None
    return ended or batch.started_at


def of_salt(batch: Batch) -> Iterable[Due]:
    if batch.start.style != "whole-muscle" or batch.cure is None or batch.pieces:
        return
    named, salting = {"batch": batch.name}, batch.salting
    if salting is None:
        yield Due("salt", batch.id, Sentence("Put {batch} into salt", named), batch.started_at)
    elif salting.ended_at is None:
        turn = next_turn(salting)
        if turn is not None:
            words: Message = "Turn {batch}" if salting.begun.method == "weighed" else "Overhaul {batch}"
            yield Due("turn", batch.id, Sentence(words, named), turn)
        through = Sentence("Take {batch} out of the salt and hang it: the salt is through", named)
        yield Due("unsalt", batch.id, through, planned_end(salting))
