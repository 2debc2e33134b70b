"""`python -m core`: lists, describes, computes, and refuses with one sentence and status 2."""

import io
import json

import pytest

from core.__main__ import main, say
from core.worksheets import WORKSHEETS

CURE = ["cure-ppm", "meat_kg=12.4 kg", "dose=0.25 %", "nitrite=6.25 %"]


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def run(*arguments: str, stdin: str | None = None) -> tuple[str, str, int]:
    return main(arguments, Terminal() if stdin is None else io.StringIO(stdin))


def printed(*arguments: str, stdin: str | None = None) -> str:
    out, complaint, status = run(*arguments, stdin=stdin)
    assert (complaint, status) == ("", 0)
    return out


def complaint(*arguments: str, stdin: str | None = None) -> str:
    out, said, status = run(*arguments, stdin=stdin)
    assert (out, status) == ("", 2)
    assert "\n" not in said
    assert said.endswith((".", "?"))
    return said


def test_without_a_name_it_lists_every_worksheet():
    listed = printed()
    assert all(f"  {name} " in listed for name in WORKSHEETS)


def test_the_list_as_json():
    assert [each["name"] for each in json.loads(printed("--json"))] == list(WORKSHEETS)


@pytest.mark.parametrize("name", WORKSHEETS)
def test_describes_inputs_and_outputs(name: str):
    told = json.loads(printed(name, "--describe"))
    assert [each["key"] for each in told["inputs"]] == [each.key for each in WORKSHEETS[name].inputs]
    assert told["outputs"]


def test_a_description_tells_unit_and_bounds():
    meat = json.loads(printed("cure-ppm", "--describe"))["inputs"][0]
    assert (meat["unit"], meat["low"], meat["high"], meat["required"]) == ("kg", 0.01, 1000.0, True)


def described(name: str, key: str) -> dict[str, object]:
    return next(each for each in json.loads(printed(name, "--describe"))["inputs"] if each["key"] == key)


@pytest.mark.parametrize(
    ("name", "key", "required", "optional"),
    [
        ("shrink", "start_kg", True, False),
        ("moist-air", "pressure", False, True),
        ("drying-force", "surface_activity", False, False),
        ("sugar-for-ph", "sugar", False, None),
        ("ready", "style", True, None),
    ],
    ids=["a number", "one that may be left empty", "one with a default", "a choice with a default", "a choice"],
)
def test_a_description_tells_what_must_be_given(name: str, key: str, required: bool, optional: bool | None):
    told = described(name, key)
    assert (told["required"], told.get("optional")) == (required, optional)


def test_a_description_tells_the_units_that_may_be_typed_and_those_of_a_bare_number():
    told = described("moist-air", "temperature")
    assert (told["units"], told["bare_unit"], told["example"]) == (
        ["°C", "°F"],
        {"metric": "°C", "us": "°F"},
        "12.5 °C",
    )


@pytest.mark.parametrize(("name", "gives_a_verdict"), [("ready", True), ("shrink", False)])
def test_a_description_names_a_verdict_only_where_there_is_one(name: str, gives_a_verdict: bool):
    outputs = json.loads(printed(name, "--describe"))["outputs"]
    assert ("verdict" in [each["key"] for each in outputs]) is gives_a_verdict


def test_computes_in_words():
    out = printed(*CURE)
    assert out.startswith("Nitrite going in, of 156 ppm allowed by 9 CFR 424.21(c): 156 ppm\n")
    assert "Source: FSIS Directive 7620.3" in out
    assert "! Nitrite can poison" in out


def test_computes_as_json_in_si():
    figure = json.loads(printed(*CURE, "--json"))["figures"][0]
    assert figure["value"] == pytest.approx(156.25e-6)
    assert figure["working"]
    assert figure["cautions"]
    assert figure["verified"] == "copy"


def test_options_may_come_between_the_values():
    assert json.loads(printed("cure-ppm", "--json", *CURE[1:], "--units", "us"))["figures"]


def test_bare_numbers_are_pounds_for_us_units():
    out = printed("target-weight", "start_kg=2", "target_loss=50", "--units", "us")
    assert "1 lb" in out.splitlines()[0]


def test_every_bare_number_is_said_back_with_its_unit_and_in_the_other_system():
    out = printed("target-weight", "start_kg=1250", "target_loss=35 %").splitlines()
    assert [each for each in out if each.startswith("Read")] == ["Read: Start weight 1\u00a0250 g (2.76 lb)"]
    assert json.loads(printed("target-weight", "start_kg=2", "target_loss=35", "--units", "us", "--json"))["read"] == {
        "start_kg": "2 lb (907 g)",
        "target_loss": "35 %",
    }


def test_a_decimal_comma_is_read_and_shown():
    out = printed("cure-ppm", "meat_kg=12,4", "dose=0,25", "nitrite=6,25", "--decimal", "comma")
    assert "156,25 ppm" in out


def test_reads_json_from_standard_input():
    given = json.dumps({"meat_kg": 12.4, "dose": "0.25 %", "nitrite": 6.25, "other_salt_kg": None})
    assert printed("cure-ppm", stdin=given).startswith(printed(*CURE))


def test_json_numbers_are_the_same_under_a_decimal_comma():
    given = json.dumps({"meat_kg": 12.125, "dose": 0.25, "nitrite": 6.25})
    assert "156,25 ppm" in printed("cure-ppm", "--decimal", "comma", stdin=given)


def test_values_on_the_line_leave_standard_input_alone():
    assert printed(*CURE, stdin="not json") == printed(*CURE)


def test_a_verdict_comes_first():
    out = printed("ready", "style=fermented", "signs=slime")
    assert out.startswith("Verdict: discard\n    Next: Throw it away")


def test_a_verdict_as_json():
    verdict = json.loads(printed("ready", "style=fermented", "signs=none", "--json"))["verdict"]
    assert verdict["word"] == "hold"
    assert {each["met"] for each in verdict["reasons"]} == {True, None}


def test_a_range_is_shown_beside_its_figure():
    assert "(0.56 % to 0.58 %)" in printed("humidifier-charge", "water_m3=6 qt")


def test_an_unknown_worksheet_is_answered_with_the_nearest():
    assert "Did you mean “shrink”?" in complaint("shrnk")


def test_an_unknown_input_is_answered_with_the_nearest():
    assert "Did you mean “meat_kg”?" in complaint("cure-ppm", "meat=3 kg")


def test_an_unknown_input_like_none_is_answered_with_all():
    assert "Its inputs are: meat_kg" in complaint("cure-ppm", "zzz=3")


def test_missing_inputs_are_all_named_at_once():
    assert complaint("cure-ppm", "meat_kg=1 kg").startswith("Missing: dose, nitrite.")


def test_one_missing_input_is_asked_for():
    assert complaint("target-weight") == "start_kg: Enter a weight for “Start weight”, for example 1250 g."


def test_too_much_nitrite_is_refused_with_what_it_makes():
    said = complaint("cure-ppm", "meat_kg=12.4 kg", "dose=2.5 %", "nitrite=6.25 %")
    assert said.startswith("dose: 1\u00a0563 ppm of nitrite is too much. The limit")


@pytest.mark.parametrize("value", ["meat_kg=1 stone", "meat_kg=nan", "meat_kg=-3", "meat_kg=1e999", "meat_kg="])
def test_nonsense_is_refused_naming_its_input(value: str):
    assert complaint("cure-ppm", value, "dose=0.25", "nitrite=6.25").startswith("meat_kg: ")


def test_a_value_without_equals_is_refused():
    assert "key=value" in complaint("cure-ppm", "12.4")


def test_a_value_given_twice_is_refused():
    assert "twice" in complaint("cure-ppm", "meat_kg=1", "meat_kg=2")


@pytest.mark.parametrize(
    "stdin", ["[1]", "3", "not json", '{"meat_kg": NaN}', '{"meat_kg": true}', '{"meat_kg": [1]}', "[" * 100_000]
)
def test_standard_input_that_is_no_object_of_values_is_refused(stdin: str):
    assert complaint("cure-ppm", stdin=stdin)


def test_an_unknown_option_is_refused():
    assert "--help" in complaint("cure-ppm", "--fahrenheit")


def test_unknown_units_are_refused():
    assert "metric" in complaint("cure-ppm", "--units", "imperial")


@pytest.mark.parametrize("again", ["6 %", "5 %"])
def test_a_key_given_twice_in_json_is_refused_by_its_name(again: str):
    text = f'{{"stock": "5 %", "target": "200 ppm", "volume_m3": "4 L", "stock": "{again}"}}'
    assert complaint("dilute-sanitiser", stdin=text) == "stock: This input is given twice."


class Enough(io.StringIO):
    """A reader that has read its line and gone, as `head -1` does."""

    def flush(self) -> None:
        if not self.closed:
            raise BrokenPipeError


def test_a_reader_that_has_enough_is_no_fault():
    reader = Enough()
    say("one line", reader)
    assert reader.closed
