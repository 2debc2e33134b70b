"""Two loggers' files in the browser: from the files chosen to the verdict on the screen, and to the chart under it.

Each time in a page of its own, whose Python has seen none of it. The clock is the page's own and runs from the press of
a button to the page that answers it: choosing files and looking at how they are read is a person's time.
"""

from contextlib import ExitStack
from functools import cache
from statistics import median

from attrs import frozen
from playwright.sync_api import BrowserContext, FilePayload, Page, sync_playwright

from building.bench import RUNS, Row
from building.bench.sawtooth import two_loggers
from building.bench.sites import ours
from building.bench.visiting import installed, open_page, served

GOAL_S = 4.0
GOAL_CHART_S = 1.0
MOST_OF_LINEAR = 1.15
ROWS = 86_400  # 30 days of two probes, a reading a minute
FEW, MANY = 10_000, 200_000
RUNS_OF_MANY = 3
SECOND_TAP_MS = 350
PRESSES = {
    "Read the files": "form[action$='/files/0']",
    "This is right": "form[action$='/files/1']",
    "This is right ": "form[action*='/drafts/'][action$='/settings']",
    "Analyse": "log-chart",
}
"""Button, and what the page has that answers it."""
PRESS = """([button, answer]) => new Promise((resolve) => {
  const began = performance.now();
  const watching = new MutationObserver(() => {
    if (!document.querySelector(answer)) return;
    watching.disconnect();
    window.answeredAt = performance.now();
    resolve(window.answeredAt - began);
  });
  watching.observe(document, { childList: true, subtree: true, attributes: true });
  [...document.querySelectorAll("main button")].find((each) => each.textContent.trim() === button).click();
})"""
CHART = """() => {
  const [drawn] = performance.getEntriesByName("daybook:chart");
  return drawn && drawn.startTime + drawn.duration - window.answeredAt;
}"""


@frozen
class Looked:
    """Seconds to the verdict, and from there to the chart."""

    verdict_s: float
    chart_s: float


def logs() -> Row:
    looked = _looked(ROWS, RUNS)
    return Row(round(median(each.verdict_s for each in looked), 2), "s", GOAL_S, {"rows": ROWS})


def chart() -> Row:
    looked = _looked(ROWS, RUNS)
    return Row(round(median(each.chart_s for each in looked), 2), "s", GOAL_CHART_S, {"rows": ROWS})


def growth() -> Row:
    """Time a row where there are many, over time a row where there are few: 1 is linear."""
    few, many = (median(each.verdict_s for each in _looked(rows, RUNS_OF_MANY)) for rows in (FEW, MANY))
    more = {f"seconds_of_{FEW}": round(few, 2), f"seconds_of_{MANY}": round(many, 2)}
    return Row(round(many / MANY / (few / FEW), 3), "of linear", MOST_OF_LINEAR, more)


@cache
def _looked(rows: int, runs: int) -> list[Looked]:
    files = two_loggers(rows)
    with sync_playwright() as playwright, ExitStack() as opened:
        url = opened.enter_context(served(ours()))
        device = opened.enter_context(installed(playwright, url))
        return [_look(device, url, files) for _ in range(runs)]


def _look(device: BrowserContext, url: str, files: dict[str, bytes]) -> Looked:
    page = device.new_page()
    open_page(page, url + "chamber/proofs/new")
    chosen: list[FilePayload] = [{"name": name, "mimeType": "text/csv", "buffer": data} for name, data in files.items()]
    page.locator("main [type=file]").set_input_files(chosen)
    verdict_ms = sum(_press(page, button.strip(), answer) for button, answer in PRESSES.items())
    chart_ms = page.wait_for_function(CHART).json_value()
    page.close()
    return Looked(verdict_ms / 1000, chart_ms / 1000)


def _press(page: Page, button: str, answer: str) -> float:
    page.wait_for_timeout(SECOND_TAP_MS)
    return page.evaluate(PRESS, [button, answer])
