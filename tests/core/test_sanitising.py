"""Diluting a sanitiser: what goes in, what may stay on, what never meets."""

import itertools

import pytest

from core.chamber.sanitising import DRAIN, NO_LIMIT_KNOWN, RINSE, descaler, dilute
from core.chamber.sanitising_agents import AGENTS, CLEANERS, never_mix
from core.chamber.sanitising_sheets import DILUTE_SANITISER
from core.quantities import METRIC, US
from core.refusals import OutOfRange, Refused
from core.sources import COMMON_PRACTICE
from core.units import GALLON_M3

LITRE = 1e-3


def figure(figures, key: str):
    return next(each for each in figures if each.key == key)


def refused(*arguments, **more) -> OutOfRange:
    with pytest.raises(OutOfRange) as caught:
        dilute(*arguments, **more)
    return caught.value


def test_half_a_teaspoon_of_bleach_makes_a_litre_of_200_ppm():
    made = dilute("chlorine", 0.0786, 200.0, LITRE)
    assert figure(made, "stock").show(METRIC) == "2.54 ml"
    assert figure(made, "spoons").show(METRIC) == "0.52 tsp"


def test_a_gallon_takes_a_tablespoon_for_both_readers():
    made = dilute("chlorine", 0.0525, 200.0, GALLON_M3)
    assert figure(made, "spoons").show(METRIC) == figure(made, "spoons").show(US) == "2.93 tsp"


def test_stock_and_water_make_the_volume():
    made = dilute("quat", 0.1, 200.0, 5 * LITRE)
    assert figure(made, "stock").value + figure(made, "water").value == pytest.approx(5 * LITRE)


def test_a_label_that_states_hypochlorite_is_counted_as_available_chlorine():
    made = dilute("chlorine", 0.0825, 200.0, LITRE, stated="hypochlorite")
    assert figure(made, "stock").value == pytest.approx(200e-6 * LITRE / 0.07858, rel=1e-3)


def test_only_bleach_is_stated_as_hypochlorite():
    assert refused("quat", 0.1, 200.0, LITRE, stated="hypochlorite").field == "stated"


def test_a_heavier_stock_takes_less_of_it():
    light, heavy = (figure(dilute("quat", 0.1, 200.0, LITRE, stock_kg_per_litre=each), "stock") for each in (1.0, 1.25))
    assert heavy.value == pytest.approx(light.value / 1.25)


def test_what_a_litre_of_stock_is_taken_to_weigh_is_said():
    assert any("counted as 1 kg" in each for each in dilute("quat", 0.1, 200.0, LITRE)[0].cautions)


def test_the_label_is_shown_first():
    assert dilute("quat", 0.1, 200.0, LITRE)[0].cautions[0].startswith("The product’s label comes before")


@pytest.mark.parametrize(("agent", "limit_ppm"), [("chlorine", 200), ("iodine", 25), ("quat", 200), ("peracetic", 58)])
def test_the_limit_itself_may_stay_on(agent: str, limit_ppm: float):
    assert DRAIN in dilute(agent, 0.1, limit_ppm, LITRE)[0].cautions


@pytest.mark.parametrize(("agent", "limit_ppm"), [("chlorine", 200), ("iodine", 25), ("quat", 200), ("peracetic", 58)])
def test_over_the_limit_is_refused_where_it_is_to_stay_on(agent: str, limit_ppm: float):
    said = refused(agent, 0.1, limit_ppm + 1, LITRE)
    assert said.field == "target"
    assert f"{limit_ppm} ppm" in said.sentence


def test_over_the_limit_is_made_where_it_is_rinsed_and_told_to():
    assert RINSE in dilute("chlorine", 0.0525, 400.0, LITRE, after="rinse")[0].cautions


def test_a_label_may_raise_the_limit_of_quats_to_400_ppm_and_no_further():
    assert figure(dilute("quat", 0.1, 400.0, LITRE, label_ppm=500.0), "limit").show(METRIC) == "400 ppm"
    assert refused("quat", 0.1, 401.0, LITRE, label_ppm=500.0).field == "target"


def test_a_label_may_lower_every_limit():
    assert refused("chlorine", 0.0525, 150.0, LITRE, label_ppm=100.0).field == "target"


def test_a_label_cannot_raise_chlorine():
    assert refused("chlorine", 0.0525, 201.0, LITRE, label_ppm=800.0).field == "target"


def test_a_product_without_a_known_limit_is_rinsed():
    assert NO_LIMIT_KNOWN in dilute("label", 0.1, 300.0, LITRE)[0].cautions


@pytest.mark.parametrize(("agent", "weak_ppm"), [("chlorine", 24.0), ("iodine", 12.0)])
def test_too_weak_to_sanitise_is_refused(agent: str, weak_ppm: float):
    assert "does not sanitise" in refused(agent, 0.1, weak_ppm, LITRE).sentence


def test_a_stock_weaker_than_what_is_wanted_is_refused():
    assert refused("quat", 1e-4, 200.0, LITRE).sentence.endswith("it holds 100 ppm.")


def test_cold_chlorine_is_told_how_warm_it_must_be():
    assert figure(dilute("chlorine", 0.0525, 50.0, LITRE), "temperature").show(US) == "100.0 °F"
    assert figure(dilute("chlorine", 0.0525, 50.0, LITRE, ph=7.5), "temperature").show(US) == "75.0 °F"


@pytest.mark.parametrize(("agent", "ph"), [("chlorine", 10.5), ("chlorine", 4.0), ("iodine", 6.0), ("quat", 15.0)])
def test_a_ph_that_will_not_do_is_refused(agent: str, ph: float):
    assert refused(agent, 0.1, 25.0, LITRE, ph=ph).field == "ph"


def test_bleach_says_at_once_what_it_must_not_meet():
    assert any("sets free chlorine gas" in each for each in dilute("chlorine", 0.0525, 200.0, LITRE)[0].cautions)


def test_peracetic_acid_names_both_its_limits():
    assert any("58 ppm" in each and "315 ppm" in each for each in dilute("peracetic", 0.15, 50.0, LITRE)[0].cautions)


def test_where_only_the_label_knows_the_temperature_it_is_said():
    made = dilute("peracetic", 0.15, 50.0, LITRE)
    assert not [each for each in made if each.key == "temperature"]
    assert any("its label says" in each for each in figure(made, "contact").cautions)


def test_vinegar_is_half_and_half_and_no_sanitiser():
    vinegar, water = descaler(LITRE)
    assert vinegar.value == water.value == LITRE / 2
    assert "not a sanitiser" in vinegar.cautions[0]
    assert "vinegar" not in AGENTS


def test_the_sheet_says_it_beside_the_strength_wanted():
    with pytest.raises(Refused) as caught:
        DILUTE_SANITISER.answer({"stock": "5.25 %", "target": "300 ppm", "volume": "4 L"})
    assert [each.field for each in caught.value.refusals] == ["target"]


@pytest.mark.parametrize("stock", ["5.25", "5.25 %", "52500 ppm"])
def test_a_stock_may_be_typed_in_per_cent_or_ppm(stock: str):
    answer = DILUTE_SANITISER.answer({"stock": stock, "target": "200 ppm", "volume": "4 L"})
    assert answer.figures[0].show(METRIC) == "15.2 ml"


@pytest.mark.parametrize("acid", ["vinegar", "acid", "peracetic", "iodine"])
def test_chlorine_and_any_acid_make_chlorine_gas(acid: str):
    assert "chlorine gas" in never_mix(("chlorine", acid))[0].hazard


def test_chlorine_and_ammonia_make_chloramines():
    assert "chloramine" in never_mix(("ammonia", "chlorine"))[0].say()


def test_a_hazard_without_a_source_says_so():
    (clash,) = never_mix(("chlorine", "quat"))
    assert clash.source is COMMON_PRACTICE
    assert "common practice, no source" in clash.say()


def test_every_pair_is_warned_of_once():
    for one, other in itertools.combinations(CLEANERS, 2):
        assert len(never_mix((one, other, one))) == 1


def test_known_hazards_come_first():
    unknown = ["nothing is known" in clash.hazard for clash in never_mix(("label", "quat", "chlorine", "vinegar"))]
    assert unknown == [False, False, True, True, True, True]


def test_one_agent_alone_clashes_with_nothing():
    assert never_mix(("chlorine",)) == ()


def test_an_unknown_cleaner_is_not_passed_over():
    with pytest.raises(KeyError):
        never_mix(("chlorine", "bleech"))
