"""A photo on its way: chosen, drawn anew and small, kept beside its entry, shown, and read back from a copy."""

import zipfile
from collections.abc import Iterator
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import Site, Watch, entries_stored, new_device, open_daybook
from tests.web.pictures import PLACE, segment

AS_TAKEN = """async ([width, height]) => {
  const canvas = new OffscreenCanvas(width, height);
  const drawing = canvas.getContext("2d");
  for (let at = 0; at < width; at += 20) {
    drawing.fillStyle = `hsl(${at % 360} 60% 50%)`;
    drawing.fillRect(at, 0, 20, height);
  }
  return [...new Uint8Array(await (await canvas.convertToBlob({ type: "image/jpeg" })).arrayBuffer())];
}"""
SHOWN = """() => {
  const image = document.querySelector(".log kept-photo").shadowRoot.querySelector("img");
  return image?.complete && image.naturalWidth ? [image.naturalWidth, image.naturalHeight] : null;
}"""


@pytest.fixture(scope="module")
def tablet(browser: Browser, site: Site) -> Iterator[Page]:
    watch = Watch(allowed=["404"])
    context = new_device(browser)
    watch.over(context)
    page = open_daybook(context.new_page(), site.url())
    walk.start_batch(page, "Juniper coarse", "12.4")
    yield page
    context.close()
    watch.check(site.origin)


def taken(page: Page, width: int = 2400, height: int = 1200) -> bytes:
    """As a camera hands it over: with the place beside the picture."""
    drawn = bytes(page.evaluate(AS_TAKEN, [width, height]))
    return drawn[:2] + segment(0xE1, PLACE) + drawn[2:]


def choose(page: Page, data: bytes, name: str = "IMG_1.jpg", kind: str = "image/jpeg") -> None:
    page.locator("[data-photo]").set_input_files({"name": name, "mimeType": kind, "buffer": data})
    expect(page.get_by_role("button", name="Save the note")).to_be_enabled()


def note(page: Page, words: str, data: bytes) -> dict[str, Any]:
    """From the batch's page and back to it; what was stored."""
    walk.open_batch(page, "Juniper coarse")
    walk.follow(page, "Note", "Note or photo")
    walk.box(page, "Note").fill(words)
    choose(page, data)
    page.wait_for_function("() => document.querySelector('[data-photo]').files[0].name === 'photo.jpg'")
    walk.save(page, "Save the note")
    fact = entries_stored(page)[-1]["entry"]
    assert isinstance(fact, dict)
    return fact["fact"]


def copy_of(page: Page) -> bytes:
    walk.go_to(page, "Book")
    with page.expect_download() as saving:
        walk.tap(page, page.get_by_role("link", name="Save a copy"))
    return Path(saving.value.path()).read_bytes()


@pytest.fixture(scope="module")
def noted(tablet: Page) -> dict[str, Any]:
    return note(tablet, "Mould on the left.", taken(tablet))


def test_a_photo_is_shown_in_the_log_no_longer_than_1600_pixels(tablet: Page, noted: dict[str, Any]):
    walk.open_batch(tablet, "Juniper coarse")
    walk.open_log(tablet)
    tablet.wait_for_function(SHOWN)
    assert tablet.evaluate(SHOWN) == [1600, 800]


def test_its_file_lies_in_a_copy_under_its_name_without_the_place(tablet: Page, noted: dict[str, Any]):
    data = zipfile.ZipFile(BytesIO(copy_of(tablet))).read(f"files/{noted['photo']}")
    assert sha256(data).hexdigest() == noted["photo"]
    assert PLACE not in data
    assert b"Exif" not in data


def test_a_copy_is_read_back_whole_on_another_tablet(browser: Browser, site: Site, tablet: Page, noted: dict[str, Any]):
    copied, context = copy_of(tablet), new_device(browser)
    page = open_daybook(context.new_page(), site.url())
    walk.go_to(page, "Book")
    page.locator("[type=file]").set_input_files({"name": "copy.zip", "mimeType": "application/zip", "buffer": copied})
    walk.tap(page, page.get_by_role("button", name="Read it in"))
    expect(page.locator("main .saved")).to_contain_text("Read in")
    walk.open_batch(page, "Juniper coarse")
    walk.open_log(page)
    page.wait_for_function(SHOWN)
    assert page.evaluate(SHOWN) == [1600, 800]
    context.close()


def test_a_small_photo_keeps_its_size(tablet: Page):
    assert note(tablet, "Small.", taken(tablet, 300, 200))["photo"]
    walk.open_log(tablet)
    tablet.wait_for_function(SHOWN)
    assert tablet.evaluate(SHOWN) == [300, 200]


@pytest.mark.parametrize("data", [b"time,temp\n", b"\xff\xd8\xff\xe0" + bytes(40)], ids=["a text", "a damaged picture"])
def test_what_is_no_picture_is_refused_beside_its_box(tablet: Page, data: bytes):
    walk.open_batch(tablet, "Juniper coarse")
    walk.follow(tablet, "Note", "Note or photo")
    before = len(entries_stored(tablet))
    choose(tablet, data)
    tablet.wait_for_function("() => document.querySelector('[data-photo]').files[0].size === 0")
    walk.tap(tablet, tablet.get_by_role("button", name="Save the note"))
    expect(tablet.locator(".summary")).to_contain_text("no picture this device can show")
    assert len(entries_stored(tablet)) == before


def test_a_photo_whose_file_is_missing_says_so(tablet: Page, noted: dict[str, Any]):
    walk.open_batch(tablet, "Juniper coarse")
    walk.open_log(tablet)
    tablet.evaluate("() => document.querySelector('.log kept-photo').setAttribute('src', '/photos/' + '0'.repeat(64))")
    expect(tablet.locator(".log kept-photo").first).to_have_text("Its file is not on this device.")
