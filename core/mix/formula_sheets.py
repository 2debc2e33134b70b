"""The single sums of a formula: fat from two meats, meat for a finished weight, mix for casings, doses on a scale."""

from __future__ import annotations

from core.meat import LOSS_HELP, MOST_LOSS, USUAL_LOSS
from core.mix import casings
from core.mix.blend import preblend
from core.mix.measures import PER_MEAT
from core.mix.pearson import two_meats
from core.mix.weighing import DIVISION, rounding
from core.quantities import DOSE_MASS, FRACTION, LOSS, MASS, RATIO, Amount
from core.sentence import Message, Sentence
from core.sources import DEFINITION
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

DOSES: dict[str, Message] = {"cure": "curing salt", "other": "salt, spice or something else"}


def for_finished(finished_kg: float, loss: float, others: float) -> tuple[Figure, ...]:
    """Meat and raw mix that leave the finished weight. loss: 0 to 0.7. others: all but meat, to a kilogram of meat."""
    raw_kg = finished_kg / (1 - loss)
    meat_kg = raw_kg / (1 + others)
    amounts = {
        "finished": Amount(finished_kg, MASS),
        "loss": Amount(loss, LOSS),
        "raw": Amount(raw_kg, MASS),
        "others": Amount(1 + others, RATIO),
        "meat": Amount(meat_kg, MASS),
    }
    to_raw = Sentence("Finished ÷ (1 − loss): {finished} ÷ (1 − {loss}) = {raw}", amounts)
    to_meat = Sentence("Raw ÷ (1 + all else, of the meat): {raw} ÷ {others} = {meat}", amounts)
    return (
        Figure("meat", "Meat and fat", meat_kg, MASS, (to_raw, to_meat), DEFINITION),
        Figure("raw", "Raw weight", raw_kg, MASS, (to_raw,), DEFINITION),
    )


def _fill(count: float, diameter_m: float, length_m: float, density: float) -> tuple[Figure, ...]:
    return (casings.fill(count, diameter_m, length_m, density),)


def _on_scale(wanted_kg: float, division_kg: float, of: str) -> tuple[Figure, ...]:
    return rounding(wanted_kg, division_kg, never_up=of == "cure")


FAT_MIX = Worksheet(
    name="fat-mix",
    title="Fat from two meats",
    stage="mix",
    question="In which shares do a lean and a fat meat make the fat I want?",
    inputs=(
        Number("lean_fat", "Fat of the leaner meat", FRACTION, 0.0, 1.0, help="Pork shoulder, trimmed: about 7 %."),
        Number("fat_fat", "Fat of the fatter meat", FRACTION, 0.0, 1.0, help="Back fat: about 89 %."),
        Number("wanted", "Fat wanted", FRACTION, 0.0, 1.0),
        Number("meat_kg", "Meat and fat", MASS, 0.01, 1000.0, optional=True, help="For the weights of both."),
    ),
    compute=two_meats,
    example={"lean_fat": "7.14 %", "fat_fat": "88.69 %", "wanted": "25 %", "meat_kg": "10 kg"},
)
FINISHED_MASS = Worksheet(
    name="finished-mass",
    title="Meat for a finished weight",
    stage="mix",
    question="How much meat leaves the finished weight I want?",
    inputs=(
        Number("finished_kg", "Finished weight wanted", MASS, 0.01, 1000.0),
        Number(
            "loss",
            "Loss to reach",
            LOSS,
            0.0,
            MOST_LOSS,
            default=USUAL_LOSS,
            help=LOSS_HELP,
        ),
        Number("others", "All else, of the meat", PER_MEAT, 0.0, 2.0, default=0.04, help="Salt, cure, sugar, spice."),
    ),
    compute=for_finished,
    example={"finished_kg": "8 kg", "loss": "35 %", "others": "4 %"},
)
CASINGS = Worksheet(
    name="casings",
    title="Mix for the casings",
    stage="mix",
    question="How much mix do these casings take?",
    inputs=casings.BOXES,
    compute=_fill,
    example={"count": "12", "diameter_m": "55 mm", "length_m": "400 mm", "density": "1.05"},
)
SCALE_ROUNDING = Worksheet(
    name="weigh-dose",
    title="A dose on this scale",
    stage="mix",
    question="What does my scale make of this dose?",
    inputs=(
        Number("wanted_kg", "Dose wanted", DOSE_MASS, 1e-6, 1000.0),
        DIVISION,
        Choice("of", "It is", DOSES, default="cure", help="A curing salt is never rounded up."),
    ),
    compute=_on_scale,
    example={"wanted_kg": "23.6 g", "division_kg": "1 g"},
)
PRE_BLEND = Worksheet(
    name="pre-blend",
    title="A dose too small for the scale",
    stage="mix",
    question="How do I blend the cure with salt so that my scale can weigh it?",
    inputs=(
        Number("dose_kg", "Curing salt wanted", DOSE_MASS, 1e-6, 1000.0, help="For this batch."),
        Number("salt_kg", "Salt of the batch", DOSE_MASS, 0.0, 1000.0, help="The blend brings part of it along."),
        DIVISION,
    ),
    compute=preblend,
    example={"dose_kg": "4 g", "salt_kg": "52 g", "division_kg": "1 g"},
)
WORKSHEETS = (FAT_MIX, FINISHED_MASS, CASINGS, SCALE_ROUNDING, PRE_BLEND)
