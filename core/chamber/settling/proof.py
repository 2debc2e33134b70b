"""Has the empty chamber proved itself? Settled since when; or not, because of what, and what to change."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from core.chamber.settling import proof_words as words
from core.chamber.settling.advice import NONE, Advice, advise
from core.chamber.settling.analysis import Analysis, Probe
from core.chamber.settling.measures import DRIFT, LASTS, after
from core.chamber.settling.settled import Drift
from core.chamber.settling.staying import LEAST_INSIDE, LONGEST_OUT_S, MOST_EXCUSED, Stay
from core.quantities import LOSS, RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Message, Sentence
from core.sources import COMMON_PRACTICE, CYCLES_SEEN, MAPPING_DKD, MAPPING_IEC, MAPPING_WHO, SETTLED_DIN
from core.verdict import Reason

DRIFT_PART = 0.5
"""Of the band's half-width, in a day: at that pace the chamber leaves its band within two days (common practice)."""
SLACK = 1e-9
LAST_READING_S = 600.0
"""The last reading counts for one interval more: two days of minutes end at 47 h 59 min."""
BRING: dict[str, Message] = {
    "temperature": "Bring the temperature between {low} and {high}: see what to change.",
    "humidity": "Bring the humidity between {low} and {high}: see what to change.",
}
LEAST_COVERED = LEAST_INSIDE
"""Of the time asked for: a reading may be lost now and then."""


@frozen
class Proof:
    """reasons: all that was held against it, in the order to see to them. advice: what to change, in order.

    settled_since_s: the log's time; None where a reason is not met, or is not known.
    """

    settled_since_s: float | None
    reasons: tuple[Reason, ...]
    advice: tuple[Advice, ...]

    @property
    def is_settled(self) -> bool:
        return self.settled_since_s is not None

    @property
    def because(self) -> tuple[Reason, ...]:
        """What stands against it."""
        return tuple(reason for reason in self.reasons if reason.met is not True)


def prove(analysis: Analysis, doubts: tuple[Reason, ...] = ()) -> Proof:
    """Settled only where every reason is met: what the logs do not show is no proof. doubts: of the loggers.

    A reason is met only by readings that show it, and never by readings that are missing.
    """
    reasons = (
        *doubts,
        _long_enough(analysis),
        *(reason for probe in analysis.probes for reason in _looked_at(analysis, probe)),
        *(reason for probe in analysis.probes for reason in _temperature(analysis, probe)),
        *(reason for probe in analysis.probes for reason in _humidity(analysis, probe)),
        *_humidity_at_all(analysis),
        _apart(analysis),
    )
    is_settled = all(reason.met is True for reason in reasons)
    advice = advise(analysis) or (() if is_settled else (NONE,))
    return Proof(max(_since(analysis)) if is_settled else None, reasons, advice)


def _since(analysis: Analysis) -> Iterator[float]:
    for probe in analysis.probes:
        if probe.settled_s is not None:
            yield probe.settled_s
        if probe.humidity is not None and probe.humidity.settled_s is not None:
            yield probe.humidity.settled_s


def _long_enough(analysis: Analysis) -> Reason:
    covered_s = min(probe.sampling.covered_s for probe in analysis.probes)
    least_s = analysis.wanted.lasts_s
    is_met = covered_s >= LEAST_COVERED * least_s and all(
        probe.lasts_s >= least_s - LAST_READING_S for probe in analysis.probes
    )
    amounts = {"covered": Amount(covered_s, LASTS), "least": Amount(least_s, LASTS)}
    return Reason(
        "length",
        words.reason("length", amounts),
        True if is_met else None,
        MAPPING_WHO,
        Sentence("Run it empty for {least}, and read the logs again.", amounts),
    )


def _looked_at(analysis: Analysis, probe: Probe) -> Iterator[Reason]:
    """Read often enough, and without a hole."""
    sampled = probe.sampling
    amounts = {"interval": Amount(sampled.interval_s, LASTS), "most": Amount(sampled.most_s, LASTS)}
    settle = Sentence("Set the logger to a reading every {most} or oftener, and run again.", amounts)
    key = "sampling-without-cycles"
    if sampled.period_s is not None:
        key, amounts["period"] = "sampling", Amount(sampled.period_s, LASTS)
    text = words.reason(key, {"probe": probe.name, **amounts})
    yield Reason(f"sampling-{probe.name}", text, True if sampled.is_enough else None, CYCLES_SEEN, settle)
    hole_s = probe.stay.lately.longest_hole_s
    holes = {
        "hole": Amount(hole_s or sampled.interval_s, LASTS),
        "most": Amount(max(LONGEST_OUT_S, sampled.most_s), LASTS),
        "window": Amount(probe.ends_s - probe.stay.lately.from_s, LASTS),
    }
    yield Reason(
        f"hole-{probe.name}",
        words.reason("hole", {"probe": probe.name, **holes}),
        True if hole_s <= LONGEST_OUT_S else None,
        MAPPING_WHO,
        Sentence("See why the logger paused, and let it run on without a pause.", holes),
    )


def _temperature(analysis: Analysis, probe: Probe) -> Iterator[Reason]:
    band = analysis.wanted.temperature
    amounts = {
        "low": Amount(band.target - band.half, TEMPERATURE),
        "high": Amount(band.target + band.half, TEMPERATURE),
    }
    yield _within(analysis, probe, probe.stay, "temperature", amounts)
    if probe.settled_s is not None and probe.drift is not None:
        yield _drift(probe, probe.drift, DRIFT_PART * band.half)


def _drift(probe: Probe, drift: Drift, most_k: float) -> Reason:
    amounts = {"drift": Amount(drift.by_k / 86_400, DRIFT), "most": Amount(most_k / 86_400, DRIFT)}
    return Reason(
        f"drift-{probe.name}",
        words.reason("drift", {"probe": probe.name, **amounts}),
        _is_below(abs(drift.by_k), drift.give_k, most_k),
        MAPPING_DKD,
        Sentence("Let it run until it no longer drifts; look for what changes: the room, ice on the coil, the tank."),
    )


def _is_below(value: float, give: float, most: float) -> bool | None:
    """None where it is too near to the limit to tell."""
    if value + give <= most + SLACK:
        return True
    return None if value - give <= most else False


def _humidity(analysis: Analysis, probe: Probe) -> Iterator[Reason]:
    band = analysis.wanted.humidity
    if band is None or probe.humidity is None or probe.humidity.stay is None:
        return
    amounts = {
        "low": Amount(max(0.0, band.target - band.half), RELATIVE_HUMIDITY),
        "high": Amount(min(1.0, band.target + band.half), RELATIVE_HUMIDITY),
    }
    yield _within(analysis, probe, probe.humidity.stay, "humidity", amounts)


def _within(analysis: Analysis, probe: Probe, stays: Stay, what: str, amounts: dict[str, Amount]) -> Reason:
    lately, since_s = stays.lately, stays.since_s
    more = {
        "least": Amount(analysis.wanted.held_s, LASTS),
        "window": Amount(probe.ends_s - lately.from_s, LASTS),
        "inside": Amount(lately.inside, LOSS),
        "outside": Amount(lately.outside, LOSS),
        "share": Amount(LEAST_INSIDE, LOSS),
        "out": Amount(lately.longest_out_s, LASTS),
        "until": after(lately.out_until_s, probe.begins_s),
        "most": Amount(LONGEST_OUT_S, LASTS),
        **amounts,
    }
    settle = Sentence(BRING[what], more)
    met: bool | None = False
    if since_s is not None and probe.ends_s - since_s >= analysis.wanted.held_s - LAST_READING_S:
        met = True
        more |= {"since": after(since_s, probe.begins_s), "inside": Amount(stays.inside, LOSS)}
        key = "stays"
    elif lately.inside == 0 and lately.outside > 0:
        key = "never"
    elif probe.compressor.events_why_not and 1 - LEAST_INSIDE < lately.outside <= MOST_EXCUSED:
        met, settle = None, Sentence("Read it every minute, and run again: then doors and defrosts can be told.", more)
        key = "doors-unknown"
    elif lately.longest_out_s > LONGEST_OUT_S:
        key = "at-a-time"
    elif lately.outside > 1 - LEAST_INSIDE:
        key = "too-much"
    elif lately.inside < LEAST_INSIDE:
        met, settle = None, Sentence("Read it oftener and without a pause, and run again.", more)
        key = "not-shown"
    else:
        met, settle = None, Sentence("Let it run until it has held for {least}.", more)
        key = "not-yet"
    text = words.reason(f"{what}-{key}", {"probe": probe.name, **more})
    return Reason(f"{what}-{probe.name}", text, met, SETTLED_DIN, settle)


def _humidity_at_all(analysis: Analysis) -> Iterator[Reason]:
    if analysis.wanted.humidity is not None and all(probe.humidity is None for probe in analysis.probes):
        yield Reason(
            "humidity",
            words.reason("no-humidity", {}),
            None,
            COMMON_PRACTICE,
            Sentence("Log the humidity too; or ask for none, if the chamber is to prove its temperature only."),
        )


def _apart(analysis: Analysis) -> Reason:
    most = Amount(analysis.wanted.apart_k, TEMPERATURE_DIFFERENCE)
    settle = Sentence("Move the air: see what to change.")
    if analysis.space is None:
        text = words.reason("one-probe", {})
        more = Sentence("Hang two probes or more, the one high and the other low, and run it again.")
        return Reason("gradient", text, None, MAPPING_IEC, more)
    space = analysis.space
    amounts = {
        "apart": Amount(space.gradient_k, TEMPERATURE_DIFFERENCE),
        "together": Amount(space.together_s, LASTS),
        "least": Amount(analysis.wanted.held_s, LASTS),
        "most": most,
    }
    if space.together_s < (LEAST_COVERED - MOST_EXCUSED) * analysis.wanted.held_s:
        text = words.reason("not-together", amounts)
        return Reason(
            "gradient", text, None, MAPPING_IEC, Sentence("Run the probes at the same time, and read them again.")
        )
    text = words.reason("apart", {"warmest": space.warmest, "coldest": space.coldest, **amounts})
    is_met = _is_below(space.gradient_k, space.gradient_give_k, analysis.wanted.apart_k)
    return Reason("gradient", text, is_met, MAPPING_IEC, settle)
