"""What is to do now, most urgent first: each a sentence with its verb and the form it opens.

Intervals are common practice; no published source: acid is read twice a day and pieces are weighed once a week.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from itertools import chain

from core.daybook.batch import Batch
from core.daybook.due.ferment import of_ferment, sour_in_time
from core.daybook.due.line import Due
from core.daybook.due.salt import of_salt, out_of_salt, waits_for_salt
from core.daybook.sheet import sheet_of
from core.quantities import COUNT, Amount
from core.sentence import Sentence

WEIGH_EVERY = timedelta(days=7)


def in_order(*lines: Iterable[Due]) -> list[Due]:
    """What waits in the batches, in the chamber, with the instruments: the longest overdue first."""
    return sorted(chain(*lines), key=lambda line: line.at)


def due(batches: Iterable[Batch], now: datetime) -> list[Due]:
    """One line for each thing each batch waits for, the longest overdue first."""
    return in_order(*(_of_batch(batch, now) for batch in batches))


def _of_batch(batch: Batch, now: datetime) -> Iterable[Due]:
    if batch.finished:
        return
    sheet = sheet_of(batch)
    if sheet is not None and not sheet.complete:
        done = {"batch": batch.name, "done": Amount(sheet.done, COUNT), "all": Amount(len(sheet.rows), COUNT)}
        yield Due("sheet", batch.id, Sentence("Weigh out {batch}: {done} of {all} done", done), batch.started_at)
    elif batch.cure is None:
        yield Due("cure", batch.id, Sentence("Weigh the cure for {batch}", {"batch": batch.name}), batch.started_at)
    yield from of_ferment(batch, now)
    yield from of_salt(batch)
    if batch.stage in ("dry", "release") and not batch.pieces and not waits_for_salt(batch):
        since = sour_in_time(batch, now) if batch.ferments else out_of_salt(batch)
        if since is not None:
            yield Due("hang", batch.id, Sentence("Hang the pieces of {batch}", {"batch": batch.name}), since)
    if batch.stage == "dry" and batch.hanging:
        yield _weighing(batch)
    if batch.stage == "release":
        words = Sentence(
            "Decide on {count} piece of {batch}: the loss is reached",
            {"batch": batch.name, "count": Amount(len(batch.hanging), COUNT)},
            plural="Decide on {count} pieces of {batch}: the loss is reached",
        )
        yield Due("release", batch.id, words, max(piece.weighed_at for piece in batch.hanging))


def _weighing(batch: Batch) -> Due:
    oldest = min(piece.weighed_at for piece in batch.hanging)
    due_at = oldest + WEIGH_EVERY
    waiting = [piece for piece in batch.hanging if piece.weighed_at + WEIGH_EVERY <= due_at + timedelta(days=1)]
    words = Sentence(
        "Weigh {count} piece of {batch}",
        {"batch": batch.name, "count": Amount(len(waiting), COUNT)},
        plural="Weigh {count} pieces of {batch}",
    )
    return Due("weigh", batch.id, words, due_at)
