"""What a formula may be: each bound is let through, a hair beyond it is refused beside its own box."""

import pytest
from attrs import evolve

from core.mix.formula import Formula, Ingredient, Meat, Portion, portions
from core.mix.measures import CURE_SHARE, GRAMS_PER_MEAT
from core.quantities import CURE_MASS, DOSE_MASS, FRACTION, PIECE_MASS, never_up
from core.refusals import Missing, OutOfRange, Refusal

LEAN, FAT = Meat("Shoulder", 0.75, 0.07, "10072"), Meat("Back fat", 0.25, 0.89, "10004", 3.0)
SALT, CURE = Ingredient("Salt", "salt", 0.026, price_per_kg=1.0), Ingredient("Cure", "cure", 0.002, nitrite=0.0625)
SALAMI = Formula("Juniper coarse", "fermented", (LEAN, FAT), (SALT, CURE))


def with_meats(lean: float, fat: float) -> dict[str, object]:
    return {"meats": (evolve(LEAN, share=lean), evolve(FAT, share=fat))}


def with_lean(**changes: object) -> dict[str, object]:
    return {"meats": (evolve(LEAN, **changes), FAT)}


def with_salt(**changes: object) -> dict[str, object]:
    return {"ingredients": (evolve(SALT, **changes), CURE)}


@pytest.mark.parametrize(
    "changes",
    [
        {"target_loss": 0.0},
        {"target_loss": 0.75},
        {"ingredients": ()},
        with_meats(1.0, 0.0),
        with_meats(0.75 + 5e-10, 0.25),
        with_meats(0.75 - 5e-10, 0.25),
        with_lean(fat=0.0),
        with_lean(fat=1.0),
        with_salt(per_meat=0.0),
        with_salt(per_meat=2.0),
    ],
)
def test_both_ends_are_let_through(changes: dict[str, object]):
    assert evolve(SALAMI, **changes)


@pytest.mark.parametrize(
    ("changes", "kind", "field", "sentence"),
    [
        ({"name": ""}, Missing, "name", "Enter the name"),
        ({"name": " "}, Missing, "name", "Enter the name"),
        ({"meats": ()}, Missing, "shares", "at least one meat"),
        (with_lean(name=" "), Missing, "shares", "Every meat needs a name"),
        (with_salt(name=" "), Missing, "parts", "Every ingredient needs a name"),
        ({"target_loss": -1e-9}, OutOfRange, "target_loss", "between 0 and 75 %"),
        ({"target_loss": 0.75001}, OutOfRange, "target_loss", "between 0 and 75 %"),
        ({"target_loss": float("nan")}, OutOfRange, "target_loss", "between 0 and 75 %"),
        (with_meats(0.75 + 2e-9, 0.25), OutOfRange, "shares", "must make 100 % together"),
        (with_meats(0.75 - 2e-9, 0.25), OutOfRange, "shares", "must make 100 % together"),
        (with_meats(1.0 + 2e-9, -2e-9), OutOfRange, "shares", "The share of Shoulder must be between"),
        (with_meats(1e-9, -1e-9), OutOfRange, "shares", "The share of Back fat must be between"),
        (with_lean(fat=-1e-9), OutOfRange, "shares", "The fat of Shoulder must be between"),
        (with_lean(fat=1.0001), OutOfRange, "shares", "The fat of Shoulder must be between"),
        (with_salt(per_meat=-1e-9), OutOfRange, "parts", "Salt must be between 0 and 200 % of the meat"),
        (with_salt(per_meat=2.0001), OutOfRange, "parts", "Salt must be between 0 and 200 % of the meat"),
        (with_salt(role="glue"), OutOfRange, "parts", "What Salt is must be one of: salt, curing salt"),
        ({"ingredients": (CURE, CURE)}, OutOfRange, "parts", "one curing salt"),
    ],
)
def test_what_no_formula_is_is_refused_beside_its_box(
    changes: dict[str, object], kind: type[Refusal], field: str, sentence: str
):
    with pytest.raises(kind, match=sentence) as caught:
        evolve(SALAMI, **changes)
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("role", "in_grams", "measure"),
    [
        ("salt", False, FRACTION),
        ("salt", True, GRAMS_PER_MEAT),
        ("cure", False, CURE_SHARE),
        ("cure", True, never_up(GRAMS_PER_MEAT)),
    ],
)
def test_a_part_is_shown_as_its_maker_thinks_of_it_and_a_cures_never_rounded_up(role, in_grams: bool, measure):
    assert Ingredient("x", role, 0.002, in_grams, nitrite=0.0625).measure == measure


@pytest.mark.parametrize(("role", "measure"), [("meat", PIECE_MASS), ("cure", CURE_MASS), ("spice", DOSE_MASS)])
def test_a_row_is_shown_as_its_scale_shows_it(role, measure):
    assert Portion("x", "x", role, 0.1, 0.1, None).measure == measure


def test_rows_are_the_meats_then_the_rest_each_at_its_size_with_its_price():
    found = [(row.key, row.role, row.share, row.mass_kg, row.price_per_kg) for row in portions(SALAMI, 4.0)]
    assert found == [
        ("meat-1", "meat", 0.75, 3.0, None),
        ("meat-2", "meat", 0.25, 1.0, 3.0),
        ("part-1", "salt", 0.026, 0.104, 1.0),
        ("part-2", "cure", 0.002, 0.008, None),
    ]


def test_what_a_formula_takes_where_nothing_is_said():
    formula = Formula("Juniper coarse", "fermented", (evolve(LEAN, share=1.0),))
    assert (formula.target_loss, formula.least_s, formula.brined, formula.cure) == (0.35, None, False, None)
