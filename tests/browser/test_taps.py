"""How many taps a story takes beside its digits, counted by the page: from a tab, or from a form that is open."""

from collections.abc import Callable, Iterator

import pytest
from attrs import define
from playwright.sync_api import Browser, Page, expect

from core.worksheet import Choice, Worksheet
from core.worksheets import WORKSHEETS
from tests.browser import proving
from tests.browser import walking as walk
from tests.browser.charted import at_rest
from tests.browser.conftest import TAPS, Site, show
from tests.browser.filled import Filled, device_with, fill

MOST_FOR_A_SUM = 5
ENOUGH = {
    "ph-meter": ("shows", "reading", "other_reading"),
    "equal-drying": ("other_temperature",),
    "chamber-capacity": ("drained", "time"),
    "pork-frozen": ("warmest_c", "thickness_m"),
    "ready": ("style", "start_kg", "now_kg"),
}
"""Of sums whose boxes are needed for some ways only: what is told for a first answer."""
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
    told: Callable[[str, object], None]
    """What pytest keeps of a test, for the table at the end of the run."""

    def begin(self) -> None:
        self.page.evaluate("() => { window.counted = 0; }")

    def tap(self, role: str, name: str) -> None:
        walk.tap(self.page, self.page.get_by_role(role, name=name, exact=True).first)

    def type(self, key: str, text: str) -> None:
        box = self.page.locator(f"main [name={key}]")
        if not box.is_visible():
            walk.tap(self.page, self.page.locator("main .seldom > summary"))
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
        self.told(TAPS, (count, story))
        return count


@pytest.fixture(scope="module")
def filled() -> Filled:
    return fill()


@pytest.fixture(scope="module")
def counting(browser: Browser, site: Site, filled: Filled) -> Iterator[Page]:
    context = device_with(browser, site, filled)
    page = context.pages[0]
    page.evaluate(COUNT)
    yield page
    context.close()


@pytest.fixture
def fingers(counting: Page, record_property: Callable[[str, object], None]) -> Fingers:
    return Fingers(counting, record_property)


@pytest.fixture
def today(fingers: Fingers) -> Fingers:
    show(fingers.page, "/")
    fingers.begin()
    return fingers


@pytest.mark.parametrize("name", WORKSHEETS)
def test_a_sum_is_had_in_five_taps_from_the_list(fingers: Fingers, name: str):
    """What must be told, with the answers of its example; the rest stands there."""
    sheet = WORKSHEETS[name]
    show(fingers.page, "/sums")
    fingers.begin()
    fingers.tap("link", sheet.title)
    walk.is_at(fingers.page, sheet.title)
    for each in sheet.inputs:
        if each.key not in ENOUGH.get(name, needed(sheet)):
            continue
        if isinstance(each, Choice):
            fingers.choose(each.key, sheet.example[each.key])
        elif fingers.page.locator(f"main [name={each.key}]").count():
            fingers.type(each.key, sheet.example[each.key])
    expect(fingers.page.locator(".pane .figures :is(.value, .verdict)").first).to_be_visible()
    assert fingers.taps(f"sum: {name}") <= MOST_FOR_A_SUM


def needed(sheet: Worksheet) -> list[str]:
    return [each.key for each in sheet.inputs if each.default is None and not getattr(each, "optional", False)]


def test_nitrite_for_a_weight_takes_four(today: Fingers):
    today.tap("link", "Sums")
    walk.is_at(today.page, "Sums")
    sheet = WORKSHEETS["cure-ppm"]
    today.tap("link", sheet.title)
    walk.is_at(today.page, sheet.title)
    for key in needed(sheet):
        today.type(key, sheet.example[key])
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


def test_a_proof_from_two_files_takes_eight(today: Fingers):
    files = proving.loggers_files()
    today.tap("link", "Chamber")
    walk.is_at(today.page, "Chamber")
    today.tap("link", "Prove")
    walk.is_at(today.page, "Prove the empty chamber")
    with today.page.expect_file_chooser() as opened:
        walk.tap(today.page, today.page.locator("main [type=file]"))
    opened.value.set_files(proving.payloads(files))
    today.tap("button", "Read the files")
    proving.settle_layouts(today.page, files)
    today.tap("button", "Analyse")
    at_rest(today.page)
    proving.save_run(today.page)
    assert today.taps("a proof from two files") <= 8
