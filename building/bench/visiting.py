"""A browser with a disk of its own, which has the daybook installed and opens it again."""

import tempfile
import threading
from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, Playwright

from building import browsers
from building.running import Failed
from building.serving import open_server

FLAGS = ("--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync")
LONGEST_MS = 300_000
SETTLING_MS = 8_000  # the browser stores the engine's compiled code some seconds after it has run
IS_OPEN = "() => 'open' in document.documentElement.dataset"
WATCH_THE_START = """
  window.Worker = class extends Worker {
    constructor(...given) {
      window.workerAt = performance.now();
      super(...given);
    }
  };
  new MutationObserver((_, observer) => {
    if (!document.querySelector("main#main h1")) return;
    observer.disconnect();
    requestAnimationFrame(() => (window.shownAt = performance.now()));
  }).observe(document, { childList: true, subtree: true });
"""


@contextmanager
def served(folder: Path) -> Generator[str]:
    server = open_server(folder, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


@contextmanager
def installed(playwright: Playwright, url: str) -> Generator[BrowserContext]:
    """After a first visit that ended in "Ready to work offline", and two more that stayed a while.

    With a folder of its own, as a context without one keeps its storage in memory.
    """
    path = browsers.chromium()
    if path is None:
        raise Failed("Chromium is missing. On Debian: apt-get install chromium")
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        context = playwright.chromium.launch_persistent_context(folder, executable_path=path, args=list(FLAGS))
        context.set_default_timeout(LONGEST_MS)
        page = context.new_page()
        page.goto(url)
        page.get_by_text("Ready to work offline").wait_for()
        page.close()
        for _ in range(2):
            page = context.new_page()
            open_page(page, url)
            page.wait_for_timeout(SETTLING_MS)
            page.close()
        yield context
        context.close()


def start_ms(context: BrowserContext, url: str) -> float:
    """From the start of the worker to the application's first HTML on the screen, in a page of its own."""
    page = context.new_page()
    page.add_init_script(WATCH_THE_START)
    open_page(page, url)
    page.wait_for_function("() => window.shownAt")
    passed = page.evaluate("() => window.shownAt - window.workerAt")
    page.close()
    return passed


def open_page(page: Page, url: str) -> None:
    page.goto(url)
    page.wait_for_function(IS_OPEN)
