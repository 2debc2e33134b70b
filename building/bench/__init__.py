"""Measurements: one JSON object a line. A row is a function that returns its value and what it is held against."""

import argparse
import json
from collections.abc import Mapping, Sequence
from typing import Any

from attrs import field, frozen

from building.running import Failed

RUNS = 5  # of each side; the median counts
LESS_IS_BETTER = (
    "ms",
    "s",
    "MB",
    "of linear",
    "error at the ninetieth of a hundred",
    "median error",
    "off eight in ten",
)


@frozen
class Row:
    """value and against in `unit`; against is a goal, or the other side measured in the same run.

    ratio: 1 or more where the value is as good as what it is held against: against ÷ value where less is better, such
    as milliseconds, else value ÷ against. more: what stands behind the value, as a distribution of errors.
    """

    value: float
    unit: str
    against: float
    more: Mapping[str, Any] = field(factory=dict[str, Any])

    @property
    def ratio(self) -> float:
        ratio = self.against / self.value if self.unit in LESS_IS_BETTER else self.value / self.against
        return round(ratio, 3)


def run(names: Sequence[str], asked: Sequence[str] = ()) -> int:
    """asked: what follows --: `--chambers N`, of how many simulated chambers where they are measured."""
    from building.bench.many_chambers import CHAMBERS
    from building.bench.rows import rows

    parser = argparse.ArgumentParser(prog="build.py bench …  --")
    parser.add_argument("--chambers", type=int, default=CHAMBERS)
    known = rows(parser.parse_args(asked).chambers)
    unknown = [name for name in names if name not in known]
    if unknown:
        raise Failed(f"There is no measurement {unknown[0]}. There are: {', '.join(known)}.")
    for name in names or known:
        print(json.dumps(as_shown(name, known[name]())), flush=True)
    return 0


def as_shown(name: str, row: Row) -> dict[str, Any]:
    shown = {"name": name, "value": row.value, "unit": row.unit, "against": row.against, "ratio": row.ratio}
    return shown | dict(row.more)
