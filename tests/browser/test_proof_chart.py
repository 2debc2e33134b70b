"""The chart on the page of a proof: it comes with that page and outlives what does not concern it."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.charted import at_rest
from tests.browser.proving import loggers_files, look
from tests.browser.test_axe import AXE
from tests.browser.walking import choose_light, tap

MARK = "(canvas) => { canvas.isTheFirst = true; }"
IS_MARKED = "(canvas) => canvas.isTheFirst === true"
FAULTS = "async () => (await axe.run('log-chart')).violations.map((each) => each.id)"
IS_KNOWN = "() => customElements.get('log-chart') !== undefined"


@pytest.fixture(scope="module")
def was_known_before() -> list[bool]:
    return []


@pytest.fixture(scope="module")
def proof(tablet: Page, was_known_before: list[bool]) -> Page:
    was_known_before.append(tablet.evaluate(IS_KNOWN))
    look(tablet, loggers_files())
    tablet.evaluate(AXE.read_text())
    return tablet


def canvas(page: Page):
    return page.locator("log-chart canvas").first


def test_its_code_comes_with_the_first_page_that_has_a_chart(proof: Page, was_known_before: list[bool]):
    assert was_known_before == [False]
    assert proof.evaluate(IS_KNOWN)


def test_it_outlives_an_answer_that_does_not_concern_it(proof: Page):
    canvas(proof).evaluate(MARK)
    tap(proof, proof.get_by_role("button", name="In", exact=True))
    sight = at_rest(proof).locator("log-chart .sight").inner_text()
    choose_light(proof, "dark")
    assert canvas(at_rest(proof)).evaluate(IS_MARKED)
    assert proof.locator("log-chart .sight").inner_text() == sight


def test_in_other_units_it_is_drawn_anew(proof: Page):
    canvas(proof).evaluate(MARK)
    tap(proof, proof.get_by_role("button", name="lb °F"))
    expect(proof.locator("log-chart .unit").first).to_contain_text("°F")
    assert not canvas(at_rest(proof)).evaluate(IS_MARKED)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_it(proof: Page, scheme: str):
    choose_light(proof, scheme)
    assert proof.evaluate(FAULTS) == []


def test_its_table_comes_when_it_is_asked_for(proof: Page):
    assert proof.locator("#hourly table").count() == 0
    tap(proof, proof.get_by_text("The same as a table"))
    expect(proof.locator("#hourly tbody tr").first).to_be_visible()


def test_its_table_follows_the_units(proof: Page):
    tap(proof, proof.get_by_role("button", name="kg °C"))
    expect(proof.locator("log-chart .unit").first).to_contain_text("°C")
    proof.locator("#hourly").scroll_into_view_if_needed()
    expect(proof.locator("#hourly td").first).to_contain_text("°C")
