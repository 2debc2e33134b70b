"""The kinds of reading that only the mixing table knows: a dose to the meat, money, density."""

from __future__ import annotations

from attrs import evolve

from core import quantities
from core.quantities import FRACTION, PARTS_PER_MILLION, RATIO, DisplayUnit, Quantity, never_up
from core.units import G_PER_KG, KG_PER_L, ONE, PERCENT, POUND_KG, Unit

PER_MEAT = evolve(
    FRACTION, key="per_meat", noun="a dose", units=(ONE, PERCENT, G_PER_KG), example_metric="2.5 %", example_us="2.5 %"
)
"""Of the meat block: per-cent, or grams to the kilogram."""
GRAMS_PER_MEAT = evolve(
    PER_MEAT, key="grams_per_meat", metric=(DisplayUnit(G_PER_KG, 2),), us=(DisplayUnit(G_PER_KG, 2),)
)

CURE_SHARE = evolve(
    never_up(FRACTION), key="cure_share", metric=(DisplayUnit(PERCENT, 3),), us=(DisplayUnit(PERCENT, 3),)
)
"""Curing salt, of the meat or of the brine: never shown as more than it is."""
GOING_IN = evolve(never_up(PARTS_PER_MILLION), key="going_in")
"""Nitrite and nitrate: 126.7 ppm that are just allowed are no 127, which would be refused where they are typed."""
SALT_SHARE = evolve(never_up(FRACTION), key="salt_share")
"""Salt is asked for at least: 2.496 % is no 2.5 %."""

MONEY = evolve(
    RATIO, key="money", noun="a sum of money", metric=(DisplayUnit(ONE, 2),), us=(DisplayUnit(ONE, 2),), trim=False
)

_A_KG = Unit("a kg", 1.0, ("a kg", "per kg", "/kg"))
_A_LB = Unit("a lb", 1 / POUND_KG, ("a lb", "per lb", "/lb"))
PRICE = Quantity(
    key="price",
    noun="a price",
    units=(_A_KG, _A_LB),
    metric=(DisplayUnit(_A_KG, 2),),
    us=(DisplayUnit(_A_LB, 2),),
    bare_metric=_A_KG,
    bare_us=_A_LB,
    example_metric="12.50 a kg",
    example_us="5.70 a lb",
)
"""In the maker's own money: no currency is named."""

_TO_TWO = (DisplayUnit(KG_PER_L, 2),)
DENSITY = evolve(quantities.DENSITY, metric=_TO_TWO, us=_TO_TWO, example_metric="1.05 kg/L", example_us="1.05 kg/L")
