"""A chart on a page of its own, with a log made for it in place of the application's answer."""

import array
import base64
import json
import math
import struct
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from tests.browser.conftest import Site

BEGUN_S = 1_793_620_800  # 2 November 2026, 12:00, as the log's own clock has it
STEP_S = 60
COLUMNS = (
    ("Upper shelf", "temperature", "°C", 12.0),
    ("Upper shelf", "dew point", "°C", 8.0),
    ("Upper shelf", "humidity", "%", 78.0),
    ("Lower shelf", "temperature", "°C", 13.0),
    ("Lower shelf", "dew point", "°C", 9.0),
    ("Lower shelf", "humidity", "%", 80.0),
)
TITLES = {"°C": "Temperature and dew point, °C", "%": "Humidity, %"}
BANDS = [{"quantity": "temperature", "low": 11.0, "high": 14.0}]
MARKS = [
    *({"kind": "cooling", "from": BEGUN_S + at, "to": BEGUN_S + at + 300, "words": "cooling"} for at in (600, 3000)),
    {"kind": "door", "from": BEGUN_S + 1800, "to": BEGUN_S + 1900, "words": "door"},
    {"kind": "settled", "from": BEGUN_S + 3600, "to": BEGUN_S + 3600, "words": "settled"},
]
ANSWER = """([body, status]) => {
  const bytes = Uint8Array.from(atob(body), (each) => each.charCodeAt(0));
  window.asked = [];
  window.daybook.send = async (url, { signal }) => {
    window.asked.push({ path: new URL(url).pathname, signal });
    return new Response(status === 200 ? bytes : "", { status });
  };
}"""
PUT = """async (script) => {
  document.querySelector("#chart")?.remove();
  delete document.documentElement.dataset.theme;
  localStorage.removeItem("daybook-cookies");
  const chart = Object.assign(document.createElement("log-chart"), { id: "chart" });
  chart.setAttribute("src", "log");
  chart.setAttribute("label", "Empty chamber");
  document.querySelector("main").append(chart);
  await import(script);
}"""
ARE_STILL = """() => {
  const charts = [...document.querySelectorAll("log-chart")];
  const isStill = (each) => each.querySelector("figure[data-state=still]");
  const fits = (each) => [...each.querySelectorAll(".uplot")].every((panel) => panel.clientWidth === each.clientWidth);
  return charts.length > 0 && charts.every((each) => isStill(each) && fits(each));
}"""


def log(rows: int, missing: range = range(0), columns: Any = COLUMNS) -> bytes:
    """Every column rises by a tenth an hour. missing: rows without a first temperature."""
    header: dict[str, Any] = {"rows": rows, "bands": BANDS, "marks": MARKS, "headline": "It holds."}
    header["columns"] = [
        {
            "name": name,
            "label": f"{name} dew point" if quantity == "dew point" else name,
            "quantity": quantity,
            "unit": unit,
        }
        for name, quantity, unit, _ in columns
    ]
    header["titles"] = TITLES
    text = json.dumps(header).encode()
    text += b" " * (-(4 + len(text)) % 8)
    times = array.array("d", [BEGUN_S + STEP_S * row for row in range(rows)])
    values = [array.array("f", [start + row / 600 for row in range(rows)]) for *_, start in columns]
    for row in missing:
        values[0][row] = math.nan
    return struct.pack("<I", len(text)) + text + times.tobytes() + b"".join(each.tobytes() for each in values)


def put_chart(page: Page, site: Site, body: bytes, status: int = 200) -> Page:
    """In place of an earlier one, on a page of the daybook that is open."""
    page.evaluate(ANSWER, [base64.b64encode(body).decode(), status])
    (script,) = Path(site.folder).glob("assets/chart-*.js")
    page.evaluate(PUT, site.url(f"/assets/{script.name}"))
    return page


def at_rest(page: Page) -> Page:
    """Until every chart of the page, and one at least, shows what was asked of it, as wide as its place."""
    page.wait_for_function(ARE_STILL)
    return page
