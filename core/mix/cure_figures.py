"""The figures of a charge: nitrite and nitrate going in, as salt and as ion, against the limit; and the salt."""

from __future__ import annotations

from core.mix import cure_notes as notes
from core.mix.cure_mix import PPM, CureMix, basis, made_ppm
from core.mix.ions import ION_IN, Substance, factor
from core.mix.licence import Licence
from core.mix.limit_check import LimitCheck, check_limits
from core.mix.limits import CANADA_LEAST_SALT, nitrate_cautions, nitrite_cautions
from core.mix.measures import GOING_IN, SALT_SHARE
from core.mix.rule import PART_IN, WET, Base, Method
from core.mix.rules import Curing
from core.quantities import DOSE_MASS, FRACTION, PARTS_PER_MILLION, RATIO, Amount, Quantity
from core.sentence import Message, Said, Sentence, Unconverted, each_said
from core.sources import DEFINITION, FSIS_7620_3, Source
from core.traced import traced
from core.working import Figure

IN_WATER_ONLY = (
    "The handbook takes meat and brine for one; salt and nitrite spread in their water only, so the meat takes up a "
    "little less."
)


def ingoing(charge: CureMix, how: Curing, licence: Licence | None = None) -> tuple[Figure, ...]:
    """All of them, the nitrite first. No limit is held to them: `cure.figures` does."""
    held = check_limits(charge, how)
    on = how.held[0].on
    nitrite, nitrate = (_sodium_ppm(charge, how.method, on, each) for each in ("nitrite", "nitrate"))
    said = (
        *notes.licensed(held, licence),
        *nitrite_cautions(charge, how),
        *notes.mistaken(charge, how.method),
        *notes.doubt(charge),
        *notes.of_rows(held, "nitrite", charge),
    )
    found = [
        _amount(charge, how, on, held, "nitrite", said),
        _ion(held, "nitrite", nitrite),
    ]
    if nitrate:
        cautions = (*nitrate_cautions(charge, how), *notes.of_rows(held, "nitrate", charge))
        found.append(_amount(charge, how, on, held, "nitrate", cautions))
        found.append(_ion(held, "nitrate", nitrate))
    found += [_together(charge, how.method, each) for each in held if each.rule.substance == "both"]
    found += [_accelerator(charge, how.method, each) for each in held if each.rule.substance == "accelerator"]
    found.append(_salt(charge, how.method, "cure_salt", "Table salt the cure brings, of the meat", charge.own_salt_kg))
    if charge.other_salt_kg is not None:
        found.append(_total_salt(charge, how.method, charge.other_salt_kg))
    return tuple(each for each in found if each is not None)


def reckoned_by(how: Curing) -> Source:
    """Who says what the substance is divided by: the US handbook its formulas, the others in their own text."""
    return FSIS_7620_3 if how.rules == "us" else how.law[0].source


def share_figure(
    key: str, name: Message, words: Message, part_kg: float, whole_kg: float, quantity: Quantity
) -> Figure:
    share = traced("part", part_kg, DOSE_MASS) / traced("whole", whole_kg, DOSE_MASS)
    return share.figure(key, name, quantity, words)


def _sodium_ppm(charge: CureMix, method: Method, on: Base, substance: Substance) -> float:
    return basis(charge, method, on).ppm(charge, charge.substance_kg(substance, "sodium"))


def _amount(
    charge: CureMix,
    how: Curing,
    on: Base,
    held: tuple[LimitCheck, ...],
    substance: Substance,
    cautions: tuple[Said | Unconverted, ...],
) -> Figure:
    part_kg = charge.substance_kg(substance, "sodium")
    return Figure(
        key=substance,
        name=f"{substance.capitalize()} going in{notes.on(on)}{notes.allowed(held, substance, ion=False)}",
        value=_sodium_ppm(charge, how.method, on, substance) * PPM,
        quantity=GOING_IN,
        working=(
            *_parts(charge, substance),
            divided(charge, how.method, on, f"Sodium {substance}", part_kg),
            *(limit_step(each) for each in held if each.rule.substance == substance and each.rule.counted != "ion"),
        ),
        source=reckoned_by(how),
        cautions=each_said(cautions),
    )


def _parts(charge: CureMix, substance: Substance) -> list[Sentence]:
    steps: list[Sentence] = []
    bringing = [dose for dose in charge.doses if dose.salt.strength(substance, "weighed")] or [charge.doses[0]]
    for dose in bringing:
        alkali = dose.salt.nitrite_of if substance == "nitrite" else dose.salt.nitrate_of
        amounts = {
            "cure": Amount(dose.kg, DOSE_MASS),
            "strength": Amount(dose.salt.strength(substance, "weighed"), FRACTION),
            "factor": Amount(factor(substance, alkali, "sodium"), RATIO),
            "part": Amount(dose.kg * dose.salt.strength(substance, "sodium"), DOSE_MASS),
        }
        if alkali == "sodium":
            text = f"Curing salt × its {substance} = sodium {substance}: {{cure}} × {{strength}} = {{part}}"
        else:
            text = (
                f"Curing salt × its potassium {substance} × molar mass of the sodium salt ÷ that of the potassium "
                "salt: {cure} × {strength} × {factor} = {part}"
            )
        steps.append(Sentence(text, amounts))
    if len(bringing) > 1:
        amounts = {f"part{at}": step.values["part"] for at, step in enumerate(steps)}
        amounts["total"] = Amount(charge.substance_kg(substance, "sodium"), DOSE_MASS)
        together = " + ".join(f"{{{key}}}" for key in amounts if key != "total")
        steps.append(Sentence(f"Sodium {substance} of both: {together} = {{total}}", amounts))
    return steps


def divided(charge: CureMix, method: Method, on: Base, name: str, part_kg: float) -> Sentence:
    """The line that divides: by the meat, by the mixture, by meat and brine, or the pump's share of the brine."""
    by = basis(charge, method, on)
    amounts = {
        "part": Amount(part_kg, DOSE_MASS),
        "meat": Amount(charge.meat_kg, DOSE_MASS),
        "whole": Amount(by.divisor_kg(charge), DOSE_MASS),
        "pickle": Amount(charge.pickle_kg, DOSE_MASS),
        "taken": Amount(charge.taken or 0.0, FRACTION),
        "made": Amount(by.ppm(charge, part_kg) * PPM, PARTS_PER_MILLION),
    }
    if method in PART_IN:
        word = "pump" if method == "pump" else "pick-up"
        if on == "meat":
            return Sentence(f"{name} × {word} ÷ brine: {{part}} × {{taken}} ÷ {{pickle}} = {{made}}", amounts)
        return Sentence(
            f"{name} × {word} ÷ (100 % + {word}) ÷ brine: "
            "{part} × {taken} ÷ (100 % + {taken}) ÷ {pickle} = {made}",
            amounts,
        )
    if method == "immersion":
        text = f"{name} ÷ (green weight of meat + brine): {{part}} ÷ ({{meat}} + {{pickle}}) = {{made}}"
    elif on == "mixture":
        text = f"{name} ÷ the whole raw mixture: {{part}} ÷ {{whole}} = {{made}}"
    else:
        text = f"{name} ÷ green weight of meat: {{part}} ÷ {{meat}} = {{made}}"
    return Sentence(text, amounts)


def limit_step(held: LimitCheck) -> Sentence:
    rule = held.rule
    limit = Amount((rule.most_ppm or 0.0) * PPM, PARTS_PER_MILLION)
    where = f"Limit for {rule.what}, {rule.cite}"
    if rule.most_ppm == 0:
        return Sentence(f"{where}: none may be added")
    if rule.printed and "ppm" not in rule.printed:
        return Sentence(f"{where}: {rule.printed} = {{limit}}", {"limit": limit})
    printed = f" ({rule.printed})" if rule.printed else ""
    counted = ", as ion" if rule.counted == "ion" else ""
    return Sentence(f"{where}: {{limit}}{counted}{printed}", {"limit": limit})


def _ion(held: tuple[LimitCheck, ...], substance: Substance, sodium_ppm: float) -> Figure:
    ion_share = ION_IN[substance, "sodium"]
    ion = sodium_ppm * ion_share * PPM
    amounts = {
        "made": Amount(sodium_ppm * PPM, PARTS_PER_MILLION),
        "part": Amount(ion_share, RATIO),
        "ion": Amount(ion, PARTS_PER_MILLION),
    }
    text = f"Sodium {substance} × molar mass of the ion ÷ molar mass of the salt: {{made}} × {{part}} = {{ion}}"
    limits = (limit_step(each) for each in held if each.rule.substance == substance and each.rule.counted == "ion")
    name = f"The same, as {substance} ion{notes.allowed(held, substance, ion=True)}"
    return Figure(f"{substance}_ion", name, ion, GOING_IN, (Sentence(text, amounts), *limits), DEFINITION)


def _together(charge: CureMix, method: Method, held: LimitCheck) -> Figure:
    rule = held.rule
    kg = {each: charge.substance_kg(each, rule.counted) for each in rule.substances}
    amounts = {
        "nitrite": Amount(kg["nitrite"], DOSE_MASS),
        "nitrate": Amount(kg["nitrate"], DOSE_MASS),
        "both": Amount(sum(kg.values()), DOSE_MASS),
    }
    little = (f"Less than {rule.least_ppm:g} ppm does not count as cured ({rule.cite}).",) if not held.enough else ()
    return Figure(
        "together",
        f"Nitrite and nitrate together{notes.on(rule.on)}, of {notes.most(rule)} allowed by {rule.cite}",
        held.ppm * PPM,
        GOING_IN,
        (
            Sentence("Nitrite + nitrate, each salt by its weight: {nitrite} + {nitrate} = {both}", amounts),
            divided(charge, method, rule.on, "Both", sum(kg.values())),
            limit_step(held),
        ),
        rule.source,
        (*little, *notes.noted(rule)),
    )


def _accelerator(charge: CureMix, method: Method, held: LimitCheck) -> Figure | None:
    rule = held.rule
    if not charge.accelerator_kg:
        return None
    little = (f"{rule.cite} asks for {rule.printed} in {rule.what}.",) if not held.enough else ()
    return Figure(
        "accelerator",
        "Ascorbate or erythorbate going in",
        made_ppm(charge, method, rule) * PPM,
        GOING_IN,
        (divided(charge, method, rule.on, "Ascorbate or erythorbate", charge.accelerator_kg), limit_step(held)),
        rule.source,
        (*little, *notes.noted(rule)),
    )


def _salt(charge: CureMix, method: Method, key: str, name: Message, part_kg: float) -> Figure:
    """Table salt in the meat, to its green weight: all of it, or what the brine leaves there."""
    if method not in WET:
        return share_figure(key, name, "Table salt in the cure ÷ meat", part_kg, charge.meat_kg, SALT_SHARE)
    return Figure(
        key,
        name,
        basis(charge, method, "meat").ppm(charge, part_kg) * PPM,
        SALT_SHARE,
        (_salt_divided(charge, method, "Table salt in the cure", part_kg),),
        FSIS_7620_3,
    )


def _salt_divided(charge: CureMix, method: Method, name: str, part_kg: float) -> Sentence:
    step = divided(charge, method, "meat", name, part_kg)
    made = Amount(basis(charge, method, "meat").ppm(charge, part_kg) * PPM, FRACTION)
    return Sentence(step.text, {**step.values, "made": made})


def _total_salt(charge: CureMix, method: Method, other_kg: float) -> Figure:
    total_kg = charge.own_salt_kg + other_kg
    total = Amount(basis(charge, method, "meat").ppm(charge, total_kg) * PPM, SALT_SHARE)
    amounts = {
        "own": Amount(charge.own_salt_kg, DOSE_MASS),
        "other": Amount(other_kg, DOSE_MASS),
        "meat": Amount(charge.meat_kg, DOSE_MASS),
        "all": Amount(total_kg, DOSE_MASS),
        "total": total,
    }
    if method in WET:
        working = (
            Sentence("Table salt in the cure + other salt: {own} + {other} = {all}", amounts),
            _salt_divided(charge, method, "All table salt", total_kg),
        )
    else:
        text = "(Table salt in the cure + other salt) ÷ meat: ({own} + {other}) ÷ {meat} = {total}"
        working = (Sentence(text, amounts),)
    said: list[str] = []
    if method not in WET and total.value < CANADA_LEAST_SALT * (1 - 1e-9):
        said.append(
            "Canada asks for at least 2.5 % salt in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)."
        )
    if method == "dry-salting":
        said.append("At most: what falls or is brushed off did not go in.")
    if method == "immersion":
        said.append(IN_WATER_ONLY)
    return Figure(
        "total_salt", "All table salt, of the meat", total.value, SALT_SHARE, working, DEFINITION, tuple(said)
    )
