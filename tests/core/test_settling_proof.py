"""Settled, or not settled because of what; what to change; two runs side by side; the figures' working."""

from functools import cache

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.advice import advise
from core.chamber.settling.analysis import Analysis
from core.chamber.settling.comparing import compare
from core.chamber.settling.figures import figures_of, space_figures
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from core.working import Figure
from tests.core.analysed import analyse
from tests.core.chamber_model import Chamber, Logger, log, run

CHAMBER = Chamber(differential_k=1.0, humid_differential=0.02, drying_s=3600)
WANTED = Wanted(Band(11.5, 1.5), Band(0.80, 0.10))


@cache
def probes(
    names: tuple[str, ...] = ("low", "high"), hours: float = 48, apart_k: float = 0.1, chamber: Chamber = CHAMBER
) -> tuple[Series, ...]:
    truth = run(chamber, hours)
    found: list[Series] = []
    for place, name in enumerate(names):
        logged = log(truth, Logger(offset_k=place * apart_k), place)
        found.append(Series(name, logged.times_s, logged.temperatures_c, logged.humidities))
    return tuple(found)


@cache
def analysis(series: tuple[Series, ...], wanted: Wanted = WANTED) -> Analysis:
    return analyse(series, wanted, room_c=20.0)


def proof(series: tuple[Series, ...], wanted: Wanted = WANTED) -> Proof:
    return prove(analysis(series, wanted))


def against(found: Proof) -> list[str]:
    return [reason.key for reason in found.because]


def advice(found: Proof) -> list[str]:
    return [each.key for each in found.advice]


def test_a_good_chamber_is_settled():
    found = proof(probes())
    assert found.is_settled, against(found)
    assert found.settled_since_s is not None
    assert 0 < found.settled_since_s < 6 * 3600


def test_a_good_chamber_needs_no_advice():
    assert advice(proof(probes())) == []


def test_a_short_log_proves_nothing_yet():
    found = proof(probes(hours=20))
    assert not found.is_settled
    assert found.reasons[0].met is None


def test_one_probe_does_not_tell_warm_from_cold_places():
    assert against(proof(probes(("low",)))) == ["gradient"]


def test_a_target_that_is_missed_is_named_and_the_set_point_comes_first():
    found = proof(probes(), evolve(WANTED, temperature=Band(15.0, 1.5)))
    assert "temperature-low" in against(found)
    assert found.advice[0].key == "set-point"
    assert "3.6" in found.advice[0].text.say(METRIC, 2)
    assert "higher" in found.advice[0].text.say(METRIC)


def test_a_wide_differential_is_to_be_narrowed():
    wide = probes(chamber=evolve(CHAMBER, differential_k=3.5))
    assert "differential" in advice(proof(wide, evolve(WANTED, temperature=Band(12.75, 1.5))))


def test_a_compressor_that_hardly_rests_wants_a_wider_differential():
    found = analysis(probes())
    rhythm = found.centre.compressor.rhythm
    assert rhythm is not None
    hasty = evolve(rhythm, period_s=500.0, cools_s=250.0, holds_s=250.0)
    centre = evolve(found.centre, compressor=evolve(found.centre.compressor, rhythm=hasty))
    assert "Widen" in advise(evolve(found, centre=centre))[0].text.say(METRIC)


def test_a_chamber_that_leaves_its_band_again_and_again_is_said_to():
    found = proof(probes(), evolve(WANTED, temperature=Band(11.5, 0.4)))
    reason = next(reason for reason in found.because if reason.key == "temperature-low")
    assert reason.met is False


def test_probes_that_differ_steadily_are_to_be_laid_side_by_side():
    found = proof(probes(apart_k=0.8))
    assert "sensor" in advice(found)


def test_a_chamber_warm_on_one_side_wants_its_fan_moved():
    found = proof(probes(apart_k=2.0), evolve(WANTED, temperature=Band(12.5, 3.0)))
    assert "gradient" in against(found)
    assert "fan" in advice(found)


def test_a_compressor_that_runs_all_the_time_is_overloaded():
    weak = probes(chamber=evolve(CHAMBER, cooling_s=6.8 * 3600))
    assert "load" in advice(proof(weak))


def test_advice_comes_in_the_order_to_try_it():
    order = ["sensor", "hygrometer", "load", "differential", "set-point", "humidity-set-point", "humidifier", "fan"]
    found = advice(proof(probes(apart_k=2.0), evolve(WANTED, temperature=Band(15.0, 0.5), humidity=Band(0.6, 0.05))))
    assert found == sorted(found, key=order.index)


def test_humidity_that_nobody_logged_is_missing_evidence():
    dry = tuple(evolve(series, humidities=None) for series in probes())
    assert against(proof(dry)) == ["humidity"]


def test_humidity_that_nobody_asks_for_is_not_missed():
    dry = tuple(evolve(series, humidities=None) for series in probes())
    assert proof(dry, evolve(WANTED, humidity=None)).is_settled


def test_a_drifting_chamber_is_not_settled():
    drifting = tuple(
        evolve(
            series,
            temperatures_c=[
                warm + at_s / 86_400 for at_s, warm in zip(series.times_s, series.temperatures_c, strict=True)
            ],
        )
        for series in probes()
    )
    assert "drift-low" in against(proof(drifting, evolve(WANTED, temperature=Band(12.5, 1.9))))


def test_a_defrost_does_not_unsettle():
    assert proof(probes(chamber=evolve(CHAMBER, defrosts_s=(20 * 3600.0, 40 * 3600.0)))).is_settled


def test_every_reason_says_what_would_settle_it():
    for reason in proof(probes(("low",), hours=20)).reasons:
        assert reason.settle.say(METRIC)
        assert reason.text.say(US)


def test_a_probe_may_be_called_anything():
    found = proof(probes(("{low}", "}{"), apart_k=0.8))
    assert "“{low}”" in " ".join(reason.text.say(METRIC) for reason in found.reasons)
    assert all(each.text.say(METRIC) for each in found.advice)


def test_two_probes_of_one_name_are_refused():
    with pytest.raises(OutOfRange) as caught:
        analyse(probes() + probes())
    assert caught.value.field == "log"


def test_no_probe_is_refused():
    with pytest.raises(OutOfRange):
        analyse(())


def test_two_runs_are_set_side_by_side():
    other = analysis(probes(chamber=evolve(CHAMBER, differential_k=2.0)))
    rows = {row.key: row for row in compare(analysis(probes()), other)}
    one, two = rows["holds"].one, rows["holds"].other
    assert one is not None
    assert two is not None
    assert two.value > one.value


def test_what_only_one_run_shows_stands_alone():
    rows = {row.key: row for row in compare(analysis(probes(("low",))), analysis(probes()))}
    assert rows["gradient"].one is None
    assert rows["gradient"].other is not None


def all_figures() -> list[Figure]:
    found = analysis(probes())
    return [*figures_of(found.centre), *space_figures(found)]


def test_every_figure_has_a_key_of_its_own():
    keys = [figure.key for figure in all_figures()]
    assert len(set(keys)) == len(keys)


def test_every_figure_shows_its_working_and_its_source():
    assert all(figure.working and figure.working[-1].say(US) and figure.source.cite() for figure in all_figures())


def test_the_figures_tell_the_whole_story():
    keys = {figure.key for figure in all_figures()}
    assert {"mean", "in_band", "settled", "drift", "fluctuation", "starts", "holds", "run_share", "warming"} <= keys
    assert {"overshoot", "doors", "defrosts", "humidity", "humidity_swing", "dew_point", "deficit", "gradient"} <= keys


def test_the_hold_is_the_period_less_the_run():
    holds = next(figure for figure in all_figures() if figure.key == "holds")
    amounts = holds.working[-1].values
    assert amounts["period"].value - amounts["cools"].value == pytest.approx(holds.value)


def test_the_humidifiers_rhythm_is_seen():
    humid = analysis(
        probes(chamber=evolve(CHAMBER, differential_k=2.5, humid_differential=0.05, drying_s=1500))
    ).centre.humidity
    assert humid is not None
    assert humid.rhythm.work is not None
    assert humid.rhythm.swing is not None


def test_one_reading_is_refused():
    with pytest.raises(OutOfRange, match="fewer than two"):
        analyse((Series("low", (0.0,), (12.0,)),))
