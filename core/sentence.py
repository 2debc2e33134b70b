"""What is said, apart from how it is said: a constant text, and what goes into it.

Only `Sentence.say` knows the reader's units and decimal mark. A name somebody typed is a value too, never part of
the text: it may hold braces.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime
from string import Formatter

from attrs import field, frozen

from core.quantities import Amount, DisplayUnit, Reader, System
from core.units import Unit

EQUALS = (" = ", " → ")
"""What tells a sum: within one, each kind of amount keeps to one unit."""


@frozen
class Sentence:
    """A text that names its values in braces: Sentence("{salt} × {strength} = {nitrite}", {"salt": …}).

    A value is an amount, a name as it was typed, a day, a moment, or another sentence. Amounts stay in SI; each is
    shown in the reader's own units when the sentence is said; those of one kind in a sum, in one unit. plural: the text
    where its "count" is not one.
    """

    text: str
    values: Mapping[str, Value] = field(factory=dict[str, "Value"])
    plural: str = field(default="", kw_only=True)

    def say(self, reader: Reader, significant: int = 6) -> str:
        """In the reader's units. A sentence wants fewer digits than a sum that is to be checked."""
        units = self._one_unit_each(reader.system) if self._is_sum else {}
        shown = {name: _shown(value, reader, significant, units.get(name)) for name, value in self.values.items()}
        return self._text.format_map(shown)

    @property
    def _is_sum(self) -> bool:
        return any(sign in self.text for sign in EQUALS)

    def _one_unit_each(self, system: System) -> dict[str, Unit]:
        """By name: the unit of the largest of the amounts that share its ladder. Nobody adds pounds to ounces."""
        amounts = {name: value for name, value in self.values.items() if isinstance(value, Amount)}
        largest: dict[tuple[DisplayUnit, ...], Amount] = {}
        for amount in sorted(amounts.values(), key=lambda each: abs(each.value)):
            largest[amount.quantity.ladder(system)] = amount
        return {name: largest[each.quantity.ladder(system)].unit(system) for name, each in amounts.items()}

    @property
    def _text(self) -> str:
        count = self.values.get("count")
        return self.plural if self.plural and isinstance(count, Amount) and count.value != 1 else self.text

    @property
    def amounts(self) -> dict[str, Amount]:
        """The quantities that it tells, also in the sentences within it."""
        found: dict[str, Amount] = {}
        for name in self.names:
            value = self.values[name]
            if isinstance(value, Amount):
                found[name] = value
            elif isinstance(value, Sentence):
                found |= value.amounts
        return found

    @property
    def names(self) -> tuple[str, ...]:
        """Of the values that its text tells, in that order."""
        return tuple(dict.fromkeys(name for _, name, _, _ in Formatter().parse(self.text) if name))


Value = Amount | str | date | Sentence


def _shown(value: Value, reader: Reader, significant: int, unit: Unit | None) -> str:
    match value:
        case Amount():
            return value.show_exact(reader, significant, unit)
        case Sentence():
            return value.say(reader, significant)
        case datetime():
            return f"{value.day} {value:%b %Y, %H:%M}"
        case date():
            return f"{value.day} {value:%b %Y}"
        case _:
            return value
