"""Sugar for a wanted pH, as a range: a rule of thumb and the buffer of meat disagree by about two.

The rule says 0.1 pH for a gram of dextrose to the kilogram. All of it turned to lactic acid, against what meat buffers,
makes about twice the fall. In a sausage some sugar is left, some becomes other than acid, and fat buffers nothing.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.meat import ACID_PH
from core.quantities import PH, RATIO, SUGAR_DOSE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import MEAT_BUFFER, SUGAR_RULE
from core.working import Figure

Sugar = Literal["dextrose", "dextrose-water", "sucrose", "lactose"]


@frozen
class Kind:
    """acid_mol_per_kg: lactic acid from a kilogram, all fermented."""

    name: Message
    acid_mol_per_kg: float


SUGARS: dict[Sugar, Kind] = {
    "dextrose": Kind("dextrose, dry", 2 / 0.18016),
    "dextrose-water": Kind("dextrose with its crystal water", 2 / 0.19817),
    "sucrose": Kind("table sugar", 4 / 0.34230),
    "lactose": Kind("lactose, slower", 4 / 0.36031),
}
TO_THE_MEAT: dict[Sugar, Message] = {
    "dextrose": "Dextrose, dry to the meat, between",
    "dextrose-water": "Dextrose with its crystal water to the meat, between",
    "sucrose": "Table sugar to the meat, between",
    "lactose": "Lactose, slower to the meat, between",
}
RULE_PH_PER_SHARE = 0.1 / 0.001
BUFFER_MOL = (0.041, 0.058)
"""mol of acid to the kilogram and pH, the least and the most of six meats."""
NATIVE_SHARE = 0.001  # glucose already in fresh meat, 0.08 to 0.1 %: a trade page, like memory
LOWEST_PH = 4.5  # a sausage sours to 4.5 or 5.0: a cookery book, quoted
BELIEVABLE_START = (5.0, 7.0)

DISAGREE: Message = (
    "The two ends disagree by about two: the rule of thumb is what makers saw, the buffer what all sugar turned to "
    "acid would do. Measure the pH; the sugar only makes it possible."
)
FAT_BUFFERS_NOTHING: Message = "Fat buffers nothing: a fat sausage goes lower on the same sugar."


def sugar_for(start_ph: float, wanted_ph: float, sugar: Sugar = "dextrose") -> tuple[Figure, ...]:
    """Sugar to the meat that brings the pH down so far: between the two ends, then each end.

    start_ph: 5 to 7. wanted_ph: 4.5 to the start. Raises OutOfRange on "start_ph" or "wanted_ph".
    """
    _require_start(start_ph)
    if not LOWEST_PH <= wanted_ph < start_ph:
        raise OutOfRange("wanted_ph", "The pH wanted must be between 4.5 and the pH at the start.")
    fall = start_ph - wanted_ph
    kind = SUGARS[sugar]
    by_rule = fall / RULE_PH_PER_SHARE * _as_dextrose(kind)
    least, most = (fall * buffer / kind.acid_mol_per_kg for buffer in BUFFER_MOL)
    amounts = {"start": Amount(start_ph, PH), "wanted": Amount(wanted_ph, PH), "fall": Amount(fall, PH)}
    step = Sentence("pH to lose: {start} − {wanted} = {fall}", amounts)
    low, high = min(least, by_rule), max(most, by_rule)
    ends = {
        "low": Amount(low, SUGAR_DOSE),
        "high": Amount(high, SUGAR_DOSE),
        "middle": Amount((low + high) / 2, SUGAR_DOSE),
    }
    return (
        Figure(
            "sugar",
            TO_THE_MEAT[sugar],
            (low + high) / 2,
            SUGAR_DOSE,
            (step, Sentence("Between {low} by the buffer and {high} by the rule; the middle is {middle}", ends)),
            MEAT_BUFFER,
            (DISAGREE, FAT_BUFFERS_NOTHING),
            low=low,
            high=high,
        ),
        _by_buffer(step, fall, kind, (least, most)),
        _by_rule(step, fall, kind, by_rule),
    )


def ph_from(start_ph: float, sugar_share: float, sugar: Sugar = "dextrose") -> tuple[Figure, ...]:
    """The pH that so much sugar can bring: between the two ends, and whether 5.3 is in reach.

    start_ph: 5 to 7. sugar_share: of the meat, 0 to 5 %. Raises OutOfRange on "start_ph" or "sugar_share".
    """
    _require_start(start_ph)
    if not 0 <= sugar_share <= 0.05:
        raise OutOfRange("sugar_share", "The sugar must be between 0 and 5 % of the meat.")
    kind = SUGARS[sugar]
    by_rule = start_ph - sugar_share / _as_dextrose(kind) * RULE_PH_PER_SHARE
    acid = sugar_share * kind.acid_mol_per_kg
    native = NATIVE_SHARE * SUGARS["dextrose"].acid_mol_per_kg
    lowest = start_ph - (acid + native) / BUFFER_MOL[0]
    high, low = max(LOWEST_PH, by_rule), max(LOWEST_PH, lowest)
    amounts = {
        "start": Amount(start_ph, PH),
        "sugar": Amount(sugar_share, SUGAR_DOSE),
        "acid": Amount((acid + native) * 1e3, RATIO),
        "buffer": Amount(BUFFER_MOL[0] * 1e3, RATIO),
        "native": Amount(NATIVE_SHARE, SUGAR_DOSE),
        "by_rule": Amount(by_rule, PH),
        "lowest": Amount(lowest, PH),
    }
    steps = (
        Sentence("By the rule of thumb, 0.1 for a gram to the kilogram: {start} less {sugar} makes {by_rule}", amounts),
        Sentence(
            "All of it and the meat's own {native} turned to lactic acid, {acid} mmol/kg, against {buffer} "
            "mmol/(pH kg): {start} − {acid} ÷ {buffer} = {lowest}",
            amounts,
        ),
    )
    cautions = (*reach(low, high), DISAGREE, FAT_BUFFERS_NOTHING)
    if lowest < LOWEST_PH:
        cautions = (*cautions, "Below about 4.5 the starter stops by itself.")
    return (
        Figure("ph", "pH in the end, between", (low + high) / 2, PH, steps, MEAT_BUFFER, cautions, low=low, high=high),
    )


NEVER_SOUR: Message = (
    "It will never reach pH 5.3 on this sugar: a slow style. Degree-hours cannot clear it; it must be kept cold and "
    "salty until it is dry, by the rule for slow styles."
)
PERHAPS_NOT_SOUR: Message = (
    "It may not reach pH 5.3 on this sugar: measure, and know beforehand what you do if it does not."
)


def reach(low_ph: float, high_ph: float) -> tuple[Message, ...]:
    """Whether the wanted 5.3 is in reach between the two ends: a sentence, or nothing to say."""
    if low_ph > ACID_PH:
        return (NEVER_SOUR,)
    if high_ph > ACID_PH:
        return (PERHAPS_NOT_SOUR,)
    return ()


def _require_start(start_ph: float) -> None:
    low, high = BELIEVABLE_START
    if not low <= start_ph <= high:
        raise OutOfRange("start_ph", "The pH of the mix at the start must be between 5 and 7; meat is near 5.8.")


def _as_dextrose(kind: Kind) -> float:
    """Kilograms of this sugar that make the acid of a kilogram of dextrose."""
    return SUGARS["dextrose"].acid_mol_per_kg / kind.acid_mol_per_kg


def _by_buffer(step: Sentence, fall: float, kind: Kind, ends: tuple[float, float]) -> Figure:
    least, most = ends
    amounts = {
        "fall": Amount(fall, PH),
        "low": Amount(BUFFER_MOL[0] * 1e3, RATIO),
        "high": Amount(BUFFER_MOL[1] * 1e3, RATIO),
        "acid": Amount(kind.acid_mol_per_kg, RATIO),
        "least": Amount(least, SUGAR_DOSE),
        "most": Amount(most, SUGAR_DOSE),
    }
    text = "Fall × buffer ÷ acid, in mmol: {fall} × {low} ÷ {acid} = {least}; {fall} × {high} ÷ {acid} = {most}"
    return Figure(
        "by_buffer",
        "By the buffer of lean meat",
        (least + most) / 2,
        SUGAR_DOSE,
        (step, Sentence("A gram of it makes {acid} mmol of lactic acid", amounts), Sentence(text, amounts)),
        MEAT_BUFFER,
        ("As if all of it became lactic acid; less does, so this is the least that could be enough.",),
        low=least,
        high=most,
    )


def _by_rule(step: Sentence, fall: float, kind: Kind, share: float) -> Figure:
    amounts = {
        "fall": Amount(fall, PH),
        "factor": Amount(_as_dextrose(kind), RATIO),
        "share": Amount(share, SUGAR_DOSE),
    }
    said = Sentence("1 g/kg of dextrose for each 0.1: {fall} ÷ 0.1 × {factor} = {share}", amounts)
    return Figure("by_rule", "By the rule of thumb", share, SUGAR_DOSE, (step, said), SUGAR_RULE)


__all__ = ["SUGARS", "Sugar", "ph_from", "reach", "sugar_for"]
