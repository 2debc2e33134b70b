"""How a sanitiser is measured: strengths in per-cent, stock in millilitres and spoons, seconds of contact."""

from __future__ import annotations

from attrs import evolve

from core.quantities import DENSITY, FRACTION, HOURS, VOLUME, DisplayUnit
from core.units import KG_PER_L, ML, PERCENT, SECOND, TBSP, TSP
from core.units import PPM as PPM_UNIT

STRENGTH = evolve(
    FRACTION,
    key="stock_strength",
    noun="a strength",
    units=(*FRACTION.units, PPM_UNIT),
    metric=(DisplayUnit(PERCENT, 2),),
    us=(DisplayUnit(PERCENT, 2),),
    bare_metric=PERCENT,
    bare_us=PERCENT,
    example_metric="5 %",
    example_us="5 %",
)
_MILLILITRES = (DisplayUnit(ML, 0, from_value=100), DisplayUnit(ML, 1, from_value=10), DisplayUnit(ML, 2))
_SPOONFULS = (DisplayUnit(TBSP, 2, from_value=1), DisplayUnit(TSP, 2))
STOCK = evolve(VOLUME, key="stock", metric=_MILLILITRES, us=_MILLILITRES, example_metric="25 ml", example_us="25 ml")
SPOONS = evolve(VOLUME, key="spoonfuls", metric=_SPOONFULS, us=_SPOONFULS)
_TO_TWO = (DisplayUnit(KG_PER_L, 2),)
WEIGHT_OF_A_LITRE = evolve(
    DENSITY,
    noun="a weight of a litre",
    metric=_TO_TWO,
    us=_TO_TWO,
    example_metric="1.1 kg/L",
    example_us="1.1 kg/L",
    trim=True,
)
CONTACT = evolve(HOURS, key="contact", metric=(DisplayUnit(SECOND, 0),), us=(DisplayUnit(SECOND, 0),))
CONTACT_TIME = evolve(CONTACT, bare_metric=SECOND, bare_us=SECOND, example_metric="60 s", example_us="60 s")
