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

from core.daybook.facts import KINDS, Fact, Unknown, kind_of

_converter = make_converter(forbid_extra_keys=False)
EARLIEST_YEAR, LATEST_YEAR = 1970, 2999
"""Outside them is no kitchen's clock, and sums of days would leave the calendar."""


MOST_LETTERS = 60
"""Of a name."""


class NotAnEntry(ValueError):
    """The record is not an entry of a daybook."""


def _with_offset(_instance: object, attribute: Attribute[datetime], moment: datetime) -> None:
    if moment.utcoffset() is None:
        raise ValueError(f"{attribute.name} needs its UTC offset")
    if not EARLIEST_YEAR <= moment.year <= LATEST_YEAR:
        raise ValueError(f"{attribute.name} must be between {EARLIEST_YEAR} and {LATEST_YEAR}")


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


def _whole(value: object) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueError("not a whole number")
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
            about=_text(record["about"]),
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
