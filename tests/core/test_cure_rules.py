"""The rule sets as data: every row is whole, and what they say on a day, of a product, cured one way."""

import re
from datetime import date
from itertools import product as every_pair

import pytest

from core.mix.rule import METHODS, WET, Rule
from core.mix.rules import RULE_SETS, Curing, HouseLimit, products_for, rule_sets, rules_for
from core.mix.rules_us import RIND_CITE
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.sentence import said
from core.sources import CFR_424_21C, CFR_424_22B

ROWS = [(rule_set.key, rule) for rule_set in rule_sets() for rule in rule_set.rules]
every_row = pytest.mark.parametrize(
    ("key", "rule"), ROWS, ids=[f"{key}-{rule.product}-{rule.substance}-{at}" for at, (key, rule) in enumerate(ROWS)]
)
LAST_OLD_DAY, FIRST_NEW_DAY = date(2025, 10, 8), date(2025, 10, 9)
DAYS = (LAST_OLD_DAY, FIRST_NEW_DAY, None)


def most(curing: Curing, substance: str) -> float | None:
    return next(rule.most_ppm for rule in curing.held if rule.substance == substance)


@every_row
def test_has_a_source(key: str, rule: Rule):
    assert rule.source.title
    assert rule.cite


@every_row
def test_says_how_it_was_verified(key: str, rule: Rule):
    assert rule.source.verified in ("seen", "copy", "memory", "practice", "computed")


@every_row
def test_names_the_edition_that_was_read(key: str, rule: Rule):
    assert re.search(r"\b(19|20)\d\d\b", rule.as_of)


@every_row
def test_limits_something(key: str, rule: Rule):
    assert rule.most_ppm is not None or rule.left_ppm is not None


@every_row
def test_is_of_a_product_that_the_set_names(key: str, rule: Rule):
    assert rule.product in RULE_SETS[key].products


@every_row
def test_is_for_ways_of_curing_there_are(key: str, rule: Rule):
    assert rule.methods
    assert set(rule.methods) <= set(METHODS)


@every_row
def test_a_row_that_ends_began_before(key: str, rule: Rule):
    assert rule.until is None or (rule.since is not None and rule.since < rule.until)


@pytest.mark.parametrize(("key", "day"), [*every_pair(RULE_SETS, DAYS)])
def test_two_rows_never_speak_of_the_same_at_once(key: str, day):
    for method in METHODS:
        for product in RULE_SETS[key].products:
            of = [rule.substance for rule in rules_for(key, product, method, day)]
            assert len(of) == len(set(of)), (product, method)


@pytest.mark.parametrize(("key", "method"), [*every_pair(RULE_SETS, METHODS)])
def test_every_set_has_a_product_for_every_way_of_curing(key: str, method):
    assert products_for(key, method)


@pytest.mark.parametrize(("key", "day"), [*every_pair(RULE_SETS, DAYS)])
def test_whatever_may_be_chosen_is_held_to_a_limit_of_nitrite_and_nitrate(key: str, day):
    for method in METHODS:
        for product in products_for(key, method, day):
            held = Curing(key, product, method, day).held
            assert {each for rule in held for each in rule.substances} == {"nitrite", "nitrate"}, (product, method)
            assert all(rule.most_ppm is not None for rule in held)


@pytest.mark.parametrize(
    ("method", "nitrite", "nitrate"),
    [
        ("comminuted", 156.25, 1718.75),
        ("dry-rub", 625, 2187.5),
        ("dry-salting", 625, 2187.5),
        ("immersion", 200, 700),
        ("pick-up", 200, 700),
        ("pump", 200, 700),
    ],
)
def test_the_us_chart_by_the_way_of_curing(method, nitrite: float, nitrate: float):
    curing = Curing("us", "meat", method)
    assert (most(curing, "nitrite"), most(curing, "nitrate")) == (nitrite, nitrate)


@pytest.mark.parametrize(
    ("product", "method", "nitrite"),
    [
        ("bacon", "pump", 120),
        ("bacon", "immersion", 120),
        ("bacon", "dry-rub", 200),
        ("bacon-rind", "pump", 108),
        ("bacon-rind", "dry-rub", 180),
        ("home-mix", "comminuted", 200),
    ],
)
def test_us_bacon_by_rind_and_the_home_mix(product: str, method, nitrite: float):
    assert most(Curing("us", product, method), "nitrite") == pytest.approx(nitrite)


def test_us_bacon_takes_no_nitrate():
    assert most(Curing("us", "bacon", "dry-rub"), "nitrate") == 0


@pytest.mark.parametrize(("day", "nitrite", "counted"), [(LAST_OLD_DAY, 150, "sodium"), (FIRST_NEW_DAY, 80, "ion")])
def test_the_eu_changes_its_figure_and_its_reckoning_on_9_october_2025(day: date, nitrite: float, counted: str):
    (rule,) = (rule for rule in Curing("eu", "not-heated", "comminuted", day).law if rule.substance == "nitrite")
    assert (rule.most_ppm, rule.counted) == (nitrite, counted)


def test_an_eu_row_that_limits_only_what_is_left_is_filled_from_the_general_row():
    assert most(Curing("eu", "dry-ham", "dry-rub"), "nitrite") == 80


def test_the_filled_row_keeps_its_own_limit_of_what_is_left():
    (rule,) = (rule for rule in Curing("eu", "dry-ham", "dry-rub").held if rule.substance == "nitrite")
    assert (rule.left_ppm, rule.what) == (65, "dry-cured ham, matured 4 days at least")


def test_eu_nitrate_in_a_traditional_ham_is_a_hard_limit():
    (rule,) = (rule for rule in Curing("eu", "dry-ham", "dry-rub").law if rule.substance == "nitrate")
    assert (rule.left_ppm, rule.left_is) == (150, "most")


def test_eu_nitrate_in_meat_not_heated_is_looked_into():
    (rule,) = (rule for rule in Curing("eu", "not-heated", "comminuted").law if rule.substance == "nitrate")
    assert (rule.left_ppm, rule.left_is) == (90, "look into")


@pytest.mark.parametrize(
    ("until", "cite", "section", "as_of", "counted"),
    [
        (FIRST_NEW_DAY, "Reg. (EC) 1333/2008 before 9 October 2025", "by Reg. (EU) 1129/2011", "2011", "sodium"),
        (None, "Reg. (EU) 2023/2108", "consolidated 18 August 2026", "2026-08-18", "ion"),
    ],
)  # fmt: skip
def test_an_eu_row_names_its_own_text_and_counts_as_that_does(until, cite, section, as_of, counted):
    rows = [rule for rule in RULE_SETS["eu"].rules if rule.until == until]
    assert {(rule.cite, rule.as_of, rule.counted) for rule in rows} == {(cite, as_of, counted)}
    assert all(section in rule.source.where.say(METRIC) for rule in rows)


def test_the_eu_has_nitrate_left_looked_into_in_seven_of_its_rows():
    """Reg. (EU) 2023/2108, footnotes XE, XF and XK; every other figure is a most."""
    found = {(rule.product, rule.substance) for rule in RULE_SETS["eu"].rules if rule.left_is == "look into"}
    looked_into = ("not-heated", "no-nitrite", "rohwurst", "long-cured", "saucisson", "filet-nitrate", "reindeer")
    assert found == {(product, "nitrate") for product in looked_into}


def test_an_eu_row_is_called_by_its_product_without_the_days_it_takes():
    (nitrite, _) = Curing("eu", "jamon", "dry-rub").law
    assert nitrite.what == "jamón, paleta, lomo, cecina"


@pytest.mark.parametrize("method", ["immersion", "dry-rub"])
def test_us_bacon_is_counted_without_its_skin_and_bacon_in_its_skin_by_a_trade_figure(method):
    """9 CFR 424.22(b); the tenth less for the rind from memory."""
    bare, rind = (Curing("us", product, method).law[0] for product in ("bacon", "bacon-rind"))
    assert (bare.note, bare.cite, bare.source) == ("On the skin-free green weight.", "9 CFR 424.22(b)", CFR_424_22B)
    assert rind.cite == RIND_CITE
    assert said(rind.note).say(METRIC) == "A tenth less for the rind is a trade figure, not in the text read."
    assert rind.source.verified == "memory"
    assert said(rind.printed).say(METRIC) == f"{bare.printed}, less a tenth"


def test_ascorbate_in_us_bacon_is_asked_for_by_424_22_b_and_allowed_elsewhere_by_424_21_c():
    rows = {rule.product: rule for rule in RULE_SETS["us"].rules if rule.substance == "accelerator"}
    assert {product: (rule.cite, rule.source) for product, rule in rows.items()} == {
        "meat": ("9 CFR 424.21(c)", CFR_424_21C),
        "bacon": ("9 CFR 424.22(b)", CFR_424_22B),
        "bacon-rind": ("9 CFR 424.22(b)", CFR_424_22B),
    }


def test_the_200_ppm_of_us_pickle_are_of_the_handbook_of_1995_and_the_rest_of_the_chart_of_2015():
    rows = [rule for rule in RULE_SETS["us"].rules if rule.product == "meat" and rule.substance != "accelerator"]
    of_1995 = {(rule.methods, rule.substance) for rule in rows if rule.as_of == "1995 revision"}
    assert of_1995 == {(WET, "nitrite")}
    assert {rule.as_of for rule in rows} == {"1995 revision", "2015 edition"}


def test_canada_counts_both_on_the_whole_mixture():
    (rule,) = Curing("ca", "meat", "comminuted").held
    assert (rule.substance, rule.on, rule.most_ppm, rule.least_ppm) == ("both", "mixture", 200, 100)


def test_what_is_from_memory_says_so():
    from_memory = {(key, rule.cite) for key, rule in ROWS if rule.source.verified == "memory"}
    assert from_memory == {("us", "9 CFR 424.21(c)"), ("us", RIND_CITE), ("ca", "CFIA, side bacon")}


def test_a_house_rule_makes_a_row_stricter():
    house = (HouseLimit("us", 120.0),)
    assert most(Curing("us", "meat", "comminuted", house=house), "nitrite") == 120


@pytest.mark.parametrize(("ppm", "own"), [(156.24, True), (156.25, False), (156.26, False)])
def test_a_house_rule_is_named_only_where_it_is_stricter(ppm: float, own: bool):
    """9 CFR 424.21(c): ¼ oz to 100 lb, 156.25 ppm."""
    held = Curing("us", "meat", "comminuted", house=(HouseLimit("us", ppm),)).held
    (nitrite,) = (rule for rule in held if rule.substance == "nitrite")
    assert (nitrite.cite == "rule of the house") is own


def test_a_house_rule_never_makes_a_row_looser():
    house = (HouseLimit("us", 500.0),)
    assert most(Curing("us", "meat", "comminuted", house=house), "nitrite") == 156.25


def test_a_house_rule_holds_only_under_its_own_set():
    house = (HouseLimit("us", 50.0),)
    assert most(Curing("eu", "not-heated", "comminuted", house=house), "nitrite") == 80


@pytest.mark.parametrize(
    ("rules", "product", "method", "field"),
    [
        ("mars", "meat", "comminuted", "rules"),
        ("us", "not-heated", "comminuted", "product"),
        ("us", "meat", "boiling", "method"),
        ("eu", "rohwurst", "pump", "product"),
        ("us", "bacon", "comminuted", "product"),
    ],
)
def test_what_no_set_knows_is_refused_on_its_field(rules: str, product: str, method, field: str):
    with pytest.raises(OutOfRange) as caught:
        Curing(rules, product, method)
    assert caught.value.field == field


def test_a_product_that_came_later_is_refused_on_an_earlier_day():
    with pytest.raises(OutOfRange) as caught:
        Curing("eu", "mettwurst", "comminuted", LAST_OLD_DAY)
    assert caught.value.field == "product"
