"""Reading typed quantities: "12 lb 4 oz", "1,5 kg", "55 °F", "3 qt", "1/2 tsp". Nonsense is refused with a sentence."""

from __future__ import annotations

import re

from core.quantities import METRIC, Manner, Quantity, Unit
from core.refusals import Missing, NotAQuantity

LONGEST = 60
"""No quantity takes more characters than this; a longer text was pasted by mistake."""

_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_SPACES = "\u00a0\u202f\u2009\u2007"
_NUMBER = r"(?P<sign>[+-]?)\s*(?P<number>\d+\s+\d+/\d+|\d+/\d+|\d[\d.,' ]*|[.,]\d+)"
_TERM = re.compile(_NUMBER + r"\s*(?P<unit>[^\d\s.,+\-][^\d+\-]*?)?\s*(?=[\d+\-.,]|$)")
_GROUPED = re.compile(
    r"\d{1,3}(?:[ ']\d{3})+(?:[.,]\d+)?|\d{1,3}(?:,\d{3})+\.\d+|\d{1,3}(?:\.\d{3})+,\d+|\d{1,3}(?:[,.]\d{3}){2,}"
)
_PLAIN = re.compile(r"\d+|\d*[.,]\d+|\d+[.,]")


def read(text: str, quantity: Quantity, manner: Manner = METRIC, *, field: str = "", label: str = "") -> float:
    """The SI value of what was typed. A bare number is in the quantity's usual unit of the reader's system.

    Raises Missing for an empty text and NotAQuantity, with a sentence and an example, for anything else that is not
    exactly one quantity of this kind.
    """
    example = quantity.example(manner)
    if not text.strip():
        raise Missing(field, f"Enter {_the(label) if label else quantity.noun}, for example {example}.")
    if len(text) > LONGEST:
        raise NotAQuantity(field, f"This is too long for {quantity.noun}. Enter a number, for example {example}.")
    terms = _terms(text, quantity, manner, field, example)
    return _join(terms, quantity, field, example)


def _the(label: str) -> str:
    return f"the {label[:1].lower()}{label[1:]}"


def _terms(text: str, quantity: Quantity, manner: Manner, field: str, example: str) -> list[tuple[float, Unit]]:
    cleaned = _clean(text)
    terms: list[tuple[float, Unit]] = []
    at = 0
    while at < len(cleaned):
        found = _TERM.match(cleaned, at)
        if found is None or found.end() == at:
            raise NotAQuantity(
                field, f"“{text.strip()}” is not {quantity.noun}. Enter a number, for example {example}."
            )
        value = _number(found["number"].strip(), manner, field, quantity, example, text)
        terms.append((-value if found["sign"] == "-" else value, _unit(found["unit"], quantity, manner, field)))
        at = found.end()
        while at < len(cleaned) and cleaned[at] == " ":
            at += 1
    return terms


def _clean(text: str) -> str:
    for fraction, plain in _VULGAR.items():
        text = text.replace(fraction, " " + plain)
    for space in _SPACES:
        text = text.replace(space, " ")
    return text.replace("\u2212", "-").replace("\u2019", "'").strip()


def _number(text: str, manner: Manner, field: str, quantity: Quantity, example: str, typed: str) -> float:
    if "/" in text:
        return _fraction(text, field, quantity, example)
    if _GROUPED.fullmatch(text):
        mark = max(text.rfind("."), text.rfind(","))
        is_decimal = mark >= 0 and text.count(text[mark]) == 1
        whole, part = (text[:mark], text[mark + 1 :]) if is_decimal else (text, "0")
        return float(re.sub(r"[ ',.]", "", whole) + "." + part)
    if not _PLAIN.fullmatch(text):
        raise NotAQuantity(field, f"“{typed.strip()}” is not {quantity.noun}. Enter a number, for example {example}.")
    _refuse_two_meanings(text, manner, field)
    return float(text.replace(",", "."))


def _refuse_two_meanings(text: str, manner: Manner, field: str) -> None:
    """1,250 on a page that writes 1.5 may be a thousand or a decimal: a factor of 1000 is asked about, never guessed."""
    other = "," if manner.decimal == "." else "."
    whole, mark, part = text.partition(other)
    if mark and len(part) == 3 and 1 <= len(whole) <= 3 and not whole.startswith("0"):
        raise NotAQuantity(
            field, f"“{text}” can mean {whole}{part} or {whole}{manner.decimal}{part}. Enter it as one or the other."
        )


def _fraction(text: str, field: str, quantity: Quantity, example: str) -> float:
    whole, _, part = text.rpartition(" ")
    above, below = part.split("/")
    if float(below) == 0:
        raise NotAQuantity(field, f"“{text}” divides by nothing. Enter {quantity.noun}, for example {example}.")
    return (float(whole) if whole.strip() else 0.0) + float(above) / float(below)


def _unit(typed: str | None, quantity: Quantity, manner: Manner, field: str) -> Unit:
    if not typed or not typed.strip():
        return quantity.bare(manner.system)
    wanted = " ".join(typed.lower().split())
    for unit in quantity.units:
        if wanted == unit.symbol.lower() or wanted in unit.spellings:
            return unit
    known = [unit.symbol for unit in quantity.units if unit.symbol]
    if not known:
        raise NotAQuantity(field, f"“{typed.strip()}” does not belong here: {quantity.noun} has no unit.")
    listed = known[0] if len(known) == 1 else ", ".join(known[:-1]) + " or " + known[-1]
    raise NotAQuantity(field, f"“{typed.strip()}” is not a unit for {quantity.noun}. Use {listed}.")


def _join(terms: list[tuple[float, Unit]], quantity: Quantity, field: str, example: str) -> float:
    """One term, or a compound of falling units whose later parts stay below one of the unit before: 12 lb 4 oz."""
    first, unit = terms[0]
    total = unit.to_si(first)
    for value, smaller in terms[1:]:
        if (
            unit.shift
            or smaller.factor >= unit.factor
            or value < 0
            or first < 0
            or value * smaller.factor >= unit.factor
        ):
            raise NotAQuantity(
                field, f"These parts do not make one {quantity.noun.split(' ', 1)[-1]}. Enter it like {example}."
            )
        total += smaller.to_si(value)
        unit = smaller
    return total
