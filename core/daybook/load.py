"""What hangs, how much water it gives off by its own weighings, and whether the chamber can take that out."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Literal

from attrs import frozen

from core.chamber.capacity import capacity_as_rated, capacity_from_basin, carries
from core.chamber.moisture import FASTEST, FIRST_DAYS
from core.chamber.rates import MOISTURE, WATER_A_DAY
from core.daybook.batch import Batch
from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER, CapacityStated
from core.daybook.piece import Piece
from core.daybook.water import basin, most_drained
from core.densities import ROUGH_WATER_KG_PER_M3
from core.dry.rate import LEAST_APART_S, loss_rate
from core.quantities import MASS, Amount
from core.sentence import Message, Sentence
from core.units import DAY_S
from core.working import Figure

YOUNG = timedelta(days=4)
USUAL_LATER = 0.01 / DAY_S
"""Loss of a piece that was never weighed, once its first days are over (from memory, no published figure found)."""


@frozen
class Hanging:
    """mass_kg: now. water_kg_s: what all of it gives off. weighed: how many pieces tell it by their own weighings."""

    pieces: int
    mass_kg: float
    water_kg_s: float
    weighed: int

    @property
    def loss_per_s(self) -> float:
        """Of what hangs now: by so much the water is known of any weight of it. A piece's own loss is of its start."""
        return self.water_kg_s / self.mass_kg


def hanging(batches: Iterable[Batch], now: datetime) -> Hanging | None:
    """All that hangs in the open batches; None where nothing does."""
    pieces = [piece for batch in batches for piece in batch.hanging]
    if not pieces:
        return None
    measured = [_measured(piece) for piece in pieces]
    water = [
        piece.mass_kg * _usual(piece, now) if rate is None else piece.start_kg * rate
        for piece, rate in zip(pieces, measured, strict=True)
    ]
    weighed = sum(rate is not None for rate in measured)
    return Hanging(len(pieces), sum(piece.mass_kg for piece in pieces), sum(water), weighed)


def _measured(piece: Piece) -> float | None:
    """Its loss a second between its last two weighings; that it was hung counts as the first."""
    weights = [(piece.hung_at, piece.start_kg), *((each.at, each.mass_kg) for each in piece.weighings)]
    last_at, last_kg = weights[-1]
    earlier = [each for each in weights if (last_at - each[0]).total_seconds() >= LEAST_APART_S]
    if not earlier:
        return None
    at, mass_kg = earlier[-1]
    rate = loss_rate(piece.start_kg, mass_kg, last_kg, (last_at - at).total_seconds())
    return min(max(rate, 0.0), FASTEST)


def _usual(piece: Piece, now: datetime) -> float:
    return FIRST_DAYS if now - piece.hung_at < YOUNG else USUAL_LATER


@frozen
class Capacity:
    figure: Figure
    from_basin: bool


def capacity(book: Book) -> Capacity | None:
    """The most the basin has shown or what is stated, whichever is more: a basin shows only what was asked of it."""
    stated = stated_capacity(book)
    known: list[Capacity] = []
    if stated is not None and stated.rated_m3_s is not None:
        known.append(Capacity(capacity_as_rated(stated.rated_m3_s), False))
    drained = most_drained(basin(book).emptied)
    if drained is not None:
        known.append(Capacity(capacity_from_basin(*drained), True))
    return max(known, key=lambda each: each.figure.value, default=None)


def stated_capacity(book: Book) -> CapacityStated | None:
    line = book.latest(CHAMBER, CapacityStated)
    return line.fact if line is not None and isinstance(line.fact, CapacityStated) else None


Word = Literal["carries it", "near its limit", "overloaded", "more than it has shown", "not known"]


@frozen
class Burden:
    """Whether the chamber takes out what the meat gives off, in a word, with the reason."""

    word: Word
    why: Sentence
    figures: tuple[Figure, ...] = ()

    @property
    def most(self) -> Figure | None:
        """The meat that the chamber carries at this loss; None where that is not known."""
        return next((each for each in self.figures if each.key == "carries"), None)


GIVES_OFF: Message = "{meat} give off {water}; the chamber takes out {out} ({litres}). It carries {carries}."
MOISTER: Message = (
    "{meat} give off {water}; the chamber takes out {out} ({litres}), and the air is moister than set. It carries "
    "{carries}."
)


def burden(
    mass_kg: float, loss_per_s: float, known: Capacity | None, moister: bool | None, peak_per_s: float | None = None
) -> Burden:
    """mass_kg: above 0, below 1000. loss_per_s: above 0, up to 10 % a day. moister: whether the air lies above its
    set-point, None where that is not known. Raises OutOfRange.

    A basin shows the least that the coil can do: to give off more than that is overload only where the humidity climbs.
    """
    if known is None:
        return Burden("not known", Sentence("Log the basin twice, or say what is stated for the chamber."))
    figures = carries(known.figure, loss_per_s, mass_kg, peak_per_s)
    share = figures[-1].value
    amounts = {
        "meat": Amount(mass_kg, MASS),
        "water": Amount(mass_kg * loss_per_s, MOISTURE),
        "out": Amount(known.figure.value * ROUGH_WATER_KG_PER_M3, MOISTURE),
        "carries": figures[1].amount,
        "litres": Amount(known.figure.value, WATER_A_DAY),
    }
    if share > 1 + 1e-9 and known.from_basin and not moister:
        why: Message = (
            "{meat} give off {water}; the basin has shown {out} so far. Watch that the humidity does not climb."
        )
        return Burden("more than it has shown", Sentence(why, amounts), figures)
    if share > 1 + 1e-9:
        return Burden("overloaded", Sentence(MOISTER if moister else GIVES_OFF, amounts), figures)
    word: Word = "near its limit" if share > 0.8 else "carries it"
    return Burden(word, Sentence(GIVES_OFF, amounts), figures)
