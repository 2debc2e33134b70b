"""What to change in a chamber that has not settled, in the order in which to try it: one thing at a time.

Set-point offset, differential, fan, load, sensor correction: the cheap and reversible first. Where the lines are drawn
is common practice, without a source.
"""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from core.chamber.settling.analysis import Analysis, Compressor
from core.chamber.settling.measures import FINE_DIFFERENCE, LASTS, STARTS
from core.quantities import LOSS, RELATIVE_HUMIDITY, TEMPERATURE_DIFFERENCE, Amount
from core.sources import COMMON_PRACTICE, MAPPING_IEC, Source
from core.working import Step

OFFSET_PART = 1 / 3
"""Of the band's half-width: a mean further off than that is worth a turn of the set-point."""
SWING_PART = 0.8
"""Of the whole band: a swing wider than that leaves no room for anything else."""
SHORTEST_HOLD_S, MOST_STARTS_AN_HOUR = 300.0, 6.0
"""A compressor wants some minutes between runs for its pressures to even out (common practice)."""
MOST_RUN_SHARE = 0.8
STEADY_PART = 1 / 3
LEAST_CORRECTION_K = 0.3


@frozen
class Advice:
    """key: "set-point", "humidity-set-point", "differential", "fan", "load" or "sensor"."""

    key: str
    text: Step
    source: Source = COMMON_PRACTICE


def advise(analysis: Analysis) -> tuple[Advice, ...]:
    """In order. Nothing where nothing stands out."""
    return (
        *_set_point(analysis),
        *_differential(analysis),
        *_fan(analysis),
        *_load(analysis),
        *_sensors(analysis),
    )


def _set_point(analysis: Analysis) -> Iterator[Advice]:
    band, centre = analysis.wanted.temperature, analysis.centre
    off_k = centre.steady.mean - band.target
    if abs(off_k) > OFFSET_PART * band.half:
        way = "lower" if off_k > 0 else "higher"
        amounts = {"off": Amount(abs(off_k), TEMPERATURE_DIFFERENCE)}
        yield Advice(
            "set-point", Step(f"Set the thermostat {{off}} {way}: so far is the mean from what is wanted.", amounts)
        )
    damp = analysis.wanted.humidity
    if damp is None or centre.humidity is None:
        return
    off = centre.humidity.spread.mean - damp.target
    if abs(off) > OFFSET_PART * damp.half:
        way = "lower" if off > 0 else "higher"
        amounts = {"off": Amount(abs(off), RELATIVE_HUMIDITY)}
        yield Advice("humidity-set-point", Step(f"Set the humidistat {{off}} (of relative humidity) {way}.", amounts))


def _differential(analysis: Analysis) -> Iterator[Advice]:
    rhythm = analysis.centre.compressor.rhythm
    if rhythm is None:
        return
    room_k = 2 * SWING_PART * analysis.wanted.temperature.half
    if rhythm.swing_k > room_k:
        amounts = {
            "swing": Amount(rhythm.swing_k, TEMPERATURE_DIFFERENCE),
            "less": Amount(rhythm.swing_k - room_k, TEMPERATURE_DIFFERENCE),
        }
        text = "Narrow the differential by {less} or more: the trace swings by {swing} with each run of the compressor."
        yield Advice("differential", Step(text, amounts))
    elif rhythm.holds_s < SHORTEST_HOLD_S or rhythm.starts_an_hour > MOST_STARTS_AN_HOUR:
        amounts = {
            "hold": Amount(rhythm.holds_s, LASTS),
            "starts": Amount(rhythm.starts_an_hour / 3600, STARTS),
        }
        text = "Widen the differential: the compressor starts {starts} and rests for {hold} only, which wears it out."
        yield Advice("differential", Step(text, amounts))


def _fan(analysis: Analysis) -> Iterator[Advice]:
    space, most_k = analysis.space, analysis.wanted.apart_k
    if space is None or max(space.gradient_k, space.uniformity_k) <= most_k:
        return
    amounts = {"apart": Amount(max(space.gradient_k, space.uniformity_k), TEMPERATURE_DIFFERENCE)}
    text = "Move more air, or turn the fan, and keep its way clear: the probes are {apart} apart."
    yield Advice("fan", Step(text, amounts), MAPPING_IEC)


def _load(analysis: Analysis) -> Iterator[Advice]:
    centre = analysis.centre
    share = _run_share(centre.compressor)
    too_warm = centre.steady.low_5 > analysis.wanted.temperature.target + analysis.wanted.temperature.half
    if share is not None and share > MOST_RUN_SHARE:
        amounts = {"share": Amount(share, LOSS)}
        text = (
            "Lighten its work: the compressor runs {share} of the time. Look at the door's seal, at ice, at the room."
        )
        yield Advice("load", Step(text, amounts))
    elif share is None and too_warm:
        yield Advice(
            "load", Step("It never comes down to its band: look at the door's seal, at ice, at the room's heat.")
        )


def _run_share(compressor: Compressor) -> float | None:
    return compressor.rhythm.run_share if compressor.rhythm else None


def _sensors(analysis: Analysis) -> Iterator[Advice]:
    """Two probes that differ steadily may hang in different air, or one is wrong: side by side they tell."""
    for pair in analysis.pairs:
        off = pair.difference.mean
        if abs(off) < LEAST_CORRECTION_K or pair.difference.deviation > STEADY_PART * abs(off):
            continue
        amounts = {"off": Amount(abs(off), FINE_DIFFERENCE)}
        way = "above" if off > 0 else "below"
        one, other = (name.replace("{", "{{").replace("}", "}}") for name in (pair.one, pair.other))
        text = (
            f"“{one}” reads {{off}} {way} “{other}” all the time. Lay them side by side for an hour: if they still "
            "differ, check both at the ice point and correct the one that is off."
        )
        yield Advice("sensor", Step(text, amounts))
