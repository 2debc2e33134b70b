"""An entry: one thing that happened, when, when it was written, what it belongs to. Never changed, only corrected."""

from __future__ import annotations

import re
import uuid
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any, cast

from attrs import Attribute, field, frozen
from attrs.validators import and_, ge, le, matches_re, max_len
from cattrs.preconf.json import make_converter

from core.daybook.facts import KINDS, Fact, Unknown, Unreadable, kind_of

_converter = make_converter(forbid_extra_keys=False)
EARLIEST_YEAR, LATEST_YEAR = 1970, 2999
"""Outside them is no kitchen's clock, and sums of days would leave the calendar."""
NO_MOMENT = datetime(EARLIEST_YEAR, 1, 1, tzinfo=UTC)
"""Of a record whose own cannot be read: it stands before all others and is the latest of nothing."""
MOST_LETTERS = 60
"""Of a name."""
LONGEST_TEXT = 500
"""In a fact."""


class NotAnEntry(ValueError):
    """The record is not an entry of a daybook."""


def _with_offset(_instance: object, attribute: Attribute[datetime], moment: datetime) -> None:
    if moment.utcoffset() is None:
        raise ValueError(f"{attribute.name} needs its UTC offset")
    if not _is_of_a_kitchen(moment):
        raise ValueError(f"{attribute.name} must be between {EARLIEST_YEAR} and {LATEST_YEAR}")


def _is_of_a_kitchen(moment: datetime) -> bool:
    return EARLIEST_YEAR <= moment.year <= LATEST_YEAR


_DEVICE = re.compile("[0-9a-z]{0,32}")
LATEST_CLOCK = 2**53 - 1
"""JSON's numbers are whole up to it, in every browser."""


@frozen
class Entry:
    """about: the id of the batch or piece it belongs to, CHAMBER, or its own id where it begins one.

    corrects: the id of the first entry of the line it corrects. Both moments carry their UTC offset. clock: one more
    than the greatest that its device had seen (a Lamport clock); 0 in entries from before there was one. device: the id
    of the tablet that wrote it. by: who wrote it, where they said so.
    """

    id: str
    about: str
    happened_at: datetime = field(validator=_with_offset)
    written_at: datetime = field(validator=_with_offset)
    fact: Fact
    corrects: str | None = None
    clock: int = field(default=0, validator=and_(ge(0), le(LATEST_CLOCK)))
    device: str = field(default="", validator=matches_re(_DEVICE))
    by: str = field(default="", validator=max_len(MOST_LETTERS))

    @property
    def written(self) -> tuple[int, str, str, str]:
        """The order in which entries were written, the same on every tablet however wrong its clock: what was written
        with the other in sight is later. Of two that knew nothing of each other the devices' ids decide; entries from
        before there was a clock go by the moment they bear."""
        return self.clock, self.device, "" if self.clock else self.written_at.astimezone(UTC).isoformat(), self.id


def entry_id(moment: datetime, chance: bytes) -> str:
    """A time-ordered unique id: a version 7 UUID (RFC 9562, section 5.7) from the moment and ten bytes of chance."""
    milliseconds = int(moment.timestamp() * 1000)
    number = milliseconds.to_bytes(6, "big") + chance[:10]
    return str(uuid.UUID(int=(int.from_bytes(number, "big") & ~(0xF << 76) & ~(0x3 << 62)) | (0x7 << 76) | (0x2 << 62)))


def moment_of_id(key: str) -> datetime:
    """When its tablet's clock said it was; NO_MOMENT of an id that was not made of one."""
    try:
        return datetime.fromtimestamp((uuid.UUID(key).int >> 80) / 1000, UTC)
    except (ValueError, OverflowError, OSError):
        return NO_MOMENT


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


def _short(value: object, _: object = None) -> str:
    """No form takes a longer text, and no page could show it."""
    if len(text := _text(value)) > LONGEST_TEXT:
        raise ValueError("a text without end")
    return text


def _whole(value: object) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueError("not a whole number")
    return value


def _number(value: object, _: object = None) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ValueError("not a number")
    return float(value)


_converter.register_structure_hook(str, _short)
_converter.register_structure_hook(float, _number)


def moment_of(text: object) -> datetime:
    """As a record bears it, or NO_MOMENT."""
    try:
        moment = datetime.fromisoformat(_text(text))
        return moment if moment.utcoffset() is not None and _is_of_a_kitchen(moment) else NO_MOMENT
    except ValueError:
        return NO_MOMENT


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
        "clock": entry.clock,
        "device": entry.device,
    }
    if entry.by:
        record["by"] = entry.by
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
            about=_short(record["about"]),
            happened_at=datetime.fromisoformat(record["happened_at"]),
            written_at=datetime.fromisoformat(record["written_at"]),
            fact=Unknown(kind, dict(fields)) if cls is None else _converter.structure(fields, cls),
            corrects=corrects,
            clock=_whole(record.get("clock", 0)),
            device=_text(record.get("device", "")),
            by=_text(record.get("by", "")),
        )
    except Exception as error:  # cattrs groups what it finds; whatever it is, this is no entry
        raise NotAnEntry(f"This record cannot be read: {repr(record)[:80]}") from error


def is_record(record: object) -> bool:
    """Whether a book can hold it: it has an id and says what it is about. Its fact is read when it is asked for."""
    if not isinstance(record, dict):
        return False
    held = cast(dict[str, Any], record)
    texts = all(type(held.get(name)) is str for name in ("id", "about", "kind"))
    return texts and type(held.get("clock", 0)) is int and type(held.get("corrects", "")) in (str, type(None))


def entry_of(record: Mapping[str, Any]) -> Entry:
    """The entry of a record that a book holds; what cannot be read of it is Unreadable, so that it costs its own line
    and never the page."""
    try:
        return from_record(record)
    except NotAnEntry:
        held = record.get("fact")
        return Entry(
            id=record["id"],
            about=record["about"],
            happened_at=moment_of(record.get("happened_at")),
            written_at=moment_of(record.get("written_at")),
            fact=Unreadable(record["kind"], cast(dict[str, Any], held) if isinstance(held, dict) else {}),
            corrects=record.get("corrects"),
            clock=min(max(record.get("clock", 0), 0), LATEST_CLOCK),
        )
