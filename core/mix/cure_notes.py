"""What is said beside the figures of a cure: the limit in the name, exceptions, what the rows add, a label misread."""

from __future__ import annotations

from core.mix.cure_mix import PPM, CureMix
from core.mix.curing_salt import doubted, mistaken_for_another
from core.mix.ions import Substance
from core.mix.licence import Licence
from core.mix.limit_check import LimitCheck
from core.mix.measures import GOING_IN
from core.mix.rule import WET, WHOLES, Base, Method, Rule
from core.quantities import Amount

US_CHART = "9 CFR 424.21(c)"
"""What may be left by it is said by `limits.nitrite_cautions`, and only where more went in."""


def most(rule: Rule) -> str:
    """ "156 ppm", or that none may be added."""
    return "none" if rule.most_ppm == 0 else Amount((rule.most_ppm or 0.0) * PPM, GOING_IN).show()


def allowed(held: tuple[LimitCheck, ...], substance: Substance, *, ion: bool) -> str:
    """The limit, to stand in the name of its figure: of the ion where the row counts the ion."""
    rules = (each.rule for each in held if each.rule.substance == substance)
    said = (f", of {most(rule)} allowed by {rule.cite}" for rule in rules if (rule.counted == "ion") is ion)
    return next(said, "")


def on(base: Base) -> str:
    """What it is divided by, in the name of its figure, where that is not the meat."""
    return "" if base == "meat" else f", {WHOLES[base]}"


def licensed(held: tuple[LimitCheck, ...], licence: Licence | None) -> tuple[str, ...]:
    """Which limits are passed by which exception, up to which figure, and who decided it."""
    over = [each for each in held if not each.within and licence is not None and licence.lifts(each)]
    if licence is None or not over:
        return ()
    cites = " and ".join(dict.fromkeys(f"{each.rule.cite}, {each.rule.most_ppm:g} ppm" for each in over))
    return (
        f"Over the limit ({cites}). Allowed up to {licence.most_ppm:g} ppm by an exception on record, {licence.rule}: "
        f"{licence.words}",
    )


def mistaken(charge: CureMix, method: Method) -> tuple[str, ...]:
    if method in WET or len(charge.doses) != 1:
        return ()
    said = mistaken_for_another(charge.doses[0].salt, charge.cure_kg / charge.meat_kg)
    return (said,) if said else ()


def doubt(charge: CureMix) -> tuple[str, ...]:
    """What is doubted of a label, once for each curing salt."""
    return tuple(dict.fromkeys(said for dose in charge.doses if (said := doubted(dose.salt))))


def of_rows(held: tuple[LimitCheck, ...], substance: Substance, charge: CureMix) -> tuple[str, ...]:
    """What the rows themselves add: what may be left, what must go with it, a figure that is from memory."""
    said: list[str] = []
    for rule in (each.rule for each in held):
        if rule.substance == "accelerator" and rule.least_ppm and not charge.accelerator_kg and substance == "nitrite":
            said.append(f"{rule.cite} asks for {rule.printed} of ascorbate or erythorbate in {rule.what}.")
        if rule.substance != substance:
            continue
        if rule.left_ppm is not None and rule.cite != US_CHART:
            said.append(_left(rule, substance))
        said.extend(noted(rule))
    return tuple(said)


def _left(rule: Rule, substance: Substance) -> str:
    left = f"{rule.left_ppm:g} mg/kg of {substance}{', as ion,' if rule.counted == 'ion' else ''}"
    if rule.left_is == "look into":
        return f"Where more than {left} is left, the cause is to be looked into ({rule.cite})."
    return f"At most {left} may be left in it ({rule.cite}); only a laboratory can show it."


def noted(rule: Rule) -> tuple[str, ...]:
    memory = (f"The limit of {rule.cite} is from memory, not looked up.",) if rule.source.verified == "memory" else ()
    return (*((rule.note,) if rule.note else ()), *memory)
