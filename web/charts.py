"""Small charts in thin ink, drawn as SVG on the page itself: pH against hours, salt against days."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.fermenting import FermentationClock
from core.meat import ACID_PH
from core.quantities import COUNT, FRACTION, HOURS, PH, Amount, show_number
from core.sentence import Message, Rounded, Said, Sentence, said
from core.units import DAY_S, HOUR_S
from web.visitor import reader

WIDTH, HEIGHT = 500, 282
LEFT, RIGHT, TOP, BOTTOM = 40, 64, 16, 38
LINE = 15
MOST_TICKS, FEW_TICKS = 5, 2


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
    limit: Mark | None
    x_ticks: tuple[Mark, ...]
    y_ticks: tuple[Mark, ...]
    columns: tuple[Message, ...]
    rows: tuple[tuple[Said, ...], ...]
    reached: Mark | None = None
    fan: str = ""
    """A polygon: between which losses a forecast lies."""
    reach: tuple[float, float] = (0.0, 0.0)
    """From where to where the axis across goes, for another chart on the same one."""
    height: float = HEIGHT
    has_dots: bool = True
    width, left, right = WIDTH, LEFT, WIDTH - RIGHT

    @property
    def foot(self) -> float:
        return self.height - BOTTOM


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
        "start": number(points[0][1], 2),
        "end": number(points[-1][1], 2),
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
    return draw(headline, "hours", "pH", series, limit, decimals=2, of="from", ahead=(FORECAST,), reached=reached)


def salt_at_centre(curves: Mapping[Message, Sequence[tuple[float, float]]], share: float, headline: Said) -> Chart:
    """Salt at the centre in per cent of its end against days, by each diffusivity."""
    series: list[Series] = [
        (said(name), [(at_s / DAY_S, 100 * part) for at_s, part in curve]) for name, curve in curves.items()
    ]
    limit = (100 * share, Sentence("{share} wanted", {"share": per_cent(share)}))
    names = tuple(map(said, curves))
    return draw(headline, "days", "salt, %", series, limit, decimals=0, of="salt moves", ahead=names)


def number(value: float, decimals: int) -> str:
    return show_number(value, decimals, reader())


def _hours(hours: float) -> Rounded:
    return Rounded(Amount(round(hours) * HOUR_S, HOURS))


def per_cent(share: float) -> Rounded:
    return Rounded(Amount(share, FRACTION))


def draw(
    headline: Said,
    across: Message,
    up: Message,
    series: list[Series],
    limit: tuple[float, Said] | None,
    decimals: int,
    of: Message,
    ahead: tuple[Said, ...] = (),
    reached: tuple[float, float, Rounded] | None = None,
    fan: Sequence[tuple[float, float]] = (),
    reach: tuple[float, float] | None = None,
    height: float = HEIGHT,
    has_dots: bool = True,
) -> Chart:
    """of: what the names of the series are names of. ahead: the names of what is forecast and not measured.

    reach: that of the chart above it, where both have one axis.
    """
    xs = [*(reach or ()), *(x for _, points in series for x, _ in points)]
    ys = [y for _, points in series for _, y in points] + ([limit[0]] if limit else []) + [y for _, y in fan]
    x_ticks, y_ticks = (
        _ticks(min([0.0, *xs]), max(xs)),
        _ticks(min(ys), max(ys), MOST_TICKS if height == HEIGHT else FEW_TICKS),
    )
    x_low, x_high = min(x_ticks[0], *xs), max(x_ticks[-1], *xs)
    y_low, y_high = min(y_ticks[0], *ys), max(y_ticks[-1], *ys)

    def place(x: float, y: float, words: Said = "") -> Mark:
        return Mark(
            LEFT + (x - x_low) / (x_high - x_low) * (WIDTH - LEFT - RIGHT),
            height - BOTTOM - (y - y_low) / (y_high - y_low) * (height - TOP - BOTTOM),
            words,
        )

    return Chart(
        headline,
        across,
        up,
        _traces([(name, tuple(place(x, y) for x, y in points)) for name, points in series], ahead, height),
        limit and place(x_low, limit[0], limit[1]),
        tuple(place(x, y_low, _tick(x)) for x in x_ticks),
        tuple(place(x_low, y, _tick(y)) for y in y_ticks),
        (of, across, up),
        tuple((name, _cell(x, 1), _cell(y, decimals)) for name, points in series for x, y in points),
        reached and place(reached[0], reached[1], Sentence("{time}", {"time": reached[2]})),
        " ".join(f"{mark.x:.1f},{mark.y:.1f}" for mark in (place(x, y) for x, y in fan)),
        (x_low, x_high),
        height,
        has_dots,
    )


def _tick(value: float) -> Sentence:
    return Sentence("{value}", {"value": Amount(value, COUNT)})


def _cell(value: float, decimals: int) -> Sentence:
    return Sentence("{value}", {"value": number(value, decimals)})


def _traces(drawn: list[tuple[Said, tuple[Mark, ...]]], ahead: tuple[Said, ...], height: float) -> tuple[Trace, ...]:
    """Names from the top down, each at least a line below the one before; too many to stand apart go unnamed."""
    named: list[Trace] = []
    lowest = {True: 0.0, False: 0.0}
    for name, marks in sorted(drawn, key=lambda each: each[1][-1].y):
        is_ahead = name in ahead  # it ends further to the right
        lowest[is_ahead] = at = max(marks[-1].y, lowest[is_ahead] + LINE)
        named.append(Trace(name if at < height - LINE else "", marks, at, is_ahead))
    return tuple(named)


def _ticks(low: float, high: float, most: int = MOST_TICKS) -> list[float]:
    """A few round numbers that enclose the range."""
    span = max(high - low, 1e-6)
    step = next(size for size in _STEPS if span / size <= most)
    first = step * (low // step)
    count = int((high - first) / step + 0.999999) + 1
    return [round(first + step * each, 6) for each in range(max(count, 2))]


_STEPS = [base * 10.0**power for power in range(-3, 7) for base in (1, 2, 5)]
