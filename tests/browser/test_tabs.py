"""Two tabs, one book: each knows what the other has written, and nothing is lost or doubled."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, entries_stored, open_daybook, show
from tests.browser.walking import tap

AIR = "/chamber/air"
EACH = 50

# The form is sent as htmx would send it, one after the other, without waiting for what the other tab does.
SEND = """async ([path, count, from]) => {
  const send = window.daybook.send;
  for (let number = 0; number < count; number += 1) {
    const form = new DOMParser().parseFromString(await (await send(path, {})).text(), "text/html");
    const body = new URLSearchParams(new FormData(form.querySelector("form.entry")));
    body.set("temperature_c", String(from + number / 100));
    const answer = await send(path, { method: "POST", body });
    if (!answer.ok) throw new Error(`${answer.status}`);
  }
}"""
ASK = """async (path) => {
  for (let number = 0; number < 2; number += 1) await (await window.daybook.send(path, {})).text();
}"""
NOTE_MESSAGES = """
  window.told = [];
  window.Worker = class extends Worker {
    constructor(...all) {
      super(...all);
      this.addEventListener("message", ({ data }) => window.told.push(data.type));
    }
  };
"""
STARTED = """(job) => { window.job = (%s)(job).then(() => "done", (error) => String(error)); }""" % SEND  # noqa: UP031


def count_shown(page: Page) -> str:
    tap(page, page.get_by_role("link", name="Book"))
    expect(page.locator("main h1")).to_have_text("Book")
    return page.locator("main .value").first.inner_text()


@pytest.fixture(scope="module")
def tabs(tablet: Page, site: Site) -> list[Page]:
    """Two of one device."""
    tablet.context.add_init_script(NOTE_MESSAGES)
    return [open_daybook(tablet, site.url()), open_daybook(tablet.context.new_page(), site.url())]


def save_reading(page: Page, temperature: str) -> None:
    show(page, AIR)
    page.locator("[name=temperature_c]").fill(temperature)
    tap(page, page.get_by_role("button", name="Save the reading"))
    expect(page.locator("main .saved")).to_be_visible()


def test_two_tabs_writing_at_once_lose_nothing_and_double_nothing(tabs: list[Page]):
    for number, tab in enumerate(tabs):
        tab.evaluate(STARTED, [AIR, EACH, 10 + number])
    assert [tab.evaluate("() => window.job") for tab in tabs] == ["done", "done"]

    records = entries_stored(tabs[0])
    assert len({record["id"] for record in records}) == 2 * EACH
    assert [record["seq"] for record in records] == list(range(1, 2 * EACH + 1))
    assert [count_shown(tab).split()[0] for tab in tabs] == ["100", "100"]


def test_an_idle_tab_shows_what_the_other_has_written(tabs: list[Page]):
    idle, other = tabs
    show(idle, "/chamber")
    save_reading(other, "11.7")
    expect(idle.locator("main")).to_contain_text("11.7")


def test_a_tab_with_a_form_half_filled_in_is_left_alone(tabs: list[Page]):
    busy, other = tabs
    show(busy, AIR)
    busy.locator("[name=temperature_c]").fill("1")
    form = busy.locator("form.entry").get_attribute("id")
    busy.evaluate("() => (window.told = [])")
    save_reading(other, "11.8")
    busy.wait_for_function("() => window.told.includes('news')")
    busy.evaluate(ASK, AIR)  # what the news had set off, had it set off anything, would be answered first
    assert busy.locator("form.entry").get_attribute("id") == form
    assert busy.locator("[name=temperature_c]").input_value() == "1"
