"""Many random chambers, and how far the analysis is from their truth: what the tests and the bench rows rest on."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Sequence
from statistics import mean
from typing import Any, Literal

from attrs import evolve, frozen

from core.chamber.series import Series
from core.chamber.settling.analysis import Analysis, Compressor
from core.chamber.settling.events import Event
from core.chamber.settling.proof import prove
from core.chamber.settling.rhythm import Cycle
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from core.sentence import Sentence
from tests.core import chamber_model, walled_model
from tests.core.analysed import analyse
from tests.core.chamber_model import HOUR_S, STEP_S, Logger, Truth, log

Span = tuple[float, float]
Verdict = Literal["settled", "not settled", "not known"]
INTERVALS_S = (10.0, 60.0, 300.0)


@frozen
class Kind:
    """A simulator: draws a chamber with its logger, and lets it run."""

    draw: Callable[[int], tuple[Any, Logger]]
    run: Callable[[Any], Truth]


LUMPS = Kind(chamber_model.draw, chamber_model.run)
WALLED = Kind(walled_model.draw, walled_model.run)


@frozen
class Outcome:
    """One chamber, logged at one interval.

    count_off: runs counted less true runs. hold_off: in parts of what is allowed, one interval or 3 %. duty_off: share
    of the time it runs, less the true one; 0 within a range that is told without a point. duty_point_off: only where a
    point is told. tau_off: relative. doors, defrosts: (found and true, true, found). Each None where the analysis says
    that it cannot tell.
    truth: None where it is no clear case.
    """

    seed: int
    interval_s: float
    count_off: int | None = None
    hold_off: float | None = None
    duty_off: float | None = None
    duty_point_off: float | None = None
    tau_off: float | None = None
    doors: tuple[int, int, int] | None = None
    defrosts: tuple[int, int, int] | None = None
    verdict: Verdict = "not known"
    truth: Verdict | None = None
    why_not: Sentence | None = None


def study(kind: Kind, seeds: Iterable[int], intervals_s: Sequence[float] = INTERVALS_S) -> Iterator[Outcome]:
    """Each chamber at each interval."""
    for seed in seeds:
        chamber, logger = kind.draw(seed)
        truth = kind.run(chamber)
        for interval_s in intervals_s:
            yield look(seed, truth, evolve(logger, interval_s=interval_s))


def look(seed: int, truth: Truth, logger: Logger) -> Outcome:
    wanted = wanted_of(truth, seed)
    probes = [probe(truth, logger, name, seed, off_k) for name, off_k in (("low", 0.0), ("high", 0.1))]
    room_c = round(truth.chamber.room_c * 2) / 2  # as read off a thermometer on the wall
    found = analyse(probes, wanted, room_c=room_c)
    outcome = Outcome(seed, logger.interval_s, verdict=verdict_of(found), truth=true_verdict(truth, logger, wanted))
    return of_compressor(outcome, truth, logger, found.centre.compressor)


def probe(truth: Truth, logger: Logger, name: str, seed: int, off_k: float = 0.0) -> Series:
    logged = log(truth, evolve(logger, offset_k=logger.offset_k + off_k), f"{seed} {name}")
    return Series(name, logged.times_s, logged.temperatures_c, logged.humidities)


def of_compressor(outcome: Outcome, truth: Truth, logger: Logger, found: Compressor) -> Outcome:
    outcome = evolve(outcome, why_not=found.why_not)
    if found.is_counted:
        outcome = evolve(outcome, count_off=count_off(truth, logger, len(found.runs)))
    rhythm = found.rhythm
    if rhythm is not None:
        hold_s, run_share = true_rhythm(truth, rhythm.cycles)
        allowed_s = max(logger.interval_s, 0.03 * hold_s)
        low, high = rhythm.run_share_low, rhythm.run_share_high
        point_off = rhythm.run_share - run_share
        holds_s = (rhythm.period_s - rhythm.cools_high_s, rhythm.period_s - rhythm.cools_low_s)
        hold_point_off_s = rhythm.holds_s - hold_s
        outcome = evolve(
            outcome,
            hold_off=(hold_point_off_s if rhythm.is_share_sure else _outside(hold_s, *holds_s)) / allowed_s,
            duty_off=point_off if rhythm.is_share_sure else _outside(run_share, low, high),
            duty_point_off=point_off if rhythm.is_share_sure else None,
        )
        if rhythm.warming_s is not None:
            outcome = evolve(outcome, tau_off=rhythm.warming_s / truth.chamber.warming_s - 1)
    if found.events_why_not:
        return outcome
    slack_s = max(2 * logger.interval_s, 300)
    return evolve(
        outcome,
        doors=matched(truth.doors, events(found, "door"), slack_s, truth.lasts_s),
        defrosts=matched(truth.defrosts, events(found, "defrost"), slack_s, truth.lasts_s),
    )


def _outside(true: float, low: float, high: float) -> float:
    """How far the nearer end of a range is off; 0 where the truth lies in it."""
    return max(0.0, low - true) + min(0.0, high - true)


def wanted_of(truth: Truth, seed: int) -> Wanted:
    """A band that about half the chambers keep."""
    chamber = truth.chamber
    middle_c = chamber.cut_out_c + chamber.differential_k / 2 + (seed % 7 - 3) * 0.2
    return Wanted(Band(round(middle_c, 1), (0.8, 1.2, 1.6, 2.0)[seed % 4]), None, apart_k=1.5)


def verdict_of(found: Analysis) -> Verdict:
    proof = prove(found)
    if proof.is_settled:
        return "settled"
    return "not settled" if any(reason.met is False for reason in proof.reasons) else "not known"


def true_verdict(truth: Truth, logger: Logger, wanted: Wanted) -> Verdict | None:
    """Of what a probe without noise would see in the last day, doors and defrosts apart. None near the limits: there
    both may be said."""
    band = wanted.temperature
    calm = [
        value
        for at_s, value in _seen(truth, logger)
        if at_s > truth.lasts_s - 26 * HOUR_S and not _is_disturbed(truth, at_s)
    ]
    outside = sum(not band.holds(value) for value in calm) / len(calm)
    near = sum(abs(value - band.target) > band.half - 0.2 for value in calm) / len(calm)
    days = [_mean(truth, logger, hours * HOUR_S) for hours in (0, 12)]
    drift_k = abs(days[1] - days[0]) * 2
    if outside > 0.12 or drift_k > 1.5 * band.half:
        return "not settled"
    return "settled" if near < 0.005 and drift_k < 0.25 * band.half else None


def _mean(truth: Truth, logger: Logger, back_s: float) -> float:
    end_s = truth.lasts_s - back_s
    return mean(value for at_s, value in _seen(truth, logger) if end_s - 12 * HOUR_S < at_s <= end_s)


def _seen(truth: Truth, logger: Logger) -> Iterator[Span]:
    probe_c = truth.temperatures_c[0]
    for turn, air_c in enumerate(truth.temperatures_c):
        probe_c += (air_c - probe_c) * STEP_S / logger.lag_s
        yield turn * STEP_S, probe_c


def _is_disturbed(truth: Truth, at_s: float) -> bool:
    return any(start_s - 60 < at_s < stop_s + 3600 for start_s, stop_s in (*truth.defrosts, *truth.doors))


def count_off(truth: Truth, logger: Logger, found: int) -> int:
    """0 where the count is right. The first run is the pull-down.

    A run that ended within the probe's and the coil's lag of the last reading cannot be known to have ended. Then
    either count is right.
    """
    ended_s = [stop_s for _, stop_s in truth.runs[1:]]
    last_s = (truth.lasts_s - STEP_S) // logger.interval_s * logger.interval_s
    known_s = last_s - logger.lag_s - truth.chamber.coil_lag_s
    least, most = sum(stop_s <= known_s for stop_s in ended_s), len(ended_s)
    return min(found - least, 0) + max(found - most, 0)


def true_rhythm(truth: Truth, cycles: Sequence[Cycle]) -> tuple[float, float]:
    """The mean of the holds between the same runs as the analysis measured, and the share of the time run."""
    middles_s = [(start_s + stop_s) / 2 + 180 for start_s, stop_s in truth.runs]

    def nearest(at_s: float) -> int:
        place = bisect_left(middles_s, at_s)
        return min(range(max(0, place - 1), min(len(middles_s), place + 1)), key=lambda at: abs(middles_s[at] - at_s))

    holds_s: list[float] = []
    runs_s: list[float] = []
    for cycle in cycles:
        before, after = nearest(cycle.before.falls_s), nearest(cycle.after.falls_s)
        if after == before + 1:
            holds_s.append(truth.runs[after][0] - truth.runs[before][1])
            runs_s.append(mean(stop_s - start_s for start_s, stop_s in (truth.runs[before], truth.runs[after])))
    if not holds_s:
        return 1.0, 1.0  # no two runs of those measured are neighbours: all wrong
    return mean(holds_s), sum(runs_s) / (sum(runs_s) + sum(holds_s))


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
    """Both 1 where there was nothing to find, or nothing was found."""
    hits, true, found = (sum(each[place] for each in counts) for place in range(3))
    return hits / true if true else 1.0, hits / found if found else 1.0
