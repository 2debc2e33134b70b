"""A batch of six pieces and a piece of it: all in sight that one came for."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import LANDSCAPE, Site, open_daybook, show
from tests.browser.filled import PORTRAIT, device_with, fill

TALLEST = {"a batch that dries": 1.5, "a batch that ferments": 1.5, "a loin in salt": 1.5}
"""Screens, lying."""


@pytest.fixture(scope="module")
def see(browser: Browser, site: Site) -> Iterator[Callable[..., Page]]:
    filled = fill()
    context = device_with(browser, site, filled)
    page = open_daybook(context.pages[0], site.url())

    def at(screen: str, size: dict[str, int]) -> Page:
        walk.turn(page, size)
        return show(page, filled.path(screen))

    yield at
    context.close()


@pytest.mark.parametrize("screen", TALLEST)
def test_it_is_no_list_of_screens(see, screen: str):
    height = see(screen, LANDSCAPE).evaluate("() => document.documentElement.scrollHeight")
    assert height <= TALLEST[screen] * LANDSCAPE["height"]


@pytest.mark.parametrize("size", [LANDSCAPE, PORTRAIT], ids=["landscape", "portrait"])
def test_what_to_do_now_is_in_sight(see, size: dict[str, int]):
    expect(see("a batch that dries", size).get_by_role("link", name="Weigh them")).to_be_in_viewport(ratio=1)


def test_the_log_is_opened_from_the_head(see):
    page = see("a batch that dries", LANDSCAPE)
    walk.tap(page, page.get_by_role("link", name="Log ·"))
    expect(page.locator("#log")).to_have_attribute("open", "")
    expect(page.locator("#log .of-day[open] li").first).to_be_visible()
