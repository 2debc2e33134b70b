"""The hurdles that keep a piece: dry or sour enough, nitrite or dryness against botulism, and those without acid.

Every limit of a water activity is here. Two published rules say what keeps, each with its own numbers: they draw the
line in different places, so both must hold; where they differ the screen shows which one does not.
"""

from __future__ import annotations

from core.mix.limits import BOTULISM_LEAST_PPM, CANADA_LEAST_PPM, CANADA_LEAST_SALT
from core.quantities import FRACTION, PARTS_PER_MILLION, PH, WATER_ACTIVITY, Amount
from core.release.evidence import SLACK, Evidence
from core.release.salted import UNKNOWN, is_through
from core.sentence import Message, Sentence, Value
from core.sources import (
    DRIED_MEAT_TOLDRA,
    EU_LISTERIA,
    FSRE_STABILITY,
    GD_2023_BOTULISM,
    GD_2023_SLOW_CURE,
)
from core.verdict import Reason

BOTULISM_ACTIVITY = 0.92  # FSIS-GD-2023-0002 p. 38: this water activity or less, or 50 ppm of nitrite
SLOW_ACTIVITY = 0.90  # Toldrá 2010 p. 221: dried meat of pH about 6 needs less than this
KEEP_COLD_ABOVE = 0.85  # JERKY-2014 pp. 15–16: critical limit where air reaches the product

# FSRE-2005, pp. 159–160, "shelf-stable"; all three are strict.
FSRE_PH_WITH_ACTIVITY = 5.2
FSRE_ACTIVITY_WITH_PH = 0.95
FSRE_PH = 5.0
FSRE_ACTIVITY = 0.91

# Reg. (EC) 2073/2005, Annex I, food category 1.3: cannot support the growth of Listeria. All inclusive.
EU_PH = 4.4
EU_ACTIVITY = 0.92
EU_PH_WITH_ACTIVITY = 5.0
EU_ACTIVITY_WITH_PH = 0.94


def shelf_stable(ph: float | None, activity: float) -> bool:
    """FSRE-2005: pH below 5.2 with water activity below 0.95, or pH below 5.0, or water activity below 0.91.

    ph: None where it was not measured; water activity must then carry it alone.
    """
    if activity < FSRE_ACTIVITY:
        return True
    return ph is not None and (ph < FSRE_PH or (ph < FSRE_PH_WITH_ACTIVITY and activity < FSRE_ACTIVITY_WITH_PH))


def too_dry_for_listeria(ph: float | None, activity: float) -> bool:
    """EU category 1.3: pH at most 4.4, or water activity at most 0.92, or pH at most 5.0 with activity at most 0.94.

    ph: None where it was not measured; water activity must then carry it alone.
    """
    if activity <= EU_ACTIVITY:
        return True
    return ph is not None and (ph <= EU_PH or (ph <= EU_PH_WITH_ACTIVITY and activity <= EU_ACTIVITY_WITH_PH))


def rests_on_equality(ph: float | None, activity: float) -> bool:
    """True where the EU rule holds only because a limit is met exactly; one copy of it prints "less than"."""
    if not too_dry_for_listeria(ph, activity):
        return False
    if activity < EU_ACTIVITY:
        return False
    return ph is None or not (ph < EU_PH or (ph < EU_PH_WITH_ACTIVITY and activity < EU_ACTIVITY_WITH_PH))


def keeps(evidence: Evidence) -> tuple[Reason, Reason]:
    """Both published rules. Unmeasured water activity is never made up for by acid, which counts only where the style
    ferments."""
    activity, ph = evidence.activity(), evidence.keeping_ph()
    if activity is None:
        text = Sentence("No usable water activity yet, from this piece or a wetter one of its batch.")
        settle = _measure_it(evidence)
        return (
            Reason("shelf-stable", text, None, FSRE_STABILITY, settle),
            Reason("listeria", text, None, EU_LISTERIA, settle),
        )
    measured = {"measured": _measured(activity, ph, evidence.activity_from_mate)}
    settle = Sentence("Let it dry further and measure the water activity again.")
    stable, too_dry, both = shelf_stable(ph, activity), too_dry_for_listeria(ph, activity), ph is not None
    return (
        Reason("shelf-stable", Sentence(_STABLE[both, stable], measured), stable, FSRE_STABILITY, settle),
        Reason("listeria", Sentence(_LISTERIA[both, too_dry], measured), too_dry, EU_LISTERIA, settle),
    )


def _measure_it(evidence: Evidence) -> Sentence:
    """What was worked out stands for no measurement; it says whether one is worth its price now."""
    likely = evidence.likely_activity
    measure = Sentence("Measure one piece's water activity.")
    if likely is None:
        return measure
    low, high = likely
    told: dict[str, Value] = {"measure": measure}
    told |= {"low": Amount(low, WATER_ACTIVITY), "high": Amount(min(high, 1.0), WATER_ACTIVITY)}
    return Sentence(_WORTH[_would_keep(evidence, high), _would_keep(evidence, low)], told)


def _would_keep(evidence: Evidence, activity: float) -> bool:
    ph = evidence.keeping_ph()
    dry = evidence.ferments or activity < SLOW_ACTIVITY
    return dry and shelf_stable(ph, activity) and too_dry_for_listeria(ph, activity)


_WORTH: dict[tuple[bool, bool], Message] = {
    (True, True): "{measure} From salt and loss one expects {low} to {high}, no evidence: worth measuring now.",
    (False, True): "{measure} From salt and loss one expects {low} to {high}, no evidence: perhaps too moist yet.",
    (
        False,
        False,
    ): "{measure} From salt and loss one expects {low} to {high}, no evidence: let it dry further first.",
}
"""By whether it would keep at its moistest, and at its driest."""
_STABLE: dict[tuple[bool, bool], Message] = {
    (True, True): "{measured} are low enough for a shelf-stable dried meat.",
    (True, False): "{measured} are not low enough for a shelf-stable dried meat.",
    (False, True): "{measured} is low enough for a shelf-stable dried meat.",
    (False, False): "{measured} is not low enough for a shelf-stable dried meat.",
}
_LISTERIA: dict[tuple[bool, bool], Message] = {
    (True, True): "{measured} are low enough to keep Listeria from growing.",
    (True, False): "{measured} are not low enough to keep Listeria from growing.",
    (False, True): "{measured} is low enough to keep Listeria from growing.",
    (False, False): "{measured} is not low enough to keep Listeria from growing.",
}
"""By whether the pH was measured too, and whether it is so."""
_MEASURED: dict[tuple[bool, bool], Message] = {
    (True, True): "Water activity {activity} of a batch-mate and pH {ph}",
    (True, False): "Water activity {activity} and pH {ph}",
    (False, True): "Water activity {activity} of a batch-mate",
    (False, False): "Water activity {activity}",
}


def _measured(activity: float, ph: float | None, is_of_a_mate: bool) -> Sentence:
    amounts = {"activity": Amount(activity, WATER_ACTIVITY)}
    if ph is not None:
        amounts["ph"] = Amount(ph, PH)
    return Sentence(_MEASURED[ph is not None, is_of_a_mate], amounts)


def botulism(evidence: Evidence) -> Reason:
    """Needs enough nitrite or enough dryness; one of the two that holds is enough. Nitrite counts where it has come to:
    in the middle of a whole muscle only once the salt is through."""
    activity, cured = evidence.activity(), _nitrite_guards(evidence)
    dry = None if activity is None else activity <= BOTULISM_ACTIVITY
    amounts = {
        "least": Amount(BOTULISM_LEAST_PPM * 1e-6, PARTS_PER_MILLION),
        "most": Amount(BOTULISM_ACTIVITY, WATER_ACTIVITY),
    }
    met = True if cured or dry else None if cured is None or dry is None else False
    return Reason(
        "botulism",
        Sentence(_BOTULISM[met], amounts),
        met,
        GD_2023_BOTULISM,
        Sentence("Let it dry to a water activity of {most}, or ask a food-safety authority.", amounts),
    )


_BOTULISM: dict[bool | None, Message] = {
    True: "Against botulism it has {least} of nitrite or a water activity of at most {most}.",
    False: "Against botulism it lacks {least} of nitrite or a water activity of at most {most}.",
    None: "Against botulism it is not known to have {least} of nitrite or a water activity of at most {most}.",
}


def _nitrite_guards(evidence: Evidence) -> bool | None:
    ppm = evidence.ingoing.nitrite_ppm
    enough = None if ppm is None else ppm >= BOTULISM_LEAST_PPM * (1 - SLACK)
    if evidence.style != "whole-muscle" or enough is False:
        return enough
    through = is_through(evidence.salted or UNKNOWN, evidence.method, evidence.salt)
    return None if enough is None and through else through


def slow_hurdles(evidence: Evidence) -> tuple[Reason, ...]:
    """What must stand in for the acid: enough nitrite or nitrate, enough salt, and more dryness than sour meat needs.

    That it was kept cool in its first days is judged by its readings (`core.ferment.slow`).
    """
    return _slow_cure(evidence), _slow_salt(evidence), dry_without_acid(evidence)


def _slow_cure(evidence: Evidence) -> Reason:
    least = Amount(CANADA_LEAST_PPM * 1e-6, PARTS_PER_MILLION)
    settle = Sentence(
        "Ask a food-safety authority: without acid it rests on nitrite or nitrate. Next time use {least}.",
        {"least": least},
    )
    ppm = evidence.ingoing.together_ppm
    if ppm is None:
        text, settle = (
            Sentence("The nitrite and nitrate that went in are not known."),
            Sentence("Enter the cure that was weighed."),
        )
        return Reason("slow-cure", text, None, GD_2023_SLOW_CURE, settle)
    met = ppm >= CANADA_LEAST_PPM * (1 - SLACK)
    amounts = {"cure": Amount(ppm * 1e-6, PARTS_PER_MILLION), "least": least}
    enough: Message = (
        "Nitrite and nitrate going in, {cure}, are at least the {least} that Canada asks of fermented meat."
    )
    lacking: Message = (
        "Nitrite and nitrate going in, {cure}, are less than the {least} that Canada asks of fermented meat."
    )
    text = Sentence(enough if met else lacking, amounts)
    return Reason("slow-cure", text, met, GD_2023_SLOW_CURE, settle)


def _slow_salt(evidence: Evidence) -> Reason:
    least = Amount(CANADA_LEAST_SALT, FRACTION)
    if evidence.salt is None:
        text = Sentence("The salt that went in is not known.")
        return Reason(
            "slow-salt", text, None, GD_2023_SLOW_CURE, Sentence("Correct the cure: enter the other salt as well.")
        )
    met = evidence.salt >= CANADA_LEAST_SALT * (1 - SLACK)
    amounts = {"salt": Amount(evidence.salt, FRACTION), "least": least}
    enough: Message = "Salt going in, {salt}, is at least the {least} that Canada asks of fermented meat."
    lacking: Message = "Salt going in, {salt}, is less than the {least} that Canada asks of fermented meat."
    text = Sentence(enough if met else lacking, amounts)
    settle = Sentence(
        "Ask a food-safety authority: too little salt cannot be corrected. Next time use {least}.", amounts
    )
    return Reason("slow-salt", text, met, GD_2023_SLOW_CURE, settle)


def dry_without_acid(evidence: Evidence) -> Reason:
    """Meat of its own pH, about 6, wants to be drier than sour meat: a slow sausage, a whole muscle."""
    activity, most = evidence.activity(), Amount(SLOW_ACTIVITY, WATER_ACTIVITY)
    if activity is None:
        text = Sentence("Its water activity is not known; without acid it must be below {most}.", {"most": most})
        return Reason("slow-dry", text, None, DRIED_MEAT_TOLDRA, Sentence("Measure one piece's water activity."))
    met = activity < SLOW_ACTIVITY
    amounts = {"activity": Amount(activity, WATER_ACTIVITY), "most": most}
    dry: Message = "Water activity {activity} is below {most}, as meat without acid must be."
    moist: Message = "Water activity {activity} is not below {most}, as meat without acid must be."
    text = Sentence(dry if met else moist, amounts)
    return Reason(
        "slow-dry", text, met, DRIED_MEAT_TOLDRA, Sentence("Let it dry further and measure the water activity again.")
    )
