"""Small charts in thin ink, drawn as SVG on the page itself: pH against hours, loss against days."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.fermenting import FermentationClock
from core.meat import ACID_PH
from core.quantities import COUNT, FRACTION, HOURS, LOSS, PH, Amount, show_number
from core.sentence import Message, Rounded, Said, Sentence, said
from core.units import DAY_S, HOUR_S
from web.visitor import reader

WIDTH, HEIGHT = 500, 290
LEFT, RIGHT, TOP, BOTTOM = 40, 64, 16, 38
LINE = 15


@frozen
class Mark:
    """A place on the drawing with the words that belong to it."""

    x: float
    y: float
    words: Said = ""


@frozen
class Trace:
    """ahead: not measured but forecast; drawn dashed and without dots."""

    name: Said
    marks: tuple[Mark, ...]

    @property
    def points(self) -> str:
        return " ".join(f"{mark.x:.1f},{mark.y:.1f}" for mark in self.marks)

    label_y: float
    """Where its name stands: beside its end, or moved down where another name is there already."""
    ahead: bool = False

    @property
    def end(self) -> Mark:
        return self.marks[-1]


@frozen
class Chart:
    """headline says what it shows; rows are the same data as a table. reached: where what it waits for came about."""

    headline: Said
    across: Message
    up: Message
    traces: tuple[Trace, ...]
    limit: Mark
    x_ticks: tuple[Mark, ...]
    y_ticks: tuple[Mark, ...]
    columns: tuple[Message, ...]
    rows: tuple[tuple[Said, ...], ...]
    reached: Mark | None = None
    fan: str = ""
    """A polygon: between which losses a forecast lies."""
    width, height, left, right, foot = WIDTH, HEIGHT, LEFT, WIDTH - RIGHT, HEIGHT - BOTTOM


Series = tuple[Said, Sequence[tuple[float, float]]]

READ, FORECAST = Sentence("read"), Sentence("forecast")


def acidity(batch: Batch, clocked: FermentationClock) -> Chart | None:
    """pH against hours of the batch's clock, and where it comes down to 5.3; None until there are two readings."""
    points = [
        ((each.at - clocked.start).total_seconds() / HOUR_S, each.ph) for each in batch.phs if each.ph is not None
    ]
    if len(points) < 2:
        return None
    fell = {
        "start": _number(points[0][1], 2),
        "end": _number(points[-1][1], 2),
        "time": _hours(points[-1][0] - points[0][0]),
    }
    headline = Sentence("pH {start} to {end} in {time}", fell)
    series: list[Series] = [(READ, points)]
    ahead = clocked.judged.projection
    if ahead is not None:
        series.append((FORECAST, [points[-1], (ahead.at_s / HOUR_S, ACID_PH)]))
        then = {"fall": headline, "time": _hours(ahead.at_s / HOUR_S), "acid": Amount(ACID_PH, PH)}
        headline = Sentence("{fall}; about {time} to {acid}", then)
    limit = (ACID_PH, Sentence("pH {acid}", {"acid": Amount(ACID_PH, PH)}))
    found = clocked.judged.crossing
    reached = None if found is None else (found.at_s / HOUR_S, ACID_PH, _hours(found.at_s / HOUR_S))
    return _chart(headline, "hours", "pH", series, limit, decimals=2, of="from", ahead=(FORECAST,), reached=reached)


def salt_at_centre(curves: Mapping[Message, Sequence[tuple[float, float]]], share: float, headline: Said) -> Chart:
    """Salt at the centre in per cent of its end against days, by each diffusivity."""
    series: list[Series] = [
        (said(name), [(at_s / DAY_S, 100 * part) for at_s, part in curve]) for name, curve in curves.items()
    ]
    limit = (100 * share, Sentence("{share} wanted", {"share": _per_cent(share)}))
    names = tuple(map(said, curves))
    return _chart(headline, "days", "salt, %", series, limit, decimals=0, of="salt moves", ahead=names)


@frozen
class Fan:
    """Of one piece: days hung, and the losses that it has reached by then with chances of 9, 5 and 1 in 10."""

    points: tuple[tuple[float, float, float, float], ...]
    words: Sentence


def losses(batch: Batch, fan: Fan | None = None) -> Chart | None:
    """Loss of each piece in per cent against days hung, and a forecast; None until something was weighed twice."""
    series: list[Series] = []
    for piece in batch.pieces:
        weighed = [
            ((each.at - piece.hung_at).total_seconds() / DAY_S, 100 * (piece.start_kg - each.mass_kg) / piece.start_kg)
            for each in piece.weighings
        ]
        if weighed:
            series.append((Sentence("{tag}", {"tag": piece.tag}), [(0.0, 0.0), *weighed]))
    if not series:
        return None
    low, high = (pick(points[-1][1] for _, points in series) for pick in (min, max))
    lost = {"low": _number(low, 1), "high": Rounded(Amount(high / 100, LOSS))}
    headline = Sentence("Lost {low} to {high} so far" if len(series) > 1 else "Lost {high} so far", lost)
    target = batch.start.target_loss
    limit = (100 * target, Sentence("{share} to reach", {"share": _per_cent(target)}))
    if fan is None:
        return _chart(headline, "days", "loss, %", series, limit, decimals=1, of="piece")
    headline = Sentence("{lost}; {ahead}", {"lost": headline, "ahead": fan.words})
    series.append((FORECAST, [(day, 100 * likely) for day, _, likely, _ in fan.points]))
    edge = [(day, 100 * least) for day, least, _, _ in fan.points]
    edge += [(day, 100 * most) for day, _, _, most in reversed(fan.points)]
    return _chart(headline, "days", "loss, %", series, limit, decimals=1, of="piece", ahead=(FORECAST,), fan=edge)


def _number(value: float, decimals: int) -> str:
    return show_number(value, decimals, reader())


def _hours(hours: float) -> Rounded:
    return Rounded(Amount(round(hours) * HOUR_S, HOURS))


def _per_cent(share: float) -> Rounded:
    return Rounded(Amount(share, FRACTION))


def _chart(
    headline: Said,
    across: Message,
    up: Message,
    series: list[Series],
    limit: tuple[float, Said],
    decimals: int,
    of: Message,
    ahead: tuple[Said, ...] = (),
    reached: tuple[float, float, Rounded] | None = None,
    fan: Sequence[tuple[float, float]] = (),
) -> Chart:
    """of: what the names of the series are names of. ahead: the names of what is forecast and not measured."""
    xs = [x for _, points in series for x, _ in points]
    ys = [y for _, points in series for _, y in points] + [limit[0]] + [y for _, y in fan]
    x_ticks, y_ticks = _ticks(min([0.0, *xs]), max(xs)), _ticks(min(ys), max(ys))
    x_low, x_high = min(x_ticks[0], *xs), max(x_ticks[-1], *xs)
    y_low, y_high = min(y_ticks[0], *ys), max(y_ticks[-1], *ys)

    def place(x: float, y: float, words: Said = "") -> Mark:
        return Mark(
            LEFT + (x - x_low) / (x_high - x_low) * (WIDTH - LEFT - RIGHT),
            HEIGHT - BOTTOM - (y - y_low) / (y_high - y_low) * (HEIGHT - TOP - BOTTOM),
            words,
        )

    return Chart(
        headline,
        across,
        up,
        _traces([(name, tuple(place(x, y) for x, y in points)) for name, points in series], ahead),
        place(x_low, limit[0], limit[1]),
        tuple(place(x, y_low, _tick(x)) for x in x_ticks),
        tuple(place(x_low, y, _tick(y)) for y in y_ticks),
        (of, across, up),
        tuple((name, _cell(x, 1), _cell(y, decimals)) for name, points in series for x, y in points),
        reached and place(reached[0], reached[1], Sentence("{time}", {"time": reached[2]})),
        " ".join(f"{mark.x:.1f},{mark.y:.1f}" for mark in (place(x, y) for x, y in fan)),
    )


def _tick(value: float) -> Sentence:
    return Sentence("{value}", {"value": Amount(value, COUNT)})


def _cell(value: float, decimals: int) -> Sentence:
    return Sentence("{value}", {"value": _number(value, decimals)})


def _traces(drawn: list[tuple[Said, tuple[Mark, ...]]], ahead: tuple[Said, ...]) -> tuple[Trace, ...]:
    """Names from the top down, each at least a line below the one before; too many to stand apart go unnamed."""
    named: list[Trace] = []
    lowest = 0.0
    for name, marks in sorted(drawn, key=lambda each: each[1][-1].y):
        lowest = max(marks[-1].y, lowest + LINE)
        named.append(Trace(name if lowest < HEIGHT - LINE else "", marks, lowest, name in ahead))
    return tuple(named)


def _ticks(low: float, high: float) -> list[float]:
    """Four or so round numbers that enclose the range."""
    span = max(high - low, 1e-6)
    step = next(size for size in _STEPS if span / size <= 5)
    first = step * (low // step)
    count = int((high - first) / step + 0.999999) + 1
    return [round(first + step * each, 6) for each in range(max(count, 2))]


_STEPS = [base * 10.0**power for power in range(-3, 7) for base in (1, 2, 5)]
