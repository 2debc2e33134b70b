"""What a sanitising solution is made of: stock and water, and what no stock can be."""

import pytest

from core.chamber.sanitising import dilute
from core.chamber.sanitising_sheets import DILUTE_SANITISER
from core.chamber.sanitising_stock import IS_IT_SO_WEAK, WEAK_STOCK
from core.quantities import METRIC, US
from core.refusals import OutOfRange, Refused
from core.units import GALLON_M3
from tests.core.solutions import LEAST, LITRE, figure, refused, said_by
from tests.core.telling import in_words


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


def test_the_sheet_says_it_beside_the_strength_wanted():
    with pytest.raises(Refused) as caught:
        DILUTE_SANITISER.answer({"stock": "5.25 %", "target": "300 ppm", "volume_m3": "4 L"})
    assert [each.field for each in caught.value.refusals] == ["target"]


@pytest.mark.parametrize("stock", ["5.25", "5.25 %", "52500 ppm"])
def test_a_stock_may_be_typed_in_per_cent_or_ppm(stock: str):
    answer = DILUTE_SANITISER.answer({"stock": stock, "target": "200 ppm", "volume_m3": "4 L"})
    assert answer.figures[0].show(METRIC) == "15.2 ml"


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


def test_the_strongest_granules_are_told_to_a_hundredth_of_a_per_cent():
    """By molar mass: 2 × 70.906 ÷ 142.98 of calcium hypochlorite is available chlorine."""
    assert "99.18 % is the most there is" in refused("calcium", 0.993, 100.0, LITRE).sentence


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
