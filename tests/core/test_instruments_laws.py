"""Laws of the correction in force: it is that of the last check before, whatever the order the entries came in."""

from __future__ import annotations

from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from core.chamber.checks import Correction
from core.daybook.book import Book
from core.daybook.corrections.figures import figures
from core.daybook.corrections.readings import corrected
from core.daybook.facts.chamber import AirRead
from core.daybook.facts.instruments import InstrumentRecalibrated, SaltChecked
from core.daybook.instruments import Shelf, fold_instrument
from core.quantities import METRIC
from tests.core.kitchen import NOON
from tests.core.workshop import OVER_SALT_12, Workshop

law = settings(max_examples=60, deadline=None)
hours = st.integers(0, 24 * 60)
readings = st.floats(0.5, 1.0)
checks = st.lists(st.tuples(hours, readings), max_size=6, unique_by=lambda each: each[0])


def moment(hour: int):
    return NOON + timedelta(hours=hour)


def checked(of: list[tuple[int, float]], recalibrated: list[int] | None = None) -> tuple[Workshop, str]:
    shop = Workshop()
    key = shop.add()
    for hour, reading in of:
        shop.note(SaltChecked("nacl", 12.0, reading), key, hour / 24)
    for hour in recalibrated or []:
        shop.note(InstrumentRecalibrated(), key, hour / 24)
    return shop, key


def correction(book: Book, key: str, hour: int) -> Correction | None:
    instrument = fold_instrument(book, key)
    assert instrument is not None
    return instrument.correction("humidity", moment(hour))


@law
@given(checks, hours, st.randoms(use_true_random=False))
def test_the_order_in_which_entries_came_does_not_matter(of, hour, chance):
    shop, key = checked(of)
    shuffled = list(shop.records)
    chance.shuffle(shuffled)
    assert correction(Book(shuffled), key, hour) == correction(shop.book, key, hour)


@law
@given(checks, hours)
def test_the_check_in_force_is_the_last_one_before_unless_the_next_one_failed(of, hour):
    shop, key = checked(of)
    every = shop.instrument(key).checks[::-1]
    last = next((each for each in reversed(every) if each.at <= moment(hour)), None)
    following = next((each for each in every if each.at > moment(hour)), None)
    told_late = following is not None and following.failed and not (last is not None and last.failed)
    assert shop.instrument(key).in_force("humidity", moment(hour)) == (following if told_late else last)


@law
@given(checks, hours, hours)
def test_a_check_passed_later_changes_nothing_before_it(of, later, hour):
    shop, key = checked([each for each in of if each[0] <= hour])
    before = correction(shop.book, key, hour)
    shop.note(SaltChecked("nacl", 12.0, OVER_SALT_12), key, (hour + later + 1) / 24)
    assert correction(shop.book, key, hour) == before


@law
@given(checks, hours, hours)
def test_a_check_failed_later_leaves_no_correction_back_to_the_one_before_it(of, later, hour):
    shop, key = checked([each for each in of if each[0] <= hour])
    shop.note(SaltChecked("nacl", 12.0, 0.5), key, (hour + later + 1) / 24)
    assert shop.instrument(key).in_force("humidity", moment(hour)).failed  # type: ignore[union-attr]
    assert correction(shop.book, key, hour) is None


@law
@given(checks, hours)
def test_nothing_found_before_it_was_recalibrated_corrects_what_is_read_after(of, hour):
    shop, key = checked(of, [hour])
    standing = shop.instrument(key).in_force("humidity", moment(24 * 61))
    assert standing is None or standing.failed or standing.at >= moment(hour)


@law
@given(checks, hours)
def test_after_a_failed_check_nothing_is_believed_until_one_is_passed(of, hour):
    shop, key = checked([*(each for each in of if each[0] != hour), (hour, 0.5)], [hour])
    passed = [each.at for each in shop.instrument(key).checks if each.at > moment(hour) and not each.failed]
    for at in range(hour, 24 * 60, 37):
        if not passed or moment(at) < min(passed):
            assert shop.instrument(key).in_force("humidity", moment(at)).failed  # type: ignore[union-attr]


@law
@given(checks, hours, st.floats(0, 1), st.floats(-20, 60))
def test_a_humidity_corrected_is_between_nothing_and_all_and_its_raw_value_is_kept(of, hour, humidity, temperature):
    shop, key = checked(of)
    result = corrected(Shelf(shop.book), AirRead(temperature, humidity, key), moment(hour))
    assert 0 <= result.fact.humidity <= 1
    assert result.fact.temperature_c == temperature
    assert all(each.raw == humidity for each in result.readings)


@law
@given(checks, hours, st.floats(0, 1))
def test_a_reading_on_a_failed_instrument_is_never_changed(of, hour, humidity):
    shop, key = checked(of)
    result = corrected(Shelf(shop.book), AirRead(12.0, humidity, key), moment(hour))
    for each in result.readings:
        if each.proves_nothing:
            assert each.value == each.raw
            assert each.note is not None


@law
@given(checks, hours, st.floats(0, 1))
def test_every_change_that_is_seen_is_said_and_has_its_working(of, hour, humidity):
    shop, key = checked(of)
    result = corrected(Shelf(shop.book), AirRead(12.0, humidity, key), moment(hour))
    assert len(figures(result)) == len(result.notes)
    for figure in figures(result):
        assert all(step.say(METRIC) for step in figure.working)


@law
@given(checks)
def test_taking_every_check_back_leaves_the_instrument_unchecked(of):
    shop, key = checked(of)
    for record in list(shop.records[1:]):
        shop.take_back(record["id"])
    found = fold_instrument(shop.book, key)
    assert found is not None
    assert found.checks == ()
