"""Short logs of chambers whose truth is known, for the rows of the compressor's rhythm; each looked at once."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

from attrs import evolve, frozen

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from tests.core import chamber_model, walled_model
from tests.core.analysed import compressor_of
from tests.core.chamber_model import HOUR_S, Chamber, Logged, Logger, Truth, log
from tests.core.chamber_model import run as run_lump
from tests.core.walled_model import Walled

FINE = Logger(noise_k=0.02, step_k=0.01)
THIN = Walled(air_j_k=8_000, air_wall_w_k=8, coil_j_k=1_500, room_swing_k=0.0, differential_k=2.5)
FAST = Chamber(warming_s=2 * HOUR_S, cooling_s=1800.0, differential_k=1.5)

LOGS: dict[str, tuple[Chamber | Walled, Logger, float]] = {
    "plain": (Chamber(), Logger(), 14),
    "no noise": (Chamber(), Logger(noise_k=0.0, step_k=0.001), 14),
    "every 10 s": (FAST, evolve(FINE, interval_s=10.0, noise_k=0.05), 7),
    "every 5 min": (Chamber(), evolve(FINE, interval_s=300.0), 24),
    "coarse": (Chamber(differential_k=2.8), Logger(step_k=0.5), 24),
    "long runs": (Chamber(cooling_s=5 * HOUR_S, coil_c=-8.0), FINE, 20.3),
    "slow probe": (Chamber(coil_lag_s=150.0), evolve(FINE, lag_s=240.0), 14),
    "doors": (
        Chamber(doors_s=(5.3 * HOUR_S, 8.1 * HOUR_S, 11.7 * HOUR_S), door_exchange_s=45.0),
        Logger(interval_s=30.0),
        16,
    ),
    "defrosts": (Chamber(defrosts_s=(6 * HOUR_S, 12 * HOUR_S), doors_s=(9.4 * HOUR_S,)), Logger(), 20),
    "coarse defrosts": (
        Chamber(differential_k=2.8, defrosts_s=(12 * HOUR_S,), doors_s=(7.3 * HOUR_S,)),
        Logger(step_k=0.5),
        24,
    ),
    "walled": (Walled(room_swing_k=0.0), evolve(FINE, interval_s=30.0), 16),
    "thin": (THIN, evolve(FINE, interval_s=30.0), 20),
    "walled defrosts": (
        evolve(THIN, defrosts_s=(7 * HOUR_S, 14 * HOUR_S), doors_s=(10.5 * HOUR_S,)),
        evolve(FINE, interval_s=60.0),
        22,
    ),
    "hole": (Chamber(), Logger(), 20),
    "starts cold": (Chamber(), FINE, 16),
    **{f"drawn {seed}": (*chamber_model.draw(seed), 20) for seed in (1, 6, 9, 11, 14, 16, 18, 20, 21, 22, 23)},
    **{f"drawn wall {seed}": (*walled_model.draw(seed), 20) for seed in (1, 6, 8, 11, 12, 13, 20, 21, 25)},
}  # fmt: skip
CUT = {"hole": (500, 580), "starts cold": (0, 150)}
"""Readings left out: for 80 min in the midst, and of the whole pull-down."""


@cache
def truth_of(name: str) -> Truth:
    chamber, _, hours = LOGS[name]
    return walled_model.run(chamber, hours) if isinstance(chamber, Walled) else run_lump(chamber, hours)


@cache
def logged(name: str) -> Logged:
    whole = log(truth_of(name), LOGS[name][1], 7)
    first, end = CUT.get(name, (0, 0))
    return Logged(
        *(column[:first] + column[end:] for column in (whole.times_s, whole.temperatures_c, whole.humidities))
    )


@cache
def seen(name: str) -> Compressor:
    log_ = logged(name)
    return compressor_of(Series("low", log_.times_s, log_.temperatures_c), LOGS[name][0].room_c)


@frozen
class Cycles:
    """What truly was, of the cycles that no defrost, door, hole or end of the log touches: means in s. none: there
    were no such cycles."""

    period_s: float
    run_s: float


def runs_of(name: str) -> list[tuple[float, float]]:
    """The true runs after the pull-down that the log shows the whole of."""
    times_s = logged(name).times_s
    gaps = [(a, b) for a, b in pairwise(times_s) if b - a > 3 * LOGS[name][1].interval_s]
    return [
        (start_s, stop_s)
        for start_s, stop_s in truth_of(name).runs[1:]
        if start_s >= times_s[0] and not any(start_s < b and a < stop_s for a, b in gaps)
    ]


def calm_cycles(name: str) -> Cycles:
    truth, runs = truth_of(name), runs_of(name)
    times_s = logged(name).times_s
    moved = [*truth.defrosts, *truth.doors, *((a, b) for a, b in pairwise(times_s) if b - a > 600)]
    calm = [
        (one, other)
        for one, other in pairwise(runs)
        if not any(one[0] - 1800 < end_s and start_s < other[1] for start_s, end_s in moved)
    ]
    lasts_s = [other[0] - one[0] for one, other in calm]
    runs_s = [other[1] - other[0] for _, other in calm]
    return Cycles(sum(lasts_s) / len(calm), sum(runs_s) / len(calm))
