"""Laws of bicarbonate water, over the whole range that it is offered for."""

from hypothesis import given, settings
from hypothesis import strategies as st

from core.water import equilibrium

STRENGTHS = st.floats(0.02, 0.3)
WATERS = st.floats(0.0, 30.0)
AIRS = st.floats(100e-6, 0.01)


@given(molality=STRENGTHS, water_c=WATERS, less=AIRS, more=AIRS)
@settings(max_examples=40)
def test_more_carbon_dioxide_never_raises_the_ph(molality, water_c, less, more):
    less, more = sorted((less, more))
    assert equilibrium(molality, water_c, more).ph <= equilibrium(molality, water_c, less).ph + 1e-9


@given(less=STRENGTHS, more=STRENGTHS, water_c=WATERS, air=AIRS)
@settings(max_examples=40)
def test_open_to_the_air_more_soda_never_lowers_the_ph(less, more, water_c, air):
    less, more = sorted((less, more))
    assert equilibrium(less, water_c, air).ph <= equilibrium(more, water_c, air).ph + 1e-9


@given(molality=STRENGTHS, water_c=WATERS, air=st.none() | AIRS)
@settings(max_examples=40)
def test_the_charges_balance_and_no_ion_is_missing(molality, water_c, air):
    ions = equilibrium(molality, water_c, air)
    assert abs(ions.excess_charge) < 1e-9
    assert min(ions.sodium, ions.bicarbonate, ions.carbonate, ions.hydrogen, ions.hydroxide) > 0
