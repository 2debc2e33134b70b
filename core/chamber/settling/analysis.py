"""The two-day proof, looked at: each probe, each pair, all together. What it amounts to is `proof`."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise
from statistics import median

from attrs import frozen

from core.chamber.series import Series
from core.chamber.settling.counting import why_not_counted
from core.chamber.settling.events import Event, find_events, why_no_events
from core.chamber.settling.holes import NOWHERE, Looked, looked_at
from core.chamber.settling.humid_air import HumidAir, humid_air
from core.chamber.settling.humid_probe import Humidity, Seen, humidity_of
from core.chamber.settling.mapping import Pair, Space, fluctuation, instability, pairs, space
from core.chamber.settling.rhythm import FEWEST_RUNS, Rhythm, rhythm_of
from core.chamber.settling.runs import Run, find_runs
from core.chamber.settling.sampling import Sampling, sampling
from core.chamber.settling.settled import LEAST_STEADY_S, Drift, arrived, drift_a_day, undisturbed
from core.chamber.settling.statistics import Spread, spread
from core.chamber.settling.staying import Stay, stay
from core.chamber.settling.steps import Steps
from core.chamber.settling.swing import CannotSee, Swing, Trace, arrives_at, require_steps, trace_of, usual_swing
from core.chamber.settling.wanted import Wanted
from core.chamber.settling.witness import witness_of
from core.refusals import OutOfRange
from core.sentence import Sentence, in_turn
from core.vapour import STANDARD_PA


@frozen
class Compressor:
    """What the trace shows of it. rhythm: None, and why_not says why, where it cannot be measured. is_counted: whether
    the runs are all there were; else some may be missing, and that is said. events_why_not: why doors and defrosts
    cannot be seen; then neither is counted. looked: how much of the time runs and events were looked for."""

    runs: tuple[Run, ...] = ()
    events: tuple[Event, ...] = ()
    rhythm: Rhythm | None = None
    why_not: Sentence | None = None
    is_counted: bool = False
    events_why_not: Sentence | None = None
    looked: Looked = NOWHERE

    @property
    def told_events(self) -> tuple[Event, ...]:
        return () if self.events_why_not else self.events

    @property
    def period_s(self) -> float | None:
        """Of the cycles seen, also where they are too few or too often disturbed to be measured."""
        if self.rhythm is not None:
            return self.rhythm.period_s
        if len(self.runs) < FEWEST_RUNS:
            return None
        return median(after.falls_s - before.falls_s for before, after in pairwise(self.runs))


@frozen
class Probe:
    """One probe's findings.

    temperature: over the whole log; steady: of what follows the first pull-down. arrived_s: when it was
    first within the band; settled_s: since when it stays; drift: a day.
    fluctuation_k: GB/T, worst half-hour; instability_k: DKD-R 5-7. The last three are of what follows settling, or the
    pull-down where it did not settle, with doors and defrosts left out. calm: those readings.
    """

    name: str
    begins_s: float
    ends_s: float
    first_c: float
    temperature: Spread
    steady: Spread
    arrived_s: float | None
    stay: Stay
    sampling: Sampling
    drift: Drift | None
    fluctuation_k: float
    instability_k: float | None
    compressor: Compressor
    humidity: Humidity | None
    calm: Series

    @property
    def settled_s(self) -> float | None:
        return self.stay.since_s

    @property
    def drift_k(self) -> float | None:
        return self.drift and self.drift.by_k

    @property
    def stays_since_s(self) -> float | None:
        """settled_s where it has stayed long enough to be called a state of the chamber."""
        if self.settled_s is None or self.ends_s - self.settled_s < LEAST_STEADY_S:
            return None
        return self.settled_s

    @property
    def lasts_s(self) -> float:
        return self.ends_s - self.begins_s


@frozen
class Analysis:
    """probes: as given. centre: the one the others are compared with. pairs and space: of their calm readings."""

    wanted: Wanted
    centre: Probe
    probes: tuple[Probe, ...]
    pairs: tuple[Pair, ...]
    space: Space | None
    room_c: float | None = None


def analysing(
    probes: Sequence[Series],
    wanted: Wanted | None = None,
    *,
    room_c: float | None = None,
    centre: str | None = None,
    pressure_pa: float = STANDARD_PA,
) -> Steps[Analysis]:
    """The analysis in steps: yields the name of the probe it is about to look at, and "" for all of them together.

    room_c: the room's mean temperature; without it there is no warming time. centre: a probe's name; else the first.
    Raises OutOfRange on "log" without probes, with two of one name, or with one that has fewer than two temperatures.
    Time grows with the number of readings.
    """
    names = [series.probe for series in probes]
    if not names or len(set(names)) < len(names):
        raise OutOfRange("log", "There must be at least one probe, and each must have a name of its own.")
    warm = [series.warm() for series in probes]
    for series in warm:
        if len(series) < 2:
            text = "{probe} has fewer than two temperatures: there is nothing to analyse."
            raise OutOfRange("log", Sentence(text, {"probe": series.probe}))
    wanted = wanted or Wanted()
    found: list[Probe] = []
    for series in warm:
        found.append((yield from _probe(series, wanted, room_c, pressure_pa)))
    yield ""
    calm = [probe.calm for probe in found]
    middle = names.index(centre) if centre in names else 0
    pairs_found = pairs(calm)
    yield ""
    return Analysis(wanted, found[middle], tuple(found), pairs_found, space(calm, names[middle]), room_c)


def compressor_in(series: Series, room_c: float | None, air: HumidAir | None) -> Steps[Compressor]:
    """The compressor in one probe's temperature, in steps. Never raises: why_not says what could not be seen."""
    runs: tuple[Run, ...] = ()
    events: tuple[Event, ...] = ()
    trace: Trace | None = None
    looked = NOWHERE
    try:
        trace = trace_of(series.times_s, series.temperatures_c)
        yield series.probe
        swing = usual_swing(trace)
        looked = looked_at(trace, swing)
        yield series.probe
        events = find_events(trace, swing, None if air is None else witness_of(air))
        yield series.probe
        runs = find_runs(trace, swing, events)
        require_steps(trace, swing)
        yield series.probe
    except CannotSee as reason:
        events_why_not = reason.said if trace is None or not runs else why_no_events(trace)
        return Compressor(runs, events, None, reason.said, False, events_why_not, looked)
    rhythm, why_not = _measured(trace, swing, runs, events, room_c)
    if events and rhythm is not None:
        runs = find_runs(trace, swing, events, rhythm.late_s)
    uncounted = why_not_counted(trace, swing, events, rhythm)
    whys = [each for each in (why_not, uncounted) if each is not None]
    return Compressor(
        runs, events, rhythm, in_turn(whys) if whys else None, not uncounted, why_no_events(trace), looked
    )


def _measured(
    trace: Trace, swing: Swing, runs: Sequence[Run], events: Sequence[Event], room_c: float | None
) -> tuple[Rhythm | None, Sentence | None]:
    """The rhythm, or why it cannot be measured: the runs may be counted all the same."""
    try:
        return rhythm_of(trace, swing, runs, events, room_c), None
    except CannotSee as reason:
        return None, reason.said


def _probe(series: Series, wanted: Wanted, room_c: float | None, pressure_pa: float) -> Steps[Probe]:
    yield series.probe
    times_s, temperatures_c = series.times_s, series.temperatures_c
    air = humid_air(series, pressure_pa)
    yield series.probe
    compressor = yield from compressor_in(series, room_c, air)
    yield series.probe
    is_calm = undisturbed(times_s, compressor.events)
    sampled = sampling(times_s, series.interval_s, compressor.period_s)
    stays = stay(times_s, temperatures_c, wanted.temperature, sampled.shown_s, is_calm, wanted.held_s)
    settled_s = stays.since_s
    first = arrives_at(temperatures_c)
    calm = _calm(series, is_calm, _steady_from(settled_s, times_s[first], times_s[-1]))
    yield series.probe
    seen = Seen(compressor.runs, compressor.events, compressor.rhythm.cycles if compressor.rhythm else ())
    humidity = None
    if air is not None:
        humidity = yield from humidity_of(series.probe, air, calm, wanted, seen, compressor.period_s)
    yield series.probe
    temperature = spread(times_s, temperatures_c, wanted.temperature, series.held_s)
    steady = spread(times_s[first:], temperatures_c[first:], wanted.temperature, series.held_s[first:])
    yield series.probe
    return Probe(
        name=series.probe,
        begins_s=times_s[0],
        ends_s=times_s[-1],
        first_c=temperatures_c[0],
        temperature=temperature,
        steady=steady,
        arrived_s=arrived(times_s, temperatures_c, wanted.temperature),
        stay=stays,
        sampling=sampled,
        drift=drift_a_day(calm.times_s, calm.temperatures_c),
        fluctuation_k=fluctuation(calm.times_s, calm.temperatures_c, usual_s=calm.interval_s),
        instability_k=instability(calm.times_s, calm.temperatures_c, calm.held_s),
        compressor=compressor,
        humidity=humidity,
        calm=calm,
    )


def _steady_from(settled_s: float | None, arrives_s: float, ends_s: float) -> float:
    """From when on its figures count: neither the last of its way down, though that lies within the band, nor only the
    last minutes of a run that never settled, which look steady and say nothing."""
    return arrives_s if settled_s is None or ends_s - settled_s < LEAST_STEADY_S else max(settled_s, arrives_s)


def _calm(series: Series, is_calm: Sequence[bool], begun_s: float) -> Series:
    """What follows `begun_s` undisturbed; all of it where that is next to nothing."""
    first = bisect_left(series.times_s, begun_s)
    kept = [*[False] * first, *is_calm[first:]]
    return series.only(kept) if sum(kept) > 1 else series
