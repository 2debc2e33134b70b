"""Starting over: asked once, with a copy offered first; then nothing is left, in any tab."""

from playwright.sync_api import Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import Site, entries_stored, open_daybook


def test_nothing_is_left_on_the_device_and_another_tab_begins_again(page: Page, site: Site):
    open_daybook(page, site.url())
    walk.start_batch(page, "Juniper coarse", "12.4")
    other = open_daybook(page.context.new_page(), site.url())
    expect(other.locator("main h1")).not_to_have_text("Today")
    walk.tap(page, page.get_by_role("link", name="Book", exact=True))
    walk.follow(page, "Start over", "Start over")
    expect(page.get_by_role("link", name="Save a copy first")).to_be_visible()
    expect(page.locator("main")).to_contain_text("1 entry and every log on this device will be deleted")
    walk.rest(page)
    page.get_by_role("button", name="Delete everything on this device").click()
    for each in (page, other):
        expect(each.get_by_role("heading", name="The book is empty")).to_be_visible()
    assert entries_stored(page) == []
