"""How right the forecast of a piece's day is: 300 simulated pieces, on all processors, truth known.

How far it is goes to stderr. A straight line and a single exponential stand beside each value, and
the same of pieces of a second model ("by a front").
"""

import os
import sys
from collections.abc import Callable
from functools import cache
from multiprocessing import Pool

from building.bench import Row
from tests.core import drying_front
from tests.core.drying_model import draw
from tests.core.drying_study import Outcome, asked_in_order, covered, median_error, study, weighed_together

FIRST_SEED, BATCHES, PIECES = 6000, 50, 6
OTHERS = ("ours by formula", "line", "exponential")
ROUNDS = 400
FRONT = 100_000
"""Seeds from here on are of the second model."""


def rows() -> dict[str, Callable[[], Row]]:
    return {
        "forecast-third": lambda: _near("third", 0.15),
        "forecast-half": lambda: _near("half", 0.08),
        "forecast-cover": _cover,
        "swapped-asked": _swapped,
    }


def _near(at: str, against: float) -> Row:
    """Of the most likely day, against the true one; of pieces that came to their target within 150 days."""
    outcomes, front = _outcomes(), _outcomes(FRONT)
    told = sum(each.at == at and each.true_s is not None for each in outcomes)
    beside = {other: round(median_error(outcomes, other, at), 4) for other in OTHERS}
    beside["by a front"] = round(median_error(front, "ours", at), 4)
    return Row(round(median_error(outcomes, "ours", at), 4), "median error", against, {**beside, "pieces": told})


def _cover() -> Row:
    """Off eight in ten by at most one in ten."""
    outcomes = _outcomes()
    beside = {who: round(covered(outcomes, who), 4) for who in ("ours", *OTHERS)}
    beside["by a front"] = round(covered(_outcomes(FRONT), "ours"), 4)
    return Row(round(abs(beside["ours"] - 0.8), 4), "off eight in ten", 0.1, beside)


def _swapped() -> Row:
    """Two neighbours' weights exchanged in a round; beside it what is asked about of rounds as they were weighed."""
    caught = honest = asked = 0
    batches = [draw(FIRST_SEED + 1000 + place, PIECES) for place in range(20)]
    for turn in range(ROUNDS):
        should, shown = weighed_together(batches[turn % len(batches)], turn)
        asked += len(asked_in_order(should, shown))
        honest += len(shown)
        one, other = list(shown)[turn % (PIECES - 1) :][:2]
        caught += bool(asked_in_order(should, shown | {one: shown[other], other: shown[one]}))
    more = {"swaps": ROUNDS, "honest_weighings": honest, "asked_of_honest": round(asked / honest, 5)}
    return Row(round(caught / ROUNDS, 4), "share of swaps asked about", 0.9, more)


@cache
def _outcomes(first_seed: int = FIRST_SEED) -> list[Outcome]:
    """first_seed: FRONT for the second model's."""
    found: list[Outcome] = []
    with Pool(os.cpu_count()) as pool:
        seeds = range(first_seed, first_seed + BATCHES)
        for done, each in enumerate(pool.imap_unordered(_look_at, seeds), 1):
            found += each
            print(f"forecast: {done} of {BATCHES} batches", file=sys.stderr, flush=True)
    return found


def _look_at(seed: int) -> list[Outcome]:
    return list(study([seed], PIECES, drying_front.draw if seed >= FRONT else draw))
