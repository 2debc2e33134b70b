"""The measurable part of the style: sizes, gaps, corners, labels, words, contrast, frames."""

import re
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser import measuring
from tests.browser import walking as walk
from tests.browser.conftest import LANDSCAPE, Site, open_daybook, show
from tests.browser.filled import FORMS, PORTRAIT, SCREENS, Filled, device_with
from tests.browser.measuring import CORNER_PX, LEAST_GAP_PX, LEAST_TARGET_PX

ENOUGH_FOR_FIGURES = 7.0
ANSWER_PX = 40
UNITLESS = (
    *("pH", "Lowest pH", "Latest pH", "The meter shows", "Water activity", "Changes of air a day"),
    *("Number of casings", "Cells in a gram of culture"),
)
LISTS = ("sums",)
"""As long as there is something to list; a search stands over them."""
BANNED = re.compile(r"\b(please|sorry|invalid|oops)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def device(browser: Browser, site: Site, filled: Filled) -> Iterator[BrowserContext]:
    context = device_with(browser, site, filled)
    yield context
    context.close()


@pytest.fixture(scope="module", params=SCREENS)
def screen(request: pytest.FixtureRequest) -> str:
    return request.param


@pytest.fixture(scope="module", params=[LANDSCAPE, PORTRAIT], ids=["landscape", "portrait"])
def size(request: pytest.FixtureRequest) -> dict[str, int]:
    return request.param


@pytest.fixture(scope="module")
def still(device: BrowserContext, filled: Filled, screen: str, size: dict[str, int]) -> Page:
    """Every screen, drawn once for all the tests that only look."""
    page = device.pages[0]
    walk.turn(page, size)
    show(page, filled.path(screen))
    return page


@pytest.fixture(scope="module")
def own_page(device: BrowserContext, site: Site) -> Page:
    return open_daybook(device.new_page(), site.url())


@pytest.fixture
def see(own_page: Page, filled: Filled) -> Callable[..., Page]:
    """see(at): drawn anew, to be touched."""

    def at(screen: str) -> Page:
        show(own_page, filled.path(screen))
        return own_page

    return at


def test_every_target_is_48_px_at_least(still: Page):
    assert still.evaluate(measuring.SMALL, LEAST_TARGET_PX) == []


def test_neighbours_are_8_px_apart(still: Page):
    assert still.evaluate(measuring.CLOSE, LEAST_GAP_PX) == []


def test_the_tab_key_goes_down_a_form(still: Page):
    assert still.evaluate(measuring.OUT_OF_ORDER) == []


def test_the_pinned_bars_do_not_lie_on_each_other(still: Page):
    still.evaluate("() => window.scrollTo(0, 0)")
    assert still.evaluate(measuring.COVERED, "nav.places a, form.entry > .actions *") == []


def test_nothing_is_to_be_tapped_in_the_corners(still: Page):
    still.evaluate("() => window.scrollTo(0, 0)")
    assert still.evaluate(measuring.CORNERED, CORNER_PX) == []


def test_a_link_as_small_as_its_text_stands_in_a_sentence(still: Page):
    assert still.evaluate(measuring.LONELY_SMALL_LINKS) == []


def test_no_box_is_of_the_type_number(still: Page):
    assert still.locator("input[type=number]").count() == 0


def test_every_number_has_its_unit_in_its_label(still: Page):
    numbers = still.locator("main input[inputmode=decimal], main input:is([name$=_c], [name$=_kg])")
    without = "(all) => all.map((box) => box.labels[0]).filter((each) => !each.querySelector('.heard'))"
    labels = numbers.evaluate_all(f"(all) => ({without})(all).map((each) => each.textContent.trim())")
    assert [each for each in labels if not each.startswith(UNITLESS)] == []


@pytest.mark.parametrize("form", FORMS)
def test_an_error_says_what_to_do_and_begs_no_pardon(see, form: str):
    page = see(form)
    for box in page.locator("main form input[type=text]:visible").all():
        box.fill("about a handful")
    walk.tap(page, page.get_by_role("button", name=FORMS[form], exact=True))
    page.locator(".summary").first.wait_for()
    sentences = page.locator(".refusal, .summary li, .summary p").all_inner_texts()
    assert sentences
    assert [each for each in sentences if BANNED.search(each) or not each.strip().endswith(".")] == []


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("at", ["a batch that dries", "a ready piece", "chamber", "sum moist-air", "your data"])
def test_figures_stand_out_7_to_1(see, at: str, light: str):
    page = see(at)
    page.emulate_media(color_scheme=light)
    contrasts = page.evaluate(measuring.CONTRASTS, ".value, .verdict, .rows.pieces :is(a, small)")
    assert contrasts
    assert [each for each in contrasts if each[1] < ENOUGH_FOR_FIGURES] == []


@pytest.mark.parametrize("at", ["sum moist-air", "sum set-point", "a correction"])
def test_the_answer_is_written_large(see, at: str):
    sizes = (
        see(at).locator(".answer .value").evaluate_all("(all) => all.map((each) => getComputedStyle(each).fontSize)")
    )
    assert sizes
    assert [size for size in sizes if float(size.removesuffix("px")) < ANSWER_PX] == []


def test_the_three_verdicts_differ_without_colour(see):
    page = see("a batch that dries")
    frames = page.locator(".rows.pieces .verdict").evaluate_all(measuring.FRAMES)
    assert frames == {"ready": "solid", "hold": "dashed", "discard": "double"}


def test_figures_align_in_columns(see):
    page = see("a batch that dries")
    digits = page.locator(".rows.pieces small").first.evaluate("(cell) => getComputedStyle(cell).fontVariantNumeric")
    assert "tabular-nums" in digits


def test_today_has_ten_things_to_do(see):
    assert see("today").locator("li.row").count() >= 10


@pytest.mark.parametrize("screen", [each for each in SCREENS if each not in LISTS])
def test_a_screen_is_one_and_a_half_high_at_most(see, screen: str):
    page = see(screen)
    walk.turn(page, LANDSCAPE)
    assert page.evaluate("document.documentElement.scrollHeight") <= 1.5 * LANDSCAPE["height"]


def test_motion_can_be_refused(see):
    page = see("today")
    page.emulate_media(reduced_motion="reduce")
    assert page.evaluate(measuring.MOVING) == []
