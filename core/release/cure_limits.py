"""The cure held to the rules it was made under, to an exception on record, and to what no exception allows.

A batch's entries and the single sum come here alike; nothing else judges what went in.
"""

from __future__ import annotations

import math

from attrs import evolve

from core.meat import STYLE_NAMES
from core.mix.ingoing import check_limits
from core.mix.licence import NO_FIGURE, Ceiling, Licence, over_ceiling
from core.mix.limit_check import LimitCheck
from core.mix.rule import METHODS, Limited
from core.mix.rules import HOUSE
from core.quantities import PARTS_PER_MILLION, Amount
from core.release.evidence import METHODS_OF, Evidence
from core.sentence import Message, Sentence, Value
from core.sources import CFR_424_21C
from core.verdict import Reason

_DO_NOT_EAT = Sentence(
    "Do not eat it. Ask a food-safety authority or a licensed processor, with the weighing sheet in hand."
)
NAMES: dict[Limited, Message] = {
    "nitrite": "Nitrite",
    "nitrate": "Nitrate",
    "both": "Nitrite and nitrate",
    "accelerator": "Ascorbate",
}


def limit_reasons(evidence: Evidence) -> tuple[Reason, ...]:
    """What is over first, then what is not known, then what is within."""
    found = (*_not_known(evidence), *_rows(evidence), *_of_the_house(evidence), *_above_the_ceiling(evidence))
    return tuple(reason for met in (False, None, True) for reason in found if reason.met is met)


def exception_cautions(evidence: Evidence) -> tuple[Sentence, ...]:
    """Where an exception is what lets it pass: the limit, the rule it stands on, its figure and who decided."""
    licence = evidence.licence
    if licence is None:
        return ()
    return tuple(_exception(each, licence) for each in _checks(evidence) if _lifted(each, licence))


def _exception(held: LimitCheck, licence: Licence) -> Sentence:
    told: dict[str, Value] = {"cite": held.rule.cite, "most": _ppm(held.rule.most_ppm or 0.0), "rule": licence.rule}
    told |= {"figure": _ppm(licence.most_ppm or 0.0), "why": licence.why, "authority": licence.authority}
    return Sentence(
        "Over the limit of {cite}, {most}. It passes only by an exception on record, {rule}, up to {figure}: {why} "
        "({authority}; decided by {who}). Nothing here makes that safe.",
        {**told, "who": licence.decided_by},
    )


def _lifted(held: LimitCheck, licence: Licence) -> bool:
    return not held.within and licence.lifts(held)


def _checks(evidence: Evidence) -> tuple[LimitCheck, ...]:
    """By the law alone; what the house sets lower is no reason to throw anything away."""
    return () if evidence.how is None else check_limits(evidence.ingoing, evolve(evidence.how, house=()))


def _not_known(evidence: Evidence) -> list[Reason]:
    reasons: list[Reason] = []
    if evidence.how is None:
        text = Sentence("By whose rules it was cured, and how, is not known.")
        settle = Sentence("Choose the rules, the product and the way of curing.")
        reasons.append(Reason("rules", text, None, CFR_424_21C, settle))
    elif evidence.how.method not in METHODS_OF[evidence.style]:
        told = {"way": Sentence(METHODS[evidence.how.method]), "kind": Sentence(STYLE_NAMES[evidence.style])}
        text = Sentence("It is noted as cured like this: {way}. That is no {kind}.", told)
        settle = Sentence("Correct the cure: choose how it was cured.")
        reasons.append(Reason("rules", text, None, CFR_424_21C, settle))
    for key, ppm in (("nitrite", evidence.ingoing.nitrite_ppm), ("nitrate", evidence.ingoing.nitrate_ppm)):
        if ppm is None or not 0 <= ppm < math.inf:
            text = Sentence(_NONE_KNOWN[key])
            settle = Sentence(
                "Find the weight of the curing salt and of the meat on the weighing sheet, and enter the nitrite and "
                "the nitrate."
            )
            reasons.append(Reason(key, text, None, CFR_424_21C, settle))
    return reasons


_NONE_KNOWN: dict[str, Message] = {
    "nitrite": "The nitrite that went in is not known; where none was used it is 0.",
    "nitrate": "The nitrate that went in is not known; where none was used it is 0.",
}


def _rows(evidence: Evidence) -> list[Reason]:
    checks = [each for each in _checks(evidence) if each.ppm or each.rule.substance != "nitrate"]
    return [_row(each, evidence.licence) for each in checks if each.ppm >= 0]


def _row(held: LimitCheck, licence: Licence | None) -> Reason:
    lifted = licence is not None and _lifted(held, licence)
    return Reason(
        held.rule.substance,
        _row_text(held, licence, lifted),
        held.within or lifted,
        held.rule.source,
        _DO_NOT_EAT,
    )


def _row_text(held: LimitCheck, licence: Licence | None, lifted: bool) -> Sentence:
    rule = held.rule
    told: dict[str, Value] = {"substance": Sentence(NAMES[rule.substance]), "what": Sentence(rule.what)}
    told |= {"made": _ppm(held.ppm), "most": _ppm(rule.most_ppm or 0.0)}
    limit = Sentence(_LIMIT[rule.counted == "ion", held.within], told)
    if held.within or licence is None:
        return limit
    if not licence.names_its_figure:
        return Sentence("{limit} {exception}", {"limit": limit, "exception": Sentence(NO_FIGURE)})
    if not licence.is_for(held):
        return Sentence("{limit} The exception on record is not for this.", {"limit": limit})
    values: dict[str, Value] = {"limit": limit, "rule": licence.rule, "figure": _ppm(licence.most_ppm or 0.0)}
    if not lifted:
        return Sentence("{limit} The exception on record ({rule}) allows {figure} only.", values)
    values |= {"why": licence.why, "authority": licence.authority, "who": licence.decided_by}
    return Sentence(
        "{limit} An exception on record ({rule}) allows {figure}: {why} ({authority}; decided by {who}).", values
    )


_LIMIT: dict[tuple[bool, bool], Message] = {
    (True, True): "{substance} going in, {made}, counted as ion, is within the limit for {what}, {most}.",
    (True, False): "{substance} going in, {made}, counted as ion, is over the limit for {what}, {most}.",
    (False, True): "{substance} going in, {made}, is within the limit for {what}, {most}.",
    (False, False): "{substance} going in, {made}, is over the limit for {what}, {most}.",
}
"""By whether it is counted as ion, and whether it is within."""


def _of_the_house(evidence: Evidence) -> list[Reason]:
    """Over what the house set itself it is held until somebody decides, whatever the law allows."""
    if evidence.how is None:
        return []
    licence = evidence.licence
    own = [each for each in check_limits(evidence.ingoing, evidence.how) if each.rule.source == HOUSE]
    settle = Sentence("Whoever answers for this kitchen decides: correct the cure, or note an exception for it.")
    return [
        Reason(
            f"house-{each.rule.substance}",
            Sentence(
                "{substance} going in, {made}, is over the limit of this kitchen, {most}.",
                {"substance": Sentence(NAMES[each.rule.substance]), "made": _ppm(each.ppm), "most": _ppm(most)},
            ),
            None,
            HOUSE,
            settle,
        )
        for each in own
        if (most := each.rule.most_ppm) is not None
        if not each.within and not (licence is not None and licence.lifts(each))
    ]


def _above_the_ceiling(evidence: Evidence) -> list[Reason]:
    """Where an exception lifts a limit; without one the limit itself is over."""
    licence = evidence.licence
    if evidence.how is None or licence is None or not any(_lifted(each, licence) for each in _checks(evidence)):
        return []
    return [_ceiling(each, ppm) for each, ppm in over_ceiling(evidence.ingoing, evidence.how.method)]


def _ceiling(ceiling: Ceiling, ppm: float) -> Reason:
    text = Sentence(
        "{substance} going in, {made} as the sodium salt on the green weight, is over {most}, which no exception moves "
        "(9 CFR 424.21(c), {words}).",
        {
            "substance": Sentence(NAMES[ceiling.substance]),
            "made": _ppm(ppm),
            "most": _ppm(ceiling.most_ppm),
            "words": Sentence(ceiling.words),
        },
    )
    return Reason("ceiling", text, False, ceiling.source, _DO_NOT_EAT)


def _ppm(ppm: float) -> Amount:
    return Amount(ppm * 1e-6, PARTS_PER_MILLION)
