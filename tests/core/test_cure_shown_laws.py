"""What is shown of a cure is never more than was worked out: fed back into the program, in any unit, it is accepted."""

import pytest
from attrs import evolve
from hypothesis import assume, given
from hypothesis import strategies as st

from core.mix.blend import blend_for, preblend
from core.mix.cure import CureMix, Dose
from core.mix.cure_dose import dosed, dosed_for, figures, to_weigh
from core.mix.curing_salt import CuringSalt
from core.mix.formula import Formula, Ingredient, Meat, portions
from core.mix.formula_cure import over_limit
from core.mix.licence import require_allowed
from core.mix.limit_check import largest_kg
from core.mix.limits import SLACK
from core.mix.rule import METHODS
from core.mix.rules import RULE_SETS, Curing, products_for
from core.mix.scaling import by_meat
from core.mix.weighing import aim_kg, rounding
from core.quantities import FRACTION, MASS, PARTS_PER_MILLION, Amount, Quantity, Reader
from core.reading import read
from core.refusals import OutOfRange
from tests.core.reaching import reaches

HOWS = [
    Curing(key, product, method) for key in RULE_SETS for method in METHODS for product in products_for(key, method)
]
READERS = [Reader(system, mark) for system in ("metric", "us") for mark in (".", ",")]
manners = st.sampled_from(READERS)
alkalis = st.sampled_from(["sodium", "potassium"])
salts = st.builds(CuringSalt, st.floats(0.004, 0.07), st.just(0.0), st.just(0.0), alkalis)
AT_MOST = st.one_of(st.just(1.0), st.floats(1, 1 + 0.99 * SLACK), st.floats(0.9, 1))
"""Of the largest dose: all of it, what the tolerance of the limits lets pass, or a little less."""
divisions = st.sampled_from([1e-5, 1e-4, 5e-4, 1e-3, 2e-3, 5e-3])


def texts(amount: Amount, reader: Reader) -> list[str]:
    """Every way it is written: the figure, the ounces in brackets, the working."""
    plain, _, bracket = amount.show(reader).partition(" (")
    return [plain, *([bracket.rstrip(")")] if bracket else []), amount.show_exact(reader), amount.show_exact(reader, 4)]


def back(text: str, quantity: Quantity, reader: Reader) -> float:
    return read(text, quantity, reader)


@st.composite
def at_the_limit(draw: st.DrawFn) -> tuple[CureMix, Curing]:
    """A charge with as much of its first cure as its rules just let pass, or nearly."""
    how = draw(st.sampled_from(HOWS))
    charge = CureMix(
        draw(st.floats(0.05, 100)),
        (Dose(draw(salts), 0.0),),
        draw(st.floats(0, 5)),
        water_kg=draw(st.floats(1, 50)),
        sugar_kg=draw(st.floats(0, 2)),
        other_kg=draw(st.floats(0, 2)),
        taken=draw(st.floats(0.05, 0.6)),
    )
    most = largest_kg(charge, how) * draw(AT_MOST)
    assume(0 < most < 1e3)
    made = charge.with_first(most)
    try:
        require_allowed(made, how, None, field="dose")
    except OutOfRange:
        assume(False)
    return made, how


def test_a_dose_as_shown_is_accepted_in_every_unit():
    reached: list[object] = []

    @given(at_the_limit(), manners)
    def law(given_: tuple[CureMix, Curing], reader: Reader):
        charge, how = given_
        for text in texts(to_weigh(charge).amount, reader):
            shown = back(text, MASS, reader)
            assert shown <= charge.doses[0].kg * (1 + 1e-9)
            require_allowed(charge.with_first(shown), how, None, field="dose")
        reached.append(how)

    reaches(law, reached)


def test_the_dose_for_a_ppm_is_accepted_as_grams_as_ounces_and_as_a_share():
    reached: list[object] = []

    @given(at_the_limit(), manners)
    def law(given_: tuple[CureMix, Curing], reader: Reader):
        charge, how = given_
        (nitrite,) = (each for each in figures(charge, how) if each.key == "nitrite")
        try:
            cure, share, *_ = dosed_for(charge, how, nitrite.value * 1e6)
        except OutOfRange:
            assume(False)
            raise
        whole = charge.pickle_kg - charge.doses[0].kg + cure.value if "brine" in share.name else charge.meat_kg
        kilograms = [back(text, MASS, reader) for text in texts(cure.amount, reader)]
        kilograms += [back(text, FRACTION, reader) * whole for text in texts(share.amount, reader)]
        for kg in kilograms:
            require_allowed(charge.with_first(kg), how, None, field="dose")
        reached.append(how)

    reaches(law, reached)


def test_the_nitrite_as_shown_is_accepted_where_it_is_wanted():
    """126.67 ppm of sodium nitrite are 156.25 ppm of the potassium salt: shown as 127 they would be refused."""
    reached: list[object] = []

    @given(at_the_limit(), manners)
    def law(given_: tuple[CureMix, Curing], reader: Reader):
        charge, how = given_
        (nitrite,) = (each for each in figures(charge, how) if each.key == "nitrite")
        dosed(charge, how, back(nitrite.show(reader), PARTS_PER_MILLION, reader) * 1e6)
        reached.append(how)

    reaches(law, reached)


def test_4_03_kilograms_at_156_25_ppm_show_a_dose_that_is_accepted():
    how, salt = Curing(), CuringSalt(0.0625)
    cure, *_ = dosed_for(CureMix(4.03, (Dose(salt, 0.0),)), how, 156.25)
    assert cure.show(READERS[0]) == "10.0 g"
    figures(CureMix(4.03, (Dose(salt, 0.0100),)), how)
    with pytest.raises(OutOfRange):
        figures(CureMix(4.03, (Dose(salt, 0.0101),)), how)


@given(st.floats(1e-4, 10), divisions)
def test_a_cure_on_a_scale_is_never_rounded_up(wanted_kg: float, division_kg: float):
    assert aim_kg(wanted_kg, division_kg, never_up=True) <= wanted_kg * (1 + 1e-6)
    weigh, change, worst = rounding(wanted_kg, division_kg, never_up=True)
    assert read(weigh.show(READERS[0]), MASS) <= wanted_kg * (1 + 1e-6)
    assert change.value <= 1e-6
    assert worst.value >= division_kg / wanted_kg * (1 - 1e-9)


def test_a_blend_never_holds_more_than_the_dose_as_worked_out_or_as_shown():
    reached: list[object] = []

    @given(st.floats(1e-4, 0.05), st.floats(0.005, 2), divisions, manners)
    def law(dose_kg: float, salt_kg: float, division_kg: float, reader: Reader):
        try:
            blend = blend_for(dose_kg, salt_kg, division_kg)
        except OutOfRange:
            assume(False)
            raise
        assert blend.dose_kg <= dose_kg * (1 + 1e-6)
        assert blend.worst <= 0.05 * (1 + 1e-9)
        take, cure, salt, *_ = preblend(dose_kg, salt_kg, division_kg)
        taken, of_cure, of_salt = (back(texts(each.amount, reader)[0], MASS, reader) for each in (take, cure, salt))
        if of_cure:
            assert taken * of_cure / (of_cure + of_salt) <= dose_kg * (1 + 1e-6)
        reached.append(blend)

    reaches(law, reached)


def formula_at(share: float, nitrite: float, *, in_grams: bool) -> Formula:
    cure = Ingredient("Cure", "cure", share, in_grams=in_grams, nitrite=nitrite)
    return Formula("Larch", "fermented", (Meat("Shoulder", 1.0, 0.07, "10072"),), (cure,))


@given(st.floats(0.004, 0.07), AT_MOST, st.booleans(), st.floats(0.1, 100), manners)
def test_a_formulas_cure_as_shown_is_accepted(
    nitrite: float, of: float, in_grams: bool, meat_kg: float, reader: Reader
):
    share = 156.25e-6 / nitrite * of
    formula = formula_at(share, nitrite, in_grams=in_grams)
    assert over_limit(formula) is None
    (cure,) = formula.ingredients
    (row,) = (each for each in portions(formula, meat_kg) if each.role == "cure")
    working = by_meat(formula, meat_kg).figures[0].working[-1].amounts["result"]
    shares = [back(text, cure.measure, reader) for text in texts(Amount(share, cure.measure), reader)]
    masses = [text for amount in (Amount(row.mass_kg, row.measure), working) for text in texts(amount, reader)]
    shares += [back(text, MASS, reader) / meat_kg for text in masses]
    for shown in shares:
        again = evolve(formula, ingredients=(evolve(cure, per_meat=shown),))
        assert over_limit(again) is None
