"""How the figures of a proof are said: their amounts, the numbers their working names, and what they are warned of."""

from types import SimpleNamespace
from typing import Any

import pytest
from attrs import evolve

from core.chamber.settling.analysis import Compressor, Probe
from core.chamber.settling.comparing import key_figures
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.mapping import Pair
from core.chamber.settling.measures import DRIFT, FINE_DIFFERENCE, FINE_TEMPERATURE, LASTS, SPEED, STARTS
from core.chamber.settling.pair_figures import pair_figures
from core.chamber.settling.settled import Drift
from core.chamber.settling.statistics import Spread
from core.chamber.settling.staying import Stay
from core.quantities import METRIC, US, Amount, Quantity
from tests.core.settling_flat import said
from tests.core.settling_logs import analysis
from tests.core.telling import in_words
from tests.core.test_settling_edges import LATELY, space, steady


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (59.45, "59 s"),
        (60.5, "1.0 min"),
        (10_850.0, "3.0 h"),
        (60.0, "1.0 min"),
        (10_790.0, "179.8 min"),
        (10_800.0, "3.0 h"),
        (59.0, "59 s"),
        (10_700.0, "178.3 min"),
    ],
)
def test_a_time_is_said_in_seconds_minutes_or_hours(value: float, shown: str):
    assert Amount(value, LASTS).show(METRIC) == shown


@pytest.mark.parametrize(
    ("quantity", "value", "metric", "us"),
    [
        (STARTS, 1.234 / 3600, "1.23 /h", "1.23 /h"), (SPEED, 6.26 / 3600, "6.3 K/h", "11.3 °F/h"),
        (DRIFT, 0.204 / 86_400, "0.20 K/d", "0.37 °F/d"), (FINE_TEMPERATURE, 12.504, "12.50 °C", "54.51 °F"),
        (FINE_DIFFERENCE, 0.504, "0.50 K", "0.91 °F"),
    ],
)  # fmt: skip
def test_an_amount_of_a_proof_is_shown_to_its_place(quantity: Quantity, value: float, metric: str, us: str):
    assert (Amount(value, quantity).show(METRIC), Amount(value, quantity).show(US)) == (metric, us)


def test_each_figure_of_two_probes_is_its_own():
    found = pair_figures(Pair("a", "b", Spread(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0)))
    told = {each.key: (each.value, *said(each.working[0]).values()) for each in found}
    keys = ("mean", "deviation", "lowest", "highest", "low_5", "high_95")
    assert told == {key: (value, value) for value, key in enumerate(keys, 1)}


@pytest.mark.parametrize(("probes", "warned"), [(8, True), (9, False)])
def test_fewer_than_nine_probes_are_warned_of(probes: int, warned: bool):
    found = space_figures(space(means_c=(12.0,) * probes))
    assert all(bool(in_words(each.cautions)) is warned for each in found)


def test_the_drift_of_a_probe_is_said_by_the_second():
    probe: Probe = evolve(steady().probes[0], drift=Drift(0.864, 0.1))
    (drift,) = (each for each in figures_of(probe) if each.key == "drift")
    kept = dict(key_figures(evolve(steady(), centre=probe)))["drift"]
    assert [drift.value, kept.value] == pytest.approx([1e-5, 1e-5], rel=1e-9, abs=0)


WORKED = {
    "in_band": [{"inside": 169_200.0, "all": 180_000.0, "share": 0.94}],
    "settled": [{"since": 3600.0}],
    "starts": [
        {"period": 4000.0, "cools": 1000.0, "holds": 3000.0, "share": 0.25},
        {"period": 10 / 9, "starts": 2.5e-4},
    ],
}


def test_the_working_of_a_figure_names_its_amounts():
    """Fifty hours of which 47 are in the band; runs of 1000 s every 4000 s, of which an hour has 0.9."""
    usual = steady().probes[0]
    rhythm: Any = SimpleNamespace(
        period_s=4000.0, cools_s=1000.0, holds_s=3000.0, run_share=0.25, starts_an_hour=0.9, is_share_sure=False,
        holds_low_s=2900.0, holds_high_s=3100.0, cools_low_s=800.0, cools_high_s=1200.0, run_share_low=0.2,
        run_share_high=0.3, swing_k=1.0, cools_by_s=0.1, warms_by_s=0.1, passed_k=0.0, warming_s=9000.0, room_c=21.0,
    )  # fmt: skip
    probe = evolve(
        usual,
        temperature=evolve(usual.temperature, in_band=0.94, covered_s=180_000.0),
        begins_s=1000.0,
        stay=Stay(4600.0, 1.0, LATELY),
        compressor=Compressor(rhythm=rhythm),
        humidity=None,
    )
    told = {each.key: [said(step) for step in each.working] for each in figures_of(probe)}
    assert {key: told[key] for key in WORKED} == {
        key: [pytest.approx(step) for step in rows] for key, rows in WORKED.items()
    }
    assert told["warming"] == [{"room": 21.0, "tau": 9000.0}]
    assert told["run_share_least"] == [{"cools": 800.0, "period": 4000.0, "share": 0.2}]
    assert told["run_share_most"] == [{"cools": 1200.0, "period": 4000.0, "share": 0.3}]


@pytest.mark.parametrize(("period_s", "warned"), [(1800.0, False), (1800.1, True)])
def test_a_cycle_longer_than_the_half_hour_is_warned_of(period_s: float, warned: bool):
    rhythm: Any = analysis("plain").centre.compressor.rhythm
    probe = evolve(analysis("plain").centre, compressor=Compressor(rhythm=evolve(rhythm, period_s=period_s)))
    (one,) = (each for each in figures_of(probe) if each.key == "fluctuation")
    assert bool(in_words(one.cautions)) is warned
