"""What a worksheet is: one pure function and a declaration of its inputs.

The tablet's screen, `python -m core NAME`, the reference page and the tests all read this one declaration. The register
of all worksheets is `core.worksheets`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from attrs import field, frozen

from core.quantities import METRIC, Amount, Quantity, Reader
from core.reading import is_bare, read
from core.refusals import BETWEEN, OR_ZERO, Missing, OutOfRange, Refusal, Refused, Unusual
from core.sentence import Message, Said, Sentence, listed, said
from core.usual import USUAL, Range, ask, is_usual
from core.verdict import Verdict
from core.working import Figure

Value = float | str | None


@frozen
class Number:
    """A typed quantity. low, high, default: SI, both bounds inclusive. An optional input may be left empty (None).

    usual: SI; a number that is typed without its unit and lies outside is asked about. None: as USUAL has it for the
    kind of reading, if it has it.
    or_zero: none at all is an answer as well, though the least that is some lies above it.
    """

    key: str
    label: Message
    quantity: Quantity
    low: float
    high: float
    default: float | None = None
    optional: bool = False
    help: Said = ""
    usual: Range | None = None
    or_zero: bool = False

    def read(self, text: str, reader: Reader) -> float | None:
        if self.optional and not text.strip():
            return None
        value = self.check(read(text, self.quantity, reader, field=self.key, label=self.label))
        usual = self.usual_here
        if usual is not None and is_bare(text) and not is_usual(value, usual):
            raise ask(self.key, self.label, value, self.quantity, usual, reader)
        return value

    @property
    def usual_here(self) -> Range | None:
        return USUAL.get(self.quantity.key) if self.usual is None else self.usual

    def asks(self, text: str, reader: Reader) -> bool:
        """Whether this text is asked about, rather than taken or refused."""
        try:
            self.read(text, reader)
        except Refusal as refusal:
            return isinstance(refusal, Unusual)
        return False

    def check(self, value: float) -> float:
        """Bounds are held to one part in 10⁹, so that 0.25 % typed is not above a bound of 0.25 %; then it is that."""
        slack = 1e-9 * max(abs(self.low), abs(self.high))
        if self.or_zero and value == 0:
            return 0.0
        if not self.low - slack <= value <= self.high + slack:
            low, high = Amount(self.low, self.quantity), Amount(self.high, self.quantity)
            words = OR_ZERO if self.or_zero else BETWEEN
            raise OutOfRange(self.key, Sentence(words, {"label": said(self.label), "low": low, "high": high}))
        return min(max(value, self.low), self.high)


@frozen
class Choice:
    """One of a few words. options: key → how it is said. listed: drawn as a list to open, as what has many options or
    seldom changes."""

    key: str
    label: Message
    options: Mapping[str, Said]
    default: str | None = None
    help: Said = ""
    listed: bool = False

    def read(self, text: str, reader: Reader) -> str:
        chosen = text.strip()
        if not chosen:
            raise Missing(self.key, Sentence("Choose one for “{label}”.", {"label": said(self.label)}))
        if chosen not in self.options:
            told = {"label": said(self.label), "options": listed(tuple(self.options), "or")}
            raise OutOfRange(self.key, Sentence("{label} must be {options}.", told))
        return chosen


Input = Number | Choice


@frozen
class Answer:
    """What a worksheet comes to: figures, the answer first, and a verdict where it gives one."""

    figures: tuple[Figure, ...]
    verdict: Verdict | None = None


@frozen
class Worksheet:
    """A single sum. name: what `python -m core` and the address bar call it. stage: the room it belongs to.

    question: what it answers, as a cook would ask. compute takes the inputs by key and returns figures, the answer
    first. It may raise a Refusal naming an input. judge, where there is one, takes the same inputs and gives a verdict.
    example: texts that fill it in, in metric; the documentation and the tests answer it. shape: the inputs that belong
    to what is chosen in those named by `shaped_by`, where not all do; a screen draws no others.
    """

    name: str
    title: Message
    stage: str
    question: Message
    inputs: tuple[Input, ...]
    compute: Callable[..., tuple[Figure, ...]]
    judge: Callable[..., Verdict] | None = None
    example: Mapping[str, str] = field(factory=dict[str, str])
    shape: Callable[[Mapping[str, str]], tuple[Input, ...]] | None = None
    shaped_by: tuple[str, ...] = ()

    def drawn(self, texts: Mapping[str, str]) -> tuple[Input, ...]:
        return self.shape(texts) if self.shape else self.inputs

    def read(self, texts: Mapping[str, str], reader: Reader = METRIC) -> dict[str, Value]:
        """The inputs' SI values. Raises Refused with one refusal for each field that cannot stand."""
        return read_inputs(self.inputs, texts, reader)

    def answer(self, texts: Mapping[str, str], reader: Reader = METRIC) -> Answer:
        """Read, compute and judge in one go. Raises Refused."""
        values = self.read(texts, reader)
        try:
            return Answer(self.compute(**values), self.judge(**values) if self.judge else None)
        except Refusal as refusal:
            raise Refused([refusal]) from refusal


def read_inputs(inputs: tuple[Input, ...], texts: Mapping[str, str], reader: Reader = METRIC) -> dict[str, Value]:
    """Every input read, or Refused with a refusal for each one that cannot be.

    An input that is not named at all takes its default; one that was emptied does not.
    """
    values: dict[str, Value] = {}
    refusals: list[Refusal] = []
    for each in inputs:
        if each.key not in texts and each.default is not None:
            values[each.key] = each.default
            continue
        try:
            values[each.key] = each.read(texts.get(each.key, ""), reader)
        except Refusal as refusal:
            refusals.append(refusal)
    if refusals:
        raise Refused(refusals)
    return values
