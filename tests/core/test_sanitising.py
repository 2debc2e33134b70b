"""Diluting a sanitiser: what goes in, what may stay on, what never meets."""

import itertools

import pytest

from core.chamber.sanitising import DRAIN, NO_LIMIT_KNOWN, RINSE, RINSE_ALL, descaler, dilute
from core.chamber.sanitising_agents import AGENTS, CLEANERS, never_mix
from core.chamber.sanitising_sheets import DILUTE_SANITISER
from core.chamber.sanitising_stock import IS_IT_SO_WEAK, WEAK_STOCK
from core.quantities import METRIC, US
from core.refusals import OutOfRange, Refused
from core.sources import CFR_178_1010, CFR_180_940, COMMON_PRACTICE, PRODUCT_LABEL, Source
from core.units import GALLON_M3
from tests.core.telling import in_words

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
    assert any("counted as 1 kg" in each for each in in_words(dilute("quat", 0.1, 200.0, LITRE)[0].cautions))


def test_the_label_is_shown_first():
    assert in_words(dilute("quat", 0.1, 200.0, LITRE)[0].cautions)[0].startswith("The product’s label comes before")


STOCK = {"chlorine": 0.0525, "calcium": 0.65, "isocyanurate": 0.56, "iodine": 0.0175, "quat": 0.1, "peracetic": 0.15}
LIMITS = {"chlorine": 200, "calcium": 200, "isocyanurate": 100, "iodine": 25, "quat": 200, "peracetic": 58}
LEAST = {"chlorine": 25, "calcium": 25, "isocyanurate": 25, "iodine": 12.5, "quat": 150, "peracetic": 46}


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_the_limit_itself_may_stay_on(agent: str, limit_ppm: float):
    assert DRAIN in in_words(dilute(agent, STOCK[agent], limit_ppm, LITRE)[0].cautions)


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_a_hair_over_the_limit_is_refused_where_it_is_to_stay_on(agent: str, limit_ppm: float):
    said = refused(agent, STOCK[agent], limit_ppm * 1.0001, LITRE)
    assert said.field == "target"
    assert f"{limit_ppm} ppm" in said.sentence


@pytest.mark.parametrize(("agent", "limit_ppm"), LIMITS.items())
def test_a_hair_over_the_limit_is_rinsed_where_one_chose_to(agent: str, limit_ppm: float):
    assert RINSE_ALL in in_words(dilute(agent, STOCK[agent], limit_ppm, LITRE, after="rinse")[0].cautions)
    assert RINSE in in_words(dilute(agent, STOCK[agent], limit_ppm * 1.0001, LITRE, after="rinse")[0].cautions)


@pytest.mark.parametrize("label_ppm", [200.0, 1000.0])
@pytest.mark.parametrize("agent", ["chlorine", "calcium", "isocyanurate", "iodine"])
def test_no_label_raises_chlorine_or_iodine(agent: str, label_ppm: float):
    assert figure(dilute(agent, STOCK[agent], 25.0, LITRE, label_ppm=label_ppm), "limit").value == pytest.approx(
        LIMITS[agent] * 1e-6
    )


def test_a_label_may_lower_iodine():
    made = dilute("iodine", 0.0175, 15.0, LITRE, label_ppm=15.0)
    assert figure(made, "limit").show(METRIC) == "15 ppm"
    assert "label’s own" in figure(made, "limit").working[0].say(METRIC)
    assert refused("iodine", 0.0175, 15.01, LITRE, label_ppm=15.0).field == "target"


def test_over_the_limit_is_made_where_it_is_rinsed_and_told_to():
    assert RINSE in in_words(dilute("chlorine", 0.0525, 400.0, LITRE, after="rinse")[0].cautions)


def test_a_label_may_raise_the_limit_of_quats_to_400_ppm_and_no_further():
    assert figure(dilute("quat", 0.1, 400.0, LITRE, label_ppm=500.0), "limit").show(METRIC) == "400 ppm"
    assert refused("quat", 0.1, 401.0, LITRE, label_ppm=500.0).field == "target"


def test_a_label_may_lower_every_limit():
    assert refused("chlorine", 0.0525, 150.0, LITRE, label_ppm=100.0).field == "target"


def test_a_label_cannot_raise_chlorine():
    assert refused("chlorine", 0.0525, 201.0, LITRE, label_ppm=800.0).field == "target"


def test_a_product_without_a_known_limit_is_rinsed():
    assert NO_LIMIT_KNOWN in in_words(dilute("label", 0.1, 300.0, LITRE)[0].cautions)


@pytest.mark.parametrize(("agent", "least_ppm"), LEAST.items())
def test_the_least_strength_sanitises_and_a_hair_less_does_not(agent: str, least_ppm: float):
    assert dilute(agent, STOCK[agent], least_ppm, LITRE)
    said = refused(agent, STOCK[agent], least_ppm * 0.9999, LITRE)
    assert said.field == "target"
    assert said.sentence.startswith(f"Too weak: less than {least_ppm} ppm of {AGENTS[agent].active} does not sanitise")


@pytest.mark.parametrize(("agent", "ppm"), [("quat", 5.0), ("quat", 20.0), ("peracetic", 1.0), ("peracetic", 10.0)])
def test_a_rule_that_leaves_it_to_the_label_still_says_too_weak_and_where_else_to_go(agent: str, ppm: float):
    said = refused(agent, STOCK[agent], ppm, LITRE).sentence
    assert "21 CFR 178.1010(c)" in said
    assert "choose another product, by its label" in said


def test_of_another_product_only_the_label_knows_and_that_is_said():
    assert any("only its label says" in each for each in in_words(dilute("label", 0.1, 5.0, LITRE)[0].cautions))


@pytest.mark.parametrize("agent", ["calcium", "isocyanurate"])
def test_granules_are_weighed_in_grams_and_never_measured_by_spoons(agent: str):
    made = dilute(agent, 0.65, 100.0, 4 * LITRE)
    assert figure(made, "stock").show(METRIC) == "0.62 g"
    assert figure(made, "stock").show(US) == "0.62 g (0.0217 oz)"
    assert "spoons" not in [each.key for each in made]
    assert figure(made, "water").value == 4 * LITRE
    assert figure(made, "stock").working[1].say(METRIC) == "100 ppm × 4\u00a0000 g ÷ 65 % = 0.615385 g"


@pytest.mark.parametrize("strength", [0.1601, 0.525, 0.56, 0.65, 0.9])
def test_chlorine_too_strong_for_a_liquid_is_not_poured(strength: float):
    said = refused("chlorine", strength, 200.0, LITRE)
    assert said.field == "stock"
    assert "weighed, not poured" in said.sentence


STRONGEST = {"chlorine": 0.16, "calcium": 0.9918, "isocyanurate": 0.9152, "iodine": 0.2, "quat": 0.8, "peracetic": 0.4}


@pytest.mark.parametrize(("agent", "strongest"), STRONGEST.items())
def test_the_strongest_stock_there_is_and_a_hair_more(agent: str, strongest: float):
    assert dilute(agent, strongest, LEAST[agent], LITRE)
    assert refused(agent, strongest * 1.001, LEAST[agent], LITRE).field == "stock"


def test_another_product_may_be_as_strong_as_its_label_says():
    assert dilute("label", 1.0, 100.0, LITRE)


@pytest.mark.parametrize("agent", ["calcium", "isocyanurate"])
def test_granules_weaker_than_any_tablet_are_refused(agent: str):
    assert dilute(agent, 0.15, 100.0, LITRE)
    assert refused(agent, 0.1499, 100.0, LITRE).field == "stock"


@pytest.mark.parametrize(
    ("more", "field"), [({"stated": "hypochlorite"}, "stated"), ({"stock_kg_per_litre": 1.1}, "stock_kg_m3")]
)
def test_what_says_nothing_of_granules_is_refused_and_not_ignored(more, field: str):
    assert refused("calcium", 0.65, 100.0, LITRE, **more).field == field


def test_hypochlorite_on_the_label_is_held_to_the_strongest_as_chlorine():
    assert dilute("chlorine", 0.1679, 200.0, LITRE, stated="hypochlorite")
    assert refused("chlorine", 0.1681, 200.0, LITRE, stated="hypochlorite").field == "stock"


def test_a_stock_below_one_per_cent_is_made_but_never_without_a_word():
    assert IS_IT_SO_WEAK not in in_words(dilute("chlorine", WEAK_STOCK, 200.0, LITRE)[0].cautions)
    assert IS_IT_SO_WEAK in in_words(dilute("chlorine", 0.00999, 200.0, LITRE)[0].cautions)
    assert IS_IT_SO_WEAK in in_words(dilute("chlorine", 0.000525, 200.0, LITRE)[0].cautions)
    assert WEAK_STOCK == 0.01


@pytest.mark.parametrize("text", ["0.0525", "0.525", "0.999"])
def test_a_bare_fraction_for_the_stock_is_asked_about(text: str):
    with pytest.raises(Refused) as caught:
        DILUTE_SANITISER.answer({"stock": text, "target": "200 ppm", "volume_m3": "4 L"})
    (refusal,) = caught.value.refusals
    assert refusal.field == "stock"
    assert "enter it with its unit" in refusal.sentence


def test_the_fraction_that_was_meant_is_named():
    with pytest.raises(Refused, match=r"Is 5\.25 % meant"):
        DILUTE_SANITISER.answer({"stock": "0.0525", "target": "200 ppm", "volume_m3": "4 L"})


def test_a_weak_stock_with_its_unit_is_taken_at_its_word():
    answer = DILUTE_SANITISER.answer({"stock": "0.0525 %", "target": "200 ppm", "volume_m3": "4 L"})
    assert IS_IT_SO_WEAK in in_words(answer.figures[0].cautions)


def test_ten_thousand_gallons_are_made_and_a_hair_more_are_not():
    made = dilute("chlorine", 0.0525, 200.0, 10_000 * GALLON_M3)
    assert figure(made, "stock").value / GALLON_M3 == pytest.approx(38.095, rel=1e-4)  # half of what 410 ppm take
    assert refused("chlorine", 0.0525, 200.0, 10_001 * GALLON_M3).field == "volume_m3"
    assert refused("chlorine", 0.0525, 200.0, 0.0).field == "volume_m3"


@pytest.mark.parametrize(("ppm", "made"), [(0.9999, False), (1.0, True), (10_000.0, True), (10_001.0, False)])
def test_the_strength_wanted_is_bounded_on_both_sides(ppm: float, made: bool):
    if made:
        assert dilute("label", 0.5, ppm, LITRE)
    else:
        assert refused("label", 0.5, ppm, LITRE).field == "target"


@pytest.mark.parametrize(("kg", "made"), [(0.7999, False), (0.8, True), (2.0, True), (2.0001, False)])
def test_a_litre_of_stock_weighs_so_much(kg: float, made: bool):
    if made:
        assert dilute("quat", 0.1, 200.0, LITRE, stock_kg_per_litre=kg)
    else:
        assert refused("quat", 0.1, 200.0, LITRE, stock_kg_per_litre=kg).field == "stock_kg_m3"


def test_the_stock_may_be_the_solution_itself_and_not_a_hair_weaker():
    assert figure(dilute("label", 2e-4, 200.0, LITRE), "water").value == pytest.approx(0.0, abs=1e-9)
    assert refused("label", 1.999e-4, 200.0, LITRE).field == "target"
    assert dilute("label", 1e-5, 10.0, LITRE)
    assert refused("label", 0.99e-5, 5.0, LITRE).field == "stock"


def test_a_stock_weaker_than_what_is_wanted_is_refused():
    assert refused("quat", 1e-4, 200.0, LITRE).sentence.endswith("it holds 100 ppm.")


def said_by(figures, key: str) -> list[str]:
    return [step.say(METRIC) for step in figure(figures, key).working]


def test_the_working_of_bleach_line_by_line():
    made = dilute("chlorine", 0.0825, 200.0, 4 * LITRE, stated="hypochlorite", stock_kg_per_litre=1.1, ph=7.0)
    assert said_by(made, "stock") == [
        "Sodium hypochlorite as available chlorine: 8.25 % × 0.9525 = 7.85812 %",
        "Strength wanted × volume ÷ (strength of the stock × kilograms to its litre):",
        "200 ppm × 4 L ÷ (7.85812 % × 1.1) = 9.25504 ml",
    ]
    assert said_by(made, "spoons") == ["9.25504 ml = 1.8777 tsp"]
    assert said_by(made, "water") == ["4 L − 0.00925504 L = 3.99074 L"]
    assert said_by(made, "limit") == ["Not more than this of available chlorine may stay on, drained: 200 ppm"]
    assert said_by(made, "temperature") == ["For chlorine of this strength, pH up to 8: 12.7778 °C"]
    assert said_by(made, "contact") == ["For chlorine of this strength, pH up to 8: 10 s"]


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


def test_the_sheet_says_it_beside_the_strength_wanted():
    with pytest.raises(Refused) as caught:
        DILUTE_SANITISER.answer({"stock": "5.25 %", "target": "300 ppm", "volume_m3": "4 L"})
    assert [each.field for each in caught.value.refusals] == ["target"]


@pytest.mark.parametrize("stock", ["5.25", "5.25 %", "52500 ppm"])
def test_a_stock_may_be_typed_in_per_cent_or_ppm(stock: str):
    answer = DILUTE_SANITISER.answer({"stock": stock, "target": "200 ppm", "volume_m3": "4 L"})
    assert answer.figures[0].show(METRIC) == "15.2 ml"


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


BOUNDS = [
    ("stock", "9.99 ppm", "10 ppm"),
    ("stock", "100.1 %", "100 %"),
    ("target", "0.999 ppm", "1 ppm"),
    ("target", "10001 ppm", "10000 ppm"),
    ("volume_m3", "9.9 ml", "10 ml"),
    ("volume_m3", "10001 gal", "10000 gal"),
    ("label", "0.999 ppm", "1 ppm"),
    ("label", "10001 ppm", "10000 ppm"),
    ("ph", "0.99", "1"),
    ("ph", "13.01", "13"),
    ("stock_kg_m3", "0.799 kg/L", "0.8 kg/L"),
    ("stock_kg_m3", "2.001 kg/L", "2 kg/L"),
]


@pytest.mark.parametrize(("key", "outside", "inside"), BOUNDS)
def test_each_box_of_the_sheet_ends_where_it_says(key: str, outside: str, inside: str):
    (box,) = [each for each in DILUTE_SANITISER.inputs if each.key == key]
    assert box.read(inside, METRIC) is not None
    with pytest.raises(OutOfRange):
        box.read(outside, METRIC)


@pytest.mark.parametrize(("ph", "taken"), [(-0.01, False), (0.0, True)])
def test_ph_begins_at_nothing(ph: float, taken: bool):
    if taken:
        assert dilute("label", 0.1, 100.0, LITRE, ph=ph)
    else:
        assert refused("label", 0.1, 100.0, LITRE, ph=ph).field == "ph"


@pytest.mark.parametrize(("litres", "shown"), [(0.0999, "99.9 ml"), (0.5, "500 ml"), (0.00525, "5.25 ml")])
def test_the_stock_is_shown_as_finely_as_it_is_measured(litres: float, shown: str):
    made = dilute("label", 0.01, 100.0, litres * 100 * LITRE)
    assert figure(made, "stock").show(METRIC) == shown


def test_a_label_may_raise_peracetic_acid_to_315_ppm_and_not_a_hair_further():
    """40 CFR 180.940(b) and (c)."""
    assert dilute("peracetic", 0.15, 315.0, LITRE, label_ppm=315.0)
    assert refused("peracetic", 0.15, 315.03, LITRE, label_ppm=500.0).field == "target"


@pytest.mark.parametrize(
    ("agent", "label_ppm", "source"),
    [
        ("quat", 400.0, PRODUCT_LABEL),
        ("quat", None, CFR_180_940),
        ("chlorine", 100.0, PRODUCT_LABEL),
        ("chlorine", 201.0, CFR_178_1010),
        ("chlorine", None, CFR_178_1010),
    ],
)
def test_a_limit_names_the_label_or_the_rule_it_comes_from(agent: str, label_ppm: float | None, source: Source):
    made = dilute(agent, STOCK[agent], LEAST[agent], LITRE, label_ppm=label_ppm)
    assert figure(made, "limit").source is source


def test_a_strength_a_hair_over_its_limit_is_not_told_in_the_same_figures():
    said = refused("chlorine", 0.0525, 200.01, LITRE).sentence
    assert said.startswith("200.01 ppm of available chlorine may not stay on: the limit without a rinse is 200 ppm.")


def test_a_stock_a_hair_weaker_than_wanted_is_not_told_in_the_same_figures():
    assert refused("quat", 1.9999e-4, 200.0, LITRE).sentence.endswith("it holds 199.99 ppm.")


def test_the_strongest_granules_are_told_to_a_hundredth_of_a_per_cent():
    """By molar mass: 2 × 70.906 ÷ 142.98 of calcium hypochlorite is available chlorine."""
    assert "99.18 % is the most there is" in refused("calcium", 0.993, 100.0, LITRE).sentence


@pytest.mark.parametrize("pair", list(itertools.combinations(["chlorine", "calcium", "isocyanurate"], 2)))
def test_two_kinds_of_chlorine_can_take_fire(pair: tuple[str, str]):
    """Common practice; no published source."""
    assert never_mix(pair)[0].hazard.say(METRIC).endswith("can take fire or burst where they meet")


@pytest.mark.parametrize(("label", "limit"), [("150 ppm", "150 ppm"), ("400 ppm", "200 ppm"), ("", "200 ppm")])
def test_the_labels_limit_on_the_sheet_is_the_one_that_holds(label: str, limit: str):
    answer = DILUTE_SANITISER.answer({"stock": "5.25 %", "target": "100 ppm", "volume_m3": "4 L", "label": label})
    assert figure(answer.figures, "limit").show(METRIC) == limit


@pytest.mark.parametrize("strength", [0.995e-5, 1.005])
def test_a_strength_that_no_stock_has_is_told_its_bounds(strength: float):
    said = refused("label", strength, 5.0, LITRE)
    assert said.field == "stock"
    assert "between 0.001 % and 100 %" in said.sentence


def test_a_quat_too_strong_is_not_told_of_bleach():
    assert "80 % is the most there is" in refused("quat", 0.801, 200.0, LITRE).sentence
