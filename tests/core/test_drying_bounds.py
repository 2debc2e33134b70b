"""The house's own bounds on a day's loss, beside common practice."""

from core.daybook.drying_bounds import drying_bounds
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.drying import DryingBounded
from core.dry.haste import PER_DAY, USUAL_BOUNDS
from tests.core.kitchen import Kitchen


def test_where_the_house_set_none_they_are_common_practice():
    assert drying_bounds(Kitchen().book) == USUAL_BOUNDS


def test_what_the_house_set_holds_and_the_rest_stays_common_practice():
    kitchen = Kitchen()
    kitchen.note(DryingBounded(early_most=1.5 * PER_DAY), CHAMBER)
    found = drying_bounds(kitchen.book)
    assert found.early == (USUAL_BOUNDS.early[0], 1.5 * PER_DAY)
    assert (found.middle, found.late) == (USUAL_BOUNDS.middle, USUAL_BOUNDS.late)


def test_the_latest_holds_whole():
    kitchen = Kitchen()
    kitchen.note(DryingBounded(early_most=1.5 * PER_DAY), CHAMBER)
    kitchen.note(DryingBounded(late_most=1.0 * PER_DAY), CHAMBER, at=1)
    assert drying_bounds(kitchen.book).early == USUAL_BOUNDS.early


def test_taken_back_they_are_common_practice_again():
    kitchen = Kitchen()
    kitchen.take_back(kitchen.note(DryingBounded(early_most=1.5 * PER_DAY), CHAMBER))
    assert drying_bounds(kitchen.book) == USUAL_BOUNDS
