"""Measurements: one JSON object a line. A row is a function that returns its value and what it is held against."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from attrs import field, frozen

from building.running import Failed


@frozen
class Row:
    """value and against in `unit`; ratio is value ÷ against, under 1 where less is better and the goal is met.

    more: what stands behind the value, as a distribution of errors; printed in the same object.
    """

    value: float
    unit: str
    against: float
    more: Mapping[str, Any] = field(factory=dict[str, Any])

    @property
    def ratio(self) -> float:
        return self.value / self.against


def run(names: Sequence[str]) -> int:
    from building.bench.rows import ROWS

    unknown = [name for name in names if name not in ROWS]
    if unknown:
        raise Failed(f"There is no measurement {unknown[0]}. There are: {', '.join(ROWS)}.")
    for name in names or ROWS:
        row = ROWS[name]()
        shown = {"name": name, "value": row.value, "unit": row.unit, "against": row.against, "ratio": row.ratio}
        print(json.dumps(shown | dict(row.more)), flush=True)
    return 0
