"""How right the two-day proof is: over many random chambers of both of the tests' physical models, truth known.

Each is logged every 10 s, every minute and every five. A row's value is the worst of the three, with each beside it.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from typing import Any

from building.bench import Row
from building.bench.many_chambers import CHAMBERS, Chambers, Told
from tests.core.chamber_study import LUMPS, WALLED, recall_and_precision

MOST_DUTY_OFF = 0.03


def rows(count: int = CHAMBERS) -> dict[str, Callable[[], Row]]:
    """settling-…: that many chambers of one lump. walled-…: of air, wall and evaporator."""
    found: dict[str, Callable[[], Row]] = {}
    chambers = Chambers(count)
    lumps, walled = (partial(chambers.outcomes, name, kind) for name, kind in (("settling", LUMPS), ("walled", WALLED)))
    for name, told, least in (("settling", lumps, 0.95), ("walled", walled, 0.90)):
        found |= {
            f"{name}-cycles": lambda told=told, least=least: _cycles(told(), least),
            f"{name}-duty": lambda told=told: _duty(told()),
            f"{name}-events": lambda told=told: _events(told()),
            f"{name}-verdict": lambda told=told: _verdict(told()),
        }
    return found | {"settling-hold": lambda: _hold(lumps()), "settling-tau": lambda: _tau(lumps())}


def _cycles(told: Told, least: float) -> Row:
    exact: dict[str, float] = {}
    more: dict[str, Any] = {}
    for every, outcomes in told.items():
        off = [each.count_off for each in outcomes if each.count_off is not None]
        exact[every] = _share(each == 0 for each in off)
        within_one = _share(abs(each) <= 1 for each in off)
        more[every] = {
            "exact": exact[every],
            "within_one": within_one,
            "cannot_be_told": len(outcomes) - len(off),
            "chambers": len(outcomes),
        }
    return Row(min(exact.values()), "share of chambers counted exactly", least, more)


def _duty(told: Told) -> Row:
    """Share of the time the compressor runs, less the true one; points are where it is told by itself. Ranges,
    at most a quarter wide, are counted beside them, and those that the truth lies outside of."""
    off = {
        every: [abs(each.duty_off) for each in outcomes if each.duty_off is not None]
        for every, outcomes in told.items()
    }
    points = {
        every: [abs(each.duty_point_off) for each in outcomes if each.duty_point_off is not None]
        for every, outcomes in told.items()
    }
    more = {
        every: _distribution(points[every])
        | {"points": len(points[every]), "ranges": len(each) - len(points[every])}
        | {"ranges_without_the_truth": sum(map(bool, each)) - sum(map(bool, points[every]))}
        | {"cannot_be_told": len(told[every]) - len(each)}
        for every, each in off.items()
    }
    return Row(max(each["p90"] for each in more.values()), "error at the ninetieth of a hundred", MOST_DUTY_OFF, more)


def _events(told: Told) -> Row:
    more: dict[str, dict[str, float]] = {}
    for every, outcomes in told.items():
        doors = recall_and_precision([each.doors for each in outcomes if each.doors is not None])
        defrosts = recall_and_precision([each.defrosts for each in outcomes if each.defrosts is not None])
        names = ("door_recall", "door_precision", "defrost_recall", "defrost_precision")
        more[every] = {name: round(value, 4) for name, value in zip(names, (*doors, *defrosts), strict=True)}
        more[every]["cannot_be_told"] = sum(each.doors is None for each in outcomes)
    least = min(value for each in more.values() for name, value in each.items() if name != "cannot_be_told")
    return Row(least, "least of recall and precision", 0.80, more)


def _verdict(told: Told) -> Row:
    """Of the chambers that are clearly settled, or clearly not."""
    agrees: dict[str, float] = {}
    more: dict[str, Any] = {}
    for every, outcomes in told.items():
        clear = [each for each in outcomes if each.truth is not None]
        agrees[every] = _share(each.verdict == each.truth for each in clear)
        more[every] = {
            "agree": agrees[every],
            "false_settled": sum(each.verdict == "settled" and each.truth == "not settled" for each in clear),
            "false_not_settled": sum(each.verdict == "not settled" and each.truth == "settled" for each in clear),
            "not_known": sum(each.verdict == "not known" for each in clear),
            "clear": len(clear),
        }
    return Row(min(agrees.values()), "share of clear chambers agreeing", 0.95, more)


def _hold(told: Told) -> Row:
    off = [abs(each.hold_off) for each in told["60 s"] if each.hold_off is not None]
    return Row(_share(each <= 1 for each in off), "share within one reading or 3 %", 0.95, _distribution(off))


def _tau(told: Told) -> Row:
    off = [abs(each.tau_off) for each in told["60 s"] if each.tau_off is not None]
    return Row(_share(each <= 0.10 for each in off), "share within 10 %", 0.95, _distribution(off))


def _share(hits: Iterable[bool]) -> float:
    listed = list(hits)
    return round(sum(listed) / len(listed), 4) if listed else 0.0


def _distribution(errors: Sequence[float]) -> dict[str, float]:
    ordered = sorted(errors)
    places = {"median": 0.5, "p90": 0.9, "p95": 0.95, "most": 1.0}
    if not ordered:
        return dict.fromkeys(places, 1.0)
    return {name: round(ordered[min(len(ordered) - 1, int(share * len(ordered)))], 4) for name, share in places.items()}
