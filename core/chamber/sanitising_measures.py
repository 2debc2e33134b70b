"""How a sanitiser is measured: strengths in per-cent, stock in millilitres and spoons, seconds of contact."""

from __future__ import annotations

from attrs import evolve

from core.quantities import FRACTION, HOURS, RATIO, VOLUME, Rung
from core.units import ML, PERCENT, SECOND, TBSP, TSP, Unit
from core.units import PPM as PPM_UNIT

STRENGTH = evolve(
    FRACTION,
    key="stock_strength",
    noun="a strength",
    units=(*FRACTION.units, PPM_UNIT),
    metric=(Rung(PERCENT, 2),),
    us=(Rung(PERCENT, 2),),
    bare_metric=PERCENT,
    bare_us=PERCENT,
    example_metric="5 %",
    example_us="5 %",
)
_MILLILITRES = (Rung(ML, 0, from_value=100), Rung(ML, 1, from_value=10), Rung(ML, 2))
_SPOONFULS = (Rung(TBSP, 2, from_value=1), Rung(TSP, 2))
STOCK = evolve(VOLUME, key="stock", metric=_MILLILITRES, us=_MILLILITRES, example_metric="25 ml", example_us="25 ml")
SPOONS = evolve(VOLUME, key="spoonfuls", metric=_SPOONFULS, us=_SPOONFULS)
KG_PER_LITRE = Unit("kg/L", 1.0, ("kg/l", "g/ml", "g/cm3"))
DENSITY = evolve(
    RATIO,
    key="density",
    noun="a weight of a litre",
    units=(KG_PER_LITRE,),
    metric=(Rung(KG_PER_LITRE, 2),),
    us=(Rung(KG_PER_LITRE, 2),),
    bare_metric=KG_PER_LITRE,
    bare_us=KG_PER_LITRE,
    example_metric="1.1 kg/L",
    example_us="1.1 kg/L",
)
CONTACT = evolve(HOURS, key="contact", metric=(Rung(SECOND, 0),), us=(Rung(SECOND, 0),))
