"""What the daybook knows of a piece, handed to the judge."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.curing import Cured, known_cure
from core.daybook.dated import Activity
from core.daybook.drying import mix_of
from core.daybook.facts.batch import CureWeighed
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun
from core.daybook.facts.meat import MeatNoted
from core.daybook.facts.salting import SaltingBegun
from core.daybook.fermenting import clock_start, fermentation_of, outcome_of
from core.daybook.meat_proof import meat_of
from core.daybook.piece import Piece
from core.daybook.salting import salted_of
from core.daybook.weak import weak_instruments
from core.dry.activity import activity_at, may_miss
from core.dry.pace import MIDDLING, MUSCLE
from core.ferment.outcome import Outcome
from core.mix.ingoing import Ingoing
from core.refusals import OutOfRange
from core.release.contradictions import Sample, in_late_phs, in_phs, in_samples
from core.release.evidence import MEAT_PH
from core.release.readiness import Evidence, judge
from core.units import DAY_S
from core.verdict import Verdict

LOOK_STANDS = timedelta(days=7)
"""A look tells of the piece that was weighed up to so long after it. Common practice; no published source."""
LOOK_LASTS = timedelta(days=30)
"""And of a piece that nobody weighed since, no longer than so. Our own choice; no published source."""


def verdicts(batch: Batch, now: datetime) -> dict[str, Verdict]:
    """The verdict of every piece still hanging, by its id."""
    shared = _shared(batch, now)
    return {piece.id: judge(_evidence(batch, piece, now, shared)) for piece in batch.hanging}


def evidence_for(batch: Batch, piece: Piece, now: datetime) -> Evidence:
    """Everything logged that bears on the verdict. Water activity may come from a batch-mate that was no drier.

    Readings are corrected by the checks of their instruments; one on an instrument that had failed is no evidence.
    """
    return _evidence(batch, piece, now, _shared(batch, now))


@frozen
class _Shared:
    """What all pieces of a batch have in common: read once, for a batch's log is long. doubts: keys of what in it
    contradicts itself."""

    cure: Cured | None
    fermented: Outcome | None
    doubts: tuple[str, ...]


def _shared(batch: Batch, now: datetime) -> _Shared:
    fermented = _decided(batch) if batch.start.style == "whole-muscle" else outcome_of(batch, now)
    return _Shared(known_cure(batch), fermented, _doubtful_entries(batch, now))


def _evidence(batch: Batch, piece: Piece, now: datetime, shared: _Shared) -> Evidence:
    sample, from_mate = _sample(batch, piece)
    cure = shared.cure
    return Evidence(
        style=batch.start.style,
        loss=_loss(piece),
        target_loss=batch.start.target_loss,
        lowest_ph=batch.lowest_ph,
        last_ph=_last_ph(batch),
        water_activity=None if sample is None else sample.water_activity,
        activity_from_mate=from_mate,
        activity_loss=None if sample is None or piece.proven_loss is None else sample.loss,
        days_hung=(now - piece.hung_at).total_seconds() / DAY_S,
        least_days=None if batch.start.least_s is None else batch.start.least_s / DAY_S,
        ingoing=cure.ingoing if cure else Ingoing(),
        how=cure.how if cure else None,
        salt=cure.salt if cure else None,
        licence=cure.licence if cure else None,
        fermentation=shared.fermented,
        signs=_signs(piece, now),
        salted=salted_of(batch, piece) if batch.start.style == "whole-muscle" else None,
        contradictions=(*_contradictions(batch, piece), *shared.doubts, *_waited(batch, piece)),
        likely_activity=_likely(batch, piece),
        weak=weak_instruments(batch, piece),
        meat=meat_of(batch, piece, now, cure.salt if cure else None, cure.ingoing.mixture if cure else 1.0),
    )


def _likely(batch: Batch, piece: Piece) -> tuple[float, float] | None:
    """From a formula whose water and salt are known; a middling sausage tells nothing of this one."""
    mix = mix_of(batch)
    if mix in (MIDDLING, MUSCLE) or piece.proven_loss is None:
        return None
    try:
        worked_out = activity_at(mix, piece.proven_loss)
    except OutOfRange:
        return None
    below, above = may_miss(mix, piece.proven_loss)
    return worked_out - below, worked_out + above


def _loss(piece: Piece) -> float | None:
    """By the last weighing that proves something; a later one that proves nothing still counts where it shows less."""
    if piece.proven_loss is None or piece.loss is None:
        return None
    return min(piece.proven_loss, piece.loss)


def _signs(piece: Piece, now: datetime) -> tuple[str, ...] | None:
    """Whatever was ever found counts; that nothing was found, only of a look at the piece about as it is now."""
    if piece.inspected is None or piece.signs:
        return piece.signs or None
    return () if piece.inspected.entry.happened_at >= max(piece.weighed_at - LOOK_STANDS, now - LOOK_LASTS) else None


def _decided(batch: Batch) -> Outcome | None:
    """A whole muscle has no degree-hours; a decision that was noted of it speaks against it all the same."""
    deviation = fermentation_of(batch).deviation
    return None if deviation is None else Outcome("over", deviation=deviation)


def _contradictions(batch: Batch, piece: Piece) -> tuple[str, ...]:
    samples = [Sample(each.loss, each.water_activity) for each in _speaking(batch, piece)]
    return (
        *_ph_fell(batch),
        *in_phs(MEAT_PH[batch.start.style], batch.proven_phs),
        *piece.contradictory_weights,
        *in_samples(samples),
    )


ONCE = {
    CureWeighed: "cured-twice",
    SaltingBegun: "salted-twice",
    FermentationBegun: "started-twice",
    DeviationDecided: "decided-twice",
    MeatNoted: "meat-twice",
}
"""What happens to a batch once. Two tablets may each have noted it, and then nobody knows which entry is true."""
CLOCKS_DIFFER = timedelta(hours=1)
WAITS = timedelta(days=1)
"""Out of the cold so long and not yet hung: to drain and to dry off. Both are our own choice; no published source."""


def _doubtful_entries(batch: Batch, now: datetime) -> tuple[str, ...]:
    """Of the whole batch's log, its pieces' lines among it."""
    twice = [key for kind, key in ONCE.items() if len(batch.lines_by_kind.get(kind, ())) > 1]
    ahead = bool(batch.lines) and batch.lines[-1].entry.happened_at > now + CLOCKS_DIFFER  # they are in order of time
    return (*twice, *(("ahead",) if ahead else ()))


def _waited(batch: Batch, piece: Piece) -> tuple[str, ...]:
    out_at = None if batch.salting is None else batch.salting.ended_at
    return ("waited",) if out_at is not None and piece.hung_at - out_at > WAITS else ()


def _ph_fell(batch: Batch) -> tuple[str, ...]:
    proven = [(each.at, each.ph) for each in batch.phs if each.ph is not None and each.ph_proves]
    if len(proven) < 2:
        return ()
    (before_at, before), (_, last) = proven[-2:]
    return in_late_phs((before_at - clock_start(batch)).total_seconds(), before, last)


def _last_ph(batch: Batch) -> float | None:
    """The last pH that proves something; a later one that proves nothing still counts where it speaks against."""
    if not batch.proven_phs or batch.last_ph is None:
        return None
    return max(batch.proven_phs[-1], batch.last_ph)


def _usable(batch: Batch, piece: Piece) -> list[tuple[bool, Activity]]:
    """Samples that bear on this piece, each with whether it is its own: all of its own, and of its batch-mates those
    that are known to have lost no more than this piece now has."""
    loss = piece.proven_loss
    return [
        (mate.id == piece.id, activity)
        for mate in batch.pieces
        for activity in mate.activities
        if mate.id == piece.id or (loss is not None and activity.most_loss is not None and activity.most_loss <= loss)
    ]


def _speaking(batch: Batch, piece: Piece) -> list[Activity]:
    """Samples that may speak against the one that counts: those that bear on the piece, and any of a batch-mate that
    is wetter all the same."""
    usable = [activity for _, activity in _usable(batch, piece)]
    sample, _ = _sample(batch, piece)
    return usable + [
        activity
        for mate in batch.pieces
        for activity in mate.activities
        if sample is not None and activity not in usable and activity.water_activity > sample.water_activity
    ]


def _sample(batch: Batch, piece: Piece) -> tuple[Activity | None, bool]:
    """The measurement made nearest to this piece's dryness, its own or a batch-mate's, and whether it was a mate's.

    A sample that had lost more than this piece now has proves nothing about it, so it does not count.
    """
    loss, samples = piece.proven_loss, _usable(batch, piece)
    if loss is None:
        return (piece.activities[-1], False) if piece.activities else (None, False)
    usable = [each for each in samples if each[1].loss <= loss]
    if not usable:
        return None, False
    own, sample = max(usable, key=lambda each: (each[1].loss, each[0], each[1].water_activity))
    return sample, not own
