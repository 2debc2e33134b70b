"""A verdict on a piece: ready, hold or discard, with the reasons it rests on.

The word is read off the reasons, so a verdict can never be better than its weakest evidence.
"""

from __future__ import annotations

from typing import Literal

from attrs import field, frozen

from core.sentence import Message, Sentence, each_said
from core.sources import Source

Word = Literal["ready", "hold", "discard"]
WORDS: tuple[Message, ...] = ("ready", "hold", "discard")
"""As a verdict is said."""


@frozen
class Reason:
    """One thing a verdict rests on.

    met: True, False, or None where the evidence is missing. settle: what would settle it when it is not met.
    fatal: not meeting it means the piece is thrown away, whatever else is known.
    """

    key: str
    text: Sentence
    met: bool | None
    source: Source
    settle: Sentence
    fatal: bool = False


@frozen
class Verdict:
    """reasons: in the order in which they should be seen to. cautions: calm sentences to stand beside the word. beside:
    what else is known of it, which decides nothing."""

    reasons: tuple[Reason, ...]
    when_ready: Sentence
    cautions: tuple[Sentence, ...] = field(default=(), converter=each_said)
    beside: tuple[Reason, ...] = ()

    @property
    def word(self) -> Word:
        if any(reason.fatal and reason.met is False for reason in self.reasons):
            return "discard"
        return "ready" if self.reasons and not self.unmet else "hold"

    @property
    def unmet(self) -> tuple[Reason, ...]:
        return tuple(reason for reason in self.reasons if reason.met is not True)

    @property
    def missing(self) -> tuple[Reason, ...]:
        return tuple(reason for reason in self.reasons if reason.met is None)

    @property
    def first_unmet(self) -> Reason | None:
        """What is to be seen to now; a fatal reason before all others."""
        unmet = sorted(self.unmet, key=lambda reason: not (reason.fatal and reason.met is False))
        return unmet[0] if unmet else None

    @property
    def next_step(self) -> Sentence:
        """The one thing to do now."""
        return self.first_unmet.settle if self.first_unmet else self.when_ready
