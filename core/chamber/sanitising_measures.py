"""How a sanitiser is measured: strengths in per-cent, stock in millilitres and spoons, seconds of contact."""

from __future__ import annotations

from attrs import evolve

from core.quantities import FRACTION, HOURS, RATIO, VOLUME, DisplayUnit
from core.units import ML, PERCENT, SECOND, TBSP, TSP, Unit
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
KG_PER_LITRE = Unit("kg/L", 1.0, ("kg/l", "g/ml", "g/cm3"))
DENSITY = evolve(
    RATIO,
    key="density",
    noun="a weight of a litre",
    units=(KG_PER_LITRE,),
    metric=(DisplayUnit(KG_PER_LITRE, 2),),
    us=(DisplayUnit(KG_PER_LITRE, 2),),
    bare_metric=KG_PER_LITRE,
    bare_us=KG_PER_LITRE,
    example_metric="1.1 kg/L",
    example_us="1.1 kg/L",
)
CONTACT = evolve(HOURS, key="contact", metric=(DisplayUnit(SECOND, 0),), us=(DisplayUnit(SECOND, 0),))
