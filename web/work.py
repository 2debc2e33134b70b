"""Long work in slices: each request advances it for a fraction of a second and tells how far it is.

The page that waits asks again by itself until the work is done. Jobs and what they came to live in the memory of the
application, a few at a time: whoever comes back finds the result at once, and whoever never does costs nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Generator
from time import monotonic
from typing import Any

from flask import current_app

SLICE_S = 0.25
"""Short enough that a tap on Stop is not left waiting."""
MOST_JOBS = 2
MOST_RESULTS = 4
"""A log of a month and what was found in it take some ten megabytes."""

Steps = Generator[Any, None, Any]


class Work:
    """Jobs under way and results, each by a key that says all they depend on."""

    def __init__(self, slice_s: float = SLICE_S) -> None:
        self.slice_s = slice_s
        self._jobs: dict[str, Steps] = {}
        self._results: dict[str, Any] = {}

    def result(self, key: str) -> Any | None:
        """What the job came to; None where it is not finished, not begun, or was let go."""
        if key in self._results:
            self._results[key] = self._results.pop(key)  # the one used last stands last
        return self._results.get(key)

    def is_under_way(self, key: str) -> bool:
        return key in self._jobs

    def begin(self, key: str, start: Callable[[], Steps]) -> None:
        """Nothing new where it is under way already."""
        if key not in self._jobs:
            self._jobs[key] = start()
            _keep_last(self._jobs, MOST_JOBS)

    def advance(self, key: str) -> Any | None:
        """Work for one slice. Returns how far it is, or None once it is finished. What the job raises ends it."""
        steps = self._jobs.pop(key)  # put back only while there is more to do
        until = monotonic() + self.slice_s
        try:
            done = next(steps)
            while monotonic() < until:
                done = next(steps)
        except StopIteration as end:
            self._results[key] = end.value
            _keep_last(self._results, MOST_RESULTS)
            return None
        self._jobs[key] = steps
        return done

    def drop(self, key: str) -> None:
        self._jobs.pop(key, None)


def work() -> Work:
    return current_app.extensions.setdefault("work", Work())


def _keep_last(kept: dict[str, Any], most: int) -> None:
    while len(kept) > most:
        del kept[next(iter(kept))]
