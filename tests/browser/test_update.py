"""A new version waits until it is asked for, and takes nothing typed away."""

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from building.placing import short_hash
from tests.browser.conftest import (
    Site,
    entries_stored,
    open_at,
    open_daybook,
    path_of,
    wait_until_offline_works,
    wait_until_open,
)

AIR = "/chamber/air"
SECOND = '<meta name="build" content="second">'


@pytest.fixture
def updatable(dist: Path, tmp_path: Path, own_site: Callable[..., Site]) -> Site:
    folder = tmp_path / "dist"
    shutil.copytree(dist, folder)
    return own_site(folder)


def publish_second(site: Site) -> None:
    """The same application behind another shell, with the service worker that belongs to it."""
    shell, worker = site.folder / "index.html", site.folder / "sw.js"
    before = short_hash(shell.read_bytes())
    shell.write_text(shell.read_text().replace("<head>", f"<head>\n    {SECOND}"))
    changed = re.sub(before, short_hash(shell.read_bytes()), worker.read_text())
    assert changed != worker.read_text()
    worker.write_text(changed)


def make_it_look(page: Page) -> None:
    """What coming back to the app does: an installed one does not look by itself."""
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")


def is_second(page: Page) -> bool:
    return page.locator("meta[name=build]").count() == 1


def test_a_new_version_waits_for_the_tap(page: Page, updatable: Site):
    wait_until_offline_works(open_at(page, updatable, "/sums"))
    publish_second(updatable)
    make_it_look(page)
    expect(page.locator("#device")).to_contain_text("A new version is ready")
    page.reload()
    wait_until_open(page)
    assert not is_second(page)

    page.locator("[data-update]").click()
    page.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(page)
    assert path_of(page) == "/sums"
    expect(page.locator("[data-update]")).to_have_count(0)


def test_what_is_typed_is_there_after_the_update(page: Page, updatable: Site):
    wait_until_offline_works(open_at(page, updatable, AIR))
    page.locator("[name=temperature_c]").fill("12,")
    publish_second(updatable)
    make_it_look(page)
    page.locator("[data-update]").click()
    page.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(page)
    expect(page.locator("[name=temperature_c]")).to_have_value("12,")


def test_the_book_is_whole_after_the_update_and_works_offline(page: Page, updatable: Site):
    wait_until_offline_works(open_at(page, updatable, AIR))
    page.locator("[name=temperature_c]").fill("12")
    page.get_by_role("button", name="Save the reading").click()
    expect(page.locator("main .saved")).to_be_visible()
    publish_second(updatable)
    make_it_look(page)
    page.locator("[data-update]").click()
    page.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(page)
    updatable.stop()
    open_daybook(page, updatable.url("/yours"))
    assert is_second(page)
    expect(page.locator("main .value").first).to_contain_text("1")
    assert len(entries_stored(page)) == 1


def test_an_update_taken_in_one_tab_does_not_reload_the_other(fresh_profile: BrowserContext, updatable: Site):
    first = wait_until_offline_works(open_daybook(fresh_profile.new_page(), updatable.url()))
    other = open_daybook(fresh_profile.new_page(), updatable.url(AIR))
    other.locator("[name=temperature_c]").fill("12")
    publish_second(updatable)
    make_it_look(first)
    first.locator("[data-update]").click()
    first.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(first)
    expect(other.locator("[data-update]")).to_be_visible()
    assert not is_second(other)
    assert other.locator("[name=temperature_c]").input_value() == "12"


def test_the_button_of_the_update_is_large_enough(page: Page, updatable: Site):
    wait_until_offline_works(open_daybook(page, updatable.url()))
    publish_second(updatable)
    make_it_look(page)
    box = page.locator("[data-update]").bounding_box()
    assert box is not None
    assert box["height"] >= 48
