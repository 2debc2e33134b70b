"""A reading or a day on each row: one column says which quantity, which probe or which hour it is."""

from __future__ import annotations

from tests.core.zoo_keeper import points
from tests.core.zoo_sheet import Sheet
from tests.core.zoo_written import written


def long_forms() -> list[Sheet]:
    """A row a reading."""
    two = [(point, p) for point in points(probes=2) for p in range(2)]
    at = "{:%Y-%m-%d %H:%M}"
    pairs = [(f"{at.format(p.at)}", i, *p.probes[i]) for p, i in two]
    blocks = sorted(pairs, key=lambda row: row[1])
    each = [(when, i, kind, value) for when, i, t, h in pairs for kind, value in (("T", t), ("H", h))]
    single = [row for row in each if row[1] == 0]
    held = "time,probe,temperature °C,humidity %"
    return [
        written(
            "a numeric channel",
            ["Time,Channel,Temp (°C),RH (%)", *(f"{w},{i + 1},{t:.1f},{h:.1f}" for w, i, t, h in pairs)],
            held,
            2,
        ),
        written("a numeric channel without a head", [f"{w},{i + 1},{t:.1f},{h:.1f}" for w, i, t, h in pairs], held, 2),
        written(
            "a serial number a row",
            ["Serial;Time;Temp;RH", *(f"{40071 + i};{w};{t:.1f};{h:.1f}" for w, i, t, h in pairs)],
            "probe,time,temperature °C,humidity %",
            2,
        ),
        written(
            "an id in blocks",
            ["id,Time,T,RH", *(f"{i},{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks)],
            "probe,time,temperature °C,humidity %",
            2,
        ),
        written(
            "the quantity in a column",
            [
                "Time,Quantity,Value",
                *(f"{w},{'Temperature' if k == 'T' else 'Humidity'},{v:.1f}" for w, _, k, v in single),
            ],
            "time,temperature °C,humidity %",
        ),
        written(
            "quantity and unit in columns",
            ["Time,Type,Value,Unit", *(f"{w},{k},{v:.1f},{'°C' if k == 'T' else '%'}" for w, _, k, v in single)],
            "time,temperature °C,humidity %",
        ),
        written(
            "probe and quantity in columns",
            ["Time,Probe,Quantity,Value", *(f"{w},P{i + 1},{k},{v:.1f}" for w, i, k, v in each)],
            "time,probe,temperature °C,humidity %",
            2,
        ),
        written(
            "a reading with its unit",
            ["Time,Reading", *(f"{w},{v:.1f} {'°C' if k == 'T' else '%'}" for w, _, k, v in single)],
            "time,temperature written",
        ),
        written(
            "two sections",
            [
                "Front",
                "Time,T,RH",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if not i),
                "",
                "Back",
                "Time,T,RH",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if i),
            ],
            "time,temperature °C,humidity %",
            2,
        ),
        written(
            "a section for each quantity",
            [
                "[Temperature °C]",
                *(f"{w},{v:.1f}" for w, _, k, v in single if k == "T"),
                "[Humidity %]",
                *(f"{w},{v:.1f}" for w, _, k, v in single if k == "H"),
            ],
            "time,temperature °C",
        ),
        written(
            "a section of another width",
            [
                "Time,T (°C),RH (%)",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if not i),
                "",
                "Events",
                "Time,No,What,By",
                *(f"{w},{n},door,me" for n, (w, *_) in enumerate(pairs[:20])),
            ],
            "time,temperature °C,humidity %",
            loss="leave",
        ),
        written(
            "letters and equals signs",
            [f"{w} T={t:.1f} H={h:.1f}" for w, i, t, h in blocks if not i],
            "date,clock,temperature °C,humidity %",
        ),
        written(
            "words and colons",
            [f"{w}; Temp: {t:.1f} C; Hum: {h:.1f} %" for w, i, t, h in blocks if not i],
            "time,temperature °C,humidity %",
        ),
        written(
            "JSON lines",
            [f'{{"time": "{w}", "temperature": {t:.1f}, "humidity": {h:.1f}}}' for w, i, t, h in blocks if not i],
            "time,temperature °C,humidity %",
        ),
        written(
            "JSON lines of numbers",
            [
                f'{{"ts": {p.at.timestamp():.0f}, "t": {p.probes[0][0]:.1f}, "h": {p.probes[0][1]:.1f}}}'
                for p in points()
            ],
            "time,temperature °C,humidity %",
        ),
        written(
            "a JSON list",
            ["[", *(f'["{w}", {t:.1f}, {h:.1f}],' for w, i, t, h in blocks if not i), "]"],
            "time,temperature °C,humidity %",
        ),
        written(
            "XML",
            [
                "<log>",
                *(f'<r t="{w}"><temp>{t:.1f}</temp><rh>{h:.1f}</rh></r>' for w, i, t, h in blocks if not i),
                "</log>",
            ],
            "time",
        ),
        written(
            "a table of stars and bars",
            [
                "| Time | T (°C) | RH (%) |",
                "|---|---|---|",
                *(f"| {w} | {t:.1f} | {h:.1f} |" for w, i, t, h in blocks if not i),
            ],
            "ignored,time,temperature °C,humidity %,ignored",
        ),
        written(
            "turned on its side",
            [
                ",".join(["Time", *(row[0] for row in blocks if not row[1])]),
                ",".join(["T", *(f"{row[2]}" for row in blocks if not row[1])]),
                ",".join(["RH", *(f"{row[3]}" for row in blocks if not row[1])]),
            ],
            "time",
        ),
        written(
            "a matrix of days and hours",
            [
                "Day," + ",".join(f"{h}:00" for h in range(24)),
                *(f"2025-06-{20 + d}," + ",".join(f"{12 + h / 10:.1f}" for h in range(24)) for d in range(8)),
            ],
            "date",
        ),
    ]
