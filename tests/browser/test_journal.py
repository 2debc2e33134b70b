"""Saved means on the disk; what cannot be saved says so and stays in its boxes."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.browser.conftest import Site, entries_stored, open_at, show, visit, wait_until_offline_works, wait_until_open
from tests.browser.walking import tap

AIR = "/chamber/air"


def save_reading(page: Page, temperature: str) -> None:
    page.locator("[name=temperature_c]").fill(temperature)
    tap(page, page.get_by_role("button", name="Save the reading"))


def test_what_is_said_to_be_saved_lies_on_the_disk(tablet: Page):
    page = show(tablet, AIR)
    save_reading(page, "12.5")
    expect(page.locator("main .saved")).to_contain_text("Saved")
    (record,) = entries_stored(page)
    assert record["seq"] == 1
    assert record["id"] == record["entry"]["id"]
    assert "12.5" in str(record["entry"])
    assert str(record["entry"]).count("+01:00") + str(record["entry"]).count("+02:00") > 0


def test_an_entry_is_there_after_the_page_is_opened_again(page: Page, site: Site):
    open_at(page, site, AIR)
    save_reading(page, "12.5")
    expect(page.locator("main .saved")).to_be_visible()
    wait_until_offline_works(page).reload()
    wait_until_open(page)
    tap(page, page.get_by_role("link", name="Book"))
    expect(page.locator("main .value").first).to_contain_text("1")


def test_a_form_sent_twice_is_one_entry(tablet: Page):
    page = show(tablet, AIR)
    before = len(entries_stored(page))
    token = page.locator("[name=entry]").input_value()
    save_reading(page, "12.5")
    expect(page.locator("main .saved")).to_be_visible()
    show(page, AIR)
    page.locator("[name=entry]").evaluate("(box, token) => { box.value = token; }", token)
    save_reading(page, "12.5")
    expect(page.locator("main h1")).to_have_text("Chamber")
    assert len(entries_stored(page)) == before + 1


def test_a_full_device_says_not_saved_and_keeps_the_form_as_typed(page: Page, site: Site):
    open_at(page, site, AIR)
    devtools = page.context.new_cdp_session(page)
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": site.origin, "quotaSize": 1})
    save_reading(page, "12.5")
    expect(page.locator("[data-focus]")).to_contain_text("Not saved: the device's storage is full.")
    assert page.locator("[name=temperature_c]").input_value() == "12.5"
    assert entries_stored(page) == []

    devtools.send("Storage.overrideQuotaForOrigin", {"origin": site.origin})
    tap(page, page.get_by_role("button", name="Save the reading"))
    expect(page.locator("main .saved")).to_contain_text("Saved")
    assert len(entries_stored(page)) == 1


def test_the_first_saved_entry_asks_the_browser_to_keep_them_once(page: Page, site: Site):
    page.add_init_script("""
      window.asked = 0;
      navigator.storage.persist = async () => { window.asked += 1; return false; };
    """)
    open_at(page, site, AIR)
    save_reading(page, "12.5")
    expect(page.locator("#device [data-notice=kept]")).to_contain_text("The browser may clear your entries")
    visit(page, AIR)
    save_reading(page, "12.6")
    expect(page.locator("main .saved")).to_contain_text("12.6")
    assert page.evaluate("() => window.asked") == 1
    tap(page, page.get_by_role("link", name="Book"))
    expect(page.locator("main")).to_contain_text("The browser may clear them")


def test_ten_thousand_entries_are_all_there_at_the_start(page: Page, site: Site):
    open_at(page, site, AIR)
    save_reading(page, "12.5")
    expect(page.locator("main .saved")).to_be_visible()
    page.evaluate(FILL, 9_999)
    open_at(page, site, "/yours")
    expect(page.locator("main .value").first).to_contain_text("10")
    marks = page.evaluate("() => window.daybook.marks")
    print(f"10,000 entries: {marks['journal'] - marks['python']} ms")
    assert len(entries_stored(page)) == 10_000


def test_a_connection_the_browser_drops_is_opened_again(page: Page, own_site: Callable[..., Site]):
    """A page that deletes or upgrades the database makes the worker let go of it."""
    site = own_site()
    open_at(page, site, AIR)
    page.evaluate("""() => {
      indexedDB.deleteDatabase("daybook").onsuccess = () => (window.hasGivenWay = true);
    }""")
    page.wait_for_function("() => window.hasGivenWay")
    save_reading(page, "12.5")
    expect(page.locator("main .saved")).to_be_visible()
    assert len(entries_stored(page)) == 1


# Copies of the one entry there is, under ids of their own.
FILL = """(count) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("daybook");
  opening.onsuccess = () => {
    const transaction = opening.result.transaction("entries", "readwrite");
    const table = transaction.objectStore("entries");
    table.getAll().onsuccess = ({ target }) => {
      const [{ entry }] = target.result;
      for (let number = 1; number <= count; number += 1) {
        const id = entry.id.slice(0, -5) + String(number).padStart(5, "0");
        table.add({ id, seq: number + 1, entry: { ...entry, id } });
      }
    };
    transaction.oncomplete = () => { opening.result.close(); resolve(); };
    transaction.onabort = () => reject(transaction.error);
  };
})"""
