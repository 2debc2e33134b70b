"""Is this piece ready? The evidence is weighed reason by reason; missing evidence means hold, and it says which.

It informs; it does not approve food.
"""

from __future__ import annotations

from core.ferment.outcome import reason as fermented_reason
from core.ferment.outcome import slow_reason
from core.ferment.slow import OWN_USE
from core.meat import ACID_PH, MOST_LOSS, STYLES, Style
from core.quantities import DAYS, LOSS, PH, Amount
from core.refusals import OutOfRange
from core.release.contradictions import contradictions
from core.release.cure_limits import exception_cautions, limit_reasons
from core.release.evidence import SIGNS, SLACK, Evidence
from core.release.growth import what_grows
from core.release.hurdles import (
    KEEP_COLD_ABOVE,
    botulism,
    dry_without_acid,
    keeps,
    rests_on_equality,
    shelf_stable,
    slow_hurdles,
    too_dry_for_listeria,
)
from core.release.keeping import keeping_rules
from core.release.killing import what_was_killed
from core.release.salted import UNKNOWN, salted_hurdles
from core.release.trichinella import trichinella
from core.sentence import Message, Said, Sentence, listed
from core.sources import COMMON_PRACTICE, FSRE_ACID, USDA_LEAN_WATER
from core.units import DAY_S
from core.verdict import Reason, Verdict

EDITION = "2026-12"
"""Of the rules a verdict is judged by: it stands in every verdict that is kept. Any change of a limit or of what is
asked for makes a new one."""
LEAST_LOSS: dict[Style, float] = {"fermented": 0.15, "slow": 0.25, "whole-muscle": 0.18}
"""Common practice; no published source, from memory: a semi-dry sausage loses about 15 %, a dry one 25 % or more; 18 %
is what a country ham must have lost. A lower target does not lower them."""


def judge(evidence: Evidence) -> Verdict:
    """Ready, hold or discard, with the reasons in the order in which they should be seen to.

    Never better than the weakest evidence. Raises OutOfRange on "style" for a style it does not know.
    """
    if evidence.style not in STYLES:
        raise OutOfRange("style", Sentence("The kind must be {kinds}.", {"kinds": listed(tuple(STYLES), "or")}))
    limits = limit_reasons(evidence)
    reasons = (
        *_signs(evidence.signs),
        *(
            each for each in limits if each.met is False
        ),  # nothing else matters before it; unknown, it is looked up last
        *contradictions(evidence),
        *_growth(evidence),
        _weight(evidence),
        _days(evidence),
        *keeps(evidence),
        botulism(evidence),
        trichinella(evidence.meat),
        *(each for each in limits if each.met is not False),
    )
    beside = (*keeping_rules(evidence), *what_grows(evidence), *what_was_killed())
    is_ready = all(each.met for each in reasons)
    return Verdict(reasons, _when_ready(evidence), _cautions(evidence, is_ready), beside)


def _signs(signs: tuple[str, ...] | None) -> tuple[Reason, ...]:
    look = Sentence("Look at it, smell it and squeeze it, cut one open, and note what you find.")
    if signs is None:
        return (
            Reason(
                "signs",
                Sentence("Not inspected yet in its present state."),
                None,
                COMMON_PRACTICE,
                look,
            ),
        )
    if not signs:
        return (Reason("signs", Sentence("No sign of spoilage was found."), True, COMMON_PRACTICE, look),)
    throw = Sentence(
        "Throw it away, well wrapped, and do not taste it. Clean what it touched and look closely at its neighbours. "
        "When in doubt, throw it out."
    )
    return tuple(
        Reason(
            f"sign-{sign}",
            Sentence("A sign of spoilage: {sign}.", {"sign": Sentence(SIGNS[sign]) if sign in SIGNS else sign}),
            False,
            COMMON_PRACTICE,
            throw,
            True,
        )
        for sign in signs
    )


def _growth(evidence: Evidence) -> tuple[Reason, ...]:
    """What kept staphylococci small while it was warm: acid in time, or the hurdles of a style without acid. A whole
    muscle has no degree-hours; what was decided of it counts all the same."""
    if evidence.style == "fermented":
        return _acid(evidence), fermented_reason(evidence.fermentation)
    if evidence.style == "slow":
        return slow_reason(evidence.fermentation), *slow_hurdles(evidence)
    against = evidence.fermentation
    return (
        *((fermented_reason(against),) if against is not None else ()),
        *salted_hurdles(evidence.salted or UNKNOWN, evidence.method, evidence.salt),
        dry_without_acid(evidence),
    )


def _acid(evidence: Evidence) -> Reason:
    lowest = evidence.believable_lowest_ph()
    limit = Amount(ACID_PH, PH)
    if lowest is None:
        text, met = Sentence("No usable pH yet; it must have come down to {limit}.", {"limit": limit}), None
        settle = Sentence("Measure the pH of one piece.")
        return Reason("acid", text, met, FSRE_ACID, settle)
    met = lowest <= ACID_PH
    return Reason(
        "acid",
        Sentence(
            "The lowest pH, {lowest}, came down to {limit}."
            if met
            else "The lowest pH, {lowest}, did not come down to {limit}.",
            {"lowest": Amount(lowest, PH), "limit": limit},
        ),
        met,
        FSRE_ACID,
        Sentence(
            "Measure again with a checked meter. If it never came down to {limit}, drying does not undo what may have "
            "grown: ask a food-safety authority before anybody eats it.",
            {"limit": limit},
        ),
    )


def _weight(evidence: Evidence) -> Reason:
    loss, target = evidence.loss, evidence.target_loss
    weigh_again = Sentence("Check the tag and the scale, and weigh it again.")
    if loss is None or loss != loss:
        return Reason("loss", Sentence("Its loss is not known."), None, COMMON_PRACTICE, Sentence("Weigh the piece."))
    lost = Amount(loss, LOSS)
    if loss < 0:
        text = Sentence("It weighs more than at the start.")
        return Reason("loss", text, False, COMMON_PRACTICE, weigh_again)
    if loss > MOST_LOSS:
        text = Sentence("It has lost {lost}, more than the water in meat.", {"lost": lost})
        return Reason("loss", text, False, USDA_LEAN_WATER, weigh_again)
    if target is None or not target > 0:
        text = Sentence("It has lost {lost}; no loss to reach was set.", {"lost": lost})
        return Reason("loss", text, None, COMMON_PRACTICE, Sentence("Set the loss it must reach."))
    least = LEAST_LOSS[evidence.style]
    wanted = max(target, least)
    met = loss >= wanted - SLACK
    amounts = {
        "lost": lost,
        "target": Amount(target, LOSS),
        "least": Amount(least, LOSS),
        "wanted": Amount(wanted, LOSS),
    }
    text = Sentence(_LOST[target >= least, met], amounts)
    return Reason("loss", text, met, COMMON_PRACTICE, Sentence("Let it hang until it has lost {wanted}.", amounts))


_LOST: dict[tuple[bool, bool], Message] = {
    (True, True): "It has lost {lost}; enough for a target of {target}.",
    (True, False): "It has lost {lost}; not yet enough for a target of {target}.",
    (False, True): "It has lost {lost}; enough for its kind, which loses {least} at least, whatever the target.",
    (
        False,
        False,
    ): "It has lost {lost}; not yet enough for its kind, which loses {least} at least, whatever the target.",
}
"""By whether its own target is what it must reach, and whether it has."""


def _days(evidence: Evidence) -> Reason:
    least_days = evidence.least_days or 0.0
    least = Amount(least_days * DAY_S, DAYS)
    if evidence.days_hung is None or not evidence.days_hung >= 0:
        text = Sentence("How long it has hung is not known.")
        return Reason("days", text, None, COMMON_PRACTICE, Sentence("Note the day it was hung."))
    met = evidence.days_hung >= least_days - SLACK
    return Reason(
        "days",
        Sentence(
            "It has hung {hung} of {least}." if least_days else "It has hung {hung}; no least time was set.",
            {"hung": Amount(evidence.days_hung * 86400, DAYS), "least": least},
        ),
        met,
        COMMON_PRACTICE,
        Sentence("Let it hang until {least} are over.", {"least": least}),
    )


def how_to_keep(evidence: Evidence) -> Sentence:
    """A piece that is ready, once it is down."""
    return Sentence("Keep it in the refrigerator." if _keeps_cold(evidence) else "Keep it cool, dry and covered.")


def _keeps_cold(evidence: Evidence) -> bool:
    return evidence.water_activity is None or evidence.water_activity > KEEP_COLD_ABOVE


def _when_ready(evidence: Evidence) -> Sentence:
    if _keeps_cold(evidence):
        return Sentence("Take it down, write the day and the verdict on its tag, and keep it in the refrigerator.")
    return Sentence("Take it down, write the day and the verdict on its tag, and keep it cool, dry and covered.")


INFORMS: Message = "This informs; it does not approve food. Local law and a food-safety authority come before it."
NOTHING_KILLED: Message = (
    "These limits keep bacteria from growing; they do not prove that Salmonella, E. coli or Listeria were "
    "killed (FSIS-GD-2023-0002, p. 54)."
)
KEEP_COLD: Message = (
    "Keep it refrigerated: only at a water activity of 0.85 or less does it keep in air without cold (FSIS)."
)
OF_A_MATE: Message = (
    "The water activity is that of a piece of the same batch that had lost no more; thicker pieces dry slower."
)
RULES_DIFFER: Message = (
    "The US (FSRE-2005) and the EU (Reg. (EC) 2073/2005) rule differ on this piece; the stricter one counts."
)
EQUALITY: Message = 'The EU limit is met exactly, with nothing to spare; one copy of that rule prints "less than".'


ON_A_TEST: Message = "It missed its deadline for pH 5.3 and stands on a test and a decision alone."


def _stands_on_a_test(evidence: Evidence) -> bool:
    outcome = evidence.fermentation
    return outcome is not None and outcome.word != "passed" and outcome.deviation is not None


def _rests_on(evidence: Evidence) -> tuple[Said, ...]:
    """What a piece that is ready rests on and nobody here can check."""
    if evidence.meat.kind == "none":
        return evidence.weak
    proof = {"proof": trichinella(evidence.meat).text}
    return (Sentence("It rests on what was noted of its meat. {proof}", proof), *evidence.weak)


def _cautions(evidence: Evidence, is_ready: bool) -> tuple[Said, ...]:
    said: list[Said] = [*exception_cautions(evidence), *(_rests_on(evidence) if is_ready else ()), INFORMS]
    if _stands_on_a_test(evidence):
        said.append(ON_A_TEST)
    if evidence.style == "slow":
        said.append(OWN_USE)
    if evidence.style in ("fermented", "slow"):
        said.append(NOTHING_KILLED)
    activity, ph = evidence.activity(), evidence.keeping_ph()
    if activity is None or activity > KEEP_COLD_ABOVE:
        said.append(KEEP_COLD)
    if activity is None:
        return tuple(said)
    if evidence.activity_from_mate:
        said.append(OF_A_MATE)
    if shelf_stable(ph, activity) != too_dry_for_listeria(ph, activity):
        said.append(RULES_DIFFER)
    if rests_on_equality(ph, activity):
        said.append(EQUALITY)
    return tuple(said)
