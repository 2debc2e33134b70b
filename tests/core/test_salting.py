"""Salt on its way to the centre of a whole muscle: how far it is, and whether that is enough."""

import pytest

from core.mix.salting import NOT_THROUGH, Piece, at_the_centre, equalised
from core.mix.salting_rules import by_rule
from core.refusals import Refused
from core.units import POUND_KG
from core.worksheets import find
from tests.core.telling import in_words

LOIN = Piece("slab", 0.05)


@pytest.mark.parametrize("method", ["weighed", "excess"])
def test_when_the_days_are_over_the_centre_has_the_share_that_was_wanted(method):
    days = equalised(LOIN, method, 3.0, 0.9)[0]
    assert at_the_centre(LOIN, method, 3.0, days.value, 0.9).value == pytest.approx(0.9, abs=1e-6)


def test_too_early_it_is_told():
    assert NOT_THROUGH in in_words(at_the_centre(LOIN, "weighed", 3.0, 2 * 86_400.0, 0.9).cautions)


def test_long_after_it_is_not():
    assert in_words(at_the_centre(LOIN, "weighed", 3.0, 60 * 86_400.0, 0.9).cautions) == ()


def test_its_range_is_that_of_published_diffusivities():
    now = at_the_centre(LOIN, "weighed", 3.0, 5 * 86_400.0, 0.9)
    assert now.low is not None
    assert now.high is not None
    assert 0 < now.low < now.value < now.high <= 1


def test_days_of_ham_by_the_us_method_name_its_conditions():
    """Former 9 CFR 318.10(c)(3)(iv), method 3, as read in the 2015 edition."""
    found = {each.key: each for each in by_rule(10.0, None)}
    for key in ("rule_ham_method", "rule_ham_rest"):
        words = " ".join(in_words(found[key].cautions))
        for condition in ("70 % salt", "2 days a pound and 40 days", "35 to 45 °F", "60 °F", "6 lb", "heaviest ham"):
            assert condition in words


@pytest.mark.parametrize(("pounds", "salted", "rested"), [(18.6, 28.0, 40.0), (18.8, 28.2, 40.0), (20.2, 30.3, 40.4)])
def test_salting_and_rest_by_the_us_method_have_their_own_least(pounds: float, salted: float, rested: float):
    """Former 9 CFR 318.10(c)(3)(iv), method 3: 28 d and 1½ d/lb in salt, 40 d and 2 d/lb with the rest."""
    found = {each.key: each.value / 86400 for each in by_rule(pounds * POUND_KG, None)}
    assert found["rule_ham_method"] == pytest.approx(salted)
    assert found["rule_ham_rest"] == pytest.approx(rested)


HAM_DAYS = {"cut": "ham", "product": "country", "salted_s": "50 d", "in_all_s": "80 d"}


@pytest.mark.parametrize(
    ("given", "keys"),
    [({}, ["salt_to_go", "days_to_go"]), ({"salt": "5 %", "water": "40 %"}, ["salt_to_go", "days_to_go", "brine"])],
)
def test_the_brine_of_a_ham_is_told_where_salt_and_water_are_known(given: dict[str, str], keys: list[str]):
    assert [each.key for each in find("ham-days").answer(HAM_DAYS | given).figures] == keys


@pytest.mark.parametrize(("given", "asked"), [({"salt": "5 %"}, "water"), ({"water": "40 %"}, "salt")])
def test_one_of_them_alone_asks_for_the_other(given: dict[str, str], asked: str):
    with pytest.raises(Refused, match="Enter both the salt and the water, or neither") as caught:
        find("ham-days").answer(HAM_DAYS | given)
    assert [each.field for each in caught.value.refusals] == [asked]


def test_the_time_so_far_is_told_as_the_fourier_number_by_hand():
    """Days times mm² a day, over the square of half its thickness: 25 mm."""
    told = at_the_centre(Piece("slab", 0.05), "weighed", 3.0, 5 * 86_400.0, 0.9).working[0].amounts
    d_mm2_a_day, fo = told["d"].value * 1e6 * 86_400, told["fo"].value
    assert (told["half"].value, fo) == (0.025, pytest.approx(d_mm2_a_day * 5 / 625))
    assert 0.05 < fo < 0.3
