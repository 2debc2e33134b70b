"""A bare number that a slip of the finger makes is asked about; with its unit it is taken at its word."""

import pytest
from attrs import evolve

from core import usual
from core.quantities import FRACTION, LENGTH, LOSS, MASS, METRIC, RATIO, TEMPERATURE, US, Reader
from core.reading import is_bare
from core.refusals import OutOfRange, Unusual
from core.usual import CHAMBER_C, USUAL, as_typed, is_usual
from core.worksheet import Number

LOST = Number("loss", "Loss to reach", LOSS, 0.0, 0.7, usual=(0.05, 0.6))
THICK = Number("thickness_m", "Thickness", LENGTH, 0.001, 1.0, usual=(0.02, 0.25))
MEAT = Number("meat_kg", "Meat", MASS, 0.0, 1000.0, usual=(0.2, 100.0))
AIR = Number("temperature", "Air temperature", TEMPERATURE, -20.0, 60.0, usual=CHAMBER_C)


def question(number: Number, text: str, reader: Reader = METRIC) -> str:
    with pytest.raises(Unusual) as caught:
        number.read(text, reader)
    assert caught.value.field == number.key
    return caught.value.sentence


def test_the_question_says_how_it_was_read_what_is_usual_and_what_answers_it():
    assert question(LOST, "0.35") == (
        "Loss to reach: This is read as 0.35 %; usual here is 5 % to 60 %. Is 35 % meant? Then enter that. "
        "If 0.35 % is right, enter it with its unit."
    )


def test_a_box_that_says_nothing_of_its_own_takes_what_is_usual_of_its_kind():
    assert "usual here is 5 % to 60 %." in question(Number("loss", "Loss", LOSS, 0.0, 0.7), "65")
    assert Number("ratio", "Ratio", RATIO, 0.0, 9.0).usual_here is None


def test_what_is_usual_is_said_in_three_digits():
    assert "usual here is 12.3 % to 45.6 %." in question(evolve(LOST, usual=(0.1234, 0.4562)), "65")


@pytest.mark.parametrize(
    ("number", "text", "reader", "meant"),
    [
        (THICK, "5", METRIC, "5 cm"),
        (MEAT, "500", METRIC, "500 g"),
        (AIR, "55", METRIC, "55 °F"),
        (AIR, "12", US, "12 °C"),
        (MEAT, "800", US, "800 g"),
        (LOST, "0,35", Reader("metric", ","), "35 %"),
    ],
)
def test_what_may_be_meant_is_named(number: Number, text: str, reader: Reader, meant: str):
    assert f"Is {meant}" in question(number, text, reader)


def test_where_no_unit_explains_it_what_is_meant_is_asked_for():
    assert "Enter what is meant." in question(LOST, "65")


@pytest.mark.parametrize("text", ["0.35 %", "65 %", "0.35%", "0.35 pct"])
def test_with_its_unit_it_is_taken_at_its_word(text: str):
    assert LOST.read(text, METRIC) is not None


def test_what_is_impossible_is_refused_with_its_unit_too():
    with pytest.raises(OutOfRange):
        LOST.read("71 %", METRIC)


@pytest.mark.parametrize(("text", "asked"), [("5", False), ("4.999", True), ("60", False), ("60.01", True)])
def test_both_ends_are_usual_and_a_hair_outside_is_not(text: str, asked: bool):
    assert LOST.asks(text, METRIC) is asked


def test_nothing_at_all_is_no_slip():
    assert LOST.read("0", METRIC) == 0.0


def test_where_nothing_is_usual_nothing_is_asked():
    assert not Number("ratio", "Ratio", RATIO, 0.0, 0.7).asks("0.0035", METRIC)


@pytest.mark.parametrize("text", ["12", "1 250", "½", "1,5"])
def test_a_number_alone_is_bare(text: str):
    assert is_bare(text)


@pytest.mark.parametrize("text", ["12 %", "12%", "12 lb 4 oz", "5'", "", "x"])
def test_a_number_with_a_unit_is_not_bare(text: str):
    assert not is_bare(text)


# Our own, common practice: no published source. Entered here a second time, so that none moves unseen.
@pytest.mark.parametrize(
    ("key", "low", "high"),
    [
        ("mass", 0.2, 100), ("piece_mass", 0.05, 25), ("dose_mass", 0.0005, 20), ("cure_mass", 0.0005, 20),
        ("volume", 0.00025, 0.1), ("room", 0.03, 30), ("length", 0.012, 0.4), ("temperature", 0, 31),
        ("temperature_difference", 0.05, 5), ("relative_humidity", 0.2, 1), ("humidity_step", 0.0005, 0.1),
        ("degree_hours", 36_000, 5_400_000), ("fraction", 0.01, 1), ("loss", 0.05, 0.6),
        ("loss_rate", 0.001 / 86_400, 0.05 / 86_400), ("dose", 0.001, 0.05), ("strength", 0.004, 0.1),
        ("per_meat", 0.0005, 0.5), ("stock_strength", 0.01, 1), ("sugar_dose", 0.001, 0.02), ("soda_dose", 1, 30),
        ("ppm", 1e-5, 0.0025), ("days", 43_200, 63_072_000), ("hours", 3600, 864_000), ("lasting", 21_600, 1_209_600),
        ("contact", 5, 3600), ("water_a_day", 0.00002 / 86_400, 0.02 / 86_400), ("air_speed", 0.02, 2),
    ],
)  # fmt: skip
def test_what_is_usual_of_a_kind_of_reading(key: str, low: float, high: float):
    assert USUAL[key] == pytest.approx((low, high), rel=1e-12)


def test_every_kind_of_reading_that_has_a_usual_range_is_entered_above():
    (mark,) = test_what_is_usual_of_a_kind_of_reading.pytestmark
    assert [row[0] for row in mark.args[1]] == list(USUAL)


@pytest.mark.parametrize(
    ("ends", "low", "high"),
    [
        (usual.CHAMBER_C, 0, 31), (usual.FERMENT_C, 4, 39), (usual.THAWING_C, -1, 30), (usual.MELTING_C, -5, 5),
        (usual.STRAYING, 0.005, 0.2), (usual.SHOWN_KG, 1e-5, 0.005), (usual.SHOWN_K, 0.01, 1),
        (usual.CASING_LONG_M, 0.05, 30),
        (usual.TO_PH_S, 28_800, 864_000), (usual.SANITISER, 1e-5, 1e-3), (usual.LABEL_LIMIT, 1e-5, 5e-4),
        (usual.POURED_M3, 0.00002, 0.03),
    ],
)  # fmt: skip
def test_what_is_usual_in_a_box_of_its_own(ends: usual.Range, low: float, high: float):
    assert ends == pytest.approx((low, high), rel=1e-12)


@pytest.mark.parametrize("ends", [usual.CHAMBER_C, usual.FERMENT_C, usual.THAWING_C])
def test_no_usual_temperature_of_one_scale_is_one_of_the_other(ends: usual.Range):
    low, high = ends
    assert low * 1.8 + 32 > high


@pytest.mark.parametrize(
    ("value", "is_so"),
    [(0.2, True), (0.2 - 1e-10, True), (0.2 - 3e-7, False), (100 + 5e-8, True), (100 + 2e-7, False), (0.0, True)],
)
def test_a_range_has_room_for_rounding(value: float, is_so: bool):
    """A part in a thousand million of its larger end: 0.1 mg of 100 kg."""
    assert is_usual(value, USUAL["mass"]) is is_so


@pytest.mark.parametrize(("value", "is_so"), [(-60.00000005, True), (-60.0000002, False), (5.00000005, True)])
def test_that_room_goes_by_the_end_that_is_farther_from_nothing(value: float, is_so: bool):
    assert is_usual(value, (-60.0, 5.0)) is is_so


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (0.0, "0 %"),
        (0.35, "35 %"),
        (0.0035, "0.35 %"),
        (0.123456789, "12.34568 %"),
        (0.0123456789, "1.234568 %"),
        (1e-9, "0.0000001 %"),
    ],
)
def test_a_number_is_said_back_as_it_would_be_typed(value: float, shown: str):
    assert as_typed(value, FRACTION, METRIC) == shown
