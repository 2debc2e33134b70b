"""The single sums of mixing day: what a dose makes, and which dose makes it."""

from __future__ import annotations

from core.mix.cure import METHODS, PPM, CuringSalt, dose_for, from_dose
from core.mix.curing_salt import DOSE, STRENGTH
from core.mix.limits import Method
from core.quantities import DOSE_MASS, MASS, PARTS_PER_MILLION
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

MEAT = Number("meat_kg", "Meat and fat", MASS, 0.01, 1000.0, help="The green weight: meat and fat, no water or spice.")
NITRITE = Number(
    "nitrite", "Nitrite in the curing salt", STRENGTH, 0.0, 1.0, help="Per-cent on its label, for example 6.25."
)
NITRATE = Number(
    "nitrate", "Nitrate in the curing salt", STRENGTH, 0.0, 1.0, default=0.0, help="Per-cent on its label; 0 if none."
)
METHOD = Choice("method", "Method", METHODS, default="comminuted")
OTHER_SALT = Number(
    "other_salt_kg", "Other salt", DOSE_MASS, 0.0, 100.0, optional=True, help="Plain salt that goes in as well."
)


def _ppm(
    meat_kg: float, dose: float, nitrite: float, nitrate: float, method: Method, other_salt_kg: float | None
) -> tuple[Figure, ...]:
    return from_dose(meat_kg, dose * meat_kg, CuringSalt(nitrite, nitrate), method, other_salt_kg)


def _dose(
    meat_kg: float, wanted: float, nitrite: float, nitrate: float, method: Method, other_salt_kg: float | None
) -> tuple[Figure, ...]:
    return dose_for(meat_kg, wanted / PPM, CuringSalt(nitrite, nitrate), method, other_salt_kg)


CURE_PPM = Worksheet(
    name="cure-ppm",
    title="Nitrite in the meat",
    stage="mix",
    question="How many parts per million does this dose of curing salt make?",
    inputs=(
        MEAT,
        Number("dose", "Dose of the curing salt", DOSE, 0.0, 1.0, help="Per-cent of the meat, for example 0.25."),
        NITRITE,
        NITRATE,
        METHOD,
        OTHER_SALT,
    ),
    compute=_ppm,
    example={"meat_kg": "12.4 kg", "dose": "0.25 %", "nitrite": "6.25 %", "nitrate": "4 %", "other_salt_kg": "310 g"},
)
CURE_DOSE = Worksheet(
    name="cure-dose",
    title="Curing salt to weigh",
    stage="mix",
    question="How much curing salt makes the nitrite I want?",
    inputs=(
        MEAT,
        Number(
            "wanted",
            "Nitrite wanted",
            PARTS_PER_MILLION,
            1e-6,
            0.01,
            help="As sodium nitrite on the green weight. Ground meat at most 156 ppm in the US, about 120 in the EU.",
        ),
        NITRITE,
        NITRATE,
        METHOD,
        OTHER_SALT,
    ),
    compute=_dose,
    example={
        "meat_kg": "12.4 kg",
        "wanted": "120 ppm",
        "nitrite": "6.25 %",
        "nitrate": "4 %",
        "other_salt_kg": "310 g",
    },
)
