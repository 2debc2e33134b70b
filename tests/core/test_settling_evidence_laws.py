"""Less of a log never proves more."""

from collections import Counter
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.core.test_settling_evidence import BAND, EIGHT_HOURS, HOUR_S, sawtooth, verdict


def thinned(kind: str, chance: Random, times_s: list[float], temperatures_c: list[float]) -> list[int]:
    """What is left of a log, as places. Both its ends stay: a log that ends sooner is another log."""
    last = len(times_s) - 1
    if kind == "coarser":
        every = chance.randrange(2, 12)
        kept = set(range(last % every, last + 1, every))
    elif kind == "a hole":
        first = chance.randrange(last)
        kept = set(range(last + 1)) - set(range(first, first + chance.randrange(1, 200)))
    elif kind == "lost now and then":
        share = chance.uniform(0, 0.9)
        kept = {place for place in range(last + 1) if chance.random() > share}
    else:
        high = chance.uniform(0.6, 1.2) * BAND.half + BAND.target
        kept = {place for place in range(last + 1) if temperatures_c[place] <= high or chance.random() < 0.1}
    return sorted(kept | {0, last})


KINDS = ("coarser", "a hole", "lost now and then", "all that is too warm")


def test_less_of_a_log_never_proves_more():
    was_settled: Counter[bool] = Counter()

    @settings(max_examples=60, deadline=None)
    @given(
        st.sampled_from(KINDS),
        st.sampled_from((10.0, 30.0, 60.0, 120.0)),
        st.floats(0.3, 0.7) | st.floats(1.1, 1.6),
        st.floats(-0.3, 0.3),
        st.floats(500, 5000),
        st.integers(0, 1000),
    )
    def holds(kind: str, interval_s: float, half_k: float, off_k: float, period_s: float, seed: int):
        chance = Random(seed)
        times_s = [interval_s * place for place in range(round(9 * HOUR_S / interval_s))]
        whole = [round(sawtooth(at_s, 12 + off_k, half_k, period_s) + chance.gauss(0, 0.03), 2) for at_s in times_s]
        is_settled = verdict(times_s, whole, EIGHT_HOURS).is_settled
        was_settled[is_settled] += 1
        kept = thinned(kind, chance, times_s, whole)
        less = verdict([times_s[place] for place in kept], [whole[place] for place in kept], EIGHT_HOURS)
        assert is_settled or not less.is_settled

    holds()
    assert min(was_settled[True], was_settled[False]) >= 10
