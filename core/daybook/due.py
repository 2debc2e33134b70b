"""What wants doing now, most urgent first: each a sentence with its verb and the form it opens.

Intervals are common practice, no source: acid is read twice a day and pieces are weighed once a week.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from itertools import chain

from core.daybook.batch import Batch
from core.daybook.due_line import Due, Task, plain
from core.daybook.ferment_due import READ_EVERY, of_ferment, sour_in_time
from core.daybook.salt_due import of_salt, out_of_salt, waits_for_salt
from core.daybook.sheet import sheet_of
from core.sentence import Sentence

__all__ = ["READ_EVERY", "WEIGH_EVERY", "Due", "Task", "due", "in_order"]

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
        words = f"Weigh out {plain(batch.name)}: {sheet.done} of {len(sheet.rows)} done"
        yield Due("sheet", batch.id, Sentence(words), batch.started_at)
    elif batch.cure is None:
        yield Due("cure", batch.id, Sentence(f"Weigh the cure for {plain(batch.name)}"), batch.started_at)
    yield from of_ferment(batch, now)
    yield from of_salt(batch)
    if batch.stage in ("dry", "release") and not batch.pieces and not waits_for_salt(batch):
        since = sour_in_time(batch, now) if batch.ferments else out_of_salt(batch)
        if since is not None:
            yield Due("hang", batch.id, Sentence(f"Hang the pieces of {plain(batch.name)}"), since)
    if batch.stage == "dry" and batch.hanging:
        yield _weighing(batch)
    if batch.stage == "release":
        words = f"Settle {len(batch.hanging)} {_pieces(len(batch.hanging))} of {plain(batch.name)}: the loss is reached"
        yield Due("release", batch.id, Sentence(words), max(piece.weighed_at for piece in batch.hanging))


def _weighing(batch: Batch) -> Due:
    oldest = min(piece.weighed_at for piece in batch.hanging)
    due_at = oldest + WEIGH_EVERY
    waiting = [piece for piece in batch.hanging if piece.weighed_at + WEIGH_EVERY <= due_at + timedelta(days=1)]
    words = f"Weigh {len(waiting)} {_pieces(len(waiting))} of {plain(batch.name)}"
    return Due("weigh", batch.id, Sentence(words), due_at)


def _pieces(count: int) -> str:
    return "piece" if count == 1 else "pieces"
