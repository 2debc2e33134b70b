"""The book: all entries on this device, and each thing that happened as it now stands after its corrections."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import datetime
from itertools import islice
from typing import Any, TypeVar

from attrs import frozen

from core.daybook.entries import LATEST_CLOCK, Entry, entry_of, is_record, moment_of
from core.daybook.facts import Fact, Unreadable, Withdrawn, kind_of

Record = Mapping[str, Any]
Kept = TypeVar("Kept")
MOST_TO_COME = 2**40
"""A clock that somebody set to the end of all numbers must leave room for what is still to be written."""


@frozen
class Line:
    """One thing that happened, as it now stands. versions: every entry about it, oldest first; the last one that can be
    read counts.

    Its id is the id of its first entry, whatever was corrected since.
    """

    versions: tuple[Entry, ...]

    @property
    def id(self) -> str:
        return self.versions[0].id

    @property
    def entry(self) -> Entry:
        readable = (each for each in reversed(self.versions) if not isinstance(each.fact, Unreadable))
        return next(readable, self.versions[-1])

    @property
    def fact(self) -> Fact:
        return self.entry.fact

    @property
    def withdrawn(self) -> bool:
        return isinstance(self.fact, Withdrawn)

    @property
    def order(self) -> tuple[Any, str]:
        return self.entry.happened_at, self.id


class Book:
    """Holds records as they came and reads them only when asked: ten thousand entries must not delay the start."""

    def __init__(self, records: Iterable[Record] = ()) -> None:
        self._records: dict[str, Record] = {}
        self._corrections: dict[str, list[str]] = defaultdict(list)
        self._about: dict[str, list[str]] = defaultdict(list)
        self._kinds: dict[str, list[str]] = defaultdict(list)
        self._lines: dict[str, Line] = {}
        self.clock = 0
        """The greatest that was seen: what is written next is one more."""
        self.revision = 0
        """One more each time it has learned something."""
        self.unreadable: set[str] = set()
        """The ids of those that could not be read, as far as somebody asked for them."""
        self.newest = self.next_newest = ""
        """The greatest two ids: ids are in the order in which tablets, each by its clock, wrote them."""
        self.not_records = 0
        """How many came that were no entries at all."""
        self._kept: dict[tuple[str, str], tuple[int, Any]] = {}
        self.learn(records)

    def __len__(self) -> int:
        return len(self._records)

    def __contains__(self, entry_id: str) -> bool:
        return entry_id in self._records

    def learn(self, records: Iterable[Record]) -> int:
        """Take in committed records; one already known is passed over, and what is no record is counted. Returns how
        many were new."""
        new = 0
        for record in records:
            if not is_record(record):
                self.not_records += 1
                continue
            key = record["id"]
            if key in self._records:
                continue
            self._records[key] = record
            if key > self.newest:
                self.newest, self.next_newest = key, self.newest
            elif key > self.next_newest:
                self.next_newest = key
            self.clock = max(self.clock, min(record.get("clock", 0), LATEST_CLOCK - MOST_TO_COME))
            new += 1
            corrected = record.get("corrects")
            if corrected is None:
                self._about[record["about"]].append(key)
                self._kinds[record["kind"]].append(key)
            else:
                self._corrections[corrected].append(key)
                self._lines.clear()  # a correction of a correction may reach any line; corrections are rare
        self.revision += bool(new)
        return new

    def kept(self, kind: str, subject: str, fold: Callable[[], Kept]) -> Kept:
        """What is folded of the book as it stands, folded once: it holds until the book learns something."""
        revision = self.revision
        found = self._kept.get((kind, subject))
        if found is None or found[0] != revision:
            found = self._kept[kind, subject] = revision, fold()
        return found[1]

    def has_kept(self, kind: str, subject: str) -> bool:
        """Whether it is folded already."""
        found = self._kept.get((kind, subject))
        return found is not None and found[0] == self.revision

    def records(self) -> Iterator[Record]:
        """Every record, in the order of their ids: what an export holds."""
        return (self._records[key] for key in sorted(self._records))

    def written_after(self, entry_id: str) -> list[str]:
        """The ids that are greater: none at all, where the newest is not."""
        return [key for key in self._records if key > entry_id] if self.newest > entry_id else []

    def line(self, entry_id: str) -> Line:
        """The line that this entry began or belongs to. KeyError when there is none."""
        key = self._first(entry_id)
        if key not in self._lines:
            first, *later = (self.entry(each) for each in self._versions(key))
            self._lines[key] = Line((first, *sorted(later, key=lambda entry: entry.written)))
        return self._lines[key]

    def _first(self, entry_id: str) -> str:
        passed = [entry_id]
        while (earlier := self._records[passed[-1]].get("corrects")) in self._records and earlier not in passed:
            passed.append(earlier)  # a ring of corrections is nothing we write, but it must not hang the book
        return passed[-1]

    def _versions(self, key: str) -> list[str]:
        """The first entry and all its corrections. Two devices may have corrected the same one: then the one that
        counts is the same on both. Not the greater id: that is as old as the form, which may have lain open."""
        found = [key]
        for each in found:
            found.extend(one for one in self._corrections.get(each, ()) if one != key)
        return found

    def about(self, subject: str) -> list[Line]:
        """What belongs to a batch, a piece or the chamber, oldest first, withdrawn lines too."""
        return sorted((self.line(key) for key in self._about.get(subject, ())), key=lambda line: line.order)

    def of_kind(self, kind: str) -> list[Line]:
        """Every line that began as this kind, oldest first."""
        return sorted((self.line(key) for key in self._kinds.get(kind, ())), key=lambda line: line.order)

    def latest(self, subject: str, kind: type[Any]) -> Line | None:
        """The last thing of this kind that happened to the subject and was not taken back.

        Of entries that were never corrected only the last one is read: the chamber's air has thousands.
        """
        return next(iter(self.recent(subject, kind, 1)), None)

    def recent(self, subject: str, kind: type[Any], count: int) -> list[Line]:
        """The same, the last few of them: oldest first."""
        plain = [key for key in self.beginnings(kind_of(kind), about=subject) if self.is_plain(key)]
        newest_first = map(self.line, sorted(plain, key=self._moment, reverse=True))
        last = islice((line for line in newest_first if isinstance(line.fact, kind)), count)
        corrected = [self.line(key) for key in self._corrections if self._begins_about(key, subject)]
        found = [*last, *(line for line in corrected if isinstance(line.fact, kind))]
        return sorted(found, key=lambda line: line.order)[-count:]

    def _begins_about(self, key: str, subject: str) -> bool:
        record = self._records.get(key)  # a correction may have come before what it corrects
        return record is not None and record["about"] == subject and record.get("corrects") is None

    def _moment(self, key: str) -> tuple[datetime, str]:
        """The order of a line that was never corrected, unread."""
        return moment_of(self._records[key].get("happened_at")), key

    def beginnings(self, kind: str, about: str | None = None) -> list[str]:
        """The ids of the first entries of a kind, unread, in the order of their ids."""
        of_kind = self._kinds.get(kind, ())
        if about is None:
            return sorted(of_kind)
        of_subject = self._about.get(about, ())
        if len(of_kind) < len(of_subject):  # of the chamber's thousands few are of a kind
            return sorted(key for key in of_kind if self._records[key]["about"] == about)
        return sorted(key for key in of_subject if self._records[key]["kind"] == kind)

    def is_plain(self, entry_id: str) -> bool:
        """Whether the entry was never corrected; known without reading it."""
        return entry_id not in self._corrections

    def has_plain(self, kind: str, about: str) -> bool:
        """Whether there is an entry of this kind about the subject that was never corrected."""
        newest_first = reversed(self._about.get(about, []))
        return any(self.is_plain(key) and self._records[key]["kind"] == kind for key in newest_first)

    def was_corrected_into(self, kind: str, about: str) -> bool:
        """Whether a correction made an entry about the subject one of this kind; known without reading it."""
        corrected = (key for key in self._about.get(about, ()) if not self.is_plain(key))
        return any(self._records[one]["kind"] == kind for key in corrected for one in self._versions(key)[1:])

    def entry(self, entry_id: str) -> Entry:
        found = entry_of(self._records[entry_id])
        if isinstance(found.fact, Unreadable):
            self.unreadable.add(entry_id)
        return found
