"""Is this piece ready? The evidence is weighed reason by reason; missing evidence means hold, and it says which.

It informs; it does not approve food.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.dry.shrink import MOST_LOSS
from core.mix.limits import BOTULISM_LEAST_PPM, LIMITS, Method, within
from core.quantities import DAYS, LOSS, PARTS_PER_MILLION, PH, WATER_ACTIVITY, Amount
from core.refusals import OutOfRange
from core.release.stability import rests_on_equality, shelf_stable, too_dry_for_listeria
from core.sources import (
    CFR_424_21C,
    COMMON_PRACTICE,
    EU_LISTERIA,
    FSRE_ACID,
    FSRE_STABILITY,
    GD_2023_BOTULISM,
    USDA_LEAN_WATER,
    Source,
)
from core.verdict import Reason, Verdict
from core.working import Step

Style = Literal["fermented", "whole-muscle"]
STYLES = {"fermented": "fermented sausage", "whole-muscle": "whole muscle"}
SIGNS = {
    "smell": "a rotten, putrid or ammonia smell",
    "slime": "slime on the surface",
    "mould": "black, green, orange, red or pink mould",
    "gas": "swelling or gas pockets",
    "colour": "green or grey patches inside",
    "soft": "a soft, wet or sour core",
    "pests": "flies, maggots or mites",
}

ACID_PH = 5.3  # FSRE-2005 p. 164: fermentation is judged to this pH
KEEP_COLD_ABOVE = 0.85  # JERKY-2014 pp. 15–16: critical limit where air reaches the product
BOTULISM_ACTIVITY = 0.92  # FSIS-GD-2023-0002 p. 38: this water activity or less, or 50 ppm of nitrite
BELIEVABLE_PH = (3.5, 8.0)  # practice: outside it the meter, not the meat, is at fault
BELIEVABLE_ACTIVITY = (0.5, 1.0)  # practice
SLACK = 1e-9

METHOD_OF: dict[Style, Method] = {"fermented": "comminuted", "whole-muscle": "dry-rub"}


@frozen
class Evidence:
    """What is known of a piece. None means not known.

    loss, target_loss: share of the start weight. water_activity: of this piece, or (activity_from_mate) of one of the
    same batch that had lost no more. nitrite_ppm: going in, as sodium nitrite; 0 where none was used. signs: keys of
    SIGNS; empty where somebody looked and found nothing, None where nobody looked.
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
    nitrite_ppm: float | None = None
    signs: tuple[str, ...] | None = None


def judge(evidence: Evidence) -> Verdict:
    """Ready, hold or discard, with the reasons in the order in which they should be seen to.

    Never better than the weakest evidence. Raises OutOfRange on "style" for a style it does not know.
    """
    if evidence.style not in STYLES:
        raise OutOfRange("style", f"The kind must be {' or '.join(STYLES)}.")
    nitrite = _nitrite_limit(evidence)
    too_much = nitrite.met is False  # then nothing else matters before it; unknown, it can be looked up last
    reasons = (
        *_signs(evidence.signs),
        *([nitrite] if too_much else []),
        *([_acid(evidence)] if evidence.style == "fermented" else []),
        _weight(evidence),
        *([_days(evidence)] if evidence.least_days is not None else []),
        *_keeps(evidence),
        _botulism(evidence),
        *([] if too_much else [nitrite]),
    )
    return Verdict(reasons, _when_ready(evidence), _cautions(evidence))


def _signs(signs: tuple[str, ...] | None) -> tuple[Reason, ...]:
    look = Step("Look at it, smell it and squeeze it, cut one open, and note what you find.")
    if signs is None:
        return (Reason("signs", Step("Nobody has noted a look, a sniff and a squeeze."), None, COMMON_PRACTICE, look),)
    if not signs:
        return (Reason("signs", Step("No sign of spoilage was found."), True, COMMON_PRACTICE, look),)
    throw = Step(
        "Throw it away, well wrapped, and do not taste it. Clean what it touched and look closely at its neighbours. "
        "When in doubt, throw it out."
    )
    return tuple(
        Reason(
            f"sign-{sign}", Step(f"A sign of spoilage: {SIGNS.get(sign, sign)}."), False, COMMON_PRACTICE, throw, True
        )
        for sign in signs
    )


def _nitrite_limit(evidence: Evidence) -> Reason:
    limit = LIMITS[METHOD_OF[evidence.style]]
    ppm = evidence.nitrite_ppm
    most = Amount(limit.nitrite_ppm * 1e-6, PARTS_PER_MILLION)
    if ppm is None or not ppm >= 0:
        return Reason(
            "nitrite",
            Step("The nitrite that went in is not known."),
            None,
            CFR_424_21C,
            Step("Find the weight of the curing salt and of the meat on the weighing sheet, and enter the nitrite."),
        )
    met = within(ppm, limit.nitrite_ppm)
    words = "is within" if met else "is over"
    return Reason(
        "nitrite",
        Step(
            f"Nitrite going in, {{nitrite}}, {words} the limit for {limit.meat}, {{most}}.",
            {"nitrite": Amount(ppm * 1e-6, PARTS_PER_MILLION), "most": most},
        ),
        met,
        CFR_424_21C,
        Step("Do not eat it. Ask a food-safety authority or a licensed processor, with the weighing sheet in hand."),
    )


def _acid(evidence: Evidence) -> Reason:
    lowest = _lowest_ph(evidence)
    limit = Amount(ACID_PH, PH)
    if lowest is None:
        text, met = Step("No believable pH was noted; it must have come down to {limit}.", {"limit": limit}), None
        settle = Step("Measure the pH of one piece.")
        return Reason("acid", text, met, FSRE_ACID, settle)
    met = lowest <= ACID_PH
    return Reason(
        "acid",
        Step(
            f"The lowest pH, {{lowest}}, {'came down' if met else 'did not come down'} to {{limit}}.",
            {"lowest": Amount(lowest, PH), "limit": limit},
        ),
        met,
        FSRE_ACID,
        Step(
            "Measure again with a checked meter. If it never came down to {limit}, drying does not undo what may have "
            "grown: ask a food-safety authority before anybody eats it.",
            {"limit": limit},
        ),
    )


def _weight(evidence: Evidence) -> Reason:
    loss, target = evidence.loss, evidence.target_loss
    weigh_again = Step("Check the tag and the scale, and weigh it again.")
    if loss is None or loss != loss:
        return Reason("loss", Step("Its loss is not known."), None, COMMON_PRACTICE, Step("Weigh the piece."))
    lost = Amount(loss, LOSS)
    if loss < 0:
        text = Step("It weighs more than at the start.")
        return Reason("loss", text, False, COMMON_PRACTICE, weigh_again)
    if loss > MOST_LOSS:
        text = Step("It has lost {lost}, more than the water in meat.", {"lost": lost})
        return Reason("loss", text, False, USDA_LEAN_WATER, weigh_again)
    if target is None or not target > 0:
        text = Step("It has lost {lost}; no loss to reach was set.", {"lost": lost})
        return Reason("loss", text, None, COMMON_PRACTICE, Step("Set the loss it must reach."))
    met = loss >= target - SLACK
    amounts = {"lost": lost, "target": Amount(target, LOSS)}
    text = Step(f"It has lost {{lost}}; {'enough' if met else 'not yet enough'} for a target of {{target}}.", amounts)
    return Reason("loss", text, met, COMMON_PRACTICE, Step("Let it hang until it has lost {target}.", amounts))


def _days(evidence: Evidence) -> Reason:
    least_days = evidence.least_days or 0.0
    least = Amount(least_days * 86400, DAYS)
    if evidence.days_hung is None:
        text = Step("How long it has hung is not known; {least} were set.", {"least": least})
        return Reason("days", text, None, COMMON_PRACTICE, Step("Note the day it was hung."))
    met = evidence.days_hung >= least_days - SLACK
    return Reason(
        "days",
        Step("It has hung {hung} of {least}.", {"hung": Amount(evidence.days_hung * 86400, DAYS), "least": least}),
        met,
        COMMON_PRACTICE,
        Step("Let it hang until {least} are over.", {"least": least}),
    )


def _keeps(evidence: Evidence) -> tuple[Reason, Reason]:
    """Both published rules. Unmeasured water activity is never made up for by acid."""
    activity, ph = _activity(evidence), _believable(evidence.last_ph, BELIEVABLE_PH)
    if activity is None:
        text = Step("No believable water activity of it, or of a batch-mate no drier, was noted.")
        settle = Step("Measure one piece's water activity.")
        return (
            Reason("shelf-stable", text, None, FSRE_STABILITY, settle),
            Reason("listeria", text, None, EU_LISTERIA, settle),
        )
    amounts = {"activity": Amount(activity, WATER_ACTIVITY)}
    measured = "Water activity {activity}" + (" of a batch-mate" if evidence.activity_from_mate else "")
    if ph is not None:
        amounts["ph"] = Amount(ph, PH)
        measured += " and pH {ph}"
    settle = Step("Let it dry further and measure the water activity again.")
    verb = "are" if ph is not None else "is"

    def reason(key: str, met: bool, end: str, source: Source) -> Reason:
        return Reason(
            key, Step(f"{measured} {verb} {'' if met else 'not '}low enough {end}.", amounts), met, source, settle
        )

    return (
        reason("shelf-stable", shelf_stable(ph, activity), "for a shelf-stable dried meat", FSRE_STABILITY),
        reason("listeria", too_dry_for_listeria(ph, activity), "to keep Listeria from growing", EU_LISTERIA),
    )


def _botulism(evidence: Evidence) -> Reason:
    """Needs enough nitrite or enough dryness; one of the two that holds is enough."""
    ppm, activity = evidence.nitrite_ppm, _activity(evidence)
    cured = ppm is not None and ppm >= BOTULISM_LEAST_PPM * (1 - SLACK)
    dry = activity is not None and activity <= BOTULISM_ACTIVITY
    amounts = {
        "least": Amount(BOTULISM_LEAST_PPM * 1e-6, PARTS_PER_MILLION),
        "most": Amount(BOTULISM_ACTIVITY, WATER_ACTIVITY),
    }
    met = True if cured or dry else None if ppm is None or activity is None else False
    said = "has" if met else "lacks" if met is False else "is not known to have"
    return Reason(
        "botulism",
        Step(f"Against botulism it {said} {{least}} of nitrite or a water activity of at most {{most}}.", amounts),
        met,
        GD_2023_BOTULISM,
        Step("Let it dry to a water activity of {most}, or ask a food-safety authority.", amounts),
    )


def _lowest_ph(evidence: Evidence) -> float | None:
    readings = (_believable(evidence.lowest_ph, BELIEVABLE_PH), _believable(evidence.last_ph, BELIEVABLE_PH))
    return min((ph for ph in readings if ph is not None), default=None)


def _activity(evidence: Evidence) -> float | None:
    return _believable(evidence.water_activity, BELIEVABLE_ACTIVITY)


def _believable(value: float | None, between: tuple[float, float]) -> float | None:
    """A reading no meat gives is no evidence: it counts as missing."""
    return value if value is not None and between[0] <= value <= between[1] else None


def _when_ready(evidence: Evidence) -> Step:
    cold = evidence.water_activity is None or evidence.water_activity > KEEP_COLD_ABOVE
    where = "in the refrigerator" if cold else "cool, dry and covered"
    return Step(f"Take it down, write the day and the verdict on its tag, and keep it {where}.")


def _cautions(evidence: Evidence) -> tuple[str, ...]:
    said = [
        "This informs; it does not approve food. Local law and a food-safety authority come before it.",
        "It does not cover trichinella in pork or game: use meat that was tested, or frozen or cured by an official "
        "method, and ask a food-safety authority.",
    ]
    if evidence.style == "fermented":
        said.append("Degree-hours, how fast the pH came down for the warmth, are not judged here.")
        said.append(
            "These limits keep bacteria from growing; they do not prove that Salmonella, E. coli or Listeria were "
            "killed (FSIS-GD-2023-0002, p. 54)."
        )
    activity, ph = _activity(evidence), _believable(evidence.last_ph, BELIEVABLE_PH)
    if activity is None or activity > KEEP_COLD_ABOVE:
        said.append(
            "Keep it refrigerated: only at a water activity of 0.85 or less does it keep in air without cold (FSIS)."
        )
    if activity is None:
        return tuple(said)
    if evidence.activity_from_mate:
        said.append(
            "The water activity is that of a piece of the same batch that had lost no more; thicker pieces dry slower."
        )
    if shelf_stable(ph, activity) != too_dry_for_listeria(ph, activity):
        said.append(
            "The US (FSRE-2005) and the EU (Reg. (EC) 2073/2005) rule differ on this piece; the stricter one counts."
        )
    if rests_on_equality(ph, activity):
        said.append('The EU limit is met exactly, with nothing to spare; one copy of that rule prints "less than".')
    return tuple(said)
