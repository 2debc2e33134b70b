"""How heavy a cubic metre is: water, and meat."""

from __future__ import annotations

WATER_KG_PER_M3 = 998.2
"""At 20 °C."""
ROUGH_WATER_KG_PER_M3 = 1000.0
"""As a basin or a tank is read: a litre weighs a kilogram."""
MEAT_KG_PER_M3 = 1050.0
"""Raw sausage mix and raw muscle: common practice; no published source."""
