"""The steps of a fermentation as a hand does them, each at its own moment, and of a whole muscle in salt."""

from datetime import datetime

from playwright.sync_api import Page

from tests.browser import preparing as prepare
from tests.browser import walking as walk


def begin_batch(page: Page, name: str, style: str, meat: str, when: datetime) -> None:
    """With a quarter per-cent of curing salt and 2.5 per-cent of plain salt."""
    walk.go_to(page, "Batches")
    walk.follow(page, "Start a batch", "Start a batch")
    walk.box(page, "Name").fill(name)
    prepare.choose(page, style)
    walk.box(page, "Meat and fat").fill(meat)
    walk.set_when(page, when)
    walk.save(page, "Start the batch")
    walk.open_cure(page, "0.25")
    prepare.fill(page, other_salt_kg=f"{float(meat) * 25:g}")
    walk.set_when(page, when)
    walk.save(page, "Save the weighed cure")
    walk.is_at(page, name)


def start_clock(page: Page, when: datetime, planned: str = "") -> None:
    walk.follow(page, "Start the degree-hours", "Start the degree-hours")
    prepare.fill(page, planned_c=planned)
    walk.set_when(page, when)
    walk.save(page, "Start the degree-hours")


def read(page: Page, when: datetime | None, ph: str = "", warm: str = "", meter: str = "") -> None:
    """From the batch's page and back to it."""
    walk.follow(page, "Read pH and temperature", "Read pH and temperature")
    prepare.fill(page, ph=ph, temperature_c=warm)
    if meter:
        prepare.choose(page, meter)
    walk.set_when(page, when)
    walk.save(page, "Save the reading")


def take_log(page: Page, name: str, text: str) -> str:
    """A logger's file, looked at and taken; returns what was said of how it is read."""
    walk.follow(page, "A logger’s file", "A logger’s file")
    page.locator("[type=file]").set_input_files({"name": name, "mimeType": "text/csv", "buffer": text.encode()})
    walk.tap(page, page.get_by_role("button", name="Read the file"))
    walk.is_at(page, "How this file is read")
    said = page.locator("main").inner_text()
    walk.tap(page, page.get_by_role("button", name="This is right"))
    walk.is_at(page, "Take this log")
    walk.save(page, "Take this log")
    return said


def hang(page: Page, tag: str, grams: str, when: datetime) -> None:
    walk.follow(page, "Hang a piece", "Hang a piece")
    walk.box(page, "Tag").fill(tag)
    walk.box(page, "Weight").fill(grams)
    walk.set_when(page, when)
    walk.save(page, "Save and next piece")


def prove_dry(page: Page, batch: str, tag: str, grams: str) -> None:
    """Weighed, measured and looked at: all that a piece needs besides its fermentation. Ends at the piece."""
    walk.open_batch(page, batch)
    walk.follow(page, "Weigh them", f"Weigh {tag}")
    walk.box(page, "Weight").fill(grams)
    walk.save(page, "Save and next")
    walk.open_piece(page, batch, tag)
    walk.note_tested_meat(page)
    walk.measure_activity(page, "0.88")
    walk.find_nothing_wrong(page)


def decide(page: Page, link: str, title: str, result: str, test: str) -> None:
    """What became of a batch that missed its hours: kept, by whom and after which test."""
    walk.follow(page, link, title)
    prepare.choose(page, result)
    prepare.choose(page, "keep it and continue")
    prepare.fill(page, test=test, decided_by="the district office")
    walk.save(page, "Save the decision")
