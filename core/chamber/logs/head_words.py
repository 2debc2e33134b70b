"""The words of heads in many languages: of quantities, of probes and places, of what is no measurement."""

from __future__ import annotations

import re


def words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def any_of(*parts: str) -> re.Pattern[str]:
    return re.compile("|".join(parts), re.IGNORECASE)


_LETTER_T = r"(?<![^\W\d_])t(?![^\W\d_])"
TEMPERATURE = any_of(
    *(_LETTER_T, "temp", "lämpö", "lampo", "teplot", "hőm", "sıcak", "nhiệt", "θερμ", "темп", "temperat"),
    *("温度", "溫度", "気温", "氣溫", "온도", "อุณหภูมิ", "حرار", "טמפ", "तापमान", "suhu", "hitast"),
)
HUMIDITY = any_of(
    *(
        r"(?<![^\W\d_])(?:rh|rf|hr|ur|r\.h\.|r\.f\.)(?![^\W\d_])",
        r"^h(?:[ _]?[0-9]{1,2})?(?:[ _]?[(\[].*)?$",
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
NOT_WANTED = any_of(
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
    *(
        "vpd",
        "deficit",
        "enthalp",
        r"(?<![^\W\d_])press",
        "druck",
        "druk",
        "hpa",
        "mbar",
        "batt",
        "akku",
        "volt",
        "signal",
        "rssi",
    ),
    *("co2", "co₂", "ppm", "lux", "light", r"set.?p", "soll", "consigne", "setpoint", "target", "alarm", "limit"),
    *(r"(?<![^\W\d_])(?:t|h|rh)?(?:min|max|minimum|maximum|std)(?![^\W\d_])", "offset", "delta", "differ", "Δ", "±"),
    *(r"(?<![^\W\d_])(?:set|sp|mkt|cpu|chip)(?![^\W\d_])", "consign", "asetus", "börv", "zadan", "nastav", "hystér"),
    *("hyster", "kinetic", "feels", "humidex", "trend", "uncert", "bater", "accu", "memory", "rosn", "zadán", "ajuste"),
    *("sollwert", "richtwert", "grenz", "uptime", "humidif"),
)
PROBE = any_of(
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
        "serial",
        "čidlo",
        "czujnik",
        "input",
        r"^ch(?![^\W\d_])",
        "känslig",
        "følger",
        "sensore",
        "node",
        "tag",
    ),
)
COUNTS = any_of(r"^\W*$", r"^(?:no|nr|n|id|idx|index|row|rec|record|count|seq|sample|#|№|lp|п/п)\W*$")
TIME = any_of(
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
        "millis",
        r"^ts$",
        r"^hh?mm",
        r"^t[ _]?\(?(?:s|min|h)\)?$",
    ),
)
PLACES = words(
    "front back rear left right top bottom upper lower mid middle centre center shelf rack door wall floor "
    "ceiling air room cellar chamber cabinet fridge inside outside indoor outdoor in out core meat product piece "
    "ham temp temperature rh near far side north south east west corner ambient one two three four vorn vorne "
    "hinten links rechts oben unten mitte tür wand luft raum kern keller fach avant arrière gauche droite haut "
    "bas milieu porte cave sopra sotto sinistra destra centro arriba abajo izquierda derecha puerta ylä ala vasen "
    "oikea ovi vänster höger övre undre dörr"
)
SUMMARY = any_of(
    "min",
    "max",
    "minimum",
    "maximum",
    "avg",
    "ave",
    "mean",
    "average",
    "median",
    "sum",
    "total",
    "std",
    "st dev",
    "mittel",
    "mittelwert",
    "durchschnitt",
    "moyenne",
    "media",
    "media aritmetica",
    "promedio",
    "średnia",
    "průměr",
    "keskiarvo",
    "medel",
    "gennemsnit",
    "summe",
    "somme",
    "daily mean",
    "tagesmittel",
    "среднее",
    "мин",
    "макс",
    "平均",
    "最大",
    "最小",
)
FILLERS = {
    *("relative", "rel", "relativ", "relativa", "relativní", "air", "luft", "value", "reading", "readings", "level"),
    *("deg", "r", "in", "of", "the", "de", "percent", "pct", "celsius", "fahrenheit", "wert", "e"),
}
