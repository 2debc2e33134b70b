"""In which order things are to be done: by what happens to somebody where they are left, then by time.

The order is our own choice; no published source.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from itertools import chain

from core.daybook.due.line import Due, Task

RANKS: tuple[tuple[Task, ...], ...] = (
    # A clock runs: in hours it may be too late, and no later step undoes the toxin.
    ("reading", "temperature"),
    # It ran out: nobody may taste it before it is decided, but an hour more changes nothing.
    ("deviation",),
    # What must not be eaten hangs among what will be, and its mould and mites go over.
    ("discard",),
    # What is read on it proves nothing, and what hangs now is judged by it.
    ("recheck", "replace"),
    # Meat stands there without its cure.
    ("sheet", "cure", "unread", "salt"),
    # Cured meat lies longer, or less evenly in its salt, than was meant.
    ("unsalt", "turn", "hang"),
    # A sanitiser is on the walls.
    ("prepare",),
    # It dries on past its target while it waits for a look, a sample or a word: it spoils, nobody is hurt.
    ("release", "look", "activity", "take-down"),
    # What dries too fast is seen on the scale only.
    ("weigh",),
    # Without water the air dries, and a full basin runs over; the scale tells of it too.
    ("fill", "empty"),
    # Nothing speaks against the instrument yet.
    ("check",),
    # The meat does not notice.
    ("copy",),
)
RANK: dict[Task, int] = {task: rank for rank, tasks in enumerate(RANKS) for task in tasks}
COMING = len(RANKS)
URGENT = RANK["replace"]


def presses(line: Due, now: datetime) -> bool:
    """What is not due yet is no danger yet, but for a clock that runs."""
    return line.late(now) or line.until is not None


def danger(line: Due, now: datetime) -> int:
    """The less, the more dangerous."""
    return RANK[line.task] if presses(line, now) else COMING


def is_urgent(line: Due, now: datetime) -> bool:
    """Somebody may be hurt: never to be folded away."""
    return danger(line, now) <= URGENT


def in_order(*lines: Iterable[Due], now: datetime) -> list[Due]:
    """What waits in the batches, in the chamber, with the instruments: the most dangerous first, then by time."""
    return sorted(chain(*lines), key=lambda line: (danger(line, now), line.at, line.about, line.task))
