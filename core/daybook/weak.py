"""Readings that a verdict rests on and that are weak: on an instrument whose check was old, or on none that is kept."""

from __future__ import annotations

from core.daybook.batch import Batch
from core.daybook.corrections.readings import CorrectedReading
from core.daybook.piece import Piece
from core.quantities import DAYS, Amount
from core.sentence import Message, Sentence

NEITHER: Message = "Its pH and its weight were read on instruments without a check on record."
NO_METER: Message = "Its pH was read on a meter without a check on record."
NO_SCALE: Message = "Its weight was read on a scale without a check on record."
OLD: Message = "{what} was read on {instrument}, {days} after its last check; one is due every {every}."


def weak_instruments(batch: Batch, piece: Piece) -> tuple[Sentence, ...]:
    """Of the last pH and the last weight that count."""
    phs = [each for each in batch.phs if each.ph_proves]
    of_ph = _said(phs[-1].corrected.of("ph"), "Its pH", NO_METER) if phs and batch.ferments else None
    weighed = [each for each in piece.weighings if each.proves]
    of_weight = _said(weighed[-1].reading, "Its weight", NO_SCALE) if weighed else None
    found = tuple(each for each in (of_ph, of_weight) if each is not None)
    return (Sentence(NEITHER),) if [each.text for each in found] == [NO_METER, NO_SCALE] else found


def _said(reading: CorrectedReading | None, what: Message, unchecked: Message) -> Sentence | None:
    if reading is None or reading.check is None:
        return Sentence(unchecked)
    since, every = reading.at - reading.check.at, reading.instrument.check_every
    if since <= every:
        return None
    told = {"days": Amount(since.total_seconds(), DAYS), "every": Amount(every.total_seconds(), DAYS)}
    return Sentence(OLD, {"what": Sentence(what), "instrument": reading.instrument.name, **told})
