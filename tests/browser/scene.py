"""What a scene is walked with: a device of its own whose site has gone away, and a note of what stood on the screen."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from attrs import define, field
from playwright.sync_api import Browser, Page

from tests.browser import walking as walk
from tests.browser.conftest import Site, Watch, open_daybook, wait_until_offline_works
from tests.browser.device import Device

REPORT_VIOLATIONS = """
  addEventListener("securitypolicyviolation", ({ blockedURI, violatedDirective }) =>
    console.error(`policy: ${violatedDirective} ${blockedURI}`));
"""


@define
class Seen:
    """What stood on the screen, by the moment."""

    texts: dict[str, str] = field(factory=dict)
    files: dict[str, bytes] = field(factory=dict)
    asked: list[str] = field(factory=list)
    served: str = ""
    watch: Watch = field(factory=Watch)

    def __getitem__(self, moment: str) -> str:
        return self.texts[moment]

    def note(self, moment: str, page: Page, what: str = "main") -> None:
        walk.answered(page)
        self.texts[moment] = page.locator(what).first.inner_text()

    def asked_elsewhere(self) -> list[str]:
        assert any("/sw.js" in url for url in self.asked), "the log of the network is empty"
        return [url for url in self.asked if not url.startswith(self.served)]


def start(device: Device, seen: Seen) -> Page:
    """The browser opened, or opened again, with nothing on the screen yet."""
    context = device.start()
    context.add_init_script(REPORT_VIOLATIONS)
    seen.watch.over(context)
    return context.pages[0]


def first_visit(device: Device, site: Site, seen: Seen) -> Page:
    """After it the site may be stopped."""
    return wait_until_offline_works(open_daybook(start(device, seen), site.url()))


@contextmanager
def offline(browser: Browser, dist: Path, folder: Path) -> Iterator[tuple[Device, Page, Seen]]:
    """After a first visit, with the site gone. What the device has asked for is read when the scene is over."""
    site, seen = Site(dist).start(), Seen()
    device = Device(folder / "profile", browser.browser_type)
    try:
        page = first_visit(device, site, seen)
        site.stop()
        yield device, page, seen
    finally:
        site.stop()
        device.kill()
    seen.asked, seen.served = device.asked(), site.origin
