"""Small charts in thin ink, drawn as SVG on the page itself: pH against hours, loss against days."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.fermenting import FermentationClock
from core.meat import ACID_PH
from core.units import DAY_S, HOUR_S

WIDTH, HEIGHT = 640, 240
LEFT, RIGHT, TOP, BOTTOM = 52, 84, 16, 36
LINE = 15


@frozen
class Mark:
    """A place on the drawing with the words that belong to it."""

    x: float
    y: float
    words: str = ""


@frozen
class Trace:
    """ahead: not measured but reckoned; drawn dashed and without dots."""

    name: str
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
    """headline says what it shows; rows are the same data as a table."""

    headline: str
    across: str
    up: str
    traces: tuple[Trace, ...]
    limit: Mark
    x_ticks: tuple[Mark, ...]
    y_ticks: tuple[Mark, ...]
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


Series = tuple[str, Sequence[tuple[float, float]]]


def acidity(batch: Batch, clocked: FermentationClock) -> Chart | None:
    """pH against hours of the batch's clock, and where it comes down to 5.3; None until there are two readings."""
    points = [
        ((each.at - clocked.start).total_seconds() / HOUR_S, each.ph) for each in batch.phs if each.ph is not None
    ]
    if len(points) < 2:
        return None
    headline = f"pH {points[0][1]:.2f} to {points[-1][1]:.2f} in {points[-1][0] - points[0][0]:.0f} h"
    series: list[Series] = [("read", points)]
    ahead = clocked.judged.projection
    if ahead is not None:
        series.append(("reckoned", [points[-1], (ahead.at_s / HOUR_S, ACID_PH)]))
        headline += f"; about {ahead.at_s / 3600:.0f} h to {ACID_PH}"
    limit = (ACID_PH, f"pH {ACID_PH}")
    return _chart(headline, "hours", "pH", series, limit, decimals=2, of="from", ahead=("reckoned",))


def salt_at_centre(curves: Mapping[str, Sequence[tuple[float, float]]], share: float, headline: str) -> Chart:
    """Salt at the centre in per cent of its end against days, by each diffusivity."""
    series: list[Series] = [
        (name, [(at_s / DAY_S, 100 * part) for at_s, part in curve]) for name, curve in curves.items()
    ]
    limit = (100 * share, f"{100 * share:.0f} % wanted")
    return _chart(headline, "days", "salt, %", series, limit, decimals=0, of="salt moves", ahead=tuple(curves))


def losses(batch: Batch) -> Chart | None:
    """Loss of each piece in per cent against days hung; None until something was weighed twice."""
    series: list[Series] = []
    for piece in batch.pieces:
        weighed = [
            ((each.at - piece.hung_at).total_seconds() / DAY_S, 100 * (piece.start_kg - each.mass_kg) / piece.start_kg)
            for each in piece.weighings
        ]
        if weighed:
            series.append((piece.tag, [(0.0, 0.0), *weighed]))
    if not series:
        return None
    low, high = (pick(points[-1][1] for _, points in series) for pick in (min, max))
    headline = f"Lost {low:.1f} to {high:.1f} % so far" if len(series) > 1 else f"Lost {high:.1f} % so far"
    target = 100 * batch.start.target_loss
    return _chart(headline, "days", "loss, %", series, (target, f"{target:.0f} % to reach"), decimals=1)


def _chart(
    headline: str,
    across: str,
    up: str,
    series: list[Series],
    limit: tuple[float, str],
    decimals: int,
    of: str = "piece",
    ahead: tuple[str, ...] = (),
) -> Chart:
    """of: what the names of the series are names of. ahead: the names of what is reckoned and not measured."""
    xs = [x for _, points in series for x, _ in points]
    ys = [y for _, points in series for _, y in points] + [limit[0]]
    x_ticks, y_ticks = _ticks(min([0.0, *xs]), max(xs)), _ticks(min(ys), max(ys))
    x_low, x_high = min(x_ticks[0], *xs), max(x_ticks[-1], *xs)
    y_low, y_high = min(y_ticks[0], *ys), max(y_ticks[-1], *ys)

    def place(x: float, y: float, words: str = "") -> Mark:
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
        tuple(place(x, y_low, f"{x:g}") for x in x_ticks),
        tuple(place(x_low, y, f"{y:g}") for y in y_ticks),
        (of, across, up) if series[0][0] else (across, up),
        tuple(
            (*((name,) if name else ()), f"{x:.1f}", f"{y:.{decimals}f}") for name, points in series for x, y in points
        ),
    )


def _traces(drawn: list[tuple[str, tuple[Mark, ...]]], ahead: tuple[str, ...]) -> tuple[Trace, ...]:
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
