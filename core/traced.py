"""Amounts that remember how they came to be: one expression gives a value and the line of working that shows it.

    start, now = traced("start", 1.25, MASS), traced("now", 0.85, MASS)
    ((start - now) / start).figure("loss", "Loss", LOSS)        32 %, by ({start} − {now}) ÷ {start} = {result}

Whole numbers stand in the line as they are; any other constant is an amount with a name. The quantity of what comes
out is said where it is made. A sum that is a method rather than an expression keeps a line of its own words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Literal

from attrs import frozen

from core.quantities import Amount, Quantity
from core.sentence import Message, Said, Sentence, Value, formula
from core.sources import DEFINITION, Source
from core.working import Figure

Sign = Literal["+", "−", "×", "÷"]
_DO: Mapping[Sign, Callable[[float, float], float]] = {
    "+": float.__add__,
    "−": float.__sub__,
    "×": float.__mul__,
    "÷": float.__truediv__,
}
_BINDS: Mapping[Sign, int] = {"+": 1, "−": 1, "×": 2, "÷": 2}
_NAMED = 3


@frozen
class Traced:
    """value: SI. text: the expression, its amounts in braces. binds: how firmly its last sign holds it together."""

    value: float
    text: str
    amounts: Mapping[str, Amount]
    binds: int = _NAMED

    def __add__(self, other: Traced | int) -> Traced:
        return _joined(self, "+", other)

    def __sub__(self, other: Traced | int) -> Traced:
        return _joined(self, "−", other)

    def __mul__(self, other: Traced | int) -> Traced:
        return _joined(self, "×", other)

    def __truediv__(self, other: Traced | int) -> Traced:
        return _joined(self, "÷", other)

    def __radd__(self, other: int) -> Traced:
        return _joined(other, "+", self)

    def __rsub__(self, other: int) -> Traced:
        return _joined(other, "−", self)

    def __rmul__(self, other: int) -> Traced:
        return _joined(other, "×", self)

    def line(self, quantity: Quantity, words: Message = "", values: Mapping[str, Value] | None = None) -> Sentence:
        """words: what the line says before the sum, a constant text with its own values."""
        result = Amount(self.value, quantity)
        line = formula(f"{self.text} = {{result}}", {**self.amounts, "result": result})
        return Sentence("{words}: {sum}", {"words": Sentence(words, values or {}), "sum": line}) if words else line

    def figure(
        self,
        key: str,
        name: Said,
        quantity: Quantity,
        words: Message = "",
        *,
        before: tuple[Sentence, ...] = (),
        source: Source = DEFINITION,
        cautions: Iterable[Said] = (),
        low: float | None = None,
        high: float | None = None,
    ) -> Figure:
        """before: the lines that lead to this one."""
        working = (*before, self.line(quantity, words))
        return Figure(key, name, self.value, quantity, working, source, cautions, low, high)


def traced(name: str, value: float, quantity: Quantity) -> Traced:
    """An amount as it goes into an expression; its name is its place in the text."""
    return Traced(value, f"{{{name}}}", {name: Amount(value, quantity)})


def _joined(left: Traced | int, sign: Sign, right: Traced | int) -> Traced:
    one, other = (Traced(each, str(each), {}) if isinstance(each, int) else each for each in (left, right))
    binds = _BINDS[sign]
    before = one.text if one.binds >= binds else f"({one.text})"
    after = other.text if other.binds > binds or (other.binds == binds and sign in "+×") else f"({other.text})"
    value = _DO[sign](float(one.value), other.value)
    return Traced(value, f"{before} {sign} {after}", _together(one.amounts, other.amounts), binds)


def _together(one: Mapping[str, Amount], other: Mapping[str, Amount]) -> Mapping[str, Amount]:
    for name in one.keys() & other.keys():
        if one[name] != other[name]:
            raise ValueError(f"two amounts of one expression are called {name}")
    return {**one, **other}
