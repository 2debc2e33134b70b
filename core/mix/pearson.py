"""Fat wanted: in which shares do these meats make it?

Two meats by Pearson's square. More than two have many answers; the one given multiplies every share by one factor for
each per-cent of fat in that meat, so that meats of like fat keep their proportion and none falls out. With two meats it
is the square.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from core.quantities import FRACTION, MASS, Amount
from core.refusals import Missing, OutOfRange
from core.roots import begins
from core.sentence import Message, Rounded, Sentence
from core.sources import DEFINITION
from core.traced import traced
from core.working import Figure

ALIKE = 1e-12
TOO_LEAN: Message = "These meats make {low} to {high} fat, whatever the shares. For {wanted} add a leaner meat."
TOO_FAT: Message = "These meats make {low} to {high} fat, whatever the shares. For {wanted} add a fatter meat."


def square(lean_fat: float, fat_fat: float, wanted: float) -> tuple[float, float]:
    """Shares of the leaner and of the fatter meat. All fats are fractions. Raises OutOfRange on "wanted"."""
    require_reachable((lean_fat, fat_fat), wanted)
    if abs(fat_fat - lean_fat) < ALIKE:
        return 0.5, 0.5
    share = (fat_fat - wanted) / (fat_fat - lean_fat)
    return share, 1 - share


def shares_for(fats: Sequence[float], shares: Sequence[float], wanted: float) -> tuple[float, ...]:
    """New shares that make the wanted fat, nearest to the given ones in proportion; a share of nothing stays nothing.

    fats: of each meat, 0 to 1. shares: 0 or more, not all 0; they need not add to 1. Raises OutOfRange on "wanted",
    naming what can be reached.
    """
    used = [(fat, share) for fat, share in zip(fats, shares, strict=True) if share > 0]
    if not used:
        raise Missing("shares", "Give at least one meat a share.")
    low, high = require_reachable([fat for fat, _ in used], wanted)
    if high - low < ALIKE:
        return _whole(shares)
    if not low + ALIKE < wanted < high - ALIKE:
        end = low if wanted <= low + ALIKE else high
        return _whole([share if abs(fat - end) < ALIKE else 0.0 for fat, share in zip(fats, shares, strict=True)])
    return _whole(_tilted(fats, shares, _slope(fats, shares, wanted)))


def require_reachable(fats: Sequence[float], wanted: float) -> tuple[float, float]:
    """Guard: the leanest and the fattest meat bound what any mixture of them holds."""
    low, high = min(fats), max(fats)
    if not low - ALIKE <= wanted <= high + ALIKE:
        told = {
            name: Rounded(Amount(fat, FRACTION)) for name, fat in (("low", low), ("high", high), ("wanted", wanted))
        }
        raise OutOfRange("wanted", Sentence(TOO_LEAN if wanted < low else TOO_FAT, told))
    return low, high


def _whole(shares: Sequence[float]) -> tuple[float, ...]:
    total = sum(shares)
    return tuple(share / total for share in shares)


def _tilted(fats: Sequence[float], shares: Sequence[float], slope: float) -> list[float]:
    """Each share × exp(slope × fat), scaled so that none overflows."""
    top = max(slope * fat for fat, share in zip(fats, shares, strict=True) if share > 0)
    return [share * math.exp(slope * fat - top) if share > 0 else 0.0 for fat, share in zip(fats, shares, strict=True)]


def _slope(fats: Sequence[float], shares: Sequence[float], wanted: float) -> float:
    """The fat of the mixture rises with the slope: bracket it, then halve."""
    low, high = -1.0, 1.0
    while _fat(fats, shares, low) > wanted and low > -1e15:
        low *= 2
    while _fat(fats, shares, high) < wanted and high < 1e15:
        high *= 2
    return begins(lambda slope: _fat(fats, shares, slope) >= wanted, low, high)


def _fat(fats: Sequence[float], shares: Sequence[float], slope: float) -> float:
    tilted = _whole(_tilted(fats, shares, slope))
    return sum(fat * share for fat, share in zip(fats, tilted, strict=True))


def two_meats(lean_fat: float, fat_fat: float, wanted: float, meat_kg: float | None = None) -> tuple[Figure, ...]:
    """Pearson's square, with weights where the meat block is given. Raises OutOfRange on "wanted"."""
    lean, fat = square(lean_fat, fat_fat, wanted)
    amounts = {
        "lean": Amount(lean_fat, FRACTION),
        "fat": Amount(fat_fat, FRACTION),
        "wanted": Amount(wanted, FRACTION),
        "lean_share": Amount(lean, FRACTION),
        "fat_share": Amount(fat, FRACTION),
    }
    leaner = Sentence("({fat} − {wanted}) ÷ ({fat} − {lean}) = {lean_share}", amounts)
    fatter = Sentence("({wanted} − {lean}) ÷ ({fat} − {lean}) = {fat_share}", amounts)
    if lean_fat == fat_fat:
        leaner = fatter = Sentence("Both meats hold {lean} fat: any shares make it.", amounts)
    made = (
        Figure("lean_share", "Share of the leaner meat", lean, FRACTION, (leaner,), DEFINITION),
        Figure("fat_share", "Share of the fatter meat", fat, FRACTION, (fatter,), DEFINITION),
    )
    if meat_kg is None:
        return made
    meat = traced("meat", meat_kg, MASS)
    return (
        *made,
        (traced("share", lean, FRACTION) * meat).figure("lean_mass", "Weight of the leaner meat", MASS),
        (traced("share", fat, FRACTION) * meat).figure("fat_mass", "Weight of the fatter meat", MASS),
    )
