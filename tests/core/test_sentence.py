"""A sentence is a constant text and its values; only its reader decides how they look."""

from datetime import UTC, date, datetime

import pytest

from core.quantities import COUNT, DOSE_MASS, FRACTION, MASS, METRIC, PH, TEMPERATURE, US, Amount, Reader
from core.sentence import Sentence, Value

WARM = Amount(12.75, TEMPERATURE)


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (WARM, "12.75 °C"),
        ("Left {loin}", "Left {loin}"),
        (date(2026, 11, 3), "3 Nov 2026"),
        (datetime(2026, 11, 3, 9, 5, tzinfo=UTC), "3 Nov 2026, 09:05"),
        (Sentence("ice check"), "ice check"),
        (Sentence("at {warm}", {"warm": WARM}), "at 12.75 °C"),
    ],
)
def test_each_kind_of_value_is_said(value: Value, shown: str):
    assert Sentence("So: {it}.", {"it": value}).say(METRIC) == f"So: {shown}."


@pytest.mark.parametrize(
    ("reader", "shown"), [(METRIC, "12.75 °C"), (US, "54.95 °F"), (Reader("metric", ","), "12,75 °C")]
)
def test_an_amount_within_a_sentence_within_is_in_the_readers_units(reader: Reader, shown: str):
    inner = Sentence("It is {warm}.", {"warm": WARM})
    assert Sentence("{why} Wait.", {"why": inner}).say(reader) == f"It is {shown}. Wait."


def test_it_is_said_with_so_many_digits_within_too():
    inner = Sentence("at {warm}", {"warm": WARM})
    assert Sentence("{it}, {warm}", {"it": inner, "warm": WARM}).say(METRIC, 2) == "at 13 °C, 13 °C"


def test_it_names_its_values_once_and_in_the_order_of_the_text():
    assert Sentence("{b} and {a} and {b}", {"a": WARM, "b": WARM, "c": WARM}).names == ("b", "a")


def test_its_amounts_are_those_it_tells_also_within():
    inner = Sentence("{ph}", {"ph": Amount(5.3, PH), "untold": WARM})
    values = {"name": "Loin", "inner": inner, "warm": WARM, "untold": Amount(1.0, PH)}
    assert Sentence("{name}: {inner} at {warm}", values).amounts == {"ph": Amount(5.3, PH), "warm": WARM}


@pytest.mark.parametrize(("count", "shown"), [(0, "0 pieces"), (1, "1 piece"), (2, "2 pieces")])
def test_a_count_that_is_not_one_takes_the_plural(count: int, shown: str):
    assert Sentence("{count} piece", {"count": Amount(count, COUNT)}, plural="{count} pieces").say(METRIC) == shown


@pytest.mark.parametrize("mark", ["=", "→"])
@pytest.mark.parametrize(
    ("reader", "said"), [(METRIC, "12 kg − 11.5 kg {} 0.5 kg"), (US, "26.4555 lb − 25.3532 lb {} 1.10231 lb")]
)
def test_a_sum_shows_one_kind_in_one_unit_that_of_the_largest(mark: str, reader: Reader, said: str):
    amounts = {"a": Amount(12.0, MASS), "b": Amount(11.5, MASS), "c": Amount(0.5, MASS)}
    assert Sentence(f"{{a}} − {{b}} {mark} {{c}}", amounts).say(reader) == said.format(mark)


def test_a_negative_amount_may_be_the_largest():
    amounts = {"a": Amount(0.4, MASS), "b": Amount(12.4, MASS), "c": Amount(-12.0, MASS)}
    assert Sentence("{a} − {b} = {c}", amounts).say(METRIC) == "0.4 kg − 12.4 kg = \u221212 kg"


def test_what_is_no_sum_shows_each_amount_in_its_own_unit():
    amounts = {"a": Amount(12.0, MASS), "b": Amount(0.5, MASS)}
    assert Sentence("{a}, in steps of {b}", amounts).say(METRIC) == "12 kg, in steps of 500 g"


def test_kinds_that_climb_different_ladders_keep_to_their_own():
    amounts = {"packet": Amount(0.025, DOSE_MASS), "meat": Amount(100.0, MASS), "share": Amount(0.00025, FRACTION)}
    assert Sentence("{packet} ÷ {meat} = {share}", amounts).say(US) == "25 g ÷ 220.462 lb = 0.025 %"
