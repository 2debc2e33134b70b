"""An entry: one thing that happened, when, when it was written, what it belongs to. Never changed, only corrected."""

from __future__ import annotations

import uuid
from collections.abc import Mapping
from datetime import datetime
from typing import Any, cast

from attrs import Attribute, field, frozen
from cattrs.preconf.json import make_converter

from core.daybook.facts import KINDS, Fact, Unknown, kind_of

_converter = make_converter(forbid_extra_keys=False)
EARLIEST_YEAR, LATEST_YEAR = 1970, 2999
"""Outside them is no kitchen's clock, and sums of days would leave the calendar."""


class NotAnEntry(ValueError):
    """The record is not an entry of a daybook."""


def _with_offset(_instance: object, attribute: Attribute[datetime], moment: datetime) -> None:
    if moment.utcoffset() is None:
        raise ValueError(f"{attribute.name} needs its UTC offset")
    if not EARLIEST_YEAR <= moment.year <= LATEST_YEAR:
        raise ValueError(f"{attribute.name} must be between {EARLIEST_YEAR} and {LATEST_YEAR}")


@frozen
class Entry:
    """about: the id of the batch or piece it belongs to, CHAMBER, or its own id where it begins one.

    corrects: the id of the first entry of the line it puts right. Both moments carry their UTC offset.
    """

    id: str
    about: str
    happened_at: datetime = field(validator=_with_offset)
    written_at: datetime = field(validator=_with_offset)
    fact: Fact
    corrects: str | None = None


def entry_id(moment: datetime, chance: bytes) -> str:
    """A time-ordered unique id: a version 7 UUID (RFC 9562, section 5.7) from the moment and ten bytes of chance."""
    milliseconds = int(moment.timestamp() * 1000)
    number = milliseconds.to_bytes(6, "big") + chance[:10]
    return str(uuid.UUID(int=(int.from_bytes(number, "big") & ~(0xF << 76) & ~(0x3 << 62)) | (0x7 << 76) | (0x2 << 62)))


def is_entry_id(text: object) -> bool:
    """Whether it is an id as we write them: the journal compares ids letter by letter."""
    try:
        return str(uuid.UUID(_text(text))) == text
    except ValueError:
        return False


def _text(value: object, _: object = None) -> str:
    """Nothing is turned into a text that was none: a missing name would become the name "None"."""
    if not isinstance(value, str):
        raise ValueError("not a text")
    return value


def _number(value: object, _: object = None) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError("not a number")
    return float(value)


_converter.register_structure_hook(str, _text)
_converter.register_structure_hook(float, _number)


def to_record(entry: Entry) -> dict[str, Any]:
    """The entry as plain JSON: what the journal keeps and an export holds."""
    fact = entry.fact
    record: dict[str, Any] = {
        "id": entry.id,
        "about": entry.about,
        "kind": kind_of(fact),
        "happened_at": entry.happened_at.isoformat(),
        "written_at": entry.written_at.isoformat(),
        "fact": fact.fields if isinstance(fact, Unknown) else _converter.unstructure(fact),
    }
    if entry.corrects is not None:
        record["corrects"] = entry.corrects
    return record


def from_record(record: Mapping[str, Any]) -> Entry:
    """The reverse of to_record. Raises NotAnEntry where the record cannot be one."""
    try:
        kind, corrects = _text(record["kind"]), record.get("corrects")
        if not is_entry_id(record["id"]) or not (corrects is None or is_entry_id(corrects)):
            raise ValueError("an id is not one")
        if not isinstance(record["fact"], dict):
            raise ValueError("the fact has no fields")
        fields = cast(dict[str, Any], record["fact"])
        cls = KINDS.get(kind)
        return Entry(
            id=record["id"],
            about=_text(record["about"]),
            happened_at=datetime.fromisoformat(record["happened_at"]),
            written_at=datetime.fromisoformat(record["written_at"]),
            fact=Unknown(kind, dict(fields)) if cls is None else _converter.structure(fields, cls),
            corrects=corrects,
        )
    except Exception as error:  # cattrs groups what it finds; whatever it is, this is no entry
        raise NotAnEntry(f"This record cannot be read: {repr(record)[:80]}") from error
