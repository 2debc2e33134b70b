"""An instrument is the fold of its entries: when it was checked, what that came to, and which correction is in force.

A check speaks for what is read at or after it, until the next one, and no longer than the instrument stays as it was:
once it is recalibrated the old correction is void. One that failed speaks against what was read before it as well.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Any

from attrs import frozen

from core.chamber.checks import Check, Correction, Word, is_old
from core.chamber.checks_thermometer import both_points
from core.daybook.book import Book, Line
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    InstrumentKind,
    InstrumentRecalibrated,
    InstrumentRetired,
)
from core.daybook.instrument_checks import CHECKED_BY, WAYS, Measured, work_out
from core.refusals import Refusal
from core.sentence import Message

KIND_WORDS: dict[InstrumentKind, Message] = {
    "thermometer": "thermometer",
    "hygrometer": "hygrometer",
    "ph-meter": "pH meter",
    "scale": "scale",
}
MEASURES: dict[InstrumentKind, tuple[Measured, ...]] = {
    "thermometer": ("temperature",),
    "hygrometer": ("humidity", "temperature"),
    "ph-meter": ("ph",),
    "scale": ("mass",),
}
"""What each kind measures; the first is what it is for, and the check of that is what grows old."""

CHECK_EVERY: dict[InstrumentKind, timedelta] = {
    "thermometer": timedelta(days=180),
    "hygrometer": timedelta(days=180),
    "ph-meter": timedelta(days=30),
    "scale": timedelta(days=180),
}
"""Where the maker set none (common practice; no published source)."""

FAILED: frozenset[Word] = frozenset({"clean", "replace"})

ONE_SESSION = timedelta(days=1)
"""Ice and boiling water within it are one check at two points, and its line goes through both."""
_OTHER_POINT: dict[type[Any], type[Any]] = {IcePointChecked: BoilingPointChecked, BoilingPointChecked: IcePointChecked}


@frozen
class Checked:
    """A check that was made. name: "salt check". of: what it tells of. correction None: readings stay as read, for the
    instrument passed, or failed, or showed millivolts.

    by: what the correction rests on: the check itself, or together with its mate of the same day.
    """

    at: datetime
    line: Line
    name: Message
    of: Measured
    check: Check
    correction: Correction | None
    by: Message

    @property
    def failed(self) -> bool:
        """It must be cleaned or replaced: what it shows proves nothing."""
        return _failed(self.check)


def _failed(check: Check) -> bool:
    return check.word in FAILED


@frozen
class Instrument:
    """check_lines: what was read at known points, newest first; worked out only when asked. recalibrated: the moments
    it was adjusted, newest first."""

    id: str
    added_at: datetime
    added: InstrumentAdded
    check_lines: tuple[Line, ...]
    recalibrated: tuple[datetime, ...]
    retired_at: datetime | None
    lines: tuple[Line, ...]

    @property
    def name(self) -> str:
        return self.added.name

    @property
    def kind(self) -> InstrumentKind:
        return self.added.kind

    @property
    def kind_words(self) -> Message:
        return KIND_WORDS[self.kind]

    @property
    def measures(self) -> tuple[Measured, ...]:
        return MEASURES[self.kind]

    @property
    def check_every(self) -> timedelta:
        own = self.added.check_every_s
        return CHECK_EVERY[self.kind] if own is None else timedelta(seconds=own)

    @property
    def checks(self) -> tuple[Checked, ...]:
        """Newest first. One that cannot be worked out, from a newer daybook perhaps, is no check."""
        return tuple(found for line in self.check_lines if (found := self._checked(line)) is not None)

    def in_force(self, measured: Measured, moment: datetime) -> Checked | None:
        """The check that speaks for what is read at the moment, or None: never checked, or recalibrated since.

        One that failed speaks for more: for all that is read after it until one is passed, recalibrated or not, and for
        what was read before it, back to the last check or setting. Nobody saw when the instrument went wrong (ISO
        9001:2015, 7.1.5.2, asks that of earlier results; from memory).
        """
        last = self._first_checked(measured, (line for line in self.check_lines if line.entry.happened_at <= moment))
        if last is not None and last.failed:
            return last
        later = (line for line in reversed(self.check_lines) if line.entry.happened_at > moment)
        following = self._first_checked(measured, later)
        if following is not None and following.failed and not self._recalibrated_between(moment, following.at):
            return following
        return None if last is None or self._recalibrated_between(last.at, moment) else last

    def _first_checked(self, measured: Measured, lines: Iterable[Line]) -> Checked | None:
        of_it = (line for line in lines if WAYS[type(line.fact)].of == measured)
        return next((found for line in of_it if (found := self._checked(line)) is not None), None)

    def _recalibrated_between(self, since: datetime, until: datetime) -> bool:
        return any(since < at <= until for at in self.recalibrated)

    def _checked(self, line: Line) -> Checked | None:
        check = _work_out(line, self.added)
        if check is None:
            return None
        way, at = WAYS[type(line.fact)], line.entry.happened_at
        mate = self._mate(line)
        through_both = None if mate is None else _through_both(check, mate)
        words: set[Word] = {check.word} if mate is None or through_both is None else {check.word, mate.word}
        correction = (through_both or check.correction) if _corrects(line.fact, words) else None
        by: Message = "ice and boiling check" if correction and correction is through_both else way.name
        return Checked(at, line, way.name, way.of, check, correction, by)

    def _mate(self, line: Line) -> Check | None:
        """Of a check in ice or boiling water: the other one, where it was done in the same session."""
        other = _OTHER_POINT.get(type(line.fact))
        return None if other is None else self._before_in_session(other, line)

    def _before_in_session(self, kind: type[Any], line: Line) -> Check | None:
        at = line.entry.happened_at
        for mate in self.check_lines:
            apart = at - mate.entry.happened_at
            if not isinstance(mate.fact, kind) or mate.order > line.order or apart > ONE_SESSION:
                continue
            check = _work_out(mate, self.added)
            if check is not None and not _failed(check) and not self._recalibrated_between(mate.entry.happened_at, at):
                return check
        return None

    def correction(self, measured: Measured, moment: datetime) -> Correction | None:
        """How a reading of that moment is corrected; None where no check stands, or one that leaves them."""
        standing = self.in_force(measured, moment)
        return None if standing is None else standing.correction

    def main_check(self, moment: datetime) -> Checked | None:
        """The check in force of what the instrument is for."""
        return self.in_force(self.measures[0], moment)

    def last_checked_at(self, moment: datetime) -> datetime | None:
        standing = self.main_check(moment)
        return None if standing is None else standing.at

    def is_old(self, moment: datetime) -> bool:
        """Whether what it is for was last checked too long ago, never, or before it was adjusted."""
        checked_at = self.last_checked_at(moment)
        return checked_at is None or is_old(checked_at, moment, self.check_every)


def fold_instrument(book: Book, instrument_id: str) -> Instrument | None:
    """The instrument as it stands, or None where none was added by this id or its adding was taken back."""
    return book.kept("instrument", instrument_id, lambda: _fold(book, instrument_id))


def _fold(book: Book, instrument_id: str) -> Instrument | None:
    if instrument_id not in book:
        return None
    begun = book.line(instrument_id)
    if begun.id != instrument_id or not isinstance(begun.fact, InstrumentAdded):
        return None
    lines = book.about(instrument_id)
    ends = _moments(lines, InstrumentRetired)
    recalibrated = _moments(lines, InstrumentRecalibrated)
    return Instrument(
        id=instrument_id,
        added_at=begun.entry.happened_at,
        added=begun.fact,
        check_lines=tuple(line for line in lines if type(line.fact) in CHECKED_BY[begun.fact.kind])[::-1],
        recalibrated=tuple(recalibrated[::-1]),
        retired_at=ends[0] if ends else None,
        lines=tuple(lines),
    )


def _moments(lines: Iterable[Line], kind: type[Any]) -> list[datetime]:
    return [line.entry.happened_at for line in lines if isinstance(line.fact, kind)]


def _work_out(line: Line, added: InstrumentAdded) -> Check | None:
    try:
        return work_out(line.fact, added)  # type: ignore[arg-type]
    except Refusal:
        return None


def _through_both(check: Check, mate: Check) -> Correction | None:
    try:
        return both_points(check, mate)
    except Refusal:
        return None


def _corrects(fact: object, words: set[Word]) -> bool:
    """Only what is to be adjusted: what was passed is right to its tolerance, what failed proves nothing.

    Buffers judge the electrode and not the pH shown, so a pH is corrected where they passed it; but not by a check in
    millivolts, for pH is read off a meter that has its own setting, which that check does not see. words: the check's,
    and its mate's where a line goes through both.
    """
    if isinstance(fact, BuffersChecked):
        return fact.shows == "ph" and not words & FAILED
    return "adjust" in words and not words & FAILED


class Shelf:
    """The instruments of a book."""

    def __init__(self, book: Book) -> None:
        self._book = book

    def find(self, instrument_id: str | None) -> Instrument | None:
        return None if instrument_id is None else fold_instrument(self._book, instrument_id)

    def all(self) -> list[Instrument]:
        """Every instrument added and not taken back, in the order they were added."""
        found = (self.find(line.id) for line in self._book.of_kind("instrument-added"))
        return [each for each in found if each is not None]

    def in_use(self) -> list[Instrument]:
        return [each for each in self.all() if each.retired_at is None]


def instruments(book: Book) -> list[Instrument]:
    return Shelf(book).all()
