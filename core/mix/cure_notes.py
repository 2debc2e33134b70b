"""What the figures of a cure say: their names, what each line multiplies and divides, the limit, exceptions, doubts."""

from __future__ import annotations

from collections.abc import Mapping

from core.mix.cure import PPM, CureMix
from core.mix.curing_salt import doubted, mistaken_for_another
from core.mix.ions import Substance
from core.mix.licence import Licence
from core.mix.limit_check import LimitCheck
from core.mix.measures import GOING_IN
from core.mix.rule import WET, Base, Method, Rule
from core.quantities import PARTS_PER_MILLION, RATIO, Amount
from core.sentence import Message, Rounded, Sentence, Value, each_said, listed, said

US_CHART = "9 CFR 424.21(c)"
"""What may be left by it is said by `limits.nitrite_cautions`, and only where more went in."""

NONE: Message = "none"
GOES_IN: Mapping[Substance, Message] = {"nitrite": "Nitrite going in", "nitrate": "Nitrate going in"}
THE_SAME_AS_ION: Mapping[Substance, Message] = {
    "nitrite": "The same, as nitrite ion",
    "nitrate": "The same, as nitrate ion",
}
SODIUM: Mapping[Substance, Message] = {"nitrite": "Sodium nitrite", "nitrate": "Sodium nitrate"}
PART: Mapping[Substance, Message] = {
    "nitrite": "Curing salt × its nitrite = sodium nitrite: {cure} × {strength} = {part}",
    "nitrate": "Curing salt × its nitrate = sodium nitrate: {cure} × {strength} = {part}",
}
PART_OF_POTASSIUM: Mapping[Substance, Message] = {
    "nitrite": (
        "Curing salt × its potassium nitrite × molar mass of the sodium salt ÷ that of the potassium salt: "
        "{cure} × {strength} × {factor} = {part}"
    ),
    "nitrate": (
        "Curing salt × its potassium nitrate × molar mass of the sodium salt ÷ that of the potassium salt: "
        "{cure} × {strength} × {factor} = {part}"
    ),
}
OF_BOTH: Mapping[Substance, Message] = {
    "nitrite": "Sodium nitrite of both: {part} + {next} = {total}",
    "nitrate": "Sodium nitrate of both: {part} + {next} = {total}",
}
TO_ION: Mapping[Substance, Message] = {
    "nitrite": "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: {made} × {part} = {ion}",
    "nitrate": "Sodium nitrate × molar mass of the ion ÷ molar mass of the salt: {made} × {part} = {ion}",
}
PUMPED: Message = "{name} × pump ÷ brine: {part} × {taken} ÷ {pickle} = {made}"
PUMPED_OF_MIXTURE: Message = (
    "{name} × pump ÷ (100 % + pump) ÷ brine: {part} × {taken} ÷ (100 % + {taken}) ÷ {pickle} = {made}"
)
PICKED_UP: Message = "{name} × pick-up ÷ brine: {part} × {taken} ÷ {pickle} = {made}"
PICKED_UP_OF_MIXTURE: Message = (
    "{name} × pick-up ÷ (100 % + pick-up) ÷ brine: {part} × {taken} ÷ (100 % + {taken}) ÷ {pickle} = {made}"
)
OF_MEAT_AND_BRINE: Message = "{name} ÷ (green weight of meat + brine): {part} ÷ ({meat} + {pickle}) = {made}"
OF_MIXTURE: Message = "{name} ÷ the whole raw mixture: {part} ÷ {whole} = {made}"
OF_MEAT: Message = "{name} ÷ green weight of meat: {part} ÷ {meat} = {made}"
NO_LIMIT_BUT_NONE: Message = "Limit for {product}, {rule}: none may be added"
LIMIT_IN_OTHER_WORDS: Message = "Limit for {product}, {rule}: {printed} = {limit}"
LIMIT: Message = "Limit for {product}, {rule}: {limit}"
LIMIT_AS_PRINTED: Message = "Limit for {product}, {rule}: {limit} ({printed})"
LIMIT_OF_ION: Message = "Limit for {product}, {rule}: {limit}, as ion"
LIMIT_OF_ION_AS_PRINTED: Message = "Limit for {product}, {rule}: {limit}, as ion ({printed})"
IN_WATER_ONLY: Message = (
    "The handbook takes meat and brine for one; salt and nitrite spread in their water only, so the meat takes up a "
    "little less."
)
CANADA_ASKS_FOR_SALT: Message = (
    "Canada asks for at least 2.5 % salt in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)."
)
ON_MIXTURE: Message = "{figure}, on the whole raw mixture"
OF_ALLOWED: Message = "{figure}, of {most} allowed by {rule}"


def most(rule: Rule) -> Value:
    """ "156 ppm", or that none may be added."""
    return Sentence(NONE) if rule.most_ppm == 0 else Rounded(Amount((rule.most_ppm or 0.0) * PPM, GOING_IN))


def allowed(figure: Sentence, held: tuple[LimitCheck, ...], substance: Substance, *, ion: bool) -> Sentence:
    """The name of a figure with its limit in it: of the ion where the row counts the ion."""
    rules = (each.rule for each in held if each.rule.substance == substance)
    rule = next((each for each in rules if (each.counted == "ion") is ion), None)
    return figure if rule is None else of_allowed(figure, rule)


def of_allowed(figure: Sentence, rule: Rule) -> Sentence:
    return Sentence(OF_ALLOWED, {"figure": figure, "most": most(rule), "rule": rule.cite})


def on(figure: Sentence, base: Base) -> Sentence:
    """What it is divided by, in the name of its figure, where that is not the meat."""
    return figure if base == "meat" else Sentence(ON_MIXTURE, {"figure": figure})


def licensed(held: tuple[LimitCheck, ...], licence: Licence | None) -> tuple[Sentence, ...]:
    """Which limits are passed by which exception, up to which figure, and who decided it."""
    over = [each for each in held if not each.within and licence is not None and licence.lifts(each)]
    if licence is None or not over:
        return ()
    rows = [
        Sentence("{rule}, {most}", {"rule": each.rule.cite, "most": _ppm(each.rule.most_ppm)})
        for each in {(each.rule.cite, each.rule.most_ppm): each for each in over}.values()
    ]
    told = Sentence(
        "Over the limit ({rows}). Allowed up to {most} by an exception on record, {rule}: {words}",
        {"rows": listed(rows), "most": _ppm(licence.most_ppm), "rule": licence.rule, "words": licence.words},
    )
    return (told,)


def _ppm(ppm: float | None) -> Amount:
    return Amount((ppm or 0.0) * PPM, PARTS_PER_MILLION)


def mistaken(charge: CureMix, method: Method) -> tuple[Sentence, ...]:
    if method in WET or len(charge.doses) != 1:
        return ()
    told = mistaken_for_another(charge.doses[0].salt, charge.cure_kg / charge.meat_kg)
    return (told,) if told else ()


def doubt(charge: CureMix) -> tuple[Sentence, ...]:
    """What is doubted of a label, once for each curing salt."""
    return tuple(dict.fromkeys(told for dose in charge.doses if (told := doubted(dose.salt)) is not None))


def of_rows(held: tuple[LimitCheck, ...], substance: Substance, charge: CureMix) -> tuple[Sentence, ...]:
    """What the rows themselves add: what may be left, what must go with it, a figure that is from memory."""
    told: list[Sentence] = []
    for rule in (each.rule for each in held):
        if rule.substance == "accelerator" and rule.least_ppm and not charge.accelerator_kg and substance == "nitrite":
            asked = {"rule": rule.cite, "printed": said(rule.printed), "product": Sentence(rule.what)}
            told.append(Sentence("{rule} asks for {printed} of ascorbate or erythorbate in {product}.", asked))
        if rule.substance != substance:
            continue
        if rule.left_ppm is not None and rule.cite != US_CHART:
            told.append(_left(rule, substance))
        told.extend(noted(rule))
    return tuple(told)


def _left(rule: Rule, substance: Substance) -> Sentence:
    of = {"left": Amount(rule.left_ppm or 0.0, RATIO), "substance": Sentence(substance)}
    text = "{left} mg/kg of {substance}, as ion," if rule.counted == "ion" else "{left} mg/kg of {substance}"
    told = {"amount": Sentence(text, of), "rule": rule.cite}
    if rule.left_is == "look into":
        return Sentence("Where more than {amount} is left, the cause is to be looked into ({rule}).", told)
    return Sentence("At most {amount} may be left in it ({rule}); only a laboratory can show it.", told)


def noted(rule: Rule) -> tuple[Sentence, ...]:
    memory = Sentence("The limit of {rule} is from memory, not looked up.", {"rule": rule.cite})
    return (*each_said((rule.note,) if rule.note else ()), *((memory,) if rule.source.verified == "memory" else ()))
