"""What went into the meat, as parts per million: all that the limits of any rule set can be checked by.

A weighed charge and a figure typed from a weighing sheet come to the same record, so both are held to the same rows.
"""

from __future__ import annotations

from attrs import frozen

from core.mix.cure import CureMix, basis
from core.mix.ions import ION_IN, Counted, Substance
from core.mix.limit_check import LimitCheck
from core.mix.rule import Method, Rule
from core.mix.rules import Curing


@frozen
class Ingoing:
    """Parts per million of the green weight. None is not known, which is not 0.

    nitrite_ppm, nitrate_ppm: as the sodium salts. nitrite_weighed_ppm, nitrate_weighed_ppm: as the salts that were
    weighed, None where those were the sodium salts. mixture: the raw mixture to the green weight, 1 or more.
    accelerator_ppm: ascorbate or erythorbate, None where none is known to have gone in.
    """

    nitrite_ppm: float | None = None
    nitrate_ppm: float | None = None
    nitrite_weighed_ppm: float | None = None
    nitrate_weighed_ppm: float | None = None
    mixture: float = 1.0
    accelerator_ppm: float | None = None

    @property
    def together_ppm(self) -> float | None:
        """Nitrite and nitrate, each as weighed; None where either is not known."""
        return _sum([self._substance("nitrite", "weighed"), self._substance("nitrate", "weighed")])

    def made_ppm(self, rule: Rule) -> float | None:
        """What a row counts, by its own reckoning; None where that is not known."""
        if rule.substance == "accelerator":
            made = self.accelerator_ppm
        else:
            made = _sum([self._substance(each, rule.counted) for each in rule.substances])
        return made if made is None or rule.on == "meat" else made / self.mixture

    def _substance(self, substance: Substance, counted: Counted) -> float | None:
        nitrite = substance == "nitrite"
        sodium = self.nitrite_ppm if nitrite else self.nitrate_ppm
        weighed = self.nitrite_weighed_ppm if nitrite else self.nitrate_weighed_ppm
        if sodium is None or counted == "sodium":
            return sodium
        if counted == "ion":
            return sodium * ION_IN[substance, "sodium"]
        return sodium if weighed is None else weighed


def ingoing_of(charge: CureMix, method: Method) -> Ingoing:
    """Of a charge cured this way."""
    on_meat = basis(charge, method, "meat")

    def ppm(substance: Substance, counted: Counted) -> float:
        return on_meat.ppm(charge, charge.substance_kg(substance, counted))

    return Ingoing(
        ppm("nitrite", "sodium"),
        ppm("nitrate", "sodium"),
        ppm("nitrite", "weighed"),
        ppm("nitrate", "weighed"),
        on_meat.ppm(charge, 1.0) / basis(charge, method, "mixture").ppm(charge, 1.0),
        on_meat.ppm(charge, charge.accelerator_kg) if charge.accelerator_kg else None,
    )


def check_limits(ingoing: Ingoing, how: Curing) -> tuple[LimitCheck, ...]:
    """Every row of the rules with what it counts; a row is left out where that is not known."""
    made = ((rule, ingoing.made_ppm(rule)) for rule in how.held)
    return tuple(LimitCheck(rule, ppm) for rule, ppm in made if ppm is not None)


def _sum(parts: list[float | None]) -> float | None:
    known = [each for each in parts if each is not None]
    return sum(known) if len(known) == len(parts) else None
