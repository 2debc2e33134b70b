"""What ten thousand entries add to a start, against an empty book on an equal device. Goal: 300 ms."""

from contextlib import ExitStack
from statistics import median

from playwright.sync_api import BrowserContext, sync_playwright

from building.bench import RUNS, Row
from building.bench.sites import ours
from building.bench.ten_thousand import stored_records
from building.bench.visiting import installed, open_page, served, start_ms

GOAL_MS = 300
LEAST_MS = 1.0  # on a noisy machine the full book may even seem the quicker one
PUT = """(records) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("daybook");
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction("entries", "readwrite");
    for (const record of records) writing.objectStore("entries").put(record);
    writing.oncomplete = () => { opening.result.close(); resolve(); };
    writing.onerror = () => reject(writing.error);
  };
})"""


def journal() -> Row:
    """value: the median of the differences between two starts, one right after the other."""
    with sync_playwright() as playwright, ExitStack() as opened:
        url = opened.enter_context(served(ours()))
        empty, full = (opened.enter_context(installed(playwright, url)) for _ in range(2))
        _fill(full, url)
        start_ms(full, url)
        added = [-start_ms(empty, url) + start_ms(full, url) for _ in range(RUNS)]
    return Row(max(round(median(added)), LEAST_MS), "ms", GOAL_MS)


def _fill(device: BrowserContext, url: str) -> None:
    page = device.new_page()
    open_page(page, url)
    page.evaluate(PUT, stored_records())
    page.close()
