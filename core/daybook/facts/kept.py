"""What an entry keeps of a judgement: keys and values, so that it says the same in other units and in other words."""

from __future__ import annotations

from datetime import date

from attrs import field, frozen

from core.daybook.facts.fields import finite


@frozen
class KeptAmount:
    """quantity: the key of one of core.daybook.kept_words.QUANTITIES. value: SI."""

    name: str
    value: float = field(validator=finite)
    quantity: str


@frozen
class KeptName:
    """What somebody called a thing, as typed."""

    name: str
    typed: str


@frozen
class KeptDay:
    name: str
    day: date


@frozen
class KeptWord:
    """word: a key of core.daybook.kept_words.SAID."""

    name: str
    word: str


@frozen
class KeptSentence:
    """A sentence by its key, a key of core.daybook.kept_words.SAID, and what goes into it.

    met: of a reason that stood against it: not met, or None where it was not known.
    """

    key: str
    values: tuple[KeptAmount | KeptName | KeptDay | KeptWord, ...] = ()
    met: bool | None = False


@frozen
class KeptReason:
    """One thing a verdict rested on. met: None where it was not known. amounts: what was held against what."""

    key: str
    met: bool | None
    amounts: tuple[KeptAmount, ...] = ()
