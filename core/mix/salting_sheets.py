"""The single sums of salting whole muscle: days until the salt is at the centre, and the least days of the law."""

from __future__ import annotations

from core.mix.salting import SALTING_METHODS, SHAPES, WARMEST_C, Piece, SaltingMethod, Shape, equalised
from core.mix.salting_rules import CUTS, PRODUCTS, Cut, Product, brine_strength, by_rule, minimums, turns
from core.quantities import DAYS, FRACTION, LENGTH, MASS, TEMPERATURE
from core.refusals import Missing
from core.units import DAY_S
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

FROZEN_C = -2.0
"""May be typed, so that the answer is *not known* and not only a bound."""
SIDE = (LENGTH, 0.005, 1.0)
METHOD = Choice("method", "Salted", SALTING_METHODS, default="weighed")
SHAPE = Choice("shape", "Shape", SHAPES, default="slab")
THICKNESS = Number(
    "thickness_m",
    "Thickness",
    *SIDE,
    help="The least way through at the thickest place; of a round piece its diameter.",
)
WIDTH = Number("width_m", "Width", *SIDE, optional=True, help="Only of a thick and wide piece.")
LENGTH_ = Number("length_m", "Length", *SIDE, optional=True, help="Only of a thick and wide piece.")
COLD = Number(
    "temperature_c", "Temperature", TEMPERATURE, FROZEN_C, WARMEST_C, default=3.0, help="Of the refrigerator."
)
SHARE = Number(
    "centre_share",
    "Salt at the centre",
    FRACTION,
    0.01,
    0.99,
    default=0.9,
    help="Share of what it comes to in the end.",
)
PIECE_MASS_KG = Number(
    "mass_kg", "Weight", MASS, 0.05, 60.0, optional=True, help="Of the heaviest piece, for the rules by weight."
)


def salting_figures(
    method: SaltingMethod,
    shape: Shape,
    thickness_m: float,
    width_m: float | None,
    length_m: float | None,
    temperature_c: float,
    centre_share: float,
    mass_kg: float | None,
) -> tuple[Figure, ...]:
    """By diffusion, then by each rule of the trade."""
    piece = Piece(shape, thickness_m, *((width_m, length_m) if shape == "block" else (None, None)))
    figures = equalised(piece, method, temperature_c, centre_share)
    return (*figures, *by_rule(mass_kg, thickness_m), turns(method, figures[0].value / DAY_S))


def _minimums(
    cut: Cut, product: Product, salted_s: float, in_all_s: float, salt: float | None, water: float | None
) -> tuple[Figure, ...]:
    figures = minimums(cut, product, salted_s, in_all_s)
    if salt is None and water is None:
        return figures
    if salt is None or water is None:
        raise Missing("salt" if salt is None else "water", "Enter both the salt and the water, or neither.")
    return (*figures, brine_strength(salt, water))


SALTING = Worksheet(
    name="salting",
    title="Days in salt",
    stage="mix",
    question="How long until the salt has reached the middle of a whole muscle?",
    inputs=(METHOD, SHAPE, THICKNESS, WIDTH, LENGTH_, COLD, SHARE, PIECE_MASS_KG),
    compute=salting_figures,
    example={"method": "weighed", "shape": "slab", "thickness_m": "50 mm", "centre_share": "95 %", "mass_kg": "1.8 kg"},
)
HAM_DAYS = Worksheet(
    name="ham-days",
    title="Least days of a ham or shoulder",
    stage="mix",
    question="Has it been salted, rested and dried as long as the US asks of a country or dry-cured ham?",
    inputs=(
        Choice("cut", "Cut", CUTS, default="ham"),
        Choice("product", "Kind", PRODUCTS, default="country"),
        Number("salted_s", "Days in salt and at rest", DAYS, 0.0, 3650 * DAY_S),
        Number("in_all_s", "Days in all", DAYS, 0.0, 3650 * DAY_S, help="Salting, rest and drying together."),
        Number(
            "salt", "Salt inside", FRACTION, 0.001, 0.5, optional=True, help="Of the finished ham, if it was measured."
        ),
        Number(
            "water",
            "Water inside",
            FRACTION,
            0.001,
            0.9,
            optional=True,
            help="Of the finished ham, if it was measured.",
        ),
    ),
    compute=_minimums,
    example={
        "cut": "ham",
        "product": "country",
        "salted_s": "44 d",
        "in_all_s": "70 d",
        "salt": "5 %",
        "water": "45 %",
    },
)
WORKSHEETS = (SALTING, HAM_DAYS)
