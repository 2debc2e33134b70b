"""What may still grow in it: the least water activity and pH of each organism, with the spread between the sources.

Minima hold with all else at its best for the organism, so one that is not reached is enough. Below the lowest that was
published nothing grows; above the highest it may; between the two the sources disagree and nobody knows.
"""

from __future__ import annotations

from functools import lru_cache

from attrs import frozen

from core.quantities import PH, WATER_ACTIVITY, Amount
from core.release.evidence import SLACK, Evidence
from core.sentence import Message, Sentence, Value
from core.sources import BOTULINUM_LIMITS, GROWTH_ARS, TOXIN_LIMITS, Source
from core.verdict import Reason

Spread = tuple[float, float]


@frozen
class Organism:
    """activity, ph: the lowest and the highest minimum that was published."""

    name: Message
    activity: Spread
    ph: Spread | None
    source: Source = GROWTH_ARS


ORGANISMS: dict[str, Organism] = {
    "salmonella": Organism("Salmonella", (0.94, 0.95), (3.8, 4.5)),
    "e-coli": Organism("E. coli", (0.935, 0.95), (4.0, 4.6)),
    "listeria": Organism("Listeria", (0.90, 0.93), (4.2, 4.4)),
    "staphylococci": Organism("Staphylococci", (0.83, 0.90), (4.0, 4.2)),
    "staphylococcal-toxin": Organism("Staphylococcal toxin", (0.86, 0.86), (4.8, 4.8), TOXIN_LIMITS),
    "botulinum-1": Organism("Botulinum, group I", (0.93, 0.93), (4.3, 4.7), BOTULINUM_LIMITS),
    "botulinum-2": Organism("Botulinum, group II", (0.96, 0.97), (5.0, 5.1), BOTULINUM_LIMITS),
    "perfringens": Organism("C. perfringens", (0.93, 0.97), (5.0, 5.5)),
    "campylobacter": Organism("Campylobacter", (0.98, 0.98), None),
    "mould-toxins": Organism("Moulds that make toxins", (0.78, 0.80), None),
}


def is_stopped(organism: str, ph: float | None, activity: float | None) -> bool | None:
    """None where the sources disagree, or where neither reading that is known stops it."""
    limits = ORGANISMS[organism]
    found = [_below(activity, limits.activity)]
    if limits.ph is not None:
        found.append(_below(ph, limits.ph))
    return True if True in found else False if set(found) == {False} else None


def _below(value: float | None, least: Spread) -> bool | None:
    """A minimum is where growth is still seen: exactly there it is not stopped."""
    if value is None:
        return None
    return True if value < least[0] - SLACK else False if value >= least[1] - SLACK else None


def what_grows(evidence: Evidence) -> tuple[Reason, ...]:
    return _growing(evidence.keeping_ph(), evidence.activity())


@lru_cache(maxsize=64)  # the pieces of a batch lean on one sample
def _growing(ph: float | None, activity: float | None) -> tuple[Reason, ...]:
    return tuple(_reason(key, ph, activity) for key in ORGANISMS)


def _reason(key: str, ph: float | None, activity: float | None) -> Reason:
    limits = ORGANISMS[key]
    met = is_stopped(key, ph, activity)
    told: dict[str, Value] = {"name": Sentence(limits.name), "limits": _limits_said(limits)}
    settle = Sentence("Measure the water activity, and let it dry further.")
    return Reason(f"grows-{key}", Sentence(_SAID[met], told), met, limits.source, settle)


_SAID: dict[bool | None, Message] = {
    True: "{name}: no growth below {limits}.",
    False: "{name}: may grow; it stops below {limits}.",
    None: "{name}: not known whether it grows; it stops below {limits}.",
}


def _limits_said(limits: Organism) -> Sentence:
    activity = _spread(limits.activity, "a water activity of {low}", "a water activity of {low} to {high}", True)
    if limits.ph is None:
        return activity
    ph = _spread(limits.ph, "pH {low}", "pH {low} to {high}", False)
    return Sentence("{activity} or {ph}", {"activity": activity, "ph": ph})


def _spread(between: Spread, one: Message, two: Message, is_activity: bool) -> Sentence:
    quantity = WATER_ACTIVITY if is_activity else PH
    amounts = {"low": Amount(between[0], quantity), "high": Amount(between[1], quantity)}
    return Sentence(one if between[0] == between[1] else two, amounts)
