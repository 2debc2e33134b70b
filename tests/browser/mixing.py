"""The steps of a mixing day as a hand does them: a formula, its batch, the weighing sheet, the cure by any rules."""

from playwright.sync_api import Locator, Page, expect

from tests.browser import preparing as prepare
from tests.browser import walking as walk
from tests.browser.scene import Seen

FIGURES = """(all) => all.map((each) => [
  each.dataset.figure, each.querySelector(".value").firstChild.textContent.replaceAll("\\u00a0", " ").trim()])"""


def note_figures(seen: Seen, moment: str, page: Page, where: str = "main") -> None:
    """Every figure that stands there, as "moment: key"."""
    for key, value in page.locator(f"{where} [data-figure]").evaluate_all(FIGURES):
        seen.texts[f"{moment}: {key}"] = value


def open_formulas(page: Page) -> None:
    walk.go_to(page, "Batches")
    walk.follow(page, "Formulas", "Formulas")


def row(page: Page, name: str) -> Locator:
    """One row of the formula's form, by the name that was in it when the form came."""
    return page.locator("main form .row").filter(has=page.locator(f"input[value='{name}']"))


def type_dose(page: Page, name: str, dose: str) -> None:
    row(page, name).locator("input[name$=-dose]").fill(dose)


def type_price(page: Page, name: str, price: str) -> None:
    walk.tap(page, row(page, name).locator("input.more"))
    row(page, name).locator("input[name$=-price]").fill(price)


def add_ingredient(page: Page, name: str, dose: str) -> None:
    rows = page.locator("main form .row")
    there = rows.count()
    walk.tap(page, page.get_by_role("button", name="Add an ingredient"))
    expect(rows).to_have_count(there + 1)
    added = rows.last
    expect(added.locator("input[name$=-name]")).to_be_focused()
    added.locator("input[name$=-name]").fill(name)
    added.locator("input[name$=-dose]").fill(dose)


def remove(page: Page, name: str) -> None:
    rows = page.locator("main form .row")
    there = rows.count()
    walk.tap(page, row(page, name).locator("input.more"))
    walk.tap(page, page.get_by_role("button", name=f"Remove {name}", exact=True))
    expect(rows).to_have_count(there - 1)


def scale(page: Page, way: str, shows: str, **boxes: str) -> None:
    """One way of scaling a formula, typed until its figures stand there; nothing is saved."""
    walk.follow(page, way, way)
    prepare.fill(page, **boxes)
    expect(page.locator("form .figures [data-figure=meat]")).to_contain_text(shows)


def weigh(page: Page, name: str, then: str, weighed: str = "", scale: str = "0.1", lot: str = "") -> None:
    """One row of the sheet; without a weight it is the tap that takes it as wanted. then: where it leads."""
    walk.is_at(page, name)
    prepare.fill(page, division_kg=scale, lot=lot)
    if weighed:
        prepare.fill(page, mass_kg=weighed)
    walk.save(page, "Save and next" if weighed else "Exactly as listed")
    walk.is_at(page, then)


def choose(page: Page, box: str, key: str, until: str) -> None:
    """A choice that decides what else is asked: the form comes again. until: what it then has."""
    page.locator(f"main form select[name={box}]").select_option(key)
    expect(page.locator(f"main form {until}")).to_be_attached()


def start_cure(page: Page, batch: str, style: str, meat: str) -> None:
    """A batch with no formula, and its cure's form."""
    walk.go_to(page, "Batches")
    walk.follow(page, "Start a batch", "Start a batch")
    walk.box(page, "Name").fill(batch)
    prepare.choose(page, style)
    walk.box(page, "Meat and fat").fill(meat)
    walk.save(page, "Start the batch")
    walk.is_at(page, batch)
    walk.follow(page, "Weigh the cure", "Weigh the cure")


def cure(page: Page, says: str, **boxes: str) -> None:
    """Typed, until the figures or the refusal beside the form say so."""
    prepare.fill(page, **boxes)
    expect(page.locator("form .figures")).to_contain_text(says)
