"""The same start, save and start again in WebKit, the engine of every iPad.

The server is stopped before anything is entered: WebKit's service worker serves the daybook from then on. A browser
that is driven over WebDriver keeps its data in memory, so the whole browser cannot be killed here and opened again on
the same disk, as is done with Chromium. What is ended is everything above the data: the window, its page, the worker
and the Python in it; a new window begins anew from the service worker's files and from IndexedDB.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from attrs import define, field
from selenium.webdriver import WebKitGTK
from selenium.webdriver.common.by import By

from building import browsers
from tests.browser import webkit
from tests.browser.conftest import Site

BATCH = "Juniper coarse"
MISSING = [package for package in browsers.missing() if package != "chromium"]
if webkit.mini_browser() is None and not MISSING:
    MISSING = ["webkit2gtk-driver (with its MiniBrowser)"]

needs_webkit = pytest.mark.skipif(
    bool(MISSING), reason=f"{' and '.join(MISSING)} missing. On Debian: apt-get install {' '.join(MISSING)}"
)
pytestmark = needs_webkit


@define
class Seen:
    texts: dict[str, str] = field(factory=dict)


@pytest.fixture(scope="module")
def seen(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Seen]:
    site, seen = Site(dist).start(), Seen()
    try:
        with webkit.opened(tmp_path_factory.mktemp("webkit")) as driver:
            first_visit(driver, site)
            site.stop()
            _save(driver, seen)
            _begin_anew(driver, seen)
        yield seen
    finally:
        site.stop()


def first_visit(driver: WebKitGTK, site: Site) -> None:
    driver.get(site.url())
    webkit.wait_until_open(driver)
    webkit.wait_for(driver, "document.getElementById('device').textContent.includes('Ready to work offline')")


def _save(driver: WebKitGTK, seen: Seen) -> None:
    webkit.follow(driver, "Start a batch", "Start a batch")
    webkit.fill(driver, "name", BATCH)
    webkit.tap(driver, driver.find_element(By.CSS_SELECTOR, "main label.option"))
    webkit.fill(driver, "meat_kg", "12.4")
    webkit.press(driver, "Start the batch")
    webkit.wait_for_heading(driver, BATCH)
    webkit.follow(driver, "Read pH and temperature", "Read pH and temperature")
    webkit.fill(driver, "ph", "5.6")
    webkit.press(driver, "Save the reading")
    webkit.wait_for_heading(driver, BATCH)
    seen.texts["said"] = driver.find_element(By.CSS_SELECTOR, ".saved").text


def begin_in_a_new_window(driver: WebKitGTK) -> None:
    """At the same address."""
    address, before = driver.current_url.partition("?")[0], driver.current_window_handle
    driver.switch_to.new_window("window")
    after = driver.current_window_handle
    driver.switch_to.window(before)
    driver.close()
    driver.switch_to.window(after)
    driver.get(address)
    webkit.wait_until_open(driver)


def _begin_anew(driver: WebKitGTK, seen: Seen) -> None:
    begin_in_a_new_window(driver)
    seen.texts["heading"] = driver.find_element(By.CSS_SELECTOR, "main h1").text
    webkit.tap(driver, driver.find_element(By.CSS_SELECTOR, "#log > summary"))
    seen.texts["log"] = driver.find_element(By.CSS_SELECTOR, ".log").text
    webkit.follow(driver, "Book", "Book")
    seen.texts["count"] = driver.find_element(By.CSS_SELECTOR, "main .value").text


def test_webkit_says_that_the_reading_is_saved(seen: Seen):
    assert seen.texts["said"].startswith("Saved")


def test_webkit_opens_the_batch_by_its_address_with_the_server_gone(seen: Seen):
    assert seen.texts["heading"] == BATCH


def test_webkit_has_kept_the_reading(seen: Seen):
    assert "pH 5.6" in seen.texts["log"]


def test_webkit_has_kept_each_entry_once(seen: Seen):
    assert seen.texts["count"].startswith("2 ")
