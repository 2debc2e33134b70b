"""How slow the machine is made, on purpose: pages whose processor is throttled, loops that take the rest of it."""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import BrowserContext, Page

LOOP = "import os\nparent = os.getppid()\nwhile os.getppid() == parent: pass"  # none outlives who began it
slowed = 1.0
"""Every page of Chromium is so many times slower; a worker is not reached by it. Set once, before the first page."""


def slow(context: BrowserContext) -> None:
    if slowed > 1:
        context.on("page", _throttle)
        for page in context.pages:
            _throttle(page)


def _throttle(page: Page) -> None:
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowed})


@contextmanager
def kept_busy(loops: int) -> Iterator[None]:
    running = [subprocess.Popen([sys.executable, "-c", LOOP]) for _ in range(loops)]
    try:
        yield
    finally:
        for each in running:
            each.terminate()
            each.wait()
