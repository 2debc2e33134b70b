"""How long does a whole muscle lie in salt? Diffusion to its coldest centre, beside what the trade goes by."""

from __future__ import annotations

import math
from typing import Literal

from attrs import frozen

from core.mix import diffusion
from core.quantities import DAYS, DIFFUSIVITY, FRACTION, LENGTH, RATIO, TEMPERATURE, Amount
from core.refusals import Missing, OutOfRange, require_between
from core.roots import begins
from core.sentence import Message, Sentence, Value
from core.sources import CRANK, SALT_DIFFUSIVITY
from core.working import Figure

Shape = Literal["slab", "cylinder", "block"]
SHAPES: dict[str, Message] = {
    "slab": "flat, much wider than thick",
    "cylinder": "round and long",
    "block": "thick and wide, salted on every side",
}
SaltingMethod = Literal["weighed", "excess"]
SALTING_METHODS: dict[str, Message] = {
    "weighed": "weighed salt, sealed in a bag",
    "excess": "buried in salt, or in plenty of brine",
}

# From memory; Hansen et al. 2008 measured 3 to 7e-10 in pork. The slow end is what a safe day rests on.
TYPICAL_M2_S, SLOW_M2_S, FAST_M2_S = 2.0e-10, 1.3e-10, 7.0e-10
AT_C = 3.0
ACTIVATION_J_MOL = 19_000.0  # of salt in water, from memory; no figure for meat was found
GAS_CONSTANT = 8.314462618
ZERO_C = 273.15

COLDEST_C, WARMEST_C = 0.0, 15.0
"""Below, the meat begins to freeze, between −1 and −2 °C (from memory): no diffusivity was found for it."""
LEAST_C, MOST_C = 20 / 9, 40 / 9
"""36 and 40 °F: USDA Farmers' Bulletin and VT 458-223, read in copies."""

NEVER_WARM: Message = (
    "Keep it between 2 and 4 °C (36 and 40 °F) until the salt is through: warmer, it may spoil inside first."
)
TOO_COLD: Message = (
    "The official methods count no day in salt below 2 °C (36 °F). These days follow from the diffusivity alone."
)
NOT_KNOWN_FROZEN = (
    "How fast salt moves in meat below 0 °C (32 °F) is not known: near −2 °C it begins to freeze, and no such day is "
    "counted. Enter the temperature of its days above freezing."
)
NOT_THROUGH: Message = (
    "The middle has not its salt yet. Unsalted in the middle is where meat spoils, and where botulism begins, once it "
    "hangs warm: leave it in the salt, or let it rest below 4 °C (40 °F) until the salt is through."
)
MODEL: Message = (
    "Meat is no slab: fat, skin, bone and seams slow the salt down, and a frozen and thawed piece takes it up about a "
    "third faster. The spread is that of published diffusivities."
)


@frozen
class Piece:
    """thickness_m: the least way through, or the diameter of a round piece. width_m, length_m: of a block; a length
    that is not given is taken to be long. 1 mm to 1 m."""

    shape: Shape
    thickness_m: float
    width_m: float | None = None
    length_m: float | None = None

    @property
    def half_sides_m(self) -> tuple[float, ...]:
        """Half of each way from face to face that counts."""
        if self.shape != "block":
            return (self.thickness_m / 2,)
        return tuple(side / 2 for side in (self.thickness_m, self.width_m, self.length_m) if side is not None)


def diffusivity(temperature_c: float, at_3_c: float = TYPICAL_M2_S) -> float:
    """m²/s of salt in lean meat. temperature_c: 0 to 15; below, it is not known. Raises OutOfRange on
    "temperature_c"."""
    if temperature_c < COLDEST_C:
        raise OutOfRange("temperature_c", NOT_KNOWN_FROZEN)
    if not COLDEST_C <= temperature_c <= WARMEST_C:
        ends = {"low": Amount(COLDEST_C, TEMPERATURE), "high": Amount(WARMEST_C, TEMPERATURE)}
        raise OutOfRange("temperature_c", Sentence("The temperature must be between {low} and {high}.", ends))
    warmer = 1 / (AT_C + ZERO_C) - 1 / (temperature_c + ZERO_C)
    return at_3_c * math.exp(ACTIVATION_J_MOL / GAS_CONSTANT * warmer)


def centre_share(piece: Piece, method: SaltingMethod, d_m2_s: float, lasts_s: float) -> float:
    """Salt at the centre as a share of what it comes to in the end: 0 to 1.

    method "excess": the surface is held constant; finite sides multiply. "weighed": a fixed amount lies on all faces
    and none leaves; each pair of faces carries salt by its area, and their shares add up.
    """
    _require_piece(piece)
    numbers = [d_m2_s * lasts_s / half**2 for half in piece.half_sides_m]
    if method == "excess":
        if piece.shape == "cylinder":
            return 1 - diffusion.cylinder_centre(numbers[0])
        return 1 - math.prod(diffusion.slab_centre(fo) for fo in numbers)
    if piece.shape == "cylinder":
        return diffusion.sealed_cylinder_centre(numbers[0])
    areas = [1 / half for half in piece.half_sides_m]
    parts = zip(areas, numbers, strict=True)
    return math.fsum(area * diffusion.sealed_slab_centre(fo) for area, fo in parts) / math.fsum(areas)


def mean_share(piece: Piece, d_m2_s: float, lasts_s: float) -> float:
    """Salt taken up in plenty of it, the surface held constant, as a share of what it comes to in the end: 0 to 1."""
    _require_piece(piece)
    numbers = [d_m2_s * lasts_s / half**2 for half in piece.half_sides_m]
    if piece.shape == "cylinder":
        return 1 - diffusion.cylinder_mean(numbers[0])
    return 1 - math.prod(diffusion.slab_mean(fo) for fo in numbers)


def time_to(piece: Piece, method: SaltingMethod, d_m2_s: float, share: float) -> float:
    """Seconds until the centre has that share of its end. share: 0.01 to 0.99. Raises OutOfRange on "centre_share"."""
    if not 0.01 <= share <= 0.99:
        raise OutOfRange("centre_share", "The share must be between 1 and 99 %.")
    _require_piece(piece)
    high = max(piece.half_sides_m) ** 2 / d_m2_s
    while centre_share(piece, method, d_m2_s, high) < share:
        high *= 2
    return begins(lambda after_s: centre_share(piece, method, d_m2_s, after_s) >= share, 0.0, high)


def equalised(piece: Piece, method: SaltingMethod, temperature_c: float, share: float) -> tuple[Figure, ...]:
    """Days until the centre has the chosen share of its end, with the spread of published diffusivities; and how fast
    salt moves. Raises OutOfRange on the piece's sides, "temperature_c" or "centre_share"."""
    typical, slow, fast = (diffusivity(temperature_c, each) for each in (TYPICAL_M2_S, SLOW_M2_S, FAST_M2_S))
    lasts_s = time_to(piece, method, typical, share)
    days = Figure(
        "equalised",
        "Days until the centre has its salt",
        lasts_s,
        DAYS,
        _working(piece, method, typical, share, lasts_s),
        CRANK,
        (*_cold_cautions(temperature_c), MODEL),
        time_to(piece, method, fast, share),
        time_to(piece, method, slow, share),
    )
    return days, _diffusivity_figure(temperature_c, typical, slow, fast)


def at_the_centre(piece: Piece, method: SaltingMethod, temperature_c: float, lasted_s: float, wanted: float) -> Figure:
    """Salt at the centre after that time as a share of its end, with the spread of published diffusivities; with a
    caution while it is less than the share wanted. Raises as `equalised` does."""
    ds = tuple(diffusivity(temperature_c, each) for each in (TYPICAL_M2_S, SLOW_M2_S, FAST_M2_S))
    share, slow, fast = (centre_share(piece, method, each, max(lasted_s, 0.0)) for each in ds)
    half = piece.half_sides_m[0]
    amounts = {
        "d": Amount(ds[0], DIFFUSIVITY),
        "time": Amount(lasted_s, DAYS),
        "half": Amount(half, LENGTH),
        "fo": Amount(ds[0] * lasted_s / half**2, RATIO),
        "share": Amount(share, FRACTION),
    }
    step = Sentence("{d} × {time} ÷ ({half})² = {fo}; there Crank's series gives the centre {share}", amounts)
    cautions = (NOT_THROUGH,) if share < wanted else ()
    return Figure("centre", "Salt at the centre by now", share, FRACTION, (step,), CRANK, cautions, slow, fast)


def _working(piece: Piece, method: SaltingMethod, d_m2_s: float, share: float, lasts_s: float) -> tuple[Sentence, ...]:
    half = piece.half_sides_m[0]
    amounts = {
        "d": Amount(d_m2_s, DIFFUSIVITY),
        "half": Amount(half, LENGTH),
        "share": Amount(share, FRACTION),
        "fo": Amount(d_m2_s * lasts_s / half**2, RATIO),
        "time": Amount(lasts_s, DAYS),
    }
    told: dict[str, Value] = {
        **amounts,
        "way": Sentence("radius" if piece.shape == "cylinder" else "half-thickness"),
        "ends": Sentence("the surface" if method == "excess" else "the mean"),
    }
    return (
        Sentence("The centre has {share} of {ends} at {d} × time ÷ {way}² = {fo}, by Crank's series", told),
        Sentence("{fo} × ({half})² ÷ {d} = {time}", amounts),
    )


def _diffusivity_figure(temperature_c: float, typical: float, slow: float, fast: float) -> Figure:
    amounts = {
        "base": Amount(TYPICAL_M2_S, DIFFUSIVITY),
        "at": Amount(AT_C, TEMPERATURE),
        "now": Amount(temperature_c, TEMPERATURE),
        "d": Amount(typical, DIFFUSIVITY),
    }
    step = Sentence("{base} at {at}, carried to {now} with 19 kJ/mol (salt in water, from memory) = {d}", amounts)
    return Figure("diffusivity", "How fast salt moves", typical, DIFFUSIVITY, (step,), SALT_DIFFUSIVITY, (), slow, fast)


def _cold_cautions(temperature_c: float) -> tuple[Message, ...]:
    if temperature_c > MOST_C + 0.05:
        return (NEVER_WARM,)
    return (TOO_COLD,) if temperature_c < LEAST_C - 0.05 else ()


def centre_curve(
    piece: Piece, method: SaltingMethod, d_m2_s: float, until_s: float, points: int = 41
) -> list[tuple[float, float]]:
    """The share at the centre against seconds, from the start on: what the chart draws."""
    times = [until_s * each / (points - 1) for each in range(points)]
    return [(lasts_s, centre_share(piece, method, d_m2_s, lasts_s)) for lasts_s in times]


SIDES: dict[str, Message] = {"thickness_m": "The thickness", "width_m": "The width", "length_m": "The length"}


def require_width(shape: Shape, width_m: float | None) -> None:
    if shape == "block" and width_m is None:
        raise Missing("width_m", "Enter the width of the block, for example 120 mm.")


def _require_piece(piece: Piece) -> None:
    require_width(piece.shape, piece.width_m)
    for field, side in (("thickness_m", piece.thickness_m), ("width_m", piece.width_m), ("length_m", piece.length_m)):
        if side is not None:
            require_between(field, SIDES[field], side, 0.001, 1.0, LENGTH)
