"""A copy with its logs is read back whole or not at all."""

import io
import json
import zipfile
from hashlib import sha256

import pytest

from core.daybook.facts.chamber import CHAMBER, AirRead
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor
from web import copied

LOG = b"time;temperature\n2026-11-02 08:00;12.5\n"
NAME = f"files/{sha256(LOG).hexdigest()}"


def journal() -> bytes:
    kitchen = Kitchen()
    kitchen.note(AirRead(12.5, 0.78), CHAMBER)
    return json.dumps({"format": copied.FORMAT, "version": 1, "entries": kitchen.records}).encode()


def a_copy(**files: bytes) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as target:
        for name, data in files.items():
            target.writestr(name, data)
    return packed.getvalue()


WHOLE = {"journal.json": journal(), NAME: LOG}


def files_of(visitor: Visitor) -> dict[str, bytes]:
    return dict(visitor.app.extensions["files"])


def test_its_entries_and_its_logs_come_in_together(visitor: Visitor):
    page = visitor.read_in(a_copy(**WHOLE), "daybook.zip")
    assert "Read in 1 new entry, with 1 file." in page.text
    assert len(visitor.book) == 1
    assert files_of(visitor) == {NAME[6:]: LOG}


def test_read_in_twice_nothing_is_doubled(visitor: Visitor):
    visitor.read_in(a_copy(**WHOLE), "daybook.zip")
    assert "Read in 0 new entries" in visitor.read_in(a_copy(**WHOLE), "daybook.zip").text
    assert len(visitor.book) == 1


def test_what_else_lies_in_the_zip_is_left_there(visitor: Visitor):
    others = {"../evil.txt": b"x", "files/readme.txt": b"x", f"files/{'0' * 63}": b"x"}
    visitor.read_in(a_copy(**WHOLE, **others), "daybook.zip")
    assert files_of(visitor) == {NAME[6:]: LOG}


def truncated() -> bytes:
    """The end of the zip is there, a part of its middle is not what it was."""
    whole = bytearray(a_copy(**WHOLE))
    at = whole.index(b"journal.json") + len("journal.json") + 8
    whole[at : at + 20] = bytes(20)
    return bytes(whole)


SPOILT = {
    "a log that was altered": (a_copy(**WHOLE | {NAME: LOG + b"x"}), "was altered"),
    "no journal": (a_copy(**{NAME: LOG}), "not a copy that a daybook has saved"),
    "a journal that is none": (a_copy(**WHOLE | {"journal.json": b"{}"}), "not a copy that a daybook has saved"),
    "an entry that is none": (
        a_copy(**WHOLE | {"journal.json": journal().replace(b"air-read", b"cure-weighed")}),
        "The 1 entry in it cannot be read, so nothing was taken in.",
    ),
    "damaged": (truncated(), "is damaged"),
}


@pytest.mark.parametrize(("data", "said"), SPOILT.values(), ids=SPOILT)
def test_a_spoilt_copy_is_refused_and_nothing_of_it_is_taken(visitor: Visitor, data: bytes, said: str):
    page = visitor.read_in(data, "daybook.zip")
    assert page.status == 422
    assert said in page.beside_file()
    assert (len(visitor.book), files_of(visitor)) == (0, {})


def test_a_copy_too_large_to_take_in_says_so(visitor: Visitor, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(copied, "MOST_MB", 0)
    assert "more than 0 MB" in visitor.read_in(a_copy(**WHOLE), "daybook.zip").beside_file()
