"""The figures of a charge: nitrite and nitrate going in, as salt and as ion, against the limit; and the salt."""

from __future__ import annotations

from core.mix import cure_notes as notes
from core.mix.cure import PPM, CureMix, Dose, basis, made_ppm
from core.mix.ions import ION_IN, Substance, factor
from core.mix.licence import Licence
from core.mix.limit_check import LimitCheck, check_limits
from core.mix.limits import CANADA_LEAST_SALT, nitrate_cautions, nitrite_cautions
from core.mix.measures import GOING_IN, SALT_SHARE
from core.mix.rule import WET, Base, Method, Rule
from core.mix.rules import Curing
from core.quantities import DOSE_MASS, FRACTION, METRIC, PARTS_PER_MILLION, RATIO, Amount, Quantity
from core.sentence import Message, Sentence, Value, said
from core.sources import DEFINITION, FSIS_7620_3, Source
from core.traced import traced
from core.working import Figure


def ingoing(charge: CureMix, how: Curing, licence: Licence | None = None) -> tuple[Figure, ...]:
    """All of them, the nitrite first. No limit is held to them: `cure.figures` does."""
    held = check_limits(charge, how)
    on = how.held[0].on
    nitrite, nitrate = (_sodium_ppm(charge, how.method, on, each) for each in ("nitrite", "nitrate"))
    cautions = (
        *notes.licensed(held, licence),
        *nitrite_cautions(charge, how),
        *notes.mistaken(charge, how.method),
        *notes.doubt(charge),
        *notes.of_rows(held, "nitrite", charge),
    )
    found = [
        _amount(charge, how, on, held, "nitrite", cautions),
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
    cautions: tuple[Sentence, ...],
) -> Figure:
    part_kg = charge.substance_kg(substance, "sodium")
    return Figure(
        key=substance,
        name=notes.allowed(notes.on(Sentence(notes.GOES_IN[substance]), on), held, substance, ion=False),
        value=_sodium_ppm(charge, how.method, on, substance) * PPM,
        quantity=GOING_IN,
        working=(
            *_parts(charge, substance),
            divided(charge, how.method, on, notes.SODIUM[substance], part_kg),
            *(limit_step(each) for each in held if each.rule.substance == substance and each.rule.counted != "ion"),
        ),
        source=reckoned_by(how),
        cautions=cautions,
    )


def _parts(charge: CureMix, substance: Substance) -> list[Sentence]:
    bringing = [dose for dose in charge.doses if dose.salt.strength(substance, "weighed")] or [charge.doses[0]]
    first_kg, *others_kg = (dose.kg * dose.salt.strength(substance, "sodium") for dose in bringing)
    steps, sum_kg = [_part(dose, substance) for dose in bringing], first_kg
    for part_kg in others_kg:
        amounts = {
            "part": Amount(sum_kg, DOSE_MASS),
            "next": Amount(part_kg, DOSE_MASS),
            "total": Amount(sum_kg + part_kg, DOSE_MASS),
        }
        steps.append(Sentence(notes.OF_BOTH[substance], amounts))
        sum_kg += part_kg
    return steps


def _part(dose: Dose, substance: Substance) -> Sentence:
    alkali = dose.salt.nitrite_of if substance == "nitrite" else dose.salt.nitrate_of
    amounts = {
        "cure": Amount(dose.kg, DOSE_MASS),
        "strength": Amount(dose.salt.strength(substance, "weighed"), FRACTION),
        "factor": Amount(factor(substance, alkali, "sodium"), RATIO),
        "part": Amount(dose.kg * dose.salt.strength(substance, "sodium"), DOSE_MASS),
    }
    return Sentence(notes.PART[substance] if alkali == "sodium" else notes.PART_OF_POTASSIUM[substance], amounts)


def divided(charge: CureMix, method: Method, on: Base, name: Message, part_kg: float) -> Sentence:
    """The line that divides: by the meat, by the mixture, by meat and brine, or the pump's share of the brine."""
    by = basis(charge, method, on)
    told: dict[str, Value] = {
        "name": Sentence(name),
        "part": Amount(part_kg, DOSE_MASS),
        "meat": Amount(charge.meat_kg, DOSE_MASS),
        "whole": Amount(by.divisor_kg(charge), DOSE_MASS),
        "pickle": Amount(charge.pickle_kg, DOSE_MASS),
        "taken": Amount(charge.taken or 0.0, FRACTION),
        "made": Amount(by.ppm(charge, part_kg) * PPM, PARTS_PER_MILLION),
    }
    return Sentence(_divided_by(method, on), told)


def _divided_by(method: Method, on: Base) -> Message:
    match method:
        case "pump":
            return notes.PUMPED if on == "meat" else notes.PUMPED_OF_MIXTURE
        case "pick-up":
            return notes.PICKED_UP if on == "meat" else notes.PICKED_UP_OF_MIXTURE
        case "immersion":
            return notes.OF_MEAT_AND_BRINE
        case _:
            return notes.OF_MEAT if on == "meat" else notes.OF_MIXTURE


def limit_step(held: LimitCheck) -> Sentence:
    rule = held.rule
    told: dict[str, Value] = {
        "product": Sentence(rule.what),
        "rule": rule.cite,
        "limit": Amount((rule.most_ppm or 0.0) * PPM, PARTS_PER_MILLION),
        "printed": said(rule.printed),
    }
    return Sentence(_limit_text(rule), told)


def _limit_text(rule: Rule) -> Message:
    if rule.most_ppm == 0:
        return notes.NO_LIMIT_BUT_NONE
    if rule.printed and "ppm" not in said(rule.printed).say(METRIC):
        return notes.LIMIT_IN_OTHER_WORDS
    if rule.counted == "ion":
        return notes.LIMIT_OF_ION_AS_PRINTED if rule.printed else notes.LIMIT_OF_ION
    return notes.LIMIT_AS_PRINTED if rule.printed else notes.LIMIT


def _ion(held: tuple[LimitCheck, ...], substance: Substance, sodium_ppm: float) -> Figure:
    ion_share = ION_IN[substance, "sodium"]
    ion = sodium_ppm * ion_share * PPM
    amounts = {
        "made": Amount(sodium_ppm * PPM, PARTS_PER_MILLION),
        "part": Amount(ion_share, RATIO),
        "ion": Amount(ion, PARTS_PER_MILLION),
    }
    limits = (limit_step(each) for each in held if each.rule.substance == substance and each.rule.counted == "ion")
    name = notes.allowed(Sentence(notes.THE_SAME_AS_ION[substance]), held, substance, ion=True)
    return Figure(
        f"{substance}_ion", name, ion, GOING_IN, (Sentence(notes.TO_ION[substance], amounts), *limits), DEFINITION
    )


def _together(charge: CureMix, method: Method, held: LimitCheck) -> Figure:
    rule = held.rule
    kg = {each: charge.substance_kg(each, rule.counted) for each in rule.substances}
    amounts = {
        "nitrite": Amount(kg["nitrite"], DOSE_MASS),
        "nitrate": Amount(kg["nitrate"], DOSE_MASS),
        "both": Amount(sum(kg.values()), DOSE_MASS),
    }
    least = {"least": Amount((rule.least_ppm or 0.0) * PPM, PARTS_PER_MILLION), "rule": rule.cite}
    little = Sentence("Less than {least} does not count as cured ({rule}).", least)
    return Figure(
        "together",
        notes.of_allowed(notes.on(Sentence("Nitrite and nitrate together"), rule.on), rule),
        held.ppm * PPM,
        GOING_IN,
        (
            Sentence("Nitrite + nitrate, each salt by its weight: {nitrite} + {nitrate} = {both}", amounts),
            divided(charge, method, rule.on, "Both", sum(kg.values())),
            limit_step(held),
        ),
        rule.source,
        (*(() if held.enough else (little,)), *notes.noted(rule)),
    )


def _accelerator(charge: CureMix, method: Method, held: LimitCheck) -> Figure | None:
    rule = held.rule
    if not charge.accelerator_kg:
        return None
    told = {"rule": rule.cite, "printed": said(rule.printed), "product": Sentence(rule.what)}
    little = Sentence("{rule} asks for {printed} in {product}.", told)
    return Figure(
        "accelerator",
        "Ascorbate or erythorbate going in",
        made_ppm(charge, method, rule) * PPM,
        GOING_IN,
        (divided(charge, method, rule.on, "Ascorbate or erythorbate", charge.accelerator_kg), limit_step(held)),
        rule.source,
        (*(() if held.enough else (little,)), *notes.noted(rule)),
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


def _salt_divided(charge: CureMix, method: Method, name: Message, part_kg: float) -> Sentence:
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
    cautions: list[Sentence] = []
    if method not in WET and total.value < CANADA_LEAST_SALT * (1 - 1e-9):
        cautions.append(Sentence(notes.CANADA_ASKS_FOR_SALT))
    if method == "dry-salting":
        cautions.append(Sentence("At most: what falls or is brushed off did not go in."))
    if method == "immersion":
        cautions.append(Sentence(notes.IN_WATER_ONLY))
    return Figure(
        "total_salt", "All table salt, of the meat", total.value, SALT_SHARE, working, DEFINITION, tuple(cautions)
    )
