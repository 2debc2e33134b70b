"""What the core says when it is given something it cannot work with.

Each refusal carries the field it belongs to, what is wrong and what would be right, in one sentence that a cook can
act on. The screen sets the sentence beside the field; `python -m core` prints it.
"""

from collections.abc import Iterable

from core.quantities import METRIC, Amount, Quantity
from core.sentence import Message, Said, Sentence, said

BETWEEN: Message = "{label} must be between {low} and {high}."
OR_ZERO: Message = "{label} must be 0, or between {low} and {high}."


class Refusal(ValueError):
    """One sentence about one field. `field` is the input's key, or "" when the sentence is about the whole."""

    def __init__(self, field: str, sentence: Said) -> None:
        super().__init__(field, sentence)
        self.field = field
        self.said = said(sentence)

    @property
    def sentence(self) -> str:
        """As the metric reader is told."""
        return self.said.say(METRIC)

    def __str__(self) -> str:
        return self.sentence


class Missing(Refusal):
    """Nothing was given where something is needed."""


class NotAQuantity(Refusal):
    """The text is not a number with a unit that fits the field."""


class OutOfRange(Refusal):
    """The number is understood but lies outside what the formula or the field allows."""


class Unusual(Refusal):
    """The number is possible, but a slip of the finger makes such a one: it is asked about, and the unit answers."""


class Refused(ValueError):
    """Several refusals at once: a form is answered whole, not one field at a time."""

    def __init__(self, refusals: Iterable[Refusal]) -> None:
        self.refusals = tuple(refusals)
        super().__init__(" ".join(refusal.sentence for refusal in self.refusals))


def require_between(field: str, label: Said, value: float, low: float, high: float, quantity: Quantity) -> None:
    """Guard: raise OutOfRange unless low <= value <= high, both SI in the unit of `quantity`."""
    if not low <= value <= high:  # a NaN fails this too
        told = {"label": said(label), "low": Amount(low, quantity), "high": Amount(high, quantity)}
        raise OutOfRange(field, Sentence(BETWEEN, told))
