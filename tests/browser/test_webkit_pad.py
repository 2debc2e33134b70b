"""The page's own number keys, and what is half typed, in WebKit: the engine of every iPad."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from selenium.webdriver import WebKitGTK
from selenium.webdriver.common.by import By

from tests.browser import webkit
from tests.browser.conftest import Site
from tests.browser.test_webkit import begin_in_a_new_window, first_visit, needs_webkit

pytestmark = needs_webkit
OWN_KEYS = """localStorage.setItem("daybook-cookies", '{"keys": "page"}');
  htmx.ajax("GET", "/chamber/air", { target: "body", swap: "innerMorph", push: "true" })"""
STATE = """const box = document.querySelector("[name=temperature_c]");
  return [box.value, document.activeElement === box, box.inputMode]"""


@pytest.fixture(scope="module")
def driver(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[WebKitGTK]:
    site = Site(dist).start()
    try:
        with webkit.opened(tmp_path_factory.mktemp("webkit")) as driver:
            first_visit(driver, site)
            driver.execute_script(OWN_KEYS)
            webkit.wait_for(driver, "document.querySelector('[name=temperature_c]') !== null")
            yield driver
    finally:
        site.stop()


def press(driver: WebKitGTK, *keys: str) -> None:
    for each in keys:
        webkit.tap(driver, driver.find_element(By.CSS_SELECTOR, f'number-pad [data-key="{each}"]'))


def test_webkit_types_with_the_pages_keys_and_what_was_typed_outlives_the_window(driver: WebKitGTK):
    webkit.tap(driver, driver.find_element(By.NAME, "temperature_c"))
    webkit.wait_for(driver, "document.querySelector('number-pad') !== null")
    press(driver, "1", "2", "mark", "7", "back", "5", "minus")
    assert driver.execute_script(STATE) == ["−12.5", True, "none"]
    begin_in_a_new_window(driver)
    webkit.wait_for(driver, "document.querySelector('draft-line') !== null")
    assert driver.execute_script(STATE)[0] == "−12.5"
