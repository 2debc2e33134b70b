"""What never makes a fermentation better: knowing less, warmer, later, higher, or a reading that contradicts.

Each law counts what it speaks of: how often the better of the two passed, and how often the worse did not.
"""

import math
from collections.abc import Callable, Sequence

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from core.ferment.course import Course, TemperatureReading, course
from core.ferment.crossing import BELIEVABLE_PH, Acid
from core.ferment.judging import Fermentation, judge
from core.ferment.outcome import reason, slow_reason
from core.ferment.slow import judge_slow
from core.meat import ACID_PH
from tests.core.fermenting import H

law = settings(max_examples=200, deadline=None)
RANKS = {True: 2, None: 1, False: 0}


@st.composite
def fermentations(draw: st.DrawFn) -> tuple[Fermentation, float]:
    """Read every few hours, falling, mostly in time: now and then with a reading that contradicts. And a now."""
    at_h, ph = draw(st.floats(0, 12)), draw(st.floats(5.4, 6.0))
    warm_c, temperatures, phs = draw(st.floats(17, 27)), [], []
    for _ in range(draw(st.integers(3, 8))):
        phs.append(Acid(at_h * H, ph))
        if draw(st.integers(0, 5)):
            temperatures.append(TemperatureReading(at_h * H, warm_c + draw(st.floats(-2, 2))))
        at_h += draw(st.floats(2, 16))
        ph = max(4.6, ph - draw(st.floats(0.05, 0.4)))
        if not draw(st.integers(0, 7)):
            phs.append(Acid((at_h - 1) * H, draw(st.floats(5.1, 5.9))))
    planned_c = draw(st.none() | st.floats(15, 30))
    rule = draw(st.sampled_from(["us", "canada"]))
    return Fermentation(rule, tuple(phs), tuple(temperatures), planned_c), (at_h + draw(st.floats(0, 20))) * H


@st.composite
def slow_ones(draw: st.DrawFn) -> tuple[Fermentation, float]:
    """A few warm days or none, then cool, mostly read over three days."""
    at_h, temperatures = draw(st.floats(0, 6)), []
    warm_until_h, until_h = draw(st.floats(0, 80)), draw(st.floats(60, 130))
    while at_h < until_h:
        warm_c = draw(st.floats(16, 24)) if at_h < warm_until_h else draw(st.floats(5, 15.5))
        temperatures.append(TemperatureReading(at_h * H, warm_c))
        at_h += draw(st.floats(4, 34))
    return Fermentation("us", (), tuple(temperatures)), (at_h + draw(st.floats(0, 20))) * H


def rank(known: Fermentation, now_s: float) -> int:
    return RANKS[reason(judge(known, now_s).outcome).met]


def slow_rank(known: Fermentation, now_s: float) -> int:
    return RANKS[slow_reason(judge_slow(known, now_s).outcome).met]


class Counted:
    """Pairs of ranks, the one that should be no worse first."""

    def __init__(self) -> None:
        self.pairs: list[tuple[int, int]] = []

    def hold(self, better: int, worse: int) -> None:
        self.pairs.append((better, worse))
        assert worse <= better

    def check(self) -> None:
        """It speaks of what passes, and of what then passes no more."""
        passed = [pair for pair in self.pairs if pair[0] == 2]
        assert len(passed) >= 0.1 * len(self.pairs) > 1
        assert any(worse < 2 for _, worse in passed)


def supposed(walked: Course, at_s: float) -> float:
    return max(leg.at(at_s) for leg in walked.legs if leg.start_s <= at_s <= leg.end_s)


def without(
    data: st.DataObject, readings: Sequence[TemperatureReading], now_s: float, planned_c: float | None
) -> tuple[TemperatureReading, ...] | None:
    """One reading less, that was no warmer than what is supposed without it."""
    gone = data.draw(st.integers(0, len(readings) - 1))
    rest = tuple(each for index, each in enumerate(readings) if index != gone)
    walked = course(rest, now_s, planned_c)
    if not walked.legs:
        return rest
    return rest if readings[gone].temperature_c <= supposed(walked, readings[gone].at_s) else None


def test_a_temperature_taken_away_that_was_no_warmer_than_is_supposed_without_it():
    counted = Counted()

    @law
    @given(fermentations(), st.data())
    def holds(given_: tuple[Fermentation, float], data: st.DataObject) -> None:
        known, now_s = given_
        if known.temperatures and (rest := without(data, known.temperatures, now_s, known.planned_c)) is not None:
            counted.hold(rank(known, now_s), rank(evolve(known, temperatures=rest), now_s))

    holds()
    counted.check()


def test_a_temperature_of_a_slow_style_taken_away():
    counted = Counted()

    @law
    @given(slow_ones(), st.data())
    def holds(given_: tuple[Fermentation, float], data: st.DataObject) -> None:
        known, now_s = given_
        if (rest := without(data, known.temperatures, now_s, None)) is not None:
            counted.hold(slow_rank(known, now_s), slow_rank(evolve(known, temperatures=rest), now_s))

    holds()
    counted.check()


def later(readings, from_s: float, by_s: float):
    return tuple(evolve(each, at_s=each.at_s + by_s) if each.at_s >= from_s else each for each in readings)


def test_everything_later_from_some_moment_on():
    counted = Counted()

    @law
    @given(fermentations(), st.floats(0, 80), st.floats(0, 60))
    def holds(given_: tuple[Fermentation, float], from_h: float, by_h: float) -> None:
        known, now_s = given_
        wider = evolve(
            known,
            phs=later(known.phs, from_h * H, by_h * H),
            temperatures=later(known.temperatures, from_h * H, by_h * H),
        )
        counted.hold(rank(known, now_s), rank(wider, now_s + by_h * H))

    holds()
    counted.check()


def test_a_gap_of_a_slow_style_widened():
    counted = Counted()

    @law
    @given(slow_ones(), st.floats(0, 80), st.floats(0, 60))
    def holds(given_: tuple[Fermentation, float], from_h: float, by_h: float) -> None:
        known, now_s = given_
        moved = [each.at_s / H for each in known.temperatures if each.at_s >= from_h * H]
        if not any(at_h < 72 <= at_h + by_h for at_h in moved):  # none comes to show the third day
            wider = evolve(known, temperatures=later(known.temperatures, from_h * H, by_h * H))
            counted.hold(slow_rank(known, now_s), slow_rank(wider, now_s + by_h * H))

    holds()
    counted.check()


def warmer_by(data: st.DataObject, readings: Sequence[TemperatureReading]) -> tuple[TemperatureReading, ...]:
    one, by_k = data.draw(st.integers(0, len(readings) - 1)), data.draw(st.floats(0, 60))
    return tuple(
        evolve(each, temperature_c=each.temperature_c + by_k) if index == one else each
        for index, each in enumerate(readings)
    )


def _warmer(drawn: st.SearchStrategy[tuple[Fermentation, float]], ranked: Callable[[Fermentation, float], int]) -> None:
    counted = Counted()

    @law
    @given(drawn, st.data())
    def holds(given_: tuple[Fermentation, float], data: st.DataObject) -> None:
        known, now_s = given_
        if known.temperatures:
            warmer = evolve(known, temperatures=warmer_by(data, known.temperatures))
            counted.hold(ranked(known, now_s), ranked(warmer, now_s))

    holds()
    counted.check()


def test_one_temperature_warmer():
    _warmer(fermentations(), rank)


def test_one_temperature_of_a_slow_style_warmer():
    _warmer(slow_ones(), slow_rank)


def test_a_warmer_plan():
    counted = Counted()

    @law
    @given(fermentations(), st.floats(0, 100))
    def holds(given_: tuple[Fermentation, float], by_k: float) -> None:
        known, now_s = given_
        cooler = 15.0 if known.planned_c is None else known.planned_c
        counted.hold(rank(evolve(known, planned_c=cooler), now_s), rank(evolve(known, planned_c=cooler + by_k), now_s))

    holds()
    counted.check()


def passes(known: Fermentation, now_s: float) -> int:
    """A higher pH may tell better when it crossed, and so turn over into not shown. It never makes it pass."""
    return 2 if judge(known, now_s).word == "passed" else 0


def test_one_ph_higher():
    counted = Counted()

    @law
    @given(fermentations(), st.data())
    def holds(given_: tuple[Fermentation, float], data: st.DataObject) -> None:
        known, now_s = given_
        one, by = data.draw(st.integers(0, len(known.phs) - 1)), data.draw(st.floats(0, 2))
        higher = tuple(
            evolve(each, ph=min(each.ph + by, BELIEVABLE_PH[1])) if index == one else each
            for index, each in enumerate(known.phs)
        )
        if resolves_a_contradiction(known.phs[one], higher[one], known.phs):
            return
        counted.hold(passes(known, now_s), passes(evolve(known, phs=higher), now_s))

    holds()
    counted.check()


def resolves_a_contradiction(was: Acid, now: Acid, phs: Sequence[Acid]) -> bool:
    """A low reading that later ones deny, read high, agrees with them: what contradicted itself may then be told."""
    return was.ph <= ACID_PH < now.ph and any(each.at_s >= was.at_s and each.ph > ACID_PH for each in phs)


def test_one_low_ph_later():
    """Not past the next reading of the pH; the last one as late as you like. What was read of the temperature stays."""
    counted = Counted()

    @law
    @given(fermentations(), st.data())
    def holds(given_: tuple[Fermentation, float], data: st.DataObject) -> None:
        known, now_s = given_
        ordered = sorted(known.phs, key=lambda each: each.at_s)
        low = [index for index, each in enumerate(ordered) if each.ph <= ACID_PH]
        if not low:
            return
        if data.draw(st.booleans()):  # the only low one: then its hour matters
            ordered, low = ordered[: low[0] + 1], low[:1]
            known = evolve(known, phs=tuple(ordered))
        one = data.draw(st.sampled_from(low))
        before_s = ordered[one + 1].at_s if one + 1 < len(ordered) else math.inf
        at_s = min(ordered[one].at_s + data.draw(st.floats(0, 100)) * H, before_s)
        after = (*ordered[:one], evolve(ordered[one], at_s=at_s), *ordered[one + 1 :])
        counted.hold(passes(known, now_s), passes(evolve(known, phs=after), max(now_s, at_s)))

    holds()
    counted.check()


def test_one_more_ph_that_speaks_against_it():
    counted = Counted()

    @law
    @given(fermentations(), st.floats(0, 150), st.floats(ACID_PH, BELIEVABLE_PH[1], exclude_min=True))
    def holds(given_: tuple[Fermentation, float], at_h: float, ph: float) -> None:
        known, now_s = given_
        against = evolve(known, phs=(*known.phs, Acid(at_h * H, ph)))
        counted.hold(passes(known, now_s), passes(against, now_s))

    holds()
    counted.check()


def test_what_passed_was_known_from_the_start_to_the_acid_and_below_its_limit():
    passed = []

    @law
    @given(fermentations())
    def holds(given_: tuple[Fermentation, float]) -> None:
        judged = judge(*given_)
        if judged.word == "passed":
            passed.append(judged)
            outcome = judged.outcome
            assert outcome.why == ()
            assert outcome.sum_ks is not None
            assert outcome.limit_ks is not None
            assert outcome.sum_ks < outcome.limit_ks
            assert judged.crossing is not None
            assert not judged.measure_again
            assert judged.course.legs[-1].end_s == judged.crossing.by_s

    holds()
    assert len(passed) > 10
