"""A whole muscle's time in salt, judged: has the salt reached the middle, was it cold all that time, was it enough?

By diffusion, or by the one published rule for hams that prints its conditions. Until the salt is through the middle is
raw meat, and neither salt nor nitrite guards it against botulism.
"""

from __future__ import annotations

import math

from attrs import evolve, frozen

from core.mix.rule import DRY, Method
from core.mix.salting import (
    FAST_M2_S,
    LEAST_C,
    MOST_C,
    SLOW_M2_S,
    Piece,
    SaltingMethod,
    Shape,
    centre_share,
    diffusivity,
    mean_share,
    time_to,
)
from core.quantities import DAYS, FRACTION, MASS, TEMPERATURE, Amount
from core.sentence import Message, Sentence
from core.sources import CFR_HAM_SALTING, COMMON_PRACTICE, CRANK, VT_458_223
from core.units import DAY_S, POUND_KG
from core.verdict import Reason

THROUGH = 0.9
"""The middle has nine tenths of the salt it comes to in the end: our own choice, no published source."""
NEAR_C = 0.05  # a display's last digit
LEAST_SALT = 0.0225
"""Of meat salted with a weighed amount: the least that is common practice; no published source."""
SALT_AT_MOST = 0.2
"""To the green weight, of meat that has lain in plenty of salt for good: saturated brine, 26 %, in its water would be
0.27 of lean meat; fat takes up little. Our own choice, no published source."""

Way = str
WAYS: dict[str, Message] = {
    "diffusion": "by how fast salt moves in meat",
    "ham-3": "a ham in dry salt, by US ham method 3",
}
HAM_CONTACT_DAYS, HAM_CONTACT_DAYS_A_KG = 28.0, 1.5 / POUND_KG
HAM_ALL_DAYS, HAM_ALL_DAYS_A_KG = 40.0, 2.0 / POUND_KG
HAM_LEAST_C, HAM_MOST_C = 5 / 3, 65 / 9
"""35 and 45 °F. Later than 1½ days a pound the rule allows 60 °F; that is not counted on here."""
HAM_BAG_SALT = 0.06


@frozen
class Salted:
    """What is known of it. None is not known.

    lasts_s: from the first salt until it came out of the cold, at rest or not. rested_s: the last part of that, without
    salt about it. coldest_c, warmest_c: of all that time. mass_kg: of the heaviest piece, for the rule that goes by it.
    """

    method: SaltingMethod | None = None
    shape: Shape | None = None
    thickness_m: float | None = None
    width_m: float | None = None
    length_m: float | None = None
    lasts_s: float | None = None
    rested_s: float | None = None
    coldest_c: float | None = None
    warmest_c: float | None = None
    way: Way = "diffusion"
    mass_kg: float | None = None

    @property
    def contact_s(self) -> float | None:
        """With salt about it; a sealed bag is that to the end."""
        if self.method == "weighed" or self.lasts_s is None:
            return self.lasts_s
        return None if self.rested_s is None else max(self.lasts_s - self.rested_s, 0.0)

    @property
    def piece(self) -> Piece | None:
        if self.shape is None or self.thickness_m is None or (self.shape == "block" and self.width_m is None):
            return None
        return Piece(self.shape, self.thickness_m, self.width_m, self.length_m)


UNKNOWN = Salted()
_ASK = Sentence(
    "Ask a food-safety authority before anybody eats it: drying does not undo what grew in an unsalted middle."
)


def salted_hurdles(salted: Salted, method: Method | None, salt: float | None) -> tuple[Reason, ...]:
    """method: how it was cured, None where not known. salt: all of it, as a share of the meat."""
    buried = salted.method == "excess" and method in DRY
    weighed = () if buried and salt is None else (_enough(salt),)
    return (
        _through(salted, method, salt),
        _cold(salted, salt),
        *_taken_up(salted, SALT_AT_MOST if method in DRY else salt),
        *weighed,
    )


def is_through(salted: Salted, method: Method | None, salt: float | None) -> bool | None:
    """Whether the salt, and the nitrite with it, has reached the middle.

    Yes only where it has by the slowest diffusivity that was published, at the coldest it was; no where it has not by
    the fastest; between the two nobody knows. Time that was colder than the official methods count proves nothing.
    """
    if _by_ham_rule(salted, salt):
        return True
    if _missing(salted) is not None or salted.coldest_c is None or salted.coldest_c < LEAST_C - NEAR_C:
        return None
    if _share(salted, method, SLOW_M2_S) >= THROUGH:
        return True
    return False if _most_share(salted, FAST_M2_S) < THROUGH else None


def _missing(salted: Salted) -> Sentence | None:
    """The first thing that is not known, and without which nothing can be said."""
    if salted.lasts_s is None:
        return Sentence("How long it lay in salt is not known.")
    if salted.method is None:
        return Sentence("Whether it lay in a weighed amount of salt or in plenty is not known.")
    if salted.piece is None:
        return Sentence("How thick it was, and of what shape, is not known.")
    if salted.contact_s is None:
        return Sentence("How long it rested without salt, before it left the cold, is not known.")
    if salted.coldest_c is None:
        return Sentence("The coldest it was while the salt went in is not known.")
    return None


def _sealed(salted: Salted, method: Method | None) -> bool:
    """Whether a fixed amount lies on it and stays. From a brine, salt goes in more slowly than from the meat's own
    juice in a bag; how evenly a pump spreads it nobody published, so it counts as if it all lay on the outside."""
    return salted.method == "weighed" and method in ("dry-rub", "pump")


def _share(salted: Salted, method: Method | None, at_3_c: float) -> float:
    """Salt at the centre to what it comes to in the end, or a little less.

    In plenty of salt the surface is held; afterwards, at rest, no salt is younger than the rest is long, so the centre
    has at least what a bag would have given it in that time. The better of the two counts.
    """
    piece, contact_s = salted.piece, salted.contact_s
    assert piece is not None
    assert contact_s is not None
    assert salted.coldest_c is not None
    d_m2_s = diffusivity(min(salted.coldest_c, MOST_C), at_3_c)
    if _sealed(salted, method):
        return centre_share(piece, "weighed", d_m2_s, contact_s)
    rest_s = max((salted.lasts_s or 0.0) - contact_s, 0.0) if salted.method == "excess" else 0.0
    return max(centre_share(piece, "excess", d_m2_s, contact_s), centre_share(piece, "weighed", d_m2_s, rest_s))


def _most_share(salted: Salted, at_3_c: float) -> float:
    """No salt is older than all of the time: the centre cannot have more than a bag gives in it."""
    piece, lasts_s = salted.piece, salted.lasts_s
    assert piece is not None
    assert lasts_s is not None
    assert salted.coldest_c is not None
    return centre_share(piece, "weighed", diffusivity(min(salted.coldest_c, MOST_C), at_3_c), lasts_s)


def _by_ham_rule(salted: Salted, salt: float | None) -> bool:
    """9 CFR 318.10, ham method 3: days by the heaviest ham, in contact and in all, at 35 to 45 °F."""
    contact_s, lasts_s, mass_kg = salted.contact_s, salted.lasts_s, salted.mass_kg
    if salted.way != "ham-3" or contact_s is None or lasts_s is None or mass_kg is None or salted.method is None:
        return False
    if salted.coldest_c is None or salted.warmest_c is None:
        return False
    contact_days = max(HAM_CONTACT_DAYS, HAM_CONTACT_DAYS_A_KG * mass_kg)
    all_days = max(HAM_ALL_DAYS, HAM_ALL_DAYS_A_KG * mass_kg)
    return (
        contact_s >= contact_days * DAY_S * (1 - 1e-9)
        and lasts_s >= all_days * DAY_S * (1 - 1e-9)
        and salted.coldest_c >= HAM_LEAST_C - NEAR_C
        and salted.warmest_c <= HAM_MOST_C + NEAR_C
        and (salted.method == "excess" or (salt is not None and salt >= HAM_BAG_SALT * (1 - 1e-9)))
    )


def _through(salted: Salted, method: Method | None, salt: float | None) -> Reason:
    if _by_ham_rule(salted, salt) and salted.mass_kg is not None:
        words: Message = "It had the days in salt, and in all, that ham method 3 asks for {mass}."
        text = Sentence(words, {"mass": Amount(salted.mass_kg, MASS)})
        return Reason("salted-through", text, True, CFR_HAM_SALTING, _ASK)
    missing = _missing(salted)
    if missing is not None:
        return Reason("salted-through", missing, None, CRANK, _note_salting(salted))
    met = is_through(salted, method, salt)
    amounts = _times(salted, method)
    if met is None and salted.coldest_c is not None and salted.coldest_c < LEAST_C - NEAR_C:
        text = Sentence("It lay in salt at {cold}; below {least} the official methods count no day.", amounts)
        settle = Sentence(
            "Let it lie at {least} to {most} as long as its salt takes, {sure}, counted from then.", amounts
        )
        return Reason("salted-through", text, None, CFR_HAM_SALTING, settle)
    texts: dict[bool | None, Message] = {
        True: "After {lasts} the middle has at least {slow} of its salt, however slowly that moves in meat.",
        False: "After {lasts} the middle has not its salt: at most {fast} of it, and it must have {through}.",
        None: "After {lasts} it is not sure that the salt is through: if it moves slowly the middle has {slow} of it.",
    }
    settle = Sentence(
        "Salt and rest it in the cold until it is sure, {sure} in all. If it has left the cold already, ask a "
        "food-safety authority: an unsalted middle is where botulism begins.",
        amounts,
    )
    return Reason("salted-through", Sentence(texts[met], amounts), met, CRANK, settle)


def _times(salted: Salted, method: Method | None) -> dict[str, Amount]:
    piece, cold_c = salted.piece, salted.coldest_c
    assert piece is not None
    assert cold_c is not None
    lay: SaltingMethod = "weighed" if _sealed(salted, method) else "excess"
    counted_c = min(max(cold_c, LEAST_C - NEAR_C), MOST_C)
    sure_s = time_to(piece, lay, diffusivity(counted_c, SLOW_M2_S), THROUGH)
    return {
        "lasts": Amount(salted.lasts_s or 0.0, DAYS),
        "slow": Amount(_share(evolve(salted, coldest_c=counted_c), method, SLOW_M2_S), FRACTION),
        "fast": Amount(_most_share(evolve(salted, coldest_c=counted_c), FAST_M2_S), FRACTION),
        "through": Amount(THROUGH, FRACTION),
        "sure": Amount(math.ceil(sure_s / DAY_S) * DAY_S, DAYS),
        "cold": Amount(cold_c, TEMPERATURE),
        "least": Amount(LEAST_C, TEMPERATURE),
        "most": Amount(MOST_C, TEMPERATURE),
    }


def _note_salting(salted: Salted) -> Sentence:
    if salted.lasts_s is None:
        return Sentence("Note when it went into salt and when it came out, with its thickness and shape.")
    return Sentence("Correct its time in salt: enter how it lay, its thickness, its rest and the coldest it was.")


def _cold(salted: Salted, salt: float | None) -> Reason:
    """Cold enough that nothing grows in a middle without salt."""
    by_rule = _by_ham_rule(salted, salt)
    most_c = HAM_MOST_C if by_rule else MOST_C
    source = CFR_HAM_SALTING if by_rule else VT_458_223
    if salted.warmest_c is None:
        text = Sentence("The warmest it was while the salt went in is not known.")
        return Reason(
            "salted-cold", text, None, source, Sentence("Correct its time in salt: enter the warmest it was.")
        )
    met = salted.warmest_c <= most_c + NEAR_C
    amounts = {"warm": Amount(salted.warmest_c, TEMPERATURE), "most": Amount(most_c, TEMPERATURE)}
    cold: Message = "While the salt went in it was not warmer than {most}: {warm} at most."
    warm: Message = "While the salt went in it was warmer than {most}: {warm} at most."
    text = Sentence(cold if met else warm, amounts)
    return Reason("salted-cold", text, met, source, _ASK)


def _enough(salt: float | None) -> Reason:
    """Of a weighed amount."""
    least = {"least": Amount(LEAST_SALT, FRACTION)}
    if salt is None:
        settle = Sentence("Correct the cure: enter the other salt as well.")
        return Reason("salt", Sentence("The salt that went in is not known."), None, COMMON_PRACTICE, settle)
    met = salt >= LEAST_SALT * (1 - 1e-9)
    enough: Message = "Salt going in, {salt}, is at least the {least} of common practice."
    lacking: Message = "Salt going in, {salt}, is less than the {least} of common practice."
    text = Sentence(enough if met else lacking, {"salt": Amount(salt, FRACTION), **least})
    settle = Sentence("Ask a food-safety authority: salt is not added later. Next time use {least} at least.", least)
    return Reason("salt", text, met, COMMON_PRACTICE, settle)


def _taken_up(salted: Salted, end: float | None) -> tuple[Reason, ...]:
    """What meat takes up in plenty of salt or brine, if that moves as slowly as was ever published; rest adds nothing.
    end: what it comes to in the end. Nine tenths of that are enough, whatever it is: it is judged by itself."""
    piece, contact_s, cold_c = salted.piece, salted.contact_s, salted.coldest_c
    if (
        salted.method != "excess"
        or end is None
        or piece is None
        or contact_s is None
        or cold_c is None
        or cold_c < LEAST_C - NEAR_C
    ):
        return ()  # without them it is not known to be through either
    taken_up = end * mean_share(piece, diffusivity(min(cold_c, MOST_C), SLOW_M2_S), contact_s)
    met = True if taken_up >= min(LEAST_SALT, THROUGH * end) else None
    amounts = {
        "contact": Amount(contact_s, DAYS),
        "salt": Amount(taken_up, FRACTION),
        "least": Amount(LEAST_SALT, FRACTION),
    }
    enough: Message = "In {contact} with salt about it it takes up {salt} of it at least: enough."
    doubtful: Message = (
        "In {contact} with salt about it it takes up {salt} of it at least: perhaps less than the {least} of common "
        "practice."
    )
    text = Sentence(enough if met else doubtful, amounts)
    settle = Sentence("Ask a food-safety authority: salt is not added later, and rest spreads only what went in.")
    return (Reason("taken-up", text, met, CRANK, settle),)
