"""What a mix is made of, raw and dried, and what it costs: one of each part, worked out by hand.

Its meat is USDA row 10072 as printed: 72.63 % water, 19.55 % protein, 7.14 % fat, and 0.68 % that is left.
"""

import pytest
from attrs import evolve

from core.mix import balance
from core.mix.balance import IN_BRINE, TABLE_MEAT, Content
from core.mix.cost import Bought, cost
from core.mix.formula import Formula, Ingredient, Meat
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.working import Figure
from tests.core.telling import in_words

SHOULDER = Meat("Shoulder", 1.0, 0.0714, "10072")
LARD = Meat("Lard", 1.0, 1.0, "10004")
"""Taken as fat alone: it holds neither water nor protein."""
SALT = Ingredient("Salt", "salt", 0.03)
WINE = Ingredient("Wine", "water", 0.02)
MIX = Formula(
    "One of each",
    "fermented",
    (SHOULDER,),
    (
        SALT,
        Ingredient("Cure", "cure", 0.0024, nitrite=0.0625),
        Ingredient("Dextrose", "sugar", 0.005),
        WINE,
        Ingredient("Pepper", "spice", 0.003),
    ),
)
WHOLE = 1.0604
"""1 + 0.03 + 0.0024 + 0.005 + 0.02 + 0.003."""
WATER, LEFT = 0.7463, 0.7463 - 0.3 * WHOLE
"""72.63 % of the meat and the wine; and after 30 % of the whole is gone."""
CURE_SALT = 0.0024 * (1 - 0.0625)
BELLY = evolve(MIX, ingredients=(Ingredient("Water", "water", 0.5), SALT, MIX.ingredients[1], *MIX.ingredients[4:]))
BRINED = evolve(BELLY, style="whole-muscle", brined=True)
TAKEN = 0.7263 / (0.7263 + 0.5)
"""Of what the brine holds: the meat's own water to all the water."""


def figures(formula: Formula = MIX, loss: float = 0.3) -> dict[str, Figure]:
    return {each.key: each for each in balance.figures(formula, loss)}


def said(figure: Figure) -> list[str]:
    return [step.say(METRIC, 4) for step in figure.working]


@pytest.mark.parametrize(
    ("key", "raw_kg"),
    [
        ("water", WATER),
        ("fat", 0.0714),
        ("protein", 0.1955),
        ("salt", 0.03 + CURE_SALT),
        ("sugar", 0.005),
        ("other", 0.0068 + 0.0024 * 0.0625 + 0.003),
    ],
)
def test_every_part_raw_and_dried(key: str, raw_kg: float):
    found = figures()
    dried_kg = LEFT if key == "water" else raw_kg
    assert found[key].value == pytest.approx(raw_kg / WHOLE, rel=1e-9)
    assert found[f"{key}-dried"].value == pytest.approx(dried_kg / (0.7 * WHOLE), rel=1e-9)


@pytest.mark.parametrize(("suffix", "water"), [("", WATER), ("-dried", LEFT)])
def test_salt_in_the_water_and_water_to_protein(suffix: str, water: float):
    found, salt = figures(), 0.03 + CURE_SALT
    assert found[f"brine{suffix}"].value == pytest.approx(salt / (salt + water), rel=1e-9)
    assert found[f"moisture-protein{suffix}"].value == pytest.approx(water / 0.1955, rel=1e-9)


def test_what_is_cautioned():
    cautions = {key: in_words(figure.cautions) for key, figure in figures().items() if in_words(figure.cautions)}
    assert list(cautions) == ["water", "brine-dried"]
    assert cautions["water"] == (TABLE_MEAT,)
    assert in_words(figures(BRINED)["water"].cautions) == (TABLE_MEAT, IN_BRINE)
    assert in_words(figures(BRINED)["salt"].cautions) == ()


def test_the_working_names_what_brings_a_part_and_nothing_else():
    assert said(figures()["salt"]) == [
        "Salt: 3 % × 100 % = 3 %",
        "Cure: 0.24 % × 93.75 % = 0.225 %",
        "Together 0.03225, of a raw mass of 1.06 for each part of meat: 0.03225 ÷ 1.06 = 3.041 %",
    ]
    assert said(figures()["fat"])[0] == "Shoulder (pork shoulder, whole, lean, row 10072): 100 % × 7.14 % = 7.14 %"
    assert len(said(figures()["fat"])) == 2


@pytest.mark.parametrize(
    ("key", "line"),
    [
        ("water-dried", "(70.38 % − 30 %) ÷ (100 % − 30 %) = 57.68 %"),
        ("fat-dried", "6.733 % ÷ (100 % − 30 %) = 9.619 %"),
        ("brine", "Salt ÷ (salt + water): 3.041 % ÷ (3.041 % + 70.38 %) = 4.142 %"),
        ("brine-dried", "Salt ÷ (salt + water): 4.345 % ÷ (4.345 % + 57.68 %) = 7.004 %"),
        ("moisture-protein", "70.38 % ÷ 18.44 % = 3.817"),
        ("moisture-protein-dried", "57.68 % ÷ 26.34 % = 2.19"),
    ],
)
def test_the_working_of_what_is_left_when_it_has_dried(key: str, line: str):
    assert said(figures()[key]) == [line]


def test_a_brined_piece_takes_up_what_dissolves_and_no_water():
    raw = balance.raw(BRINED)
    assert raw.water == pytest.approx(0.7263)
    assert raw.salt == pytest.approx((0.03 + CURE_SALT) * TAKEN)
    assert raw.other == pytest.approx(0.0068 + 0.0024 * 0.0625 * TAKEN)
    assert said(figures(BRINED)["salt"])[0] == "Salt: 3 % × 100 % × 59.23 % taken up = 1.777 %"
    assert [balance.uptake(BRINED, each) for each in BRINED.ingredients] == pytest.approx([0, TAKEN, TAKEN, 0])


def test_in_a_mix_everything_is_taken_up():
    assert [balance.uptake(MIX, each) for each in MIX.ingredients] == [1.0] * 5


def test_fat_alone_takes_nothing_out_of_a_brine():
    assert balance.uptake(evolve(BRINED, meats=(LARD,)), SALT) == 0.0


def test_without_protein_or_salt_there_is_no_share_of_them():
    found = figures(evolve(MIX, meats=(LARD,), ingredients=(WINE,)), loss=0.01)
    assert "moisture-protein" not in found
    assert "moisture-protein-dried" not in found
    assert found["brine"].value == 0.0
    assert "brine-dried" in found


@pytest.mark.parametrize("loss", [0.0, 0.75])
def test_all_of_its_water_may_go(loss: float):
    left = balance.dried(Content(water=0.75, protein=0.25), loss)
    assert left.water == pytest.approx(0.75 - loss, abs=1e-15)


@pytest.mark.parametrize("loss", [-1e-9, 0.75 + 1e-9, float("nan")])
def test_neither_more_than_its_water_nor_less_than_nothing_can_go(loss: float):
    with pytest.raises(OutOfRange, match="It holds 75 % water") as caught:
        balance.dried(Content(water=0.75, protein=0.25), loss)
    assert caught.value.field == "loss"


def test_one_content_and_so_many_times_another():
    one, other = Content(1.0, 2.0, 3.0, 4.0, 5.0, 6.0), Content(0.1, 0.2, 0.3, 0.4, 0.5, 0.6)
    assert balance.parts(one.plus(other, 10.0)) == pytest.approx((2.0, 4.0, 6.0, 8.0, 10.0, 12.0))
    assert one.total == 21.0


BOUGHT = (
    Bought("Shoulder", 8.0, 6.0),
    Bought("Salt", 0.3, 0.0),
    Bought("Pepper", 0.02, None),
    Bought("Ice", 0.0, None),
)


def test_the_cost_is_to_all_to_the_raw_and_to_the_finished_kilogram():
    total, raw, finished = cost(BOUGHT, 10.0, 6.0)
    assert (total.value, raw.value, finished.value) == pytest.approx((48.0, 4.8, 8.0))
    assert (total.key, raw.key, finished.key) == ("cost", "cost-raw", "cost-finished")


def test_the_cost_names_what_has_no_price_where_there_is_some_of_it():
    assert in_words(cost(BOUGHT, 10.0, 6.0)[0].cautions) == ("Without what has no price: Pepper.",)
    assert in_words(cost(BOUGHT[:2], 10.0, 6.0)[0].cautions) == ()


def test_what_costs_nothing_has_a_price_and_its_line():
    assert len(cost(BOUGHT, 10.0, 6.0)[0].working) == 3
    assert cost(BOUGHT[2:], 10.0, 6.0) == ()


def test_the_working_of_a_cost():
    total, raw, _ = cost(BOUGHT, 10.0, 6.0)
    assert [line.replace("\u00a0", " ") for line in said(total)] == [
        "Shoulder: 8 000 g at 6 a kg = 48",
        "Salt: 300 g at 0 a kg = 0",
        "Together 48",
    ]
    assert said(raw) == ["48 ÷ 10 kg = 4.8 a kg"]


def test_what_cannot_lose_so_much_says_how_much_it_holds():
    """0.75 of water in 1.25 of all: 60 %."""
    with pytest.raises(OutOfRange, match="It holds 60 % water"):
        balance.dried(Content(water=0.75, fat=0.3, protein=0.15, salt=0.03, sugar=0.0, other=0.02), 0.61)
