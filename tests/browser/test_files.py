"""Raw files on the device: stored with their entry or not at all, there again after anything, the journal untouched."""

import json
import zipfile
from hashlib import sha256
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, Page, expect

from building.bench.ten_thousand import stored_records
from tests.browser.charted import at_rest
from tests.browser.conftest import Site, entries_stored, open_at, open_daybook, show, visit, wait_until_offline_works
from tests.browser.device import Device
from tests.browser.proving import (
    bring_files,
    choose,
    chosen,
    loggers_files,
    look,
    save_run,
)
from tests.browser.walking import is_at, tap

OLD = 40
CREATE = """([version, records]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open("daybook", version);
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore("entries", { keyPath: "id" }).createIndex("seq", "seq", { unique: true });
    if (version > 1) opening.result.createObjectStore("files", { keyPath: "sha" });
  };
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction("entries", "readwrite");
    for (const record of records) writing.objectStore("entries").add(record);
    writing.oncomplete = () => { opening.result.close(); resolve(); };
  };
})"""
STORED = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open("daybook");
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const all = opening.result.transaction("files").objectStore("files").getAll();
    all.onsuccess = () => {
      opening.result.close();
      resolve(all.result.map(({ sha, bytes }) => [sha, [...bytes]]));
    };
  };
})"""
KNOWN = "(name) => indexedDB.databases().then((all) => all.find((each) => each.name === name)?.version)"


def begin_with(page: Page, site: Site, version: int) -> list[dict[str, object]]:
    """A device on which the daybook of another version has been."""
    records = stored_records()[:OLD]
    page.route("**/favicon.ico", lambda route: route.fulfill(status=204))
    page.goto(site.url("/manifest.webmanifest"))  # of this origin, and without the daybook
    page.evaluate(CREATE, [version, records])
    open_daybook(page, site.url())
    return records


def count_shown(page: Page) -> str:
    visit(page, "/yours")
    expect(page.locator("main h1")).to_have_text("Book")
    return page.locator("main .value").first.inner_text()


def save_reading(page: Page) -> None:
    visit(page, "/chamber/air")
    page.locator("[name=temperature_c]").fill("12.5")
    tap(page, page.get_by_role("button", name="Save the reading"))
    expect(page.locator("main .saved")).to_be_visible()


def test_a_device_from_before_there_were_files_keeps_every_entry_and_goes_on_in_their_order(page: Page, site: Site):
    records = begin_with(page, site, 1)
    assert entries_stored(page) == records
    assert page.evaluate(KNOWN, "daybook") == 2
    assert count_shown(page).startswith(str(OLD))
    save_reading(page)
    assert entries_stored(page)[-1]["seq"] == OLD + 1


def test_a_device_on_which_a_newer_daybook_has_been_still_saves(page: Page, site: Site):
    begin_with(page, site, 7)
    save_reading(page)
    assert len(entries_stored(page)) == OLD + 1
    assert page.evaluate(KNOWN, "daybook") == 7


def test_a_tab_that_is_open_gives_way_to_a_newer_database_and_goes_on(page: Page, site: Site):
    open_at(page, site, "/chamber/air")
    page.evaluate("""() => {
      const opening = indexedDB.open("daybook", 3);
      opening.onsuccess = () => { opening.result.close(); window.hasGivenWay = true; };
    }""")
    page.wait_for_function("() => window.hasGivenWay")
    save_reading(page)
    assert len(entries_stored(page)) == 1


def files_stored(page: Page) -> dict[str, bytes]:
    return {sha: bytes(data) for sha, data in page.evaluate(STORED)}


def by_sha(files: dict[str, bytes]) -> dict[str, bytes]:
    return {sha256(data).hexdigest(): data for data in files.values()}


def downloaded(page: Page, name: str) -> bytes:
    with page.expect_download() as waiting:
        tap(page, page.get_by_role("link", name=name))
    assert waiting.value.suggested_filename == name
    return Path(waiting.value.path()).read_bytes()


def test_a_run_is_stored_with_its_files_byte_for_byte_each_once(tablet: Page):
    files = loggers_files()
    page = show(tablet, "/chamber")
    look(page, files)
    assert files_stored(page) == {}
    save_run(page)
    assert files_stored(page) == by_sha(files)
    assert [record["entry"]["kind"] for record in entries_stored(page)] == ["proof-run"]
    look(page, files)
    save_run(page)
    assert files_stored(page) == by_sha(files)
    assert len(entries_stored(page)) == 2


def test_a_full_device_stores_neither_entry_nor_file_and_says_so(fresh_profile: BrowserContext, site: Site):
    files = loggers_files()
    page = open_at(fresh_profile.new_page(), site, "/chamber")
    look(page, files)
    devtools = fresh_profile.new_cdp_session(page)
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": site.origin, "quotaSize": 1})
    tap(page, page.get_by_role("button", name="Save this run"))
    expect(page.locator("main [role=alert]")).to_contain_text("Not saved: the device's storage is full.")
    expect(page.locator("main [role=alert]")).to_be_focused()
    assert (entries_stored(page), files_stored(page)) == ([], {})

    devtools.send("Storage.overrideQuotaForOrigin", {"origin": site.origin})
    save_run(page)
    assert files_stored(page) == by_sha(files)


def test_after_the_browser_was_killed_the_files_are_there_again(browser: Browser, site: Site, tmp_path: Path):
    files = loggers_files()
    device = Device(tmp_path / "profile", browser.browser_type)
    try:
        page = open_at(device.start().new_page(), site, "/chamber")
        wait_until_offline_works(page)
        look(page, files)
        path = save_run(page)
        device.kill()
        page = open_daybook(device.start().new_page(), site.url(path))
        at_rest(page)
        assert files_stored(page) == by_sha(files)
    finally:
        device.kill()


def test_another_tab_gives_out_the_file_as_the_logger_wrote_it(tablet: Page, site: Site):
    files = loggers_files()
    look(tablet, files)
    path = save_run(tablet)
    other = open_at(tablet.context.new_page(), site, path)
    assert downloaded(other, "upper.csv") == files["upper.csv"]
    other.close()


def test_a_file_that_the_device_has_lost_is_asked_for_and_taken_back(tablet: Page, site: Site):
    files = loggers_files()
    page = show(tablet, "/chamber")
    look(page, files)
    path = save_run(page)
    page.evaluate("""() => new Promise((resolve) => {
      const opening = indexedDB.open("daybook");
      opening.onsuccess = () => {
        const clearing = opening.result.transaction("files", "readwrite");
        clearing.objectStore("files").clear();
        clearing.oncomplete = () => { opening.result.close(); resolve(); };
      };
    })""")
    open_daybook(page, site.url())  # anew: nothing of the file is left in its memory
    visit(page, path)
    expect(page.get_by_role("heading", name="The log is not on this device")).to_be_visible()
    choose(page, files)
    tap(page, page.get_by_role("button", name="Use this file"))
    at_rest(page)
    assert files_stored(page) == by_sha(files)


def test_chosen_files_stay_chosen_when_the_form_comes_back_with_a_refusal(tablet: Page):
    page = show(tablet, "/chamber")
    bring_files(page, {"photo.csv": bytes(range(256)) * 40, "also none.csv": bytes(3000)})
    expect(page.locator("[data-focus]")).to_contain_text("photo.csv")
    assert chosen(page) == ["photo.csv", "also none.csv"]


def test_a_file_of_many_megabytes_and_of_an_odd_name_arrives(tablet: Page):
    name = 'Kühlraum "oben"; 50 % £.csv'
    page = show(tablet, "/chamber")
    bring_files(page, {name: loggers_files(600_000)["upper.csv"]})
    is_at(page, "How this file is read")
    expect(page.locator("main .last").first).to_have_text(name)


def test_a_file_that_was_read_in_is_no_longer_chosen(tablet: Page):
    (record,) = stored_records()[:1]
    book = {"format": "curing-daybook-journal", "version": 1, "entries": [record["entry"]]}
    page = show(tablet, "/yours")
    is_at(page, "Book")
    choose(page, {"book.json": json.dumps(book).encode()})
    tap(page, page.get_by_role("button", name="Read it in"))
    expect(page.locator("main .saved")).to_contain_text("1 new entry")
    assert chosen(page) == []


def test_a_file_chosen_on_one_page_is_not_chosen_on_the_next(tablet: Page):
    page = show(tablet, "/yours")
    is_at(page, "Book")
    choose(page, {"book.json": b"{}"})
    visit(page, "/chamber/proofs/new")
    is_at(page, "Prove the empty chamber")
    assert chosen(page) == []


def test_a_copy_holds_every_log_and_another_tablet_reads_them_in(tablet: Page, page: Page, site: Site, tmp_path: Path):
    look(show(tablet, "/chamber"), loggers_files())
    save_run(tablet)
    stored = files_stored(tablet)
    visit(tablet, "/yours")
    with tablet.expect_download() as waiting:
        tap(tablet, tablet.get_by_role("link", name="Save a copy"))
    assert waiting.value.suggested_filename.endswith(".zip")
    tablet.wait_for_function("() => 'copied' in JSON.parse(localStorage.getItem('daybook-cookies'))")
    copy = tmp_path / "copy.zip"
    waiting.value.save_as(copy)
    with zipfile.ZipFile(copy) as packed:
        assert {each[6:]: packed.read(each) for each in packed.namelist() if each != "journal.json"} == stored
    open_at(page, site, "/yours")
    page.locator("[type=file]").set_input_files(copy)
    tap(page, page.get_by_role("button", name="Read it in"))
    expect(page.locator("main .saved")).to_contain_text(f"with {len(stored)} files")
    assert files_stored(page) == stored
