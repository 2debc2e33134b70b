"""A figure shows its working: the value, how it was reached, who says so, and what to beware of."""

from __future__ import annotations

from attrs import field, frozen

from core.quantities import Amount, Quantity, Reader
from core.sentence import Said, Sentence, each_said
from core.sources import Source


@frozen
class Figure:
    """One result of a public calculation.

    key: short name, unique within a result. name: as the trade says it. value: SI, in the unit of `quantity`.
    low, high: the range the evidence supports, SI, or None where the value is exact arithmetic.
    cautions: calm sentences to stand beside the figure.
    """

    key: str
    name: Said
    value: float
    quantity: Quantity
    working: tuple[Sentence, ...]
    source: Source
    cautions: tuple[Sentence, ...] = field(default=(), converter=each_said)
    low: float | None = None
    high: float | None = None

    @property
    def amount(self) -> Amount:
        return Amount(self.value, self.quantity)

    def show(self, reader: Reader) -> str:
        return self.amount.show(reader)
