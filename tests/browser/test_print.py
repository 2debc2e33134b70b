"""On paper: black on white, no tabs and no buttons, what is folded open, the book and the day at the foot."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import Site, show
from tests.browser.filled import device_with, fill

PAGES = ("a batch that dries", "labels", "a formula", "a proof", "record")
INK_ON_PAPER = """() => [...document.querySelectorAll("main, main *")]
  .filter((each) => each.checkVisibility() && !(each instanceof SVGElement))
  .map((each) => getComputedStyle(each))
  .filter(({ color, backgroundColor: paper }) =>
    color !== "rgb(0, 0, 0)" || !["rgba(0, 0, 0, 0)", "rgb(255, 255, 255)"].includes(paper))
  .map((style) => `${style.color} on ${style.backgroundColor}`)"""
NOT_ON_PAPER = "button, .button, nav.places, header.units, number-pad, #device, .skip"


@pytest.fixture(scope="module")
def dark(browser: Browser, site: Site) -> Iterator[Page]:
    """In the cellar's light: none of it is on the paper."""
    context = device_with(browser, site, fill())
    page = context.pages[0]
    walk.choose_light(page, "dark")
    page.evaluate("() => { window.printed = 0; window.print = () => { window.printed += 1; }; }")
    yield page
    context.close()


def on_paper(page: Page, name: str) -> Page:
    ids = fill().ids
    others = {"labels": f"/batches/{ids['batch']}/labels", "record": "/yours/record"}
    page.emulate_media(media="screen")
    show(page, others.get(name) or fill().path(name))
    expect(page.locator("[data-print]")).to_be_visible()
    page.emulate_media(media="print")
    return page


@pytest.mark.parametrize("name", PAGES)
def test_it_is_black_on_white(dark: Page, name: str):
    assert on_paper(dark, name).evaluate(INK_ON_PAPER) == []


@pytest.mark.parametrize("name", PAGES)
def test_neither_tabs_nor_buttons_are_on_it(dark: Page, name: str):
    shown = on_paper(dark, name).locator(NOT_ON_PAPER)
    assert shown.evaluate_all("(all) => all.filter((each) => each.checkVisibility()).length") == 0


@pytest.mark.parametrize("name", PAGES)
def test_its_foot_names_book_and_day(dark: Page, name: str):
    foot = on_paper(dark, name).locator(".print-foot")
    expect(foot).to_contain_text("Curing Daybook")
    expect(foot).to_contain_text(re.compile(f"Printed {walk.days_ago(0).day} "))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_nothing_is_wider_than_the_paper(dark: Page, paper: str):
    page = on_paper(dark, "a batch that dries")
    walk.turn(page, {"width": {"A4": 688, "Letter": 710}[paper], "height": 900})
    assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
    assert page.pdf(format=paper).startswith(b"%PDF")
    walk.turn(page, {"width": 1024, "height": 768})


def test_the_button_prints_with_all_folds_open_and_leaves_them_as_they_were(dark: Page):
    page = on_paper(dark, "a batch that dries")
    page.emulate_media(media="screen")
    opened = "() => document.querySelectorAll('main details[open]').length"
    before = page.evaluate(opened)
    walk.tap(page, page.get_by_role("button", name="Print"))
    page.wait_for_function("() => window.printed === 1")
    assert page.locator("main details:not([open])").count() == 0
    page.evaluate("() => dispatchEvent(new Event('afterprint'))")
    assert page.evaluate(opened) == before
