"""What is known of a piece when it is judged, and which readings can be believed at all."""

from __future__ import annotations

from attrs import frozen

from core.ferment.outcome import Outcome
from core.meat import Style
from core.mix.ingoing import Ingoing
from core.mix.licence import Licence
from core.mix.rule import WHOLE, Method
from core.mix.rules import Curing
from core.release.salted import Salted
from core.release.trichinella import UNKNOWN, Meat
from core.sentence import Message, Sentence

SIGNS: dict[str, Message] = {
    "smell": "a rotten, putrid or ammonia smell",
    "slime": "slime on the surface",
    "mould": "black, green, orange, red or pink mould",
    "gas": "swelling or gas pockets",
    "colour": "green or grey patches inside",
    "soft": "a soft, wet or sour core",
    "pests": "flies, maggots or mites",
}

MEAT_PH: dict[Style, tuple[float, float]] = {"fermented": (4.0, 7.0), "slow": (4.0, 7.0), "whole-muscle": (5.0, 7.0)}
"""Common practice; no published source: outside it the meter, the sample or the digit is at fault, or the meat is."""
BELIEVABLE_ACTIVITY = (0.5, 1.0)  # practice
SLACK = 1e-9

METHOD_OF: dict[Style, Method] = {"fermented": "comminuted", "slow": "comminuted", "whole-muscle": "dry-rub"}
"""The usual way of curing each kind: what an older entry means that names none."""
METHODS_OF: dict[Style, tuple[Method, ...]] = {
    "fermented": ("comminuted",),
    "slow": ("comminuted",),
    "whole-muscle": WHOLE,
}


NOTHING_KNOWN = Ingoing()


@frozen
class Evidence:
    """What is known of a piece. None means not known.

    loss, target_loss: share of the start weight. water_activity: of this piece, or (activity_from_mate) of one of the
    same batch that had lost no more; activity_loss: what the measured piece had lost by then, None where it is what
    this one has lost. ingoing: the cure. how: the rules it is held to. licence: the exception on record. salt: all of
    it, as a share of the meat. signs: keys of SIGNS; empty where somebody looked and found nothing, None where nobody
    looked. fermentation: what became of the degree-hours to pH 5.3, or of a slow style's warm days; of a whole muscle
    only what speaks against it. salted: a whole muscle's time in salt. contradictions: keys of
    `contradictions.SERIES` and `NOTED`, found in the readings and the entries these were taken from. meat: what it is,
    and what proves it free of trichinella. likely_activity: between what its salt and its loss let one expect, no
    evidence. weak: what stands, but on a check that is old or was never made.
    """

    style: Style
    loss: float | None = None
    target_loss: float | None = None
    lowest_ph: float | None = None
    last_ph: float | None = None
    water_activity: float | None = None
    activity_from_mate: bool = False
    days_hung: float | None = None
    least_days: float | None = None
    ingoing: Ingoing = NOTHING_KNOWN
    how: Curing | None = None
    licence: Licence | None = None
    salt: float | None = None
    signs: tuple[str, ...] | None = None
    fermentation: Outcome | None = None
    salted: Salted | None = None
    activity_loss: float | None = None
    contradictions: tuple[str, ...] = ()
    meat: Meat = UNKNOWN
    likely_activity: tuple[float, float] | None = None
    weak: tuple[Sentence, ...] = ()

    @property
    def method(self) -> Method | None:
        return None if self.how is None else self.how.method

    @property
    def ferments(self) -> bool:
        """Whether acid may keep it: only a style that is meant to sour."""
        return self.style == "fermented"

    def believable_lowest_ph(self) -> float | None:
        readings = (_believable(self.lowest_ph, MEAT_PH[self.style]), self.believable_last_ph())
        return min((ph for ph in readings if ph is not None), default=None)

    def believable_last_ph(self) -> float | None:
        return _believable(self.last_ph, MEAT_PH[self.style])

    def keeping_ph(self) -> float | None:
        """The pH that helps to keep it; None of a style that rests on its water activity alone."""
        return self.believable_last_ph() if self.ferments else None

    def activity(self) -> float | None:
        return _believable(self.water_activity, BELIEVABLE_ACTIVITY)


def _believable(value: float | None, between: tuple[float, float]) -> float | None:
    """A reading no meat gives is no evidence: it counts as missing, and is asked about besides."""
    return value if value is not None and between[0] <= value <= between[1] else None
