"""Where in the chamber is it warm, and how steady is it there? Each figure by the definition of the standard it names.

The standards' figures for the same log differ by a factor of two, so none is given without its name. A small chamber
with fewer than nine probes is described only where the probes are.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from itertools import combinations, compress, repeat
from operator import sub

from attrs import frozen

from core.chamber.series import LONGEST_GAP, Series, held_s, interval_s, stretches
from core.chamber.settling.statistics import Spread, spread

WINDOW_S = 1800.0
FEWEST_READINGS = 30
ROUNDING_S = 1e-6
AT_ONCE = 24
"""Windows looked at together before each by itself."""


@frozen
class Pair:
    """One probe less another, over the readings they share in time."""

    one: str
    other: str
    difference: Spread


@frozen
class Space:
    """All probes together. K. centre: the probe the others are compared with; means as the probes are given.

    gradient_k: greatest difference of two means. variation_k: greatest distance of a mean from the centre's. Both IEC
    60068-3-5. uniformity_k: greatest less least over the probes, its mean over the worst 30 min (GB/T). overall_k: the
    same over the whole. inhomogeneity_k: greatest distance of any probe from the centre at any moment (DKD-R 5-7).
    widest_k: greatest less least at any moment. together_s: for so long all were logged. gradient_give_k: another way
    of logging the same may move the gradient by so much: three standard errors.
    """

    centre: str
    warmest: str
    coldest: str
    gradient_k: float
    gradient_give_k: float
    together_s: float
    variation_k: float
    uniformity_k: float
    overall_k: float
    inhomogeneity_k: float
    widest_k: float
    means_c: tuple[float, ...]


def fluctuation(
    times_s: Sequence[float], values: Sequence[float], window_s: float = WINDOW_S, usual_s: float | None = None
) -> float:
    """±(highest − lowest) ÷ 2 at a point, of the worst window (GB/T). window_s: the standard's 30 min, or the whole.

    usual_s: between two readings, where that is known.
    """
    if window_s >= times_s[-1] - times_s[0]:
        return (max(values) - min(values)) / 2
    usual_s = interval_s(times_s) if usual_s is None else usual_s
    few = int(window_s / usual_s * (1 + 1e-9)) + 1
    return max(_widest(list(values[first:end]), few) for first, end in stretches(times_s, usual_s)) / 2


def _widest(values: list[float], few: int) -> float:
    """Highest less lowest of any `few` neighbours. Windows that together span no more than the widest yet are passed
    over: hardly one in a hundred is looked at by itself."""
    last = max(0, len(values) - few)
    widest = 0.0
    for first in range(0, last + 1, AT_ONCE):
        end = min(first + AT_ONCE, last + 1)
        if _span(values[first : end - 1 + few]) > widest:
            widest = max(widest, *(_span(values[at : at + few]) for at in range(first, end)))
    return widest


def _span(values: Sequence[float]) -> float:
    return max(values) - min(values)


def instability(
    times_s: Sequence[float], values: Sequence[float], lasts_s: Sequence[float] | None = None
) -> float | None:
    """Greatest distance of a reading from the mean after steady state (DKD-R 5-7): half-width of a rectangle.

    None for less than 30 min or 30 readings: the guideline asks for both. lasts_s: as in `spread`.
    """
    if len(values) < FEWEST_READINGS or times_s[-1] - times_s[0] < WINDOW_S:
        return None
    mean = spread(times_s, values, lasts_s=lasts_s).mean
    return max(max(values) - mean, mean - min(values))


def pairs(probes: Sequence[Series]) -> tuple[Pair, ...]:
    """Every two probes that were logged at the same time."""
    both = ((_together(two), two) for two in combinations(probes, 2))
    return tuple(_pair(times_s, columns, two) for (times_s, columns), two in both if len(times_s) > 1)


def space(probes: Sequence[Series], centre: str | None = None) -> Space | None:
    """centre: a probe's name; None means the first. None for fewer than two probes, or none at the same time."""
    if len(probes) < 2:
        return None
    times_s, columns = _together(probes)
    if len(times_s) < 2:
        return None
    names = [series.probe for series in probes]
    middle = names.index(centre) if centre in names else 0
    widths = list(map(sub, map(max, *columns), map(min, *columns)))
    lasts_s = _lasts_s(times_s, probes[0])
    means = [spread(times_s, column, lasts_s=lasts_s).mean for column in columns]
    warmest, coldest = means.index(max(means)), means.index(min(means))
    apart = spread(times_s, list(map(sub, columns[warmest], columns[coldest])), lasts_s=lasts_s)
    return Space(
        centre=names[middle],
        warmest=names[warmest],
        coldest=names[coldest],
        gradient_k=max(means) - min(means),
        gradient_give_k=3 * apart.deviation / math.sqrt(len(times_s)),
        together_s=sum(lasts_s),
        variation_k=max(abs(mean - means[middle]) for mean in means),
        uniformity_k=_worst_mean(times_s, widths),
        overall_k=spread(times_s, widths, lasts_s=lasts_s).mean,
        inhomogeneity_k=max(max(map(abs, map(sub, column, columns[middle]))) for column in columns),
        widest_k=max(widths),
        means_c=tuple(means),
    )


def _pair(times_s: Sequence[float], columns: Sequence[Sequence[float]], two: Sequence[Series]) -> Pair:
    # Rounded to a millionth of a kelvin, or every difference of two decimals would be a value of its own.
    exact = list(map(sub, *columns))
    rounded = {each: round(each, 6) for each in set(exact)}
    difference = list(map(rounded.__getitem__, exact))
    return Pair(two[0].probe, two[1].probe, spread(times_s, difference, lasts_s=_lasts_s(times_s, two[0])))


def _lasts_s(times_s: Sequence[float], first: Series) -> list[float]:
    return first.held_s if times_s is first.times_s else held_s(times_s)


def _worst_mean(times_s: Sequence[float], values: Sequence[float]) -> float:
    """Greatest mean over a window of 30 min; of all there is where that is less."""
    first, total, worst = 0, 0.0, -math.inf
    for index, value in enumerate(values):
        total += value
        while times_s[index] - times_s[first] > WINDOW_S + ROUNDING_S:
            total -= values[first]
            first += 1
        if first or index == len(values) - 1:
            mean = total / (index - first + 1)
            if mean > worst:
                worst = mean
    return worst


def _together(probes: Sequence[Series]) -> tuple[Sequence[float], list[Sequence[float]]]:
    """The first probe's times, and each probe's temperatures then: straight between its readings, not over gaps."""
    first, *others = probes
    if all(other.times_s == first.times_s for other in others):
        return first.times_s, [series.temperatures_c for series in probes]
    columns = [first.temperatures_c, *(_at(other, first.times_s) for other in others)]
    is_known = [not math.isnan(sum(row)) for row in zip(*columns, strict=True)]
    return list(compress(first.times_s, is_known)), [list(compress(column, is_known)) for column in columns]


def _at(series: Series, times_s: Sequence[float]) -> list[float]:
    """NaN where it is not known."""
    longest_s = LONGEST_GAP * series.interval_s
    known = dict(zip(series.times_s, series.temperatures_c, strict=True))
    values = list(map(known.get, times_s, repeat(math.nan)))
    for index, value in enumerate(values):
        if value != value:
            values[index] = _between(series, times_s[index], longest_s)
    return values


def _between(series: Series, at_s: float, longest_s: float) -> float:
    above = bisect_right(series.times_s, at_s)
    if above in (0, len(series)) or series.times_s[above] - series.times_s[above - 1] > longest_s:
        return math.nan
    before_s, low, high = series.times_s[above - 1], *series.temperatures_c[above - 1 : above + 1]
    return low + (high - low) * (at_s - before_s) / (series.times_s[above] - before_s)
