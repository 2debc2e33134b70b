"""Laws of showing and reading, over whatever values hypothesis finds."""

import math
import re

import pytest
from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from core import quantities
from core.quantities import DOSE_MASS, FRACTION, HOURS, MASS, PARTS_PER_MILLION, VOLUME, Amount, Quantity, Reader
from core.reading import LONGEST_ECHO, read
from core.refusals import Missing, NotAQuantity

ALL = [each for each in vars(quantities).values() if isinstance(each, Quantity)]
READERS = st.builds(Reader, st.sampled_from(["metric", "us"]), st.sampled_from([".", ","]))
FROM_NOTHING_TO_MUCH = st.floats(0, 1e5, allow_subnormal=False)  # an hour has 3600 of the least number there is
FROM_NOTHING_TO_ONE = st.floats(0, 1, allow_subnormal=False)
VALUES = st.floats(-1e6, 1e6).filter(lambda value: value == 0 or abs(value) > 1e-5)


def half_of_last_digit(shown):
    decimals = re.split("[.,]", shown.split(" ")[0])[1:]
    return 0.5 * 10 ** -len(decimals[0]) if decimals else 0.5


def steps_off(quantity):
    """Half a step where it rounds to the nearest, a whole one where it rounds one way."""
    return 1 if quantity.rounds == "nearest" else 2


@pytest.mark.parametrize("quantity", ALL, ids=lambda each: each.key)
@given(value=VALUES, reader=READERS)
def test_an_exact_amount_is_read_back_within_the_digits_shown(quantity, value, reader):
    shown = Amount(value, quantity).show_exact(reader)
    symbol = shown.lstrip("−0123456789.,\u00a0").strip()
    unit = next(each for each in quantity.units if each.symbol == symbol)
    slack = half_of_last_digit(shown) * unit.factor * steps_off(quantity)
    assert read(shown, quantity, reader) == pytest.approx(value, rel=1e-9, abs=slack * 1.001 + 1e-9 * unit.factor)


@pytest.mark.parametrize("quantity", ALL, ids=lambda each: each.key)
@given(value=st.floats(0, 1e5), reader=READERS)
def test_a_shown_amount_is_read_back_within_half_a_step(quantity, value, reader):
    shown = Amount(value, quantity).show(reader).split(" (")[0]
    again = read(shown, quantity, reader)
    reached = [
        rung
        for rung in quantity.ladder(reader.system)
        if f" {rung.unit.symbol}" in f" {shown}" and rung.unit.from_si(again) >= rung.from_value * (1 - 1e-9)
    ]
    step = (reached[0].then or reached[0].unit).factor * 10 ** -reached[0].decimals
    assert again == pytest.approx(value, rel=1e-9, abs=0.5001 * step * steps_off(quantity))


@pytest.mark.parametrize(
    "quantity", [DOSE_MASS, MASS, FRACTION, HOURS, PARTS_PER_MILLION, VOLUME], ids=lambda it: it.key
)
@given(value=st.one_of(FROM_NOTHING_TO_MUCH, FROM_NOTHING_TO_ONE), reader=READERS, significant=st.integers(1, 6))
def test_what_rounds_one_way_is_never_read_back_on_the_other_side(quantity, value, reader, significant):
    for rounds, sign in (("down", 1), ("up", -1)):
        amount = Amount(value, evolve(quantity, rounds=rounds))
        plain, _, bracket = amount.show(reader).partition(" (")
        texts = [plain, *([bracket.rstrip(")")] if bracket else []), amount.show_exact(reader, significant)]
        for text in texts:
            assert sign * read(text, quantity, reader) <= sign * value + 1e-9 * value, text


@given(grams=st.integers(0, 10**6), decimals=st.integers(0, 2))
def test_a_weight_in_whole_steps_is_shown_as_it_is_whichever_way_it_rounds(grams, decimals):
    kg = grams / 10**decimals / 1000
    exact = Amount(kg, DOSE_MASS).show_exact(significant=9)
    for rounds in ("down", "up"):
        assert Amount(kg, evolve(DOSE_MASS, rounds=rounds)).show_exact(significant=9) == exact


@given(kg=st.floats(0, 1e4), more=st.floats(0, 1e3), reader=READERS)
def test_a_heavier_piece_is_never_shown_lighter(kg, more, reader):
    lighter, heavier = (read(Amount(each, MASS).show(reader), MASS, reader) for each in (kg, kg + more))
    assert lighter <= heavier * (1 + 1e-12)


def sentence_or_value(text, quantity, reader):
    try:
        return "", read(text, quantity, reader)
    except (Missing, NotAQuantity) as refusal:
        return refusal.sentence, 0.0


NEARLY = "0123456789.,'/ +-−kglbozm3½°FC%٣\u200b"


@given(text=st.text(max_size=70) | st.text(NEARLY, max_size=60), quantity=st.sampled_from(ALL), reader=READERS)
def test_any_text_is_read_as_a_number_or_refused_in_one_line(text, quantity, reader):
    sentence, value = sentence_or_value(text, quantity, reader)
    assert sentence.isprintable()
    assert math.isfinite(value)


@given(text=st.text(max_size=60), quantity=st.sampled_from(ALL), reader=READERS)
def test_a_refusal_says_back_no_more_than_a_little(text, quantity, reader):
    sentence, _ = sentence_or_value(text, quantity, reader)
    assert all(len(said) <= LONGEST_ECHO for said in re.findall("“([^”]*)”", sentence))
