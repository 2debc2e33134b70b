"""What the daybook knows of a piece, handed to the judge."""

from __future__ import annotations

from datetime import datetime

from core.daybook.batch import Batch, Piece
from core.daybook.curing import known_cure
from core.daybook.fermenting import outcome_of
from core.ferment.outcome import Outcome
from core.release.readiness import Evidence

SECONDS_A_DAY = 86400.0


def evidence_for(batch: Batch, piece: Piece, now: datetime, fermented: Outcome | None = None) -> Evidence:
    """Everything logged that bears on the verdict. Water activity may come from a batch-mate that was no drier.

    fermented: what became of the batch's fermentation, where it was judged already for a batch-mate.
    Readings are put right by the checks of their instruments; one on an instrument that had failed is no evidence.
    """
    activity, from_mate = _water_activity(batch, piece)
    cure = known_cure(batch)
    return Evidence(
        style=batch.start.style,
        loss=piece.proven_loss,
        target_loss=batch.start.target_loss,
        lowest_ph=batch.lowest_ph,
        last_ph=_last_ph(batch),
        water_activity=activity,
        activity_from_mate=from_mate,
        days_hung=(now - piece.hung_at).total_seconds() / SECONDS_A_DAY,
        least_days=batch.start.least_days,
        nitrite_ppm=cure.nitrite_ppm if cure else None,
        cure_ppm=cure.cure_ppm if cure else None,
        salt=cure.salt if cure else None,
        held=cure.held if cure else (),
        licence=cure.licence if cure else "",
        fermentation=fermented or outcome_of(batch, now),
        signs=piece.signs if piece.inspected is not None else None,
    )


def _last_ph(batch: Batch) -> float | None:
    """The last pH that proves something; a later one that proves nothing still counts where it speaks against."""
    if not batch.proven_phs or batch.last_ph is None:
        return None
    return max(batch.proven_phs[-1], batch.last_ph)


def ingoing_nitrite_ppm(batch: Batch) -> float | None:
    """As sodium nitrite on the green weight, by the way it was cured."""
    known = known_cure(batch)
    return None if known is None else known.nitrite_ppm


def _water_activity(batch: Batch, piece: Piece) -> tuple[float | None, bool]:
    """The measurement made nearest to this piece's dryness, its own or a batch-mate's, and whether it was a mate's.

    A sample that had lost more than this piece now has proves nothing about it, so it does not count.
    """
    loss = piece.proven_loss
    if loss is None:
        return (piece.activities[-1].water_activity, False) if piece.activities else (None, False)
    usable = [
        (activity.loss, mate.id == piece.id, activity.water_activity)
        for mate in batch.pieces
        for activity in mate.activities
        if activity.loss <= loss
    ]
    if not usable:
        return None, False
    _, own, water_activity = max(usable)
    return water_activity, not own
