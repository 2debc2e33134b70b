"""The steps of a batch as a hand does them, one function a screen. Several tests walk them."""

import re
from datetime import datetime, timedelta

from playwright.sync_api import Locator, Page, ViewportSize, expect

IS_ANSWERED = "() => !document.querySelector('.htmx-request')"
REST_MS = 605


def days_ago(days: float) -> datetime:
    return datetime.now().astimezone() - timedelta(days=days)


def is_at(page: Page, title: str) -> None:
    expect(page.locator("main h1")).to_have_text(title)


def go_to(page: Page, place: str) -> None:
    tap(page, page.get_by_role("navigation", name="Places").get_by_role("link", name=place, exact=True))
    if place == "Today":  # the day heads it
        expect(page).to_have_title(re.compile("^Today"))
    else:
        is_at(page, place)


def turn(page: Page, size: ViewportSize) -> None:
    """The tablet upright or on its side."""
    page.set_viewport_size(size)
    page.wait_for_function("({ width, height }) => innerWidth === width && innerHeight === height", arg=size)


def answered(page: Page) -> None:
    """Until all that was asked for by taps and by typing stands on the page."""
    page.wait_for_function(IS_ANSWERED)


def rest(page: Page) -> None:
    """Until a tap is no second tap: on one control that is ignored for 300 ms, on another page for 600 ms."""
    page.evaluate("(ms) => window.passTime(ms)", REST_MS)


def tap(page: Page, control: Locator) -> None:
    """And see what comes of it."""
    rest(page)
    if control.evaluate("(control) => control.matches('.unseen')"):
        control.press("Enter")  # a button for keys only
    else:
        control.click()
    answered(page)


def choose_light(page: Page, theme: str) -> None:
    """As the Book's switch does, without leaving the page."""
    values = {"theme": theme, "back": page.evaluate("() => location.pathname")}
    page.evaluate("(values) => htmx.ajax('POST', '/settings', { values, target: 'body', swap: 'innerMorph' })", values)
    expect(page.locator("html")).to_have_attribute("data-theme", theme)


def follow(page: Page, link: str, title: str) -> None:
    tap(page, page.get_by_role("link", name=link, exact=True).first)
    is_at(page, title)


def box(page: Page, label: str) -> Locator:
    """A text box by the beginning of its label: its unit follows, and the box of the unit has a label of its own."""
    return page.locator("main").get_by_role("textbox", name=label).first


def set_when(page: Page, moment: datetime | None) -> None:
    if moment is None:
        return
    when = page.locator("main .when")
    tap(page, when.locator("label", has_text="Another time"))
    when.locator("[name=happened]").fill(moment.strftime("%Y-%m-%dT%H:%M"))


def save(page: Page, button: str) -> str:
    """Tap it and wait until the page says that it is saved; returns what it says."""
    before = page.url
    tap(page, page.get_by_role("button", name=button, exact=True))
    page.wait_for_function("(before) => location.href !== before && document.querySelector('.saved')", arg=before)
    return page.locator(".saved").inner_text()


def start_batch(page: Page, name: str, meat: str, when: datetime | None = None) -> None:
    go_to(page, "Batches")
    follow(page, "Start a batch", "Start a batch")
    box(page, "Name").fill(name)
    tap(page, page.locator("main label.option", has_text="fermented sausage"))
    box(page, "Meat and fat").fill(meat)
    set_when(page, when)
    save(page, "Start the batch")
    is_at(page, name)


def open_cure(page: Page, dose: str) -> None:
    follow(page, "Weigh the cure", "Weigh the cure")
    box(page, "Dose of the curing salt").fill(dose)


def read_meat(page: Page, ph: str, temperature: str, when: datetime | None = None) -> str:
    follow(page, "Read pH and temperature", "Read pH and temperature")
    box(page, "pH").fill(ph)
    box(page, "Temperature").fill(temperature)
    set_when(page, when)
    return save(page, "Save the reading")


def hang_pieces(page: Page, weights: dict[str, str], when: datetime | None = None) -> None:
    """From the batch's page and back to it."""
    back_to = page.locator("main h1").inner_text()
    follow(page, "Hang a piece", "Hang a piece")
    for tag, grams in weights.items():
        box(page, "Tag").fill(tag)
        box(page, "Weight").fill(grams)
        set_when(page, when)
        assert tag in save(page, "Save and next piece")
    follow(page, "Back", back_to)


def weigh_pieces(page: Page, weights: dict[str, str], when: datetime | None = None) -> None:
    """In the order in which the daybook asks for them, which is that of the weights."""
    follow(page, "Weigh them", f"Weigh {next(iter(weights))}")
    for tag, grams in weights.items():
        is_at(page, f"Weigh {tag}")
        box(page, "Weight").fill(grams)
        set_when(page, when)
        save(page, "Save and next")


def open_batch(page: Page, name: str) -> None:
    go_to(page, "Batches")
    follow(page, name, name)


def open_piece(page: Page, batch: str, tag: str) -> None:
    open_batch(page, batch)
    follow(page, tag, tag)


def open_log(page: Page) -> None:
    """With all its days."""
    tap(page, page.get_by_role("link", name="Log ·"))
    for day in page.locator(".log .of-day:not([open]) > summary").all()[::-1]:
        tap(page, day)


def open_met(page: Page) -> None:
    """The reasons of a verdict that are met."""
    tap(page, page.locator(".met-reasons > summary"))


def measure_activity(page: Page, activity: str) -> str:
    follow(page, "Water activity", "Water activity")
    box(page, "Water activity").fill(activity)
    return save(page, "Save the measurement")


def note_tested_meat(page: Page) -> str:
    """Pork, with the lot that its certificate names."""
    follow(page, "Meat and trichinella", "The meat, and trichinella")
    tap(page, page.get_by_text("pork of tame pigs"))
    page.locator("main select[name=proof]").select_option("tested")
    box(page, "Lot").fill("P-7")
    return save(page, "Save it")


def find_nothing_wrong(page: Page) -> str:
    follow(page, "Look, smell, squeeze", "Look, smell, squeeze")
    return save(page, "Sound")


def entry_count(page: Page) -> int:
    """As "Book" says it."""
    tap(page, page.get_by_role("link", name="Book"))
    is_at(page, "Book")
    return int(page.locator("main .value").first.inner_text().split()[0])
