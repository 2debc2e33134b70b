"""What may be typed, and what it means in SI."""

import pytest

from core.quantities import (
    ABSOLUTE_HUMIDITY,
    COUNT,
    DAYS,
    FRACTION,
    HOURS,
    LENGTH,
    MASS,
    METRIC,
    PARTS_PER_MILLION,
    PH,
    PIECE_MASS,
    PRESSURE,
    RELATIVE_HUMIDITY,
    TEMPERATURE,
    US,
    VOLUME,
    Reader,
)
from core.reading import read

COMMA = Reader("metric", ",")
POUND_KG = 0.45359237
TSP_M3 = 231 * 0.0254**3 / 768


@pytest.mark.parametrize(
    ("text", "quantity", "si"),
    [
        ("12 lb 4 oz", MASS, 12.25 * POUND_KG),
        ("12lb4oz", MASS, 12.25 * POUND_KG),
        ("12 lb., 4 oz.", MASS, 12.25 * POUND_KG),
        ("12 LB 4 OZ", MASS, 12.25 * POUND_KG),
        ("12 pounds 4 ounces", MASS, 12.25 * POUND_KG),
        ("12 lb .5 oz", MASS, 12.03125 * POUND_KG),
        ("12 1/2 lb", MASS, 12.5 * POUND_KG),
        ("1 kg 250 g", MASS, 1.25),
        ("1,5 kg", MASS, 1.5),
        ("1.5 kg", MASS, 1.5),
        ("1.5", MASS, 1.5),
        (".5 kg", MASS, 0.5),
        ("5. kg", MASS, 5.0),
        ("+5 kg", MASS, 5.0),
        ("0,250 kg", MASS, 0.25),
        ("250 mg", MASS, 250e-6),
        ("1250", PIECE_MASS, 1.25),
        ("55 °F", TEMPERATURE, 115 / 9),
        ("55f", TEMPERATURE, 115 / 9),
        ("55 ºF", TEMPERATURE, 115 / 9),
        ("55 deg F", TEMPERATURE, 115 / 9),
        ("20 ℃", TEMPERATURE, 20.0),
        ("12.5", TEMPERATURE, 12.5),
        ("3 qt", VOLUME, 3 * 192 * TSP_M3),
        ("1/2 tsp", VOLUME, TSP_M3 / 2),
        ("1 / 2 tsp", VOLUME, TSP_M3 / 2),
        ("1⁄2 tsp", VOLUME, TSP_M3 / 2),
        ("1 1/2 tsp", VOLUME, 1.5 * TSP_M3),
        ("1½ tsp", VOLUME, 1.5 * TSP_M3),
        ("1 ½ tsp", VOLUME, 1.5 * TSP_M3),
        ("½ cup", VOLUME, 24 * TSP_M3),
        ("8 fl. oz.", VOLUME, 48 * TSP_M3),
        ("1 gal 2 qt", VOLUME, 1152 * TSP_M3),
        ("5 cc", VOLUME, 5e-6),
        ("9 g/m3", ABSOLUTE_HUMIDITY, 9e-3),
        ("9 g/m³", ABSOLUTE_HUMIDITY, 9e-3),
        ("6' 2\"", LENGTH, 74 * 0.0254),
        ("6’2”", LENGTH, 74 * 0.0254),
        ("2.5 per-cent", FRACTION, 0.025),
        ("2.5 per cent", FRACTION, 0.025),
        ("80", RELATIVE_HUMIDITY, 0.8),
        ("156 mg/kg", PARTS_PER_MILLION, 156e-6),
        ("5.1", PH, 5.1),
        ("1 wk 3 d", DAYS, 10 * 86400.0),
        ("1 d 12 h", HOURS, 36 * 3600.0),
        ("29.92 in Hg", PRESSURE, 29.92 * 3386.389),
        ("1,250,000", COUNT, 1_250_000),
        ("1.250.000", COUNT, 1_250_000),
    ],
)
def test_a_usual_spelling_is_read(text, quantity, si):
    assert read(text, quantity) == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize("text", ["1 250 g", "1\u00a0250 g", "1\u202f250 g", "1\u2009250 g", "1'250 g", "1’250 g"])
def test_thousands_may_be_parted_by_a_space_or_a_tick(text):
    assert read(text, MASS) == pytest.approx(1.25)


@pytest.mark.parametrize("text", ["1,250.5 g", "1.250,5 g", "1 250.5 g", "1 250,5 g", "1250.5 g", "1250,5 g"])
@pytest.mark.parametrize("reader", [METRIC, COMMA])
def test_both_marks_together_leave_one_meaning_in_either_manner(text, reader):
    assert read(text, MASS, reader) == pytest.approx(1.2505)


def test_three_decimals_are_read_with_the_page_s_own_mark():
    assert (read("1.250 kg", MASS, METRIC), read("1,250 kg", MASS, COMMA)) == (1.25, 1.25)


@pytest.mark.parametrize("text", ["12,5", "12.5"])
@pytest.mark.parametrize("reader", [METRIC, COMMA])
def test_a_decimal_of_one_figure_is_read_in_either_manner(text, reader):
    assert read(text, TEMPERATURE, reader) == 12.5


@pytest.mark.parametrize("text", ["0,250", ",250", "1234,567", "12,5000"])
def test_what_cannot_be_thousands_is_a_decimal(text):
    assert read(text, COUNT) == float(text.replace(",", "."))


def test_a_bare_number_is_in_the_reader_s_own_unit():
    assert (read("2", MASS, METRIC), read("2", MASS, US)) == (2.0, pytest.approx(2 * POUND_KG))


@pytest.mark.parametrize("minus", ["-", "\u2212", "\u2013", "\u2010", "\u2011", "\u2012", "\ufe63", "\uff0d"])
def test_every_dash_a_keyboard_gives_is_a_minus(minus):
    assert read(f"{minus}2 °C", TEMPERATURE) == -2.0


@pytest.mark.parametrize("text", ["\u0661\u0662 kg", "\u06f1\u06f2 kg", "\u0967\u0968 kg", "\uff11\uff12\uff4b\uff47"])
def test_digits_of_other_scripts_are_read(text):
    assert read(text, MASS) == 12.0


@pytest.mark.parametrize("unseen", ["\u200b", "\u200c", "\u200d", "\u2060", "\ufeff", "\u00ad", "\u200e"])
def test_a_character_without_width_changes_nothing(unseen):
    assert read(f"{unseen}1{unseen}2 k{unseen}g{unseen}", MASS) == 12.0


def test_minus_zero_is_zero():
    assert str(read("-0", TEMPERATURE)) == "0.0"


@pytest.mark.parametrize("text", [" 12 kg ", "\t12\u00a0kg\n", "12  kg"])
def test_spaces_around_do_not_matter(text):
    assert read(text, MASS) == 12.0
