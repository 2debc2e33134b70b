"""A new version waits until it is asked for, and takes nothing typed away."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from attrs import define
from playwright.sync_api import Browser, BrowserContext, FloatRect, Page, expect

from building.placing import integrity, short_hash
from tests.browser.conftest import (
    Site,
    Watch,
    entries_stored,
    new_device,
    open_at,
    open_daybook,
    path_of,
    show,
    wait_until_offline_works,
    wait_until_open,
)
from tests.browser.walking import rest, tap

AIR = "/chamber/air"
SECOND = '<meta name="build" content="second">'


def served_copy(dist: Path, folder: Path) -> Site:
    """To be changed."""
    return Site(Path(shutil.copytree(dist, folder / "dist"))).start()


@pytest.fixture
def updatable(dist: Path, tmp_path: Path) -> Iterator[Site]:
    site = served_copy(dist, tmp_path)
    yield site
    site.stop()


def publish_second(site: Site) -> None:
    """The same application behind another shell, with the service worker that belongs to it."""
    shell, worker = site.folder / "index.html", site.folder / "sw.js"
    before = shell.read_bytes()
    shell.write_text(shell.read_text().replace("<head>", f"<head>\n    {SECOND}"))
    changed = worker.read_text()
    for name in (short_hash, integrity):
        assert changed.count(name(before)) == 1
        changed = changed.replace(name(before), name(shell.read_bytes()))
    worker.write_text(changed)


def publish_half(site: Site) -> None:
    """An upload half done: the list is the new version's, a file is neither the old one nor the new."""
    publish_second(site)
    shell = site.folder / "index.html"
    shell.write_text(shell.read_text() + " ")


def finish_upload(site: Site) -> None:
    shell = site.folder / "index.html"
    shell.write_text(shell.read_text()[:-1])


UNTIL_SETTLED = """async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update().catch(() => {});
  const coming = registration.installing;
  const isSettled = () => ["installed", "redundant"].includes(coming.state);
  if (coming && !isSettled()) {
    await new Promise((resolve) => coming.addEventListener("statechange", () => isSettled() && resolve()));
  }
  return registration.waiting === null;
}"""
"""Looks for a new version; says whether none waits after that."""


def make_it_look(page: Page) -> None:
    """What coming back to the app does: an installed one does not look by itself."""
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")


def is_second(page: Page) -> bool:
    return page.locator("meta[name=build]").count() == 1


@define
class Seen:
    """One device on which a new version is taken, and what was there before and after."""

    was_second_unasked: bool = True
    was_half_left: bool = False
    button: FloatRect | None = None
    path: str = ""
    typed: str = ""
    offers: int = 1


@pytest.fixture(scope="module")
def moved(browser: Browser, dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Page, Site, Seen]]:
    site, watch, seen = served_copy(dist, tmp_path_factory.mktemp("updated")), Watch(), Seen()
    context = new_device(browser)
    watch.over(context)
    page = wait_until_offline_works(open_at(context.new_page(), site, AIR))
    page.locator("[name=temperature_c]").fill("12")
    tap(page, page.get_by_role("button", name="Save the reading"))
    expect(page.locator("main .saved")).to_be_visible()
    watch.allowed += ["integrity", "bad-precaching", "hash"]
    publish_half(site)
    seen.was_half_left = page.evaluate(UNTIL_SETTLED)
    finish_upload(site)
    make_it_look(page)
    expect(page.locator("#device")).to_contain_text("A new version is ready")
    page.reload()
    wait_until_open(page)
    seen.was_second_unasked = is_second(page)
    _take(show(page, AIR), seen)
    yield page, site, seen
    context.close()
    site.stop()
    watch.check(site.origin)


def _take(page: Page, seen: Seen) -> None:
    """With a form half filled in."""
    page.locator("[name=temperature_c]").fill("12,")
    seen.button = page.locator("[data-update]").bounding_box()
    rest(page)
    page.locator("[data-update]").click()
    page.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(page)
    seen.path = path_of(page)
    seen.typed = page.locator("[name=temperature_c]").input_value()
    seen.offers = page.locator("[data-update]").count()


def test_a_version_whose_file_is_damaged_is_not_taken_and_the_right_one_later_is(moved: tuple[Page, Site, Seen]):
    assert moved[2].was_half_left


def test_a_new_version_waits_for_the_tap(moved: tuple[Page, Site, Seen]):
    assert not moved[2].was_second_unasked


def test_after_the_update_one_is_where_one_was(moved: tuple[Page, Site, Seen]):
    assert (moved[2].path, moved[2].offers) == (AIR, 0)


def test_what_is_typed_is_there_after_the_update(moved: tuple[Page, Site, Seen]):
    assert moved[2].typed == "12,"


def test_the_button_of_the_update_is_large_enough(moved: tuple[Page, Site, Seen]):
    assert moved[2].button is not None
    assert moved[2].button["height"] >= 48


def test_the_book_is_whole_after_the_update_and_works_offline(moved: tuple[Page, Site, Seen]):
    page, site, _ = moved
    site.stop()
    open_daybook(page, site.url("/yours"))
    assert is_second(page)
    expect(page.locator("main .value").first).to_contain_text("1")
    assert len(entries_stored(page)) == 1


def test_an_update_taken_in_one_tab_does_not_reload_the_other(fresh_profile: BrowserContext, updatable: Site):
    first = wait_until_offline_works(open_daybook(fresh_profile.new_page(), updatable.url()))
    other = open_daybook(fresh_profile.new_page(), updatable.url(AIR))
    other.locator("[name=temperature_c]").fill("12")
    publish_second(updatable)
    make_it_look(first)
    rest(first)
    first.locator("[data-update]").click()
    first.wait_for_selector("meta[name=build]", state="attached")
    wait_until_open(first)
    expect(other.locator("[data-update]")).to_be_visible()
    assert not is_second(other)
    assert other.locator("[name=temperature_c]").input_value() == "12"
