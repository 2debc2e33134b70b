"""A formula as it is typed: its rows may grow and shrink while one writes, and nothing typed is lost on the way.

Rows carry a number of their own that stays when another is removed. An empty row is no row.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping

from attrs import evolve, frozen
from werkzeug.datastructures import MultiDict

from core.daybook.facts.batch import LEAST, TARGET_LOSS
from core.meat import STYLES
from core.mix import formula_boxes as boxes
from core.mix.composition import CUTS
from core.mix.curing_salt import STRENGTH, CuringSalt
from core.mix.formula import ROLES, Formula, Ingredient, Meat
from core.mix.formula_boxes import FAT_WANTED
from core.mix.measures import PER_MEAT, PRICE
from core.mix.pearson import shares_for
from core.quantities import DAYS, FRACTION, LENGTH, LOSS, Amount, Quantity, Reader, never_up
from core.refusals import Missing, OutOfRange, Refusal, Refused
from core.sentence import Rounded, Sentence, said
from core.worksheet import Choice, Number
from web.forms import Form, Input, Ticks, Values, Words, from_request, typed
from web.screens.mix.cure_shape import strength_said

MOST_ROWS = 40
ROUNDED = 0.0015
"""Thirds typed as 33.3 % make 99.9 %: so near they are taken for the whole."""
USUAL_CUT = "10072"
NEW: dict[str, str] = {"target_loss": "35", "meat-1-cut": USUAL_CUT, "part-1-role": "salt"}

HEAD: tuple[Input, ...] = (
    Words("name", "Name", example="Juniper coarse"),
    evolve(TARGET_LOSS, low=0.0, default=None),
    Choice("style", "Kind", STYLES, listed=True),
)
SELDOM: tuple[Input, ...] = (
    Ticks("brined", "Brine", {"brined": "The meat lies in a brine of the ingredients"}),
    LEAST,
    boxes.CASING_DIAMETER,
    boxes.CASING_LENGTH,
)
"""Of the formula as a whole: those that stand there, and those that are folded until one is filled."""
NOTE = Words("note", "Note", 400, optional=True)


@frozen
class Row:
    """One row of the form. number: its own, in its inputs' keys. title: what a screen reader calls it."""

    kind: str
    number: int
    inputs: tuple[Input, ...]

    @property
    def prefix(self) -> str:
        return f"{self.kind}-{self.number}"

    def __getitem__(self, field: str) -> Input:
        return next(each for each in self.inputs if each.key == f"{self.prefix}-{field}")


@frozen
class Draft:
    """The form as it stands with its rows."""

    form: Form
    meats: tuple[Row, ...]
    parts: tuple[Row, ...]

    @property
    def has_cure(self) -> bool:
        return any(self.form.text(f"{row.prefix}-role") == "cure" for row in self.parts)


def _at_row(at: str, box: Number) -> Number:
    return evolve(box, key=f"{at}-{box.key}")


def _meat_row(number: int) -> Row:
    at = f"meat-{number}"
    cuts = {ndb: said(cut.name) for ndb, cut in CUTS.items()}
    return Row(
        "meat",
        number,
        (
            Words(f"{at}-name", "Meat or fat", example="Pork shoulder"),
            _at_row(at, boxes.MEAT_SHARE),
            _at_row(at, boxes.MEAT_FAT),
            Choice(f"{at}-cut", "Most like", cuts),
            _at_row(at, boxes.PRICE_A_KG),
        ),
    )


def _part_row(number: int, is_cure: bool) -> Row:
    at = f"part-{number}"
    label = (_at_row(at, boxes.NITRITE), _at_row(at, boxes.NITRATE))
    return Row(
        "part",
        number,
        (
            Words(f"{at}-name", "Ingredient", example="Black pepper"),
            Choice(f"{at}-role", "What it is", {**ROLES}),
            _at_row(at, boxes.DOSE),
            *(label if is_cure else ()),
            _at_row(at, boxes.PRICE_A_KG),
        ),
    )


def _numbers(given: Iterable[str], kind: str) -> list[int]:
    found = {int(match[1]) for key in given if (match := re.fullmatch(rf"{kind}-([0-9]{{1,3}})-[a-z]+", key))}
    return sorted(found)[:MOST_ROWS]


def draft(given: MultiDict[str, str] | Mapping[str, str], token: str) -> Draft:
    """The form with the rows that were sent or are to be drawn."""
    meats = tuple(_meat_row(number) for number in _numbers(given, "meat"))
    parts = tuple(_part_row(number, given.get(f"part-{number}-role") == "cure") for number in _numbers(given, "part"))
    inputs = (*HEAD, *(each for row in (*meats, *parts) for each in row.inputs), *SELDOM, NOTE, FAT_WANTED)
    return Draft(from_request(inputs, MultiDict(given), token), meats, parts)


def read_formula(drawn: Draft, how: Reader, cautions: tuple[str, ...]) -> Formula:
    """The formula that was typed. Raises Refused with a sentence for each box that cannot stand."""
    meats = [row for row in drawn.meats if not _is_empty(drawn.form, row)]
    parts = [row for row in drawn.parts if not _is_empty(drawn.form, row)]
    asked = (*HEAD, *(each for row in (*meats, *parts) for each in row.inputs), *SELDOM, NOTE)
    values = evolve(drawn.form, inputs=asked).read(how)
    if not meats:
        raise Refused([Missing(f"{drawn.meats[0].prefix}-name" if drawn.meats else "", "Enter at least one meat.")])
    try:
        return Formula(
            name=values["name"],
            style=values["style"],
            meats=_whole([_meat(row, values) for row in meats], meats[-1]),
            ingredients=tuple(_ingredient(row, values, drawn.form) for row in parts),
            target_loss=values["target_loss"],
            least_s=values["least_s"],
            brined=bool(values["brined"]),
            casing_diameter_m=values["casing_diameter_m"],
            casing_length_m=values["casing_length_m"],
            note=values["note"],
            cautions=cautions,
        )
    except Refusal as refusal:
        field = {"shares": f"{meats[0].prefix}-share", "parts": f"{parts[0].prefix}-name" if parts else ""}
        raise Refused([OutOfRange(field.get(refusal.field, refusal.field), refusal.said)]) from refusal


def _is_empty(form: Form, row: Row) -> bool:
    typed_ = (each for each in row.inputs if not isinstance(each, Choice))
    return not any(form.text(each.key).strip() for each in typed_)


def _meat(row: Row, values: Values) -> Meat:
    typed_ = _of_row(row, values)
    return Meat(typed_["name"], typed_["share"], _fat(typed_), typed_["cut"], typed_["price"])


def _of_row(row: Row, values: Values) -> Values:
    """The row's values under the names of its columns."""
    at = f"{row.prefix}-"
    return {key.removeprefix(at): value for key, value in values.items() if key.startswith(at)}


def _fat(meat: Values) -> float:
    """As typed, 0 to 1; where the box is empty the cut's own."""
    return CUTS[meat["cut"]].fat / 100 if meat["fat"] is None else meat["fat"]


def _whole(meats: list[Meat], last: Row) -> tuple[Meat, ...]:
    total = math.fsum(meat.share for meat in meats)
    if abs(total - 1) > ROUNDED:
        made = {"total": Rounded(Amount(total, FRACTION))}
        told = Sentence("The shares of the meats make {total} together; they must make 100 %.", made)
        raise OutOfRange(f"{last.prefix}-share", told)
    return tuple(evolve(meat, share=meat.share / total) for meat in meats)


def _ingredient(row: Row, values: Values, form: Form) -> Ingredient:
    typed_ = _of_row(row, values)
    unit = f"{form.text(f'{row.prefix}-dose')} {form.text(f'{row.prefix}-dose-unit')}"
    is_cure = typed_["role"] == "cure"
    if is_cure and typed_["nitrite"] is None:
        raise Missing(f"{row.prefix}-nitrite", "Enter the nitrite on the label, or 0 if there is none.")
    nitrite, nitrate = (typed_["nitrite"], typed_["nitrate"] or 0.0) if is_cure else (0.0, 0.0)
    try:
        if is_cure:
            CuringSalt(nitrite, nitrate)
    except Refusal as refusal:
        raise OutOfRange(f"{row.prefix}-{refusal.field}", refusal.said) from refusal
    return Ingredient(
        typed_["name"],
        typed_["role"],
        typed_["dose"],
        in_grams="g/kg" in unit and "%" not in form.text(f"{row.prefix}-dose"),
        price_per_kg=typed_["price"],
        nitrite=nitrite,
        nitrate=nitrate,
    )


def texts_of(formula: Formula, how: Reader) -> dict[str, str]:
    """The formula as one would have typed it."""
    texts = {
        "name": formula.name,
        "style": formula.style,
        "brined": "brined" if formula.brined else "",
        "target_loss": typed(formula.target_loss, LOSS, how),
        "least_s": typed(formula.least_s, DAYS, how),
        "casing_diameter_m": typed(formula.casing_diameter_m, LENGTH, how),
        "casing_length_m": typed(formula.casing_length_m, LENGTH, how),
        "note": formula.note,
    }
    for number, meat in enumerate(formula.meats, 1):
        texts |= {
            f"meat-{number}-name": meat.name,
            f"meat-{number}-share": typed(meat.share, FRACTION, how),
            f"meat-{number}-fat": typed(meat.fat, FRACTION, how),
            f"meat-{number}-cut": meat.cut,
            f"meat-{number}-price": typed(meat.price_per_kg, PRICE, how),
        }
    for number, each in enumerate(formula.ingredients, 1):
        texts |= {
            f"part-{number}-name": each.name,
            f"part-{number}-role": each.role,
            f"part-{number}-dose": typed(each.per_meat * (10 if each.in_grams else 1), _dose_measure(each), how),
            f"part-{number}-dose-unit": "g/kg" if each.in_grams else "%",
            f"part-{number}-nitrite": strength_said(each.nitrite, how) if each.role == "cure" else "",
            f"part-{number}-nitrate": typed(each.nitrate, STRENGTH, how) if each.nitrate else "",
            f"part-{number}-price": typed(each.price_per_kg, PRICE, how),
        }
    return texts


def _dose_measure(each: Ingredient) -> Quantity:
    return never_up(PER_MEAT) if each.role == "cure" else PER_MEAT


def with_row(texts: Mapping[str, str], kind: str, how: Reader) -> dict[str, str]:
    """The texts with one more row: a "meat", a "part", or a "cure", which is a part begun with the usual strength."""
    row = "part" if kind == "cure" else kind
    number = max(_numbers(texts, row), default=0) + 1
    empty: dict[str, dict[str, str]] = {
        "meat": {"name": "", "cut": USUAL_CUT},
        "part": {"name": "", "role": "spice", "dose-unit": _last_unit(texts)},
        "cure": {"name": "Curing salt", "role": "cure", "dose-unit": "%", "nitrite": "6.25".replace(".", how.decimal)},
    }
    return dict(texts) | {f"{row}-{number}-{field}": text for field, text in empty[kind].items()}


def _last_unit(texts: Mapping[str, str]) -> str:
    """Of the last dose but the cure's: one who weighs in grams to the kilogram goes on so."""
    rows = [f"part-{number}" for number in _numbers(texts, "part") if texts.get(f"part-{number}-role") != "cure"]
    if not rows:
        return "%"
    typed_ = texts.get(f"{rows[-1]}-dose", "")
    if "%" in typed_ or "g" in typed_:
        return "%" if "%" in typed_ else "g/kg"
    return texts.get(f"{rows[-1]}-dose-unit") or "%"


def without_row(texts: Mapping[str, str], prefix: str) -> dict[str, str]:
    return {key: text for key, text in texts.items() if not key.startswith(f"{prefix}-")}


def with_shares_made_whole(drawn: Draft, how: Reader) -> dict[str, str]:
    """The shares as typed, all by one factor, so that they make 100 %. Raises Refused, or Refusal on no share."""
    _, shares, _ = _mixed(drawn, how)
    if not sum(shares):
        raise Missing(f"{drawn.meats[0].prefix}-share" if drawn.meats else "", "Enter the share of at least one meat.")
    return _with_shares(drawn, [share / sum(shares) for share in shares], how)


def with_shares_for_fat(drawn: Draft, how: Reader) -> dict[str, str]:
    """The shares that make the fat wanted, nearest to those typed. Raises Refused or Refusal."""
    fats, shares, wanted = _mixed(drawn, how)
    if wanted is None:
        example = {"example": FRACTION.example(how)}
        raise Missing("wanted", Sentence("Enter the fat wanted, for example {example}.", example))
    if not sum(shares):
        shares = [1.0 for _ in shares]
    return _with_shares(drawn, shares_for(fats, shares, wanted), how)


def _mixed(drawn: Draft, how: Reader) -> tuple[list[float], list[float], float | None]:
    """Fats, shares and the fat wanted as typed; an empty share is none, an empty fat the cut's own."""
    rows = [row for row in drawn.meats if not _is_empty(drawn.form, row)]
    asked = [*(evolve(row["share"], optional=True) for row in rows), *(row["fat"] for row in rows)]
    cuts = [row["cut"] for row in rows]
    values = evolve(drawn.form, inputs=(*asked, *cuts, FAT_WANTED)).read(how)
    meats = [_of_row(row, values) for row in rows]
    return [_fat(meat) for meat in meats], [meat["share"] or 0.0 for meat in meats], values["wanted"]


def _with_shares(drawn: Draft, shares: Iterable[float], how: Reader) -> dict[str, str]:
    rows = [row for row in drawn.meats if not _is_empty(drawn.form, row)]
    found = dict(drawn.form.texts)
    for row, share in zip(rows, shares, strict=True):
        found[f"{row.prefix}-share"] = typed(share, FRACTION, how)
        found[f"{row.prefix}-share-unit"] = "%"
    return found
