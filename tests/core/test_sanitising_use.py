"""How a solution is used: how warm, how long, at which pH, and what it must never meet."""

import itertools

import pytest

from core.chamber.sanitising import descaler, dilute
from core.chamber.sanitising_agents import AGENTS, CLEANERS, never_mix
from core.quantities import METRIC, US
from core.sources import COMMON_PRACTICE
from tests.core.solutions import LEAST, LITRE, STOCK, figure, refused
from tests.core.telling import in_words


@pytest.mark.parametrize(
    ("ppm", "ph", "least_f"),
    [
        (49.99, 8.0, 120), (50.0, 8.0, 75), (50.0, 8.001, 100), (50.0, None, 100), (49.99, None, 120),
        (99.99, 8.0, 75), (99.99, None, 100), (100.0, None, 55), (100.0, 8.0, 55), (25.0, 8.0, 120),
    ],
)  # fmt: skip
def test_how_warm_chlorine_must_be_on_each_side_of_every_row(ppm: float, ph: float | None, least_f: float):
    """Food Code 4-501.114 as adopted in Wisconsin, Washington and Virginia."""
    assert figure(dilute("chlorine", 0.0525, ppm, LITRE, ph=ph), "temperature").show(US) == f"{least_f}.0 °F"


@pytest.mark.parametrize(("agent", "seconds"), [("iodine", 30), ("quat", 30), ("peracetic", 30), ("calcium", 10)])
def test_how_long_it_stays_wet(agent: str, seconds: int):
    made = dilute(agent, STOCK[agent], LEAST[agent], LITRE)
    assert figure(made, "contact").show(METRIC) == f"{seconds} s"


@pytest.mark.parametrize("agent", ["iodine", "quat"])
def test_iodine_and_quats_are_as_warm_as_the_stricter_rule_prints(agent: str):
    assert figure(dilute(agent, STOCK[agent], LEAST[agent], LITRE), "temperature").show(US) == "75.0 °F"


def test_cold_chlorine_is_told_how_warm_it_must_be():
    assert figure(dilute("chlorine", 0.0525, 50.0, LITRE), "temperature").show(US) == "100.0 °F"
    assert figure(dilute("chlorine", 0.0525, 50.0, LITRE, ph=7.5), "temperature").show(US) == "75.0 °F"


@pytest.mark.parametrize(("agent", "ph"), [("chlorine", 10.01), ("chlorine", 4.99), ("iodine", 5.01), ("label", 14.01)])
def test_a_ph_that_will_not_do_is_refused(agent: str, ph: float):
    assert refused(agent, 0.1, 25.0, LITRE, ph=ph).field == "ph"


@pytest.mark.parametrize(("agent", "ph"), [("chlorine", 10.0), ("chlorine", 5.0), ("iodine", 5.0), ("label", 14.0)])
def test_a_ph_that_just_will_do_is_taken(agent: str, ph: float):
    assert dilute(agent, 0.1, 25.0, LITRE, ph=ph)


def test_bleach_says_at_once_what_it_must_not_meet():
    assert any(
        "sets free chlorine gas" in each for each in in_words(dilute("chlorine", 0.0525, 200.0, LITRE)[0].cautions)
    )


def test_peracetic_acid_names_both_its_limits():
    assert any(
        "58 ppm" in each and "315 ppm" in each for each in in_words(dilute("peracetic", 0.15, 50.0, LITRE)[0].cautions)
    )


def test_where_only_the_label_knows_the_temperature_it_is_said():
    made = dilute("peracetic", 0.15, 50.0, LITRE)
    assert not [each for each in made if each.key == "temperature"]
    assert any("its label says" in each for each in in_words(figure(made, "contact").cautions))


def test_vinegar_is_half_and_half_and_no_sanitiser():
    vinegar, water = descaler(LITRE)
    assert vinegar.value == water.value == LITRE / 2
    assert "not a sanitiser" in in_words(vinegar.cautions)[0]
    assert "vinegar" not in AGENTS


@pytest.mark.parametrize("acid", ["vinegar", "acid", "peracetic", "iodine"])
def test_chlorine_and_any_acid_make_chlorine_gas(acid: str):
    assert "chlorine gas" in never_mix(("chlorine", acid))[0].hazard.say(METRIC)


def test_chlorine_and_ammonia_make_chloramines():
    assert "chloramine" in never_mix(("ammonia", "chlorine"))[0].say().say(METRIC)


def test_a_hazard_without_a_source_says_so():
    (clash,) = never_mix(("chlorine", "quat"))
    assert clash.source is COMMON_PRACTICE
    assert "common practice; no published source" in clash.say().say(METRIC)


def test_every_pair_is_warned_of_once():
    for one, other in itertools.combinations(CLEANERS, 2):
        assert len(never_mix((one, other, one))) == 1


def test_known_hazards_come_first():
    unknown = [
        "nothing is known" in clash.hazard.say(METRIC) for clash in never_mix(("label", "quat", "chlorine", "vinegar"))
    ]
    assert unknown == [False, False, True, True, True, True]


def test_one_agent_alone_clashes_with_nothing():
    assert never_mix(("chlorine",)) == ()


def test_an_unknown_cleaner_is_not_passed_over():
    with pytest.raises(KeyError):
        never_mix(("chlorine", "bleech"))


@pytest.mark.parametrize("pair", list(itertools.combinations(["chlorine", "calcium", "isocyanurate"], 2)))
def test_two_kinds_of_chlorine_can_take_fire(pair: tuple[str, str]):
    """Common practice; no published source."""
    assert never_mix(pair)[0].hazard.say(METRIC).endswith("can take fire or burst where they meet")
