"""Is it acid or dry enough to keep? Two published rules, each with its own numbers.

They draw the line in different places, so both must hold; where they differ the screen shows which one does not.
"""

from __future__ import annotations

# FSRE-2005, pp. 159–160, "shelf-stable"; all three are strict.
FSRE_PH_WITH_ACTIVITY = 5.2
FSRE_ACTIVITY_WITH_PH = 0.95
FSRE_PH = 5.0
FSRE_ACTIVITY = 0.91

# Reg. (EC) 2073/2005, Annex I, food category 1.3: cannot support the growth of Listeria. All inclusive.
EU_PH = 4.4
EU_ACTIVITY = 0.92
EU_PH_WITH_ACTIVITY = 5.0
EU_ACTIVITY_WITH_PH = 0.94


def shelf_stable(ph: float | None, activity: float) -> bool:
    """FSRE-2005: pH below 5.2 with water activity below 0.95, or pH below 5.0, or water activity below 0.91.

    ph: None where it was not measured; water activity must then carry it alone.
    """
    if activity < FSRE_ACTIVITY:
        return True
    return ph is not None and (ph < FSRE_PH or (ph < FSRE_PH_WITH_ACTIVITY and activity < FSRE_ACTIVITY_WITH_PH))


def too_dry_for_listeria(ph: float | None, activity: float) -> bool:
    """EU category 1.3: pH at most 4.4, or water activity at most 0.92, or pH at most 5.0 with activity at most 0.94.

    ph: None where it was not measured; water activity must then carry it alone.
    """
    if activity <= EU_ACTIVITY:
        return True
    return ph is not None and (ph <= EU_PH or (ph <= EU_PH_WITH_ACTIVITY and activity <= EU_ACTIVITY_WITH_PH))


def rests_on_equality(ph: float | None, activity: float) -> bool:
    """True where the EU rule holds only because a limit is met exactly; one copy of it prints "less than"."""
    if not too_dry_for_listeria(ph, activity):
        return False
    if activity < EU_ACTIVITY:
        return False
    return ph is None or not (ph < EU_PH or (ph < EU_PH_WITH_ACTIVITY and activity < EU_ACTIVITY_WITH_PH))
