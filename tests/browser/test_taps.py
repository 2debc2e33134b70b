"""How many taps a story takes beside its digits, counted by the page: from a tab, or from a form that is open."""

from collections.abc import Iterator

import pytest
from attrs import define, field
from playwright.sync_api import Browser, Page, expect

from core.worksheet import Choice, Number
from core.worksheets import WORKSHEETS
from tests.browser import walking as walk
from tests.browser.conftest import Site, show
from tests.browser.filled import Filled, device_with, fill

MOST_FOR_A_SUM = 5
OTHERWISE = {"ph-meter", "equal-drying", "chamber-capacity", "dried-composition", "ready"}
"""Sums that take more taps with the answers of their examples."""
COUNT = """() => {
  window.counted = 0;
  addEventListener("pointerdown", () => (window.counted += 1), { capture: true });
}"""
TO_OPEN_AND_CHOOSE = 2
WEIGHTS = ("900", "910", "920", "930", "940", "950")


@define
class Fingers:
    """Taps go through the page, which counts them; a box that has the focus is typed into without one."""

    page: Page
    table: list[str] = field(factory=list)

    def begin(self) -> None:
        self.page.evaluate("() => { window.counted = 0; }")

    def tap(self, role: str, name: str) -> None:
        walk.tap(self.page, self.page.get_by_role(role, name=name, exact=True).first)

    def type(self, key: str, text: str) -> None:
        box = self.page.locator(f"main [name={key}]")
        if not box.evaluate("(box) => box === document.activeElement"):
            walk.tap(self.page, box)
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)
        walk.answered(self.page)

    def choose(self, key: str, option: str) -> None:
        row = self.page.locator(f"main [name={key}][value='{option}']")
        if row.count():
            walk.tap(self.page, row)
            return
        self.page.locator(f"main select[name={key}]").select_option(option)
        self.page.evaluate("(taps) => { window.counted += taps; }", TO_OPEN_AND_CHOOSE)
        walk.answered(self.page)

    def taps(self, story: str) -> int:
        count = self.page.evaluate("() => window.counted")
        self.table.append(f"{count:3}  {story}")
        return count


@pytest.fixture(scope="module")
def filled() -> Filled:
    return fill()


@pytest.fixture(scope="module")
def fingers(browser: Browser, site: Site, filled: Filled) -> Iterator[Fingers]:
    context = device_with(browser, site, filled)
    page = context.pages[0]
    page.evaluate(COUNT)
    fingers = Fingers(page)
    yield fingers
    context.close()
    print("", "taps beside the digits", *fingers.table, sep="\n")


@pytest.fixture
def today(fingers: Fingers) -> Fingers:
    show(fingers.page, "/")
    fingers.begin()
    return fingers


@pytest.mark.parametrize("name", [each for each in WORKSHEETS if each not in OTHERWISE])
def test_a_sum_is_had_in_five_taps_from_the_list(fingers: Fingers, name: str):
    """What must be filled in, with the answers of its example; the rest stands there."""
    sheet = WORKSHEETS[name]
    show(fingers.page, "/sums")
    fingers.begin()
    fingers.tap("link", sheet.title)
    walk.is_at(fingers.page, sheet.title)
    for each in sheet.inputs:
        if isinstance(each, Choice) and each.default is None:
            fingers.choose(each.key, sheet.example[each.key])
    for each in sheet.inputs:
        is_there = fingers.page.locator(f"main [name={each.key}]").count()
        if isinstance(each, Number) and is_there and not each.optional and each.default is None:
            fingers.type(each.key, sheet.example[each.key])
    expect(fingers.page.locator(".pane .figures :is(.value, .verdict)").first).to_be_visible()
    assert fingers.taps(f"sum: {name}") <= MOST_FOR_A_SUM


def test_nitrite_for_a_weight_takes_four(today: Fingers):
    today.tap("link", "Sums")
    walk.is_at(today.page, "Sums")
    sheet = WORKSHEETS["cure-ppm"]
    today.tap("link", sheet.title)
    walk.is_at(today.page, sheet.title)
    for each in sheet.inputs:
        if isinstance(each, Number) and not each.optional and each.default is None:
            today.type(each.key, sheet.example[each.key])
    expect(today.page.locator(".pane .answer .value")).to_contain_text("ppm")
    assert today.taps("nitrite for a weight") <= 4


def test_a_dew_point_takes_four(today: Fingers):
    today.tap("link", "Sums")
    walk.is_at(today.page, "Sums")
    sheet = WORKSHEETS["moist-air"]
    today.tap("link", sheet.title)
    walk.is_at(today.page, sheet.title)
    today.type("temperature", "13")
    today.type("humidity", "78")
    expect(today.page.locator(".pane .answer .value")).to_contain_text("°C")
    assert today.taps("dew point") <= 4


def test_a_piece_is_weighed_with_one(fingers: Fingers, filled: Filled):
    walk.open_batch(fingers.page, "Juniper coarse")
    fingers.tap("link", "Weigh them")
    expect(fingers.page.locator("main h1")).to_contain_text("Weigh J-")
    fingers.begin()
    fingers.type("mass_kg", "800")
    walk.save(fingers.page, "Save and next")
    assert fingers.taps("weigh a piece") <= 1


def test_six_are_hung_in_series_with_seven(fingers: Fingers, filled: Filled):
    show(fingers.page, filled.path("hanging").replace(filled.ids["batch"], filled.ids["ferments"]))
    fingers.begin()
    fingers.type("tag", "F-1")
    for grams in WEIGHTS:
        fingers.type("start_kg", grams)
        walk.save(fingers.page, "Save and next piece")
    assert fingers.taps("hang six with tags in series") <= 1 + len(WEIGHTS)


def test_a_copy_is_saved_with_two(today: Fingers):
    today.tap("link", "Book")
    walk.is_at(today.page, "Book")
    with today.page.expect_download():
        today.tap("link", "Save a copy")
    assert today.taps("save a copy") <= 2
