"""Evidence that contradicts itself: two readings that cannot both be true, or one that no meat gives.

It is asked about, never averaged away and never dropped: until it is corrected or measured again the piece is held.
The bounds are common practice; no published source, and wide on purpose: what they stop is a slip, not a poor day.
"""

from __future__ import annotations

from collections.abc import Sequence

from attrs import frozen

from core.ferment.crossing import RISES_AFTER_S
from core.meat import MOST_LOSS_A_DAY
from core.quantities import FRACTION, LOSS, PARTS_PER_MILLION, PH, WATER_ACTIVITY, Amount
from core.release.evidence import BELIEVABLE_ACTIVITY, MEAT_PH, SLACK, Evidence
from core.sentence import Message, Sentence
from core.sources import COMMON_PRACTICE
from core.verdict import Reason

RISEN = 0.01
"""Of the start weight: a scale's error, or a damp night."""
ACTIVITY_ERROR = 0.03
"""Two samples of a batch differ by as much, by the meter and by where they were cut."""
ACTIVITY_FALL = 1.5
"""Water activity for each whole of the start weight lost, at the very end of drying; at first it is a tenth of it."""
DRIEST_AT_FIRST, DRIEST_SLOPE = 0.92, 0.7
WETTEST_AT_FIRST, WETTEST_SLOPE = 0.99, 0.1
"""Water activity that belongs to a loss lies between two lines that fall from these."""
PH_FALL = 0.3
"""So much two pieces of a batch may differ. More of a fall, later than it falls of itself, is a slip or the meter."""
LEAST_PPM = 1.0
"""More than none and less than this nobody weighs; it is a fraction or a per-cent typed for parts per million."""
LEAST_SALT = 0.005

SERIES: dict[str, Message] = {
    "ph": "a pH was read that no meat has",
    "ph-fell": "its pH fell again, after the days in which it falls",
    "weight-rose": "it weighed more than at the weighing before",
    "weight-fell": "it lost more than a tenth of its start weight in a day",
    "activity-rose": "its water activity rose, or was higher in a drier piece",
    "activity-fell": "its water activity fell further than the loss explains",
    "activity": "a water activity was read that no meat has",
}
"""What only a series of readings shows, by its key."""
UNKNOWN_SERIES: Message = "a newer version says how"

_ONE_IS_WRONG = Sentence("Find out which is true, and correct or delete the other.")
NOTED: dict[str, tuple[Message, Sentence]] = {
    "cured-twice": ("Its cure is noted twice, and it has one.", _ONE_IS_WRONG),
    "salted-twice": ("It went into salt twice, by what is noted.", _ONE_IS_WRONG),
    "started-twice": ("Its fermentation began twice, by what is noted.", _ONE_IS_WRONG),
    "decided-twice": ("Two decisions about its fermentation are noted.", _ONE_IS_WRONG),
    "meat-twice": ("What meat it is was noted twice.", _ONE_IS_WRONG),
    "ahead": (
        "Something of it is noted for a time that is still to come.",
        Sentence("Look at the clock of the tablet, and correct the time of that entry."),
    ),
    "waited": (
        "It had left the cold more than a day before it was hung, and how warm it was then is not known.",
        Sentence("Correct the day it left the cold or was hung; where both are true, ask a food-safety authority."),
    ),
}
"""What only the entries themselves show, by its key: the sentence, and what settles it."""

_READ_AGAIN = Sentence("Measure again with a checked instrument, and correct the reading that was wrong.")
_WEIGH_AGAIN = Sentence("Check the tag and the scale, weigh it again, and correct the weight that was wrong.")
_CORRECT_CURE = Sentence("Look at the weighing sheet and correct the cure.")


def contradictions(evidence: Evidence) -> tuple[Reason, ...]:
    """One reason each, neither met nor unmet: which of the two readings is true nobody can tell from them."""
    return (
        *_of_series(evidence.contradictions),
        *_of_ph(evidence),
        *_of_weight(evidence),
        *_of_activity(evidence),
        *_of_cure(evidence),
    )


def _asked(key: str, text: Sentence, settle: Sentence) -> Reason:
    return Reason(f"contradiction-{key}", text, None, COMMON_PRACTICE, settle)


def _of_series(keys: Sequence[str]) -> list[Reason]:
    weights = ("weight-rose", "weight-fell")
    return [
        _asked(key, Sentence(NOTED[key][0]), NOTED[key][1])
        if key in NOTED
        else _asked(
            key,
            Sentence(
                "What was noted contradicts itself: {how}.",
                {"how": Sentence(SERIES.get(key, UNKNOWN_SERIES))},
            ),
            _WEIGH_AGAIN if key in weights else _READ_AGAIN,
        )
        for key in keys
    ]


def _of_ph(evidence: Evidence) -> list[Reason]:
    least, most = MEAT_PH[evidence.style]
    lowest, last = evidence.lowest_ph, evidence.last_ph
    reasons: list[Reason] = []
    for key, ph in (("lowest", lowest), ("last", last)):
        if ph is not None and not least <= ph <= most:
            amounts = {"ph": Amount(ph, PH), "least": Amount(least, PH), "most": Amount(most, PH)}
            text = Sentence("A pH of {ph} is not that of such meat, {least} to {most}.", amounts)
            reasons.append(_asked(f"{key}-ph", text, _READ_AGAIN))
    if lowest is not None and last is not None and lowest > last + SLACK:
        text = Sentence(
            "The lowest pH, {lowest}, is above the latest, {last}.",
            {"lowest": Amount(lowest, PH), "last": Amount(last, PH)},
        )
        reasons.append(_asked("lowest-above-last", text, _READ_AGAIN))
    return reasons


def _of_weight(evidence: Evidence) -> list[Reason]:
    loss, days = evidence.loss, evidence.days_hung
    if loss is None or days is None or days < 0 or not loss > MOST_LOSS_A_DAY * max(days, 1.0) + SLACK:
        return []
    text = Sentence(
        "It lost {loss} sooner than meat can, which is at most {most} a day.",
        {"loss": Amount(loss, LOSS), "most": Amount(MOST_LOSS_A_DAY, LOSS)},
    )
    return [_asked("loss-too-fast", text, _WEIGH_AGAIN)]


def _of_activity(evidence: Evidence) -> list[Reason]:
    activity, loss = evidence.water_activity, evidence.loss
    if activity is None:
        return []
    if not BELIEVABLE_ACTIVITY[0] <= activity <= BELIEVABLE_ACTIVITY[1]:
        text = Sentence("A water activity of {activity} is not that of meat.", {"activity": _activity(activity)})
        return [_asked("activity", text, _READ_AGAIN)]
    measured_at = loss if evidence.activity_loss is None else evidence.activity_loss
    if loss is None or measured_at is None or measured_at < 0:  # a weight that rose is asked about by itself
        return []
    amounts = {"activity": _activity(activity), "loss": Amount(measured_at, LOSS), "own": Amount(loss, LOSS)}
    if measured_at > loss + SLACK:
        text = Sentence("The piece that was measured had lost {loss}, more than this one, {own}.", amounts)
        return [_asked("drier-sample", text, Sentence("Measure the water activity of this piece, or of a wetter one."))]
    if DRIEST_AT_FIRST - DRIEST_SLOPE * measured_at <= activity <= WETTEST_AT_FIRST - WETTEST_SLOPE * measured_at:
        return []
    return [_asked("activity-for-loss", Sentence("{activity} does not fit a loss of {loss}.", amounts), _READ_AGAIN)]


_NO_DOSE: dict[str, Message] = {
    "nitrite": "{made} of nitrite is no dose that anybody weighs.",
    "nitrate": "{made} of nitrate is no dose that anybody weighs.",
}


def _of_cure(evidence: Evidence) -> list[Reason]:
    reasons: list[Reason] = []
    for key, ppm in (("nitrite", evidence.ingoing.nitrite_ppm), ("nitrate", evidence.ingoing.nitrate_ppm)):
        if ppm is not None and 0 < ppm < LEAST_PPM * (1 - SLACK):
            amounts = {"made": Amount(ppm * 1e-6, PARTS_PER_MILLION)}
            reasons.append(_asked(key, Sentence(_NO_DOSE[key], amounts), _CORRECT_CURE))
    if evidence.salt is not None and 0 < evidence.salt < LEAST_SALT * (1 - SLACK):
        text = Sentence("{salt} of salt is no dose that anybody weighs.", {"salt": Amount(evidence.salt, FRACTION)})
        reasons.append(_asked("salt", text, _CORRECT_CURE))
    return reasons


def _activity(value: float) -> Amount:
    return Amount(value, WATER_ACTIVITY)


@frozen
class Weighed:
    """at_days: since it was hung. mass_kg: corrected."""

    at_days: float
    mass_kg: float


@frozen
class Sample:
    """loss: of the piece that was measured, by then."""

    loss: float
    water_activity: float


def in_weights(start_kg: float, weighed: Sequence[Weighed]) -> tuple[str, ...]:
    """The keys of what a piece's weighings, oldest first, contradict. start_kg: as it was hung, at 0 days."""
    steps = list(zip([Weighed(0.0, start_kg), *weighed], weighed, strict=False))
    rose = any(after.mass_kg - before.mass_kg > RISEN * start_kg for before, after in steps)
    fell = any(
        before.mass_kg - after.mass_kg
        > MOST_LOSS_A_DAY * start_kg * max(after.at_days - before.at_days, 1.0) + SLACK * start_kg
        for before, after in steps
    )
    return (*(("weight-rose",) if rose else ()), *(("weight-fell",) if fell else ()))


def in_samples(samples: Sequence[Sample]) -> tuple[str, ...]:
    """The same of the samples of a batch that bear on one piece."""
    low, high = BELIEVABLE_ACTIVITY
    ordered = sorted(samples, key=lambda each: each.loss)
    pairs = [(wet, dry) for at, wet in enumerate(ordered) for dry in ordered[at + 1 :]]
    rose = any(dry.water_activity - wet.water_activity > ACTIVITY_ERROR + SLACK for wet, dry in pairs)
    fell = any(
        wet.water_activity - dry.water_activity > ACTIVITY_ERROR + ACTIVITY_FALL * (dry.loss - wet.loss) + SLACK
        for wet, dry in pairs
    )
    unreal = any(not low <= each.water_activity <= high for each in samples)
    found = {"activity-rose": rose, "activity-fell": fell, "activity": unreal}
    return tuple(key for key, is_there in found.items() if is_there)


def in_phs(style_phs: tuple[float, float], phs: Sequence[float]) -> tuple[str, ...]:
    """The same of the pHs of a batch. style_phs: what its style can have."""
    low, high = style_phs
    return ("ph",) if any(not low <= ph <= high for ph in phs) else ()


def in_late_phs(at_s: float, before: float, last: float) -> tuple[str, ...]:
    """The same of the last two pHs of a batch. at_s: of the one before, from the start of the clock.

    A second low one, after the last, clears it up.
    """
    return ("ph-fell",) if at_s >= RISES_AFTER_S and before - last > PH_FALL + SLACK else ()
