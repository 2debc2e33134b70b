"""What a charge of the humidifier asks for and keeps: the sum, the form and the entry read these."""

from __future__ import annotations

from core.quantities import VOLUME
from core.worksheet import Number

CHARGE_WATER = Number("water_m3", "Water", VOLUME, 1e-4, 1.0, help="What you fill in, not what the tank holds.")
TANK = Number(
    "tank_m3",
    "Tank, to its mark",
    VOLUME,
    1e-4,
    1.0,
    optional=True,
    help="The tank's own highest mark, for example 7 qt.",
)
