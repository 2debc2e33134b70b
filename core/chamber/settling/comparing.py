"""Two runs side by side: did the change do what it was made for?"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from attrs import frozen

from core.chamber.settling.analysis import Analysis
from core.chamber.settling.figure_names import FIGURE_NAMES, Named
from core.chamber.settling.measures import DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS, after
from core.chamber.settling.rhythm import Rhythm
from core.language import Message
from core.quantities import COUNT, LOSS, RELATIVE_HUMIDITY, Amount, Quantity


@frozen
class Compared:
    """One figure of both runs; None where a run does not show it."""

    key: str
    name: Message
    one: Amount | None
    other: Amount | None


def compare(one: Analysis, other: Analysis) -> tuple[Compared, ...]:
    """The centre probe of each, then all probes; only what at least one of the runs shows."""
    return beside(key_figures(one), key_figures(other))


def beside(one: Iterable[Named], other: Iterable[Named]) -> tuple[Compared, ...]:
    """The same of two runs whose figures were kept."""
    found = [dict(run) for run in (one, other)]
    return tuple(
        Compared(key, FIGURE_NAMES[key], found[0].get(key), found[1].get(key))
        for key in dict.fromkeys([*found[0], *found[1]])
    )


def key_figures(run: Analysis) -> tuple[Named, ...]:
    """What is worth keeping of a run once its log is put away."""
    return tuple(_figures(run))


def _figures(run: Analysis) -> Iterator[Named]:
    centre = run.centre
    if centre.stays_since_s is not None:
        yield "settled", after(centre.stays_since_s, centre.begins_s)
    yield "mean", Amount(centre.steady.mean, FINE_TEMPERATURE)
    yield "lowest", Amount(centre.steady.lowest, FINE_TEMPERATURE)
    yield "highest", Amount(centre.steady.highest, FINE_TEMPERATURE)
    if centre.steady.in_band is not None:
        yield "in_band", Amount(centre.steady.in_band, LOSS)
    if centre.drift_k is not None:
        yield "drift", Amount(centre.drift_k / 86_400, DRIFT)
    yield "fluctuation", Amount(centre.fluctuation_k, FINE_DIFFERENCE)
    if run.space is not None:
        yield "gradient", Amount(run.space.gradient_k, FINE_DIFFERENCE)
        yield "uniformity", Amount(run.space.uniformity_k, FINE_DIFFERENCE)
    if centre.compressor.rhythm is not None:
        yield from _rhythm(centre.compressor.rhythm)
    for kind in () if centre.compressor.events_why_not else ("defrost", "door"):
        yield kind, Amount(sum(event.kind == kind for event in centre.compressor.events), COUNT)
    if centre.humidity is not None:
        yield "humidity", Amount(centre.humidity.spread.mean, RELATIVE_HUMIDITY)
        if centre.humidity.rhythm.swing is not None:
            yield "humidity_swing", Amount(centre.humidity.rhythm.swing.size, LOSS)


def _rhythm(rhythm: Rhythm) -> Iterator[Named]:
    shown: tuple[tuple[str, Callable[[Rhythm], float | None], Quantity], ...] = (
        ("starts", lambda it: it.starts_an_hour / 3600, STARTS),
        ("run_share", lambda it: it.run_share if it.is_share_sure else None, LOSS),
        ("holds", lambda it: it.holds_s, LASTS),
        ("swing", lambda it: it.swing_k, FINE_DIFFERENCE),
        ("cools_by", lambda it: it.cools_by_s, SPEED),
        ("warming", lambda it: it.warming_s, LASTS),
    )
    for key, of, quantity in shown:
        value = of(rhythm)
        if value is not None:
            yield key, Amount(value, quantity)
