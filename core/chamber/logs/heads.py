"""What the head of a column says: the words for temperature, humidity and the rest, in the languages of many loggers.

A word that is not known here decides nothing: the column is then told by its unit, or asked about.
"""

from __future__ import annotations

import re

from core.chamber.logs.layout import ElapsedUnit, Order, Role, Unit
from core.chamber.logs.values import unit_of


def _any(*parts: str) -> re.Pattern[str]:
    return re.compile("|".join(parts), re.IGNORECASE)


_LETTER_T = r"(?<![^\W\d_])t(?![^\W\d_])"
_TEMPERATURE = _any(
    *(_LETTER_T, "temp", "lämpö", "lampo", "teplot", "hőm", "sıcak", "nhiệt", "θερμ", "темп", "temperat"),
    *("温度", "溫度", "気温", "氣溫", "온도", "อุณหภูมิ", "حرار", "טמפ", "तापमान", "suhu", "hitast"),
)
_HUMIDITY = _any(
    *(
        r"(?<![^\W\d_])(?:rh|rf|hr|ur|r\.h\.|r\.f\.)(?![^\W\d_])",
        r"(?<![^\W\d_])(?<![(\[])h(?![^\W\d_])",
        "hum",
        "humed",
        "umid",
        "feucht",
        "fukt",
        "fugt",
    ),
    *("kosteus", "vlhk", "vlag", "wilgot", "vocht", "niisk", "mitrum", "drėgm", "páratart", r"\bnem\b", "lembab"),
    *("υγρασ", "влаж", "волог", "湿度", "濕度", "습도", "ความชื้น", "độ ẩm", "رطوب", "לחות", "आर्द्रता"),
)
_NOT_WANTED = _any(
    *(
        r"\bdew",
        "dewp",
        "taup",
        "rosée",
        "rosee",
        "rocío",
        "rocio",
        "rugiada",
        "orvalho",
        "dauwp",
        "dugg",
        "kastepiste",
    ),
    *(
        "harmat",
        "точка росы",
        "露点",
        "露點",
        "이슬점",
        "wet.?bulb",
        "feuchtkugel",
        "heat.?index",
        "absol",
        r"g/m",
        r"g/kg",
    ),
    *("vpd", "deficit", "enthalp", "press", "druck", "druk", "hpa", "mbar", "batt", "akku", "volt", "signal", "rssi"),
    *("co2", "co₂", "ppm", "lux", "light", r"set.?p", "soll", "consigne", "setpoint", "target", "alarm", "limit"),
    *(r"(?<![^\W\d_])(?:min|max|minimum|maximum|low|high|std)(?![^\W\d_])", "offset", "delta", "differ"),
)
_PROBE = _any(
    *("probe", "sensor", "sonde", "sonda", "fühler", "fuehler", "chann", "kanal", "canal", "capteur", "device"),
    *(
        "gerät",
        "location",
        "standort",
        "name",
        "logger",
        "station",
        "датчик",
        "探头",
        "传感器",
        "センサ",
        "anturi",
        "givare",
    ),
)
_COUNTS = _any(r"^\W*$", r"^(?:no|nr|n|id|idx|index|row|rec|record|count|seq|sample|#|№|lp|п/п)\W*$")
_TIME = _any(
    *(r"\btime", "_time", "zeit", "datum", "date", "uhr", "heure", "hora", r"\bora\b", r"\btid", "aika", "čas", "czas"),
    *(
        "время",
        "дата",
        "时间",
        "日時",
        "時刻",
        "epoch",
        "unix",
        "stamp",
        "elapsed",
        "seconds",
        r"^t[ _]?\(?(?:s|min|h)\)?$",
    ),
)
_FILLERS = {
    *("relative", "rel", "relativ", "relativa", "relativní", "air", "luft", "value", "reading", "readings", "level"),
    *("deg", "r", "in", "of", "the", "de", "percent", "pct", "celsius", "fahrenheit", "wert", "e"),
}

_DEGREE = _any(
    r"(?:[°º˚\ufffd?]|â°|\bdeg(?:rees?)?\.?[ _]?|grad[ _]?)([CF])(?![^\W\d_])", "(celsius)", "(fahrenheit)", "([℃℉])"
)
_BRACKETED = re.compile(r"[(\[]\s*([CF])\s*[)\]]", re.IGNORECASE)
_END_LETTER = re.compile(r"(?<=[ _.\-/])([^\W\d_])\s*$")
_STATE = _any(
    "stat", "state", "event", "note", "alarm", "comment", "message", "mode", "flag", "bemerk", "zustand", "ok"
)
_PERCENT = _any("%", r"\bpct\b", r"\bpercent\b")
_ELAPSED = re.compile(
    r"(?:[(\[_ ]|^)(s|sec|secs|seconds|min|mins|minutes|h|hr|hrs|hours|d|days)(?:[)\]]|$)", re.IGNORECASE
)
_FIRST_LETTERS: dict[str, ElapsedUnit] = {"s": "s", "h": "h", "d": "d"}
_PATTERN = re.compile(r"\b([dtjmya]{1,4})([-./ ])([dtjmya]{1,4})\2([dtjmya]{1,4})\b", re.IGNORECASE)


def role_in(label: str) -> Role:
    """What a value column's head says it holds: temperature, humidity, ignored (a thing not wanted) or unknown."""
    if _NOT_WANTED.search(label):
        return "ignored"
    temperature, humidity = _TEMPERATURE.search(label), _HUMIDITY.search(label)
    if temperature and humidity:
        return "unknown"
    return "temperature" if temperature else "humidity" if humidity else "unknown"


def names_a_probe(label: str) -> bool:
    return bool(_PROBE.search(label)) and role_in(label) == "unknown"


def counts_rows(label: str) -> bool:
    return bool(_COUNTS.search(label.strip()))


def names_time(label: str) -> bool:
    return bool(_TIME.search(label))


def unit_in(label: str) -> Unit:
    """The unit that a head states beyond doubt: degree sign, word, letter in brackets or %. "" for none or two."""
    found: set[Unit] = {_letter(match.group(0)) for match in _DEGREE.finditer(label)}
    found = found or {_letter(match[1]) for match in _BRACKETED.finditer(label)}
    if not found:
        return "%" if _PERCENT.search(label) else ""
    return found.pop() if len(found) == 1 else ""


def end_letter(label: str) -> str:
    """A letter by itself at the end of a head: C may be a unit or a probe's letter, which only its neighbours tell."""
    found = _END_LETTER.search(label)
    return found[1].upper() if found else ""


def says_state(label: str) -> bool:
    return bool(_STATE.search(label))


def _letter(text: str) -> Unit:
    plain = text.strip().upper()
    return "°F" if plain.startswith("FAHR") or plain[-1] in "F℉" else "°C"


def probe_in(label: str, letter_is_unit: bool) -> str:
    """What is left of a head without its quantity and unit: "Cellar back" of "Temp. Cellar back (°C)"."""
    plain = re.sub(r"[(\[][^)\]]*[)\]]", " ", label) if unit_of(_bracket(label)) else label
    plain = _DEGREE.sub(" ", plain)
    if letter_is_unit:
        plain = _END_LETTER.sub(" ", plain)
    words = re.findall(r"[^\W\d_]+|[0-9]+", plain)
    kept = [word for word in words if word.casefold() not in _FILLERS and not _is_quantity(word)]
    return " ".join(kept)


def _bracket(label: str) -> str:
    found = re.search(r"[(\[]([^)\]]*)[)\]]", label)
    return found[1] if found else ""


def _is_quantity(word: str) -> bool:
    return bool(_TEMPERATURE.search(word) or _HUMIDITY.search(word))


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
