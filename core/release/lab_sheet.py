"""What a laboratory's moisture and protein say: the ratio that names a sausage, and the brine in it."""

from __future__ import annotations

from attrs import evolve

from core.mix.salting_rules import brine_strength
from core.quantities import FRACTION, PH, RATIO, Amount
from core.refusals import OutOfRange
from core.release.keeping import keeps_by_ratio
from core.sentence import Message, Sentence
from core.sources import FSRE_STABILITY
from core.working import Figure
from core.worksheet import Number, Worksheet

NO_PROOF: Message = (
    "The ratio names a sausage; it does not show that it keeps: the US guideline of 2014 calls it an inappropriate "
    "sign of that, the one of 2023 not necessarily a sign of safety. No rule that was read takes it for a water "
    "activity: without a meter send a sample."
)
_MET: dict[bool | None, Message] = {
    True: "Dry enough for its name: at most 1.9 to 1, or 3.1 to 1 at pH 5.0 or less.",
    False: "Too moist for its name: 1.9 to 1 at most, or 3.1 to 1 at pH 5.0 or less.",
    None: "Semi-dry sausage of 3.1 to 1 needs a pH of 5.0 or less: its pH is not known.",
}


def ratio_of(water: float, protein: float) -> float:
    return water / protein


def _figures(water: float, protein: float, ph: float | None, salt: float | None) -> tuple[Figure, ...]:
    if water + protein + (salt or 0.0) > 1 + 1e-9:
        raise OutOfRange("water", "Water, protein and salt are more than all of it: look at the report again.")
    ratio = ratio_of(water, protein)
    amounts = {"water": Amount(water, FRACTION), "protein": Amount(protein, FRACTION), "ratio": Amount(ratio, RATIO)}
    step = Sentence("{water} ÷ {protein} = {ratio}", amounts)
    cautions = (_MET[keeps_by_ratio(ratio, ph)], NO_PROOF)
    first = Figure("ratio", "Moisture to protein", ratio, RATIO, (step,), FSRE_STABILITY, cautions)
    return (
        (first,) if salt is None else (first, evolve(brine_strength(salt, water), cautions=()))
    )  # its cautions are those of a ham


LAB_SHEET = Worksheet(
    name="moisture-protein",
    title="Moisture to protein",
    stage="release",
    question="What does a laboratory's moisture and protein say of a sausage?",
    inputs=(
        Number("water", "Water", FRACTION, 0.01, 0.85, help="Of the finished sausage, from the laboratory."),
        Number("protein", "Protein", FRACTION, 0.01, 0.6),
        Number("ph", "pH", PH, 3.5, 8.0, optional=True),
        Number("salt", "Salt", FRACTION, 0.001, 0.2, optional=True, help="For the brine in it."),
    ),
    compute=_figures,
    example={"water": "35 %", "protein": "18.5 %", "ph": "5.2"},
)
