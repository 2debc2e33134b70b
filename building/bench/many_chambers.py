"""Many simulated chambers, looked at side by side on all processors.

How far it is goes to stderr. Ctrl-C ends it, and what was measured until then counts; a second kind is then not begun.
"""

import os
import signal
import sys
import time
from collections.abc import Iterator
from multiprocessing import Pool

from attrs import define, field

from tests.core.chamber_study import INTERVALS_S, Kind, Outcome, study

FIRST_SEED, CHAMBERS = 5000, 200
TELL_EVERY_S = 10.0
Told = dict[str, list[Outcome]]
Job = tuple[Kind, int]


@define
class Chambers:
    """count: how many of a kind. Each kind is looked at once, each chamber at each interval."""

    count: int = CHAMBERS
    is_stopped: bool = False
    told: dict[str, Told] = field(factory=dict[str, Told])

    def outcomes(self, name: str, kind: Kind) -> Told:
        """By interval. Raises KeyboardInterrupt where it was stopped before a single chamber of that kind."""
        if name not in self.told:
            self.told[name] = {f"{interval_s:g} s": [] for interval_s in INTERVALS_S}
            self._look(name, kind)
        if not any(self.told[name].values()):
            raise KeyboardInterrupt
        return self.told[name]

    def _look(self, name: str, kind: Kind) -> None:
        if self.is_stopped:
            return
        jobs: list[Job] = [(kind, FIRST_SEED + place) for place in range(self.count)]
        with Pool(os.cpu_count(), _left_to_the_parent) as pool:
            try:
                for outcomes in _telling(name, pool.imap_unordered(_look_at, jobs), self.count):
                    for outcome in outcomes:
                        self.told[name][f"{outcome.interval_s:g} s"].append(outcome)
            except KeyboardInterrupt:
                self.is_stopped = True


def _left_to_the_parent() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _look_at(job: Job) -> list[Outcome]:
    kind, seed = job
    return list(study(kind, [seed]))


def _telling(name: str, each: Iterator[list[Outcome]], count: int) -> Iterator[list[Outcome]]:
    begun_s = told_s = time.monotonic()
    for done, outcomes in enumerate(each, 1):
        now_s = time.monotonic()
        if now_s - told_s > TELL_EVERY_S or done == count:
            told_s = now_s
            left_s = (now_s - begun_s) / done * (count - done)
            print(f"{name}: {done} of {count} chambers, about {left_s / 60:.0f} min left", file=sys.stderr, flush=True)
        yield outcomes
