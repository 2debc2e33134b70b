"""A copy of a book read back: a zip of journal.json and files/, or the journal alone. All is checked before any is
taken. A damaged file is refused whole; an entry in it that cannot be read is taken as it stands, and is told.
"""

from __future__ import annotations

import io
import json
import re
import zipfile
import zlib
from hashlib import sha256
from typing import Any

from attrs import evolve, frozen
from werkzeug.datastructures import FileStorage

from core import outside_json
from core.daybook.entries import NotAnEntry, from_record, is_record
from core.quantities import COUNT, Amount
from core.refusals import Refusal
from core.sentence import Message, Sentence

FORMAT = "curing-daybook-journal"
JOURNAL = "journal.json"
MOST_MB = 300
"""Unpacked. In a tablet's worker all of Python lives in a few hundred megabytes."""
TOO_MUCH: Message = "This copy holds more than {most} MB, more than can be read in at once."
_FILE = re.compile("files/([0-9a-f]{64})")


@frozen
class Copied:
    """entries: as written, one of an id. files: each of them what its name said.

    unread: how many of them cannot be read here. no_entries: how many things were none and are left out. twice: how
    many stood there once more under their id, with other content.
    """

    entries: list[dict[str, Any]]
    unread: int = 0
    no_entries: int = 0
    twice: int = 0
    files: tuple[bytes, ...] = ()


def read(file: FileStorage | None) -> Copied:
    """Raises Refusal on "file" where anything of it cannot be taken."""
    if file is None or not file.filename:
        raise Refusal("file", "Choose a copy that a daybook has saved.")
    data = file.stream.read()
    if zipfile.is_zipfile(io.BytesIO(data)):
        return _unpacked(data)
    return _read_entries(data)


def _unpacked(data: bytes) -> Copied:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            if sum(each.file_size for each in packed.infolist()) > MOST_MB * 10**6:
                raise Refusal("file", Sentence(TOO_MUCH, {"most": Amount(MOST_MB, COUNT)}))
            names = [each for each in packed.namelist() if _FILE.fullmatch(each)]
            found = _read_entries(packed.read(JOURNAL) if JOURNAL in packed.namelist() else b"")
            return evolve(found, files=tuple(_whole(name, packed.read(name)) for name in names))
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError, zlib.error):
        raise Refusal("file", "This copy is damaged, so nothing was taken in. Save it again there.") from None


def _whole(name: str, data: bytes) -> bytes:
    if sha256(data).hexdigest() != name.rpartition("/")[2]:
        told = Sentence("A file in this copy was altered ({name}…), so nothing was taken in.", {"name": name[6:18]})
        raise Refusal("file", told)
    return data


def _read_entries(data: bytes) -> Copied:
    """Of two under one id the first is taken: an entry never changes, so the other was altered outside. What cannot be
    read is kept like the rest: a batch whose cure is left out would be cured twice."""
    written = _written(data)
    entries: list[dict[str, Any]] = [each for each in written if is_record(each)]
    unread = sum(not _can_be_read(each) for each in entries)
    if written and unread == len(entries):
        count = {"count": Amount(len(written), COUNT)}
        none_of_it: Message = "The {count} entry in it cannot be read, so nothing was taken in."
        raise Refusal("file", Sentence(none_of_it, count, plural="None of the {count} entries in it can be read."))
    unique: dict[str, dict[str, Any]] = {}
    twice = {each["id"] for each in entries if unique.setdefault(each["id"], each) != each}
    return Copied(list(unique.values()), unread, len(written) - len(entries), len(twice))


def _can_be_read(entry: dict[str, Any]) -> bool:
    try:
        from_record(entry)
    except NotAnEntry:
        return False
    return True


def _written(data: bytes) -> list[Any]:
    try:
        held = outside_json.parse(data.decode("utf-8-sig"))
        json.dumps(held, ensure_ascii=False, allow_nan=False).encode()  # what no file could hold again
        entries: list[Any] = held["entries"]
        is_ours = held["format"] == FORMAT and type(entries) is list
    except (ValueError, KeyError, TypeError):
        entries, is_ours = [], False
    if not is_ours:
        raise Refusal("file", "This is not a copy that a daybook has saved. Its name ends in .zip or .json.")
    return entries
