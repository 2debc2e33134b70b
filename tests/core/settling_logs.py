"""Some chambers whose truth is known and what loggers wrote of them, for the tests that look at a whole analysis.

Each is looked at once. The chambers are simulated, and seeded: one lump, or air, wall and evaporator apart.
"""

from collections.abc import Callable, Sequence
from functools import cache
from typing import Any

from attrs import evolve, frozen

from core.chamber.series import Series
from core.chamber.settling.analysis import Analysis
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from tests.core import chamber_model, walled_model
from tests.core.analysed import analyse
from tests.core.chamber_model import HOUR_S, Chamber, Logger, Truth, log
from tests.core.walled_model import Walled

LUMP = Chamber(differential_k=1.0, humid_differential=0.02, drying_s=3600, warming_s=6 * HOUR_S)
WIDE = evolve(LUMP, differential_k=2.0)
WALL = Walled(humid_differential=0.02, coil_dries_s=3600, fog_lag_s=20, cooling_w=50)
BAND, DAMP = Band(11.5, 1.5), Band(0.80, 0.06)
EIGHTEEN = Wanted(BAND, DAMP, held_s=12 * HOUR_S, lasts_s=18 * HOUR_S)


@frozen
class Case:
    """hours: how long the chamber runs. offsets_k: a probe each. begins_s: on the logger's clock. made: what becomes of
    the logs before they are looked at."""

    chamber: Chamber | Walled
    hours: float
    logger: Logger
    offsets_k: tuple[float, ...] = (0.0,)
    wanted: Wanted = EIGHTEEN
    room_c: float | None = 20.0
    centre: str | None = None
    begins_s: float = 0.0
    made: Callable[[Sequence[Series]], Sequence[Series]] = lambda probes: probes


def _without(probes: Sequence[Series], *pauses_h: tuple[float, float]) -> list[Series]:
    """The first probe paused in these hours."""
    first, *others = probes
    kept = [not any(low * HOUR_S < at_s < high * HOUR_S for low, high in pauses_h) for at_s in first.times_s]
    return [first.only(kept), *others]


def _every(series: Series, interval_s: float, later_s: float = 0.0) -> Series:
    """Read less often, by a clock of its own."""
    kept = series.only(at_s % interval_s == 0 for at_s in series.times_s)
    return Series(series.probe, [at_s + later_s for at_s in kept.times_s], kept.temperatures_c, kept.humidities)


def _dry(probes: Sequence[Series]) -> list[Series]:
    """Without a hygrometer."""
    return [Series(each.probe, each.times_s, each.temperatures_c) for each in probes]


CASES = {
    "plain": Case(LUMP, 24, Logger(), (0.0, 0.2), begins_s=50_000.0),
    "doors and defrosts": Case(
        evolve(WIDE, doors_s=(25_000.0, 60_000.0), defrosts_s=(40_000.0, 76_000.0)), 26, Logger(noise_k=0.02),
        wanted=evolve(EIGHTEEN, humidity=Band(0.80, 0.10)),
    ),
    "walled": Case(
        evolve(WALL, defrosts_s=(50_000.0,), doors_s=(70_000.0,)), 26, Logger(interval_s=120)
    ),
    "coarse": Case(WIDE, 24, Logger(step_k=0.5), wanted=Wanted(Band(12, 2), None, held_s=1e5, lasts_s=1e5)),
    "every five minutes": Case(
        WIDE, 30, Logger(interval_s=300), (0.0, -0.4),
        evolve(EIGHTEEN, temperature=Band(12, 0.9), humidity=Band(0.803, 0.016)), begins_s=100_000.0,
    ),
    "drifting": Case(evolve(WALL, differential_k=1.0, drift_k=1.2), 36, Logger(), (0.0, 0.0), room_c=None),
    "paused": Case(
        LUMP, 24, Logger(), (0.0, 0.1), made=lambda probes: _without(probes, (8, 8.4), (12, 13.5), (20, 20.2))
    ),
    "short": Case(LUMP, 5, Logger(), (0.0, 0.1), begins_s=7_000.0),
    "never cold": Case(evolve(LUMP, cooling_s=13 * HOUR_S), 20, Logger(interval_s=120), (0.0,), room_c=22.0),
    "overshooting": Case(
        evolve(WALL, fog_lag_s=900, humidifier_pa_s=1.6, coil_dries_s=900), 24, Logger(), (0.0,),
        evolve(EIGHTEEN, temperature=Band(12.5, 0.9)),
    ),
    "apart": Case(
        WIDE, 24, Logger(interval_s=30), (0.0, 1.4, -0.5), evolve(EIGHTEEN, temperature=Band(12, 3)), centre="third",
        made=lambda probes: [probes[0], _every(probes[1], 120, 40), *probes[2:]],
    ),
    "too slow": Case(evolve(WIDE, doors_s=(50_000.0,)), 30, Logger(interval_s=600), made=_dry),
    "lost in steps": Case(LUMP, 20, Logger(step_k=0.5), wanted=evolve(EIGHTEEN, temperature=Band(11.2, 0.4))),
    "aimed elsewhere": Case(
        LUMP, 20, Logger(), (0.0, 0.0), evolve(EIGHTEEN, temperature=Band(5, 1), humidity=Band(0.95, 0.02))
    ),
}  # fmt: skip
NAMES = "first", "second", "third"


@cache
def truth(chamber: Any, hours: float) -> Truth:
    return (chamber_model if isinstance(chamber, Chamber) else walled_model).run(chamber, hours)


def probes(name: str) -> Sequence[Series]:
    case = CASES[name]
    made: list[Series] = []
    for place, (probe, offset_k) in enumerate(zip(NAMES, case.offsets_k, strict=False)):
        seen = log(truth(case.chamber, case.hours), evolve(case.logger, offset_k=offset_k), place)
        times_s = [case.begins_s + at_s for at_s in seen.times_s]
        made.append(Series(probe, times_s, seen.temperatures_c, seen.humidities))
    return case.made(made)


@cache
def analysis(name: str) -> Analysis:
    case = CASES[name]
    return analyse(probes(name), case.wanted, room_c=case.room_c, centre=case.centre)


@cache
def proof(name: str) -> Proof:
    return prove(analysis(name))
