"""The two-day proof as the tests walk it, a step a function."""

from __future__ import annotations

import io
import json
import struct
from array import array
from typing import Any

from core.daybook.entries import Entry, entry_id, to_record
from core.daybook.facts import Fact
from core.daybook.facts.chamber import CHAMBER
from tests.core.proof_files import high, low
from tests.web.conftest import Visitor
from tests.web.reading import Page

BAND = {"temperature_c": "11.5", "temperature_half_k": "1.5", "humidity": "80", "humidity_half": "10", "room_c": "20"}
MINUTES = [f"05/06/2025 {at // 60:02}:{at % 60:02},12.{at % 10}" for at in range(300)]
AMBIGUOUS = "\n".join(("Time,Temp (°C)", *MINUTES, ""))
PICTURE = b"\x89PNG\r\n\x1a\n" + bytes(200)


def enter(visitor: Visitor, fact: Fact, about: str | None = CHAMBER) -> str:
    """An entry written by another screen; its id."""
    key = entry_id(visitor.now, str(len(visitor.book)).encode() * 10)
    visitor.book.learn([to_record(Entry(key, key if about is None else about, visitor.now, visitor.now, fact))])
    return key


def hand(visitor: Visitor, *files: tuple[str, bytes], path: str = "/chamber/proofs/new", **values: str) -> Page:
    return visitor.post(path, file=[(io.BytesIO(data), name) for name, data in files], **values)


def laid_out(visitor: Visitor, *files: tuple[str, bytes]) -> Page:
    """The settings page, every file's layout taken as guessed."""
    page = hand(visitor, *files)
    for _ in files:
        page = visitor.send(page.form_with("do"), do="take")
    return page


def waited(visitor: Visitor, page: Page) -> Page:
    """What the page becomes by asking again, as it does by itself."""
    for _ in range(200):
        asking = [each for each in page.elements if each["hx-trigger"] == "load"]
        if not asking:
            return page
        page = visitor.get(asking[0]["hx-get"])
    raise AssertionError("it never ends")


def looked(visitor: Visitor, *files: tuple[str, bytes], **changes: str) -> Page:
    settings = laid_out(visitor, *files)
    return waited(visitor, visitor.send(settings.form_with("temperature_c"), **(BAND | changes)))


def two(visitor: Visitor, **changes: str) -> Page:
    return looked(visitor, ("low.csv", low()), ("high.csv", high()), **changes)


def saved(visitor: Visitor, page: Page) -> str:
    """The id of the run."""
    return visitor.send(page.form("/save")).saved


def tables_of(visitor: Visitor, page: Page) -> Page:
    """The chart's data in words, as the fold under it brings them."""
    return visitor.get(page.by_id("tables")["hx-get"])


def points_of(visitor: Visitor, page: Page) -> tuple[dict[str, Any], array[float], list[array[float]]]:
    body = visitor.client.get(page.all("log-chart")[0]["src"]).data
    (length,) = struct.unpack_from("<I", body)
    header = json.loads(body[4 : 4 + length])
    start, rows = 4 + length, header["rows"]
    times = array("d", body[start : start + 8 * rows])
    rest = array("f", body[start + 8 * rows :])
    return header, times, [rest[at : at + rows] for at in range(0, len(rest), rows)]
