"""What the daybook knows of a piece, handed to the judge."""

from __future__ import annotations

from datetime import datetime

from core.daybook.batch import Batch, Piece
from core.daybook.fermenting import outcome_of
from core.mix.cure import CuringSalt, nitrite_ppm
from core.refusals import OutOfRange
from core.release.readiness import Evidence

SECONDS_A_DAY = 86400.0


def evidence_for(batch: Batch, piece: Piece, now: datetime) -> Evidence:
    """Everything logged that bears on the verdict. Water activity may come from a batch-mate that was no drier.

    Readings are put right by the checks of their instruments; one on an instrument that had failed is no evidence.
    """
    activity, from_mate = _water_activity(batch, piece)
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
        nitrite_ppm=ingoing_nitrite_ppm(batch),
        cure_ppm=ingoing_cure_ppm(batch),
        salt=ingoing_salt(batch),
        fermentation=outcome_of(batch, now),
        signs=piece.signs if piece.inspected is not None else None,
    )


def _last_ph(batch: Batch) -> float | None:
    """The last pH that proves something; a later one that proves nothing still counts where it speaks against."""
    if not batch.proven_phs or batch.last_ph is None:
        return None
    return max(batch.proven_phs[-1], batch.last_ph)


def ingoing_nitrite_ppm(batch: Batch) -> float | None:
    cure = batch.cure
    if cure is None:
        return None
    try:
        salt = CuringSalt(cure.nitrite, cure.nitrate)
    except OutOfRange:  # no curing salt is like that: what went in is not known
        return None
    return nitrite_ppm(batch.meat_kg, cure.cure_kg, salt)


def ingoing_cure_ppm(batch: Batch) -> float | None:
    """Nitrite and nitrate together, as they were weighed."""
    nitrite = ingoing_nitrite_ppm(batch)
    if nitrite is None or batch.cure is None:
        return None
    return nitrite + batch.cure.cure_kg * batch.cure.nitrate / batch.meat_kg * 1e6


def ingoing_salt(batch: Batch) -> float | None:
    """All salt as a share of the meat; None where the plain salt was not noted."""
    cure = batch.cure
    if cure is None or cure.other_salt_kg is None:
        return None
    return (cure.other_salt_kg + cure.cure_kg * (1 - cure.nitrite - cure.nitrate)) / batch.meat_kg


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
