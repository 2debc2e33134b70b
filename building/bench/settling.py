"""How right the two-day proof is: over 200 random chambers of both of the tests' physical models, truth known.

Each is logged every 10 s, every minute and every five. A row's value is the worst of the three, with each beside it.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import cache
from typing import Any

from building.bench import Row
from tests.core.chamber_study import INTERVALS_S, LUMPS, WALLED, Kind, Outcome, recall_and_precision, study

SEEDS = range(5000, 5200)
MOST_DUTY_OFF = 0.03
Told = dict[str, list[Outcome]]


def rows() -> dict[str, Callable[[], Row]]:
    """settling-…: chambers of one lump. walled-…: of air, wall and evaporator."""
    found: dict[str, Callable[[], Row]] = {}
    for name, kind, least in (("settling", LUMPS, 0.95), ("walled", WALLED, 0.90)):
        found |= {
            f"{name}-cycles": lambda kind=kind, least=least: _cycles(kind, least),
            f"{name}-duty": lambda kind=kind: _duty(kind),
            f"{name}-events": lambda kind=kind: _events(kind),
            f"{name}-verdict": lambda kind=kind: _verdict(kind),
        }
    return found | {"settling-hold": _hold, "settling-tau": _tau}


@cache
def _outcomes(kind: Kind) -> Told:
    found: Told = {f"{interval_s:g} s": [] for interval_s in INTERVALS_S}
    for outcome in study(kind, SEEDS):
        found[f"{outcome.interval_s:g} s"].append(outcome)
    return found


def _cycles(kind: Kind, least: float) -> Row:
    exact: dict[str, float] = {}
    more: dict[str, Any] = {}
    for every, outcomes in _outcomes(kind).items():
        off = [each.count_off for each in outcomes if each.count_off is not None]
        exact[every] = _share(each == 0 for each in off)
        within_one = _share(abs(each) <= 1 for each in off)
        more[every] = {"exact": exact[every], "within_one": within_one, "cannot_be_told": len(outcomes) - len(off)}
    return Row(min(exact.values()), "share of chambers counted exactly", least, more)


def _duty(kind: Kind) -> Row:
    """Share of the time the compressor runs, less the true one; points are where it is told by itself. Ranges,
    at most a quarter wide, are counted beside them, and those that the truth lies outside of."""
    off = {
        every: [abs(each.duty_off) for each in outcomes if each.duty_off is not None]
        for every, outcomes in _outcomes(kind).items()
    }
    points = {
        every: [abs(each.duty_point_off) for each in outcomes if each.duty_point_off is not None]
        for every, outcomes in _outcomes(kind).items()
    }
    more = {
        every: _distribution(points[every])
        | {"points": len(points[every]), "ranges": len(each) - len(points[every])}
        | {"ranges_without_the_truth": sum(map(bool, each)) - sum(map(bool, points[every]))}
        | {"cannot_be_told": len(SEEDS) - len(each)}
        for every, each in off.items()
    }
    return Row(max(each["p90"] for each in more.values()), "error at the ninetieth of a hundred", MOST_DUTY_OFF, more)


def _events(kind: Kind) -> Row:
    more: dict[str, dict[str, float]] = {}
    for every, outcomes in _outcomes(kind).items():
        doors = recall_and_precision([each.doors for each in outcomes if each.doors is not None])
        defrosts = recall_and_precision([each.defrosts for each in outcomes if each.defrosts is not None])
        names = ("door_recall", "door_precision", "defrost_recall", "defrost_precision")
        more[every] = {name: round(value, 4) for name, value in zip(names, (*doors, *defrosts), strict=True)}
        more[every]["cannot_be_told"] = sum(each.doors is None for each in outcomes)
    least = min(value for each in more.values() for name, value in each.items() if name != "cannot_be_told")
    return Row(least, "least of recall and precision", 0.80, more)


def _verdict(kind: Kind) -> Row:
    """Of the chambers that are clearly settled, or clearly not."""
    agrees: dict[str, float] = {}
    more: dict[str, Any] = {}
    for every, outcomes in _outcomes(kind).items():
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


def _hold() -> Row:
    off = [abs(each.hold_off) for each in _minutes() if each.hold_off is not None]
    return Row(_share(each <= 1 for each in off), "share within one reading or 3 %", 0.95, _distribution(off))


def _tau() -> Row:
    off = [abs(each.tau_off) for each in _minutes() if each.tau_off is not None]
    return Row(_share(each <= 0.10 for each in off), "share within 10 %", 0.95, _distribution(off))


def _minutes() -> list[Outcome]:
    return _outcomes(LUMPS)["60 s"]


def _share(hits: Iterable[bool]) -> float:
    listed = list(hits)
    return round(sum(listed) / len(listed), 4)


def _distribution(errors: Sequence[float]) -> dict[str, float]:
    ordered = sorted(errors)
    places = {"median": 0.5, "p90": 0.9, "p95": 0.95, "most": 1.0}
    return {name: round(ordered[min(len(ordered) - 1, int(share * len(ordered)))], 4) for name, share in places.items()}
