"""A figure shows its working: the value, how it was reached, who says so, and what to beware of."""

from __future__ import annotations

from attrs import field, frozen

from core.quantities import Amount, Manner, Quantity
from core.sources import Source


@frozen
class Step:
    """One line of working: a formula in words with the numbers put in.

    `text` names its amounts in braces: Step("{salt} × {strength} = {nitrite}", {"salt": Amount(0.031, MASS), …}).
    The amounts stay in SI; each is shown in the reader's own units when the line is said.
    """

    text: str
    amounts: dict[str, Amount] = field(factory=dict[str, Amount])

    def say(self, manner: Manner, significant: int = 6) -> str:
        """The line in the reader's units. A sentence wants fewer digits than a sum that is to be checked."""
        shown = {name: amount.show_exact(manner, significant) for name, amount in self.amounts.items()}
        return self.text.format_map(shown)


@frozen
class Figure:
    """One result of a public calculation.

    key: short name, unique within a result. name: as the trade says it. value: SI, in the unit of `quantity`.
    low, high: the range the evidence supports, SI, or None where the value is exact arithmetic.
    cautions: calm sentences to stand beside the figure.
    """

    key: str
    name: str
    value: float
    quantity: Quantity
    working: tuple[Step, ...]
    source: Source
    cautions: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None

    @property
    def amount(self) -> Amount:
        return Amount(self.value, self.quantity)

    def show(self, manner: Manner) -> str:
        return self.amount.show(manner)
