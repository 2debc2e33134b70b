"""The single sums of souring: sugar for a pH, the pH of a sugar, starter to weigh."""

from __future__ import annotations

from core.mix.starter import starter
from core.mix.sugar import SUGARS, ph_from, sugar_for
from core.quantities import COUNT, DOSE_MASS, MASS, PH, SUGAR_DOSE
from core.worksheet import Choice, Number, Worksheet

START = Number(
    "start_ph", "pH of the mix", PH, 5.0, 7.0, default=5.8, help="Before it ferments; fresh meat is near 5.8."
)
SUGAR = Choice("sugar", "Sugar", {key: kind.name for key, kind in SUGARS.items()}, default="dextrose")

SUGAR_FOR_PH = Worksheet(
    name="sugar-for-ph",
    title="Sugar for a pH",
    stage="mix",
    question="How much sugar brings the pH down to where I want it?",
    inputs=(START, Number("wanted_ph", "pH wanted", PH, 4.5, 7.0, default=5.0), SUGAR),
    compute=sugar_for,
    example={"start_ph": "5.8", "wanted_ph": "5.0"},
)
PH_OF_SUGAR = Worksheet(
    name="ph-of-sugar",
    title="pH that a sugar can bring",
    stage="mix",
    question="How sour can it become on this sugar, and will it reach 5.3?",
    inputs=(START, Number("sugar_share", "Sugar", SUGAR_DOSE, 0.0, 0.05, help="Grams to the kilogram of meat."), SUGAR),
    compute=ph_from,
    example={"start_ph": "5.8", "sugar_share": "5 g/kg"},
)
STARTER = Worksheet(
    name="starter",
    title="Starter to weigh",
    stage="mix",
    question="How much starter culture does this batch take?",
    inputs=(
        Number("meat_kg", "Meat and fat", MASS, 0.01, 1000.0),
        Number("packet_kg", "A packet weighs", DOSE_MASS, 1e-5, 10.0, help="As on its label."),
        Number("packet_for_kg", "A packet is for", MASS, 0.1, 10000.0, help="Meat, as on its label."),
        Number(
            "cells_per_gram",
            "Cells in a gram of culture",
            COUNT,
            1.0,
            1e13,
            optional=True,
            help="Where the label says it, for example 100000000000.",
        ),
    ),
    compute=starter,
    example={"meat_kg": "12.4 kg", "packet_kg": "25 g", "packet_for_kg": "100 kg"},
)
WORKSHEETS = (SUGAR_FOR_PH, PH_OF_SUGAR, STARTER)
