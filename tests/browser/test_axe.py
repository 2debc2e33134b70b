"""Nothing on any screen that axe can find, by day and by night; at double text nothing is cut off."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser import measuring
from tests.browser import walking as walk
from tests.browser.axe import AXE, faults
from tests.browser.conftest import LANDSCAPE, Site, new_device, open_daybook, show
from tests.browser.filled import FORMS, PORTRAIT, SCREENS, Filled


@pytest.fixture(scope="module")
def tablet(filled_tablet: Page) -> Page:
    filled_tablet.evaluate(AXE.read_text())
    return filled_tablet


@pytest.fixture(scope="module", params=SCREENS)
def still(tablet: Page, filled: Filled, request: pytest.FixtureRequest) -> Page:
    """Every screen, drawn once for all the tests that only look."""
    show(tablet, filled.path(request.param))
    return tablet


@pytest.fixture(scope="module")
def empty(browser: Browser, site: Site) -> Iterator[Page]:
    context = new_device(browser, reduced_motion="reduce")
    page = open_daybook(context.new_page(), site.url())
    page.evaluate(AXE.read_text())
    yield page
    context.close()


UNDER_ITS_BOXES = """() => [...document.querySelectorAll("main form .summary")].filter((summary) => {
  const foot = summary.getBoundingClientRect().bottom;
  const boxes = summary.closest("form").querySelectorAll("input:not([type=hidden]), select");
  return [...boxes].some((box) => box.offsetParent && box.getBoundingClientRect().top < foot);
}).map((summary) => summary.textContent.trim())"""
"""What was refused stands over all that was typed."""


def refuse(page: Page, button: str) -> None:
    for text in page.locator("main form input[type=text]:visible").all():
        text.fill("")
    walk.tap(page, page.get_by_role("button", name=button, exact=True))
    page.locator(".summary").first.wait_for()


def test_axe_finds_nothing_by_day(still: Page):
    still.emulate_media(color_scheme="light")
    assert faults(still) == []


def test_every_text_can_be_read_by_night(still: Page):
    still.emulate_media(color_scheme="dark")
    assert faults(still, "color-contrast", "link-in-text-block") == []


@pytest.mark.parametrize("size", [LANDSCAPE, PORTRAIT], ids=["landscape", "portrait"])
def test_double_text_is_not_cut_off(still: Page, size: dict[str, int]):
    walk.turn(still, size)
    still.evaluate("() => (document.documentElement.style.fontSize = '225%')")
    try:
        assert still.evaluate(measuring.TOO_WIDE) == []
        assert still.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
        assert still.evaluate(measuring.COVERED, "nav.places a") == []
    finally:
        still.evaluate("() => (document.documentElement.style.fontSize = '')")
        walk.turn(still, LANDSCAPE)


@pytest.mark.parametrize("form", FORMS)
def test_axe_finds_nothing_on_a_refused_form(tablet: Page, filled: Filled, form: str):
    show(tablet, filled.path(form))
    refuse(tablet, FORMS[form])
    assert tablet.evaluate(UNDER_ITS_BOXES) == []
    tablet.emulate_media(color_scheme="light")
    assert faults(tablet) == []
    tablet.emulate_media(color_scheme="dark")
    assert faults(tablet, "color-contrast", "link-in-text-block") == []


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
