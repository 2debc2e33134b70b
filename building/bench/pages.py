"""How long Today and a batch's page take with 400 pieces hanging, each weighed 40 times; and what is to come of one.

Twice each: the first after an entry was learned, when all must be folded anew, and again. The second is the value: a
page one comes back to. What is to come is asked for once the page stands, so it delays none.
"""

import hashlib
from collections.abc import Iterator
from contextlib import ExitStack
from datetime import UTC, datetime, timedelta
from functools import cache
from statistics import median

from playwright.sync_api import Page, sync_playwright

from building.bench import RUNS, Row
from building.bench.journal import PUT
from building.bench.sites import ours
from building.bench.visiting import installed, open_page, served
from core.daybook.entries import Entry, entry_id, to_record
from core.daybook.facts import Fact
from core.daybook.facts.batch import BatchStarted, CureWeighed, PieceHung, PieceWeighed, Reading
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen

BATCHES, PIECES, WEIGHINGS = 30, 400, 40
TODAY_MS, BATCH_MS, AHEAD_MS = 200, 300, 300
ASK = """async (path) => {
  const asked = performance.now();
  await (await window.daybook.send(new URL(path, location.href).href)).text();
  return performance.now() - asked;
}"""


def today() -> Row:
    return _row("/", TODAY_MS)


def batch_page() -> Row:
    return _row(f"/batches/{_begun()}", BATCH_MS)


def batch_ahead() -> Row:
    return _row(f"/batches/{_begun()}/ahead", AHEAD_MS)


def _row(path: str, goal_ms: float) -> Row:
    with sync_playwright() as playwright, ExitStack() as opened:
        url = opened.enter_context(served(ours()))
        device = opened.enter_context(installed(playwright, url))
        page = device.new_page()
        open_page(page, url)
        page.evaluate(PUT, _stored())
        page.close()
        page = device.new_page()
        open_page(page, f"{url}sums")
        first = _ask(page, path)
        return Row(
            round(median(_ask(page, path) for _ in range(RUNS)), 1), "ms", goal_ms, {"first_ms": round(first, 1)}
        )


def _ask(page: Page, path: str) -> float:
    return page.evaluate(ASK, path)


@cache
def _entries() -> list[Entry]:
    """In the order in which they were written. The last weighing is of today."""
    begun = datetime.now(UTC).replace(microsecond=0) - timedelta(days=2 * WEIGHINGS + 4)
    of_chamber = [
        _entry(CHAMBER, begun, SetPointsChosen(12.0, 0.78), "set"),
        _entry(CHAMBER, begun, AirRead(12.2, 0.77), "air"),
    ]
    of_batches = [entry for nth in range(BATCHES) for entry in _batch(nth, begun)]
    return sorted([*of_chamber, *of_batches], key=lambda entry: (entry.written_at, entry.id))


def _stored() -> list[dict[str, object]]:
    return [{"id": entry.id, "seq": seq, "entry": to_record(entry)} for seq, entry in enumerate(_entries(), 1)]


def _begun() -> str:
    return next(entry.id for entry in _entries() if isinstance(entry.fact, BatchStarted))


def _batch(nth: int, day: datetime) -> Iterator[Entry]:
    started = _entry(None, day, BatchStarted(f"Juniper {nth}", "fermented", 12.0, 0.35), f"batch {nth}")
    yield started
    yield _entry(started.id, day, CureWeighed(cure_kg=0.03, nitrite=0.0625), f"cure {nth}")
    yield _entry(started.id, day + timedelta(hours=30), Reading(5.1, 22.0), f"reading {nth}")
    for piece in range(nth, PIECES, BATCHES):
        hung = _entry(started.id, day + timedelta(days=3), PieceHung(f"J-{piece}", 1.0), f"hung {piece}")
        yield hung
        for each in range(1, WEIGHINGS + 1):
            mass_kg = round(1 - 0.3 * (1 - 0.96 ** (each * (1 + piece % 7 / 40))), 3)
            yield _entry(hung.id, day + timedelta(days=3 + 2 * each), PieceWeighed(mass_kg), f"weighed {piece} {each}")


def _entry(about: str | None, moment: datetime, fact: Fact, name: str) -> Entry:
    key = entry_id(moment, hashlib.sha256(name.encode()).digest())
    return Entry(key, key if about is None else about, moment, moment, fact)
