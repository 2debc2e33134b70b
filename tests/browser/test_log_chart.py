"""A logger's chart: drawn under the page's policy, moved by fingers, keys and buttons alike, read in words."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser import walking as walk
from tests.browser.charted import at_rest, log, put_chart
from tests.browser.conftest import LANDSCAPE, Site, show

ROWS = 2881  # two days
LEAST_PX = 48
LEFT_PX = 56
ALL = "2 Nov 2026, 12:00 to 4 Nov 2026, 12:00"
PIXELS = "(canvas) => canvas.toDataURL()"
ARE_OTHER = "(before) => document.querySelector('#chart canvas').toDataURL() !== before"
ARE_THESE = "(wanted) => document.querySelector('#chart canvas').toDataURL() === wanted"
TWO_FRAMES = "() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)))"
NOTE_FINGERS = """(panels) => {
  window.fingers = {};
  const note = ({ pointerId, clientX, clientY }) => (window.fingers[pointerId] = [clientX, clientY]);
  for (const name of ["pointerdown", "pointermove"]) panels.addEventListener(name, note);
  for (const name of ["pointerup", "pointercancel"]) {
    panels.addEventListener(name, ({ pointerId }) => delete window.fingers[pointerId]);
  }
}"""
ARE_AT = """(wanted) => {
  const fingers = Object.values(window.fingers);
  const isThere = ([x, y]) => fingers.some((each) => Math.hypot(each[0] - x, each[1] - y) < 1);
  return fingers.length === wanted.length && wanted.every(isThere);
}"""


@pytest.fixture
def opened(tablet: Page) -> Page:
    """Each test puts a chart of its own on it."""
    show(tablet, "/chamber")
    walk.turn(tablet, LANDSCAPE)
    return tablet


@pytest.fixture
def chart(opened: Page, site: Site) -> Page:
    opened.mouse.move(0, 0)
    return at_rest(put_chart(opened, site, log(ROWS, missing=range(1430, 1450))))


def panels(page: Page) -> Locator:
    return page.get_by_role("slider", name="Empty chamber: moment")


def field(page: Page) -> tuple[float, float, float]:
    """Left edge and width of what the lines are drawn in, and a height within it."""
    panels(page).scroll_into_view_if_needed()
    box = panels(page).bounding_box()
    canvas = page.locator("#chart canvas").first
    right = canvas.evaluate("""(each) => {
      const names = ["Upper shelf dew point", "Lower shelf dew point"];
      const brush = document.createElement("canvas").getContext("2d");
      brush.font = `14px ${getComputedStyle(each).fontFamily}`;
      return Math.round(Math.max(...names.map((name) => brush.measureText(name).width)) + 12);
    }""")
    return box["x"] + LEFT_PX, box["width"] - LEFT_PX - right, box["y"] + 120


def press(page: Page, name: str) -> None:
    walk.tap(page, page.get_by_role("button", name=name, exact=True))


def in_sight(page: Page) -> Locator:
    return page.locator("#chart .sight")


def readout(page: Page) -> Locator:
    return page.locator("#chart .readout")


def test_each_unit_has_a_panel_and_the_headline_stands_above(chart: Page):
    assert chart.locator("#chart .unit").all_inner_texts() == ["Temperature and dew point, °C", "Humidity, %"]
    expect(chart.locator("#chart figcaption")).to_have_text("It holds.")


def test_what_is_under_the_mouse_is_said_in_words_by_the_logs_own_clock(chart: Page):
    left, width, y = field(chart)
    chart.mouse.move(left + width / 4, y)
    expect(readout(chart)).to_have_text(
        re.compile(
            r"3 Nov 2026, (00:0\d|23:5\d): Upper shelf 13\.2\s°C, dew point 9\.2\s°C, 79\.2\s%; "
            r"Lower shelf 14\.2\s°C, dew point 10\.2\s°C, 81\.2\s%"
        )
    )
    assert readout(chart).get_attribute("aria-live") == "off"


def test_where_there_is_no_reading_a_dash_is_said(chart: Page):
    left, width, y = field(chart)
    chart.mouse.move(left + width / 2, y)
    expect(readout(chart)).to_contain_text("Upper shelf —, dew point 10.4")


def test_arrow_keys_read_on_and_say_it_to_who_listens(chart: Page):
    panels(chart).focus()
    chart.keyboard.press("Home")
    expect(readout(chart)).to_contain_text("2 Nov 2026, 12:00")
    chart.keyboard.press("ArrowRight")
    expect(readout(chart)).to_contain_text("2 Nov 2026, 12:29")
    assert panels(chart).get_attribute("aria-valuetext") == readout(chart).text_content()
    chart.keyboard.press("ArrowLeft")
    chart.keyboard.press("ArrowLeft")
    expect(readout(chart)).to_contain_text("2 Nov 2026, 12:00")


def test_near_by_an_arrow_key_goes_on_by_one_row(chart: Page):
    panels(chart).focus()
    chart.keyboard.press("Home")
    for _ in range(7):
        chart.keyboard.press("+")
    chart.keyboard.press("ArrowRight")
    expect(readout(chart)).to_contain_text("2 Nov 2026, 12:01")


def test_buttons_do_what_fingers_do(chart: Page):
    expect(in_sight(chart)).to_have_text(ALL)
    press(chart, "In")
    expect(in_sight(chart)).to_have_text("3 Nov 2026, 00:00 to 4 Nov 2026, 00:00")
    press(chart, "Earlier")
    expect(in_sight(chart)).to_have_text("2 Nov 2026, 12:00 to 3 Nov 2026, 12:00")
    press(chart, "Later")
    expect(in_sight(chart)).to_have_text("3 Nov 2026, 00:00 to 4 Nov 2026, 00:00")
    press(chart, "Out")
    expect(in_sight(chart)).to_have_text(ALL)
    press(chart, "In")
    press(chart, "All")
    expect(in_sight(chart)).to_have_text(ALL)


def test_one_does_not_leave_the_log(chart: Page):
    for name in ("Out", "Earlier", "Later"):
        press(chart, name)
        expect(in_sight(chart)).to_have_text(ALL)


def test_one_comes_nearer_to_what_one_reads(chart: Page):
    panels(chart).focus()
    chart.keyboard.press("End")
    press(chart, "In")
    expect(in_sight(chart)).to_have_text("3 Nov 2026, 12:00 to 4 Nov 2026, 12:00")


def test_the_buttons_are_large_enough_for_a_wet_finger(chart: Page):
    boxes = [each.bounding_box() for each in chart.locator("#chart button").all()]
    assert len(boxes) == 5
    assert min(min(box["width"], box["height"]) for box in boxes) >= LEAST_PX


def touch(page: Page, *steps: list[tuple[float, float]]) -> None:
    """Each step is where the fingers are, and felt by the chart before the next; then they are lifted."""
    panels(page).evaluate(NOTE_FINGERS)
    devtools = page.context.new_cdp_session(page)
    for at, fingers in enumerate([*steps, []]):
        kind = "touchStart" if at == 0 else "touchMove" if fingers else "touchEnd"
        points = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(fingers)]
        devtools.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
        page.wait_for_function(ARE_AT, arg=[list(finger) for finger in fingers])
    at_rest(page)


def minutes_in_sight(page: Page) -> tuple[int, int]:
    """From and to, in minutes since the log began."""
    found = re.findall(r"(\d+) Nov 2026, (\d\d):(\d\d)", in_sight(page).inner_text())
    first, last = (((int(day) - 2) * 24 + int(hour) - 12) * 60 + int(minute) for day, hour, minute in found)
    return first, last


def test_one_finger_pans(chart: Page):
    press(chart, "In")
    left, width, y = field(chart)
    touch(chart, *([(left + width * share, y)] for share in (0.8, 0.7, 0.6, 0.55)))
    first, last = minutes_in_sight(chart)
    assert last - first == 1440
    assert first == pytest.approx(720 + 360, abs=40)
    expect(readout(chart)).not_to_contain_text("Touch")


def test_two_fingers_pinch(chart: Page):
    left, width, y = field(chart)
    shares = ((0.4, 0.6), (0.35, 0.65), (0.3, 0.7))
    touch(chart, *([(left + width * one, y), (left + width * two, y)] for one, two in shares))
    first, last = minutes_in_sight(chart)
    assert last - first == pytest.approx(1440, abs=60)
    assert first == pytest.approx(720, abs=40)


def test_by_night_it_is_drawn_in_other_ink(chart: Page):
    canvas = chart.locator("#chart canvas").first
    by_day = canvas.evaluate(PIXELS)
    chart.evaluate("() => { document.documentElement.dataset.theme = 'dark'; }")
    chart.wait_for_function(ARE_OTHER, arg=by_day)
    chart.evaluate("() => { document.documentElement.dataset.theme = 'light'; }")
    chart.wait_for_function(ARE_THESE, arg=by_day)


def test_it_is_as_wide_as_its_place(chart: Page):
    walk.turn(chart, {"width": 640, "height": 900})
    at_rest(chart)
    assert chart.evaluate("() => document.documentElement.scrollWidth") == 640


def test_another_src_is_drawn_anew(chart: Page):
    chart.evaluate("() => document.querySelector('#chart').setAttribute('src', 'other')")
    at_rest(chart)
    assert chart.evaluate("() => window.asked.map((each) => each.path)") == ["/log", "/other"]
    assert chart.locator("#chart canvas").count() == 2


def test_taken_off_the_page_it_lets_go(chart: Page):
    chart.evaluate("() => document.querySelector('#chart').remove()")
    assert chart.evaluate("() => window.asked[0].signal.aborted")
    walk.turn(chart, {"width": 640, "height": 900})
    chart.evaluate("() => { document.documentElement.dataset.theme = 'dark'; }")
    chart.evaluate(TWO_FRAMES)  # what would break then, the watch at the end has heard


def test_figures_have_the_decimal_mark_that_was_chosen(chart: Page):
    chart.evaluate("() => localStorage.setItem('daybook-cookies', JSON.stringify({ decimal: 'comma' }))")
    panels(chart).focus()
    chart.keyboard.press("Home")
    expect(readout(chart)).to_contain_text("Upper shelf 12,0")


def test_a_log_that_cannot_be_had_says_so(opened: Page, site: Site):
    put_chart(opened, site, b"", status=404)
    expect(opened.locator("#chart")).to_have_text("The chart could not be drawn.")


def test_a_log_of_one_row_says_so(opened: Page, site: Site):
    put_chart(opened, site, log(1))
    expect(opened.locator("#chart")).to_have_text("There is nothing to draw.")


def test_sixty_days_of_two_probes_are_drawn_whole(opened: Page, site: Site):
    """Six lines of 86,400 points. How soon is measured by the bench."""
    at_rest(put_chart(opened, site, log(86_400)))
    expect(in_sight(opened)).to_have_text("2 Nov 2026, 12:00 to 1 Jan 2027, 11:59")
    panels(opened).focus()
    opened.keyboard.press("End")
    expect(readout(opened)).to_contain_text("1 Jan 2027, 11:59: Upper shelf")
