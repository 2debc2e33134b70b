"""Two runs side by side: each figure is what the run's analysis says it is, under its key, in its own place."""

from functools import cache

import pytest

from core.chamber.proof_run import find
from core.chamber.settling.analysis import Analysis
from core.chamber.settling.comparing import FIGURE_NAMES, beside, compare, key_figures
from core.quantities import COUNT, Amount
from tests.core.proof_files import given


@cache
def run() -> Analysis:
    return find(given()).analysis


def test_each_figure_is_the_centre_s_or_that_of_the_space():
    figures = {key: amount.value for key, amount in key_figures(run())}
    centre, space = run().centre, run().space
    rhythm, humidity = centre.compressor.rhythm, centre.humidity
    assert space is not None
    assert rhythm is not None
    assert humidity is not None
    assert centre.stays_since_s is not None
    assert centre.drift_k is not None
    known = {
        "settled": centre.stays_since_s - centre.begins_s,
        "mean": centre.steady.mean,
        "lowest": centre.steady.lowest,
        "highest": centre.steady.highest,
        "in_band": centre.steady.in_band,
        "drift": centre.drift_k / 86_400,
        "fluctuation": centre.fluctuation_k,
        "gradient": space.gradient_k,
        "uniformity": space.uniformity_k,
        "starts": 1 / rhythm.period_s,
        "holds": rhythm.holds_s,
        "swing": rhythm.highest_c - rhythm.lowest_c,
        "cools_by": rhythm.cools_by_s,
        "humidity": humidity.spread.mean,
    }
    assert {key: figures[key] for key in known} == pytest.approx(known)
    assert figures.get("warming") == rhythm.warming_s


def test_doors_and_defrosts_are_counted_each_for_itself():
    figures = dict(key_figures(run()))
    for kind in ("defrost", "door"):
        count = sum(event.kind == kind for event in run().centre.compressor.events)
        assert figures[kind] == Amount(count, COUNT)


def test_a_figure_stands_on_the_side_of_its_run():
    one, other = Amount(1, COUNT), Amount(2, COUNT)
    found = beside([("mean", one), ("door", one)], [("door", other), ("defrost", other)])
    assert [(each.key, each.name, each.one, each.other) for each in found] == [
        ("mean", "Mean temperature", one, None),
        ("door", "Doors opened", one, other),
        ("defrost", "Defrosts", None, other),
    ]


def test_a_run_beside_itself_is_alike():
    found = compare(run(), run())
    assert found
    assert all(each.one == each.other and each.name == FIGURE_NAMES[each.key] for each in found)
