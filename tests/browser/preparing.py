"""The steps of a new chamber as a hand does them: instruments, the preparation run, set-points, water."""

from datetime import datetime, timedelta

from playwright.sync_api import Page, expect

from tests.browser import walking as walk

MOST_TASKS = 30


def set_clock(page: Page, moment: datetime) -> None:
    """The device's own clock, from which the daybook takes every moment. It stands: no machine is too slow for it."""
    page.clock.set_fixed_time(moment)


def run_clock(page: Page, moment: datetime) -> None:
    """The same, and it goes on: what is written one after the other is of one moment and then of a later one."""
    page.clock.set_system_time(moment)


def fill(page: Page, **boxes: str) -> None:
    """By the names of the boxes, as the fact keeps them: several of a form's labels begin alike."""
    for name, text in boxes.items():
        page.locator(f"main form.entry input[type=text][name={name}]").fill(text)


def choose(page: Page, label: str) -> None:
    """A radio button, a tick, or an option of a list, by its words."""
    button = page.locator("main label.option", has_text=label).first
    option = page.locator("main .pick option", has_text=label).first
    button.or_(option).first.wait_for(state="attached")
    if button.count():
        walk.tap(page, button)
        return
    option.locator("xpath=..").select_option(option.get_attribute("value"))
    walk.answered(page)


def add_instrument(page: Page, name: str, what: str, probe: str = "") -> None:
    walk.go_to(page, "Chamber")
    if page.get_by_role("link", name="All instruments").count():
        walk.follow(page, "All instruments", "Instruments")
    walk.follow(page, "Add an instrument", "Add an instrument")
    fill(page, name=name, probe=probe)
    choose(page, what)
    walk.save(page, "Add it")
    walk.is_at(page, name)


def check(page: Page, way: str, title: str, comes_to: str, **boxes: str) -> str:
    """From the instrument's page and back to it; returns the figures that stood beside the form."""
    walk.follow(page, way, title)
    fill(page, **boxes)
    figures = page.locator("form .figures")
    expect(figures).to_contain_text(comes_to)
    shown = figures.inner_text()
    walk.save(page, "Save the check")
    return shown


def open_task(page: Page) -> str:
    return page.locator("#step-head").inner_text()


def finish_run(page: Page, at: datetime, seen: dict[str, str]) -> list[str]:
    """Tick every task off in its order, each timer waited for; returns what was done."""
    done: list[str] = []
    for _ in range(MOST_TASKS):
        if not page.locator("#step-head").count():
            return done
        done.append(open_task(page))
        if page.get_by_role("button", name="Start the timer").count():
            at = _wait_for_timer(page, at, seen)
        walk.save(page, "Done")
    raise AssertionError("the run never ends")


def _wait_for_timer(page: Page, at: datetime, seen: dict[str, str]) -> datetime:
    """Started, ticked off too soon, which is asked about, and waited for; returns the moment when it is over."""
    walk.save(page, "Start the timer")
    seen[f"timer of: {open_task(page)}"] = page.locator("time-left").inner_text()
    walk.tap(page, page.get_by_role("button", name="Done", exact=True))
    expect(page.locator("#step-refusal")).to_be_visible()
    seen.setdefault("too soon", "")
    seen["too soon"] += page.locator("#step-refusal").inner_text()
    at += timedelta(hours=1)
    set_clock(page, at)
    expect(page.locator("time-left")).to_have_text("The time is over.")
    return at


def write(page: Page, link: str, title: str, button: str, **boxes: str) -> str:
    """One of the forms that the chamber's page leads to."""
    walk.go_to(page, "Chamber")
    walk.follow(page, link, title)
    fill(page, **boxes)
    return walk.save(page, button)
