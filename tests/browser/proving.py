"""The steps of a two-day proof as a hand does them: files, how they are read, the band, the verdict, saved."""

from playwright.sync_api import FilePayload, Page, expect

from building.bench.sawtooth import two_loggers
from tests.browser.charted import at_rest
from tests.browser.conftest import visit
from tests.browser.walking import is_at, tap

TWO_DAYS = 2 * 2880


def loggers_files(rows: int = TWO_DAYS) -> dict[str, bytes]:
    return two_loggers(rows)


def payloads(files: dict[str, bytes]) -> list[FilePayload]:
    return [{"name": name, "mimeType": "text/csv", "buffer": data} for name, data in files.items()]


def choose(page: Page, files: dict[str, bytes]) -> None:
    page.locator("main [type=file]").set_input_files(payloads(files))


def chosen(page: Page) -> list[str]:
    return page.locator("main [type=file]").evaluate("(box) => [...box.files].map((file) => file.name)")


def bring_files(page: Page, files: dict[str, bytes]) -> None:
    visit(page, "/chamber/proofs/new")
    is_at(page, "Prove the empty chamber")
    choose(page, files)
    tap(page, page.get_by_role("button", name="Read the files"))


def settle_layouts(page: Page, files: dict[str, bytes]) -> None:
    for name in files:
        expect(page.locator("main .last").first).to_contain_text(name)
        tap(page, page.get_by_role("button", name="This is right"))
    is_at(page, "Target and tolerance")


def look(page: Page, files: dict[str, bytes]) -> None:
    """To the verdict and the chart under it."""
    bring_files(page, files)
    settle_layouts(page, files)
    tap(page, page.get_by_role("button", name="Analyse"))
    at_rest(page)


def save_run(page: Page) -> str:
    """Returns its path."""
    tap(page, page.get_by_role("button", name="Save this run"))
    expect(page.locator("main .saved")).to_contain_text("Saved")
    return page.evaluate("() => location.pathname")
