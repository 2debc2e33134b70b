"""Slips at the cure's boxes: a label that was not read, a fraction for a per-cent, a point in the wrong place."""

import pytest

from core.daybook.curing import charge_of, known_cure
from core.daybook.facts.batch import CureWeighed
from core.mix.cure import CureMix, Dose
from core.mix.cure_dose import dosed_for, figures
from core.mix.curing_salt import CuringSalt, doubted, second_salt
from core.mix.rules import Curing
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange, Refused, Unusual
from core.worksheets import find
from tests.core.kitchen import Kitchen
from tests.core.telling import in_words

GROUND = {"meat_kg": "10 kg", "dose": "0.1 %", "nitrite": "6.25", "nitrate": "0", "other_salt_kg": "250 g"}
SECOND = {"second_kg": "20 g", "second_nitrite": "6.25 %", "second_nitrate": "0"}
BRINE = {"meat_kg": "5 kg", "cure_kg": "240 g", "nitrite": "6.25 %", "water_kg": "10 kg", "taken": "10 %"}
WANTED = {"meat_kg": "10 kg", "wanted": "120 ppm", "nitrite": "6.25"}


def refused(sheet: str, **texts: str):
    with pytest.raises(Refused) as caught:
        find(sheet).answer(texts)
    (refusal,) = caught.value.refusals
    return refusal


def first(sheet: str, **texts: str):
    return find(sheet).answer(texts).figures[0]


def test_two_cures_make_what_both_labels_say():
    """10 g + 20 g of 6.25 % in 10 kg: 187.5 ppm, over the 156.25 of ground meat."""
    assert "188 ppm" in refused("cure-ppm", **GROUND, **SECOND).sentence


@pytest.mark.parametrize("part", ["second_nitrite", "second_nitrate"])
@pytest.mark.parametrize("said", [None, ""])
def test_a_second_cure_whose_label_was_not_read_is_asked_for_it(part: str, said: str | None):
    second = {key: text for key, text in SECOND.items() if key != part} | ({part: said} if said is not None else {})
    refusal = refused("cure-ppm", **GROUND, **second)
    assert (type(refusal), refusal.field) == (Missing, part)
    assert f"Enter the {part.removeprefix('second_')} in the second curing salt" in refusal.sentence


def test_a_label_of_a_second_cure_without_its_weight_is_asked_for_the_weight():
    refusal = refused("cure-ppm", **GROUND, second_nitrite="6.25")
    assert (type(refusal), refusal.field) == (Missing, "second_kg")


def test_a_second_cure_of_0_grams_needs_no_label():
    assert first("cure-ppm", **GROUND, second_kg="0 g").value == pytest.approx(62.5e-6)


def test_what_is_wrong_with_the_second_label_is_said_beside_it():
    assert refused("cure-ppm", **GROUND, **SECOND | {"second_nitrite": "50 %"}).field == "second_nitrite"
    assert refused("cure-ppm", **GROUND, **SECOND | {"second_nitrate": "0.04 %"}).field == "second_nitrate"


def test_a_second_label_that_says_0_is_taken_at_its_word():
    assert second_salt(0.0, 0.04) == CuringSalt(0.0, 0.04)


def test_a_batch_with_an_unread_second_label_has_a_cure_that_is_not_known():
    kitchen = Kitchen()
    read, unread = kitchen.begin(), kitchen.begin()
    both = {"cure_kg": 0.01, "nitrite": 0.0625, "second_kg": 0.02}
    kitchen.note(CureWeighed(**both, second_nitrite=0.0625, second_nitrate=0.0), read)
    kitchen.note(CureWeighed(**both, second_nitrate=0.0), unread)
    assert known_cure(kitchen.batch(read)) is not None
    assert known_cure(kitchen.batch(unread)) is None


@pytest.mark.parametrize("part", ["second_nitrite", "second_nitrate"])
def test_an_entry_of_an_unread_second_label_is_asked_for_it(part: str):
    parts = {"second_nitrite": 0.0625, "second_nitrate": 0.0} | {part: None}
    with pytest.raises(Missing) as caught:
        charge_of(CureWeighed(0.01, 0.0625, second_kg=0.02, **parts), 10.0)
    assert caught.value.field == part


@pytest.mark.parametrize(
    ("sheet", "more"),
    [("cure-pump", {}), ("cure-immersion", {"method": "pick-up"}), ("cure-pump-dose", {"wanted": "120 ppm"}),
     ("cure-immersion-dose", {"method": "pick-up", "wanted": "120 ppm"})],
)  # fmt: skip
def test_a_pump_of_0_2_is_asked_about_and_20_per_cent_is_named(sheet: str, more: dict[str, str]):
    refusal = refused(sheet, **BRINE | more | {"taken": "0.2"})
    assert (type(refusal), refusal.field) == (Unusual, "taken")
    assert "20 %" in refusal.sentence


@pytest.mark.parametrize(("method", "what"), [("pump", "pump"), ("pick-up", "pick-up")])
def test_brine_in_the_meat_is_never_as_little_as_0_2_per_cent(method, what: str):
    charge = CureMix(5.0, (Dose(CuringSalt(0.0625), 0.24),), water_kg=10.0, taken=0.002)
    with pytest.raises(OutOfRange) as caught:
        figures(charge, Curing("us", "meat", method))
    assert (caught.value.field, caught.value.sentence) == (
        "taken",
        f"A {what} of 0.2 % is none: brine in the meat is at least 1 % of its green weight. If 20 % is meant, enter "
        "that.",
    )


@pytest.mark.parametrize(("taken", "stands"), [(0.00999, False), (0.01, True), (1.0, True), (1.001, False)])
def test_a_pump_is_1_to_100_per_cent(taken: float, stands: bool):
    charge = CureMix(5.0, (Dose(CuringSalt(0.0625), 0.01),), water_kg=10.0, taken=taken)
    if stands:
        assert figures(charge, Curing("us", "meat", "pump"))
        return
    with pytest.raises(OutOfRange) as caught:
        figures(charge, Curing("us", "meat", "pump"))
    assert caught.value.field == "taken"


@pytest.mark.parametrize(
    "sheet", ["cure-dose", "cure-ppm", "cure-pump", "cure-pump-dose", "cure-immersion", "cure-immersion-dose"]
)
def test_a_bare_strength_of_0_625_is_asked_about_and_6_25_is_named(sheet: str):
    texts = {**find(sheet).example, "nitrite": "0.625"}
    refusal = refused(sheet, **texts)
    assert (type(refusal), refusal.field) == (Unusual, "nitrite")
    assert "Is 6.25 % meant?" in refusal.sentence


def test_a_strength_of_0_625_per_cent_with_its_unit_is_taken_at_its_word_and_doubted():
    cure, _, nitrite, *_ = find("cure-dose").answer(WANTED | {"nitrite": "0.625 %"}).figures
    assert cure.value == pytest.approx(0.192)
    doubt = "if it says 6.25 %, this is ten times too much"
    assert all(any(doubt in said for said in in_words(each.cautions)) for each in (cure, nitrite))


@pytest.mark.parametrize(
    ("nitrite", "said"),
    [
        (0.0039, "No curing salt in print holds 0.39 %"), (0.00398, "No curing salt in print"),
        (0.004, ""), (0.005, ""), (0.0055, ""), (0.00559, ""),
        (0.0056, "a tenth of what a concentrate holds"), (0.00625, "if it says 6.25 %"),
        (0.0065, "a tenth of what a concentrate holds"),
        (0.00651, ""), (0.0066, ""), (0.009, ""), (0.01, ""), (0.01005, "No curing salt in print"),
        (0.0101, "complete mixes hold 0.4 to 1 %, concentrates 5.6 to 6.5 %"),
        (0.03, "No curing salt in print holds 3 %"), (0.0559, "No curing salt in print holds 5.59 %"),
        (0.056, ""), (0.0567, ""), (0.0625, ""), (0.065, ""),
        (0.0651, "No curing salt in print holds 6.51 %"),
    ],
)  # fmt: skip
def test_which_strengths_are_doubted(nitrite: float, said: str):
    doubt = doubted(CuringSalt(nitrite))
    assert bool(said) is (doubt is not None)
    assert doubt is None or said in doubt.say(METRIC)


def test_a_salt_of_nitrate_alone_is_not_doubted_for_its_nitrite():
    assert doubted(CuringSalt(0.0, 0.04)) is None


def test_two_salts_of_one_doubtful_strength_are_doubted_once():
    charge = CureMix(10.0, (Dose(CuringSalt(0.03), 0.01), Dose(CuringSalt(0.03), 0.01)))
    said = in_words(figures(charge, Curing())[0].cautions)
    assert sum("No curing salt in print" in each for each in said) == 1


def test_an_ordinary_salt_is_shown_without_doubt():
    cure, *_ = dosed_for(CureMix(10.0, (Dose(CuringSalt(0.0625), 0.0),)), Curing(), 120.0)
    assert len(in_words(cure.cautions)) == 1
