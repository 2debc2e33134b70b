"""What is said, apart from how it is said: a constant text, and what goes into it.

Only `Sentence.say` knows the reader's units, decimal mark and language. A name somebody typed is a value too, never
part of the text: it may hold braces.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from functools import reduce
from string import Formatter
from typing import Literal, cast

from attrs import evolve, field, frozen

from core.language import Message, translated, translated_count
from core.numbers_within import with_mark
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

    text: Message
    values: Mapping[str, Value] = field(factory=dict[str, "Value"], hash=False)
    plural: Message = field(default="", kw_only=True)

    def say(self, reader: Reader, significant: int = 6) -> str:
        """In the reader's units and language. A sentence wants fewer digits than a sum that is to be checked."""
        units = self._one_unit_each(reader.system) if self._is_sum else {}
        shown = {name: _shown(value, reader, significant, units.get(name)) for name, value in self.values.items()}
        return self.worded(reader).format_map(shown)

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

    def worded(self, reader: Reader) -> str:
        """The text in the reader's language and with their decimal mark, its values still named."""
        return with_mark(self._in(reader.language), reader.decimal, is_sum=self._is_sum)

    def _in(self, language: str) -> str:
        count = self.values.get("count")
        if not self.plural or not isinstance(count, Amount):
            return translated(self.text, language)
        whole = round(count.value)
        return translated_count(self.text, self.plural, whole if whole == count.value else 2, language)

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


@frozen
class Rounded:
    """An amount as a figure shows it, rounded to what the evidence usually carries; or to so many digits."""

    amount: Amount
    significant: int = 0

    def say(self, reader: Reader) -> str:
        return self.amount.show_exact(reader, self.significant) if self.significant else self.amount.show(reader)


Value = Amount | Rounded | str | date | Sentence
Said = Message | Sentence
"""What a declaration may give where something is shown: a constant text, or a sentence with its values."""


def said(text: Said) -> Sentence:
    return text if isinstance(text, Sentence) else Sentence(text)


def as_typed(text: str) -> Sentence:
    """What somebody called a thing, where something is said."""
    return Sentence("{text}", {"text": text})


def formula(text: str, values: Mapping[str, Value]) -> Sentence:
    """A sum whose text is put together: names of amounts and signs between them, the same in every language."""
    return Sentence(cast(Message, text), values)


def each_said(texts: Iterable[Said]) -> tuple[Sentence, ...]:
    return tuple(map(said, texts))


def listed(items: Sequence[Value], last: Literal["and", "or"] = "and") -> Value:
    """ "a, b and c", as one value. Raises IndexError where there is none."""
    *rest, end = items
    if not rest:
        return end
    two = Sentence("{before} and {last}") if last == "and" else Sentence("{before} or {last}")
    return evolve(two, values={"before": in_a_row(rest), "last": end})


def in_turn(sentences: Iterable[Sentence]) -> Sentence:
    """One after another, as one. Raises TypeError where there is none."""
    return reduce(lambda one, other: Sentence("{before} {next}", {"before": one, "next": other}), sentences)


def day_and_month(day: date) -> Sentence:
    """ "3 Nov", where the year is plain."""
    return Sentence(DAY_AND_MONTH, {"day": str(day.day), "month": Sentence(MONTHS[day.month - 1])})


def in_a_row(items: Sequence[Value]) -> Value:
    """ "a, b, c", as one value. Raises ValueError where there is none."""
    first, *rest = items
    return Sentence(IN_A_ROW, {"before": in_a_row(items[:-1]), "next": items[-1]}) if rest else first


MONTHS: tuple[Message, ...] = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
DAY_AND_MONTH: Message = "{day} {month}"
DAY_OF: Message = "{day} {month} {year}"
MOMENT: Message = "{date}, {time}"
IN_A_ROW: Message = "{before}, {next}"


def _shown(value: Value, reader: Reader, significant: int, unit: Unit | None) -> str:
    match value:
        case Amount():
            return value.show_exact(reader, significant, unit)
        case Rounded():
            return value.say(reader)
        case Sentence():
            return value.say(reader, significant)
        case datetime():
            day = _shown(value.date(), reader, significant, None)
            return translated(MOMENT, reader.language).format(date=day, time=f"{value:%H:%M}")
        case date():
            month = translated(MONTHS[value.month - 1], reader.language)
            return translated(DAY_OF, reader.language).format(day=value.day, month=month, year=value.year)
        case _:
            return value
