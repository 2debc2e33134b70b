"""What the single sum of the last day asks, and of which kinds of meat it asks it."""

from __future__ import annotations

from collections.abc import Mapping

from core.meat import MOST_LOSS, STYLES, USUAL_LOSS, Style
from core.mix.rule import EVERY, METHODS
from core.mix.rules import BEFORE_2025, RULE_SETS, products_for
from core.mix.salting import COLDEST_C, SALTING_METHODS, SHAPES, WARMEST_C
from core.quantities import DAYS, FRACTION, LENGTH, LOSS, MASS, PARTS_PER_MILLION, PH, PIECE_MASS, TEMPERATURE
from core.quantities import WATER_ACTIVITY as ACTIVITY
from core.release.contradictions import LEAST_PPM, LEAST_SALT, SERIES
from core.release.evidence import SIGNS
from core.release.salted import WAYS
from core.sentence import Message, Said, Sentence
from core.units import DAY_S
from core.worksheet import Choice, Number

NOT_KNOWN = "not-known"
NO_SIGN, NOT_LOOKED = "none", "not-looked"
LONGEST_S = 3650 * DAY_S
FERMENTATIONS: dict[str, Message] = {
    NOT_KNOWN: "not known",
    "passed": "stayed below the limit",
    "over": "reached the limit",
    "cleared": "reached the limit, then tested clean and cleared",
    "condemned": "decided to throw it away, or a test found something",
}
MEATS: dict[str, Message] = {
    NOT_KNOWN: "not known",
    "none": "no pork, no game, no horse",
    "tested": "tested or certified, the paper at hand",
    "shown": "pork, frozen or cured as long as its sum asks",
    "pork": "pork, nothing proves it",
    "game": "game or horse, not tested",
}


def _rules() -> dict[str, Said]:
    """Every product of every rule set, and those of the EU's rows that have ended."""
    found: dict[str, Said] = {NOT_KNOWN: "not chosen yet"}
    for rules, each in RULE_SETS.items():
        ended: dict[str, Message] = {}
        for method in EVERY:
            ended |= products_for(rules, method, BEFORE_2025)
        found |= {f"{rules}:{key}": _row(ROW, each.name, name) for key, name in each.products.items()}
        if any(rule.until is not None for rule in each.rules):
            found |= {f"{rules}-old:{key}": _row(ENDED_ROW, each.name, name) for key, name in ended.items()}
    return found


ROW: Message = "{rules}, {product}"
ENDED_ROW: Message = "{rules} until 9 October 2025, {product}"


def _row(words: Message, rules: Message, product: Message) -> Sentence:
    return Sentence(words, {"rules": Sentence(rules), "product": Sentence(product)})


def _ppm(key: str, label: Message, help_: Message) -> Number:
    return Number(key, label, PARTS_PER_MILLION, LEAST_PPM * 1e-6, 0.01, optional=True, help=help_, or_zero=True)


ALKALI_SALTS: dict[str, Message] = {"sodium": "sodium salts", "potassium": "potassium salts"}
_SIDE = (LENGTH, 0.005, 1.0)
_COLD = (TEMPERATURE, COLDEST_C - 18.0, WARMEST_C + 30.0)
_MUSCLE = "Only of a whole muscle."

CURE_INPUTS = (
    Choice("rules", "Rules and product", _rules(), default=NOT_KNOWN, listed=True),
    Choice(
        "method",
        "Way of curing",
        {NOT_KNOWN: "not chosen yet", **METHODS},
        default=NOT_KNOWN,
    ),
    _ppm("nitrite", "Nitrite that went in", "As sodium nitrite, from the weighing sheet; 0 if none was used."),
    _ppm("nitrate", "Nitrate that went in", "As sodium nitrate, from the weighing sheet; 0 if none was used."),
    Choice("alkali", "Nitrite and nitrate are", ALKALI_SALTS, default="sodium"),
    Number(
        "besides",
        "All else in the mix",
        FRACTION,
        0.0,
        2.0,
        optional=True,
        help="To the green weight; only where the rules count on the whole mixture, as Canada's do. Empty: none.",
    ),
    _ppm("accelerator", "Ascorbate or erythorbate", "Empty if none was used."),
    Number(
        "salt",
        "All salt that went in",
        FRACTION,
        LEAST_SALT,
        0.2,
        optional=True,
        help="To the green weight; of a slow sausage or a whole muscle.",
        or_zero=True,
    ),
)
SALT_INPUTS = (
    Choice("salted", "Salted", {NOT_KNOWN: "not known", **SALTING_METHODS}, default=NOT_KNOWN, help=_MUSCLE),
    Choice("shape", "Shape", {NOT_KNOWN: "not known", **SHAPES}, default=NOT_KNOWN, help=_MUSCLE),
    Number(
        "thickness_m",
        "Thickness",
        *_SIDE,
        optional=True,
        help="Of a whole muscle as it went into salt: the least way through, or its diameter.",
    ),
    Number("width_m", "Width", *_SIDE, optional=True, help="Only of a thick and wide piece."),
    Number("length_m", "Length", *_SIDE, optional=True, help="Only of a thick and wide piece."),
    Number(
        "in_salt",
        "Days in the cold",
        DAYS,
        0.0,
        LONGEST_S,
        optional=True,
        help="From the first salt until it was hung.",
    ),
    Number(
        "rested",
        "Of these, without salt",
        DAYS,
        0.0,
        LONGEST_S,
        optional=True,
        help="At rest, after plenty of salt was taken off; 0 if it did not rest.",
    ),
    Number("coldest_c", "Coldest by then", *_COLD, optional=True, help=_MUSCLE),
    Number("warmest_c", "Warmest by then", *_COLD, optional=True, help=_MUSCLE),
    Choice("way", "Days by", WAYS, default="diffusion", help=_MUSCLE),
    Number("mass_kg", "Heaviest ham", MASS, 0.05, 60.0, optional=True, help="Only for US ham method 3."),
)
INPUTS = (
    Choice("style", "Kind", STYLES),
    Number("start_kg", "Start weight", PIECE_MASS, 0.001, 999.0, optional=True),
    Number("now_kg", "Weight now", PIECE_MASS, 0.001, 999.0, optional=True),
    Number("target_loss", "Target loss", LOSS, 0.01, MOST_LOSS, default=USUAL_LOSS, optional=True),
    Number("hung", "Time hanging", DAYS, 0.0, LONGEST_S, optional=True),
    Number("least", "Least time hanging", DAYS, 0.0, LONGEST_S, optional=True),
    Number("water_activity", "Water activity", ACTIVITY, 0.3, 1.0, optional=True),
    Choice(
        "measured_on",
        "Water activity of",
        {"piece": "this piece", "mate": "a piece of the same batch that had lost no more"},
        default="piece",
    ),
    Number(
        "activity_loss",
        "Loss when measured",
        LOSS,
        0.0,
        MOST_LOSS,
        optional=True,
        help="Of the piece the water activity is of. Empty: as this one now.",
    ),
    Number("lowest_ph", "Lowest pH", PH, 3.5, 8.0, optional=True, help="Of a sausage, while it fermented."),
    Number("last_ph", "Latest pH", PH, 3.5, 8.0, optional=True, help="Mould lets the pH rise again."),
    Choice(
        "fermentation",
        "Degree-hours",
        FERMENTATIONS,
        default=NOT_KNOWN,
        help="To pH 5.3; of a slow sausage, of its warm days. A whole muscle has none.",
    ),
    *CURE_INPUTS,
    *SALT_INPUTS,
    Choice(
        "meat",
        "Meat, and its proof against trichinella",
        MEATS,
        default=NOT_KNOWN,
        listed=True,
        help="The sums “Frozen pork” and “Cured pork” say how long.",
    ),
    Choice(
        "contradicted",
        "Does what you noted contradict itself?",
        {"none": "no", **SERIES},
        default="none",
    ),
    Choice(
        "signs",
        "Signs of spoilage",
        {NOT_LOOKED: "not looked yet", NO_SIGN: "none found", **SIGNS},
        default=NOT_LOOKED,
        help="One is enough to throw it away.",
    ),
)

_SAUSAGE: tuple[Style, ...] = ("fermented", "slow")
_WHOLE: tuple[Style, ...] = ("whole-muscle",)
BELONGS: Mapping[str, tuple[Style, ...]] = {
    "lowest_ph": _SAUSAGE,
    "fermentation": _SAUSAGE,
    "salt": ("slow", "whole-muscle"),
    **{each.key: _WHOLE for each in SALT_INPUTS},
}
"""What only some kinds of meat are asked. Typed for another it is refused: it would weigh nothing."""
