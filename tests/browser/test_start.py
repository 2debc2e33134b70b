"""The start: painted at once, honest about how far it is, the same offline and under any path."""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.conftest import (
    Site,
    Watch,
    heading,
    open_daybook,
    path_of,
    wait_until_offline_works,
    wait_until_open,
)
from tests.browser.walking import tap

HOLD_PYTHON = """
  const post = Worker.prototype.postMessage;
  const held = [];
  Worker.prototype.postMessage = function (...message) { held.push([this, message]); };
  window.letGo = () => {
    Worker.prototype.postMessage = post;
    for (const [worker, message] of held) worker.postMessage(...message);
  };
"""
"""What the page tells its worker, the word to start first of all, is held back until the test has looked."""


NOTE_PROGRESS = """
  window.seen = [];
  new MutationObserver(() => {
    const bar = document.querySelector("#starting progress");
    if (bar) window.seen.push(bar.value);
  }).observe(document, { subtree: true, childList: true, attributes: true });
"""


@pytest.fixture(scope="module")
def starting(tablet: Page, site: Site) -> Page:
    """Before Python is there; the tests that look at it then come first."""
    tablet.add_init_script(HOLD_PYTHON)
    tablet.add_init_script(NOTE_PROGRESS)
    tablet.goto(site.url())
    return tablet


@pytest.fixture(scope="module")
def started(starting: Page) -> Page:
    starting.evaluate("() => window.letGo()")
    return wait_until_open(starting)


def test_the_shell_says_what_it_is_before_python_is_there(starting: Page):
    expect(starting.locator("#starting h1")).to_have_text("Curing Daybook")
    expect(starting.get_by_role("progressbar")).to_be_visible()
    expect(starting.locator("#starting [role=status]")).to_contain_text("Opening the daybook")
    assert starting.locator("input, button, a").count() == 0


def test_the_progress_never_goes_back_and_ends_in_the_application(started: Page):
    seen = started.evaluate("() => window.seen")
    assert seen == sorted(seen)
    assert max(seen) >= 90
    assert heading(started) == "Today"


def test_the_start_is_timed_for_whoever_measures(started: Page):
    marks = started.evaluate("() => window.daybook.marks")
    assert list(marks) == ["worker", "interpreter", "python", "journal"]
    assert started.evaluate("() => window.daybook.startedInMs") > 0


def test_the_chosen_light_is_there_before_the_application(started: Page, site: Site):
    tap(started, started.get_by_role("link", name="Book", exact=True))
    tap(started, started.get_by_role("button", name="Night"))
    expect(started.locator("html")).to_have_attribute("data-theme", "dark")
    started.goto(site.url())
    expect(started.locator("#starting")).to_be_visible()
    assert started.locator("html").get_attribute("data-theme") == "dark"


@pytest.mark.parametrize("at", ["/", "/cellar/book/"])
def test_a_deep_link_opens_with_the_server_gone(page: Page, own_site: Callable[..., Site], at: str):
    site = own_site(at=at)
    wait_until_offline_works(open_daybook(page, site.url()))
    site.stop()
    page.goto(site.url("/chamber/air"))
    wait_until_open(page)
    assert heading(page) == "Read the chamber's air"
    page.get_by_role("link", name="Sums", exact=True).click()
    expect(page.locator("main h1")).to_have_text("Sums")
    assert path_of(page) == f"{at.rstrip('/')}/sums"


def test_a_second_page_of_the_same_device_needs_no_network(
    fresh_profile: BrowserContext, own_site: Callable[..., Site]
):
    site = own_site()
    wait_until_offline_works(open_daybook(fresh_profile.new_page(), site.url()))
    site.stop()
    assert heading(open_daybook(fresh_profile.new_page(), site.url("/batches"))) == "Batches"


def test_an_engine_that_does_not_arrive_is_said_in_words(page: Page, watch: Watch, site: Site):
    watch.allowed += [""]  # the engine complains at length
    page.route(re.compile("stdlib-"), lambda route: route.fulfill(status=503))
    page.goto(site.url())
    notice = page.locator("[data-notice=reload]")
    expect(notice).to_contain_text("The daybook stopped. Nothing saved is lost.")
    expect(notice).not_to_contain_text("needs Safari")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save a copy").click()
    assert waiting.value.suggested_filename.startswith("curing-daybook-")
    expect(notice.get_by_role("button", name="Open it again")).to_be_visible()
    notice.get_by_text("Report", exact=True).click()
    assert "503" in notice.get_by_role("textbox", name="Report").input_value()


def test_a_browser_without_webassembly_is_told_what_it_needs(page: Page, watch: Watch, site: Site):
    watch.allowed += ["WebAssembly"]
    page.add_init_script("delete window.WebAssembly;")
    page.goto(site.url())
    expect(page.locator("#too-old")).to_contain_text("Safari or iPadOS 16.4, Chrome 112, Firefox 114")


def test_the_manifest_names_icons_that_are_there(page: Page, site: Site):
    answer = page.request.get(site.url("/manifest.webmanifest"))
    for icon in answer.json()["icons"]:
        assert page.request.get(site.url("/" + icon["src"].removeprefix("./"))).ok
