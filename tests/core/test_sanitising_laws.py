"""Laws of diluting: the active substance is neither made nor lost, and more asked is never less measured."""

import pytest
from hypothesis import event, given
from hypothesis import strategies as st

from core.chamber.sanitising import dilute, no_rinse_ppm
from core.chamber.sanitising_agents import AGENTS, CHLORINES, CLEANERS, conditions, never_mix
from core.chamber.sanitising_stock import stock_m3
from core.refusals import OutOfRange

agents = st.sampled_from(sorted(AGENTS))
targets = st.floats(1, 10_000)
strengths = st.floats(1e-3, 1)
volumes = st.floats(1e-5, 1)
densities = st.floats(0.8, 2)


@given(targets, volumes, strengths, densities)
def test_the_active_mass_measured_is_the_active_mass_in_the_solution(target, volume, strength, density):
    measured = stock_m3(target, volume, strength, density)
    assert measured * 1000 * density * strength == pytest.approx(target * 1e-6 * volume * 1000)


@given(targets, targets, volumes, strengths)
def test_more_wanted_is_never_less_stock(one, other, volume, strength):
    less, more = sorted((one, other))
    assert stock_m3(less, volume, strength) <= stock_m3(more, volume, strength)


@st.composite
def drained(draw):
    """An agent, a stock as it is sold, and a strength that sanitises, within its limit or up to as much above."""
    key = draw(agents)
    agent = AGENTS[key]
    label_ppm = draw(st.none() | st.floats(1, 1000))
    least = agent.least_ppm or 1.0
    most = max(no_rinse_ppm(agent, label_ppm) or 1000.0, least)
    strength = draw(st.floats(max(agent.weakest, 1e-3), agent.strongest))
    return key, strength, draw(st.floats(least, 2 * most)), draw(volumes), label_ppm


@given(st.lists(drained(), min_size=20, max_size=20))
def test_what_stays_on_is_within_its_limit_or_is_refused(solutions):
    made = 0
    for agent, strength, target, volume, label_ppm in solutions:
        limit = no_rinse_ppm(AGENTS[agent], label_ppm)
        try:
            figures = dilute(agent, strength, target, volume, label_ppm=label_ppm)
        except OutOfRange:
            assert target > min(limit or 1e9, strength * 1e6) * (1 - 1e-8)
            continue
        made += 1
        assert limit is None or target <= limit * (1 + 1e-8)
        stock, water = (next(each for each in figures if each.key == key) for key in ("stock", "water"))
        measured = 0.0 if AGENTS[agent].dry else stock.value
        assert measured + water.value == pytest.approx(volume)
        assert water.value >= -1e-12
    event(f"{made // 5 * 5} and more of 20 made")


@given(st.sampled_from(sorted(CHLORINES)), st.sampled_from(sorted(set(CLEANERS) - CHLORINES)))
def test_every_kind_of_chlorine_meets_the_same_hazards(kind, other):
    (one,), (bleach,) = never_mix((kind, other)), never_mix(("chlorine", other))
    assert (one.hazard, one.source) == (bleach.hazard, bleach.source)


@given(st.floats(25, 1000), st.floats(25, 1000), st.none() | st.floats(5, 10))
def test_stronger_chlorine_need_not_be_warmer(one, other, ph):
    weak, strong = (conditions("chlorine", ppm, ph).least_c for ppm in sorted((one, other)))
    assert strong <= weak


@given(st.lists(st.sampled_from(sorted(CLEANERS)), max_size=6))
def test_as_many_warnings_as_pairs_in_whatever_order(chosen):
    count = len(set(chosen))
    warned = never_mix(tuple(chosen))
    assert len(warned) == count * (count - 1) // 2
    assert warned == never_mix(tuple(reversed(chosen)))
