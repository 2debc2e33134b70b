"""A batch's drying curves: what the weighings tell of how fast each piece dries, and toward which end.

A curve has a shape (`core.dry.shapes`), an end, which is the loss in balance with the air, and a half-time. Shape and
end are the batch's; each piece has a half-time of its own, lent strength by the others. None of them is settled on:
every shape with every end is a case, and weighs by how well it meets the weighings and by how many numbers it takes to
do so (Akaike's criterion for small samples). No curve holds for ever: a weighing far back tells less of what lies
ahead, and a forecast is the wider the further it leaps.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence

from attrs import define, evolve, field, frozen

from core.dry.activity import Mix
from core.dry.pace import MIDDLING, UNKNOWN_AIR, Air, Known, end_in, equal_times, humidity_of
from core.dry.shapes import LOG_LEAST, PLACES, STEP, Shape, shapes
from core.meat import MOST_LOSS
from core.units import DAY_S

# These were set on simulated pieces and then looked at on others; none of them is published.
WANDERS, WANDERS_UNKNOWN = 0.05, 0.12
"""By how much a half-time strays, in its logarithm, while the time grows e-fold; and where nobody noted the air."""
UNEVEN = 0.02
"""What place, string and hand add to a single weighing, in the logarithm of its time."""
APART = 0.20
"""Of the half-times of a batch's pieces, in their logarithm."""
ALIKE = 0.25
"""Pieces err alike where the shape is wrong: n of them prove as much as n to this power."""
FIRST_HALF, FIRST_SPREAD = math.log(14 * DAY_S), 0.9
END_SPREAD, END_SPREAD_UNKNOWN = 0.05, 0.10
DOUBT = 0.3
"""How much of the odds of the shapes stays as it was, whatever an earlier batch found."""
END_STEP, ENDS_WITHIN = 0.03, 1.9
"""Ends are tried so far apart, as losses, and to so many spreads either way."""
FEWEST = 4
"""Weighings beyond those that a curve takes: with fewer the criterion would only ever take the simplest."""
HOPELESS, NEGLIGIBLE = 14.0, 7.0
"""By so much in its logarithm, at the end a thousandth."""
LEAST_END = 0.08
LEAST_ERROR = 0.0005
"""Of the start weight."""


@frozen
class Hung:
    """A piece. weighings: seconds since the batch was hung, and kilograms, in any order. scale_kg: what a weighing may
    be off, two times in three. hung_s: when this piece was hung, where that was later than the batch."""

    start_kg: float
    weighings: tuple[tuple[float, float], ...] = ()
    scale_kg: float = 0.001
    hung_s: float = 0.0

    @property
    def known(self) -> tuple[Known, ...]:
        later = (each for each in sorted(self.weighings) if each[0] > self.hung_s)
        return tuple(Known(at_s, 1 - mass_kg / self.start_kg) for at_s, mass_kg in later)

    @property
    def error(self) -> float:
        """Of a loss: the scale read the start weight too."""
        return max(math.sqrt(2) * self.scale_kg / self.start_kg, LEAST_ERROR)


@frozen
class Lent:
    """What earlier batches lend. log_half: of the half-time in seconds, in the air of this batch. end_off: by how much
    a batch ended off `end_in`. shapes: how well each did, by its key."""

    log_half: float = FIRST_HALF
    spread: float = FIRST_SPREAD
    end_off: float = 0.0
    end_spread: float = END_SPREAD
    shapes: tuple[tuple[str, float], ...] = ()


NOTHING_LENT = Lent()


@frozen
class Case:
    """One shape with one end. halves: of each piece, the logarithm of its half-time and its spread."""

    shape: Shape
    end: float
    weight: float
    half: float
    half_spread: float
    halves: tuple[tuple[float, float], ...]


@frozen(eq=False)
class Fit:
    """air: by time; half-times are counted in the last. passed: of each piece, the time in that air until its last
    weighing, 0 before the first. wanders: as WANDERS, of this air."""

    pieces: tuple[Hung, ...]
    air: tuple[Air, ...]
    mix: Mix
    cases: tuple[Case, ...]
    passed: tuple[float, ...]
    wanders: float

    def last_known(self, piece: int) -> Known:
        """Its last weighing; that it was hung, before the first."""
        hung = self.pieces[piece]
        return hung.known[-1] if hung.known else Known(hung.hung_s, 0.0)


@define
class _Begun:
    """A case on its way: odds and how well it met the weighings, both as logarithms; each piece's own half-time and its
    variance."""

    shape: Shape
    end: float
    odds: float
    met: float = 0.0
    halves: dict[int, tuple[float, float]] = field(factory=dict[int, tuple[float, float]])

    def standing(self, pieces: int) -> float:
        return self.odds + self.met / pieces**ALIKE


@frozen
class _Seen:
    """A piece's weighings as logarithms, by time: of its loss, of the time, and the loss's relative error."""

    losses: tuple[float, ...]
    times: tuple[float, ...]
    errors: tuple[float, ...]


def fit(pieces: Sequence[Hung], air: Sequence[Air] = (), lent: Lent = NOTHING_LENT, mix: Mix = MIDDLING) -> Fit:
    """pieces: hung at one time. air: by time, with the changes that are planned; empty where none is known. Any order
    of the weighings gives the same."""
    told = tuple(air) or (UNKNOWN_AIR,)
    passed = [equal_times(told, piece.known, mix, piece.hung_s) for piece in pieces]
    seen = [_seen(piece, times) for piece, times in zip(pieces, passed, strict=True)]
    count = sum(len(each.times) for each in seen)
    middle = end_in(told[-1], mix) + lent.end_off
    spread = lent.end_spread if air else math.hypot(lent.end_spread, END_SPREAD_UNKNOWN)
    wanders = WANDERS if air else WANDERS_UNKNOWN
    begun = [
        _Begun(shape, end, odds - ((end - middle) / spread) ** 2 / 2)
        for shape, odds in _with_odds(shapes(humidity_of(told[-1]), mix), dict(lent.shapes), count)
        for end in _ends(middle, spread)
    ]
    found = [_shared(each, lent) for each in _met(begun, seen, wanders)]
    until_now = tuple(times[-1] if times else 0.0 for times in passed)
    return Fit(tuple(pieces), told, mix, _weighed_up(found), until_now, wanders)


def _met(begun: list[_Begun], seen: Sequence[_Seen], wanders: float) -> list[_Begun]:
    """Every case held against every piece, those with the most weighings first; a case that has fallen hopelessly
    behind is not held against the rest."""
    order = sorted(range(len(seen)), key=lambda piece: (-len(seen[piece].times), seen[piece].losses))
    for turn, piece in enumerate(order, 1):
        for case in begun:
            half, variance, chance = _half_time(case.shape, math.log(case.end), seen[piece], wanders)
            case.halves[piece] = half, variance
            case.met += chance
        most = max(case.standing(turn) for case in begun)
        begun = [case for case in begun if case.standing(turn) > most - HOPELESS]
    return begun


def _ends(middle: float, spread: float) -> list[float]:
    steps = math.ceil(ENDS_WITHIN * spread / END_STEP)
    tried = (middle + place * END_STEP for place in range(-steps, steps + 1))
    return [end for end in tried if LEAST_END < end < MOST_LOSS]


def _with_odds(known: Sequence[Shape], did: Mapping[str, float], count: int) -> list[tuple[Shape, float]]:
    """With the logarithm of its odds: its family's, shared by its members, less what the criterion takes."""
    families = defaultdict[str, int](int)
    for shape in known:
        families[shape.family] += 1
    odds = {
        shape.key: shape.odds / families[shape.family] * math.exp(-_criterion(shape.fitted, count)) for shape in known
    }
    whole = sum(odds.values())
    doubt = DOUBT if did else 1.0
    return [
        (shape, math.log(doubt * odds[shape.key] / whole + (1 - doubt) * did.get(shape.key, 0.0) + 1e-9))
        for shape in known
    ]


def _criterion(fitted: int, count: int) -> float:
    """Half of Akaike's for small samples, less that of the simplest; no criterion tells with a weighing or none."""
    return sum(sign * (k + k * (k + 1) / max(count - k - 1, FEWEST)) for sign, k in ((1, fitted), (-1, 2)))


def _seen(piece: Hung, times: Sequence[float]) -> _Seen:
    losses = [max(each.loss, piece.error) for each in piece.known]
    return _Seen(
        tuple(map(math.log, losses)), tuple(map(math.log, times)), tuple(piece.error / loss for loss in losses)
    )


def _half_time(shape: Shape, log_end: float, seen: _Seen, wanders: float) -> tuple[float, float, float]:
    """Of one piece by its own weighings: the logarithm of its half-time, its variance, and how well they agree."""
    if not seen.times:
        return 0.0, math.inf, 0.0
    table, top, first = shape.times, PLACES - 2, log_end + LOG_LEAST
    chance = 0.0
    read: list[tuple[float, float, float]] = []
    for log_loss, log_time, error in zip(seen.losses, seen.times, seen.errors, strict=True):
        place = (log_loss - first) / STEP
        if place < 0:
            place = 0.0
        elif place > top:  # it has lost more than this end allows
            chance -= ((place - top) * STEP / (error + 0.01)) ** 2 / 2
            place = top
        low = int(place)
        steep = (table[low + 1] - table[low]) / STEP
        read.append((table[low] + (place - low) * steep * STEP, log_time, steep * error))
        chance += math.log(steep)
    last = max(read)[0]
    whole = sum_of = squares = 0.0
    for at, log_time, error in read:
        variance = error * error + (wanders * (last - at)) ** 2 + UNEVEN * UNEVEN
        weight, half = 1 / variance, log_time - at
        whole += weight
        sum_of += weight * half
        squares += weight * half * half
        chance += math.log(weight) / 2
    return sum_of / whole, 1 / whole, chance - (squares - sum_of * sum_of / whole) / 2


def _shared(begun: _Begun, lent: Lent) -> Case:
    """The batch's half-time from its pieces', and each piece's own drawn toward it."""
    apart, first = APART**2, lent.spread**-2
    own = [begun.halves[piece] for piece in range(len(begun.halves))]
    weights = [1 / (variance + apart) for _, variance in own]
    whole = first + sum(weights)
    half = (first * lent.log_half + sum(w * each for w, (each, _) in zip(weights, own, strict=True))) / whole
    squares = first * (half - lent.log_half) ** 2
    squares += sum(w * (each - half) ** 2 for w, (each, _) in zip(weights, own, strict=True))
    met = begun.met + (math.log(first / whole) + sum(math.log(w) for w in weights if w) - squares) / 2
    pieces = sum(weight > 0 for weight in weights)
    others = 1 / (apart + 1 / whole)
    halves: list[tuple[float, float]] = []
    for each, variance in own:
        both = others + 1 / variance
        halves.append(((others * half + each / variance) / both, math.sqrt(1 / both)))
    weight = begun.odds + met / max(pieces, 1) ** ALIKE
    return Case(begun.shape, begun.end, weight, half, math.sqrt(1 / whole), tuple(halves))


def _weighed_up(found: Sequence[Case]) -> tuple[Case, ...]:
    """From logarithms to weights that add to one, without those that hardly count."""
    most = max(case.weight for case in found)
    kept = [evolve(case, weight=math.exp(case.weight - most)) for case in found if case.weight > most - NEGLIGIBLE]
    whole = sum(case.weight for case in kept)
    return tuple(evolve(case, weight=case.weight / whole) for case in kept)
