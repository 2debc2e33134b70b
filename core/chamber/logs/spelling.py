"""Moments in the words of many languages, turned into the one writing that `moments` reads.

Months, halves of the day, words that only decorate a clock, other marks, the clock before its date. What is not known
here stays as it is and is then no moment: it is refused with its text, never guessed.
"""

from __future__ import annotations

import re
from datetime import date, timedelta
from functools import lru_cache

from core.chamber.logs.decoding import KEPT_TEXTS
from core.chamber.logs.head_words import words
from core.sentence import MONTHS, Message

FEWEST_DIGITS, LONGEST = 3, 48

_MONTHS = (
    "jan gen ene ian ιαν янв яну січ sty tammi oca sij led ocak jaan saus",
    "feb fév fev feb φεβ фев лют lut helmi şub velj úno vas veebr",
    "mar mär mrz mrt μαρ мар бер maalis ožu bře kov már",
    "apr avr abr απρ апр кві kwi huhti nis tra dub bal ápr",
    "may mai mag maj mei maí máj μαι μάι μαΐ май мая тра touko svi kvě geg maig",
    "jun juin giu juuni jún ιουν июн юни чер cze haz kesä čvn června červen iun birž jūn juny",
    "jul juil lug juuli júl ιουλ июл юли tem heinä čvc července červenec iul liep jūl",
    "aug aoû aou ago avg αυγ авг сер sie ağu elo kol rugp ágú",
    "sep set szept σεπ сен сеп вер wrz eyl syys ruj zář rugs",
    "oct okt ott out οκτ окт жов paź eki loka říj spal",
    "nov νοε ноя ное kas marras stu lapkr nóv",
    "dec dez déc dic des δεκ дек гру gru ara joulu pro gruod dets",
)
_STARTS = sorted(
    ((start, month) for month, starts in enumerate(_MONTHS, start=1) for start in words(starts)),
    key=lambda each: -len(each[0]),
)
_EARLY, _LATE = {"hr": 6, "pl": 7}, {"hr": 10, "pl": 11}
_SHARED: tuple[tuple[str, dict[str, int]], ...] = (
    ("lip", _EARLY),
    ("srp", {"hr": 7, "pl": 8}),
    ("lis", _LATE),
)
"""June in Croatian, July in Polish; July in Croatian, August in Czech; October in Croatian, November in both."""
_TOLD_APART = (
    ("lipn", 6),
    ("lipan", 6),
    ("lipc", 7),
    ("lipiec", 7),
    ("srpnj", 7),
    ("srpan", 7),
    ("srpn", 8),
    ("srpen", 8),
    ("лип", 7),
    ("лис", 11),
)
_ENGLISH = ("", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_NUMERALS = ("i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii")
_ROMAN = {word: month for month, word in enumerate(_NUMERALS, start=1)}

_AM = r"a\.?\s?m\.?|π\.?\s?μ\.?|오전|上午|午前|de\.|öö|dop\.?"
_PM = r"p\.?\s?m\.?|μ\.?\s?μ\.?|오후|下午|午後|du\.|ös|odp\.?"
_HALF = re.compile(rf"(?<![^\W\d_])(?:(?P<am>{_AM})|(?P<pm>{_PM}))(?![^\W\d_])|(?<=\d)\s?(?P<letter>[ap])$")
_DECORATION = words(
    "uhr klo kl à a um at alle ore de of den del do om ob г год року r hod óra h hs hrs o'clock час το στις las"
)
_WEEKDAYS = words(
    "mon tue wed thu fri sat sun monday tuesday wednesday thursday friday saturday sunday mo di mi do fr sa so "
    "montag dienstag mittwoch donnerstag freitag samstag sonntag lun mar mer jeu ven sam dim lundi mardi mercredi "
    "jeudi vendredi samedi dimanche mié jue vie sáb dom gio ma wo vr za zo ti ke to pe su la má tis ons tor fre "
    "lör sön pn wt śr cz pt sob nd po út st čt pá ne пн вт ср чт пт сб вс 月 火 水 木 金 土 日 월 화 수 목 금 토 일"
)
_ZONES = words(
    "cet cest mez mesz wet west eet eest msk bst ist est edt cst cdt mst mdt pst pdt akst hst jst kst aest aedt"
)
_SIGNS = str.maketrans(
    {
        **{chr(base + digit): str(digit) for base in (0x660, 0x6F0, 0x966, 0xFF10) for digit in range(10)},
        **dict.fromkeys("\u200e\u200f\u061c\ufeff\u202a\u202b\u202c", None),
        **dict.fromkeys("\u00a0\u202f\u3000_", " "),
        **dict.fromkeys("年月년월", "-"),
        **dict.fromkeys("时時点點시", ":"),
        **dict.fromkeys("分분", ":"),
        **dict.fromkeys("日일", " "),
        **dict.fromkeys("秒초", ""),
        "\uff1a": ":",
        "\uff0f": "/",
    }
)
_WORD = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?")
_CLOCK = re.compile(r"(?<![\d.])(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,:](\d{1,6}))?)?(?![\d:])")
_OFFSET = re.compile(r"\s*(?:utc|gmt)?\s?([+\-\u2212]\d{1,2}(?::?\d{2})?)$|\s*\b(z|utc|gmt)$")
_H_CLOCK = re.compile(r"(?<!\d)(\d{1,2})\s?h\s?(\d{2})(?:\s?(?:min|mn|m)?\s?(\d{2})?\s?s?)?(?![\d\w])")
_DASHED = re.compile(r"^(\d{4}-\d{2}-\d{2})[ t-](\d{2})-(\d{2})(?:-(\d{2}))?$")
_JOINED = re.compile(r"(?<=\d{4}):(?=\d{2}:\d{2})|(?<=\d{4}-\d{2}-\d{2}):(?=\d{2}:\d{2})")
_HOUR_ALONE = re.compile(r"^(\d{4}-\d{2}-\d{2})[ t](\d{1,2})$")
_IN_BRACKETS = re.compile(r"\([^\W\d_]{1,10}\.?\)|\[[^\]\d]*\]")
_DAY_OF_YEAR = re.compile(r"^(\d{4})-(\d{3})$")
_WEEK = re.compile(r"^(\d{4})-w(\d{2})-(\d)$")
_BUDDHIST = re.compile(r"(?<!\d)(25[4-9]\d|26[0-4]\d)(?!\d)")
BUDDHIST_YEARS = 543
"""The Thai calendar counts its years from 543 years before ours: 2568 is 2025 (from memory)."""


def month_of(word: str, tongue: str = "") -> int:
    """The month that a word names or begins, 0 for none, or where only its language (`tongue`) tells which."""
    word = word.lower()
    for start, month in _TOLD_APART:
        if word.startswith(start):
            return month
    for start, meant in _SHARED:
        if word.startswith(start):
            return meant.get(tongue, 0)
    return next((month for start, month in _STARTS if word.startswith(start)), 0)


def shared_month(text: str) -> str:
    """The word in a text that two languages give to different months, "" where there is none."""
    words = (word.lower() for word in _WORD.findall(text))
    return next((word for word in words if word[:3] in dict(_SHARED) and not month_of(word)), "")


def months_meant(word: str) -> dict[str, Message]:
    """What such a word means, by the language."""
    nothing: dict[str, int] = {}
    meant = next((meant for start, meant in _SHARED if word.startswith(start)), nothing)
    return {tongue: MONTHS[month - 1] for tongue, month in meant.items()}


@lru_cache(maxsize=KEPT_TEXTS)
def plain(text: str, tongue: str = "") -> str:
    """A date, a clock or both as "20 Jun 2025 22:00:00 PM +02:00", or what is left of another text."""
    if len(text) > LONGEST or sum(map(str.isdecimal, text)) < FEWEST_DIGITS:
        return text
    text = text.translate(_SIGNS).strip().removeprefix("=").strip("\"' ").lower()
    text = _IN_BRACKETS.sub(" ", text).strip()
    text, half = _without_half(text)
    text, offset = _without_offset(text)
    text = _H_CLOCK.sub(lambda found: ":".join(part for part in found.groups() if part), text)
    text = _WORD.sub(lambda found: _word(found, tongue), text)
    text = _DASHED.sub(
        lambda found: f"{found[1]} {':'.join(part for part in found.groups()[1:] if part)}", text.strip()
    )
    text = _HOUR_ALONE.sub(r"\1 \2:00", _JOINED.sub(" ", text))
    text = re.sub(r":\s*$", "", text)
    clock = _CLOCK.search(text)
    if clock is None:
        return " ".join(part for part in (_date(text), half, offset) if part)
    told = _date(f"{text[: clock.start()].rstrip(' ,-t')} {text[clock.end() :].lstrip(' ,-')}")
    part = f".{clock[4]}" if clock[4] else ""
    shown = f"{int(clock[1]):02}:{clock[2]}" + (f":{clock[3]}" if clock[3] else "") + part
    return " ".join(each for each in (told, shown, half, offset) if each)


def _without_half(text: str) -> tuple[str, str]:
    found = _HALF.search(text)
    if found is None or (":" not in text and "." not in text):
        return text, ""
    is_morning = found["am"] or found["letter"] == "a"
    return f"{text[: found.start()]} {text[found.end() :]}".strip(), "AM" if is_morning else "PM"


def _without_offset(text: str) -> tuple[str, str]:
    """An offset counts only behind a clock: elsewhere a dash and digits are a part of the date."""
    found = _OFFSET.search(text)
    if found is None or not re.search(r"[:.]\d+$", text[: found.start()]):
        return text, ""
    return text[: found.start()], (found[1] or "Z").replace("\u2212", "-")


def _word(found: re.Match[str], tongue: str) -> str:
    word = found[0]
    before, after = found.string[: found.start()], found.string[found.end() :]
    if month := month_of(word, tongue):
        return word if word in _WEEKDAYS and not _stands_as_month(before, after) else _ENGLISH[month]
    if (
        word in _ROMAN
        and before.strip()[-1:].isdigit() | (before[-1:] in "-/. ")
        and after.lstrip("-/. ")[:1].isdigit()
    ):
        return _ENGLISH[_ROMAN[word]]
    return "" if word in _DECORATION or word in _WEEKDAYS or word in _ZONES else word


def _stands_as_month(before: str, after: str) -> bool:
    return bool(re.search(r"\d[-./ ]*$", before)) or bool(re.match(r"[-./ ]*\d", after))


def _date(text: str) -> str:
    text = " ".join(text.replace("'", "").split()).strip(" ,-")
    text = re.sub(r"([-./])\s+(?=\d)", r"\1", text)
    text = re.sub(r"(?<=[a-z])\.(?=\s)|\s+\.", "", text)
    if found := _DAY_OF_YEAR.match(text):
        days = int(found[2])
        return (
            f"{date(int(found[1]), 1, 1) + timedelta(days=days - 1)}"
            if 1 <= days <= 366 and found[1] > "1969"
            else text
        )
    if found := _WEEK.match(text):
        try:
            return f"{date.fromisocalendar(int(found[1]), int(found[2]), int(found[3]))}"
        except ValueError:
            return text
    return _BUDDHIST.sub(lambda found: str(int(found[1]) - BUDDHIST_YEARS), text)
