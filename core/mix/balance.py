"""What the raw mix is made of, and what it becomes when water has left it.

Only water leaves while a piece dries: fat, protein, salt and sugar stay, and are a larger share of less.
"""

from __future__ import annotations

import attrs
from attrs import evolve, frozen

from core.mix.composition import CUTS, Cut, made_of
from core.mix.formula import Formula, Ingredient, Meat
from core.quantities import FRACTION, RATIO, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, Value
from core.sources import COMMON_PRACTICE, DEFINITION, USDA_COMPOSITION
from core.traced import traced
from core.working import Figure

PARTS: dict[str, Message] = {
    "water": "Water",
    "fat": "Fat",
    "protein": "Protein",
    "salt": "Salt",
    "sugar": "Sugar",
    "other": "The rest",
}
TABLE_MEAT: Message = "Meat differs from the table’s: a laboratory’s figures of your own meat come before these."
IN_BRINE: Message = (
    "A piece in brine may take up or give off water; here it does neither (common practice; no published source)."
)


@frozen
class Content:
    """Kilograms to a kilogram of the meat block."""

    water: float = 0.0
    fat: float = 0.0
    protein: float = 0.0
    salt: float = 0.0
    sugar: float = 0.0
    other: float = 0.0

    @property
    def total(self) -> float:
        return self.water + self.fat + self.protein + self.salt + self.sugar + self.other

    def plus(self, more: Content, times: float = 1.0) -> Content:
        return Content(*(mine + times * its for mine, its in zip(parts(self), parts(more), strict=True)))


def parts(content: Content) -> tuple[float, ...]:
    return attrs.astuple(content)


def cut_of(meat: Meat) -> Cut:
    """Raises OutOfRange on "cut" for a row this table does not hold."""
    if meat.cut not in CUTS:
        told = {"row": meat.cut, "meat": meat.name}
        raise OutOfRange("cut", Sentence("The table of meats has no row {row} for {meat}. Choose another cut.", told))
    return CUTS[meat.cut]


def _meat(meat: Meat) -> Content:
    made = made_of(cut_of(meat), meat.fat)
    return Content(water=made.water, fat=made.fat, protein=made.protein, other=made.other)


def _ingredient(each: Ingredient) -> Content:
    match each.role:
        case "salt":
            return Content(salt=1.0)
        case "cure":
            salt = each.curing_salt.table_salt
            return Content(salt=salt, other=1 - salt)
        case "sugar":
            return Content(sugar=1.0)
        case "water":
            return Content(water=1.0)
        case _:
            return Content(other=1.0)


def meat_content(formula: Formula) -> Content:
    content = Content()
    for meat in formula.meats:
        content = content.plus(_meat(meat), meat.share)
    return content


def raw(formula: Formula) -> Content:
    """What hangs at first, to a kilogram of meat: the mix, or the brined piece with what it took up.

    In a brine, salt and sugar spread until the water of the brine and of the meat hold alike of them; spices stay out.
    """
    content = meat_content(formula)
    for each in formula.ingredients:
        content = content.plus(_ingredient(each), each.per_meat * uptake(formula, each))
    return content


def uptake(formula: Formula, each: Ingredient) -> float:
    """The share of an ingredient that the piece takes up: all, but for a brine; pure fat has no water to take it up."""
    if not formula.brined:
        return 1.0
    if each.role not in ("salt", "sugar", "cure"):
        return 0.0
    own = meat_content(formula).water
    tub = sum(one.per_meat for one in formula.ingredients if one.role == "water")
    return own / (own + tub) if own else 0.0


def dried(content: Content, loss: float) -> Content:
    """The same after losing a share of its weight, all of it water. Raises OutOfRange on "loss": it holds no more."""
    gone = loss * content.total
    if not 0 <= gone <= content.water * (1 + 1e-12):
        most = Rounded(Amount(content.water / content.total, FRACTION))
        raise OutOfRange(
            "loss",
            Sentence("It holds {most} water: it cannot lose more than that, nor less than nothing.", {"most": most}),
        )
    return evolve(content, water=max(0.0, content.water - gone))


def figures(formula: Formula, loss: float) -> tuple[Figure, ...]:
    """Every part as a share of the whole: raw (its key), and at the loss (key "-dried").

    Then salt in the water and water to protein, likewise. Raises OutOfRange on "loss" or "cut".
    """
    start = raw(formula)
    end = dried(start, loss)
    found: list[Figure] = []
    for key, name in PARTS.items():
        found.append(_raw_share(formula, start, key, name))
        found.append(_dried_share(start, end, loss, key, name))
    for suffix, content in (("", start), ("-dried", end)):
        found.append(_salt_in_water(content, suffix))
        found.extend(_water_to_protein(content, suffix))
    return tuple(found)


def _raw_share(formula: Formula, start: Content, key: str, name: Message) -> Figure:
    steps = [*_meat_steps(formula, key), *_ingredient_steps(formula, key)]
    part, total = getattr(start, key), start.total
    closing = Sentence(
        "Together {part}, of a raw mass of {total} for each part of meat: {part} ÷ {total} = {share}",
        {"part": Amount(part, RATIO), "total": Amount(total, RATIO), "share": Amount(part / total, FRACTION)},
    )
    cautions = (TABLE_MEAT,) if key == "water" else ()
    if formula.brined and key == "water":
        cautions = (*cautions, IN_BRINE)
    return Figure(key, name, part / total, FRACTION, (*steps, closing), USDA_COMPOSITION, cautions)


def _meat_steps(formula: Formula, key: str) -> list[Sentence]:
    steps: list[Sentence] = []
    for meat in formula.meats:
        part = getattr(_meat(meat), key)
        if part > 0:
            made = traced("share", meat.share, FRACTION) * traced("part", part, FRACTION)
            values = {"name": meat.name, "cut": cut_of(meat).name, "row": meat.cut}
            steps.append(made.line(FRACTION, "{name} ({cut}, row {row})", values))
    return steps


def _ingredient_steps(formula: Formula, key: str) -> list[Sentence]:
    steps: list[Sentence] = []
    for each in formula.ingredients:
        part, taken = getattr(_ingredient(each), key), uptake(formula, each)
        if part * taken > 0:
            values: dict[str, Value] = {
                "name": each.name,
                "dose": Amount(each.per_meat, FRACTION),
                "part": Amount(part, FRACTION),
                "taken": Amount(taken, FRACTION),
                "made": Amount(each.per_meat * part * taken, FRACTION),
            }
            brined = "{name}: {dose} × {part} × {taken} taken up = {made}"
            steps.append(Sentence(brined if formula.brined else "{name}: {dose} × {part} = {made}", values))
    return steps


def _dried_share(start: Content, end: Content, loss: float, key: str, name: Message) -> Figure:
    before, after = getattr(start, key) / start.total, getattr(end, key) / end.total
    amounts = {
        "before": Amount(before, FRACTION),
        "loss": Amount(loss, FRACTION),
        "after": Amount(after, FRACTION),
    }
    text = (
        "({before} − {loss}) ÷ (100 % − {loss}) = {after}"
        if key == "water"
        else "{before} ÷ (100 % − {loss}) = {after}"
    )
    return Figure(
        f"{key}-dried",
        Sentence("{part}, dried", {"part": Sentence(name)}),
        after,
        FRACTION,
        (Sentence(text, amounts),),
        DEFINITION,
    )


def _salt_in_water(content: Content, suffix: str) -> Figure:
    share = content.salt / (content.salt + content.water) if content.salt else 0.0
    amounts = {
        "salt": Amount(content.salt / content.total, FRACTION),
        "water": Amount(content.water / content.total, FRACTION),
        "share": Amount(share, FRACTION),
    }
    step = Sentence("Salt ÷ (salt + water): {salt} ÷ ({salt} + {water}) = {share}", amounts)
    caution = "Water activity follows from it only roughly: a meter settles it." if suffix else ""
    return Figure(
        f"brine{suffix}",
        "Salt in the water, dried" if suffix else "Salt in the water, raw",
        share,
        FRACTION,
        (step,),
        DEFINITION,
        (caution,) if caution else (),
    )


def _water_to_protein(content: Content, suffix: str) -> tuple[Figure, ...]:
    if not content.protein:
        return ()
    ratio = content.water / content.protein
    amounts = {
        "water": Amount(content.water / content.total, FRACTION),
        "protein": Amount(content.protein / content.total, FRACTION),
        "ratio": Amount(ratio, RATIO),
    }
    step = Sentence("{water} ÷ {protein} = {ratio}", amounts)
    name = "Water to protein, dried" if suffix else "Water to protein, raw"
    return (Figure(f"moisture-protein{suffix}", name, ratio, RATIO, (step,), COMMON_PRACTICE),)
