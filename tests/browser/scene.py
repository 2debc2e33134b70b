"""What a scene is walked with: a device of its own whose site goes away, and a note of what stood on the screen."""

from attrs import define, field
from playwright.sync_api import Page

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
        self.texts[moment] = page.locator(what).first.inner_text()


def start(device: Device, seen: Seen) -> Page:
    """The browser opened, or opened again, with nothing on the screen yet."""
    context = device.start()
    context.add_init_script(REPORT_VIOLATIONS)
    seen.watch.over(context)
    return context.pages[0]


def first_visit(device: Device, site: Site, seen: Seen) -> Page:
    """After it the site may be stopped."""
    return wait_until_offline_works(open_daybook(start(device, seen), site.url()))
