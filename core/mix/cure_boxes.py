"""What is asked of a cure, box by box: the sums, the cure's form and what is kept of a weighed cure read these."""

from __future__ import annotations

from attrs import evolve, frozen

from core.mix.curing_salt import STRENGTH, TENTH
from core.quantities import DOSE_MASS, FRACTION, MASS, Amount, Reader
from core.reading import is_bare
from core.refusals import Unusual
from core.sentence import Message, Sentence, Value, said
from core.worksheet import Number

A_TENTH: Message = (
    "{label}: this is read as {strength}, a tenth of what a concentrate holds. Is {tenfold} meant? Then enter that. If "
    "the label says {strength}, enter it with its unit."
)


@frozen
class Strength(Number):
    """Nitrite by the label. 0.625 in its box is a salt there may be, and 6.25 with its point in the wrong place."""

    def read(self, text: str, reader: Reader) -> float | None:
        value = super().read(text, reader)
        if value is not None and is_bare(text) and TENTH[0] <= value <= TENTH[1]:
            told: dict[str, Value] = {
                "label": said(self.label),
                "strength": Amount(value, STRENGTH),
                "tenfold": Amount(value * 10, STRENGTH),
            }
            raise Unusual(self.key, Sentence(A_TENTH, told))
        return value


MEAT = Number("meat_kg", "Meat and fat", MASS, 0.01, 1000.0, help="The green weight: meat and fat, no water or spice.")
NITRITE = Strength(
    "nitrite", "Nitrite in the curing salt", STRENGTH, 0.0, 1.0, help="Per-cent on its label, for example 6.25."
)
NITRATE = Number(
    "nitrate", "Nitrate in the curing salt", STRENGTH, 0.0, 1.0, default=0.0, help="Per-cent on its label; 0 if none."
)
OTHER_SALT = Number(
    "other_salt_kg", "Other salt", DOSE_MASS, 0.0, 100.0, optional=True, help="Plain salt that goes in as well."
)
OTHER = Number(
    "other_kg",
    "All else in the mix",
    DOSE_MASS,
    0.0,
    1000.0,
    optional=True,
    help="Water, sugar, spice: Canada counts on the whole mixture.",
)
SECOND = Number(
    "second_kg", "Second curing salt", DOSE_MASS, 0.0, 100.0, optional=True, help="Where two go in at once."
)
SECOND_NITRITE = Strength("second_nitrite", "Nitrite in the second", STRENGTH, 0.0, 1.0, optional=True)
SECOND_NITRATE = Number("second_nitrate", "Nitrate in the second", STRENGTH, 0.0, 1.0, optional=True)
WATER = Number("water_kg", "Water", MASS, 0.01, 1000.0, help="A litre weighs a kilogram.")
SUGAR = Number("sugar_kg", "Sugar", DOSE_MASS, 0.0, 300.0, default=0.0)
ACCELERATOR = Number(
    "accelerator_kg", "Ascorbate or erythorbate", DOSE_MASS, 0.0, 10.0, default=0.0, help="In the brine; 0 if none."
)
PUMP = Number(
    "taken", "Pump", FRACTION, 0.001, 1.0, help="Brine pumped in, per-cent of the green weight.", usual=(0.05, 0.4)
)
PICK_UP = Number(
    "taken",
    "Pick-up",
    FRACTION,
    0.001,
    1.0,
    optional=True,
    help="Brine taken up, per-cent of the green weight; by pick-up.",
    usual=(0.03, 0.4),
)

# As they are weighed for a batch: what was ticked is there, and what was left empty was not.
SECOND_WEIGHED = evolve(SECOND, optional=False, help="Its weight.")
SECOND_LABEL = evolve(SECOND_NITRITE, optional=False, help="Per-cent on its label; 0 if none.")
SECOND_LABEL_NITRATE = evolve(SECOND_NITRATE, optional=False, help="Per-cent on its label; 0 if none.")
ACCELERATOR_WEIGHED = evolve(ACCELERATOR, default=None, help="Its weight.")
SUGAR_WEIGHED = evolve(SUGAR, optional=True, default=None)
TAKEN_UP = evolve(PICK_UP, optional=False, help="Brine taken up, per-cent of the green weight.")
