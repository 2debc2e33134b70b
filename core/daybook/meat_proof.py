"""What was noted of a batch's meat, and what its own entries tell besides, for the proof against trichinella."""

from __future__ import annotations

from datetime import datetime

import attrs

from core.daybook.batch import Batch
from core.daybook.facts.meat import MeatNoted
from core.daybook.piece import Piece
from core.release.cured_pork import MUSCLE
from core.release.cured_readings import Readings, readings_of
from core.release.frozen_pork import Frozen
from core.release.trichinella import UNKNOWN, Meat

OF_MEAT = {*MUSCLE, "sausage-7"}
"""Ways that count their salt on the meat; the others are held to the stricter basis, the whole raw mix."""


def meat_of(batch: Batch, piece: Piece, now: datetime, salt: float | None, mixture: float) -> Meat:
    """salt: to the green weight. mixture: the raw mixture to the green weight."""
    noted = batch.meat
    if noted is None:
        return UNKNOWN
    return Meat(
        noted.kind,
        noted.proof,
        noted.lot,
        noted.by,
        freezing=Frozen(noted.measured, noted.warmest_c, noted.lasted_s, noted.thick_m, noted.law),
        method=noted.method,
        readings={**readings_of(attrs.asdict(noted)), **_own(batch, piece, now, noted, salt, mixture)},
    )


def _own(batch: Batch, piece: Piece, now: datetime, noted: MeatNoted, salt: float | None, mixture: float) -> Readings:
    """What the batch itself tells: its salt and its days. A diameter as hung is the short way through: it counts only
    where it is more than the one that was noted, which goes by the girth; a colder reading while it hung counts."""
    own = {"dried_s": (now - piece.hung_at).total_seconds()}
    if batch.cured_at is not None:
        own["since_s"] = (now - batch.cured_at).total_seconds()
    if salt is not None:
        own["salted"] = salt if noted.method in OF_MEAT else salt / max(mixture, 1.0 + salt)
    if noted.dried_c is not None:
        read = (each.temperature_c for each in batch.readings if each.at >= piece.hung_at)
        own["dried_c"] = min(noted.dried_c, *(each for each in read if each is not None), noted.dried_c)
    if noted.across_m is not None:
        own["across_m"] = max(noted.across_m, piece.hung.diameter_m or 0.0)
    return own
