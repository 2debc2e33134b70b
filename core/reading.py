"""Reading typed quantities: "12 lb 4 oz", "1,5 kg", "55 °F", "3 qt", "1/2 tsp". Nonsense is refused with a sentence."""

from __future__ import annotations

import re
import unicodedata

from attrs import frozen

from core.quantities import METRIC, Quantity, Reader, Unit
from core.refusals import Missing, NotAQuantity
from core.sentence import Message, Said, Sentence, Value, listed, said

LONGEST = 60
"""No quantity takes more characters than this; a longer text was pasted by mistake."""
LONGEST_ECHO = 30
"""How much of what was typed is said back."""

_VULGAR = {
    **{"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5"},
    **{"⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"},
}
_PLAIN_SIGNS = str.maketrans(
    {wide: wide - 0xFEE0 for wide in range(0xFF01, 0xFF5F)}  # full-width forms of East Asian keyboards
    | {ord(dash): "-" for dash in "\u2010\u2011\u2012\u2013\u2212\ufe63"}
    | {ord(tick): "'" for tick in "\u2018\u2019\u2032"}
    | {ord(ditto): '"' for ditto in "\u201c\u201d\u2033"}
    | {ord(slash): "/" for slash in "\u2044\u2215"}
    | {ord(unseen): "" for unseen in "\u00ad\u200b\u200c\u200d\u200e\u200f\u2060\ufeff"}
    | {"º": "°", "˚": "°"}
    | {vulgar: " " + plain for vulgar, plain in _VULGAR.items()}
)

# Every class below excludes the next one's first character, so a match never backtracks far.
_FIGURES = r"[0-9.,](?:[0-9., /]|'(?=[0-9]{3}))*"
_UNIT = r"[^0-9\s+\-.,](?:[^0-9+,.\-]|\.(?![0-9])|-(?=[a-z])|(?<=m)3(?![0-9]))*"
_TERM = re.compile(rf"(?P<sign>[+-]?) ?(?P<figures>{_FIGURES})(?P<unit>{_UNIT})?(?:, )?", re.IGNORECASE)

_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+) )?(?P<above>[0-9]+) ?/ ?(?P<below>[0-9]+)")
_GROUPED = re.compile(
    r"[0-9]{1,3}(?:(?: [0-9]{3})+|(?:'[0-9]{3})+)(?:[.,][0-9]+)?"
    r"|[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+|[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+"
    r"|[0-9]{1,3}(?:(?:,[0-9]{3}){2,}|(?:\.[0-9]{3}){2,})"
)
_PLAIN = re.compile(r"[0-9]+[.,]?|[0-9]*[.,][0-9]+")


@frozen
class _Asked:
    """What the field asks for, so that a refusal can say it."""

    field: str
    quantity: Quantity
    reader: Reader

    def refuse(self, text: Message, **values: Value) -> NotAQuantity:
        return NotAQuantity(self.field, Sentence(text, {**self.told, **values}))

    def nonsense(self, typed: str) -> NotAQuantity:
        return self.refuse("{typed} is not {noun}. Enter a number, for example {example}.", typed=_quoted(typed))

    @property
    def told(self) -> dict[str, Value]:
        return {"noun": Sentence(self.quantity.noun), "example": self.quantity.example(self.reader)}


def read(text: str, quantity: Quantity, reader: Reader = METRIC, *, field: str = "", label: Said = "") -> float:
    """The SI value of what was typed. A bare number is in the quantity's usual unit of the reader's system.

    Raises Missing for an empty text and NotAQuantity, with a sentence and an example, for anything else that is not
    exactly one quantity of this kind.
    """
    asked = _Asked(field, quantity, reader)
    if len(text) > LONGEST:
        raise asked.refuse("This is too long for {noun}. Enter a number, for example {example}.")
    cleaned = _clean(text)
    if not cleaned:
        raise Missing(field, _enter(asked, label))
    if not cleaned.isprintable():
        raise asked.refuse("This holds signs that cannot be seen. Enter a number, for example {example}.")
    return _join(_terms(cleaned, text, asked), asked)


def _enter(asked: _Asked, label: Said) -> Sentence:
    if not label:
        return Sentence("Enter {noun}, for example {example}.", asked.told)
    return Sentence("Enter {noun} for “{label}”, for example {example}.", {**asked.told, "label": said(label)})


def is_bare(text: str) -> bool:
    """Whether what `read` took was a number alone: the box gave it its unit, not the hand."""
    found = _TERM.fullmatch(_clean(text))
    return found is not None and not (found["unit"] or "").strip()


def _quoted(typed: str) -> str:
    """What was typed, in quotation marks: short, on one line, and without characters that hide or turn the text."""
    shown = " ".join("".join(each if each.isprintable() else " " for each in typed).split())
    return f"“{shown}”" if len(shown) <= LONGEST_ECHO else f"“{shown[: LONGEST_ECHO - 1]}…”"


def _clean(text: str) -> str:
    """One plain sign for each kind of dash, tick and space; the digits of every script as 0-9."""
    plain = text.translate(_PLAIN_SIGNS)
    digits = (str(unicodedata.decimal(each)) if each.isdecimal() else each for each in plain)
    return " ".join("".join(digits).split())


def _terms(cleaned: str, typed: str, asked: _Asked) -> list[tuple[float, Unit | None]]:
    """Each number with its unit, None where none was typed."""
    terms: list[tuple[float, Unit | None]] = []
    at = 0
    while at < len(cleaned):
        found = _TERM.match(cleaned, at)
        if found is None:
            raise asked.nonsense(typed)
        value = _number(found["figures"].strip(), typed, asked)
        terms.append((-value if found["sign"] == "-" else value, _unit(found["unit"], asked)))
        at = found.end()
    return terms


def _number(text: str, typed: str, asked: _Asked) -> float:
    if fraction := _FRACTION.fullmatch(text):
        if not float(fraction["below"]):
            words: Message = "{typed} divides by nothing. Enter a number, for example {example}."
            raise asked.refuse(words, typed=_quoted(text))
        return float(fraction["whole"] or 0) + float(fraction["above"]) / float(fraction["below"])
    if _GROUPED.fullmatch(text):
        mark = max(text.rfind("."), text.rfind(","))
        is_decimal = mark >= 0 and text.count(text[mark]) == 1
        whole, part = (text[:mark], text[mark + 1 :]) if is_decimal else (text, "0")
        return float(re.sub(r"[ ',.]", "", whole) + "." + part)
    if not _PLAIN.fullmatch(text):
        raise asked.nonsense(typed)
    _refuse_two_meanings(text, asked)
    return float(text.replace(",", "."))


def _refuse_two_meanings(text: str, asked: _Asked) -> None:
    """Where 1.5 is written, 1,250 may be a thousand or a decimal: a factor of 1000 is asked about, never guessed."""
    mark = asked.reader.decimal
    whole, other, part = text.partition("," if mark == "." else ".")
    if other and len(part) == 3 and 1 <= len(whole) <= 3 and not whole.startswith("0"):
        words: Message = "{typed} can mean {one} or {other}. Enter it as one or the other."
        raise asked.refuse(words, typed=_quoted(text), one=whole + part, other=whole + mark + part)


def _unit(typed: str | None, asked: _Asked) -> Unit | None:
    if not typed or not typed.strip():
        return None
    wanted = typed.lower().strip().rstrip(".")
    units = asked.quantity.units
    for unit in units:
        if wanted == unit.symbol.lower() or wanted in unit.spellings:
            return unit
    known = [unit.symbol for unit in units if unit.symbol]
    if not known:
        words: Message = "{typed} does not belong here: {noun} has no unit. Enter a number, for example {example}."
        raise asked.refuse(words, typed=_quoted(typed))
    words: Message = "{typed} is not a unit for {noun}. Use {units}."
    raise asked.refuse(words, typed=_quoted(typed), units=listed(known, "or"))


def _join(terms: list[tuple[float, Unit | None]], asked: _Asked) -> float:
    """One term, or a compound of falling units whose later parts stay below one of the unit before: 12 lb 4 oz."""
    first, first_unit = terms[0]
    unit = first_unit or asked.quantity.bare(asked.reader.system)
    total = unit.to_si(first)
    for value, smaller in terms[1:]:
        if first_unit is None or smaller is None or first < 0 or not _continues(unit, value, smaller):
            raise asked.refuse("These parts do not make {noun}. Enter it like {example}.")
        total += smaller.to_si(value)
        unit = smaller
    return total


def _continues(unit: Unit, value: float, smaller: Unit) -> bool:
    per = unit.factor / smaller.factor
    of_one_family = per > 1.5 and abs(per - round(per)) < 1e-6 and not unit.shift  # pounds go on in ounces, not grams
    return of_one_family and 0 <= value < per * (1 - 1e-12)
