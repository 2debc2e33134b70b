"""A formula: meats and fats as shares of the meat block, everything else as a part of the meat block.

It holds for any batch size. What a kilogram of meat takes is said here; `core.mix.scaling` says how much meat.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from attrs import field, frozen

from core.meat import MOST_LOSS, USUAL_LOSS, Style
from core.mix.curing_salt import CuringSalt
from core.mix.formula_boxes import MEAT_FAT, MEAT_SHARE, MOST_PER_MEAT
from core.mix.measures import CURE_SHARE, GRAMS_PER_MEAT
from core.quantities import CURE_MASS, DOSE_MASS, FRACTION, PIECE_MASS, Quantity, never_up
from core.refusals import Missing, OutOfRange
from core.sentence import Message, Sentence, listed

Role = Literal["salt", "cure", "sugar", "water", "spice", "culture", "other"]
ROLES: Mapping[Role, Message] = {
    "salt": "salt",
    "cure": "curing salt",
    "sugar": "sugar",
    "water": "water, ice or wine",
    "spice": "spice or herb",
    "culture": "starter culture",
    "other": "something else",
}
ALIKE = 1e-9


@frozen
class Meat:
    """share: of the meat block, 0 to 1. fat: of this meat, 0 to 1. cut: number of its row in `composition.CUTS`."""

    name: str
    share: float
    fat: float
    cut: str
    price_per_kg: float | None = None


@frozen
class Ingredient:
    """per_meat: kilograms to a kilogram of the meat block. in_grams: its maker thinks of it in g/kg, not in per-cent.

    nitrite, nitrate: fractions by the label, for a curing salt only.
    """

    name: str
    role: Role
    per_meat: float
    in_grams: bool = False
    nitrite: float = 0.0
    nitrate: float = 0.0
    price_per_kg: float | None = None

    @property
    def measure(self) -> Quantity:
        """What its part of the meat is shown in; a cure's is never rounded up."""
        if self.role == "cure":
            return never_up(GRAMS_PER_MEAT) if self.in_grams else CURE_SHARE
        return GRAMS_PER_MEAT if self.in_grams else FRACTION

    @property
    def curing_salt(self) -> CuringSalt:
        return CuringSalt(self.nitrite, self.nitrate)


FORMULA_CAUTIONS: Mapping[str, Message] = {
    "law-first": (
        "An example, not an approved recipe: the law where you are and the label of your curing salt come first."
    ),
    "raw-pork": (
        "Pork that is never heated can carry trichinella: use certified or frozen meat, or salt and dry by the rule."
    ),
    "acid-in-time": "It must be acid in time: read the pH twice a day and keep the warm hours within the rule.",
    "beef": ("Beef can carry E. coli that drying alone does not kill: ask a food-safety authority which step must."),
    "stays-moist": (
        "It stays moist: it is not shelf-stable. Keep it below 5 °C, eat it within days, and not in pregnancy or "
        "illness."
    ),
    "whole-piece": "Salt needs time to reach the middle: it rests in the cold until it has, before it hangs.",
    "keep-cold": "Brine and meat stay below 5 °C the whole time; throw the brine away after use.",
    "bacon": "Cooked as bacon it has limits of its own, and takes no nitrate in the US.",
}
"""What an example warns of, by the key that a formula keeps: a key once in use stays."""
CAUTION_TO_COME: Message = "A newer daybook gave this formula a caution that is not known here: read it there."


@frozen
class Formula:
    """What the journal keeps of a formula: fields may be added, with a default; none is renamed.

    target_loss: the share of its start weight a piece is to lose. least_s: least time hanging. brined: the
    meat lies in a brine of the ingredients, which stays in the tub. casing_m: diameter and length of one casing.
    cautions: what the example it was taken from warns of, keys of FORMULA_CAUTIONS.
    """

    name: str
    style: Style
    meats: tuple[Meat, ...]
    ingredients: tuple[Ingredient, ...] = ()
    target_loss: float = USUAL_LOSS
    least_s: float | None = None
    brined: bool = False
    casing_diameter_m: float | None = None
    casing_length_m: float | None = None
    note: str = ""
    cautions: tuple[str, ...] = field(default=(), converter=tuple[str, ...])

    @property
    def warnings(self) -> tuple[Message, ...]:
        """Its cautions in words; one that a newer daybook gave it is not known here."""
        return tuple(FORMULA_CAUTIONS.get(key, CAUTION_TO_COME) for key in self.cautions)

    def __attrs_post_init__(self) -> None:
        if not self.name.strip():
            raise Missing("name", "Enter the name, for example Juniper coarse.")
        if not self.meats:
            raise Missing("shares", "A formula needs at least one meat.")
        for meat in self.meats:
            _require_meat(meat)
        for ingredient in self.ingredients:
            _require_ingredient(ingredient)
        if abs(sum(meat.share for meat in self.meats) - 1) > ALIKE:
            raise OutOfRange("shares", "The shares of the meats must make 100 % together.")
        if sum(each.role == "cure" for each in self.ingredients) > 1:
            raise OutOfRange("parts", "A formula takes one curing salt: two are too easily added twice.")
        if not 0 <= self.target_loss <= MOST_LOSS:
            raise OutOfRange("target_loss", "The loss to reach must be between 0 and 75 %.")

    @property
    def fat(self) -> float:
        """Fat of the meat block, 0 to 1."""
        return sum(meat.share * meat.fat for meat in self.meats)

    @property
    def cure(self) -> Ingredient | None:
        return next((each for each in self.ingredients if each.role == "cure"), None)


def _require_meat(meat: Meat) -> None:
    if not meat.name.strip():
        raise Missing("shares", "Every meat needs a name.")
    if not MEAT_SHARE.low <= meat.share <= MEAT_SHARE.high + ALIKE:
        told = Sentence("The share of {meat} must be between 0 and 100 %.", {"meat": meat.name})
        raise OutOfRange("shares", told)
    if not MEAT_FAT.low <= meat.fat <= MEAT_FAT.high:
        told = Sentence("The fat of {meat} must be between 0 and 100 %.", {"meat": meat.name})
        raise OutOfRange("shares", told)


def _require_ingredient(each: Ingredient) -> None:
    if not each.name.strip():
        raise Missing("parts", "Every ingredient needs a name.")
    if each.role not in ROLES:
        told = {"name": each.name, "roles": listed([Sentence(role) for role in ROLES.values()], "or")}
        raise OutOfRange("parts", Sentence("What {name} is must be one of: {roles}.", told))
    if not 0 <= each.per_meat <= MOST_PER_MEAT:
        told = Sentence("{name} must be between 0 and 200 % of the meat.", {"name": each.name})
        raise OutOfRange("parts", told)
    if each.role == "cure":
        CuringSalt(each.nitrite, each.nitrate)  # refuses what no curing salt is


@frozen
class Portion:
    """One row of the formula at a batch's size. key: "meat-1", "part-2": its place in its version of the formula."""

    key: str
    name: str
    role: Role | Literal["meat"]
    share: float
    mass_kg: float
    price_per_kg: float | None

    @property
    def measure(self) -> Quantity:
        """Meats as a kitchen scale shows them; the rest in grams in either system, a cure's never rounded up."""
        return PIECE_MASS if self.role == "meat" else CURE_MASS if self.role == "cure" else DOSE_MASS


def portions(formula: Formula, meat_kg: float) -> tuple[Portion, ...]:
    """Every row for so much meat, in the order it is weighed."""
    meats = (
        Portion(f"meat-{at}", each.name, "meat", each.share, each.share * meat_kg, each.price_per_kg)
        for at, each in enumerate(formula.meats, 1)
    )
    others = (
        Portion(f"part-{at}", each.name, each.role, each.per_meat, each.per_meat * meat_kg, each.price_per_kg)
        for at, each in enumerate(formula.ingredients, 1)
    )
    return (*meats, *others)
