"""What an entry of the cure means: the masses, whose rules hold it, and whether an exception was recorded."""

from __future__ import annotations

from datetime import date
from functools import cached_property
from typing import cast

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.facts.batch import CureWeighed
from core.daybook.facts.cure import LicensedException
from core.daybook.house import in_ppm
from core.meat import Style
from core.mix.cure import CureMix, Dose, basis, require_charge
from core.mix.cure_dose import figures
from core.mix.curing_salt import CuringSalt, second_salt
from core.mix.ingoing import Ingoing, ingoing_of
from core.mix.licence import LIFTED, Licence
from core.mix.limit_check import LimitCheck, check_limits
from core.mix.rule import Limited, Method
from core.mix.rules import Curing, HouseLimit
from core.refusals import Missing, OutOfRange
from core.release.evidence import METHOD_OF
from core.working import Figure


@frozen
class Cured:
    """A batch's cure, read."""

    charge: CureMix
    how: Curing
    licence: Licence | None = None

    @cached_property
    def held(self) -> tuple[LimitCheck, ...]:
        return check_limits(self.charge, self.how)

    @property
    def over_by_licence(self) -> bool:
        """It passes a limit, and an exception on record lets it."""
        over = [each for each in self.held if not each.within]
        return bool(over) and self.licence is not None and all(self.licence.lifts(each) for each in over)

    @cached_property
    def ingoing(self) -> Ingoing:
        return ingoing_of(self.charge, self.how.method)

    @property
    def nitrite_ppm(self) -> float:
        """As sodium nitrite on the green weight, by its method."""
        return self._on_green_weight(self.charge.substance_kg("nitrite", "sodium"))

    @property
    def salt(self) -> float | None:
        """All table salt in the meat as a share of its green weight; None where the other salt is not known."""
        if self.charge.other_salt_kg is None:
            return None
        return self._on_green_weight(self.charge.own_salt_kg + self.charge.other_salt_kg) * 1e-6

    def figures(self) -> tuple[Figure, ...]:
        """Raises OutOfRange over a limit, unless an exception was recorded."""
        return figures(self.charge, self.how, self.licence)

    def _on_green_weight(self, part_kg: float) -> float:
        return basis(self.charge, self.how.method, "meat").ppm(self.charge, part_kg)


def charge_of(fact: CureWeighed, meat_kg: float) -> CureMix:
    """Raises OutOfRange for what no curing salt is, Missing where the label of a second one is not known."""
    doses = [Dose(CuringSalt(fact.nitrite, fact.nitrate, 0.0, fact.nitrite_of, fact.nitrate_of), fact.cure_kg)]
    if fact.second_kg:
        doses.append(Dose(second_salt(fact.second_nitrite, fact.second_nitrate), fact.second_kg))
    return CureMix(
        meat_kg,
        tuple(doses),
        fact.other_salt_kg,
        water_kg=fact.water_kg or 0.0,
        sugar_kg=fact.sugar_kg or 0.0,
        other_kg=fact.other_kg or 0.0,
        accelerator_kg=fact.accelerator_kg or 0.0,
        taken=fact.taken or None,
    )


def curing_of(fact: CureWeighed, style: Style, on: date | None = None, house: tuple[HouseLimit, ...] = ()) -> Curing:
    """An older entry names no rules: it means the US chart, by the kind of its batch."""
    method = cast(Method, fact.method) if fact.method else METHOD_OF[style]
    return Curing(fact.rules or "us", fact.product or "meat", method, on, house)


def cured(batch: Batch) -> Cured | None:
    """The batch's cure under the rules of the day it was weighed, and of the house; None where there is none. Raises
    OutOfRange."""
    fact = batch.cure
    if fact is None:
        return None
    how = curing_of(fact, batch.start.style, batch.cured_at.date() if batch.cured_at else None, batch.house)
    return Cured(charge_of(fact, batch.meat_kg), how, licence_of(batch))


def known_cure(batch: Batch) -> Cured | None:
    """The same; None too where the entry is of no curing salt or no method there is: what went in is not known."""
    try:
        found = cured(batch)
        if found is not None:
            require_charge(found.charge, found.how.method)  # a brine without water, a pump of nobody knows how much
        return found
    except (OutOfRange, Missing):
        return None


def licence_of(batch: Batch) -> Licence | None:
    """The exception on record, the latest where there are several."""
    lines = batch.lines_by_kind.get(LicensedException)
    fact = lines[-1].fact if lines else None
    if not isinstance(fact, LicensedException):
        return None
    substance = cast(Limited, fact.substance) if fact.substance in LIFTED else None
    return Licence(fact.why, fact.authority, fact.decided_by, fact.rule, substance, in_ppm(fact.most))
