"""What is half typed is there again after a reload, a way round, a tab that was ended; once sent, it is gone."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import Site, open_daybook, show, visit, wait_until_offline_works, wait_until_open
from tests.browser.filled import Filled

AIR = "/chamber/air"
AGE = """(hours) => {
  for (const key of Object.keys(localStorage).filter((each) => each.startsWith("daybook-draft "))) {
    const draft = JSON.parse(localStorage[key]);
    localStorage[key] = JSON.stringify({ ...draft, at: draft.at - hours * 3600000 });
  }
}"""
DRAFTS = "() => Object.entries(localStorage).filter(([key]) => key.startsWith('daybook-draft '))"
LINE = "This is what you typed at "


@pytest.fixture(scope="module")
def tablet(filled_tablet: Page) -> Page:
    return wait_until_offline_works(filled_tablet)


@pytest.fixture
def air(tablet: Page) -> Page:
    """Half filled in."""
    page = show(tablet, AIR)
    page.locator("[name=temperature_c]").fill("12,")
    return page


def line(page: Page):
    return page.locator("draft-line")


def is_back(page: Page) -> None:
    expect(page.locator("[name=temperature_c]")).to_have_value("12,")
    expect(line(page)).to_contain_text(LINE)


def test_it_is_there_after_a_reload(air: Page):
    air.reload()
    wait_until_open(air)
    is_back(air)


def test_it_is_there_after_a_tap_on_another_tab_and_after_going_back(air: Page):
    walk.go_to(air, "Batches")
    air.go_back()
    is_back(air)
    walk.go_to(air, "Sums")
    visit(air, AIR)
    is_back(air)


def test_it_is_there_in_a_new_tab_when_the_old_one_was_ended(air: Page, site: Site):
    other = open_daybook(air.context.new_page(), site.url())
    visit(other, AIR)
    is_back(other)
    other.close()


def test_a_form_that_nobody_touched_comes_without_a_line(tablet: Page):
    page = show(tablet, AIR)
    expect(page.locator("[name=temperature_c]")).to_have_value("")
    expect(line(page)).to_have_count(0)


def test_what_was_typed_and_taken_away_again_is_no_draft(air: Page):
    air.locator("[name=temperature_c]").fill("")
    visit(air, "/")
    visit(air, AIR)
    walk.is_at(air, "Read the chamber's air")
    expect(line(air)).to_have_count(0)


def test_once_saved_it_is_gone(air: Page):
    air.locator("[name=temperature_c]").fill("12.5")
    walk.save(air, "Save the reading")
    visit(air, AIR)
    walk.is_at(air, "Read the chamber's air")
    expect(air.locator("[name=temperature_c]")).to_have_value("")
    expect(line(air)).to_have_count(0)


def test_once_saved_by_a_key_of_the_keyboard_it_is_gone_too(tablet: Page, filled: Filled):
    page = show(tablet, filled.path("hanging"))
    page.locator("[name=tag]").fill("J-9")
    page.locator("[name=start_kg]").fill("1200")
    page.keyboard.press("Enter")
    expect(page.locator("main .saved")).to_contain_text("J-9")
    page.reload()
    wait_until_open(page)
    expect(page.locator("[name=tag]")).to_have_value("J-10")  # the next in the series, and no draft
    expect(line(page)).to_have_count(0)


def test_refused_it_stays(air: Page):
    air.locator("[name=temperature_c]").fill("warm")
    walk.tap(air, air.get_by_role("button", name="Save the reading"))
    expect(air.locator(".summary")).to_be_focused()
    air.reload()
    wait_until_open(air)
    expect(air.locator("[name=temperature_c]")).to_have_value("warm")


def test_it_is_cleared_by_a_button_one_can_hit(air: Page):
    air.reload()
    wait_until_open(air)
    button = air.get_by_role("button", name="Clear it")
    box = button.bounding_box()
    assert box is not None
    assert box["height"] >= 47.5
    walk.tap(air, button)
    expect(air.locator("[name=temperature_c]")).to_have_value("")
    expect(line(air)).to_have_count(0)
    expect(air.locator("main h1")).to_be_focused()
    air.reload()
    wait_until_open(air)
    expect(line(air)).to_have_count(0)


def test_the_line_stays_while_one_types_on(air: Page):
    air.reload()
    wait_until_open(air)
    air.locator("[name=temperature_c]").press_sequentially("5")
    walk.answered(air)
    expect(line(air)).to_contain_text(LINE)


def test_after_a_day_it_is_offered_no_more(air: Page):
    air.evaluate(AGE, 24.1)
    air.reload()
    wait_until_open(air)
    expect(air.locator("[name=temperature_c]")).to_have_value("")
    expect(line(air)).to_have_count(0)


def test_choices_ticks_and_units_come_back(tablet: Page, filled: Filled):
    page = show(tablet, filled.path("inspection"))
    walk.tap(page, page.locator("main input[type=checkbox]").first)
    page.locator("[name=note]").fill("at the seam")
    visit(page, "/")
    visit(page, filled.path("inspection"))
    expect(page.locator("main input[type=checkbox]").first).to_be_checked()
    expect(page.locator("[name=note]")).to_have_value("at the seam")


def test_a_form_of_another_shape_comes_back_in_it(tablet: Page):
    page = show(tablet, "/sums/cure-ppm")
    page.locator("[name=meat_kg]").fill("3.2")
    page.locator("[name=method]").select_option(index=1)
    walk.answered(page)
    names = page.locator("main form.entry [name]").evaluate_all("(all) => all.map((each) => each.name)")
    for name in names:
        if name not in ("meat_kg", "method") and page.locator(f"input[type=text][name={name}]").first.is_visible():
            page.locator(f"[name={name}]").fill("7")
    page.reload()
    wait_until_open(page)
    expect(page.locator("[name=meat_kg]")).to_have_value("3.2")
    expect(line(page)).to_contain_text(LINE)
    assert page.locator("main form.entry [name]").evaluate_all("(all) => all.map((each) => each.name)") == names


def test_the_rows_of_a_formula_come_back(tablet: Page):
    page = show(tablet, "/formulas/new")
    page.locator("[name=name]").fill("Larch stick")
    for _ in range(2):
        walk.tap(page, page.get_by_role("button", name="Add an ingredient"))
    page.locator("[name=part-3-name]").fill("Pepper")
    page.reload()
    wait_until_open(page)
    expect(page.locator("[name=part-3-name]")).to_have_value("Pepper")
    expect(page.locator("[name=name]")).to_have_value("Larch stick")
    expect(line(page)).to_contain_text(LINE)


def test_nothing_comes_over_what_was_saved_since(tablet: Page, filled: Filled):
    path = filled.path("a correction")
    page = show(tablet, path)
    page.locator("[name=mass_kg]").fill("7")
    kept = page.evaluate(DRAFTS)
    page.locator("[name=mass_kg]").fill("801")
    walk.save(page, "Save and next")
    page.evaluate("(all) => Object.assign(localStorage, Object.fromEntries(all))", kept)
    visit(page, path)
    expect(page.locator("[name=mass_kg]")).to_have_value("801")
    expect(line(page)).to_have_count(0)
