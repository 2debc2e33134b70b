"""What an entry keeps of a judgement: keys and values, so that it says the same in other units and in other words."""

from __future__ import annotations

from attrs import frozen


@frozen
class KeptAmount:
    """quantity: the key of one of core.daybook.kept_words.QUANTITIES. value: SI."""

    name: str
    value: float
    quantity: str


@frozen
class KeptReason:
    """One thing a verdict rested on. met: None where it was not known. amounts: what was held against what."""

    key: str
    met: bool | None
    amounts: tuple[KeptAmount, ...] = ()
