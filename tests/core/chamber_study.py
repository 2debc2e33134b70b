"""Many random chambers, and how far the analysis is from their truth: what the tests and the bench rows rest on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from statistics import mean

from attrs import evolve, frozen

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor, compressor_of
from core.chamber.settling.events import Event
from core.chamber.settling.rhythm import Cycle
from core.chamber.settling.swing import FEWEST_A_PERIOD
from tests.core.chamber_model import Chamber, Logger, Truth, draw, log, run

Span = tuple[float, float]


@frozen
class Outcome:
    """One chamber. count_off: runs counted less true runs. hold_off: in parts of what is allowed, one interval or 3 %.

    tau_off: relative. doors, defrosts: (found and true, true, found). None where the analysis refused to say.
    """

    seed: int
    readings_a_cycle: float
    count_off: int | None
    hold_off: float | None
    tau_off: float | None
    doors: tuple[int, int, int] = (0, 0, 0)
    defrosts: tuple[int, int, int] = (0, 0, 0)


def study(seeds: Iterable[int]) -> list[Outcome]:
    """The chambers that are logged often enough for the rule: eight readings to a cycle."""
    outcomes = [look(seed) for seed in seeds]
    return [each for each in outcomes if each.readings_a_cycle >= FEWEST_A_PERIOD]


def look(seed: int) -> Outcome:
    chamber, logger = draw(seed)
    truth = run(chamber)
    logged = log(truth, logger, seed)
    room_c = round(chamber.room_c * 2) / 2  # as read off a thermometer on the wall
    found = compressor_of(Series("probe", logged.times_s, logged.temperatures_c), room_c)
    starts_s = [start_s for start_s, _ in truth.runs]
    period_s = (starts_s[-1] - starts_s[0]) / (len(starts_s) - 1)
    outcome = Outcome(seed, period_s / logger.interval_s, None, None, None)
    if found.runs:
        outcome = evolve(outcome, count_off=count_off(truth, logger, len(found.runs)))
    if found.rhythm is not None:
        hold_s = true_hold_s(truth, found.rhythm.cycles)
        allowed_s = max(logger.interval_s, 0.03 * hold_s)
        outcome = evolve(outcome, hold_off=(found.rhythm.holds_s - hold_s) / allowed_s)
    if found.rhythm is not None and found.rhythm.warming_s is not None:
        outcome = evolve(outcome, tau_off=found.rhythm.warming_s / chamber.warming_s - 1)
    slack_s = max(2 * logger.interval_s, 300)
    return evolve(
        outcome,
        doors=matched(truth.doors, events(found, "door"), slack_s, truth.lasts_s),
        defrosts=matched(truth.defrosts, events(found, "defrost"), slack_s, truth.lasts_s),
    )


def count_off(truth: Truth, logger: Logger, found: int) -> int:
    """0 where the count is right. The first run is the pull-down.

    A run that ended within the probe's and the coil's lag of the last reading cannot be known to have ended. Then
    either count is right.
    """
    ended_s = [stop_s for _, stop_s in truth.runs[1:]]
    known_s = truth.lasts_s - logger.lag_s - truth.chamber.coil_lag_s
    least, most = sum(stop_s <= known_s for stop_s in ended_s), len(ended_s)
    return min(found - least, 0) + max(found - most, 0)


def true_hold_s(truth: Truth, cycles: Sequence[Cycle]) -> float:
    """The mean of the holds between the same runs as the analysis measured."""
    middles_s = [(start_s + stop_s) / 2 + 180 for start_s, stop_s in truth.runs]

    def nearest(at_s: float) -> int:
        return min(range(len(middles_s)), key=lambda place: abs(middles_s[place] - at_s))

    holds_s: list[float] = []
    for cycle in cycles:
        before, after = nearest(cycle.before.falls_s), nearest(cycle.after.falls_s)
        if after == before + 1:
            holds_s.append(truth.runs[after][0] - truth.runs[before][1])
    return mean(holds_s)


def events(found: Compressor, kind: str) -> list[Event]:
    return [event for event in found.events if event.kind == kind]


def matched(true: Sequence[Span], found: Sequence[Event], slack_s: float, lasts_s: float) -> tuple[int, int, int]:
    """(found and true, true, found). What begins in the last quarter of an hour is not asked for."""
    asked = [span for span in true if span[0] < lasts_s - 900]
    left = list(found)
    hits = 0
    for start_s, stop_s in asked:
        hit = next((e for e in left if e.starts_s <= stop_s + slack_s and e.top_s >= start_s - slack_s), None)
        if hit is not None:
            left.remove(hit)
            hits += 1
    return hits, len(asked), len(found)


def recall_and_precision(counts: Sequence[tuple[int, int, int]]) -> tuple[float, float]:
    hits, true, found = (sum(each[place] for each in counts) for place in range(3))
    return hits / true, hits / found


def a_quiet_chamber(**changes: float) -> Chamber:
    """No door, no defrost, a room that stays as it is."""
    return evolve(Chamber(), **changes)
