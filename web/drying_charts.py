"""A batch that hangs, drawn: what each piece lost, how fast, and under both the chamber's air on the same days."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from itertools import pairwise

from attrs import frozen

from core.daybook.air_logs import AirPoint
from core.daybook.batch import Batch
from core.daybook.piece import Piece
from core.dry.rate import LEAST_APART_S, loss_rate
from core.quantities import LOSS, LOSS_RATE, RELATIVE_HUMIDITY, TEMPERATURE, Amount, Quantity
from core.sentence import Message, Rounded, Sentence, Value
from core.units import DAY_S
from web.charts import FORECAST, Chart, Series, draw, number, per_cent
from web.visitor import reader

STRIP = 110
MOST_POINTS = 120
"""Of the air: a reading a quarter of a day for a month."""
LOGGED = Sentence("logged")
Course = Callable[[Piece], list[tuple[datetime, float]]]
TEMPERATURE_AXIS: dict[str, Message] = {"metric": "temperature, °C", "us": "temperature, °F"}


@frozen
class Fan:
    """Of one piece: days since its batch was hung, and the losses reached by then with chances of 9, 5 and 1 in 10."""

    points: tuple[tuple[float, float, float, float], ...]
    words: Sentence


def hung_at(batch: Batch) -> datetime:
    """Day 0: when the first of them was hung."""
    return min(piece.hung_at for piece in batch.pieces)


def losses(batch: Batch, fan: Fan | None = None) -> Chart | None:
    """Loss of each piece in per cent against days, and a forecast; None until something was weighed twice."""
    series = _of_pieces(batch, lambda piece: [(piece.hung_at, 0.0), *_losses(piece)])
    if not series:
        return None
    low, high = (pick(points[-1][1] for _, points in series) for pick in (min, max))
    lost: dict[str, Value] = {"low": number(low, 1), "high": Rounded(Amount(high / 100, LOSS))}
    headline = Sentence("Lost {low} to {high} so far" if len(series) > 1 else "Lost {high} so far", lost)
    target = batch.start.target_loss
    limit = (100 * target, Sentence("{share} to reach", {"share": per_cent(target)}))
    if fan is None:
        return draw(headline, "days", "loss, %", series, limit, decimals=1, of="piece")
    headline = Sentence("{lost}; {ahead}", {"lost": headline, "ahead": fan.words})
    series.append((FORECAST, [(day, 100 * likely) for day, _, likely, _ in fan.points]))
    edge = [(day, 100 * least) for day, least, _, _ in fan.points]
    edge += [(day, 100 * most) for day, _, _, most in reversed(fan.points)]
    return draw(headline, "days", "loss, %", series, limit, decimals=1, of="piece", ahead=(FORECAST,), fan=edge)


def rates(batch: Batch, reach: tuple[float, float]) -> Chart | None:
    """Loss a day between two weighings, at the middle of the time between them; None before there are two such."""
    series = _of_pieces(batch, _rates)
    if max((len(points) for _, points in series), default=0) < 2:
        return None
    last = [points[-1][1] for _, points in series]
    lost: dict[str, Value] = {"low": number(min(last), 2), "high": Rounded(Amount(max(last) / 100 / DAY_S, LOSS_RATE))}
    headline = Sentence("Losing {low} to {high}" if len(series) > 1 else "Losing {high}", lost)
    return draw(headline, "days", "loss a day, %", series, None, decimals=2, of="piece", reach=reach)


def humidity(batch: Batch, course: Sequence[AirPoint], reach: tuple[float, float]) -> Chart | None:
    """What loggers wrote; None where there is nothing."""
    start = hung_at(batch)
    humid = [(_days(each.at, start), each.humidity) for each in course if each.humidity is not None]
    words: Message = "Humidity {low} to {high}"
    return _strip(words, "humidity, %", humid, RELATIVE_HUMIDITY, lambda value: 100 * value, reach)


def temperature(batch: Batch, course: Sequence[AirPoint], reach: tuple[float, float]) -> Chart | None:
    """The same."""
    start, system = hung_at(batch), reader().system
    warm = [(_days(each.at, start), each.temperature_c) for each in course]
    shown, words = TEMPERATURE.bare(system).from_si, "Temperature {low} to {high}"
    return _strip(words, TEMPERATURE_AXIS[system], warm, TEMPERATURE, shown, reach)


def _strip(
    words: Message,
    up: Message,
    points: Sequence[tuple[float, float]],
    quantity: Quantity,
    shown: Callable[[float], float],
    reach: tuple[float, float],
) -> Chart | None:
    """Low, to stand under another chart."""
    if len(points) < 2:
        return None
    low, high = (pick(value for _, value in points) for pick in (min, max))
    headline = Sentence(words, {"low": Rounded(Amount(low, quantity)), "high": Rounded(Amount(high, quantity))})
    series: list[Series] = [(LOGGED, [(day, shown(value)) for day, value in points])]
    return draw(headline, "days", up, series, None, 1, "air", reach=reach, height=STRIP, has_dots=False)


def _of_pieces(batch: Batch, points: Course) -> list[Series]:
    """A line for each piece that was weighed since it was hung."""
    if not batch.pieces:
        return []
    start = hung_at(batch)
    return [
        (Sentence("{tag}", {"tag": piece.tag}), [(_days(at, start), value) for at, value in points(piece)])
        for piece in batch.pieces
        if piece.weighings and points(piece)
    ]


def _losses(piece: Piece) -> list[tuple[datetime, float]]:
    return [(each.at, 100 * (piece.start_kg - each.mass_kg) / piece.start_kg) for each in piece.weighings]


def _rates(piece: Piece) -> list[tuple[datetime, float]]:
    weighed = [(piece.hung_at, piece.start_kg), *((each.at, each.mass_kg) for each in piece.weighings)]
    return [
        (at + (then - at) / 2, 100 * DAY_S * loss_rate(piece.start_kg, mass_kg, later_kg, (then - at).total_seconds()))
        for (at, mass_kg), (then, later_kg) in pairwise(weighed)
        if (then - at).total_seconds() >= LEAST_APART_S
    ]


def _days(at: datetime, start: datetime) -> float:
    return (at - start).total_seconds() / DAY_S
