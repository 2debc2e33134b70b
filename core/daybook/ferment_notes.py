"""What was noted of a batch's fermentation beside its readings, folded from its lines."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from attrs import frozen

from core.daybook.book import Line
from core.daybook.corrections.ferment_logs import corrected_log
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.instruments import Shelf


@frozen
class TakenLog:
    """taken: its temperatures corrected by the check of its thermometer that stood when the log began."""

    at: datetime
    taken: FermentLogTaken


@frozen
class FermentNotes:
    """begun_at: when the clock started; of two beginnings the later entry counts, as of two decisions."""

    begun: FermentationBegun | None = None
    begun_at: datetime | None = None
    begun_line_id: str | None = None
    logs: tuple[TakenLog, ...] = ()
    decided: DeviationDecided | None = None
    decided_at: datetime | None = None
    decided_line_id: str | None = None


NOTHING_NOTED = FermentNotes()


def ferment_notes(shelf: Shelf, lines: Iterable[Line]) -> FermentNotes:
    begun: tuple[FermentationBegun, Line] | None = None
    decided: tuple[DeviationDecided, Line] | None = None
    logs: list[TakenLog] = []
    for line in lines:
        if isinstance(line.fact, FermentationBegun):
            begun = line.fact, line
        elif isinstance(line.fact, DeviationDecided):
            decided = line.fact, line
        elif isinstance(line.fact, FermentLogTaken):
            taken = corrected_log(shelf, line.fact, line.entry.happened_at)
            logs += [] if taken is None else [TakenLog(line.entry.happened_at, taken)]
    return FermentNotes(
        begun=begun[0] if begun else None,
        begun_at=begun[1].entry.happened_at if begun else None,
        begun_line_id=begun[1].id if begun else None,
        logs=tuple(logs),
        decided=decided[0] if decided else None,
        decided_at=decided[1].entry.happened_at if decided else None,
        decided_line_id=decided[1].id if decided else None,
    )
