"""The instruments that are kept, as the forms offer them: which one was this read on?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from core.daybook.book import Line
from core.daybook.corrections.readings import CorrectedFact, corrected
from core.daybook.facts import kind_of
from core.daybook.instruments import Shelf
from core.sentence import Message, Said, Sentence, as_typed
from web.forms import OptionalChoice, ReadWith
from web.journal import book

ANOTHER = "another"
"""The answer that names none of them."""
ANOTHER_ONE: Message = "another one"


def shelf() -> Shelf:
    return Shelf(book())


def offer(asked: ReadWith, kind: type[Any], was: Any) -> OptionalChoice | None:
    """The choice of those in use, and of the one the fact now corrected was read on; None where there are none."""
    options: dict[str, Said] = {each.id: as_typed(each.name) for each in shelf().in_use() if each.kind in asked.kinds}
    named = getattr(was, asked.key, None)
    if named is not None and named not in options:
        options[named] = _name_of(named)
    if not options:
        return None
    return one_of(asked.key, asked.label, options, default=_likeliest(asked, kind, options))


def one_of(
    key: str,
    label: Said,
    names: Mapping[str, Said],
    another: Message = ANOTHER_ONE,
    default: str | None = None,
) -> OptionalChoice:
    """A choice of instruments by their ids. another: what the answer that names none of them is called."""
    return OptionalChoice(key, label, {**names, ANOTHER: another}, default, none=ANOTHER)


def _name_of(instrument_id: str) -> Sentence:
    instrument = shelf().find(instrument_id)
    if instrument is None:
        return Sentence("one no longer listed")
    return Sentence("{name}, retired", {"name": instrument.name})


def _likeliest(asked: ReadWith, kind: type[Any], options: Mapping[str, Said]) -> str:
    """The one used last, were it none of these; or one that was added since."""
    newest = max((each for each in shelf().in_use() if each.id in options), key=lambda each: each.id, default=None)
    for key in reversed(book().beginnings(kind_of(kind))):
        line = book().line(key)
        if isinstance(line.fact, kind):
            if newest is not None and newest.id > key:
                return newest.id
            used = getattr(line.fact, asked.key)
            return used if used in options else ANOTHER
    return ANOTHER if newest is None else newest.id


def corrected_of(line: Line) -> CorrectedFact:
    """The line's fact with its readings corrected by the checks in force when it happened."""
    return corrected(shelf(), line.fact, line.entry.happened_at)
