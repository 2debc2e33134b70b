"""Pieces with all their evidence, and what is judged of them once something of it is changed."""

from typing import Any

from attrs import evolve

from core.ferment.outcome import Outcome
from core.mix.ingoing import Ingoing
from core.mix.rules import Curing
from core.quantities import METRIC
from core.release.readiness import Evidence, judge
from core.release.salted import Salted
from core.release.trichinella import Meat
from core.verdict import Reason
from tests.core.telling import in_words

TESTED = Meat("pork", "tested", "P-7", "the meat inspection")
SAUSAGE = Evidence(
    style="fermented",
    loss=0.36,
    target_loss=0.35,
    lowest_ph=4.9,
    last_ph=5.1,
    water_activity=0.89,
    days_hung=30,
    least_days=21,
    ingoing=Ingoing(150, 0),
    how=Curing(),
    signs=(),
    fermentation=Outcome("passed"),
    meat=TESTED,
)


SLOW = Evidence(
    style="slow",
    loss=0.38,
    target_loss=0.35,
    lowest_ph=5.6,
    last_ph=5.9,
    water_activity=0.88,
    days_hung=40,
    ingoing=Ingoing(100, 50),
    how=Curing(),
    salt=0.027,
    signs=(),
    fermentation=Outcome("passed"),
    meat=TESTED,
)


DAY_S = 86400.0


MUSCLE = Evidence(
    style="whole-muscle",
    loss=0.38,
    target_loss=0.35,
    water_activity=0.89,
    days_hung=60,
    ingoing=Ingoing(200, 0),
    how=Curing(method="dry-rub"),
    salt=0.03,
    signs=(),
    salted=Salted("weighed", "slab", 0.05, lasts_s=21 * DAY_S, coldest_c=3.0, warmest_c=4.0),
    meat=TESTED,
)

OVER = Outcome("over", sum_ks=2.5e6, limit_ks=2.4e6)


def changed(evidence: Evidence, **changes: Any) -> Evidence:
    """nitrite_ppm, nitrate_ppm: of what went in; lasts_s and the like: of its time in salt."""
    ingoing = {key: changes.pop(key) for key in list(changes) if key in ("nitrite_ppm", "nitrate_ppm")}
    salted = {key: changes.pop(key) for key in list(changes) if hasattr(Salted(), key)}
    if ingoing:
        changes["ingoing"] = evolve(evidence.ingoing, **ingoing)
    if salted:
        changes["salted"] = evolve(evidence.salted or Salted(), **salted)
    return evolve(evidence, **changes)


def word(evidence: Evidence, **changes: Any) -> str:
    return judge(changed(evidence, **changes)).word


def reason(evidence: Evidence, key: str, **changes: Any) -> Reason:
    return next(each for each in judge(changed(evidence, **changes)).reasons if each.key == key)


def unmet(evidence: Evidence, **changes: Any) -> list[str]:
    return [each.key for each in judge(changed(evidence, **changes)).unmet]


def next_step(evidence: Evidence, **changes: Any) -> str:
    return judge(changed(evidence, **changes)).next_step.say(METRIC)


def cautions(evidence: Evidence, **changes: Any) -> str:
    return " ".join(in_words(judge(changed(evidence, **changes)).cautions))
