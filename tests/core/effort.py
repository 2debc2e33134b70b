"""What work costs, to be held against other work on the same machine: no test here knows how fast that is."""

from collections.abc import Callable
from time import process_time

RUNS = 5


def effort_s(work: Callable[[], object], runs: int = RUNS) -> float:
    """Processor time, the least of some runs: whatever else the machine does can only add to it."""
    return min(_spent_s(work) for _ in range(runs))


def _spent_s(work: Callable[[], object]) -> float:
    begun = process_time()
    work()
    return process_time() - begun
