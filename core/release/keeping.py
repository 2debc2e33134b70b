"""By whose rules it keeps: the published rule sets side by side, those of the maker's own market first.

None of them makes a piece ready: that rests on `hurdles`, which asks for two of them at once. They say how it may be
kept, and where it would not be called shelf-stable. A rule from memory is shown and named so.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Literal

from attrs import frozen

from core.mix.limits import CANADA_LEAST_PPM, CANADA_LEAST_SALT
from core.release.evidence import SLACK, Evidence
from core.release.hurdles import KEEP_COLD_ABOVE, shelf_stable, too_dry_for_listeria
from core.sentence import Message, Sentence
from core.sources import CFIA_STABLE, CFR_114, EU_LISTERIA, FSRE_STABILITY, GD_2023_TILKENS, JERKY_2014, Source
from core.verdict import Reason

Known = bool | None
Class = Literal["very-perishable", "perishable", "shelf-stable"]
LOW_ACID_PH = 4.6


def all_of(*parts: Known) -> Known:
    return False if False in parts else None if None in parts else True


def any_of(*parts: Known) -> Known:
    return True if True in parts else None if None in parts else False


def at_most(value: float | None, limit: float) -> Known:
    return None if value is None else value <= limit + SLACK


def at_least(value: float | None, limit: float) -> Known:
    return None if value is None else value >= limit - SLACK


def keeps_in_air(activity: float | None) -> Known:
    """JERKY-2014: 0.85 or lower where air reaches it."""
    return at_most(activity, KEEP_COLD_ABOVE)


def keeps_in_vacuum(activity: float | None) -> Known:
    """The same: 0.91 or lower; after opening it goes into the cold."""
    return at_most(activity, 0.91)


def tilkens_air(ph: float | None, activity: float | None) -> Known:
    return all_of(at_most(ph, 5.1), at_most(activity, 0.92))


def tilkens_vacuum(ph: float | None, activity: float | None) -> Known:
    return all_of(at_most(ph, 5.1), at_most(activity, 0.96))


def is_low_acid(ph: float | None, activity: float | None) -> Known:
    """21 CFR 114.3: pH above 4.6 and water activity above 0.85."""
    not_it = any_of(at_most(ph, LOW_ACID_PH), at_most(activity, KEEP_COLD_ABOVE))
    return None if not_it is None else not not_it


def keeps_by_ratio(ratio: float | None, ph: float | None) -> Known:
    """Moisture to protein: dry sausage 1.9 to 1, semi-dry 3.1 to 1 with a pH of 5.0 or less. A rule of identity."""
    return any_of(at_most(ratio, 1.9), all_of(at_most(ratio, 3.1), at_most(ph, 5.0)))


def keeps_in_canada(ph: float | None, lowest_ph: float | None, activity: float | None, cured: Known) -> Known:
    dry_and_sour = all_of(at_most(lowest_ph, 5.3), at_most(activity, 0.90))
    return all_of(any_of(at_most(ph, LOW_ACID_PH), at_most(activity, KEEP_COLD_ABOVE), dry_and_sour), cured)


def class_of(ph: float | None, activity: float | None) -> Class | None:
    """FSRE-2005, pp. 159–160. None where what is known leaves two of them open."""
    least = _class(ph if ph is not None else 7.0, activity if activity is not None else 1.0)
    best = _class(ph if ph is not None else 3.0, activity if activity is not None else 0.5)
    return least if least == best else None


def _class(ph: float, activity: float) -> Class:
    if shelf_stable(ph, activity):
        return "shelf-stable"
    return "very-perishable" if ph > 5.2 + SLACK and activity > 0.95 + SLACK else "perishable"


@frozen
class RuleOfKeeping:
    """market: a key of core.mix.rules.RULE_SETS, whose makers go by it."""

    name: Message
    market: str
    source: Source
    holds: Callable[[Evidence], Known]


def _cured_for_canada(evidence: Evidence) -> Known:
    passed = None if evidence.fermentation is None else evidence.fermentation.word == "passed"
    cure = at_least(evidence.ingoing.together_ppm, CANADA_LEAST_PPM)
    return all_of(cure, at_least(evidence.salt, CANADA_LEAST_SALT), passed)


def _listeria(evidence: Evidence) -> Known:
    ph, activity = evidence.keeping_ph(), evidence.activity()
    return None if activity is None else too_dry_for_listeria(ph, activity)


RULES: dict[str, RuleOfKeeping] = {
    "in-air": RuleOfKeeping("in air, without cold", "us", JERKY_2014, lambda it: keeps_in_air(it.activity())),
    "canada": RuleOfKeeping(
        "Canada, shelf-stable",
        "ca",
        CFIA_STABLE,
        lambda it: keeps_in_canada(
            it.keeping_ph(), it.believable_lowest_ph() if it.ferments else None, it.activity(), _cured_for_canada(it)
        ),
    ),
    "in-vacuum": RuleOfKeeping(
        "in vacuum, cold once opened", "us", JERKY_2014, lambda it: keeps_in_vacuum(it.activity())
    ),
    "tilkens-air": RuleOfKeeping(
        "by a study of 2015, in air", "us", GD_2023_TILKENS, lambda it: tilkens_air(it.keeping_ph(), it.activity())
    ),
    "tilkens-vacuum": RuleOfKeeping(
        "by a study of 2015, in vacuum",
        "us",
        GD_2023_TILKENS,
        lambda it: tilkens_vacuum(it.keeping_ph(), it.activity()),
    ),
    "eu": RuleOfKeeping("European Union, Listeria category 1.3", "eu", EU_LISTERIA, _listeria),
    "not-low-acid": RuleOfKeeping(
        "no low-acid food",
        "us",
        CFR_114,
        lambda it: None if (low := is_low_acid(it.keeping_ph(), it.activity())) is None else not low,
    ),
}


def keeping_rules(evidence: Evidence) -> tuple[Reason, ...]:
    """Each rule set, those of the maker's market first."""
    market = "" if evidence.how is None else evidence.how.rules
    ordered = sorted(RULES.items(), key=lambda each: each[1].market != market)
    rules = (_reason(key, rule.holds(evidence), rule.market == market) for key, rule in ordered)
    return (_class_reason(class_of(evidence.keeping_ph(), evidence.activity())), *rules)


def _class_reason(found: Class | None) -> Reason:
    text = Sentence("In the scheme of three classes: {found}.", {"found": Sentence(_CLASSES[found])})
    met = None if found is None else found == "shelf-stable"
    return Reason("keeps-class", text, met, FSRE_STABILITY, _SETTLE)


_CLASSES: dict[Class | None, Message] = {
    "very-perishable": "very perishable",
    "perishable": "perishable",
    "shelf-stable": "shelf-stable",
    None: "not known",
}
_SETTLE = Sentence("Measure the water activity, and let it dry further.")


@cache
def _reason(key: str, met: Known, is_own: bool) -> Reason:
    rule = RULES[key]
    told = {"name": Sentence(rule.name), "how": Sentence(_HOW[met])}
    words: Message = "{name} (your rules): {how}." if is_own else "{name}: {how}."
    return Reason(f"keeps-{key}", Sentence(words, told), met, rule.source, _SETTLE)


_HOW: dict[Known, Message] = {True: "met", False: "not met", None: "not known"}
