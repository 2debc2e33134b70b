"""A new chamber walked from its instruments to its water, on a clock of its own; what stood there is noted."""

from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser import preparing as prepare
from tests.browser import proving as prove
from tests.browser import walking as walk
from tests.browser.chamber_logs import FIRST, REPAIRED, SECOND, TOO_COLD, two_files
from tests.browser.charted import at_rest
from tests.browser.conftest import heading, wait_until_open
from tests.browser.scene import Seen

BEGUN = datetime(2026, 11, 1, 9, tzinfo=UTC)
TWO_DAYS = timedelta(days=2)
THERMOMETER, LARDER_A, LARDER_B, METER, SCALE = "Needle", "Larder A", "Larder B", "Glass electrode", "Kitchen scale"
ASSIGNED = """(main) =>
  [...main.querySelectorAll("select[name^=instrument-] option:checked, input[name^=instrument-]:checked")]
    .map((each) => (each.closest("label") ?? each).textContent.trim()).join(", ")"""
HASTEN = """() => {
  const now = performance.now.bind(performance);
  performance.now = () => 1000 * now();
}"""
"""For the worker: a slice of long work, which ends after a quarter of a second, then holds one step on any machine."""
WATCH_PROGRESS = """() => {
  window.wentBy = new Set();
  new MutationObserver(() => {
    const words = document.querySelector("#work-words");
    if (words) window.wentBy.add(words.textContent);
  }).observe(document.body, { childList: true, subtree: true, characterData: true });
}"""


@cache
def first_files() -> dict[str, bytes]:
    return two_files(TOO_COLD, FIRST, "first")


def check_instruments(page: Page, seen: Seen) -> None:
    prepare.set_clock(page, BEGUN)
    prepare.add_instrument(page, THERMOMETER, "thermometer")
    prepare.check(page, "In ice", "Check in melting ice", "−1.3 K", reading_c="1.3")
    seen.texts["boiling"] = prepare.check(
        page, "In boiling water", "Check in boiling water", "98.0 °C", reading_c="98.4", altitude_m="600"
    )
    seen.note("thermometer", page, "dl.in-force")
    prepare.add_instrument(page, LARDER_A, "hygrometer", probe="Larder A")
    seen.texts["salt"] = prepare.check(
        page, "Over one salt", "Check over one salt", "3.5 %", temperature_c="20", reading="72"
    )
    seen.note("hygrometer", page, "dl.in-force")
    prepare.add_instrument(page, LARDER_B, "hygrometer", probe="Larder B")
    seen.note("unchecked", page, "dl.in-force")
    prepare.add_instrument(page, METER, "pH meter")
    seen.texts["buffers"] = prepare.check(
        page,
        "In two buffers",
        "Check in two buffers",
        "98.3 %",
        buffer="7",
        temperature_c="25",
        reading="7.04",
        other_buffer="4.01",
        other_temperature_c="25",
        other_reading="4.1",
    )
    prepare.add_instrument(page, SCALE, "scale")
    seen.texts["weights"] = prepare.check(
        page, "With weights", "Check with weights", "0.20 g", mass_kg="500 g", reading_kg="500.2 g", division_kg="0.1 g"
    )


def prepare_it(page: Page, seen: Seen) -> None:
    at = BEGUN + timedelta(days=1)
    prepare.set_clock(page, at)
    walk.go_to(page, "Chamber")
    walk.follow(page, "Prepare", "Prepare the chamber")
    walk.tap(page, page.locator("summary", has_text="More from the label"))
    prepare.fill(page, stock="5", target="100", volume_m3="4 L", contact_s="60 s")
    prepare.choose(page, "remove it first, with vinegar")
    expect(page.locator("form .figures .caution").first).to_contain_text("chlorine")
    seen.note("dilution", page, "form .figures")
    walk.save(page, "Begin the run")
    seen.note("run begun", page)
    seen.texts["steps"] = "\n".join(prepare.finish_run(page, at, seen.texts))
    seen.note("run done", page)


def set_it(page: Page, seen: Seen) -> None:
    prepare.set_clock(page, FIRST - timedelta(hours=1))
    prepare.write(
        page, "Charge", "Charge the humidifier", "Save the charge",
        water_m3="6 qt", soda_kg_per_m3="1 tbsp/qt", tank_m3="6 qt",
    )  # fmt: skip
    walk.follow(page, "Choose set-points", "Set-points")
    walk.tap(page, page.locator("summary", has_text="Drying sausage"))
    walk.follow(page, "Salami, 55 °F (12.8 °C) and 80 %", "Choose set-points")
    prepare.fill(page, temperature_c="13", humidity="79")
    expect(page.locator("form .figures")).to_contain_text("271 Pa")
    seen.note("set-points", page, "form .figures")
    walk.save(page, "Save the set-points")
    seen.note("chamber set", page)


def prove_too_cold(page: Page, seen: Seen) -> str:
    """Returns the address of the saved run."""
    prepare.set_clock(page, FIRST + TWO_DAYS + timedelta(hours=2))
    _read_in(page, first_files(), seen)
    _look(page, seen, name="Before the fix", room_c="20")
    seen.note("verdict", page)
    seen.note("because", page, "section.judgement")
    _chart(page, seen)
    prove.save_run(page)
    return page.url


def _read_in(page: Page, files: dict[str, bytes], seen: Seen) -> None:
    """Both files, and what is asked of the one whose dates can be read in two ways."""
    walk.go_to(page, "Chamber")
    walk.follow(page, "Prove", "Prove the empty chamber")
    prove.choose(page, files)
    walk.tap(page, page.get_by_role("button", name="Read the files"))
    walk.is_at(page, "How this file is read")
    seen.note("question", page)
    prepare.choose(page, "day before month")
    walk.tap(page, page.get_by_role("button", name="Answer and continue"))
    expect(page.locator("main .last").first).to_contain_text([*files][1])
    seen.note("layout", page)
    walk.tap(page, page.get_by_role("button", name="This is right"))


def _look(page: Page, seen: Seen, **boxes: str) -> None:
    """From the settings to the result, the words of the progress noted as they go by."""
    walk.is_at(page, "Target and tolerance")
    prepare.fill(page, **boxes)
    seen.texts["band"] = page.locator("main [name=temperature_c]").input_value()
    seen.texts["assigned"] = page.locator("main").evaluate(ASSIGNED)
    page.evaluate(WATCH_PROGRESS)
    (worker,) = page.workers
    worker.evaluate(HASTEN)
    walk.tap(page, page.get_by_role("button", name="Analyse"))
    at_rest(page)
    seen.texts["progress"] = "\n".join(page.evaluate("() => [...window.wentBy]"))


def _chart(page: Page, seen: Seen) -> None:
    canvas = page.locator("log-chart canvas").first.bounding_box()
    assert canvas is not None
    seen.texts["chart"] = f"{canvas['width']:.0f} x {canvas['height']:.0f}"
    walk.tap(page, page.get_by_text("The same as a table"))
    page.locator("#hourly table").first.wait_for()
    seen.note("table", page, "#hourly")


def find_it_again(page: Page, run: str, seen: Seen) -> None:
    prepare.set_clock(page, FIRST + TWO_DAYS + timedelta(hours=3))
    page.goto(run)
    wait_until_open(page)
    at_rest(page)
    seen.texts["deep link"] = heading(page)
    seen.note("because after the kill", page, "section.judgement")
    for name in first_files():
        with page.expect_download() as waiting:
            walk.tap(page, page.get_by_role("link", name=name))
        seen.files[name] = Path(waiting.value.path()).read_bytes()


def prove_again(page: Page, seen: Seen) -> None:
    prepare.set_clock(page, SECOND + TWO_DAYS + timedelta(hours=2))
    _read_in(page, two_files(REPAIRED, SECOND, "second"), seen)
    _look(page, seen, name="After the fix", changed="Differential 1 K, two degrees warmer", room_c="20")
    seen.note("second verdict", page)
    prove.save_run(page)
    walk.go_to(page, "Chamber")
    walk.follow(page, "Compare two runs", "Two runs side by side")
    seen.note("compared", page)


def use_it(page: Page, seen: Seen) -> None:
    at = SECOND + TWO_DAYS + timedelta(days=1)
    prepare.set_clock(page, at)
    walk.go_to(page, "Chamber")
    walk.follow(page, "Read the air", "Read the chamber's air")
    prepare.fill(page, temperature_c="13.1", humidity="75")
    prepare.choose(page, LARDER_A)
    walk.save(page, "Save the reading")
    seen.note("air", page, "section[aria-labelledby=air-head]")
    for days in (0, 2):
        prepare.set_clock(page, at + timedelta(days=days))
        prepare.write(page, "Filled it", "Fill the humidifier", "Save the filling", water_m3="2 L")
    prepare.write(page, "Emptied the basin", "Empty the basin", "Save the emptying", volume_m3="0.8 L")
    walk.tap(page, page.locator("#water-means > summary"))
    seen.note("water", page, "section[aria-labelledby=water-head]")
    walk.go_to(page, "Today")
    seen.note("today", page)
