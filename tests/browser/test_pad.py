"""The page's own number keys on a touch screen: what they type, and that they lie over nothing one looks at."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, ViewportSize, expect

from tests.browser import walking as walk
from tests.browser.axe import AXE, faults
from tests.browser.conftest import LANDSCAPE, Site, new_device, open_daybook, show
from tests.browser.filled import FORMS, PORTRAIT, Filled, read_in
from tests.browser.hand import Hand

PHONE: ViewportSize = {"width": 390, "height": 844}
SIZES = {"landscape": LANDSCAPE, "portrait": PORTRAIT, "phone": PHONE}
WITHOUT_NUMBERS = ("your data", "sum ready", "a deviation", "giving up")
IN_SIGHT = """() => {
  const box = document.activeElement;
  const form = box.form;
  const pad = document.querySelector("number-pad");
  const said = [];
  const at = (each) => each.getBoundingClientRect();
  const spots = ({ left, right, top, bottom }) => [[left + 4, top + 4], [right - 4, top + 4],
    [(left + right) / 2, (top + bottom) / 2], [left + 4, bottom - 4], [right - 4, bottom - 4]];
  const covers = (each) => spots(at(each)).map(([x, y]) => document.elementFromPoint(x, y))
    .filter((above) => above === null || !(each.contains(above) || above.contains(each)));
  if (!pad) return ["there are no keys"];
  if (at(box).top < 0 || at(box).bottom > innerHeight || covers(box).length) said.push(`${box.name} cannot be seen`);
  const main = form.querySelector("button.main");
  if (main && (at(main).bottom > innerHeight || covers(main).length)) said.push("the button cannot be seen");
  const looked = form.querySelectorAll("button.main, .figures .value, .answer");
  for (const each of looked) {
    const isUnder = covers(each).some((above) => above && pad.contains(above));
    if (isUnder) said.push(`${each.textContent.trim()} lies under the keys`);
  }
  return said;
}"""
SMALL = """([least, apart]) => {
  const keys = [...document.querySelectorAll("number-pad button")].filter((each) => each.getClientRects().length
    && getComputedStyle(each).visibility === "visible");
  const at = keys.map((each) => each.getBoundingClientRect());
  const gap = (a, b) => Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom);
  const words = (at) => keys[at].textContent.trim() || keys[at].dataset.key;
  return [
    ...keys.map((_, n) => n).filter((n) => at[n].width < 47.5 || at[n].height < least).map(words),
    ...keys.map((_, n) => n).filter((n) => at.slice(n + 1).some((other) => gap(at[n], other) < apart)).map(words),
    ...keys.map((_, n) => n).filter((n) => keys[n].scrollWidth > keys[n].clientWidth + 1).map(words),
  ];
}"""


def with_a_finger(browser: Browser, **more: object) -> BrowserContext:
    return new_device(browser, has_touch=True, reduced_motion="reduce", **more)


@pytest.fixture(scope="module")
def touched(browser: Browser, site: Site, filled: Filled) -> Iterator[Page]:
    context = with_a_finger(browser)
    page = open_daybook(context.new_page(), site.url())
    read_in(page, filled)
    yield page
    context.close()


@pytest.fixture
def salt(touched: Page) -> Page:
    """A sum with its unit, a box that is filled already, and choices."""
    walk.turn(touched, LANDSCAPE)
    return show(touched, "/sums/cure-ppm")


def key(page: Page, name: str) -> Locator:
    return page.locator(f'number-pad [data-key="{name}"]')


def unit_key(page: Page, symbol: str) -> Locator:
    return page.locator("number-pad").get_by_role("button", name=symbol, exact=True)


def come_to(page: Page, name: str) -> Locator:
    box = page.locator(f"main [name={name}]")
    walk.tap(page, box)
    expect(page.locator("number-pad")).to_be_visible()
    return box


def press(page: Page, keys: str) -> None:
    names = {".": "mark", ",": "mark", "−": "minus", "½": "half", "<": "back"}
    for each in keys:
        key(page, names.get(each, each)).tap()


def test_the_keys_type_into_the_box_which_keeps_the_focus(salt: Page):
    box = come_to(salt, "meat_kg")
    press(salt, "12.45<")
    expect(box).to_have_value("12.4")
    expect(box).to_be_focused()


def test_the_figures_follow_the_keys(salt: Page):
    for name, number in (("meat_kg", "10"), ("dose", ".25"), ("nitrite", "6.25")):
        come_to(salt, name)
        press(salt, number)
    walk.answered(salt)
    expect(salt.locator("form .figures")).to_contain_text("156")


def test_the_devices_keyboard_comes_for_words_only(touched: Page, filled: Filled):
    page = show(touched, filled.path("hanging"))
    assert page.locator("[name=start_kg]").get_attribute("inputmode") == "none"
    assert page.locator("[name=tag]").get_attribute("inputmode") is None
    come_to(page, "start_kg")
    page.locator("[name=tag]").tap()
    expect(page.locator("number-pad")).to_have_count(0)


def test_the_mark_is_the_readers_own(salt: Page):
    salt.evaluate("() => localStorage.setItem('daybook-cookies', JSON.stringify({ decimal: 'comma' }))")
    show(salt, "/sums/moist-air")
    come_to(salt, "temperature")
    press(salt, "12,5")
    expect(salt.locator("[name=temperature]")).to_have_value("12,5")
    salt.evaluate("() => localStorage.removeItem('daybook-cookies')")


def test_a_unit_is_chosen_by_its_key(salt: Page):
    box = come_to(salt, "meat_kg")
    press(salt, "500")
    unit_key(salt, "g").tap()
    expect(salt.locator("[name=meat_kg-unit]")).to_have_value("g")
    expect(unit_key(salt, "g")).to_have_attribute("aria-pressed", "true")
    expect(box).to_have_value("500")


def test_a_compound_is_typed_with_the_units_keys(salt: Page):
    box = come_to(salt, "meat_kg")
    press(salt, "12")
    for _ in ("chosen", "typed"):
        unit_key(salt, "lb").tap()
    press(salt, "4")
    unit_key(salt, "oz").tap()
    expect(box).to_have_value("12 lb 4 oz")


def test_a_box_that_may_fall_below_nothing_has_a_minus(touched: Page):
    page = show(touched, "/chamber/air")
    come_to(page, "temperature_c")
    press(page, "4−")
    expect(page.locator("[name=temperature_c]")).to_have_value("−4")
    expect(key(page, "half")).to_be_hidden()
    come_to(page, "humidity")
    expect(key(page, "minus")).to_be_hidden()


def test_next_leads_from_box_to_box_and_to_the_answer_at_last(salt: Page):
    come_to(salt, "meat_kg")
    for name in ("dose", "nitrite", "nitrate"):
        key(salt, "next").tap()
        expect(salt.locator(f"[name={name}]")).to_be_focused()
    key(salt, "next").tap()
    expect(salt.locator("form .figures")).to_be_focused()
    expect(salt.locator("number-pad")).to_have_count(0)


def test_next_leads_from_the_last_box_to_the_button_that_saves(touched: Page, filled: Filled):
    page = show(touched, filled.path("water activity"))
    come_to(page, "water_activity")
    key(page, "next").tap()
    expect(page.get_by_role("button", name="Save the measurement")).to_be_focused()


def test_a_held_delete_key_goes_on(salt: Page):
    box = come_to(salt, "meat_kg")
    press(salt, "123456")
    key(salt, "back").hover()
    salt.mouse.down()
    expect(box).to_have_value("")
    salt.mouse.up()


def test_what_a_number_box_holds_is_selected_when_one_comes_to_it(salt: Page):
    box = come_to(salt, "nitrate")
    assert box.evaluate("(box) => box.value.slice(box.selectionStart, box.selectionEnd)") == "0"
    press(salt, "1")
    expect(box).to_have_value("1")
    box.tap()
    press(salt, "2")
    expect(box).to_have_value("12")


def test_a_keyboard_works_as_before(salt: Page):
    hand = Hand(salt)
    hand.fill("Meat and fat", "3.2")
    expect(salt.locator("[name=meat_kg]")).to_have_value("3.2")
    assert hand.step()["element"] == "select"
    salt.locator("[name=dose]").focus()
    salt.keyboard.press("Enter")
    expect(salt.locator(".summary")).to_be_focused()


def test_a_tap_on_the_button_is_not_lost_when_the_keys_go(touched: Page, filled: Filled):
    page = show(touched, filled.path("water activity"))
    come_to(page, "water_activity")
    press(page, ".9")
    walk.rest(page)
    page.get_by_role("button", name="Save the measurement").tap()
    expect(page.locator("main .saved")).to_be_visible()
    expect(page.locator("number-pad")).to_have_count(0)


def test_the_keys_are_a_group_with_a_name_out_of_the_way_of_the_tab_key(salt: Page):
    come_to(salt, "meat_kg")
    expect(salt.get_by_role("group", name="Number keys")).to_be_visible()
    assert salt.locator("number-pad button:not([tabindex='-1'])").count() == 0
    expect(key(salt, "back")).to_have_accessible_name("Delete")
    salt.evaluate(AXE.read_text())
    assert faults(salt) == []


def test_a_screen_reader_presses_without_a_finger(salt: Page):
    box = come_to(salt, "meat_kg")
    key(salt, "7").evaluate("(key) => { key.focus(); key.click(); }")
    expect(box).to_have_value("7")
    expect(salt.locator("number-pad")).to_be_visible()


@pytest.mark.parametrize("size", SIZES)
def test_the_keys_are_large_and_apart(salt: Page, size: str):
    walk.turn(salt, SIZES[size])
    come_to(salt, "meat_kg")
    assert salt.evaluate(SMALL, [63.5 if size != "phone" else 47.5, 7.5]) == []


def test_text_twice_as_large_fits_its_keys(salt: Page):
    salt.evaluate("() => { document.documentElement.style.fontSize = '225%'; }")
    try:
        come_to(salt, "meat_kg")
        assert salt.evaluate(SMALL, [63.5, 7.5]) == []
    finally:
        salt.evaluate("() => { document.documentElement.style.fontSize = ''; }")


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("form", [each for each in FORMS if each not in WITHOUT_NUMBERS])
def test_the_keys_lie_over_nothing_one_looks_at(touched: Page, filled: Filled, form: str, size: str):
    walk.turn(touched, SIZES[size])
    page = show(touched, filled.path(form))
    boxes = [each for each in page.locator("main form.entry input[data-number]").all() if each.is_visible()]
    assert boxes
    for each in (boxes[0], boxes[-1]):
        each.tap()
        expect(page.locator("number-pad")).to_be_visible()
        assert page.evaluate(IN_SIGHT) == []


@pytest.mark.parametrize("size", SIZES)
def test_the_answer_is_in_sight_above_or_beside_the_keys(salt: Page, size: str):
    walk.turn(salt, SIZES[size])
    for name, number in (("meat_kg", "10"), ("dose", ".25"), ("nitrite", "6.25")):
        come_to(salt, name)
        press(salt, number)
    walk.answered(salt)
    expect(salt.locator("form .figures .value").first).to_be_in_viewport(ratio=1)
    assert salt.evaluate(IN_SIGHT) == []


def test_no_keys_come_where_one_points_finely(tablet: Page):
    page = show(tablet, "/chamber/air")
    walk.tap(page, page.locator("[name=temperature_c]"))
    expect(page.locator("[name=temperature_c]")).to_be_focused()
    expect(page.locator("number-pad")).to_have_count(0)


def test_the_tablets_own_keys_come_back_by_a_setting(touched: Page):
    page = show(touched, "/yours")
    walk.tap(page, page.get_by_role("button", name="The tablet's"))
    show(page, "/chamber/air")
    assert page.locator("[name=humidity]").get_attribute("inputmode") == "decimal"
    page.locator("[name=humidity]").tap()
    expect(page.locator("number-pad")).to_have_count(0)
    show(page, "/yours")
    walk.tap(page, page.get_by_role("button", name="The page's own"))
