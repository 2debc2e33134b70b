"""How a cook says a time."""

import math


def hours_and_minutes(seconds: float) -> str:
    """Never more than there is: "5 h 20 min"."""
    minutes = max(0, math.floor(seconds / 60 + 1e-6))
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"
