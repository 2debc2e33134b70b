"""The weighing sheet of a batch: its rows, the meat block as weighed, ppm from it, what it costs."""

import pytest
from attrs import evolve

from core.daybook.batch import Batch
from core.daybook.curing import known_cure
from core.daybook.facts.batch import CureWeighed
from core.daybook.facts.cure import LicensedException
from core.daybook.sheet import Row, costs, over_the_limit, sheet_of
from core.mix.balance import meat_content
from core.mix.formula import Ingredient, Meat, Portion
from tests.core.kitchen import DAY, NOON
from tests.core.mixing import FORMULA, SOMEWHAT_STRONG, STRONG, Table


@pytest.fixture
def table() -> Table:
    return Table()


@pytest.fixture
def batch(table: Table) -> str:
    return table.begin(meat_kg=10.0, formula=table.keep())


def ppm(table: Table, batch: str) -> float:
    made = known_cure(table.batch(batch))
    assert made is not None
    assert made.nitrite_ppm is not None
    return made.nitrite_ppm


def test_a_version_that_is_none_makes_no_formula(table: Table):
    batch = table.begin(formula="of another book")
    assert table.batch(batch).formula is None
    assert sheet_of(table.batch(batch)) is None


def test_the_meat_block_is_the_planned_one_until_every_meat_is_weighed(table: Table, batch: str):
    table.weigh_row(batch, "meat-1", 9.0)
    assert table.batch(batch).meat_kg == 10.0


def test_the_meat_block_is_what_the_meats_weigh(table: Table, batch: str):
    table.weigh_row(batch, "meat-1", 9.0)
    table.weigh_row(batch, "meat-2", 2.0)
    assert table.batch(batch).meat_kg == 11.0


def test_the_rest_is_asked_for_on_the_meat_as_weighed(table: Table, batch: str):
    table.weigh_row(batch, "meat-1", 9.0)
    table.weigh_row(batch, "meat-2", 2.0)
    assert [row.wanted_kg for row in table.sheet(batch).rows] == pytest.approx([8.0, 2.0, 0.286, 0.0264])


def test_the_ppm_follows_the_meat_as_weighed(table: Table, batch: str):
    table.note(CureWeighed(0.024, 0.0625), batch, 0.1)
    before = ppm(table, batch)
    table.weigh_row(batch, "meat-1", 9.0)
    table.weigh_row(batch, "meat-2", 3.0)
    assert (before, ppm(table, batch)) == pytest.approx((150, 125))


def test_a_row_weighed_twice_counts_once_by_the_later(table: Table, batch: str):
    table.weigh_row(batch, "part-1", 0.25)
    table.weigh_row(batch, "part-1", 0.26, at=0.3)
    row = table.sheet(batch).row("part-1")
    assert row is not None
    assert row.actual_kg == 0.26


def test_a_row_taken_back_is_still_to_weigh(table: Table, batch: str):
    table.take_back(table.weigh_row(batch, "part-1", 0.25))
    assert table.sheet(batch).done == 0


def test_the_cure_weighed_ticks_its_row(table: Table, batch: str):
    table.note(CureWeighed(0.0235, 0.0625), batch, 0.1)
    row = table.sheet(batch).row("part-2")
    assert row is not None
    assert (row.done, row.actual_kg) == (True, 0.0235)


def test_a_blend_is_asked_for_by_its_nitrite_and_its_salt_is_taken_off(table: Table, batch: str):
    table.note(CureWeighed(0.264, 0.0625 / 11), batch, 0.1)
    salt, cure = table.sheet(batch).rows[2:]
    assert cure.wanted_kg == pytest.approx(0.264)
    assert salt.wanted_kg == pytest.approx(0.26 + 0.024 * 0.9375 - 0.264 * (1 - 0.0625 / 11))


def test_a_blend_that_brings_all_the_salt_leaves_none_to_weigh(table: Table, batch: str):
    table.note(CureWeighed(0.5, 0.0625 / 20), batch, 0.1)
    assert table.sheet(batch).rows[2].wanted_kg == 0.0


def test_the_nitrate_of_a_blend_is_no_salt(table: Table, batch: str):
    table.note(CureWeighed(0.264, 0.0625 / 11, 0.01), batch, 0.1)
    salt = table.sheet(batch).rows[2]
    assert salt.wanted_kg == pytest.approx(0.26 + 0.024 * 0.9375 - 0.264 * (1 - 0.0625 / 11 - 0.01))


@pytest.mark.parametrize(
    "cure",
    [
        CureWeighed(0.03, 0.0625),
        CureWeighed(0.03, 0.0625 + 0.9e-9),
        CureWeighed(0.03, 0.0, 0.05),
        CureWeighed(0.264, 0.0625 / 11, second_kg=0.01, second_nitrite=0.0, second_nitrate=0.04),
    ],
    ids=["as the formula's", "the same but for its last digits", "without nitrite", "beside a second one"],
)
def test_a_cure_that_is_no_other_strength_of_the_formulas_leaves_its_rows(table: Table, batch: str, cure: CureWeighed):
    table.note(cure, batch, 0.1)
    assert [row.wanted_kg for row in table.sheet(batch).rows[2:]] == [pytest.approx(0.26), pytest.approx(0.024)]


PEPPER = Ingredient("Pepper", "spice", 0.003)


@pytest.mark.parametrize(
    ("parts", "cure"),
    [
        ((FORMULA.ingredients[0], PEPPER), CureWeighed(0.03, 0.0625)),
        ((FORMULA.ingredients[0], PEPPER), CureWeighed(0.0, 0.0625)),
        ((Ingredient("Nitrate cure", "cure", 0.003, nitrate=0.04), PEPPER), CureWeighed(0.03, 0.0625)),
    ],
    ids=["none", "none, and none weighed", "one of nitrate alone"],
)
def test_a_cure_beside_a_formula_without_one_of_nitrite_leaves_its_rows(table: Table, parts, cure: CureWeighed):
    batch = table.begin(meat_kg=10.0, formula=table.keep(evolve(FORMULA, ingredients=parts)))
    table.note(cure, batch, 0.1)
    assert [row.wanted_kg for row in table.sheet(batch).rows[2:]] == pytest.approx(
        [10 * each.per_meat for each in parts]
    )


def test_of_a_cure_of_another_strength_that_weighs_nothing_no_row_is_asked_for_anew(table: Table, batch: str):
    table.note(CureWeighed(0.0, 0.01), batch, 0.1)
    assert [row.wanted_kg for row in table.sheet(batch).rows[2:]] == pytest.approx([0.26, 0.024])


def test_a_blend_changes_no_other_row(table: Table):
    batch = table.begin(meat_kg=10.0, formula=table.keep(evolve(FORMULA, ingredients=(*FORMULA.ingredients, PEPPER))))
    table.note(CureWeighed(0.264, 0.0625 / 11), batch, 0.1)
    assert table.sheet(batch).rows[4].wanted_kg == pytest.approx(0.03)


def test_a_cure_a_hair_stronger_is_another_one(table: Table, batch: str):
    table.note(CureWeighed(0.03, 0.0625 + 1e-5), batch, 0.1)
    assert table.sheet(batch).rows[3].wanted_kg == pytest.approx(0.024 * 0.0625 / 0.06251, rel=1e-9)


def test_a_row_tells_when_it_was_weighed(table: Table, batch: str):
    table.note(CureWeighed(0.024, 0.0625), batch, 0.1)
    table.weigh_row(batch, "part-1", 0.25, at=0.3)
    rows = table.sheet(batch).rows
    assert [row.at for row in rows] == [None, None, NOON + 0.3 * DAY, NOON + 0.1 * DAY]


def test_the_salt_asked_for_is_the_plain_salt_alone(table: Table, batch: str):
    assert table.sheet(batch).salt_kg == pytest.approx(0.26)


def test_the_next_row_is_the_next_not_weighed_and_round_again(table: Table, batch: str):
    for key in ("meat-2", "part-1"):
        table.weigh_row(batch, key, 1.0)
    sheet = table.sheet(batch)
    found = [row.key if row else None for row in map(sheet.next_after, (None, "meat-1", "part-2"))]
    assert found == ["meat-1", "part-2", "meat-1"]


def test_while_nothing_is_weighed_every_row_is_followed_by_the_next(table: Table, batch: str):
    sheet = table.sheet(batch)
    asked = (None, "meat-1", "meat-2", "part-1", "part-2")
    found = [row.key if row else None for row in map(sheet.next_after, asked)]
    assert found == ["meat-1", "meat-2", "part-1", "part-2", "meat-1"]


def test_a_sheet_is_complete_when_every_row_is(table: Table, batch: str):
    for key in ("meat-1", "meat-2", "part-1"):
        table.weigh_row(batch, key, 1.0)
    assert not table.sheet(batch).complete
    table.note(CureWeighed(0.0235, 0.0625), batch, 0.3)
    assert table.sheet(batch).complete
    assert table.sheet(batch).next_after("part-2") is None


def test_costs_go_by_what_was_weighed(table: Table, batch: str):
    planned = costs(table.sheet(batch))[0].value
    table.weigh_row(batch, "meat-1", 9.0)
    assert (planned, costs(table.sheet(batch))[0].value) == pytest.approx((8 * 8 + 2 * 3, 9 * 8 + 2 * 3))


def test_costs_are_to_the_raw_and_to_the_finished_weight(table: Table, batch: str):
    """8 kg at 8 and 2 kg at 3 are 70, in 10 + 0.26 + 0.024 kg raw, of which 35 % are to go."""
    _, raw, finished = costs(table.sheet(batch))
    assert (raw.value, finished.value) == pytest.approx((70 / 10.284, 70 / (10.284 * 0.65)))


def test_a_brined_piece_costs_to_what_it_weighs_and_not_to_its_tub(table: Table):
    """Its brine, 5 kg of water and 0.4 kg of salt, stays in the tub but for the salt that goes into its water."""
    belly = evolve(
        FORMULA,
        meats=(Meat("Belly", 1.0, 0.53, "10005", 5.0),),
        ingredients=(Ingredient("Water", "water", 0.5), Ingredient("Salt", "salt", 0.04)),
        brined=True,
    )
    water = meat_content(belly).water
    raw_kg = 10 * (1 + 0.04 * water / (water + 0.5))
    _, raw, finished = costs(table.sheet(table.begin(meat_kg=10.0, formula=table.keep(belly))))
    assert (raw.value, finished.value) == pytest.approx((50 / raw_kg, 50 / (raw_kg * 0.65)))


def test_a_batch_of_a_formula_over_the_limit_is_told(table: Table):
    refusal = over_the_limit(table.batch(table.begin(formula=table.keep(STRONG))))
    assert refusal is not None
    assert "625 ppm" in refusal.sentence
    assert "to the kilogram" not in refusal.sentence


def test_a_licensed_exception_opens_the_sheet(table: Table):
    batch = table.begin(formula=table.keep(SOMEWHAT_STRONG))
    exception = LicensedException("a trial", "the authority", "the maker", "food act, section 9", "nitrite", 190e-6)
    table.note(exception, batch, 0.1)
    assert over_the_limit(table.batch(batch)) is None


@pytest.mark.parametrize("figure", [{}, {"rule": "food act", "substance": "nitrite", "most": 180e-6}])
def test_an_exception_without_a_figure_or_with_a_lower_one_leaves_the_sheet_shut(table: Table, figure):
    batch = table.begin(formula=table.keep(SOMEWHAT_STRONG))
    table.note(LicensedException("a trial", "the authority", "the maker", **figure), batch, 0.1)
    assert over_the_limit(table.batch(batch)) is not None


def test_no_exception_opens_the_sheet_of_a_formula_over_the_ceiling(table: Table):
    batch = table.begin(formula=table.keep(STRONG))
    exception = LicensedException("a trial", "the authority", "the maker", "food act, section 9", "nitrite", 9000e-6)
    table.note(exception, batch, 0.1)
    refusal = over_the_limit(table.batch(batch))
    assert refusal is not None
    assert "No exception goes above 200 ppm" in refusal.sentence


def test_a_batch_of_a_formula_within_the_limit_is_not_refused(table: Table, batch: str):
    folded: Batch = table.batch(batch)
    assert over_the_limit(folded) is None


@pytest.mark.parametrize(("wanted_kg", "actual_kg", "apart"), [(0.2, 0.21, 0.05), (0.2, 0.19, -0.05), (0.2, 0.2, 0.0)])
def test_a_row_is_so_much_off_what_was_wanted(wanted_kg: float, actual_kg: float, apart: float):
    row = Row(Portion("part-1", "Salt", "salt", 0.02, wanted_kg, None), actual_kg)
    assert row.difference == pytest.approx(apart, abs=1e-12)


@pytest.mark.parametrize(("wanted_kg", "actual_kg"), [(0.0, 0.1), (0.2, None)])
def test_a_row_not_weighed_or_not_wanted_has_no_difference(wanted_kg: float, actual_kg: float | None):
    assert Row(Portion("part-1", "Salt", "salt", 0.02, wanted_kg, None), actual_kg).difference is None
