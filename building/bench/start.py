"""How long a warm start takes to the first screen, ours against npm's Pyodide as it comes.

Both are built from the same application, pages and worker; theirs has Python's library, the lock file and all sources
as they come. The ratio is theirs ÷ ours; the goal is 3.
"""

from contextlib import ExitStack
from statistics import median

from playwright.sync_api import sync_playwright

from building.bench import RUNS, Row
from building.bench.sites import as_it_comes, ours
from building.bench.visiting import installed, served, start_ms


def start() -> Row:
    """value: ours; against: as it comes. One after the other in turn, so that both meet the same machine."""
    sides = [ours(), as_it_comes()]
    with sync_playwright() as playwright, ExitStack() as opened:
        urls = [opened.enter_context(served(folder)) for folder in sides]
        devices = [opened.enter_context(installed(playwright, url)) for url in urls]
        passed = [[start_ms(device, url) for device, url in zip(devices, urls, strict=True)] for _ in range(RUNS)]
        our_ms, their_ms = (median(column) for column in zip(*passed, strict=True))
    return Row(round(our_ms), "ms", round(their_ms))
