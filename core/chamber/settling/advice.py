"""What to change in a chamber that has not settled, in the order in which to try it: one thing at a time.

First what would mislead all the rest: a sensor that is off, a compressor that does not run, ice, a door that is opened
or leaks, a chamber that cannot keep up. Then what the thermostat does, before where it is set: a wide swing has no mean
to set by. Then humidifier and fan. Where the lines are drawn is common practice, without a source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import mean, median

from attrs import frozen

from core.chamber.settling import proof_words as words
from core.chamber.settling.analysis import Analysis, Compressor, Probe
from core.chamber.settling.measures import DRIFT, FINE_DIFFERENCE, LASTS, STARTS
from core.chamber.settling.runs import Run
from core.chamber.settling.statistics import Band, Spread
from core.quantities import COUNT, LOSS, RELATIVE_HUMIDITY, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Sentence
from core.sources import COMMON_PRACTICE, MAPPING_IEC, Source

OFFSET_PART = 1 / 3
"""Of the band's half-width: a mean further off than that is worth a turn of the set-point."""
SWING_PART = 0.8
"""Of the whole band: a swing wider than that leaves no room for anything else."""
SHORTEST_HOLD_S, MOST_STARTS_AN_HOUR = 300.0, 6.0
"""A compressor wants some minutes between runs for its pressures to even out (common practice)."""
MOST_RUN_SHARE = 0.8
STEADY_PART = 1 / 3
LEAST_CORRECTION_K = 0.3
SAME_VAPOUR_K = 1.0
"""In one small chamber the vapour is the same everywhere: dew points further apart are the hygrometers' doing."""
AS_WARM_AS_ROOM_K = 2.0
ICING = 1.3
"""Runs in the last third of the log that are so much longer than in the first."""
FEWEST_RUNS = 9
DRIFT_PART = 0.5
"""Of the band's half-width, a day."""
LEAKY_S = 2 * 3600.0
"""A chamber whose distance to the room falls to 1/e within so short a time lets in more than its walls do."""
MANY_DOORS_A_DAY = 6.0
LEAST_INSIDE = 0.98
"""A humidity within its band for less of the time is worth a word."""


@frozen
class Advice:
    """key: "sensor", "hygrometer", "compressor", "ice", "drift", "set-point", "humidity-set-point", "differential",
    "humidifier", "fan", "door", "load" or "none"."""

    key: str
    text: Sentence
    source: Source = COMMON_PRACTICE


NONE = Advice("none", words.advice("none", {}))


def advise(analysis: Analysis) -> tuple[Advice, ...]:
    """In order. Nothing where nothing stands out."""
    sensors = tuple(_sensors(analysis))
    return (
        *sensors,
        *(() if sensors else _hygrometers(analysis)),
        *_compressor(analysis),
        *_ice(analysis),
        *_doors(analysis),
        *_load(analysis),
        *_drift(analysis),
        *_differential(analysis),
        *_set_point(analysis),
        *_humidity(analysis),
        *_fan(analysis),
    )


def _hygrometers(analysis: Analysis) -> Iterator[Advice]:
    dews = {
        probe.name: probe.humidity.dew_point.mean
        for probe in analysis.probes
        if probe.humidity is not None and probe.humidity.dew_point is not None
    }
    if len(dews) < 2:
        return
    damp, dry = max(dews, key=dews.__getitem__), min(dews, key=dews.__getitem__)
    if dews[damp] - dews[dry] > SAME_VAPOUR_K:
        off = Amount(dews[damp] - dews[dry], FINE_DIFFERENCE)
        yield Advice("hygrometer", words.advice("hygrometer", {"one": damp, "other": dry, "off": off}))


def _is_too_warm(analysis: Analysis) -> bool:
    band = analysis.wanted.temperature
    return analysis.centre.steady.low_5 > band.target + band.half


def _compressor(analysis: Analysis) -> Iterator[Advice]:
    """It never cools: no run, and as warm as the room, or, where the room is not known, no cooler than it began."""
    centre = analysis.centre
    if centre.compressor.runs or not _is_too_warm(analysis):
        return
    begun_c = centre.first_c if analysis.room_c is None else analysis.room_c
    if centre.steady.mean > begun_c - AS_WARM_AS_ROOM_K:
        yield Advice("compressor", words.advice("compressor", {}))


def _ice(analysis: Analysis) -> Iterator[Advice]:
    runs = analysis.centre.compressor.runs
    if len(runs) < FEWEST_RUNS:
        return
    third = len(runs) // 3
    early_s, late_s = _usual_run_s(runs[third : 2 * third]), _usual_run_s(runs[-third:])
    if late_s > ICING * early_s:
        amounts = {"early": Amount(early_s, LASTS), "late": Amount(late_s, LASTS)}
        yield Advice("ice", words.advice("ice", amounts))


def _usual_run_s(runs: Sequence[Run]) -> float:
    return median(run.trough_s - run.peak_s for run in runs)


def _drift(analysis: Analysis) -> Iterator[Advice]:
    """The levels at which the compressor starts and stops move together: its thermostat does, not its load."""
    runs = analysis.centre.compressor.runs
    if len(runs) < FEWEST_RUNS:
        return
    most_k = DRIFT_PART * analysis.wanted.temperature.half
    third = len(runs) // 3
    early, late = runs[third : 2 * third], runs[-third:]
    days = (mean(run.falls_s for run in late) - mean(run.falls_s for run in early)) / 86_400
    feet_k = (median(run.trough_c for run in late) - median(run.trough_c for run in early)) / days
    peaks_k = (median(run.peak_c for run in late) - median(run.peak_c for run in early)) / days
    if min(abs(feet_k), abs(peaks_k)) > most_k and feet_k * peaks_k > 0:
        amounts = {"by": Amount((feet_k + peaks_k) / 2 / 86_400, DRIFT)}
        yield Advice("drift", words.advice("set-point-drifts", amounts))


def _set_point(analysis: Analysis) -> Iterator[Advice]:
    band, centre = analysis.wanted.temperature, analysis.centre
    off_k = centre.steady.mean - band.target
    if not centre.compressor.runs and _is_too_warm(analysis):
        return  # no thermostat cools without a compressor
    if abs(off_k) > OFFSET_PART * band.half:
        key = "set-lower" if off_k > 0 else "set-higher"
        yield Advice("set-point", words.advice(key, {"off": Amount(abs(off_k), TEMPERATURE_DIFFERENCE)}))


def _differential(analysis: Analysis) -> Iterator[Advice]:
    swing_k = _swing_k(analysis.centre)
    room_k = 2 * SWING_PART * analysis.wanted.temperature.half
    if swing_k is not None and swing_k > room_k:
        amounts = {
            "swing": Amount(swing_k, TEMPERATURE_DIFFERENCE),
            "less": Amount(swing_k - room_k, TEMPERATURE_DIFFERENCE),
        }
        yield Advice("differential", words.advice("narrow", amounts))
        return
    rhythm = analysis.centre.compressor.rhythm
    if rhythm is None:
        return
    if rhythm.holds_s < SHORTEST_HOLD_S or rhythm.starts_an_hour > MOST_STARTS_AN_HOUR:
        amounts = {
            "hold": Amount(rhythm.holds_s, LASTS),
            "starts": Amount(rhythm.starts_an_hour / 3600, STARTS),
        }
        yield Advice("differential", words.advice("widen", amounts))


def _swing_k(probe: Probe) -> float | None:
    """Also of runs that cannot be timed, or whose holds look like defrosts."""
    if probe.compressor.rhythm is not None:
        return probe.compressor.rhythm.swing_k
    runs = probe.compressor.runs
    if len(runs) < 3:
        return None
    return median(run.peak_c for run in runs) - median(run.trough_c for run in runs)


def _humidity(analysis: Analysis) -> Iterator[Advice]:
    band, humidity = analysis.wanted.humidity, analysis.centre.humidity
    if band is None or humidity is None:
        return
    found = humidity.calm
    amounts = {
        "mean": Amount(found.mean, RELATIVE_HUMIDITY),
        "low": Amount(found.low_5, RELATIVE_HUMIDITY),
        "high": Amount(found.highest, RELATIVE_HUMIDITY),
    }
    if _is_weak(found, band):
        yield Advice("humidifier", words.advice("humidifier-weak", amounts))
    elif _overshoots(found, band):
        yield Advice("humidifier", words.advice("humidifier-overshoots", amounts))
    elif abs(found.mean - band.target) > OFFSET_PART * band.half:
        off = found.mean - band.target
        key = "humidistat-lower" if off > 0 else "humidistat-higher"
        yield Advice("humidity-set-point", words.advice(key, {"off": Amount(abs(off), RELATIVE_HUMIDITY)}))


def _overshoots(found: Spread, band: Band) -> bool:
    """Up to its target it is as it should be, and then goes past its band."""
    is_often_outside = found.in_band is not None and found.in_band < LEAST_INSIDE
    return (
        is_often_outside
        and found.high_95 > band.target + band.half / 2
        and (found.highest > band.high and found.low_5 < band.target + OFFSET_PART * band.half)
    )


def _is_weak(found: Spread, band: Band) -> bool:
    return found.high_95 < band.low


def _doors(analysis: Analysis) -> Iterator[Advice]:
    centre = analysis.centre
    doors = sum(event.kind == "door" for event in centre.compressor.told_events)
    a_day = doors * 86_400 / max(centre.lasts_s, 1.0)
    if doors > 3 and a_day > MANY_DOORS_A_DAY:
        yield Advice("door", words.advice("door", {"count": Amount(doors, COUNT)}))
        return
    rhythm = centre.compressor.rhythm
    if rhythm is not None and rhythm.warming_s is not None and rhythm.warming_s < LEAKY_S:
        yield Advice("door", words.advice("leak", {"tau": Amount(rhythm.warming_s, LASTS)}))


def _fan(analysis: Analysis) -> Iterator[Advice]:
    space, most_k = analysis.space, analysis.wanted.apart_k
    if space is None or max(space.gradient_k, space.uniformity_k) <= most_k:
        return
    amounts = {"apart": Amount(max(space.gradient_k, space.uniformity_k), TEMPERATURE_DIFFERENCE)}
    yield Advice("fan", words.advice("fan", amounts), MAPPING_IEC)


def _load(analysis: Analysis) -> Iterator[Advice]:
    centre = analysis.centre
    share = _run_share(centre.compressor)
    if share is not None and share > MOST_RUN_SHARE:
        amounts = {"share": Amount(share, LOSS)}
        yield Advice("load", words.advice("load", amounts))
    elif share is None and _is_too_warm(analysis) and not any(_compressor(analysis)):
        yield Advice("load", words.advice("never-cold", {}))


def _run_share(compressor: Compressor) -> float | None:
    return compressor.rhythm.run_share if compressor.rhythm else None


def _sensors(analysis: Analysis) -> Iterator[Advice]:
    """Two probes that differ steadily may hang in different air, or one is wrong: side by side they tell."""
    for pair in analysis.pairs:
        off = pair.difference.mean
        if abs(off) < LEAST_CORRECTION_K or pair.difference.deviation > STEADY_PART * abs(off):
            continue
        values = {"one": pair.one, "other": pair.other, "off": Amount(abs(off), FINE_DIFFERENCE)}
        yield Advice("sensor", words.advice("sensor-above" if off > 0 else "sensor-below", values))
