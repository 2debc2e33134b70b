"""Nothing on any screen that axe can find, by day and by night; at double text nothing is cut off."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from attrs import frozen
from playwright.sync_api import Browser, Page

from building.paths import MODULES
from tests.browser.conftest import Site, open_daybook
from tests.browser.filled import FORMS, LANDSCAPE, PORTRAIT, SCREENS, Filled, device_with, fill, show

AXE = MODULES / "axe-core/axe.min.js"
TOO_WIDE = """() => [...document.querySelectorAll("body *")]
  .filter((each) => each.getBoundingClientRect().right > innerWidth + 1 && !each.closest(".skip, .sideways, pre, svg"))
  .map((each) => `${each.tagName.toLowerCase()}.${each.className}: ${each.textContent.trim().slice(0, 40)}`)
"""


@frozen
class Device:
    page: Page
    filled: Filled

    def show(self, screen: str) -> Page:
        show(self.page, self.filled.path(screen))
        return self.page


@pytest.fixture(scope="module")
def device(browser: Browser, site: Site) -> Iterator[Device]:
    filled = fill()
    context = device_with(browser, site, filled)
    page = context.pages[0]
    page.evaluate(AXE.read_text())
    yield Device(page, filled)
    context.close()


@pytest.fixture(scope="module")
def empty(browser: Browser, site: Site) -> Iterator[Page]:
    context = browser.new_context(viewport=LANDSCAPE, reduced_motion="reduce")
    page = open_daybook(context.new_page(), site.url())
    page.evaluate(AXE.read_text())
    yield page
    context.close()


def faults(page: Page, *only: str) -> list[str]:
    """axe's violations, one line each; only: these rules and no others."""
    rules = {"runOnly": list(only)} if only else {}
    found = page.evaluate("async (options) => (await axe.run(document, options)).violations", rules)
    return [f"{each['id']}: {json.dumps([node['target'] for node in each['nodes']])[:300]}" for each in found]


def refuse(page: Page, button: str) -> None:
    for text in page.locator("main form input[type=text]").all():
        text.fill("")
    page.get_by_role("button", name=button, exact=True).click()
    page.locator("[data-focus]").first.wait_for()


@pytest.mark.parametrize("screen", SCREENS)
def test_axe_finds_nothing_by_day(device: Device, screen: str):
    device.page.emulate_media(color_scheme="light")
    assert faults(device.show(screen)) == []


@pytest.mark.parametrize("screen", SCREENS)
def test_every_text_can_be_read_by_night(device: Device, screen: str):
    device.page.emulate_media(color_scheme="dark")
    assert faults(device.show(screen), "color-contrast", "link-in-text-block") == []


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("screen", FORMS)
def test_axe_finds_nothing_on_a_refused_form(device: Device, screen: str, light: str):
    device.page.emulate_media(color_scheme=light)
    page = device.show(screen)
    refuse(page, FORMS[screen])
    assert faults(page) == []


@pytest.mark.parametrize("light", ["light", "dark"])
def test_axe_finds_nothing_in_an_empty_book(empty: Page, light: str):
    empty.emulate_media(color_scheme=light)
    assert faults(empty) == []


def test_axe_finds_nothing_while_the_daybook_starts(page: Page, site: Site):
    page.route("**/stdlib-*", lambda route: None)  # it never comes: the shell stays
    page.goto(site.url(), wait_until="commit")
    page.locator("#starting progress").wait_for()
    page.evaluate(AXE.read_text())
    assert faults(page) == []


@pytest.mark.parametrize("size", [LANDSCAPE, PORTRAIT], ids=["landscape", "portrait"])
@pytest.mark.parametrize("screen", SCREENS)
def test_double_text_is_not_cut_off(device: Device, screen: str, size: dict[str, int]):
    page = device.show(screen)
    page.set_viewport_size(size)
    page.evaluate("() => (document.documentElement.style.fontSize = '225%')")
    try:
        assert page.evaluate(TOO_WIDE) == []
        assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
    finally:
        page.evaluate("() => (document.documentElement.style.fontSize = '')")
        page.set_viewport_size(LANDSCAPE)
