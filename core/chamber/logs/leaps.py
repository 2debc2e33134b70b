"""Rows that lie years from all others: the clock was not set yet when the logger began, or ran away."""

from __future__ import annotations

from itertools import pairwise

from core.chamber.logs.clock_changes import fall_at
from core.chamber.logs.rows import Rows, Skipped
from core.refusals import Refusal
from core.sentence import Message, Sentence
from core.units import DAY_S

LONGEST_PAUSE_S = 365 * DAY_S
"""No logger rests for a year within one log."""
FEW = 0.05
"""Of the rows: more are not left out without asking."""
NOT_SET: Message = "Its time lies years before that of the other lines: the clock was not set yet."
RAN_AWAY: Message = "Its time lies years after that of the other lines: the clock was wrong."
LEAPS: Message = (
    "At line {line} the clock leaps from {before} to {after}: it was set, or two logs stand in this file. Keep the "
    "lines before or after that one, and choose that file."
)


def without_leaps(rows: Rows, skipped: list[Skipped]) -> Rows:
    """rows: in the order of time. Raises Refusal on "time" where more than a few lie apart."""
    times = rows.times
    if not times or times[-1] - times[0] <= LONGEST_PAUSE_S:
        return rows
    leaps = [at for at, (before, after) in enumerate(pairwise(times), 1) if after - before > LONGEST_PAUSE_S]
    if not leaps:
        return rows
    first, end = max(pairwise([0, *leaps, len(times)]), key=lambda part: part[1] - part[0])
    apart = [at for at in range(len(times)) if not first <= at < end]
    if len(apart) > FEW * len(times):
        at = leaps[0]
        raise Refusal("time", Sentence(LEAPS, fall_at(rows, times, at)))
    for at in apart:
        skipped.append(Skipped(rows.lines[at], Sentence(NOT_SET if at < first else RAN_AWAY)))
    return rows.reordered(range(first, end))
