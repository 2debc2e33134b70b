"""How right the two-day proof is: over 200 random chambers of the tests' physical model, whose truth is known.

Each row's value is the worse of what it is held to, with the errors' distribution beside it.
"""

from collections.abc import Iterable, Sequence
from functools import cache

from building.bench import Row
from tests.core.chamber_study import Outcome, recall_and_precision, study

SEEDS = range(5000, 5200)


@cache
def _outcomes() -> list[Outcome]:
    return study(SEEDS)


def cycles() -> Row:
    off = [outcome.count_off for outcome in _outcomes()]
    counts = {str(each): off.count(each) for each in sorted({each for each in off if each is not None})}
    more = {"chambers": len(off), "runs_counted_less_true_runs": counts, "refused": off.count(None)}
    return Row(_share(each == 0 for each in off), "share of chambers counted exactly", 0.95, more)


def hold() -> Row:
    off = [outcome.hold_off for outcome in _outcomes()]
    known = [abs(each) for each in off if each is not None]
    more = {"of_allowed": _distribution(known), "refused": off.count(None)}
    return Row(_share(each <= 1 for each in known), "share within one reading or 3 %", 0.95, more)


def tau() -> Row:
    off = [outcome.tau_off for outcome in _outcomes()]
    known = [abs(each) for each in off if each is not None]
    more = {"relative_error": _distribution(known), "refused": off.count(None)}
    return Row(_share(each <= 0.10 for each in known), "share within 10 %", 0.95, more)


def events() -> Row:
    doors = recall_and_precision([outcome.doors for outcome in _outcomes()])
    defrosts = recall_and_precision([outcome.defrosts for outcome in _outcomes()])
    names = ("door_recall", "door_precision", "defrost_recall", "defrost_precision")
    each = {name: round(value, 4) for name, value in zip(names, (*doors, *defrosts), strict=True)}
    return Row(min(each.values()), "least of recall and precision", 0.90, each)


def _share(hits: Iterable[bool]) -> float:
    listed = list(hits)
    return round(sum(listed) / len(listed), 4)


def _distribution(errors: Sequence[float]) -> dict[str, float]:
    ordered = sorted(errors)
    places = {"median": 0.5, "p90": 0.9, "p95": 0.95, "most": 1.0}
    return {name: round(ordered[min(len(ordered) - 1, int(share * len(ordered)))], 4) for name, share in places.items()}
