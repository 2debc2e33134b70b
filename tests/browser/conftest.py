"""A browser, the built site on a free port, and watchers: no page may break the policy, fail aloud or go elsewhere."""

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit

import pytest
from attrs import define, field
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from building import browsers
from building import site as build
from building.paths import DIST
from building.serving import Server, open_server
from tests.browser import machine

if TYPE_CHECKING:
    from tests.browser.filled import Filled

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PATIENCE_MS = 300_000
"""After so long a test has failed, on a machine four times slower and busy as well. No pass waits for it."""
expect.set_options(timeout=PATIENCE_MS)
LONGEST_FIRST = (
    *("test_files", "test_scene_chamber", "test_update", "test_start", "test_journal", "test_style", "test_axe"),
    *("test_bad_input", "test_scene_drying", "test_scene", "test_scene_fermenting", "test_scene_mixing", "test_webkit"),
    "test_proof_pages",
)
LANDSCAPE = {"width": 1024, "height": 768}
IS_OPEN = "() => 'open' in document.documentElement.dataset"


PASSING = """
  const now = performance.now.bind(performance);
  let passedMs = 0;
  performance.now = () => now() + passedMs;
  window.passTime = (ms) => (passedMs += ms);
"""
"""For walking.rest: the page's own clock goes on without anybody waiting."""


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--slowed", type=float, default=1.0, metavar="N", help="make Chromium's pages N times slower")
    parser.addoption("--busy", type=int, default=0, metavar="N", help="test beside N loops that keep processors busy")


def pytest_configure(config: pytest.Config) -> None:
    machine.slowed = config.getoption("slowed", 1.0)
    if not hasattr(config, "workerinput"):  # once, not once for each that tests side by side
        busy = ExitStack()
        busy.enter_context(machine.kept_busy(config.getoption("busy", 0)))
        config.add_cleanup(busy.close)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The files that take longest go first, so that the processors end together."""
    rank = {name: at for at, name in enumerate(LONGEST_FIRST)}
    items.sort(key=lambda item: rank.get(item.path.stem, len(rank)))


TAPS = "taps"


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """The table of what each story costs a hand, for whoever reads the run."""
    kept = [
        value
        for report in terminalreporter.getreports("passed")
        for key, value in report.user_properties
        if key == TAPS
    ]
    if kept:
        terminalreporter.section("taps beside the digits")
    for count, story in sorted(map(tuple, kept), key=lambda each: each[1]):
        terminalreporter.write_line(f"{count:3}  {story}")


@define
class Site:
    """A folder served under a path of this machine. Stopped, it is as far away as a network that is gone."""

    folder: Path
    at: str = "/"
    port: int = 0
    _server: Server | None = None

    def start(self) -> "Site":
        self._server = open_server(self.folder, self.port, self.at)
        self.port = self._server.server_port
        threading.Thread(target=self._server.serve_forever, daemon=True).start()
        return self

    def stop(self) -> None:
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server = None

    @property
    def origin(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def url(self, path: str = "/") -> str:
        return f"{self.origin}{self.at.rstrip('/')}{path}"


@define
class Watch:
    """What a page did that it must not do. `allowed`: parts of messages that a test expects."""

    requests: list[str] = field(factory=list)
    troubles: list[str] = field(factory=list)
    allowed: list[str] = field(factory=list)

    def over(self, context: BrowserContext) -> None:
        context.on("request", lambda request: self.requests.append(request.url))
        context.on("weberror", lambda error: self.troubles.append(f"{error.error}"))
        context.on("console", lambda message: self.troubles.append(message.text) if message.type == "error" else None)

    def check(self, origin: str) -> None:
        unexpected = [text for text in self.troubles if not any(part in text for part in self.allowed)]
        assert unexpected == []
        assert [url for url in self.requests if not url.startswith((origin, "blob:", "data:"))] == []


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    path = browsers.chromium()
    if path is None:
        pytest.fail("Chromium is missing. On Debian: apt-get install chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(path), args=list(FLAGS), timeout=PATIENCE_MS)
        yield browser
        browser.close()


def prepared(context: BrowserContext) -> BrowserContext:
    """As every device of the tests is: patient, as slow as was asked for, and with a clock that can be set forward."""
    context.set_default_timeout(PATIENCE_MS)
    context.add_init_script(PASSING)
    machine.slow(context)
    return context


def new_device(browser: Browser, **options: Any) -> BrowserContext:
    """One that has never seen the daybook. Its owner closes it."""
    like_a_tablet = {"viewport": LANDSCAPE, "locale": "en-GB", "timezone_id": "Europe/Berlin"}
    return prepared(browser.new_context(**{**like_a_tablet, **options}))


@pytest.fixture(scope="session")
def dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy: a build that someone starts in the meantime must not pull the files away."""
    build.build()
    return Path(shutil.copytree(DIST, tmp_path_factory.mktemp("site") / "dist"))


@pytest.fixture(scope="session")
def site(dist: Path) -> Iterator[Site]:
    """One for all tests that leave it running and unchanged."""
    served = Site(dist).start()
    yield served
    served.stop()


@pytest.fixture
def own_site(dist: Path) -> Iterator[Callable[..., Site]]:
    """own_site(folder, at) for a test that stops it, changes it or moves it."""
    opened: list[Site] = []

    def serve(folder: Path = dist, at: str = "/") -> Site:
        opened.append(Site(folder, at).start())
        return opened[-1]

    yield serve
    for each in opened:
        each.stop()


@pytest.fixture
def watch() -> Watch:
    return Watch()


@pytest.fixture
def fresh_profile(browser: Browser, watch: Watch) -> Iterator[BrowserContext]:
    """A device that has never seen the daybook. What its pages did is checked at the end."""
    context = new_device(browser)
    watch.over(context)
    yield context
    origins = {f"{parts.scheme}://{parts.netloc}" for parts in map(urlsplit, watch.requests) if parts.netloc}
    context.close()
    assert len(origins) <= 1, f"requests went to {origins}"
    watch.check(next(iter(origins), ""))


@pytest.fixture
def page(fresh_profile: BrowserContext) -> Page:
    return fresh_profile.new_page()


@pytest.fixture(scope="module")
def tablet(browser: Browser, site: Site) -> Iterator[Page]:
    """One device, started once, for tests that do not mind what others of their file left in the book."""
    watch = Watch()
    context = new_device(browser)
    watch.over(context)
    yield open_daybook(context.new_page(), site.url())
    context.close()
    watch.check(site.origin)


@pytest.fixture
def daybook(page: Page, site: Site) -> Page:
    """A fresh device with the daybook open on its first screen."""
    return open_daybook(page, site.url())


def open_daybook(page: Page, url: str) -> Page:
    """Go there and wait until the application has answered. Functions, not strings: the policy forbids eval."""
    page.goto(url)
    return wait_until_open(page)


def open_at(page: Page, site: Site, path: str) -> Page:
    """Open it and go on to a page. A host of static files knows only the root until the service worker is there."""
    open_daybook(page, site.url())
    return visit(page, site.at.rstrip("/") + path)


def visit(page: Page, path: str) -> Page:
    page.evaluate("(path) => htmx.ajax('GET', path, { target: 'body', swap: 'innerMorph', push: 'true' })", path)
    return page


def show(page: Page, path: str) -> Page:
    """Go there as "back" would: no new start, only the page, with nothing left of what was typed."""
    page.evaluate(
        """async (path) => {
          for (const key of Object.keys(localStorage)) if (key.startsWith("daybook-draft ")) delete localStorage[key];
          history.pushState({ htmx: true }, "", path);
          history.pushState({ htmx: true }, "", "/on-the-way");
          await navigation.back().finished;
        }""",
        path,
    )
    return page


def wait_until_open(page: Page) -> Page:
    page.wait_for_function(IS_OPEN)
    return page


def wait_until_offline_works(page: Page) -> Page:
    page.get_by_text("Ready to work offline").wait_for()
    return page


def path_of(page: Page) -> str:
    parts = urlsplit(page.url)
    return parts.path + (f"?{parts.query}" if parts.query else "")


def heading(page: Page) -> str:
    return page.locator("main h1").inner_text()


def focused(page: Page) -> str:
    """What has the focus: its id, else the name of its element."""
    return page.evaluate("() => document.activeElement.id || document.activeElement.tagName.toLowerCase()")


def entries_stored(page: Page, name: str = "daybook") -> list[dict[str, object]]:
    """What lies on the disk, read past the application."""
    return page.evaluate(
        """(name) => new Promise((resolve, reject) => {
          const opening = indexedDB.open(name);
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const all = opening.result.transaction("entries").objectStore("entries").index("seq").getAll();
            all.onsuccess = () => { opening.result.close(); resolve(all.result); };
          };
        })""",
        name,
    )


@pytest.fixture(scope="session")
def filled() -> "Filled":
    from tests.browser.filled import fill  # here, for it asks this file for a device

    return fill()


@pytest.fixture(scope="module")
def filled_tablet(browser: Browser, site: Site, filled: "Filled") -> Iterator[Page]:
    """One that holds the filled book."""
    from tests.browser.filled import device_with

    context = device_with(browser, site, filled)
    yield context.pages[0]
    context.close()
