"""Has the empty chamber proved itself? Settled since when; or not, because of what, and what to change."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from core.chamber.settling.advice import Advice, advise
from core.chamber.settling.analysis import Analysis, Probe
from core.chamber.settling.measures import DRIFT, LASTS, after
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.sources import COMMON_PRACTICE, MAPPING_DKD, MAPPING_IEC, MAPPING_WHO, SETTLED_DIN
from core.verdict import Reason
from core.working import Step

DRIFT_PART = 0.5
"""Of the band's half-width, in a day: at that pace the chamber leaves its band within two days (common practice)."""
SLACK = 1e-9
LAST_READING_S = 600.0
"""The last reading stands for one interval more: two days of minutes end at 47 h 59 min."""
LEAVES_AGAIN_S = 3600.0


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
    """Settled only where every reason is met: what the logs do not show is no proof. doubts: of the loggers."""
    reasons = (
        *doubts,
        _long_enough(analysis),
        *(reason for probe in analysis.probes for reason in _warmth(analysis, probe)),
        *(reason for probe in analysis.probes for reason in _dampness(analysis, probe)),
        *_damp_at_all(analysis),
        _apart(analysis),
    )
    is_settled = all(reason.met is True for reason in reasons)
    return Proof(max(_since(analysis)) if is_settled else None, reasons, advise(analysis))


def _since(analysis: Analysis) -> Iterator[float]:
    for probe in analysis.probes:
        if probe.settled_s is not None:
            yield probe.settled_s
        if probe.humidity is not None and probe.humidity.settled_s is not None:
            yield probe.humidity.settled_s


def _long_enough(analysis: Analysis) -> Reason:
    lasts_s = min(probe.lasts_s for probe in analysis.probes)
    least_s = analysis.wanted.lasts_s
    is_met = lasts_s >= least_s - LAST_READING_S
    amounts = {"lasts": Amount(lasts_s, LASTS), "least": Amount(least_s, LASTS)}
    return Reason(
        "length",
        Step("The logs last {lasts}; {least} are asked for.", amounts),
        True if is_met else None,
        MAPPING_WHO,
        Step("Run it empty for {least}, and read the logs again.", amounts),
    )


def _warmth(analysis: Analysis, probe: Probe) -> Iterator[Reason]:
    band = analysis.wanted.temperature
    amounts = {
        "low": Amount(band.target - band.half, TEMPERATURE),
        "high": Amount(band.target + band.half, TEMPERATURE),
    }
    yield _within(analysis, probe, probe.arrived_s, probe.settled_s, "temperature", amounts)
    if probe.settled_s is not None and probe.drift_k is not None:
        most = DRIFT_PART * band.half
        drifts = {"drift": Amount(probe.drift_k / 86_400, DRIFT), "most": Amount(most / 86_400, DRIFT)}
        yield Reason(
            f"drift-{probe.name}",
            Step(f"{_said(probe)} drifts by {{drift}} after settling; {{most}} at most is asked for.", drifts),
            abs(probe.drift_k) <= most + SLACK,
            MAPPING_DKD,
            Step("Let it run on until it drifts no more; look for what changes: the room, ice on the coil, the tank."),
        )


def _dampness(analysis: Analysis, probe: Probe) -> Iterator[Reason]:
    band = analysis.wanted.humidity
    if band is None or probe.humidity is None:
        return
    amounts = {
        "low": Amount(max(0.0, band.target - band.half), RELATIVE_HUMIDITY),
        "high": Amount(min(1.0, band.target + band.half), RELATIVE_HUMIDITY),
    }
    yield _within(analysis, probe, probe.humidity.arrived_s, probe.humidity.settled_s, "humidity", amounts)


def _within(
    analysis: Analysis,
    probe: Probe,
    arrived_s: float | None,
    settled_s: float | None,
    what: str,
    amounts: dict[str, Amount],
) -> Reason:
    key = f"{what}-{probe.name}"
    settle = Step(f"Bring the {what} between {{low}} and {{high}}: see what to change.", amounts)
    if settled_s is None or arrived_s is None:
        text = Step(f"{_said(probe)}: its {what} does not stay between {{low}} and {{high}}.", amounts)
        return Reason(key, text, False, SETTLED_DIN, settle)
    more = {
        "since": after(settled_s, probe.begins_s),
        "held": Amount(probe.ends_s - settled_s, LASTS),
        "least": Amount(analysis.wanted.held_s, LASTS),
        **amounts,
    }
    if probe.ends_s - settled_s >= analysis.wanted.held_s - LAST_READING_S:
        text = Step(f"{_said(probe)}: its {what} stays between {{low}} and {{high}} from {{since}} on.", more)
        return Reason(key, text, True, SETTLED_DIN, settle)
    if settled_s - arrived_s > LEAVES_AGAIN_S:
        text = Step(f"{_said(probe)}: its {what} leaves {{low}} to {{high}} again, as late as {{since}} in.", more)
        return Reason(key, text, False, SETTLED_DIN, settle)
    text = Step(f"{_said(probe)}: its {what} has been between {{low}} and {{high}} for {{held}} only.", more)
    return Reason(key, text, None, SETTLED_DIN, Step("Let it run until it has held for {least}.", more))


def _damp_at_all(analysis: Analysis) -> Iterator[Reason]:
    if analysis.wanted.humidity is not None and all(probe.humidity is None for probe in analysis.probes):
        yield Reason(
            "humidity",
            Step("No probe logged the humidity."),
            None,
            COMMON_PRACTICE,
            Step("Log the humidity too; or ask for none, if the chamber is to prove its temperature only."),
        )


def _apart(analysis: Analysis) -> Reason:
    most = Amount(analysis.wanted.apart_k, TEMPERATURE_DIFFERENCE)
    settle = Step("Move the air: see what to change.")
    if analysis.space is None:
        text = Step("Fewer than two probes were logged at the same time: warm and cold places are not known.")
        more = Step("Hang two probes or more, the one high and the other low, and run it again.")
        return Reason("gradient", text, None, MAPPING_IEC, more)
    amounts = {"apart": Amount(analysis.space.gradient_k, TEMPERATURE_DIFFERENCE), "most": most}
    names = f"“{analysis.space.warmest}” and “{analysis.space.coldest}”"
    text = Step(f"The means of {_quoted(names)} are {{apart}} apart; {{most}} at most is asked for.", amounts)
    return Reason("gradient", text, analysis.space.gradient_k <= analysis.wanted.apart_k + SLACK, MAPPING_IEC, settle)


def _said(probe: Probe) -> str:
    return _quoted(f"“{probe.name}”")


def _quoted(name: str) -> str:
    """A probe may be called anything, also {this}."""
    return name.replace("{", "{{").replace("}", "}}")
