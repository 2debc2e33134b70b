"""A proof in WebKit, the engine of every iPad: files up, verdict, chart, saved; in a new window all is there again."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from attrs import define, field
from selenium.webdriver import WebKitGTK
from selenium.webdriver.common.by import By

from tests.browser import webkit
from tests.browser.conftest import Site
from tests.browser.proving import loggers_files
from tests.browser.test_webkit import begin_in_a_new_window, first_visit, needs_webkit

pytestmark = needs_webkit
IS_DRAWN = "document.querySelector('log-chart figure')?.dataset.state === 'still'"
INKED = """
  const canvas = document.querySelector("log-chart canvas");
  const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
  return data.filter((each, at) => at % 4 === 3 && each > 0).length;
"""
STORED = """
  const [done] = [arguments[arguments.length - 1]];
  const opening = indexedDB.open("daybook");
  opening.onsuccess = () => {
    const all = opening.result.transaction("files").objectStore("files").getAll();
    all.onsuccess = () => { opening.result.close(); done(all.result.map(({ bytes }) => bytes.byteLength)); };
  };
"""


@define
class Seen:
    inked: list[int] = field(factory=list)
    said: str = ""
    stored: list[int] = field(factory=list)


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    folder = tmp_path_factory.mktemp("loggers")
    for name, data in loggers_files().items():
        (folder / name).write_bytes(data)
    return sorted(folder.iterdir())


@pytest.fixture(scope="module")
def seen(dist: Path, files: list[Path], tmp_path_factory: pytest.TempPathFactory) -> Iterator[Seen]:
    site, seen = Site(dist).start(), Seen()
    try:
        with webkit.opened(tmp_path_factory.mktemp("webkit")) as driver:
            first_visit(driver, site)
            site.stop()
            _prove(driver, files, seen)
            begin_in_a_new_window(driver)
            webkit.wait_for(driver, IS_DRAWN)
            seen.inked.append(driver.execute_script(INKED))
            seen.stored = driver.execute_async_script(STORED)
        yield seen
    finally:
        site.stop()


def _prove(driver: WebKitGTK, files: list[Path], seen: Seen) -> None:
    webkit.follow(driver, "Chamber", "Chamber")
    webkit.follow(driver, "Prove", "Prove the empty chamber")
    driver.find_element(By.CSS_SELECTOR, "main [type=file]").send_keys("\n".join(map(str, files)))
    _press(driver, "Read the files", "document.querySelector('form[action$=\"/files/0\"]')")
    _press(driver, "This is right", "document.querySelector('form[action$=\"/files/1\"]')")
    _press(driver, "This is right", "document.querySelector('h1').textContent === 'Target and tolerance'")
    _press(driver, "Analyse", IS_DRAWN)
    seen.inked.append(driver.execute_script(INKED))
    _press(driver, "Save this run", "document.querySelector('.saved')")
    seen.said = driver.find_element(By.CSS_SELECTOR, ".saved").text


def _press(driver: WebKitGTK, button: str, answer: str) -> None:
    webkit.press(driver, button)
    webkit.wait_for(driver, answer)


def test_webkit_says_that_the_run_is_saved(seen: Seen):
    assert seen.said.startswith("Saved")


def test_webkit_draws_the_chart_and_draws_it_again_from_the_stored_files(seen: Seen):
    assert min(seen.inked) > 5000


def test_webkit_holds_each_file_once_and_whole(seen: Seen, files: list[Path]):
    assert sorted(seen.stored) == sorted(file.stat().st_size for file in files)
