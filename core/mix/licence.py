"""A licensed exception: which limit it lifts, how far, and the ceiling that no exception moves."""

from __future__ import annotations

from attrs import frozen

from core.mix.cure import PPM, CureMix
from core.mix.ingoing import Ingoing, ingoing_of
from core.mix.ions import Substance
from core.mix.limit_check import LimitCheck, check_limits, over
from core.mix.limits import LIMITS, US_FINISHED_PPM, within
from core.mix.rule import DRY, Limited, Method
from core.mix.rules import Curing
from core.quantities import PARTS_PER_MILLION, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import CFR_424_21C, US_PICKLE_NITRATE, Source

LIFTED: dict[str, Message] = {
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "both": "nitrite and nitrate together, where the rules count them so",
}
"""What an exception may be for: the substances of the rows that it can lift."""


@frozen
class Licence:
    """An exception on record for one batch. rule: the text it stands on, title and section.

    most_ppm: its own figure, counted as the row it lifts counts; None in an older record, which then lifts nothing.
    """

    why: str
    authority: str
    decided_by: str
    rule: str = ""
    substance: Limited | None = None
    most_ppm: float | None = None

    @property
    def words(self) -> Sentence:
        """In one sentence: "A trial (letter 12; decided by Ana)."."""
        told = {"why": self.why, "authority": self.authority, "who": self.decided_by}
        return Sentence("{why} ({authority}; decided by {who}).", told)

    @property
    def names_its_figure(self) -> bool:
        return bool(self.rule.strip()) and self.substance is not None and self.most_ppm is not None

    def is_for(self, held: LimitCheck) -> bool:
        """Whether it speaks of this row, however high its figure."""
        return self.names_its_figure and self.substance == held.rule.substance

    def lifts(self, held: LimitCheck) -> bool:
        """Whether the row is passed by its leave: at most its own figure."""
        return self.is_for(held) and self.most_ppm is not None and within(held.ppm, self.most_ppm)


@frozen
class Ceiling:
    """ppm of the sodium salt on the green weight, whatever the rules."""

    substance: Substance
    most_ppm: float
    words: Message
    source: Source


WET_NITRATE: Message = "its highest figure for this way of curing, from memory"


def ceilings(method: Method) -> tuple[Ceiling, Ceiling]:
    """Above these no exception lifts anything, whatever the rules: our own reading of the highest figures in 9 CFR
    424.21(c). A dose within its own rules needs no exception, and is not held to them.

    Nitrite: where all of it stays in the meat, the 200 ppm that the finished product may hold; rubbed on, of which part
    falls off again, 1 oz to 100 lb, the highest figure of any row. Nitrate: the highest row for the method.
    """
    dry = method in DRY
    nitrite = Ceiling(
        "nitrite",
        LIMITS[method].nitrite_ppm if dry else US_FINISHED_PPM,
        "1 oz to 100 lb, its highest figure" if dry else "its limit for the finished product",
        CFR_424_21C,
    )
    wet_nitrate = method not in (*DRY, "comminuted")
    nitrate = Ceiling(
        "nitrate",
        LIMITS[method].nitrate_ppm,
        WET_NITRATE if wet_nitrate else "its highest figure for this way of curing",
        US_PICKLE_NITRATE if wet_nitrate else CFR_424_21C,
    )
    return nitrite, nitrate


def over_ceiling(ingoing: Ingoing, method: Method) -> tuple[tuple[Ceiling, float], ...]:
    """The ceilings that are passed, each with the ppm that pass it."""
    made = (ingoing.nitrite_ppm, ingoing.nitrate_ppm)
    pairs = zip(ceilings(method), made, strict=True)
    return tuple((each, ppm) for each, ppm in pairs if ppm is not None and not within(ppm, each.most_ppm))


def require_allowed(
    charge: CureMix, how: Curing, licence: Licence | None, *, field: str, each_kilogram: bool = False
) -> None:
    """Guard: raises OutOfRange on the field for what neither the rules nor the exception on record allow, and for what
    no exception allows. each_kilogram: as in `held.over`."""
    over_limit = [held for held in check_limits(charge, how) if not held.within]
    for held in over_limit:
        if licence is None or not licence.lifts(held):
            raise _beyond(charge, how, held, licence, field, each_kilogram)
    for ceiling, ppm in over_ceiling(ingoing_of(charge, how.method), how.method) if over_limit else ():
        raise OutOfRange(
            field,
            Sentence(
                "{made} of {name}, counted as the sodium salt on the green weight, is too much. No exception goes "
                "above {most} (9 CFR 424.21(c), {words}).",
                {
                    "made": _ppm(ppm),
                    "name": Sentence(ceiling.substance),
                    "most": _ppm(ceiling.most_ppm),
                    "words": Sentence(ceiling.words),
                },
            ),
        )


def _beyond(
    charge: CureMix, how: Curing, held: LimitCheck, licence: Licence | None, field: str, each_kilogram: bool
) -> OutOfRange:
    refusal = over(charge, how, held, field, each_kilogram=each_kilogram)
    if licence is None:
        return refusal
    if not licence.names_its_figure:
        told = {"refusal": refusal.said, "more": Sentence(NO_FIGURE)}
        return OutOfRange(refusal.field, Sentence("{refusal} {more}", told))
    if not licence.is_for(held):
        return refusal
    name = "nitrite and nitrate" if licence.substance == "both" else licence.substance or "both"
    return OutOfRange(
        field,
        Sentence(
            "{made} of {name} is too much. The exception on record allows {most} ({rule}).",
            {
                "made": _ppm(held.ppm),
                "name": Sentence(name),
                "most": _ppm(licence.most_ppm or 0.0),
                "rule": licence.rule,
            },
        ),
    )


NO_FIGURE = "The exception on record names no figure, so it lifts no limit: correct it and enter its rule and figure."


def _ppm(ppm: float) -> Amount:
    return Amount(ppm * PPM, PARTS_PER_MILLION)
