"""The register: every declaration is whole, and every worksheet answers its own example."""

import pytest
from attrs import evolve

from core.quantities import METRIC, US, Amount
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.worksheet import Choice, Number, Worksheet
from core.worksheets import WORKSHEETS, by_stage, find

SHEETS = WORKSHEETS.values()
every_sheet = pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
EXPECTED = {
    "moist-air",
    "drying-force",
    "humidifier-charge",
    "cure-ppm",
    "cure-dose",
    "shrink",
    "target-weight",
    "ready",
}


def test_the_first_storey_is_there():
    assert set(WORKSHEETS) >= EXPECTED


def test_a_worksheet_is_found_by_its_name():
    assert find("cure-ppm").name == "cure-ppm"


def test_a_name_mistyped_is_answered_with_the_nearest():
    with pytest.raises(Refusal, match="Did you mean “cure-dose”"):
        find("cure-dos")


def test_a_name_like_none_is_answered_with_all():
    with pytest.raises(Refusal, match=r"There are: .*cure-ppm"):
        find("xyzzy")


def test_stages_hold_every_worksheet_once():
    listed = [sheet.name for sheets in by_stage().values() for sheet in sheets]
    assert sorted(listed) == sorted(WORKSHEETS)


@every_sheet
def test_answers_its_example(sheet: Worksheet):
    answer = sheet.answer(sheet.example)
    assert answer.figures


@every_sheet
def test_every_figure_has_working_and_a_source(sheet: Worksheet):
    for figure in sheet.answer(sheet.example).figures:
        assert figure.working
        assert figure.source.cite()


@every_sheet
@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_every_line_of_working_can_be_said(sheet: Worksheet, reader):
    for figure in sheet.answer(sheet.example).figures:
        assert all(step.say(reader) for step in figure.working)


@every_sheet
def test_figures_have_keys_of_their_own(sheet: Worksheet):
    keys = [figure.key for figure in sheet.answer(sheet.example).figures]
    assert len(set(keys)) == len(keys)


@every_sheet
def test_inputs_have_keys_of_their_own(sheet: Worksheet):
    keys = [each.key for each in sheet.inputs]
    assert len(set(keys)) == len(keys)


@every_sheet
def test_asks_a_question(sheet: Worksheet):
    assert sheet.question.endswith("?")


@every_sheet
def test_the_example_names_only_inputs(sheet: Worksheet):
    assert set(sheet.example) <= {each.key for each in sheet.inputs}


@every_sheet
def test_defaults_are_allowed_values(sheet: Worksheet):
    for each in sheet.inputs:
        if isinstance(each, Choice):
            assert each.default is None or each.default in each.options
        elif each.default is not None:
            assert each.check(each.default) == each.default


@every_sheet
@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_a_default_as_it_is_shown_can_be_read_back(sheet: Worksheet, reader):
    for each in sheet.inputs:
        if isinstance(each, Number) and each.default is not None:
            shown = Amount(each.default, each.quantity).show_exact(reader)
            assert each.read(shown, reader) == pytest.approx(each.default, rel=1e-5, abs=1e-9)


@every_sheet
@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_the_example_of_a_quantity_can_be_read(sheet: Worksheet, reader):
    for each in sheet.inputs:
        if isinstance(each, Number):
            each.read(each.quantity.example(reader), reader)


@every_sheet
def test_nonsense_in_every_field_is_refused_for_every_field(sheet: Worksheet):
    with pytest.raises(Refused) as caught:
        sheet.answer({each.key: "\u202e;--" for each in sheet.inputs})
    assert [each.field for each in caught.value.refusals] == [each.key for each in sheet.inputs]


@every_sheet
def test_sentences_about_nonsense_neither_plead_nor_scold(sheet: Worksheet):
    with pytest.raises(Refused) as caught:
        sheet.answer({each.key: "much" for each in sheet.inputs})
    said = str(caught.value).lower()
    assert not any(word in said for word in ("please", "sorry", "invalid", "oops"))


@every_sheet
def test_an_emptied_field_does_not_take_its_default(sheet: Worksheet):
    emptied = {each.key: "" for each in sheet.inputs}
    needed = [each.key for each in sheet.inputs if isinstance(each, Choice) or not each.optional]
    with pytest.raises(Refused) as caught:
        sheet.answer(emptied)
    assert [each.field for each in caught.value.refusals] == needed


GRIND = Choice("grind", "Grind of the mix", {"fine": "Fine", "medium": "Medium", "coarse": "Coarse"})


@pytest.mark.parametrize("text", ["", "  "])
def test_a_choice_left_empty_is_asked_for(text: str):
    with pytest.raises(Missing) as caught:
        GRIND.read(text, METRIC)
    assert (caught.value.field, caught.value.sentence) == ("grind", "Choose one for “Grind of the mix”.")


@pytest.mark.parametrize(
    ("of", "named"), [(("fine", "medium", "coarse"), "fine, medium or coarse"), (("fine",), "fine")]
)
def test_a_word_that_is_no_choice_is_answered_with_those_that_are(of: tuple[str, ...], named: str):
    with pytest.raises(OutOfRange) as caught:
        evolve(GRIND, options=dict.fromkeys(of, "")).read("powder", METRIC)
    assert (caught.value.field, caught.value.sentence) == ("grind", f"Grind of the mix must be {named}.")


def test_a_choice_is_read_with_spaces_around_it():
    assert GRIND.read(" fine ", METRIC) == "fine"


def test_ten_times_the_nitrite_is_refused_beside_the_dose():
    with pytest.raises(Refused) as caught:
        find("cure-ppm").answer({"meat_kg": "12.4 kg", "dose": "2.5 %", "nitrite": "6.25 %"})
    assert [each.field for each in caught.value.refusals] == ["dose"]


@pytest.mark.parametrize("system", [METRIC, US], ids=["metric", "us"])
def test_pounds_and_kilograms_give_the_same_ppm(system):
    answer = find("cure-ppm").answer({"meat_kg": "27 lb 5.4 oz", "dose": "0.25", "nitrite": "6.25"}, system)
    assert answer.figures[0].show(METRIC) == "156 ppm"


def test_ready_gives_a_verdict_with_its_figures():
    answer = find("ready").answer(find("ready").example)
    assert answer.verdict is not None
    assert answer.verdict.word == "ready"


def test_ready_without_any_weight_holds():
    answer = find("ready").answer({"style": "fermented", "signs": "none"})
    assert answer.verdict is not None
    assert answer.verdict.word == "hold"


@pytest.mark.parametrize(("given", "missing"), [("start_kg", "now_kg"), ("now_kg", "start_kg")])
def test_ready_with_one_weight_asks_for_the_other(given: str, missing: str):
    with pytest.raises(Refused) as caught:
        find("ready").answer({"style": "fermented", "signs": "none", given: "900 g"})
    assert [each.field for each in caught.value.refusals] == [missing]


def test_ready_where_nobody_has_looked_holds():
    answer = find("ready").answer({**find("ready").example, "signs": "not-looked"})
    assert answer.verdict is not None
    assert answer.verdict.word == "hold"


def test_ready_with_a_sign_is_thrown_away():
    answer = find("ready").answer({**find("ready").example, "signs": "slime"})
    assert answer.verdict is not None
    assert answer.verdict.word == "discard"
