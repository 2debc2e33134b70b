"""What the head of a column says: the words for temperature, humidity and the rest, in the languages of many loggers.

A word that is not known here decides nothing: the column is then known by its unit, or asked about.
"""

from __future__ import annotations

import re

from core.chamber.logs.column import ElapsedUnit, Order, Role
from core.chamber.logs.head_words import (
    COUNTS,
    FILLERS,
    HUMIDITY,
    NOT_WANTED,
    PLACES,
    PROBE,
    SUMMARY,
    TEMPERATURE,
    TIME,
    any_of,
)
from core.chamber.logs.scales import Unit
from core.chamber.logs.values import unit_of

_DEGREE = any_of(
    r"(?:[°º˚\ufffd?ø]|â°|\bdeg(?:rees?)?\.?[ _]?|grad[ _]?|&deg;)([CF])(?![^\W\d_])(?!\s?/\s?[^\W\d_])",
    *("(celsius)", "(fahrenheit)", "([℃℉])", r"(kelvin)", r"[(\[]\s*(K)\s*[)\]]"),
)
_BRACKETED = re.compile(r"[(\[]\s*([CF])\s*[)\]]", re.IGNORECASE)
_THOUSANDTHS = re.compile(r"(?<![^\W\d_])m\s?[°º]?\s?C(?![^\W\d_])|_mC$", re.IGNORECASE)
_END_LETTER = re.compile(r"(?<=[ _.\-/])([^\W\d_])\s*$")
_STATE = any_of(
    "stat(?!ion)",
    "state",
    "event",
    "note",
    "alarm",
    "comment",
    "message",
    "mode",
    "flag",
    "bemerk",
    "zustand",
    r"(?<![^\W\d_])ok(?![^\W\d_])",
)
_PERCENT = any_of("%", r"(?<=[(\[ ])‰", r"\bpct\b", r"\bpercent\b")
_ELAPSED = re.compile(
    r"(?:[(\[_ ]|^)(ms|msec|millis|milliseconds|s|sec|secs|seconds|min|mins|minutes|h|hr|hrs|hours|d|days)(?:[)\]]|$)",
    re.IGNORECASE,
)
_FIRST_LETTERS: dict[str, ElapsedUnit] = {"s": "s", "h": "h", "d": "d", "m": "ms"}
_FROM_A_START = any_of("elapsed", "since", "run.?time", "durat", "dauer", "laufzeit", "durée", "kesto", "verstreken")
_PATTERN = re.compile(r"\b([dtjmya]{1,4})([-./ ])([dtjmya]{1,4})\2([dtjmya]{1,4})\b", re.IGNORECASE)


def role_in(label: str) -> Role:
    """What a value column's head says it holds: temperature, humidity, ignored (a thing not wanted) or unknown."""
    if NOT_WANTED.search(label):
        return "ignored"
    temperature, humidity = TEMPERATURE.search(label), HUMIDITY.search(label)
    if temperature and humidity:
        return "unknown"
    return "temperature" if temperature else "humidity" if humidity else "unknown"


def names_a_probe(label: str) -> bool:
    """Whether a head without a quantity is a word for a probe, as that of a column of names or of "Probe 1" is."""
    is_probe = bool(PROBE.search(label)) and not says_state(label)
    return is_probe and role_in(label) == "unknown" and not unit_in(label)


def tells_where(name: str) -> bool:
    """Whether what is left of a head only numbers a probe, or says where it is: then it is one."""
    words = re.findall(r"[^\W\d_]+|[0-9]+", name.lower())
    return all(len(word) == 1 or word.isdecimal() or word in PLACES or bool(PROBE.search(word)) for word in words)


def counts_rows(label: str) -> bool:
    return bool(COUNTS.search(label.strip()))


def names_time(label: str) -> bool:
    return bool(TIME.search(label))


def counts_from_a_start(label: str) -> bool:
    return bool(_FROM_A_START.search(label))


def unit_in(label: str) -> Unit:
    """The unit that a head states beyond doubt: degree sign, word, letter in brackets or %. "" for none or two."""
    found: set[Unit] = {_letter(match.group(0)) for match in _DEGREE.finditer(label)}
    found = found or {_letter(match[1]) for match in _BRACKETED.finditer(label)}
    found = found or ({"°C"} if _THOUSANDTHS.search(label) else set())
    if not found:
        return "%" if _PERCENT.search(label) else ""
    return found.pop() if len(found) == 1 else ""


def end_letter(label: str) -> str:
    """A letter by itself at the end of a head: C may be a unit or a probe's letter, which only its neighbours tell."""
    found = _END_LETTER.search(label)
    return found[1].upper() if found else ""


def sums_up(text: str) -> bool:
    """Whether a cell says that its row sums up others."""
    return bool(SUMMARY.fullmatch(text.strip(" :.\u00a0")))


def says_state(label: str) -> bool:
    return bool(_STATE.search(label))


def _letter(text: str) -> Unit:
    plain = text.strip().upper()
    if plain.strip("()[] ") in ("K", "KELVIN"):
        return "K"
    return "°F" if plain.startswith("FAHR") or plain[-1] in "F℉" else "°C"


def probe_in(label: str, letter_is_unit: bool) -> str:
    """What is left of a head without its quantity and unit: "Cellar back" of "Temp. Cellar back (°C)"."""
    plain = re.sub(r"[(\[][^)\]]*[)\]]", " ", label) if unit_of(_bracket(label)) else label
    plain = _DEGREE.sub(" ", plain)
    if letter_is_unit:
        plain = _END_LETTER.sub(" ", plain)
    words = re.findall(r"[^\W\d_]+|[0-9]+", plain)
    kept = [word for word in words if word.casefold() not in FILLERS and not _is_quantity(word)]
    return " ".join(kept)


def _bracket(label: str) -> str:
    found = re.search(r"[(\[]([^)\]]*)[)\]]", label)
    return found[1] if found else ""


def _is_quantity(word: str) -> bool:
    return bool(TEMPERATURE.search(word) or HUMIDITY.search(word))


def elapsed_unit_in(label: str) -> ElapsedUnit:
    """s, min, h or d where the head of a time column names it, else ""."""
    found = _ELAPSED.search(label)
    if not found:
        return ""
    word = found[1].lower()
    return "min" if word.startswith("min") else _FIRST_LETTERS[word[0]]


def order_in(label: str) -> Order:
    """The order that a head spells out, such as DD/MM/YYYY or TT.MM.JJJJ; "" where it spells none."""
    found = _PATTERN.search(label)
    if not found:
        return ""
    letters = "".join(_part(part) for part in (found[1], found[3], found[4]))
    return letters if letters in ("ymd", "dmy", "mdy") else ""


def _part(text: str) -> str:
    lower = text.lower()
    if set(lower) == {"m"}:
        return "m"
    return "y" if len(lower) == 4 or set(lower) <= {"y", "a"} else "d"
