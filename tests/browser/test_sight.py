"""On every form, at three sizes, with a keyboard on the screen or without: nothing lies on a button or the answer."""

from collections.abc import Iterator
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Browser, Page
from werkzeug.exceptions import NotFound

from core.daybook.book import Book
from core.worksheets import WORKSHEETS
from tests.browser import measuring
from tests.browser import walking as walk
from tests.browser.conftest import LANDSCAPE, Site, show
from tests.browser.filled import PORTRAIT, SCREENS, Filled, device_with, fill
from web.app import create_app

KEYBOARD_PX = 300
MOST_BARS = 0.15
DRAFTS_ONLY = {"chamber.lay_out", "chamber.set_proof", "chamber.take_air_log", "ferment.take_log"}
"""Forms about a file just handed in; the files' own tests see them."""
IN_SIGHT = [
    ({"width": size["width"], "height": size["height"] - under}, under > 0)
    for size in (LANDSCAPE, PORTRAIT, {"width": 390, "height": 844})
    for under in (0, KEYBOARD_PX)
]
"""What is left of the screen, and whether a keyboard has the rest."""


@pytest.fixture(scope="module")
def filled() -> Filled:
    return fill()


@pytest.fixture(scope="module")
def page(browser: Browser, site: Site, filled: Filled) -> Iterator[Page]:
    context = device_with(browser, site, filled)
    yield context.pages[0]
    context.close()


def out_of_sight(page: Page) -> list[str]:
    """At every size."""
    found: list[str] = []
    for size, is_typing in IN_SIGHT:
        walk.turn(page, size)
        hidden = page.evaluate(measuring.OUT_OF_SIGHT, is_typing)
        found += [f"{size['width']} × {size['height']}: {each}" for each in hidden]
    return found


def _asked_for_at(path: str) -> str:
    try:
        return create_app(Book()).url_map.bind("").match(path)[0]
    except NotFound:
        return ""


def test_every_form_is_among_the_screens(filled: Filled):
    app = create_app(Book())
    forms = {rule.endpoint for rule in app.url_map.iter_rules() if {"GET", "POST"} <= (rule.methods or set())}
    assert forms - {_asked_for_at(filled.path(each).partition("?")[0]) for each in SCREENS} == DRAFTS_ONLY


@pytest.mark.parametrize("screen", [each for each in SCREENS if not each.startswith("sum ")])
def test_nothing_lies_on_what_is_tapped(page: Page, filled: Filled, screen: str):
    show(page, filled.path(screen))
    assert out_of_sight(page) == []


@pytest.mark.parametrize("name", WORKSHEETS)
def test_the_answer_of_a_sum_is_always_in_sight(page: Page, name: str):
    show(page, f"/sums/{name}?anew=1&{urlencode(WORKSHEETS[name].example)}")
    assert page.locator(".pane .figures :is(.value, .verdict)").count()
    assert out_of_sight(page) == []


@pytest.mark.parametrize("name", WORKSHEETS)
def test_a_refusal_is_always_in_sight(page: Page, name: str):
    walk.turn(page, LANDSCAPE)
    show(page, f"/sums/{name}?anew=1&{urlencode(WORKSHEETS[name].example)}")
    page.locator("main form.entry [data-number]:visible").first.fill("about a handful")
    page.locator(".pane .refusal").wait_for()
    assert out_of_sight(page) == []


@pytest.mark.parametrize("size", [size for size, _ in IN_SIGHT], ids=lambda size: f"{size['width']}x{size['height']}")
def test_head_and_foot_together_take_less_than_a_seventh(page: Page, filled: Filled, size: dict[str, int]):
    show(page, filled.path("weighing"))
    walk.turn(page, size)
    assert page.evaluate(measuring.HEAD_AND_FOOT) < MOST_BARS
