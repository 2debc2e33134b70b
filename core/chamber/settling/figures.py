"""The proof's single numbers as figures that show their working."""

from __future__ import annotations

from collections.abc import Iterator

from core.chamber.settling.analysis import Analysis, Probe
from core.chamber.settling.humid_figures import humid_figures
from core.chamber.settling.measures import (
    DRIFT,
    FINE_DIFFERENCE,
    FINE_TEMPERATURE,
    LASTS,
    SPEED,
    STARTS,
    after,
)
from core.chamber.settling.plain_figure import plain
from core.chamber.settling.rhythm import Rhythm
from core.quantities import COUNT, LOSS, RATIO, Amount
from core.sentence import Message, Sentence
from core.sources import (
    CYCLES_SEEN,
    DEFINITION,
    MAPPING_DKD,
    MAPPING_GB,
    MAPPING_IEC,
    SETTLED_DIN,
    TIME_CONSTANT,
)
from core.working import Figure

ABOUT: Message = "About: the probe and the coil answer late and blur where a run begins and ends."
ROUGHLY: Message = "Roughly: the readings are too few, too coarse or too noisy to tell how long a run lasts."
FEW_PROBES: Message = (
    "Known only where the probes hung: the standard asks for nine in a chamber up to two cubic metres."
)
AFTER_PULL_DOWN: Message = "After the first pull-down: {value}"
SHARES: dict[str, Message] = {
    "run_share_least": "Share of the time it runs, at least",
    "run_share_most": "Share of the time it runs, at most",
}
LIKE_A_DEFROST: Message = "Rises faster than the chamber warms by itself, for ten minutes or longer: {value}"
LIKE_A_DOOR: Message = "Rises within some minutes, and gone again: {value}"
WHILE_LOGGED: Message = "The log pauses: what happened in its pauses is not counted."
DURING_HALF_HOUR: Message = "The compressor's cycle is longer than half an hour, so no half-hour shows its whole swing."


def figures_of(probe: Probe) -> tuple[Figure, ...]:
    """One probe: temperature, settling, compressor, humidity; only what its log shows."""
    return (
        *_temperature(probe),
        *_settling(probe),
        *(_rhythm(probe.compressor.rhythm) if probe.compressor.rhythm else ()),
        *_events(probe),
        *humid_figures(probe),
    )


def space_figures(analysis: Analysis) -> tuple[Figure, ...]:
    """All probes together, each figure by the definition of the standard it is named after."""
    space = analysis.space
    if space is None:
        return ()
    means = list(space.means_c)
    cautions = (FEW_PROBES,) if len(means) < 9 else ()
    most, least = Amount(max(means), FINE_TEMPERATURE), Amount(min(means), FINE_TEMPERATURE)
    gradient = Amount(space.gradient_k, FINE_DIFFERENCE)
    return (
        Figure(
            "gradient",
            "Gradient (IEC 60068-3-5): two means furthest apart",
            gradient.value,
            FINE_DIFFERENCE,
            (
                Sentence(
                    "Warmest mean − coldest mean: {most} − {least} = {gradient}",
                    {"most": most, "least": least, "gradient": gradient},
                ),
            ),
            MAPPING_IEC,
            cautions,
        ),
        plain(
            "variation",
            "Variation in space (IEC 60068-3-5)",
            space.variation_k,
            FINE_DIFFERENCE,
            "Greatest distance of a probe's mean from the centre's mean: {value}",
            MAPPING_IEC,
            cautions,
        ),
        plain(
            "uniformity",
            "Uniformity (GB/T)",
            space.uniformity_k,
            FINE_DIFFERENCE,
            "Warmest less coldest probe at each moment; its mean over 30 min; the worst half-hour of the log: {value}",
            MAPPING_GB,
            cautions,
        ),
        plain(
            "inhomogeneity",
            "Spatial inhomogeneity (DKD-R 5-7)",
            space.inhomogeneity_k,
            FINE_DIFFERENCE,
            "Greatest distance of any probe from the centre at any moment, a half-width: {value}",
            MAPPING_DKD,
            cautions,
        ),
    )


def _temperature(probe: Probe) -> Iterator[Figure]:
    whole, steady = probe.temperature, probe.steady
    weigh = (
        "Each reading weighs by the time it covers, three logging intervals at most; after the first pull-down: {value}"
    )
    yield plain("mean", "Mean temperature", steady.mean, FINE_TEMPERATURE, weigh, DEFINITION)
    yield plain("deviation", "Standard deviation", steady.deviation, FINE_DIFFERENCE, weigh, DEFINITION)
    yield plain("lowest", "Lowest", steady.lowest, FINE_TEMPERATURE, AFTER_PULL_DOWN, DEFINITION)
    yield plain("highest", "Highest", steady.highest, FINE_TEMPERATURE, AFTER_PULL_DOWN, DEFINITION)
    yield plain("low_5", "5 % of the time below", steady.low_5, FINE_TEMPERATURE, weigh, DEFINITION)
    yield plain("high_95", "5 % of the time above", steady.high_95, FINE_TEMPERATURE, weigh, DEFINITION)
    if whole.in_band is not None:
        inside_s = whole.in_band * whole.covered_s
        amounts = {
            "inside": Amount(inside_s, LASTS),
            "all": Amount(whole.covered_s, LASTS),
            "share": Amount(whole.in_band, LOSS),
        }
        step = Sentence("Time within the band ÷ time logged: {inside} ÷ {all} = {share}", amounts)
        yield Figure("in_band", "Time within the band, of the whole log", whole.in_band, LOSS, (step,), DEFINITION)


def _settling(probe: Probe) -> Iterator[Figure]:
    if probe.stays_since_s is not None:
        since = after(probe.stays_since_s, probe.begins_s)
        words = (
            "From the reading after which the probe is shown within the band for 95 % of the time and never out of it "
            "for more than 15 min, doors and defrosts apart: {since} into the log"
        )
        yield Figure("settled", "Settled after", since.value, LASTS, (Sentence(words, {"since": since}),), SETTLED_DIN)
    if probe.drift_k is not None:
        words = (
            "Slope of the straight line through the readings since it settled or came down, doors and defrosts apart: "
            "{value}"
        )
        yield plain("drift", "Drift", probe.drift_k / 86_400, DRIFT, words, MAPPING_DKD)
    rhythm = probe.compressor.rhythm
    cautions = (DURING_HALF_HOUR,) if rhythm is not None and rhythm.period_s > 1800 else ()
    words = "(Highest − lowest) ÷ 2 within 30 min, of the worst half-hour, doors and defrosts left out: {value}"
    yield plain(
        "fluctuation", "Fluctuation (GB/T), ±", probe.fluctuation_k, FINE_DIFFERENCE, words, MAPPING_GB, cautions
    )
    if probe.instability_k is not None:
        words = "Greatest distance of a reading from the mean since then, a half-width: {value}"
        yield plain(
            "instability", "Temporal instability (DKD-R 5-7)", probe.instability_k, FINE_DIFFERENCE, words, MAPPING_DKD
        )


def _rhythm(rhythm: Rhythm) -> Iterator[Figure]:
    period, cools = Amount(rhythm.period_s, LASTS), Amount(rhythm.cools_s, LASTS)
    holds, share = Amount(rhythm.holds_s, LASTS), Amount(rhythm.run_share, LOSS)
    times = {"period": period, "cools": cools, "holds": holds, "share": share}
    hours = {"period": Amount(rhythm.period_s / 3600, RATIO), "starts": Amount(rhythm.starts_an_hour / 3600, STARTS)}
    run = "The mean run: undisturbed ones, laid over one another, fitted with the same answer at both turns: {cools}"
    every = "From the middle of one run to that of the next, the mean: {period}"
    yield Figure(
        "starts", "Compressor starts", rhythm.starts_an_hour / 3600, STARTS,
        (Sentence(every, times), Sentence("1 ÷ period in hours: 1 ÷ {period} = {starts}", hours)), CYCLES_SEEN,
    )  # fmt: skip
    yield Figure(
        "holds", "Holds between runs", rhythm.holds_s, LASTS,
        (Sentence(every, times), Sentence(run, times), Sentence("Period − run: {period} − {cools} = {holds}", times)),
        CYCLES_SEEN, (ABOUT if rhythm.is_share_sure else ROUGHLY,),
        min(rhythm.holds_s, rhythm.holds_low_s), max(rhythm.holds_s, rhythm.holds_high_s),
    )  # fmt: skip
    if rhythm.is_share_sure:
        yield Figure(
            "run_share", "Share of the time it runs", rhythm.run_share, LOSS,
            (Sentence(run, times), Sentence("Run ÷ period: {cools} ÷ {period} = {share}", times)),
            CYCLES_SEEN, (ABOUT,),
            rhythm.run_share_low, rhythm.run_share_high,
        )  # fmt: skip
    else:
        yield from _share_between(rhythm)
    yield plain(
        "swing",
        "Swing of the temperature",
        rhythm.swing_k,
        FINE_DIFFERENCE,
        "Usual peak − usual foot: {value}",
        CYCLES_SEEN,
    )
    yield plain(
        "cools_by", "Cools by", rhythm.cools_by_s, SPEED, "Slope in the middle of the runs: {value}", CYCLES_SEEN
    )
    yield plain(
        "warms_by", "Warms by", rhythm.warms_by_s, SPEED, "Slope in the middle of the holds: {value}", CYCLES_SEEN
    )
    words = "How far the first pull-down went below the usual foot: {value}"
    yield plain("overshoot", "Overshoot", rhythm.passed_k, FINE_DIFFERENCE, words, DEFINITION)
    if rhythm.warming_s is not None and rhythm.room_c is not None:
        amounts = {"room": Amount(rhythm.room_c, FINE_TEMPERATURE), "tau": Amount(rhythm.warming_s, LASTS)}
        text = "1 ÷ slope of ln(room − temperature) in holds, room at {room}: {tau}"
        caution = (
            "As the holds show it, the fan's heat counted as the room's. In a log that does not begin with the first "
            "pull-down a wall that warms apart may hide: its own time constant is longer, often many times."
        )
        yield Figure(
            "warming", "Warming time constant", rhythm.warming_s, LASTS,
            (Sentence(text, amounts),), TIME_CONSTANT, (caution,),
        )  # fmt: skip


def _share_between(rhythm: Rhythm) -> Iterator[Figure]:
    least, most = (rhythm.cools_low_s, rhythm.run_share_low), (rhythm.cools_high_s, rhythm.run_share_high)
    for (key, name), (cools_s, share) in zip(SHARES.items(), (least, most), strict=True):
        amounts = {
            "cools": Amount(cools_s, LASTS),
            "period": Amount(rhythm.period_s, LASTS),
            "share": Amount(share, LOSS),
        }
        text = "Run ÷ period: {cools} ÷ {period} = {share}"
        yield Figure(key, name, share, LOSS, (Sentence(text, amounts),), CYCLES_SEEN, (ROUGHLY,))


def _events(probe: Probe) -> Iterator[Figure]:
    if probe.compressor.events_why_not:
        return
    cautions = () if probe.compressor.looked.is_whole else (WHILE_LOGGED,)
    kinds = [event.kind for event in probe.compressor.events]
    defrosts, doors = kinds.count("defrost"), kinds.count("door")
    yield plain("defrosts", "Defrosts", defrosts, COUNT, LIKE_A_DEFROST, CYCLES_SEEN, cautions)
    yield plain("doors", "Doors opened", doors, COUNT, LIKE_A_DOOR, CYCLES_SEEN, cautions)
