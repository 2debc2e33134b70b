"""What is to come of the pieces that hang: asked for once its page stands, for the curves take longer than a page may.

A forecast is of weight only, and says so wherever it stands.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from attrs import frozen
from flask import Blueprint, render_template

from core.daybook.ahead import Ahead, ahead
from core.daybook.air_logs import air_course
from core.daybook.batch import Batch
from core.daybook.drying import Drying, drying_of
from core.daybook.drying_bounds import drying_bounds
from core.daybook.piece import Piece
from core.dry.forecast import loss_by
from core.dry.haste import Judged, judge
from core.dry.next_weighing import has_slowed, next_weighing
from core.dry.outlook import outlook
from core.dry.rate import latest_rate
from core.quantities import LOSS, Amount
from core.sentence import Rounded, Sentence, Value, day_and_month
from core.units import DAY_S
from web import drying_charts as charts
from web.journal import book
from web.lookup import find_batch, find_piece
from web.visitor import now

screen = Blueprint("ahead", __name__)

FAN_POINTS = 8
LEAST_AHEAD_S, MOST_AHEAD_S = 7 * DAY_S, 60 * DAY_S
"""So far the fan reaches from the last weighing, whatever the day."""


@frozen
class Row:
    """One piece: the most likely day, and between which days in 8 of 10 cases; None where none can be named.

    weighed_at: of one that has lost its target, when the scale last said so.
    """

    tag: str
    likely: datetime | None
    earliest: datetime | None
    latest: datetime | None
    weighed_at: datetime | None


@screen.get("/batches/<batch_id>/ahead")
def of_batch(batch_id: str):
    """The chart of its losses with what is to come, and each piece's days."""
    batch = find_batch(batch_id)
    found = ahead(book(), batch)
    words = expected(found)
    middle = _middle(found)
    fan = None if middle is None or words is None else charts.Fan(_fan(batch, middle), words)
    chart = charts.losses(batch, fan)
    course = air_course(book(), charts.hung_at(batch), now(), charts.MOST_POINTS) if chart else ()
    return render_template(
        "dry/ahead.html",
        chart=chart,
        humidity=charts.humidity(batch, course, chart.reach) if chart else None,
        temperature=charts.temperature(batch, course, chart.reach) if chart else None,
        rates=charts.rates(batch, chart.reach) if chart else None,
        rows=[_row(each) for each in found],
        says=() if middle is None else outlook(middle.forecast, middle.hung_at)[1:],
        hasty=list(_hasty(batch)),
    )


@screen.get("/pieces/<piece_id>/ahead")
def of_piece(piece_id: str):
    """Its day, how far to believe it, whether it dries too fast, when to weigh it next."""
    batch, piece = find_piece(piece_id)
    found = next((each for each in ahead(book(), batch) if each.piece.id == piece.id), None)
    if found is None:
        return render_template("dry/piece_ahead.html", says=())
    drying = _drying(batch)
    at = drying.place(piece.id)
    slowed = has_slowed(drying.fit, at)
    judged, weigh = _judged(drying, piece, slowed), next_weighing(drying.fit, at, drying.target)
    hasty = judged.says if judged else ()
    return render_template(
        "dry/piece_ahead.html",
        says=(*outlook(found.forecast, found.hung_at, slowed), weigh.says, *hasty[-1:]),
        hasty=hasty[:-1],
        weigh_at=max(now(), found.hung_at + timedelta(seconds=weigh.at_s)),
    )


def expected(found: Iterable[Ahead]) -> Sentence | None:
    """From the first piece's most likely day to the last one's; None where no piece is forecast."""
    known = [each for each in found if not each.forecast.is_there]
    if not known:
        return None
    target: dict[str, Value] = {"target": Rounded(Amount(known[0].forecast.target, LOSS))}
    likely = sorted(each.likely for each in known if each.likely is not None)
    if not likely:
        return Sentence("no day can be named for {target}", target)
    first, last = _short(likely[0]), _short(likely[-1])
    if likely[0].date() == likely[-1].date():
        return Sentence("{target} about {first}, by weight", {**target, "first": first})
    return Sentence("{target} about {first} to {last}, by weight", {**target, "first": first, "last": last})


def _short(at: datetime) -> Value:
    """ "3 Jan"; with its year where that is another."""
    return day_and_month(at) if at.year == now().year else at.date()


def _row(each: Ahead) -> Row:
    forecast = each.forecast
    weighed_at = each.piece.weighed_at if forecast.is_there else None
    return Row(each.piece.tag, each.likely, each.day(forecast.earliest_s), each.day(forecast.latest_s), weighed_at)


def _middle(found: Iterable[Ahead]) -> Ahead | None:
    """The piece of those not yet there that lost as much as half of them; only one that was weighed shows a course."""
    known = sorted(
        (each for each in found if each.forecast.lost is not None and not each.forecast.is_there),
        key=lambda each: each.forecast.lost or 0.0,
    )
    return known[len(known) // 2] if known else None


def _fan(batch: Batch, middle: Ahead) -> tuple[tuple[float, float, float, float], ...]:
    """Day since the batch was hung, least, likely and most loss by then, from its last weighing on."""
    fit, forecast = _drying(batch).fit, middle.forecast
    at = _drying(batch).place(middle.piece.id)
    off_s = (charts.hung_at(batch) - middle.hung_at).total_seconds()
    until_s = forecast.latest_s or forecast.weighed_s + MOST_AHEAD_S
    span_s = min(max(until_s - forecast.weighed_s, LEAST_AHEAD_S), MOST_AHEAD_S)
    lost = forecast.lost or 0.0
    points = [((forecast.weighed_s - off_s) / DAY_S, lost, lost, lost)]
    for step in range(1, FAN_POINTS + 1):
        at_s = forecast.weighed_s + span_s * step / FAN_POINTS
        least, likely, most = (max(lost, loss_by(fit, at, at_s, share)) for share in (0.1, 0.5, 0.9))
        points.append(((at_s - off_s) / DAY_S, least, likely, most))
    return tuple(points)


def _hasty(batch: Batch) -> Iterable[tuple[str, Judged]]:
    """The piece that dries too fast and the one that dries slowly, the first of each by its tag; what is there by
    weight is not hurried any more."""
    drying = drying_of(book(), batch)
    hanging = [] if drying is None else [each.piece for each in ahead(book(), batch) if not each.forecast.is_there]
    judged = [(piece.tag, _judged(drying, piece, False)) for piece in hanging if drying is not None]
    for word in ("too fast", "slow"):
        yield from [(tag, found) for tag, found in judged if found is not None and found.word == word][:1]


def _judged(drying: Drying, piece: Piece, slowed: bool) -> Judged | None:
    """None where nobody knows the air, or what it lost."""
    if not drying.air or piece.proven_loss is None:
        return None
    hung = drying.fit.pieces[drying.place(piece.id)]
    rate = latest_rate(hung.start_kg, [(hung.hung_s, hung.start_kg), *hung.weighings], hung.scale_kg)
    bounds = drying_bounds(book())
    return judge(rate, piece.proven_loss, drying.target, drying.air[-1], slowed, bounds, drying.fit.mix)


def _drying(batch: Batch) -> Drying:
    drying = drying_of(book(), batch)
    assert drying is not None
    return drying
