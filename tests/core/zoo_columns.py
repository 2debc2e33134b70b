"""Columns of all kinds: several probes, what is no measurement of the air, units and numbers in many forms."""

from __future__ import annotations

from datetime import timedelta

from tests.core.zoo_keeper import Point, points
from tests.core.zoo_sheet import Lines, Sheet, sheet

AT = "Time|time|{at:%Y-%m-%d %H:%M}"
T, H = "Temp (°C)|temperature °C 0|{t0:.1f}", "RH (%)|humidity % 0|{h0:.1f}"
SEMICOLON = {"separator": ";", "decimal": ","}


def extra(head: str, cell: str, *more: str) -> Sheet:
    """The plain file with one more column that is no measurement of its air."""
    return sheet(f"beside it: {head}", AT, T, H, f"{head}|ignored|{cell}", *more)


def beside() -> list[Sheet]:
    """What stands beside temperature and humidity, and is neither."""
    near, percent = "{t0:.1f}", "{h0:.0f}"
    return [
        *(
            extra(head, near)
            for head in ("Tmax", "Tmin", "T max (°C)", "Maximum temperature (°C)", "Temp_avg_24h (°C)")
        ),
        *(extra(head, "12.0") for head in ("Sollwert (°C)", "SP (°C)", "Set (°C)", "Consigna (°C)", "Target temp")),
        *(extra(head, "12.0") for head in ("Asetusarvo °C", "Börvärde (°C)", "Setpunkt [°C]", "Zadaná teplota (°C)")),
        *(extra(head, "5.0") for head in ("Alarm low (°C)", "Lower limit (°C)", "Hystérésis (°C)", "Hi Alarm Temp")),
        *(extra(head, "{d0:.1f}") for head in ("Dew (°C)", "DP (°C)", "Td °C", "Punto de rocío (°C)", "Bod rosný °C")),
        *(extra(head, "{t0:.1f}") for head in ("Wet bulb (°C)", "Feels like (°C)", "MKT (°C)", "Mean kinetic temp °C")),
        *(extra(head, "31.5") for head in ("CPU temp (°C)", "Board temperature °C", "Internal (°C)", "Chip °C")),
        *(extra(head, percent) for head in ("Fan (%)", "Output %", "Duty [%]", "Battery", "Batt %", "Bateria (%)")),
        *(extra(head, percent) for head in ("Heater %", "Compressor %", "Valve (%)", "Signal %", "Memory %", "O2 (%)")),
        *(extra(head, percent) for head in ("Pile (%)", "Akku (%)", "Laddning %", "Level %", "Humidifier output %")),
        *(extra(head, percent) for head in ("RH set (%)", "RH max (%)", "Humidity target %", "Weight loss (%)")),
        *(extra(head, "{n}") for head in ("Hours", "Uptime h", "Run time", "Cycles", "Door openings", "Minutes")),
        *(extra(head, "0.78") for head in ("aw", "Water activity", "VPD (kPa)", "Δ", "Trend (°C/h)", "pH")),
        extra("Pressure (hPa)", "1013.2"),
        extra("CO2", "612"),
        extra("Error ± (°C)", "0.3"),
        extra("ΔT (°C)", "0.4"),
        extra("Uncertainty (°C)", "0.2"),
        extra("Compressor", "{n}", "Door|ignored|closed"),
        extra("Abs. humidity (g/m³)", "8.4"),
        extra("Grains", "58"),
    ]


def probes() -> list[Sheet]:
    """Several probes, named, numbered or in columns of their own."""
    two, three = {"probes": 2}, {"probes": 3}
    t1, h1 = "{t1:.1f}", "{h1:.1f}"
    return [
        *(
            sheet(
                f"numbered as {word}",
                AT,
                f"{word} 1 (°C)|temperature °C 0|{{t0:.1f}}",
                f"{word} 2 (°C)|temperature °C 1|{t1}",
                **two,
            )
            for word in ("Probe", "Sonde", "Fühler", "Sensor", "Anturi", "Čidlo", "Czujnik", "Kanal", "CH", "Input")
        ),
        *(
            sheet(
                f"numbered as {word}, no unit",
                AT,
                f"{word} 1|temperature °C 0|{{t0:.1f}}",
                f"{word} 2|temperature °C 1|{t1}",
                **two,
            )
            for word in ("Probe", "Sonde", "Fühler", "Logger", "Kanal")
        ),
        sheet(
            "one probe and its unit", AT, "Probe 1 (°C)|temperature °C 0|{t0:.1f}", "Probe 1 (%)|humidity % 0|{h0:.1f}"
        ),
        sheet("a product and an air probe", AT, T, H, f"Core temp (°C)|temperature °C 1|{t1}", **two),
        sheet("a place and its temperature", AT, T, H, f"Cellar (°C)|temperature °C 1|{t1}", **two),
        sheet(
            "three temperatures and one humidity",
            AT,
            T,
            f"Temp 2 (°C)|temperature °C 1|{t1}",
            "Temp 3 (°C)|temperature °C 2|{t2:.1f}",
            H,
            **three,
        ),
        sheet("humidity first", AT, H, T),
        sheet("the time last", T, H, AT),
        sheet("the time in the middle", T, AT, H),
        sheet(
            "two loggers side by side",
            AT,
            T,
            H,
            "Time|time|{at:%Y-%m-%d %H:%M}",
            f"Temp (°C)|temperature °C 1|{t1}",
            f"RH (%)|humidity % 1|{h1}",
            **two,
        ),
        sheet(
            "two loggers side by side, seconds apart",
            AT,
            T,
            "Time 2|time|{late:%Y-%m-%d %H:%M:%S}",
            f"Temp 2 (°C)|temperature °C 1|{t1}",
            words=lambda at: {"late": at + timedelta(seconds=20)},
            later={1: 20.0},
            **two,
        ),
        sheet(
            "names in a line above",
            AT,
            "Temp (°C)|temperature °C 0|{t0:.1f}",
            "RH (%)|humidity % 0|{h0:.1f}",
            f"Temp (°C)|temperature °C 1|{t1}",
            f"RH (%)|humidity % 1|{h1}",
            above=(",Front,,Back,",),
            **two,
        ),
        sheet(
            "a name in every head",
            AT,
            "Front: T|temperature °C 0|{t0:.1f}",
            "Front: RH|humidity % 0|{h0:.1f}",
            f"Back: T|temperature °C 1|{t1}",
            f"Back: RH|humidity % 1|{h1}",
            names=("Front", "Back"),
            **two,
        ),
        sheet(
            "all temperatures, then all humidities",
            AT,
            T,
            f"Temp2 (°C)|temperature °C 1|{t1}",
            H,
            f"RH2 (%)|humidity % 1|{h1}",
            **two,
        ),
        sheet(
            "crossed in their order",
            AT,
            "T left (°C)|temperature °C 0|{t0:.1f}",
            f"T right (°C)|temperature °C 1|{t1}",
            f"RH right (%)|humidity % 1|{h1}",
            "RH left (%)|humidity % 0|{h0:.1f}",
            names=("left", "right"),
            **two,
        ),
        sheet("an unplugged second probe at 0", AT, T, H, "Temp 2 (°C)|ignored|0.0"),
        sheet("an unplugged second probe at -40", AT, T, H, "Temp 2 (°C)|ignored|-40.0", "RH 2 (%)|ignored|100.0"),
        sheet("an unplugged second probe at 100", AT, T, H, "Temp 2 (°C)|ignored|100.0"),
        sheet("an unplugged second probe at -127", AT, T, H, "Temp 2 (°C)|ignored|-127.00"),
        sheet("an unplugged second probe of words", AT, T, H, "Temp 2 (°C)|ignored|n.c."),
        sheet("an unplugged second probe of nothing", AT, T, H, "Temp 2 (°C)|ignored|", "RH 2 (%)|ignored|"),
        sheet("an empty first value", AT, "Temp 2 (°C)|ignored|", T, H),
        sheet("a channel of numbers", AT, "Channel|probe|{n2}", T, H, words=lambda at: {"n2": 1}),
    ]


def _f(name: str, head: str, low: float, **more: str) -> Sheet:
    """Temperatures near `low` °C written in °F, or in °C."""
    base = [Point(p.at, tuple((round(t - 12 + low, 1), h) for t, h in p.probes)) for p in points()]
    cell = "{f0:.1f}" if "°F" in more.get("in_", "") else "{t0:.1f}"
    unit = "°F" if "°F" in more.get("in_", "") else "°C"
    return sheet(name, AT, f"{head}|temperature {unit} 0|{cell}", H, series=base)


def units() -> list[Sheet]:
    return [
        *(_f(f"{low} °C without a unit", "Temp", low) for low in (-25, -10, -2, 2, 6, 20, 30, 40, 49, 60)),
        *(_f(f"{low} °C in °F without a unit", "Temp", low, in_="°F") for low in (-20, -10, -2, 2, 10, 24, 30, 36)),
        sheet("tenths of a degree", AT, "T [1/10 °C]|temperature °C/10 0|{t10:.0f}", H, words=_scaled(10)),
        sheet(
            "hundredths of a degree",
            AT,
            "Temp x100|temperature °C/100 0|{t10:.0f}",
            "RH x100|humidity %/100 0|{h10:.0f}",
            words=_scaled(100),
        ),
        sheet("thousandths of a degree", AT, "temp_mC|temperature °C/1000 0|{t10:.0f}", H, words=_scaled(1000)),
        sheet(
            "tenths of a degree, untold",
            AT,
            "Temp|temperature °C/10 0|{t10:.0f}",
            "Hum|humidity %/10 0|{h10:.0f}",
            words=_scaled(10),
        ),
        sheet("kelvin", AT, "Temp (K)|temperature K 0|{k0:.2f}", H),
        sheet("kelvin, untold", AT, "Temp|temperature K 0|{k0:.2f}", H),
        sheet("kelvin in the cells", AT, "Temp|temperature written 0|{k0:.2f} K", H),
        sheet("degrees without a letter", AT, "Temp|temperature °C 0|{t0:.1f}°", H),
        sheet(
            "a unit in a column of its own",
            AT,
            "Temp|temperature °C 0|{t0:.1f}",
            "Unit|ignored|C",
            "RH|humidity % 0|{h0:.1f}",
            "Unit|ignored|%",
        ),
        sheet(
            "°F in a column of its own",
            AT,
            "Temp|temperature °F 0|{f0:.1f}",
            "Unit|ignored|F",
            "RH|humidity % 0|{h0:.1f}",
            "Unit|ignored|%",
        ),
        sheet("°F told above", AT, "Temp|temperature °F 0|{f0:.1f}", H, above=("Temperature unit,°F",)),
        sheet("both units in one head", AT, "Temp °C/°F|temperature °C 0|{t0:.1f}", H),
        sheet("both units in one cell", AT, "Temp|temperature °C 0|{t0:.1f} °C / {f0:.1f} °F", H),
        sheet("a fraction of humidity, told", AT, T, "RH (0-1)|humidity fraction 0|{r:.3f}", words=_fraction),
        sheet("a fraction of humidity with no zero", AT, T, "RH|humidity fraction 0|{dot}", words=_fraction),
        sheet("per mille", AT, T, "RH (‰)|humidity %/10 0|{mille:.0f}", words=_fraction),
        sheet("a power of ten", AT, "Temp (°C)|temperature °C 0|{t0:.2E}", "RH (%)|humidity % 0|{h0:.2E}"),
        sheet("plus signs", AT, "Temp (°C)|temperature °C 0|{t0:+.1f}", H),
        sheet("zeros in front", AT, "Temp (°C)|temperature °C 0|{t0:06.1f}", "RH (%)|humidity % 0|{h0:06.1f}"),
        sheet(
            "whole numbers", AT, "Temp (°C)|temperature °C 0|{t0:.0f}", "RH (%)|humidity % 0|{h0:.0f}", series=_whole()
        ),
        sheet(
            "a comma where it falls", AT, "Temp (°C)|temperature °C 0|{t0:g}", "RH (%)|humidity % 0|{h0:g}", **SEMICOLON
        ),
        sheet(
            "a decimal comma, quoted",
            AT,
            'Temp (°C)|temperature °C 0|"{t0:.1f}"',
            'RH (%)|humidity % 0|"{h0:.1f}"',
            decimal=",",
        ),
        sheet(
            "a decimal comma, quoted where it is one",
            AT,
            "Temp (°C)|temperature °C 0|{t0:.1f}",
            "RH (%)|humidity % 0|{h0:.1f}",
            change=_quoted_where_broken,
        ),
        sheet("a raised point", AT, "Temp (°C)|temperature °C 0|{t0:.1f}", H, decimal="·"),
        sheet(
            "Arabic digits",
            AT,
            "Temp (°C)|temperature °C 0|{t0:.1f}",
            H,
            change=lambda lines: [_arabic(line) for line in lines],
        ),
        sheet(
            "wide digits",
            AT,
            "温度(℃)|temperature °C 0|{t0:.1f}",
            "湿度(%)|humidity % 0|{h0:.1f}",
            change=lambda lines: [_wide(line) for line in lines],
        ),
        sheet("°F and °C under one head", AT, "Temp|temperature °C 0|{t0:.1f}", "Temp|ignored|{f0:.1f}", H),
        sheet("a head of letters only", AT, "C|temperature °C 0|{t0:.1f}", "%|humidity % 0|{h0:.1f}"),
        sheet("a letter F", AT, "F|temperature °F 0|{f0:.1f}", "%RH|humidity % 0|{h0:.1f}"),
        sheet(
            "readings twice a degree", AT, "Temp (°C)|temperature °C 0|{t0:.1f}", "Temp fine (°C)|ignored|{t0:.3f}", H
        ),
        sheet(
            "names that look like units",
            AT,
            "F. Temp|temperature °C 0|{t0:.1f}",
            "C. Temp|temperature °C 1|{t1:.1f}",
            probes=2,
        ),
    ]


def _scaled(factor: int):
    by_time = {point.at: point.probes[0] for point in points()}
    return lambda at: {"t10": by_time[at][0] * factor, "h10": by_time[at][1] * factor}


def _fraction(at):
    h = {point.at: point.probes[0][1] for point in points()}[at]
    return {"r": h / 100, "dot": f"{h / 100:.3f}"[1:], "mille": h * 10}


def _whole() -> list[Point]:
    return [Point(p.at, tuple((round(t), round(h)) for t, h in p.probes)) for p in points()]


def _as_whole(lines: Lines) -> Lines:
    return lines


def _quoted_where_broken(lines: Lines) -> Lines:
    def cell(text: str) -> str:
        return text[:-2] if text.endswith(".0") else f'"{text.replace(".", ",")}"'

    return [",".join((line.split(",")[0], *map(cell, line.split(",")[1:]))) for line in lines]


def _arabic(line: str) -> str:
    time, *values = line.split(",")
    digits = str.maketrans("0123456789.", "٠١٢٣٤٥٦٧٨٩٫")
    return ",".join((time, *(each.translate(digits) for each in values)))


def _wide(line: str) -> str:
    time, *values = line.split(",")
    return ",".join((time, *(each.translate(str.maketrans("0123456789", "０１２３４５６７８９")) for each in values)))


def all_columns() -> list[Sheet]:
    return [*beside(), *probes(), *units()]
