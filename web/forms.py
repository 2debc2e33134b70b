"""Forms: what was typed, what it means, and what is wrong with it. Nothing typed is ever lost on the way."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta
from typing import Any, Protocol

from attrs import field, frozen
from werkzeug.datastructures import MultiDict

from core.daybook.facts.instruments import InstrumentKind
from core.quantities import COUNT, Amount, Quantity, Reader, show_number
from core.refusals import Missing, NotAQuantity, OutOfRange, Refusal, Refused
from core.sentence import Message, Said, Sentence, said
from core.worksheet import Number
from web.visitor import now, offset_at

LATEST = timedelta(minutes=2)
"""A device's clock may run a little ahead of the moment that was typed."""
MOST_KEPT = 20_001
"""Characters of one text; as much as the page itself sends. More was pasted by mistake and is refused all the same."""


@frozen
class Words:
    """A line of text: a name, a tag, a note."""

    key: str
    label: Said
    longest: int = 60
    optional: bool = False
    example: Message = ""
    help: Said = ""

    def read(self, text: str, reader: Reader) -> str:
        words = " ".join(text.split())
        if not words and not self.optional:
            told = {"label": said(self.label), "example": said(self.example)}
            raise Missing(self.key, Sentence("Enter “{label}”, for example {example}.", told))
        if len(words) > self.longest:
            told = {"label": said(self.label), "count": Amount(self.longest, COUNT)}
            raise OutOfRange(self.key, Sentence("{label} can have {count} characters at most.", told))
        return words


NOW, YESTERDAY, BY_HAND = "now", "yesterday", "moment"
CHOSEN = "when"
"""The choice of one of these three; by hand, the day and time stand in the box of the moment itself."""


@frozen
class Moment:
    """When it happened, by the device's own clock: NOW, which empty means too, YESTERDAY at this time, or a day and
    time. by_hand: whether nothing but a day and time is offered."""

    key: str = "happened"
    label: Message = "When"
    help: Message = ""
    by_hand: bool = False

    def read(self, text: str, reader: Reader) -> datetime:
        present = now()
        if text.strip() in ("", NOW):
            return present
        if text.strip() == YESTERDAY:
            text = (present.replace(tzinfo=None) - timedelta(days=1)).isoformat()
        try:
            typed = datetime.fromisoformat(text.strip()).replace(tzinfo=None)
        except ValueError:
            raise NotAQuantity(self.key, "Enter the day and time, for example 2026-11-25 17:30.") from None
        moment = typed.replace(tzinfo=offset_at(typed))
        if moment > present + LATEST:
            raise OutOfRange(self.key, "The time must not be later than now.")
        if moment.year < 2000:
            raise OutOfRange(self.key, "The day must be in this century.")
        return moment


@frozen
class Ticks:
    """Any number of a few words. Its value is the tuple of ticked keys."""

    key: str
    label: Said
    options: Mapping[str, Said]
    help: Said = ""

    def read(self, text: str, reader: Reader) -> tuple[str, ...]:
        ticked = tuple(text.split())
        if not self.options.keys() >= set(ticked):  # what was ticked is never taken for "nothing wrong"
            raise OutOfRange(self.key, "Tick what is listed here, or nothing.")
        return ticked


@frozen
class ReadWith:
    """Which instrument it was read on. Asked only where some of these kinds are kept (`web.instruments.offer`)."""

    key: str
    label: Said
    kinds: tuple[InstrumentKind, ...]
    optional: bool = True


@frozen
class OptionalChoice:
    """One of a few words, or none of them: its value is then None. none: the option that means it, as an empty answer
    does. The rest as in Choice."""

    key: str
    label: Said
    options: Mapping[str, Said]
    default: str | None = None
    help: Said = ""
    none: str = ""
    optional: bool = True

    def read(self, text: str, reader: Reader) -> str | None:
        chosen = text.strip()
        if chosen in ("", self.none):
            return None
        if chosen not in self.options:
            raise OutOfRange(self.key, "Choose one of those listed.")
        return chosen


class Input(Protocol):
    """Whatever a form asks for. read: what the text means; raises a Refusal that says what would be right."""

    @property
    def key(self) -> str: ...

    @property
    def label(self) -> Said: ...

    def read(self, text: str, reader: Reader) -> object: ...


Values = dict[str, Any]
"""By input key, what each input has read."""


@frozen
class Form:
    """A form as it stands: texts by input key, and refusals by input key ("" is about the whole)."""

    token: str
    inputs: tuple[Input, ...]
    texts: dict[str, str] = field(factory=dict[str, str])
    refusals: dict[str, Sentence] = field(factory=dict[str, Sentence])

    def text(self, key: str) -> str:
        return self.texts.get(key, "")

    @property
    def first_empty(self) -> str:
        """The key of the first box that waits for something; of all filled, the first."""
        return next((each.key for each in self.inputs if not self.text(each.key)), self.inputs[0].key)

    @property
    def carried(self) -> dict[str, str]:
        """What was typed into boxes that this shape of the form does not draw."""
        drawn = {name for each in self.inputs for name in (each.key, f"{each.key}-unit")}
        return {key: text for key, text in self.texts.items() if key not in drawn and text}

    def is_filled(self, inputs: Iterable[Input]) -> bool:
        """Whether any of these boxes holds something that did not stand there from the first, or was refused."""
        return any(self._holds(each) or each.key in self.refusals for each in inputs)

    def _holds(self, each: Input) -> bool:
        return self.text(each.key).strip() not in ("", getattr(each, "default", None))

    @property
    def needed(self) -> tuple[Input, ...]:
        """The boxes that are refused because they are empty."""
        return tuple(each for each in self.inputs if each.key in self.refusals and not self.text(each.key).strip())

    def readable(self, reader: Reader) -> dict[str, str]:
        """The texts with the unit that was picked beside the box put after a number that was typed without one.

        The unit that stands there from the first was not picked: such a number stays bare, and may be asked about.
        """
        return {
            each.key: _with_unit(self.text(each.key), self._picked(each, reader))
            for each in self.inputs
            if each.key in self.texts
        }

    def _picked(self, each: Input, reader: Reader) -> str:
        unit = self.text(f"{each.key}-unit")
        stood_there = isinstance(each, Number) and unit == each.quantity.bare(reader.system).symbol
        return "" if stood_there else unit

    def refused(self, refused: Refused | Refusal) -> Form:
        each = refused.refusals if isinstance(refused, Refused) else (refused,)
        sentences: dict[str, Sentence] = {}
        for one in each:
            sentences.setdefault(one.field, one.said)
        return Form(self.token, self.inputs, self.texts, sentences)

    def read(self, reader: Reader) -> Values:
        """Every input's value. Raises Refused with a sentence for each that cannot stand."""
        values: Values = {}
        refusals: list[Refusal] = []
        texts = self.readable(reader)
        for each in self.inputs:
            try:
                values[each.key] = each.read(texts.get(each.key, ""), reader)
            except Refusal as refusal:
                refusals.append(refusal)
        if refusals:
            raise Refused(refusals)
        return values


def from_request(inputs: tuple[Input, ...], given: MultiDict[str, str], token: str) -> Form:
    """The form as sent, but for what no hand has typed; several ticks of one name become one text."""
    keys = [name for each in inputs for name in (each.key, f"{each.key}-unit") if name in given]
    texts = {key: " ".join(given.getlist(key))[:MOST_KEPT] for key in keys}
    return Form(token, inputs, texts | {each.key: moment_in(given) for each in inputs if isinstance(each, Moment)})


def moment_in(given: Mapping[str, str]) -> str:
    """As the choice says; where none was offered, the day and time, or nothing."""
    chosen = given.get(CHOSEN, "")
    return chosen if chosen in (NOW, YESTERDAY) else given.get("happened", "").strip()[:MOST_KEPT]


_UNIT_SIGN = re.compile(r"""[%°˚℃℉#"“”″]|['‘’′](?![0-9]{3})""")  # 1'250 is a bare number


def _with_unit(text: str, unit: str) -> str:
    has_its_own = any(sign.isalpha() for sign in text) or _UNIT_SIGN.search(text)
    return text if has_its_own or not text.strip() or not unit else f"{text} {unit}"


def typed(value: float | None, quantity: Quantity, reader: Reader) -> str:
    """A value as one would type it into its box: a bare number, for the unit stands beside it."""
    if value is None:
        return ""
    number = quantity.bare(reader.system).from_si(value)
    decimals = max(0, min(12, 6 - math.floor(math.log10(abs(number))))) if number else 0  # seven digits, however small
    rounded = Amount(value, quantity).rounded(quantity.bare(reader.system), decimals)
    return show_number(rounded, decimals, reader, trim=True).replace("\u00a0", "")


def suggested(value: float, quantity: Quantity, reader: Reader) -> str:
    """A default as one would type it: a number without end only as finely as it is shown, 14.6 and not 14.5823."""
    number, rung = quantity.bare(reader.system).from_si(value), quantity.ladder(reader.system)[-1]
    is_endless = not math.isclose(number, float(f"{number:.7g}"), rel_tol=1e-12)
    if not is_endless or rung.unit != quantity.bare(reader.system):
        return typed(value, quantity, reader)
    return show_number(number, rung.decimals, reader, trim=True).replace("\u00a0", "")
