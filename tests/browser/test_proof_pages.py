"""The pages that a run goes through before it is saved: no address leads to them, so they are walked and measured."""

import pytest
from playwright.sync_api import Browser, Page

from tests.browser import measuring
from tests.browser import proving as prove
from tests.browser import walking as walk
from tests.browser.axe import AXE, BY_NIGHT, faults
from tests.browser.chamber_logs import FIRST, TOO_COLD, two_files
from tests.browser.charted import at_rest
from tests.browser.conftest import LANDSCAPE, Site
from tests.browser.filled import PORTRAIT, device_with, fill

Faults = dict[str, list[str]]
SIZES = {"landscape": LANDSCAPE, "portrait": PORTRAIT}
IS_TOO_WIDE = "() => document.documentElement.scrollWidth > innerWidth ? [`${document.title} slides sideways`] : []"


@pytest.fixture(scope="module")
def found(browser: Browser, site: Site) -> dict[str, Faults]:
    """By kind and page, what is wrong; a run is brought as far as the chart of the saved one."""
    context = device_with(browser, site, fill())
    page, found = context.pages[0], dict[str, Faults]()
    page.evaluate(AXE.read_text())
    prove.bring_files(page, two_files(TOO_COLD, FIRST, "log"))
    walk.is_at(page, "How this file is read")
    _measure(page, "a question", found)
    walk.tap(page, page.get_by_label("day before month"))
    walk.tap(page, page.get_by_role("button", name="Answer and continue"))
    walk.tap(page, page.get_by_role("button", name="This is right"))
    walk.is_at(page, "Target and tolerance")
    _measure(page, "what it is held to", found)
    walk.tap(page, page.get_by_role("button", name="Analyse"))
    at_rest(page)
    for fold in page.locator("main summary").all():
        fold.evaluate("(summary) => (summary.parentElement.open = true)")
    page.locator("#hourly").scroll_into_view_if_needed()
    page.locator("#hourly table").first.wait_for()
    _measure(page, "what was found", found)
    prove.save_run(page)
    at_rest(page)
    _measure(page, "a saved run", found)
    context.close()
    return found


def _measure(page: Page, at: str, found: dict[str, Faults]) -> None:
    def note(kind: str, faults: list[str]) -> None:
        found.setdefault(kind, {})[at] = found.get(kind, {}).get(at, []) + faults

    for size in SIZES.values():
        walk.turn(page, size)
        if page.locator("log-chart").count():
            at_rest(page)
        page.evaluate("() => window.scrollTo(0, 0)")
        note("small", page.evaluate(measuring.SMALL, measuring.LEAST_TARGET_PX))
        note("close", page.evaluate(measuring.CLOSE, measuring.LEAST_GAP_PX))
        note("cornered", page.evaluate(measuring.CORNERED, measuring.CORNER_PX))
        note("wide", page.evaluate(IS_TOO_WIDE) + page.evaluate(measuring.TOO_WIDE))
    walk.turn(page, LANDSCAPE)
    page.emulate_media(color_scheme="light")
    note("axe by day", faults(page))
    page.emulate_media(color_scheme="dark")
    note("axe by night", faults(page, *BY_NIGHT))
    page.emulate_media(color_scheme="light")


@pytest.mark.parametrize("light", ["axe by day", "axe by night"])
def test_axe_finds_nothing(found: dict[str, Faults], light: str):
    assert {at: each for at, each in found[light].items() if each} == {}


@pytest.mark.parametrize("kind", ["small", "close", "cornered"])
def test_what_is_tapped_is_large_enough_and_apart(found: dict[str, Faults], kind: str):
    assert {at: each for at, each in found[kind].items() if each} == {}


def test_nothing_is_wider_than_the_page_upright_or_not(found: dict[str, Faults]):
    assert {at: each for at, each in found["wide"].items() if each} == {}
