"""The example season in the browser: of one tab, marked wherever one scrolls, gone with one tap."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, entries_stored, open_daybook, show
from tests.browser.walking import box, save, tap


@pytest.fixture
def example(daybook: Page) -> Page:
    tap(daybook, daybook.get_by_role("button", name="See an example"))
    expect(daybook.locator("aside.example")).to_be_visible()
    return daybook


def leave(page: Page) -> None:
    tap(page, page.get_by_role("button", name="Leave the example"))
    expect(page.locator("main")).to_contain_text("The book is empty")


def test_it_is_marked_at_the_end_of_a_page_too(example: Page):
    show(example, "/chamber")
    example.evaluate("() => scrollTo(0, document.documentElement.scrollHeight)")
    expect(example.locator("aside.example")).to_be_in_viewport()


def test_nothing_written_in_it_is_stored(example: Page):
    show(example, "/chamber/air")
    box(example, "Temperature").fill("13")
    save(example, "Save the reading")
    assert entries_stored(example) == []
    leave(example)


def test_a_reload_stays_in_it_and_another_tab_is_ones_own(example: Page, site: Site):
    open_daybook(example, site.url())
    expect(example.locator("aside.example")).to_be_visible()
    other = open_daybook(example.context.new_page(), site.url())
    expect(other.locator("main")).to_contain_text("The book is empty")


def test_what_is_half_typed_in_it_is_no_draft_of_ones_own(example: Page):
    show(example, "/batches/new")
    box(example, "Name").fill("Tried")
    leave(example)
    tap(example, example.get_by_role("link", name="Start a batch"))
    expect(example.locator("main h1")).to_have_text("Start a batch")
    expect(box(example, "Name")).to_have_value("")
