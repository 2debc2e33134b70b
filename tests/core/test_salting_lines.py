"""Days in salt by the rules of the trade and the law, and how fast salt moves: each figure and bound by itself."""

import math

import pytest

from core.mix.diffusion import (
    bessel,
    cylinder_centre,
    cylinder_mean,
    root_of_j0,
    root_of_j1,
    sealed_cylinder_centre,
    sealed_slab_centre,
    slab_centre,
    slab_mean,
)
from core.mix.salting import (
    Piece,
    at_the_centre,
    centre_curve,
    centre_share,
    diffusivity,
    equalised,
    mean_share,
    time_to,
)
from core.mix.salting_rules import BY_MASS, brine_strength, by_rule, minimums, turns
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange
from core.sources import COMMON_PRACTICE
from tests.core.telling import in_words

DAY_S, POUND_KG, INCH_M = 86_400.0, 0.45359237, 0.0254


def rule(key: str, mass_kg: float):
    return next(each for each in by_rule(mass_kg, None) if each.key == key)


@pytest.mark.parametrize(
    ("key", "pounds", "days", "low"),
    [
        ("rule_dry_lb", 10, 15, None), ("rule_ham_method", 20, 30, None), ("rule_ham_method", 18, 28, None),
        ("rule_ham_rest", 21, 42, None), ("rule_ham_rest", 10, 40, None), ("rule_kentucky", 10, 20, None),
        ("rule_pickle", 10, 40, 35), ("rule_dry_lb", 0.002, 0.003, None),
    ],
)  # fmt: skip
def test_days_for_each_pound(key: str, pounds: float, days: float, low: float | None):
    """VT 458-223 (1½), former 9 CFR 318.10(c)(3)(iv) method 3 (1½ and 28; 2 and 40), Kemp 1968 (2), farm pork (3½ to
    4): as the sources of the rules say."""
    found = rule(key, pounds * POUND_KG)
    assert found.value / DAY_S == pytest.approx(days)
    assert (found.low, found.high) == (
        (None, None) if low is None else (pytest.approx(low * DAY_S), pytest.approx(days * DAY_S))
    )


def test_a_ham_of_the_eu_lies_three_days_and_one_for_each_kilogram():
    assert rule("rule_jambon", 8.0).value / DAY_S == pytest.approx(11)


def test_every_rule_by_weight_is_told():
    assert [each.key for each in by_rule(8.0, None)] == [each.key for each in BY_MASS]


def test_every_rule_says_what_it_makes_of_the_piece():
    """Ten pounds, two inches thick."""
    lines = [step.say(METRIC, 3) for figure in by_rule(10 * POUND_KG, 0.0508) for step in figure.working]
    assert [line.replace("\u00a0", " ") for line in lines] == [
        "7 days an inch of thickness: 50.8 mm → 14 d",
        "1½ days a pound: 4 536 g → 15 d",
        "1½ days a pound, 28 at least: 4 536 g → 28 d",
        "2 days a pound, 40 at least: 4 536 g → 40 d",
        "2 days a pound: 4 536 g → 20 d",
        "3½ to 4 days a pound: 4 536 g → 40 d",
        "3 days and 1 a kilogram: 4 536 g → 7.54 d",
    ]


def test_seven_days_for_each_inch():
    assert by_rule(None, 3 * INCH_M)[0].value / DAY_S == pytest.approx(21)


@pytest.mark.parametrize(
    ("mass_kg", "thickness_m", "field"),
    [
        (0.0, None, "mass_kg"), (60.001, None, "mass_kg"), (None, 0.0, "thickness_m"), (None, 1.001, "thickness_m"),
        (-0.5, None, "mass_kg"), (None, -0.5, "thickness_m"),
    ],
)  # fmt: skip
def test_what_is_no_weight_or_thickness_has_no_days(mass_kg: float | None, thickness_m: float | None, field: str):
    with pytest.raises(OutOfRange) as caught:
        by_rule(mass_kg, thickness_m)
    assert caught.value.field == field


def test_the_largest_and_the_least_piece_have_days():
    assert len(by_rule(60.0, 1.0)) == len(BY_MASS) + 1
    assert len(by_rule(1e-6, 1e-6)) == len(BY_MASS) + 1


@pytest.mark.parametrize(
    ("cut", "product", "salted", "in_all"),
    [
        ("ham", "country", 45, 70), ("shoulder", "country", 25, 50), ("ham", "dry-cured", 45, 55),
        ("shoulder", "dry-cured", 25, 40),
    ],
)  # fmt: skip
def test_the_least_days_of_the_law(cut, product, salted: float, in_all: float):
    """9 CFR 319.106(c)(5)-(6); the totals of dry-cured are from memory."""
    to_go = [each.value / DAY_S for each in minimums(cut, product, 0.0, 0.0)]
    assert to_go == [salted, in_all]
    assert [each.value for each in minimums(cut, product, 80 * DAY_S, 80 * DAY_S)] == [0.0, 0.0]
    assert [each.value for each in minimums(cut, product, DAY_S, 3 * DAY_S)] == [
        (salted - 1) * DAY_S,
        (in_all - 3) * DAY_S,
    ]
    remembered = [
        any("from memory" in said for said in in_words(each.cautions)) for each in minimums(cut, product, 0.0, 0.0)
    ]
    assert remembered == [False, product == "dry-cured"]


@pytest.mark.parametrize(
    ("salted_s", "in_all_s", "field"),
    [(-1.0, 0.0, "salted_s"), (math.inf, math.inf, "salted_s"), (0.0, -1.0, "in_all_s"), (0.0, math.inf, "in_all_s"),
     (2.0, 1.0, "in_all_s")],
)  # fmt: skip
def test_days_that_cannot_be_are_refused(salted_s: float, in_all_s: float, field: str):
    with pytest.raises(OutOfRange) as caught:
        minimums("ham", "country", salted_s, in_all_s)
    assert caught.value.field == field


def test_all_of_the_days_may_be_in_salt():
    assert minimums("ham", "country", DAY_S, DAY_S)[0].value == 44 * DAY_S


@pytest.mark.parametrize(
    ("salt", "water", "has_brine", "has_salt"),
    [(0.05, 0.45, True, True), (0.05, 0.4501, False, True), (0.04, 0.3, True, True), (0.0399, 0.3, True, False)],
)
def test_ten_per_cent_brine_and_four_per_cent_salt(salt: float, water: float, has_brine: bool, has_salt: bool):
    found = brine_strength(salt, water)
    assert found.value == pytest.approx(salt / (salt + water))
    assert ("this has it" in in_words(found.cautions)[0]) is has_brine
    assert (len(in_words(found.cautions)) == 1) is has_salt


@pytest.mark.parametrize(
    ("salt", "water", "field"), [(0.0, 0.4, "salt"), (1.0, 0.4, "salt"), (0.05, 0.0, "water"), (0.05, 1.0, "water")]
)
def test_salt_and_water_are_shares(salt: float, water: float, field: str):
    with pytest.raises(OutOfRange) as caught:
        brine_strength(salt, water)
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("salted", "days", "every", "words"),
    [
        ("weighed", 14, 2, "Turn the bag over every 2 d, 6 times in all"),
        ("weighed", 4, 2, "Turn the bag over every 2 d, 1 time in all"),
        ("weighed", 4.1, 2, "Turn the bag over every 2 d, 2 times in all"),
        ("weighed", 2, 2, "Turn the bag over every 2 d, 0 times in all"),
        ("weighed", 0, 2, "Turn the bag over every 2 d, 0 times in all"),
        ("excess", 28, 7, "and put it back every 7 d, 3 times in all"),
    ],
)
def test_how_often_it_is_turned(salted: str, days: float, every: float, words: str):
    found = turns(salted, days)
    assert (found.value / DAY_S, found.source) == (every, COMMON_PRACTICE)
    assert words in found.working[0].say(METRIC).replace("\u00a0", " ")


# Crank's series, summed here from their plain terms with the zeros of J0 and J1 as printed (Abramowitz & Stegun, 9.5).
J0 = (2.4048255577, 5.5200781103, 8.6537279129, 11.7915344391)
J1 = (3.8317059702, 7.0155866698, 10.1734681351, 13.3236919363)


@pytest.mark.parametrize("number", range(4))
def test_the_zeros_of_the_bessel_functions(number: int):
    assert (root_of_j0(number + 1), root_of_j1(number + 1)) == pytest.approx((J0[number], J1[number]), abs=1e-9)


@pytest.mark.parametrize(
    ("order", "x", "value"),
    [(0, 0.0, 1.0), (1, 0.0, 0.0), (0, 1.0, 0.765197686558), (1, 1.0, 0.440050585745), (0, 50.0, 0.055812327669),
     (1, 150.0, -0.065145163658)],
)  # fmt: skip
def test_the_bessel_functions(order: int, x: float, value: float):
    """By scipy, which the tablet's interpreter has not; those at 1 as in Abramowitz & Stegun, table 9.1, too."""
    assert bessel(order, x) == pytest.approx(value, abs=2e-12)


@pytest.mark.parametrize("fo", [0.3, 0.6])
def test_after_a_while_few_terms_are_enough(fo: float):
    pi = math.pi
    assert slab_centre(fo) == pytest.approx(
        4 / pi * (math.exp(-(pi**2) / 4 * fo) - math.exp(-9 * pi**2 / 4 * fo) / 3), abs=1e-6
    )
    assert slab_mean(fo) == pytest.approx(
        8 / pi**2 * (math.exp(-(pi**2) / 4 * fo) + math.exp(-9 * pi**2 / 4 * fo) / 9), abs=1e-6
    )
    assert sealed_slab_centre(fo) == pytest.approx(
        1 - 2 * math.exp(-(pi**2) * fo) + 2 * math.exp(-4 * pi**2 * fo), abs=1e-6
    )
    assert cylinder_mean(fo) == pytest.approx(sum(4 / root**2 * math.exp(-(root**2) * fo) for root in J0), abs=1e-6)
    assert cylinder_centre(fo) == pytest.approx(
        sum(2 / (root * bessel(1, root)) * math.exp(-(root**2) * fo) for root in J0), abs=1e-6
    )
    assert sealed_cylinder_centre(fo) == pytest.approx(
        1 + sum(math.exp(-(root**2) * fo) / bessel(0, root) for root in J1), abs=1e-6
    )


@pytest.mark.parametrize("fo", [0.0005, 0.000999, 0.001, 0.0011])
def test_at_first_the_short_forms_hold(fo: float):
    assert (slab_centre(fo), cylinder_centre(fo)) == pytest.approx((1.0, 1.0), abs=1e-9)
    assert slab_mean(fo) == pytest.approx(1 - 2 * math.sqrt(fo / math.pi), abs=1e-9)
    assert cylinder_mean(fo) == pytest.approx(1 - 4 * math.sqrt(fo / math.pi) + fo, abs=1e-5)
    assert (sealed_slab_centre(fo), sealed_cylinder_centre(fo)) == pytest.approx((0.0, 0.0), abs=1e-9)


@pytest.mark.parametrize("share", [slab_centre, slab_mean, cylinder_centre, cylinder_mean])
def test_at_nothing_all_is_still_to_come(share):
    assert share(0.0) == 1.0
    for outside in (-1e-9, math.inf, math.nan):
        with pytest.raises(OutOfRange):
            share(outside)


@pytest.mark.parametrize(("temperature_c", "factor"), [(3.0, 1.0), (0.0, 0.91308), (15.0, 1.41123), (10.0, 1.22684)])
def test_salt_moves_as_fast_as_its_activation_says(temperature_c: float, factor: float):
    """19 kJ/mol by Arrhenius from 2e-10 m²/s at 3 °C: both from memory."""
    arrhenius = math.exp(19_000 / 8.314462618 * (1 / 276.15 - 1 / (temperature_c + 273.15)))
    assert arrhenius == pytest.approx(factor, abs=0.02)
    assert diffusivity(temperature_c) == pytest.approx(2e-10 * arrhenius)


@pytest.mark.parametrize(("temperature_c", "words"), [(-0.001, "is not known"), (15.001, "between 0 °C and 15 °C")])
def test_outside_0_to_15_degrees_it_is_refused(temperature_c: float, words: str):
    with pytest.raises(OutOfRange, match=words):
        diffusivity(temperature_c)


@pytest.mark.parametrize(
    ("temperature_c", "said"),
    [
        *((4.4, ""), (4.4944, ""), (40 / 9 + 0.05, ""), (4.4945, "spoil inside"), (4.50, "spoil inside")),
        *((2.3, ""), (2.1723, ""), (20 / 9 - 0.05, ""), (2.172, "count no day"), (2.17, "count no day")),
    ],
)
def test_the_cold_of_the_methods_has_a_twentieth_of_a_degree(temperature_c: float, said: str):
    """36 and 40 °F are 2.22 and 4.44 °C."""
    cautions = in_words(equalised(Piece("slab", 0.05), "weighed", temperature_c, 0.9)[0].cautions)
    assert (said in cautions[0]) if said else len(cautions) == 1


@pytest.mark.parametrize("share", [0.01, 0.99])
def test_from_1_to_99_per_cent_a_time_is_told(share: float):
    piece = Piece("slab", 0.05)
    assert centre_share(piece, "excess", 2e-10, time_to(piece, "excess", 2e-10, share)) == pytest.approx(
        share, abs=1e-9
    )


@pytest.mark.parametrize("share", [0.0099, 0.9901])
def test_outside_it_none_is(share: float):
    with pytest.raises(OutOfRange) as caught:
        time_to(Piece("slab", 0.05), "excess", 2e-10, share)
    assert caught.value.field == "centre_share"


@pytest.mark.parametrize(("side", "stands"), [(0.001, True), (0.000999, False), (1.0, True), (1.001, False)])
@pytest.mark.parametrize("field", ["thickness_m", "width_m", "length_m"])
def test_a_side_is_a_millimetre_to_a_metre(field: str, side: float, stands: bool):
    sides = {"thickness_m": 0.05, "width_m": 0.1, "length_m": 0.2} | {field: side}
    piece = Piece("block", **sides)
    if stands:
        assert 0 <= mean_share(piece, 2e-10, DAY_S) <= 1
        return
    with pytest.raises(OutOfRange) as caught:
        mean_share(piece, 2e-10, DAY_S)
    assert caught.value.field == field


def test_a_block_has_a_width():
    with pytest.raises(Missing) as caught:
        mean_share(Piece("block", 0.05), 2e-10, DAY_S)
    assert caught.value.field == "width_m"


def test_what_is_taken_up_in_plenty_of_salt():
    """Half-sides of 25 and 50 mm, ten days at 2e-10 m²/s: Fo 0.27648 and 0.06912."""
    time_s = 10 * DAY_S
    assert mean_share(Piece("slab", 0.05), 2e-10, time_s) == pytest.approx(1 - slab_mean(0.27648))
    assert mean_share(Piece("cylinder", 0.05), 2e-10, time_s) == pytest.approx(1 - cylinder_mean(0.27648))
    both = 1 - slab_mean(0.27648) * slab_mean(0.06912)
    assert mean_share(Piece("block", 0.05, 0.1), 2e-10, time_s) == pytest.approx(both)


@pytest.mark.parametrize(("wanted", "warned"), [(0.5, False), (0.9999, True)])
def test_a_centre_that_has_less_than_is_wanted_is_warned_of(wanted: float, warned: bool):
    piece = Piece("slab", 0.05)
    found = at_the_centre(piece, "excess", 3.0, time_to(piece, "excess", 2e-10, 0.5), wanted)
    assert (found.value, bool(in_words(found.cautions))) == (pytest.approx(0.5), warned)
    assert found.low is not None
    assert found.high is not None
    assert found.low < found.value < found.high


def test_a_centre_that_has_just_what_is_wanted_is_not():
    piece = Piece("slab", 0.05)
    share = at_the_centre(piece, "excess", 3.0, DAY_S * 10, 0.5).value
    assert in_words(at_the_centre(piece, "excess", 3.0, DAY_S * 10, share).cautions) == ()
    assert at_the_centre(piece, "excess", 3.0, -1.0, 0.0).value == 0.0


def test_the_spread_is_that_of_the_published_diffusivities():
    """1.3e-10 to 7e-10 m²/s about 2e-10: the days go as their inverse."""
    days, speed = equalised(Piece("slab", 0.05), "excess", 3.0, 0.9)
    assert (days.low, days.high) == (pytest.approx(days.value * 2 / 7), pytest.approx(days.value * 2 / 1.3))
    assert (speed.low, speed.value, speed.high) == pytest.approx((1.3e-10, 2e-10, 7e-10))


def test_the_working_of_the_days():
    days, speed = equalised(Piece("cylinder", 0.06), "weighed", 3.0, 0.9)
    slab = equalised(Piece("slab", 0.06), "excess", 3.0, 0.9)[0]
    assert "of the mean at 17.28 mm² a day × time ÷ radius² = " in days.working[0].say(METRIC).replace("\u00a0", " ")
    assert "of the surface at 17.28 mm² a day × time ÷ half-thickness²" in slab.working[0].say(METRIC).replace(
        "\u00a0", " "
    )
    assert "17.28 mm² a day at 3 °C, carried to 3 °C" in speed.working[0].say(METRIC).replace("\u00a0", " ")
    fo, after = days.working[0].values["fo"].value, days.working[1]
    assert fo * 0.03**2 / 2e-10 == pytest.approx(days.value)
    assert after.values["half"].value == 0.03


def test_the_curve_has_41_points_from_the_start_to_its_end():
    curve = centre_curve(Piece("slab", 0.05), "excess", 2e-10, 40 * DAY_S)
    assert [round(at / DAY_S, 6) for at, _ in curve] == list(range(41))
    assert curve[-1][1] == centre_share(Piece("slab", 0.05), "excess", 2e-10, 40 * DAY_S)
