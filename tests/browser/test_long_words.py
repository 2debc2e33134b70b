"""Another language may say in fifteen letters what English says in five: no button of one word is cut off by it."""

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import LANDSCAPE, visit
from tests.browser.filled import Filled

PHONE = {"width": 390, "height": 844}
SCREENS = (
    *("today", "a batch that dries", "a ready piece", "weighing", "a sheet's row", "writing a formula", "chamber"),
    *("a run", "files of a proof", "a proof", "a search without a find", "your data", "a saved line"),
)
THREE_TIMES_AS_LONG = """async () => {
  for (const each of document.querySelectorAll("details")) each.open = true;
  await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)));
  const isWord = (each) => /^\\p{L}{2,}$/u.test(each.textContent.trim());
  const words = [...document.querySelectorAll("button, .button")].filter(isWord);
  for (const each of words) each.textContent = each.textContent.trim().repeat(3);
  const isCut = (each) => {
    const box = each.getBoundingClientRect();
    return box.width > 0 && (each.scrollWidth > each.clientWidth + 1 || box.right > innerWidth + 1 || box.left < -1);
  };
  return { met: words.length, cut: words.filter(isCut).map((each) => each.textContent) };
}"""


@pytest.mark.parametrize("size", [PHONE, LANDSCAPE], ids=["phone", "tablet"])
def test_no_button_of_one_long_word_is_cut_off(filled_tablet: Page, filled: Filled, size: dict[str, int]):
    filled_tablet.set_viewport_size(size)
    found = {}
    for screen in SCREENS:
        visit(filled_tablet, filled.path(screen))
        found[screen] = filled_tablet.evaluate(THREE_TIMES_AS_LONG)
    assert {screen: each["cut"] for screen, each in found.items() if each["cut"]} == {}
    assert sum(each["met"] for each in found.values()) > len(SCREENS)
