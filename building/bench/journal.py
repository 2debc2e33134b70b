"""What ten thousand entries add to a start, against an empty book. Goal: 300 ms."""

from contextlib import ExitStack
from statistics import median

from playwright.sync_api import BrowserContext, sync_playwright

from building.bench import RUNS, Row
from building.bench.sites import ours
from building.bench.ten_thousand import stored_records
from building.bench.visiting import installed, open_page, served, start_ms

GOAL_MS = 300
LEAST_MS = 1.0  # on a noisy machine the full book may even seem the quicker one
RESTING_MS = 4000  # so that the disk's own tidying after the writing is over
PUT = """(records) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("daybook");
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction("entries", "readwrite");
    writing.objectStore("entries").clear();
    for (const record of records) writing.objectStore("entries").put(record);
    writing.oncomplete = () => { opening.result.close(); resolve(); };
    writing.onerror = () => reject(writing.error);
  };
})"""


def journal() -> Row:
    """value: the median of the differences between two starts, one right after the other.

    On the same device, emptied and filled in turn: no two keep equally much of the engine's compiled code.
    """
    full = stored_records()
    with sync_playwright() as playwright, ExitStack() as opened:
        url = opened.enter_context(served(ours()))
        device = opened.enter_context(installed(playwright, url))
        added = [-_start_ms(device, url, []) + _start_ms(device, url, full) for _ in range(RUNS)]
    return Row(max(round(median(added)), LEAST_MS), "ms", GOAL_MS)


def _start_ms(device: BrowserContext, url: str, records: list[dict[str, object]]) -> float:
    page = device.new_page()
    open_page(page, url)
    page.evaluate(PUT, records)
    page.wait_for_timeout(RESTING_MS)
    page.close()
    return start_ms(device, url)
