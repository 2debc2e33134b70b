"""Between htmx and Python: history, focus, what was typed, files up and down."""

import json
import zipfile
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Download, Page, expect

from tests.browser.conftest import (
    Site,
    entries_stored,
    open_at,
    path_of,
    show,
    wait_until_offline_works,
    wait_until_open,
)
from tests.browser.walking import answered, tap

AIR = "/chamber/air"
TAP_TWICE = """(control, apartMs) => {
  const clock = performance.now;
  const first = performance.now();
  performance.now = () => first;
  control.click();
  performance.now = () => first + apartMs;
  control.click();
  performance.now = clock;
}"""
STOP_CLOCK = "() => { const now = performance.now(); performance.now = () => now; }"
COUNT_REQUESTS = """() => {
  window.requests = 0;
  document.addEventListener("htmx:before:request", () => (window.requests += 1));
}"""


def go(page: Page, place: str) -> None:
    tap(page, page.get_by_role("navigation").get_by_role("link", name=place, exact=True))
    expect(page.locator("main h1")).to_have_text(place)


@pytest.fixture
def air(tablet: Page) -> Page:
    """A form to be filled in."""
    return show(tablet, AIR)


def test_back_and_forward_reach_every_path_the_shells_first_too(daybook: Page):
    go(daybook, "Batches")
    go(daybook, "Sums")
    daybook.go_back()
    expect(daybook.locator("main h1")).to_have_text("Batches")
    daybook.go_back()
    expect(daybook.locator("main h1")).to_have_text("Today")
    assert path_of(daybook) == "/"
    daybook.go_forward()
    expect(daybook.locator("main h1")).to_have_text("Batches")
    assert path_of(daybook) == "/batches"


def test_the_title_follows_the_page(tablet: Page):
    show(tablet, "/")
    go(tablet, "Sums")
    assert tablet.title() == "Sums · Curing Daybook"


def test_a_new_page_puts_the_focus_on_its_heading_and_the_eye_on_its_top(tablet: Page):
    show(tablet, "/")
    tablet.set_viewport_size({"width": 700, "height": 240})
    tablet.evaluate("() => window.scrollTo(0, 400)")
    go(tablet, "Sums")
    expect(tablet.locator("main h1")).to_be_focused()
    assert tablet.evaluate("() => window.scrollY") == 0


def test_going_to_where_one_is_adds_no_step_back(tablet: Page):
    show(tablet, "/")
    go(tablet, "Batches")
    steps = tablet.evaluate("() => history.length")
    go(tablet, "Batches")
    assert tablet.evaluate("() => history.length") == steps


def test_a_form_with_an_error_keeps_what_was_typed_and_the_error_takes_the_focus(air: Page):
    air.locator("[name=temperature_c]").fill("warm")
    air.locator("[name=humidity]").fill("78,5")
    steps = air.evaluate("() => history.length")
    tap(air, air.get_by_role("button", name="Save the reading"))
    expect(air.locator("[data-focus]")).to_be_focused()
    assert air.locator("[name=temperature_c]").input_value() == "warm"
    assert air.locator("[name=humidity]").input_value() == "78,5"
    assert (air.evaluate("() => history.length"), path_of(air)) == (steps, AIR)


def test_the_same_error_twice_takes_the_focus_twice(air: Page):
    for _ in range(2):
        air.locator("[name=temperature_c]").fill("warm")
        tap(air, air.get_by_role("button", name="Save the reading"))
        expect(air.locator("[data-focus]")).to_be_focused()


def test_figures_come_while_one_types_and_leave_the_text_and_the_caret(air: Page):
    air.locator("[name=temperature_c]").fill("12")
    air.locator("[name=humidity]").press_sequentially("78")
    expect(air.locator("[data-figure]").first).to_be_visible()
    air.locator("[name=humidity]").press("Home")
    air.locator("[name=humidity]").press_sequentially("0")
    answered(air)
    assert air.locator("[name=humidity]").input_value() == "078"
    assert air.locator("[name=humidity]").evaluate("(box) => box.selectionStart") == 1


def test_a_next_page_with_boxes_of_the_same_ids_starts_empty(air: Page):
    air.locator("main input[type=text]").first.fill("12")
    tap(air, air.get_by_role("link", name="Batches", exact=True))
    tap(air, air.get_by_role("link", name="Start a batch"))
    expect(air.locator("main h1")).to_have_text("Start a batch")
    assert air.locator("[name=name]").input_value() == ""


def test_a_saved_form_leads_on_and_the_way_back_is_one_step(air: Page):
    steps = air.evaluate("() => navigation.currentEntry.index")
    air.locator("[name=temperature_c]").fill("12")
    tap(air, air.get_by_role("button", name="Save the reading"))
    expect(air.locator("main h1")).to_have_text("Chamber")
    assert path_of(air).startswith("/chamber?saved=")
    assert air.evaluate("() => navigation.currentEntry.index") == steps + 1


@pytest.mark.parametrize(("apart_ms", "is_open"), [(299, True), (300, False)])
def test_a_second_tap_within_300_ms_does_nothing(air: Page, apart_ms: int, is_open: bool):
    show(air, "/sources")
    fold = air.locator("main details").first
    fold.locator("summary").evaluate(TAP_TWICE, apart_ms)
    assert fold.evaluate("(fold) => fold.open") == is_open


def test_a_form_tapped_twice_within_300_ms_is_sent_once(air: Page):
    air.locator("[name=temperature_c]").fill("12")
    answered(air)
    air.evaluate(COUNT_REQUESTS)
    air.get_by_role("button", name="Save the reading").evaluate(TAP_TWICE, 299)
    expect(air.locator("main h1")).to_have_text("Chamber")
    assert air.evaluate("() => window.requests") == 1


def test_a_tap_right_after_another_page_does_nothing_and_a_key_does(daybook: Page):
    daybook.evaluate(STOP_CLOCK)
    daybook.get_by_role("link", name="Batches", exact=True).click()
    expect(daybook.locator("main h1")).to_have_text("Batches")
    start = daybook.get_by_role("link", name="Start a batch")
    start.click()
    start.focus()
    daybook.keyboard.press("Enter")
    expect(daybook.locator("main h1")).to_have_text("Start a batch")
    assert daybook.evaluate("() => navigation.entries().length") == 3


def test_a_setting_holds_after_the_page_is_opened_again(page: Page, site: Site):
    open_at(page, site, AIR)
    tap(page, page.get_by_role("button", name="lb °F"))
    expect(page.get_by_role("button", name="lb °F")).to_have_attribute("aria-pressed", "true")
    wait_until_offline_works(page).reload()
    wait_until_open(page)
    expect(page.get_by_role("button", name="lb °F")).to_have_attribute("aria-pressed", "true")
    assert path_of(page) == AIR


def journal_in(copy: Download) -> dict[str, Any]:
    with zipfile.ZipFile(copy.path()) as packed:
        return json.loads(packed.read("journal.json"))


def test_a_download_has_its_name_and_its_content(tablet: Page):
    page = show(tablet, "/yours")
    with page.expect_download() as waiting:
        tap(page, page.get_by_role("link", name="Save a copy"))
    assert waiting.value.suggested_filename.startswith("curing-daybook-")
    exported = journal_in(waiting.value)["entries"]
    assert exported == [record["entry"] for record in entries_stored(page)]


def test_a_file_goes_up_whole_and_comes_out_the_same(air: Page, tmp_path: Path):
    air.locator("[name=temperature_c]").fill("12")
    tap(air, air.get_by_role("button", name="Save the reading"))
    tap(air, air.get_by_role("link", name="Book"))
    with air.expect_download() as waiting:
        tap(air, air.get_by_role("link", name="Save a copy"))
    exported = journal_in(waiting.value)
    exported["entries"][0]["id"] = exported["entries"][0]["id"][:-4] + "0000"
    changed = tmp_path / "käse.json"
    changed.write_text(json.dumps(exported))
    air.locator("[type=file]").set_input_files(changed)
    tap(air, air.get_by_role("button", name="Read it in"))
    expect(air.locator("main .saved")).to_contain_text("1 new entry")


def test_a_text_of_a_slipped_clipboard_is_refused_and_stays_in_its_box(tablet: Page):
    page = show(tablet, "/batches/new")
    page.locator("[name=name]").fill("x" * 200_000)
    tap(page, page.get_by_role("button", name="Start the batch"))
    expect(page.locator("[data-focus]")).to_be_visible()
    assert len(page.locator("[name=name]").input_value()) == 200_000


def test_a_page_that_is_not_there_is_a_page(tablet: Page):
    page = show(tablet, "/")
    page.evaluate("() => window.history.pushState({ htmx: true }, '', '/nowhere')")
    page.evaluate("() => window.history.pushState({ htmx: true }, '', '/sums')")
    page.go_back()
    expect(page.locator("main h1")).not_to_have_text("Today")
    assert path_of(page) == "/nowhere"
