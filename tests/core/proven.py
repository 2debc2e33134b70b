"""A batch that soured, a piece of it that lost so much, and what is known of it."""

from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import (
    ActivityMeasured,
)
from tests.core.kitchen import DAY, NOON, Kitchen


def soured(kitchen: Kitchen, **begun: float) -> str:
    """A sausage, cured, and read until it was acid and a little after."""
    key = kitchen.begin(**begun)
    kitchen.cure(key)
    kitchen.tested(key)
    kitchen.read(key, None, at=0.5, temperature_c=20)
    kitchen.read(key, 5.6, at=1, temperature_c=20)
    kitchen.read(key, 4.9, at=2, temperature_c=20)
    kitchen.read(key, 5.0, at=3, temperature_c=20)
    return key


def piece_that_lost(kitchen: Kitchen, batch: str, tag: str, loss: float, activity: float | None = None) -> str:
    piece = kitchen.hang(batch, tag)
    kitchen.weigh(piece, 1 - loss, at=20)
    if activity is not None:
        kitchen.note(ActivityMeasured(activity), piece, at=20)
    return piece


def known(kitchen: Kitchen, batch: str, piece: str, day: float = 32.0):
    folded = kitchen.batch(batch)
    return evidence_for(folded, folded.piece(piece), NOON + day * DAY)
