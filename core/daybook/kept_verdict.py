"""A verdict as its entry keeps it, and shown again years later: what it rested on then, not now."""

from __future__ import annotations

from attrs import frozen

from core.daybook.facts.kept import KeptAmount, KeptReason
from core.daybook.kept_words import QUANTITIES
from core.quantities import Amount
from core.release.reason_names import name_of
from core.sentence import Sentence
from core.verdict import Verdict


@frozen
class ToldReason:
    """amounts: each by the name it had, in the order it was kept; of a newer daybook's quantities none is given."""

    name: Sentence
    met: bool | None
    amounts: tuple[tuple[str, Amount], ...]


def keep_reasons(verdict: Verdict) -> tuple[KeptReason, ...]:
    return tuple(KeptReason(each.key, each.met, _said_in(each.text)) for each in verdict.reasons)


def _said_in(text: Sentence) -> tuple[KeptAmount, ...]:
    return tuple(KeptAmount(name, each.value, each.quantity.key) for name, each in text.amounts.items())


def told(reasons: tuple[KeptReason, ...]) -> tuple[ToldReason, ...]:
    return tuple(ToldReason(name_of(each.key), each.met, _known(each.amounts)) for each in reasons)


def _known(amounts: tuple[KeptAmount, ...]) -> tuple[tuple[str, Amount], ...]:
    return tuple(
        (each.name, Amount(each.value, QUANTITIES[each.quantity])) for each in amounts if each.quantity in QUANTITIES
    )
