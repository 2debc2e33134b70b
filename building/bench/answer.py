"""How long a typed character takes to a changed figure on the screen, in the sum of nitrite from a dose.

95 of 100 characters are as quick as the value says. The clock is the page's own: from the moment the browser gives the
key to the change of the figure in the document.
"""

from contextlib import ExitStack
from statistics import median, quantiles
from typing import Any

from playwright.sync_api import Page, sync_playwright

from building.bench import RUNS, Row
from building.bench.sites import ours
from building.bench.visiting import installed, open_page, served

GOAL_MS = 50
GOAL_SLOWED_MS = 150
CHARACTERS = 60
PAUSE_MS = 40  # a quick hand; without a pause every key would fall on the same part of a frame
SHEET = "sums/cure-ppm"
AROUND = {"meat_kg": "12.4", "nitrite": "6.25"}
BEGUN = "0.1"  # per cent: each digit after it gives another figure, all within the limit
WATCH = """() => {
  const figures = document.querySelector(".figures");
  const shown = () => figures.querySelector(".value")?.textContent;
  let pressedAt, before, tell;
  document.addEventListener("keydown", (event) => {
    pressedAt = event.timeStamp;
    before = shown();
  }, true);
  new MutationObserver(() => {
    if (tell && pressedAt && shown() && shown() !== before) tell(performance.now() - pressedAt);
  }).observe(figures, { childList: true, subtree: true, characterData: true });
  window.nextAnswer = () => {
    pressedAt = undefined;
    window.answered = new Promise((resolve, reject) => {
      tell = resolve;
      setTimeout(() => reject(new Error("No other figure came.")), 20_000);
    });
    window.answered.catch(() => {});
  };
}"""


def answer() -> Row:
    return Row(round(_slow_ones_ms(1), 1), "ms", GOAL_MS)


def answer_slowed() -> Row:
    """With the page four times slower. The throttle does not reach workers: Python itself answers at full speed."""
    return Row(round(_slow_ones_ms(4), 1), "ms", GOAL_SLOWED_MS)


def _slow_ones_ms(slowed: int) -> float:
    with sync_playwright() as playwright, ExitStack() as opened:
        url = opened.enter_context(served(ours()))
        page = opened.enter_context(installed(playwright, url)).new_page()
        open_page(page, url + SHEET)
        for name, text in AROUND.items():
            page.locator(f"[name={name}]").fill(text)
        page.locator("[name=dose]").press_sequentially(BEGUN)
        page.locator("[data-figure]").first.wait_for()
        page.evaluate(WATCH)
        session: Any = page.context.new_cdp_session(page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
        return median(quantiles(_answers_ms(page), n=20)[-1] for _ in range(RUNS))


def _answers_ms(page: Page) -> list[float]:
    passed: list[float] = []
    for at in range(CHARACTERS):
        passed.append(_press(page, str(1 + at % 9)))
        _press(page, "Backspace")
    return passed


def _press(page: Page, key: str) -> float:
    page.evaluate("() => window.nextAnswer()")
    page.keyboard.press(key)
    passed = page.evaluate("() => window.answered")
    page.wait_for_timeout(PAUSE_MS)
    return passed
