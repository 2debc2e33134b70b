"""The box of a cure's dose: a per-cent of the meat, a weight, or the nitrite that it is to make."""

from __future__ import annotations

from attrs import evolve, frozen

from core.mix.cure import PPM
from core.mix.curing_salt import DOSE
from core.quantities import DOSE_MASS, FRACTION, PARTS_PER_MILLION, Amount, Quantity, Reader
from core.reading import is_bare, read
from core.refusals import NotAQuantity, OutOfRange
from core.sentence import Message, Said, Sentence
from core.usual import USUAL, ask, is_usual

HEAVIEST_DOSE_KG = 100.0
MOST_PPM = 10_000.0
USUAL_SHARE = (0.0005, 1.0)  # of the meat; 0.0025 typed for 0.25 % lands below. What is too much, the rules refuse

PER_CENT_OR_WEIGHT = evolve(
    FRACTION, noun="a per-cent or a weight", example_metric="0.25 % or 31 g", example_us="0.25 % or 31 g"
)
WEIGHT_IN_BRINE = evolve(DOSE_MASS, example_metric="240 g or 120 ppm", example_us="240 g or 120 ppm")
OF_WHAT: Message = "A per-cent does not say of what here. Enter a weight or the nitrite wanted, for example {example}."
FOR_EXAMPLE = Amount(120 * PPM, PARTS_PER_MILLION)
DOSE_HELP = Sentence(
    "Per-cent of the meat ({share}), a weight ({weight}) or the nitrite wanted ({ppm}); 0 where you use none.",
    {"share": Amount(0.0025, DOSE), "weight": Amount(0.031, DOSE_MASS), "ppm": FOR_EXAMPLE},
)
LESS_THAN_NOTHING: Message = "The dose cannot be less than nothing, for example {example}."
NO_SMALL_PART: Message = "The dose is a small part of the meat, for example {example}."


@frozen
class Asked:
    """A dose as it was typed: one of the three. ppm: of sodium nitrite, wanted in the meat."""

    share: float | None = None
    kg: float | None = None
    ppm: float | None = None


@frozen
class Dose:
    """The cure as a per-cent of the meat, as a weight or by the nitrite it is to make: "0.25 %", "31 g", "120 ppm".

    In a brine a bare number is grams, and a per-cent would not say of what.
    """

    key: str = "dose"
    label: Message = "Dose of the curing salt"
    help: Said = DOSE_HELP
    unit: Message = "% or g"
    bare: Quantity = PER_CENT_OR_WEIGHT
    keys: tuple[str, ...] = ("%", "g", "ppm")
    """The units that the number keys offer beside it."""

    def read(self, text: str, reader: Reader) -> Asked:
        letters = text.casefold()
        if "ppm" in letters or "mg/kg" in letters:
            ppm = read(text, PARTS_PER_MILLION, reader, field=self.key, label=self.label) / PPM
            return Asked(ppm=self._between(ppm, MOST_PPM, reader))
        if self.unit == "g" and ("cent" in letters or "%" in text):
            raise NotAQuantity(self.key, Sentence(OF_WHAT, {"example": self.bare.example(reader)}))
        weighed = self.unit == "g" or ("cent" not in letters and any(sign.isalpha() for sign in text))
        quantity = DOSE_MASS if weighed and self.unit != "g" else self.bare
        value = read(text, quantity, reader, field=self.key, label=self.label)
        value = self._between(value, HEAVIEST_DOSE_KG if weighed else 1, reader)
        kind, usual = (DOSE_MASS, USUAL["dose_mass"]) if weighed else (DOSE, USUAL_SHARE)
        if is_bare(text) and not is_usual(value, usual):
            raise ask(self.key, self.label, value, kind, usual, reader)
        return Asked(kg=value) if weighed else Asked(share=value)

    def _between(self, value: float, most: float, reader: Reader) -> float:
        example = {"example": self.bare.example(reader)}
        if value < 0:
            raise OutOfRange(self.key, Sentence(LESS_THAN_NOTHING, example))
        if value > most:
            raise OutOfRange(self.key, Sentence(NO_SMALL_PART, example))
        return value


IN_BRINE = Dose(
    label="Curing salt in the brine",
    help=Sentence(
        "Its weight ({weight}) or the nitrite wanted in the meat ({ppm}); 0 where you use none.",
        {"weight": Amount(0.24, DOSE_MASS), "ppm": FOR_EXAMPLE},
    ),
    unit="g",
    bare=WEIGHT_IN_BRINE,
    keys=("g", "ppm"),
)
