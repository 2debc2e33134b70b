"""What wants doing now, most urgent first: each a sentence with its verb and the form it opens.

Intervals are common practice, no source: acid is read twice a day and pieces are weighed once a week.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from itertools import chain
from typing import Literal

from attrs import frozen

from core.daybook.batch import Batch
from core.quantities import PH, Amount
from core.release.readiness import ACID_PH
from core.working import Step

READ_EVERY = timedelta(hours=12)
WEIGH_EVERY = timedelta(days=7)

Task = Literal["cure", "reading", "hang", "weigh", "release", "prepare", "fill", "empty", "check"]
"""What is to be done: the screen knows the form that each one opens (`web/screens/today.py`)."""


@frozen
class Due:
    """task: which form to open. about: the batch or the instrument by its id, or CHAMBER. at: when it is or was due.

    says_when: the words name the day themselves.
    """

    task: Task
    about: str
    words: Step
    at: datetime
    says_when: bool = False

    def late(self, now: datetime) -> bool:
        return self.at <= now


def in_order(*lines: Iterable[Due]) -> list[Due]:
    """What waits in the batches, in the chamber, with the instruments: the longest overdue first."""
    return sorted(chain(*lines), key=lambda line: line.at)


def due(batches: Iterable[Batch], now: datetime) -> list[Due]:
    """One line for each thing each batch waits for, the longest overdue first."""
    return in_order(*(_of_batch(batch, now) for batch in batches))


def _of_batch(batch: Batch, now: datetime) -> Iterable[Due]:
    if batch.finished:
        return
    if batch.cure is None:
        yield Due("cure", batch.id, Step(f"Weigh the cure for {_plain(batch.name)}"), batch.started_at)
    if batch.stage == "ferment":
        yield _reading(batch)
    if batch.stage in ("dry", "release") and not batch.pieces:
        yield Due("hang", batch.id, Step(f"Hang the pieces of {_plain(batch.name)}"), batch.started_at)
    if batch.stage == "dry" and batch.hanging:
        yield _weighing(batch)
    if batch.stage == "release":
        words = (
            f"Settle {len(batch.hanging)} {_pieces(len(batch.hanging))} of {_plain(batch.name)}: the loss is reached"
        )
        yield Due("release", batch.id, Step(words), max(piece.weighed_at for piece in batch.hanging))


def _reading(batch: Batch) -> Due:
    if not batch.phs:
        return Due("reading", batch.id, Step(f"Read the pH of {_plain(batch.name)}"), batch.started_at)
    last = batch.phs[-1]
    words = Step(
        f"Read the pH of {_plain(batch.name)}: {{last}} last, {{acid}} wanted",
        {"last": Amount(last.ph or 0.0, PH), "acid": Amount(ACID_PH, PH)},
    )
    return Due("reading", batch.id, words, last.at + READ_EVERY)


def _weighing(batch: Batch) -> Due:
    oldest = min(piece.weighed_at for piece in batch.hanging)
    due_at = oldest + WEIGH_EVERY
    waiting = [piece for piece in batch.hanging if piece.weighed_at + WEIGH_EVERY <= due_at + timedelta(days=1)]
    words = f"Weigh {len(waiting)} {_pieces(len(waiting))} of {_plain(batch.name)}"
    return Due("weigh", batch.id, Step(words), due_at)


def _pieces(count: int) -> str:
    return "piece" if count == 1 else "pieces"


def _plain(name: str) -> str:
    """A name may hold braces; in a step they would be taken for an amount."""
    return name.replace("{", "{{").replace("}", "}}")
