"""WebKit on a screen of its own, driven over WebDriver: Debian's webkit2gtk-driver under Xvfb."""

import os
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from selenium.webdriver import WebKitGTK
from selenium.webdriver.common.by import By
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.ui import WebDriverWait
from selenium.webdriver.webkitgtk.options import Options
from selenium.webdriver.webkitgtk.service import Service

from building import browsers
from tests.browser.conftest import PATIENCE_MS

PATIENCE_S = PATIENCE_MS / 1000
PASS_TIME = "const now = performance.now.bind(performance); performance.now = () => now() + 605"
NO_GRAPHICS_CARD = {"WEBKIT_DISABLE_COMPOSITING_MODE": "1", "LIBGL_ALWAYS_SOFTWARE": "1"}


def mini_browser() -> Path | None:
    """WebKit's own small browser; Debian ships it with the driver."""
    found = sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))
    return found[-1] if found else None


@contextmanager
def screen() -> Iterator[str]:
    """An X display that nobody looks at; its name."""
    reading, writing = os.pipe()
    command = [f"{browsers.xvfb()}", "-displayfd", f"{writing}", "-screen", "0", "1100x900x24", "-nolisten", "tcp"]
    server = subprocess.Popen(command, pass_fds=(writing,), stderr=subprocess.DEVNULL)
    os.close(writing)
    try:
        with os.fdopen(reading) as told:
            yield f":{told.readline().strip()}"
    finally:
        server.terminate()
        server.wait(PATIENCE_S)


@contextmanager
def opened(home: Path) -> Iterator[WebKitGTK]:
    """A browser that has never been opened before, with its files under home."""
    options = Options()
    options.binary_location = f"{mini_browser()}"
    options.add_argument("--automation")
    with screen() as display:
        folders = dict.fromkeys(("HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"), f"{home}")
        env = {**os.environ, **folders, **NO_GRAPHICS_CARD, "DISPLAY": display}
        driver = WebKitGTK(options=options, service=Service(f"{browsers.webkit_driver()}", env=env))
        driver.set_script_timeout(PATIENCE_S)
        try:
            yield driver
        finally:
            driver.quit()


STOPPED = "return document.querySelector('#device textarea')?.value"


def wait_for(driver: WebKitGTK, script: str) -> None:
    def is_true(_: object) -> bool:
        report = driver.execute_script(STOPPED)
        assert not report, report
        return driver.execute_script(f"return {script}")

    WebDriverWait(driver, PATIENCE_S, poll_frequency=0.1).until(is_true)


def wait_until_open(driver: WebKitGTK) -> None:
    wait_for(driver, "'open' in document.documentElement.dataset")


def wait_for_heading(driver: WebKitGTK, title: str) -> None:
    wait_for(driver, f"document.querySelector('main h1')?.textContent.trim() === '{title}'")


def tap(driver: WebKitGTK, control: WebElement) -> None:
    """On a clock set forward: so soon after another page a tap would do nothing."""
    driver.execute_script(PASS_TIME)
    control.click()


def follow(driver: WebKitGTK, link: str, title: str) -> None:
    tap(driver, driver.find_element(By.LINK_TEXT, link))
    wait_for_heading(driver, title)


def fill(driver: WebKitGTK, name: str, text: str) -> None:
    box = driver.find_element(By.NAME, name)
    box.clear()
    box.send_keys(text)


def press(driver: WebKitGTK, button: str) -> None:
    tap(driver, driver.find_element(By.XPATH, f"//main//button[normalize-space()='{button}']"))
