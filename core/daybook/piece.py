"""A piece is the fold of its entries, from the hook to the plate.

Where a part was cut off, what was weighed before counts as much less as the piece became: what hangs on has lost no
more, and no less, than the whole had.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from functools import cached_property

from attrs import evolve, frozen

from core.daybook.book import Book, Line
from core.daybook.corrections.readings import CorrectedReading, corrected
from core.daybook.dated import Activity, Weighing
from core.daybook.facts.batch import ActivityMeasured, PieceCut, PieceHung, PieceInspected, PieceTakenDown, PieceWeighed
from core.daybook.instruments import Shelf
from core.release.contradictions import Weighed, in_weights

A_DAY = timedelta(days=1)
SAMPLED_WITH = timedelta(days=1)
"""A weighing so long before a sample still shows what the piece had lost. Common practice; no published source."""


@frozen
class Piece:
    id: str
    batch_id: str
    tag: str
    start_kg: float
    hung_at: datetime
    weighings: tuple[Weighing, ...]
    """Each as what hangs now weighed, or would have."""
    activities: tuple[Activity, ...]
    inspected: Line | None
    taken_down: PieceTakenDown | None
    hung: PieceHung
    lines: tuple[Line, ...]
    start_reading: CorrectedReading | None = None

    @property
    def mass_kg(self) -> float:
        return self.weighings[-1].mass_kg if self.weighings else self.start_kg

    @property
    def mass_reading(self) -> CorrectedReading | None:
        return self.weighings[-1].reading if self.weighings else self.start_reading

    @cached_property
    def loss(self) -> float | None:
        """Share of the start weight lost; None before the first weighing."""
        return _loss(self.start_kg, self.mass_kg) if self.weighings else None

    @cached_property
    def proven_loss(self) -> float | None:
        """The loss by the last weighing on a scale that had not failed its check; None where there is none."""
        if self.start_reading is not None and self.start_reading.proves_nothing:
            return None
        proven = [weighing.mass_kg for weighing in self.weighings if weighing.proves]
        return _loss(self.start_kg, proven[-1]) if proven else None

    @cached_property
    def contradictory_weights(self) -> tuple[str, ...]:
        """What its weights on sound scales say against each other: keys of `core.release.contradictions`."""
        weighed = ((each.at - self.hung_at, each.mass_kg) for each in self.weighings if each.proves)
        return in_weights(self.start_kg, [Weighed(since / A_DAY, mass_kg) for since, mass_kg in weighed])

    @property
    def weighed_at(self) -> datetime:
        return self.weighings[-1].at if self.weighings else self.hung_at

    @property
    def is_cut(self) -> bool:
        return any(isinstance(line.fact, PieceCut) for line in self.lines)

    @cached_property
    def noted_at(self) -> datetime:
        """When anything was last noted of it: since then it is as it is."""
        noted = (line.entry.happened_at for line in self.lines if not line.withdrawn)
        return max(noted, default=self.hung_at)

    @cached_property
    def signs(self) -> tuple[str, ...]:
        """What the latest look found; an earlier find is taken back by correcting it, not by looking again."""
        found = (line.fact.signs for line in self.lines if isinstance(line.fact, PieceInspected))
        return tuple(dict.fromkeys(sign for signs in found for sign in signs))


def fold_piece(book: Book, shelf: Shelf, hung: Line, fact: PieceHung) -> Piece:
    lines = book.about(hung.id)
    start, weighings = _weighed(shelf, hung, lines)
    inspections = [line for line in lines if isinstance(line.fact, PieceInspected)]
    endings = [line.fact for line in lines if isinstance(line.fact, PieceTakenDown)]
    sound = (start, *(each for each in weighings if each.proves)) if start.proves else ()
    return Piece(
        id=hung.id,
        batch_id=hung.entry.about,
        tag=fact.tag,
        start_kg=start.mass_kg,
        hung_at=hung.entry.happened_at,
        weighings=weighings,
        activities=tuple(
            Activity(
                line.entry.happened_at,
                line.id,
                line.fact.water_activity,
                _loss(start.mass_kg, _mass_at(line.entry.happened_at, start.mass_kg, weighings)),
                _most_loss(line.entry.happened_at, start.mass_kg, sound),
            )
            for line in lines
            if isinstance(line.fact, ActivityMeasured)
        ),
        inspected=inspections[-1] if inspections else None,
        taken_down=endings[-1] if endings else None,
        hung=fact,
        lines=tuple(lines),
        start_reading=start.reading,
    )


def _mass_at(moment: datetime, start_kg: float, weighings: tuple[Weighing, ...]) -> float:
    earlier = [weighing.mass_kg for weighing in weighings if weighing.at <= moment]
    return earlier[-1] if earlier else start_kg


def _most_loss(moment: datetime, start_kg: float, sound: tuple[Weighing, ...]) -> float | None:
    """It dries on: the first weighing after the sample shows no less than it had lost by then; one long before does."""
    near = next((each for each in sound if each.at >= moment), None)
    if near is None:
        near = next((each for each in reversed(sound) if moment - each.at <= SAMPLED_WITH), None)
    return None if near is None else _loss(start_kg, near.mass_kg)


def _weighed(shelf: Shelf, hung: Line, lines: list[Line]) -> tuple[Weighing, tuple[Weighing, ...]]:
    """As it was hung, and every weighing since, all of the piece as large as it is now. lines: oldest first."""
    found = [_weighing(shelf, hung, "start_kg")]
    for line in lines:
        if isinstance(line.fact, PieceWeighed):
            found.append(_weighing(shelf, line, "mass_kg"))
        elif isinstance(line.fact, PieceCut):
            before, after = _weighing(shelf, line, "before_kg"), _weighing(shelf, line, "after_kg")
            left = min(1.0, after.mass_kg / before.mass_kg)
            found = [evolve(each, mass_kg=each.mass_kg * left) for each in found] + [after]
            if not after.proves:  # then nobody knows how much of it is left, and nothing earlier proves its loss
                found[0] = evolve(found[0], reading=after.reading)
    return found[0], tuple(found[1:])


def _weighing(shelf: Shelf, line: Line, field: str) -> Weighing:
    found = corrected(shelf, line.fact, line.entry.happened_at)
    return Weighing(line.entry.happened_at, line.id, getattr(found.fact, field), found.of("mass"))


def _loss(start_kg: float, now_kg: float) -> float:
    return (start_kg - now_kg) / start_kg
