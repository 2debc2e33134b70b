"""What is refused, and that the sentence helps."""

import pytest

from core.quantities import DAYS, MASS, METRIC, PH, TEMPERATURE, US, VOLUME, Reader
from core.reading import LONGEST_ECHO, read
from core.refusals import Missing, NotAQuantity
from tests.core.effort import effort_s

COMMA = Reader("metric", ",")

NONSENSE = [
    *("kg", "abc", "nan", "inf", "-inf", "infinity", "1e5", "1E5", "1e-5 kg", "0x10", "1_000", "12 4", "1 2 kg", "--5"),
    *(
        "+-5",
        "-",
        "+",
        ".",
        ",",
        "..5",
        "1.2.3",
        "1,2,3",
        "1,2.3,4",
        "1,25,000",
        "12,34.5",
        "5 kg kg",
        "kg 5",
        "5 5 kg",
    ),
    *("5 °C", "5 qt", "5 %", "1/0", "1/0 kg", "1/", "/2", "1/2/3", "1//2", "1 1/2 1/2", "½½", "1½½", "5–6 kg", "5-6"),
    *("5 kg -2 g", "-5 kg 2 g", "12 lb 16 oz", "4 oz 12 lb", "12 lb 4", "12 4 oz", "5 + 2 g", "5 kg 2 lb", "1 lb 3 g"),
    *("250 gr", "<script>", "<script>alert(1)</script>", "5<b>", "'; drop table", "{kg}", "5 {kg}", "%s", "$5", "1:30"),
    *("Ⅻ", "²", "2²", "5 k²", "①", "一", "五 kg", "\u202e5 kg", "5 kg\u202e", "5\x00", "\x00", "5 \x1b[31mkg", "(5)"),
    *("5 kg.5", ",5,", "5 kg,", "1 000 00", "1 0000", "1' 250", "٫٥", "5 kg\ud800"),
]


@pytest.mark.parametrize("text", NONSENSE)
def test_a_refusal_is_one_plain_line_that_says_what_to_do(text):
    with pytest.raises(NotAQuantity) as caught:
        read(text, MASS, field="weight", label="Weight")
    words = set(caught.value.sentence.lower().split())
    assert caught.value.field == "weight"
    assert caught.value.sentence.isprintable()
    assert words & {"enter", "use"}
    assert not words & {"please", "sorry", "invalid", "oops"}


@pytest.mark.parametrize("text", ["", " ", "\t\n", "\u00a0", "\u200b", "\ufeff \u2060"])
def test_nothing_typed_is_missing(text):
    with pytest.raises(Missing, match=r"^Enter a weight, for example 12.4 kg\.$"):
        read(text, MASS)


@pytest.mark.parametrize("label", ["Weight of the meat", "The scale reads", "RH of the air", "or what it holds"])
def test_a_missing_value_is_asked_for_by_whatever_words_stand_at_its_box(label: str):
    with pytest.raises(Missing) as caught:
        read("", MASS, label=label, field="mass_kg")
    expected = f"Enter a weight for “{label}”, for example 12.4 kg."
    assert (caught.value.field, caught.value.sentence) == ("mass_kg", expected)


def test_a_missing_value_without_a_label_is_named_by_its_kind():
    with pytest.raises(Missing, match=r"^Enter a weight, for example 12 lb 4 oz\.$"):
        read("", MASS, US)


@pytest.mark.parametrize(
    ("text", "reader", "sentence"),
    [
        ("1,250", METRIC, "“1,250” can mean 1250 or 1.250. Enter it as one or the other."),
        ("12,250 g", METRIC, "“12,250” can mean 12250 or 12.250. Enter it as one or the other."),
        ("1.250", COMMA, "“1.250” can mean 1250 or 1,250. Enter it as one or the other."),
        ("-1,250", METRIC, "“1,250” can mean 1250 or 1.250. Enter it as one or the other."),
        ("\u0661,\u0662\u0665\u0660", METRIC, "“1,250” can mean 1250 or 1.250. Enter it as one or the other."),
    ],
)
def test_a_factor_of_a_thousand_is_asked_about(text, reader, sentence):
    with pytest.raises(NotAQuantity) as caught:
        read(text, MASS, reader)
    assert caught.value.sentence == sentence


def test_a_unit_of_another_kind_is_answered_with_the_units_that_fit():
    with pytest.raises(NotAQuantity) as caught:
        read("5 °C", MASS)
    assert caught.value.sentence == "“°C” is not a unit for a weight. Use kg, g, mg, lb or oz."


def test_a_unit_where_none_belongs_is_named():
    with pytest.raises(NotAQuantity) as caught:
        read("5.1 kg", PH)
    assert caught.value.sentence == "“kg” does not belong here: a pH has no unit. Enter a number, for example 5.1."


def test_parts_of_two_families_are_refused_with_an_example():
    with pytest.raises(NotAQuantity, match=r"^These parts do not make a weight\. Enter it like 12 lb 4 oz\.$"):
        read("5 kg 2 lb", MASS, US)


def refused(text):
    with pytest.raises(NotAQuantity):
        read(text, MASS)


@pytest.mark.parametrize(
    "text", ["9" * 10_000_000, " " * 10_000_000, "kg" * 5_000_000], ids=["digits", "spaces", "words"]
)
def test_ten_megabytes_are_refused_without_being_looked_through_and_not_said_back(text):
    with pytest.raises(NotAQuantity) as caught:
        read(text, MASS)
    assert effort_s(lambda: refused(text)) < effort_s(text.isprintable)
    assert caught.value.sentence == "This is too long for a weight. Enter a number, for example 12.4 kg."


LONG = [
    "1 " * 30,
    "1," * 30,
    "1'" * 30,
    "'" * 60,
    "1/" * 30,
    "5 " + "m3" * 29,
    "1 000" * 12,
    "5 " + ". " * 29,
    "-" * 60,
]


@pytest.mark.parametrize(
    "text", [*LONG, "1 000 " * 10, "5 " + "x" * 58, "x " * 30, "½" * 60, "5 kg " * 12, "1kg-a" * 12]
)
def test_the_longest_nonsense_is_refused_before_a_hundred_readings_are_read(text):
    assert effort_s(lambda: refused(text)) < effort_s(lambda: [read("12 lb 4 oz", MASS) for _ in range(100)])


@pytest.mark.parametrize("text", ["x" * 60, "5 " + "x" * 58, "1,2,3," * 10, "1/0" + " " * 50 + "x"])
def test_what_was_typed_is_said_back_shortened(text):
    with pytest.raises(NotAQuantity) as caught:
        read(text, MASS)
    said_back = caught.value.sentence.split("“")[1].split("”")[0]
    assert len(said_back) <= LONGEST_ECHO


def test_signs_that_cannot_be_seen_are_named_as_such():
    with pytest.raises(NotAQuantity, match=r"^This holds signs that cannot be seen\."):
        read("5\u202e kg", MASS)


@pytest.mark.parametrize(("text", "quantity"), [("5 T", VOLUME), ("5 t", VOLUME), ("5 m", DAYS), ("5 K", TEMPERATURE)])
def test_a_letter_with_two_meanings_is_no_unit(text, quantity):
    with pytest.raises(NotAQuantity):
        read(text, quantity)
