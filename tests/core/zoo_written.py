"""A file given line by line, with the truth that it holds."""

from __future__ import annotations

from collections.abc import Sequence

from tests.core.zoo_keeper import points
from tests.core.zoo_sheet import Row, Sheet


def _truth(probes: int = 2, warm: bool = True, humid: bool = True) -> tuple[tuple[Row, ...], ...]:
    return tuple(
        tuple(
            (point.at.timestamp(), point.probes[p][0] if warm else None, point.probes[p][1] / 100 if humid else None)
            for point in points(probes=probes)
        )
        for p in range(probes)
    )


def written(
    name: str, lines: Sequence[str], holds: str, probes: int = 1, names: Sequence[str] = (), **more: object
) -> Sheet:
    answers = {
        key.replace("_", " "): str(value) for key, value in more.items() if key not in ("humid", "warm", "encoding")
    }
    truth = _truth(probes, bool(more.get("warm", True)), bool(more.get("humid", True)))
    data = "".join(f"{line}\n" for line in lines).encode(str(more.get("encoding", "utf-8")))
    return Sheet(name, data, truth, tuple(holds.split(",")), answers, tuple(names))
