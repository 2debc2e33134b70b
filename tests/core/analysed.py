"""A proof's logs analysed in one go: the page does it in steps."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from core.chamber.series import Series
from core.chamber.settling.analysis import Analysis, Compressor, analysing, compressor_in
from core.chamber.settling.humid_air import humid_air
from core.chamber.settling.steps import Steps, T


def at_once(steps: Steps[T]) -> T:
    while True:
        try:
            next(steps)
        except StopIteration as done:
            return done.value


def analyse(probes: Sequence[Series], *wanted: Any, **more: Any) -> Analysis:
    return at_once(analysing(probes, *wanted, **more))


def compressor_of(series: Series, room_c: float | None = None) -> Compressor:
    return at_once(compressor_in(series, room_c, humid_air(series)))
