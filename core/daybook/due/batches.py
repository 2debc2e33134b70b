"""What the batches wait for, from the meat on the table to the pieces on their hooks.

Intervals are common practice; no published source: acid is read twice a day, and pieces are weighed once a week
where no forecast names an earlier day.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime

from core.daybook.batch import Batch
from core.daybook.due.danger import in_order
from core.daybook.due.ferment import of_ferment, sour_in_time
from core.daybook.due.line import Due
from core.daybook.due.pieces import of_pieces
from core.daybook.due.salt import of_salt, out_of_salt, waits_for_salt
from core.daybook.sheet import sheet_of
from core.daybook.weigh_days import WeighDay
from core.quantities import COUNT, Amount
from core.sentence import Sentence

NOTHING_KNOWN: Mapping[str, WeighDay] = {}


def due(batches: Iterable[Batch], now: datetime, weigh_days: Mapping[str, WeighDay] = NOTHING_KNOWN) -> list[Due]:
    """One line for each thing each batch waits for, the most dangerous first. weigh_days: of pieces, where known."""
    return in_order(*(_of_batch(batch, now, weigh_days) for batch in batches), now=now)


def _of_batch(batch: Batch, now: datetime, weigh_days: Mapping[str, WeighDay]) -> Iterable[Due]:
    if batch.finished:
        return
    yield from _of_mixing(batch)
    yield from of_ferment(batch, now)
    yield from of_salt(batch, now)
    if batch.stage in ("dry", "release") and not batch.pieces and not waits_for_salt(batch):
        since = sour_in_time(batch, now) if batch.ferments else out_of_salt(batch)
        if since is not None:
            words = Sentence("{act} of {batch}", {"act": Sentence("Hang the pieces"), "batch": batch.name})
            yield Due("hang", batch.id, words, since)
    yield from of_pieces(batch, now, weigh_days)


def _of_mixing(batch: Batch) -> Iterable[Due]:
    sheet = sheet_of(batch)
    if sheet is not None and not sheet.complete:
        words = Sentence("{act} {batch}", {"act": Sentence("Weigh out"), "batch": batch.name})
        done = {"done": Amount(sheet.done, COUNT), "all": Amount(len(sheet.rows), COUNT)}
        yield Due("sheet", batch.id, words, batch.started_at, Sentence("{done} of {all} done", done))
    elif batch.cure_is_unread:
        words = Sentence("{act} of {batch} in its log", {"act": Sentence("Look up the cure"), "batch": batch.name})
        yield Due("unread", batch.id, words, batch.started_at, Sentence("its entry cannot be read here"))
    elif batch.cure is None:
        words = Sentence("{act} for {batch}", {"act": Sentence("Weigh the cure"), "batch": batch.name})
        yield Due("cure", batch.id, words, batch.started_at)
