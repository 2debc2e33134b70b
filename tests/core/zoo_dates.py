"""Moments as many countries and many programmers write them."""

from __future__ import annotations

from datetime import datetime, timedelta

from tests.core.zoo_keeper import UNCLEAR
from tests.core.zoo_sheet import Sheet, sheet

T, H = "Temperature (°C)|temperature °C 0|{t0:.1f}", "Humidity (%)|humidity % 0|{h0:.1f}"
VALUES = (T, H)
SEMICOLON = {"separator": ";", "decimal": ","}
MONTHS = {
    "Polish": "sty lut mar kwi maj cze lip sie wrz paź lis gru",
    "Polish in full": "stycznia lutego marca kwietnia maja czerwca lipca sierpnia września października "
    "listopada grudnia",
    "Turkish": "Oca Şub Mar Nis May Haz Tem Ağu Eyl Eki Kas Ara",
    "Turkish in full": "Ocak Şubat Mart Nisan Mayıs Haziran Temmuz Ağustos Eylül Ekim Kasım Aralık",
    "Finnish": "tammi helmi maalis huhti touko kesä heinä elo syys loka marras joulu",
    "Finnish in full": "tammikuuta helmikuuta maaliskuuta huhtikuuta toukokuuta kesäkuuta heinäkuuta elokuuta "
    "syyskuuta lokakuuta marraskuuta joulukuuta",
    "Czech": "led úno bře dub kvě čvn čvc srp zář říj lis pro",
    "Czech in full": "ledna února března dubna května června července srpna září října listopadu prosince",
    "Croatian": "sij velj ožu tra svi lip srp kol ruj lis stu pro",
    "Hungarian": "jan. febr. márc. ápr. máj. jún. júl. aug. szept. okt. nov. dec.",
    "Swedish": "jan feb mars april maj juni juli aug sept okt nov dec",
    "Spanish": "ene feb mar abr may jun jul ago sep oct nov dic",
    "Greek": "Ιαν Φεβ Μαρ Απρ Μαΐ Ιουν Ιουλ Αυγ Σεπ Οκτ Νοε Δεκ",
    "Lithuanian": "saus vas kov bal geg birž liep rugp rugs spal lapkr gruod",
    "Romanian": "ian feb mar apr mai iun iul aug sept oct nov dec",
    "Russian in full": "января февраля марта апреля мая июня июля августа сентября октября ноября декабря",
    "Ukrainian": "січ лют бер кві тра чер лип сер вер жов лис гру",
    "Roman": "I II III IV V VI VII VIII IX X XI XII",
}


def stamped(name: str, cell: str, head: str = "Time", **more: object) -> Sheet:
    return sheet(name, f"{head}|time|{cell}", *VALUES, **more)  # type: ignore[arg-type]


def _months(language: str):
    words = MONTHS[language].split()
    return lambda at: {"mon": words[at.month - 1]}


def _half(morning: str, afternoon: str):
    return lambda at: {"half": morning if at.hour < 12 else afternoon}


def months() -> list[Sheet]:
    """Languages' months, over the turn of a month so that more than one is read."""
    return [
        *(
            stamped(
                f"{language} months",
                "{at:%d} {mon} {at:%Y} {at:%H:%M}",
                words=_months(language),
                month="hr" if language == "Croatian" else "pl",
                start=datetime(2025, month, 28, 5, tzinfo=UNCLEAR.tzinfo),
                step=timedelta(minutes=40),
                **SEMICOLON,
            )
            for at, language in enumerate(MONTHS)
            for month in (3 + at % 5, 9 + at % 3)
        ),
        stamped("a German month in full", "{at:%d}. Juni {at:%Y}, {at:%H:%M} Uhr", **SEMICOLON),
        stamped("a Portuguese month with its de", "{at:%d} de junho de {at:%Y} {at:%H:%M}", separator=";"),
        stamped("a Roman month between slashes", "{at:%d}/VI/{at:%Y} {at:%H:%M}", separator=";"),
        stamped("C's own time", "{at:%a %b %d %H:%M:%S %Y}"),
        stamped("a letter's date", "{at:%a, %d %b %Y %H:%M:%S} +0000", separator=";"),
    ]


def clocks() -> list[Sheet]:
    """Times of day."""
    return [
        stamped("a Spanish half of the day", "{at:%d/%m/%Y %I:%M:%S} {half}", words=_half("a. m.", "p. m.")),
        stamped("a Greek half of the day", "{at:%d/%m/%Y %I:%M:%S} {half}", words=_half("π.μ.", "μ.μ.")),
        stamped("a Korean half of the day", "{at:%Y-%m-%d} {half} {at:%I:%M:%S}", words=_half("오전", "오후")),
        stamped("a Chinese half of the day", "{at:%Y/%m/%d} {half} {at:%I:%M:%S}", words=_half("上午", "下午")),
        stamped("a Hungarian half of the day", "{at:%Y.%m.%d.} {half} {at:%I:%M}", words=_half("de.", "du.")),
        stamped("a Turkish half of the day", "{at:%d.%m.%Y} {half} {at:%I:%M}", words=_half("ÖÖ", "ÖS")),
        stamped("a letter for the half of the day", "{at:%m/%d/%Y %I:%M}{half}", words=_half("a", "p")),
        stamped("Uhr after the clock", "{at:%d.%m.%Y %H:%M} Uhr", **SEMICOLON),
        stamped("a French h", "{at:%d/%m/%Y %H}h{at:%M}", **SEMICOLON),
        stamped("a French h with minutes and seconds", "{at:%d/%m/%Y %H}h{at:%M}m{at:%S}s", **SEMICOLON),
        stamped("klo before a Finnish clock", "{at:%d.%m.%Y} klo {at:%H.%M}", **SEMICOLON),
        stamped("à before a French clock", "{at:%d/%m/%Y} à {at:%H:%M}", **SEMICOLON),
        stamped("a dash between date and clock", "{at:%d/%m/%Y - %H:%M:%S}"),
        stamped("a comma between date and clock", "{at:%d/%m/%Y, %H:%M:%S}", **SEMICOLON),
        stamped("an underscore between date and clock", "{at:%Y-%m-%d_%H:%M:%S}"),
        stamped("a colon between date and clock", "{at:%Y-%m-%d:%H:%M:%S}"),
        stamped("a clock before its date", "{at:%H:%M:%S %d/%m/%Y}"),
        stamped("a clock of twelve hours before its date", "{at:%I:%M %p %d-%b-%Y}"),
        stamped("dashes throughout", "{at:%Y-%m-%d-%H-%M-%S}"),
        stamped("dashes in the clock", "{at:%Y-%m-%d %H-%M-%S}"),
        stamped("thousandths after a colon", "{at:%Y-%m-%d %H:%M:%S}:000"),
        stamped("thousandths after a comma", "{at:%Y-%m-%d %H:%M:%S},000", **SEMICOLON),
        stamped("an hour without its zero", "{at:%d/%m/%Y} {H}:{at:%M}"),
        stamped("blanks for zeros", "{D:2d}/{m:2d}/{Y} {H:2d}:{at:%M}"),
        stamped("a full hour alone", "{at:%Y-%m-%d %H}", step=timedelta(hours=1)),
        sheet("an hour of one digit in a column", "Day|date|{at:%Y-%m-%d}", "Clock|clock|{H}:{at:%M}", *VALUES),
        sheet("the clock's column first", "Time|clock|{at:%H:%M}", "Date|date|{at:%d.%m.%Y}", *VALUES, **SEMICOLON),
        sheet("bare digits for date and time", "Date|date|{at:%Y%m%d}", "Time|clock|{at:%H%M}", *VALUES),
        sheet("bare digits with seconds", "Date|date|{at:%Y%m%d}", "Time|clock|{at:%H%M%S}", *VALUES),
        sheet("bare digits without their zeros", "Date|date|{at:%d%m%Y}", "Time|clock|{H}{at:%M}", *VALUES),
        sheet("date and hour apart", "Date|date|{at:%Y-%m-%d}", "Hour|clock|{H}", *VALUES, step=timedelta(hours=1)),
        sheet(
            "year, month, day, hour, minute apart",
            *("Year|ignored|{Y}", "Month|ignored|{m}", "Day|ignored|{D}", "Hour|ignored|{H}", "Min|ignored|{M}"),
            *VALUES,
        ),
        sheet("only a clock", "Time|clock|{at:%H:%M}", *VALUES, above=("Started on 20 June 2025",)),
        stamped("no year", "{at:%d/%m %H:%M}"),
        stamped("no year, month in words", "{at:%d %b %H:%M}"),
    ]


def counted() -> list[Sheet]:
    """Numbers that count the time."""
    count = {"late_s": -datetime(2025, 6, 20, 22, tzinfo=UNCLEAR.tzinfo).timestamp()}
    return [
        stamped("microseconds since 1970", "{epoch:.0f}000000", "ts"),
        stamped("nanoseconds since 1970", "{epoch:.0f}000000000", "ts"),
        stamped("milliseconds with a fraction", "{epoch:.0f}000.25", "ts", late_s=0),
        stamped("seconds with a fraction", "{epoch:.3f}", "ts"),
        stamped("seconds since 1970 as a power of ten", "{epoch:.9E}", "ts"),
        stamped(
            "seconds since 1904",
            "{mac:.0f}",
            "ts",
            count="s1904",
            words=lambda at: {"mac": at.timestamp() + 2_082_844_800},
        ),
        stamped(
            "seconds since 2000",
            "{y2k:.0f}",
            "ts",
            count="s2000",
            words=lambda at: {"y2k": at.timestamp() - 946_684_800},
        ),
        stamped(
            "seconds since 1601 in tenths of a millionth",
            "{w}0000000",
            "ts",
            count="tick1601",
            words=lambda at: {"w": int(at.timestamp()) + 11_644_473_600},
        ),
        stamped("seconds since 1970 in hexadecimal", "0x{e:08X}", "ts", words=lambda at: {"e": int(at.timestamp())}),
        stamped("minutes", "{s_min:.0f}", "Elapsed (min)", words=_since(60), **count),
        stamped("hours with a fraction", "{s_min:.4f}", "t (h)", words=_since(3600), **count),
        stamped("milliseconds from a start", "{ms:.0f}", "millis", words=_since_ms, elapsed="ms", **count),
        stamped("milliseconds from a start, told", "{ms:.0f}", "Time (ms)", words=_since_ms, elapsed="ms", **count),
        stamped("days with a fraction", "{s_min:.6f}", "Elapsed days", words=_since(86400), elapsed="d", **count),
        stamped("hours and minutes past a day", "{hh}:{mm:02d}", "Elapsed", elapsed="h", words=_since_clock, **count),
        stamped("hours, minutes, seconds past a day", "{hh:03d}:{mm:02d}:00", "Elapsed", words=_since_clock, **count),
        stamped("days and a clock from a start", "{dd}d {hd:02d}:{mm:02d}:00", "Elapsed", words=_since_clock, **count),
        stamped("a span as ISO writes it", "PT{hh}H{mm}M", "Elapsed", words=_since_clock, **count),
        stamped("a plain count of rows for a time", "{n}", "Time", elapsed="min", **_each_a_minute()),
        stamped("days since 1900 and a head of nothing", "{serial:.5f}", "x", words=_serial),
        stamped("the Julian day", "{jd:.6f}", "JD", count="d-4712", words=_julian),
        stamped("the day of the year", "{at:%Y-%jT%H:%M}", "Time"),
        sheet(
            "the day of the year in a column",
            "Year|ignored|{at:%Y}",
            "DOY|ignored|{at:%j}",
            "HHMM|clock|{at:%H%M}",
            *VALUES,
        ),
        stamped("the week of the year", "{at:%G-W%V-%uT%H:%M}"),
        stamped("a Buddhist year", "{at:%d/%m}/2568 {at:%H:%M}"),
        stamped("a year with an apostrophe", "{at:%d %b} '25 {at:%H:%M}"),
    ]


def _since(unit_s: float):
    return lambda at: {"s_min": (at - _BEGAN).total_seconds() / unit_s}


_BEGAN = datetime(2025, 6, 20, 22, tzinfo=UNCLEAR.tzinfo)


def _since_ms(at: datetime) -> dict[str, object]:
    return {"ms": (at - _BEGAN).total_seconds() * 1000}


def _since_clock(at: datetime) -> dict[str, object]:
    minutes = int((at - _BEGAN).total_seconds() // 60)
    return {"hh": minutes // 60, "mm": minutes % 60, "dd": minutes // 1440, "hd": minutes // 60 % 24}


def _each_a_minute() -> dict[str, object]:
    return {"step": timedelta(minutes=1), "late_s": -_BEGAN.timestamp()}


def _serial(at: datetime) -> dict[str, object]:
    return {"serial": (at.timestamp() / 86400) + 25569}


def _julian(at: datetime) -> dict[str, object]:
    return {"jd": at.timestamp() / 86400 + 2440587.5}


def dates() -> list[Sheet]:
    """Days, and offsets from UTC."""
    return [
        stamped("a Hungarian date", "{at:%Y.%m.%d. %H:%M:%S}"),
        stamped("a Korean date", "{at:%Y. %m. %d. %H:%M}"),
        stamped("a Japanese date", "{at:%Y}年{at:%m}月{at:%d}日 {at:%H:%M}"),
        stamped("a Chinese date and clock", "{at:%Y}年{at:%m}月{at:%d}日 {at:%H}时{at:%M}分"),
        stamped("slashes and a short year", "{at:%y/%m/%d %H:%M}", order="ymd"),
        stamped("dots, short and unclear", "{at:%d.%m.%y %H:%M}", start=UNCLEAR, order="dmy"),
        stamped("slashes, unclear, month first", "{m}/{D}/{Y} {H}:{at:%M}", start=UNCLEAR, order="mdy"),
        stamped("dashes, day first", "{at:%d-%m-%Y %H:%M}"),
        stamped("year and day first", "{at:%Y/%d/%m %H:%M}"),
        stamped("a weekday behind the date", "{at:%d/%m/%Y %a %H:%M}"),
        stamped("a weekday in brackets", "{at:%Y/%m/%d}({at:%a}) {at:%H:%M}"),
        stamped("an hour's offset", "{at:%Y-%m-%d %H:%M:%S}+02", late_s=-7200),
        stamped("an offset without its colon", "{at:%Y-%m-%d %H:%M:%S} +0200", late_s=-7200),
        stamped("a zone's letters", "{at:%Y-%m-%d %H:%M:%S} CEST"),
        stamped("a zone's American letters", "{at:%m/%d/%Y %I:%M:%S %p} EST"),
        stamped("a zone's name", "{at:%Y-%m-%dT%H:%M:%S}+02:00[Europe/Nowhere]", late_s=-7200),
        stamped("Z and thousandths", "{at:%Y-%m-%dT%H:%M:%S}.000Z"),
        stamped("a zone in the head", "{at:%Y-%m-%d %H:%M:%S}", "Time (UTC+2)", late_s=-7200),
        stamped("month, year, day", "{at:%b %Y %d %H:%M}"),
        stamped("a day and a month and nothing else", "{at:%Y-%m-%d}", step=timedelta(days=1)),
        stamped("a month in capitals", "{MON}", words=lambda at: {"MON": f"{at:%d%b%Y:%H:%M:%S}".upper()}),
        stamped("quoted, with an equals sign", '="{at:%Y-%m-%d %H:%M}"'),
        stamped("a T in small", "{at:%Y-%m-%dt%H:%M:%S}"),
    ]


def all_dates() -> list[Sheet]:
    return [*months(), *clocks(), *counted(), *dates()]
