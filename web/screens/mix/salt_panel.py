"""What a batch's page says of its time in salt: which day it is, when the salt is through, and both ways to tell."""

from __future__ import annotations

from datetime import datetime

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.salt_notes import Salting
from core.daybook.salting import equalised_at, next_turn, piece_of, planned_end, surely_equalised_at
from core.mix.salting import FAST_M2_S, SLOW_M2_S, TYPICAL_M2_S, centre_curve, centre_share, diffusivity
from core.mix.salting_rules import by_rule
from core.mix.salting_sheets import salting_figures
from core.quantities import COUNT, FRACTION, Amount
from core.sentence import Message, Rounded, Sentence
from core.units import DAY_S
from core.working import Figure
from web import charts
from web.charts import Chart

POINTS = 13
SLOWLY: Message = "slowly"
AS_USUAL: Message = "as usual"
FAST: Message = "fast"
FLOW: dict[Message, float] = {SLOWLY: SLOW_M2_S, AS_USUAL: TYPICAL_M2_S, FAST: FAST_M2_S}


@frozen
class SaltPanel:
    """day: of its time in salt, counted from 1; days: how many that is. now: salt at the centre by now. rules: the
    trade's."""

    salting: Salting
    day: int
    days: Sentence
    now: Rounded
    end: datetime
    through: datetime
    surely: datetime
    turn: datetime | None
    is_over: bool
    figure: Figure
    rules: tuple[Figure, ...]
    chart: Chart


def salt_panel(batch: Batch, moment: datetime) -> SaltPanel | None:
    salting = batch.salting
    if salting is None:
        return None
    begun, piece = salting.begun, piece_of(salting)
    until = min(moment, salting.ended_at or moment)
    lasted_s = max(0.0, (until - salting.at).total_seconds())
    d_m2_s = diffusivity(begun.temperature_c)
    share = centre_share(piece, begun.method, d_m2_s, lasted_s)
    surely = surely_equalised_at(salting)
    until_s = (max(surely, planned_end(salting)) - salting.at).total_seconds()
    curves: dict[Message, list[tuple[float, float]]] = {
        name: centre_curve(piece, begun.method, diffusivity(begun.temperature_c, at_3_c), until_s, POINTS)
        for name, at_3_c in FLOW.items()
    }
    by_now, day = Rounded(Amount(round(share, 2), FRACTION)), int(lasted_s // DAY_S) + 1
    headline = Sentence("Salt at the centre: about {share} by now", {"share": by_now})
    return SaltPanel(
        salting=salting,
        day=day,
        days=Sentence("{count} day", {"count": Amount(day, COUNT)}, plural="{count} days"),
        now=by_now,
        end=planned_end(salting),
        through=equalised_at(salting),
        surely=surely,
        turn=next_turn(salting),
        is_over=moment >= planned_end(salting),
        figure=salting_figures(
            begun.method,
            begun.shape,
            begun.thickness_m,
            begun.width_m,
            begun.length_m,
            begun.temperature_c,
            begun.centre_share,
            None,
        )[0],
        rules=by_rule(begun.mass_kg, begun.thickness_m),
        chart=charts.salt_at_centre(curves, begun.centre_share, headline),
    )


def salt_summary(batch: Batch, moment: datetime) -> Sentence | None:
    if batch.salting is None:
        return None
    days = (moment - batch.salting.at).days + 1
    planned = round((planned_end(batch.salting) - batch.salting.at).total_seconds() / DAY_S)
    told = {"day": Amount(days, COUNT), "planned": Amount(planned, COUNT)}
    return Sentence("in salt, day {day} of {planned}", told)
