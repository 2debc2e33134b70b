"""The single sums of the cure: what a dose makes, and which dose makes it, on the meat and through brine."""

from __future__ import annotations

from core.mix.brine import brine_figures, recipe
from core.mix.cure import PPM, CureMix, Dose
from core.mix.cure_boxes import (
    ACCELERATOR,
    MEAT,
    NITRATE,
    NITRITE,
    OTHER,
    OTHER_SALT,
    PICK_UP,
    PUMP,
    SECOND,
    SECOND_NITRATE,
    SECOND_NITRITE,
    SUGAR,
    WATER,
)
from core.mix.cure_dose import dosed, dosed_for, figures
from core.mix.curing_salt import DOSE, CuringSalt, second_salt
from core.mix.rule import METHODS, Method
from core.mix.rules import LAW_NAMES, curing
from core.quantities import DOSE_MASS, FRACTION, PARTS_PER_MILLION, VOLUME
from core.refusals import Missing
from core.sentence import Said
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

ON_MEAT: dict[str, Said] = {key: METHODS[key] for key in ("comminuted", "dry-rub", "dry-salting")}
IN_BRINE: dict[str, Said] = {key: METHODS[key] for key in ("immersion", "pick-up")}
METHOD = Choice("method", "Method", ON_MEAT, default="comminuted")
LAW = Choice("law", "Rules", LAW_NAMES, default="us")
CURE = Number("cure_kg", "Curing salt", DOSE_MASS, 0.0, 100.0, help="In the brine.")
SALT = Number("other_salt_kg", "Salt", DOSE_MASS, 0.0, 300.0, default=0.0, help="Plain salt, without the cure's own.")
WANTED = Number(
    "wanted",
    "Nitrite wanted",
    PARTS_PER_MILLION,
    1e-6,
    0.01,
    help="As sodium nitrite on the green weight; by Canada’s rules on the whole raw mixture. Ground meat at most "
    "156 ppm in the US, about 120 in the EU, 200 in Canada.",
    usual=(40e-6, 250e-6),
)


def _doses(first: Dose, kg: float | None, nitrite: float | None, nitrate: float | None) -> tuple[Dose, ...]:
    """A second curing salt needs its weight and its label: neither is 0 because it was not said."""
    if kg is None and (nitrite or nitrate):
        raise Missing("second_kg", "Enter the weight of the second curing salt, or 0 if there is none.")
    return (first, Dose(second_salt(nitrite, nitrate), kg)) if kg else (first,)


def _ppm(
    meat_kg: float,
    dose: float,
    nitrite: float,
    nitrate: float,
    method: Method,
    law: str,
    other_salt_kg: float | None,
    other_kg: float | None,
    second_kg: float | None,
    second_nitrite: float | None,
    second_nitrate: float | None,
) -> tuple[Figure, ...]:
    first = Dose(CuringSalt(nitrite, nitrate), dose * meat_kg)
    doses = _doses(first, second_kg, second_nitrite, second_nitrate)
    return figures(CureMix(meat_kg, doses, other_salt_kg, other_kg=other_kg or 0.0), curing(law, method))


def _dose(
    meat_kg: float,
    wanted: float,
    nitrite: float,
    nitrate: float,
    method: Method,
    law: str,
    other_salt_kg: float | None,
    other_kg: float | None,
) -> tuple[Figure, ...]:
    charge = CureMix(meat_kg, (Dose(CuringSalt(nitrite, nitrate), 0.0),), other_salt_kg, other_kg=other_kg or 0.0)
    return dosed_for(charge, curing(law, method), wanted / PPM)


def _brine(
    water_kg: float, other_salt_kg: float, sugar_kg: float, cure_kg: float, nitrite: float, nitrate: float
) -> tuple[Figure, ...]:
    doses = (Dose(CuringSalt(nitrite, nitrate), cure_kg),)
    return brine_figures(CureMix(1.0, doses, other_salt_kg, water_kg=water_kg, sugar_kg=sugar_kg))


def _through_brine(
    meat_kg: float,
    cure_kg: float,
    nitrite: float,
    nitrate: float,
    law: str,
    taken: float | None,
    method: Method = "pump",
    **brine: float,
) -> tuple[Figure, ...]:
    charge = CureMix(meat_kg, (Dose(CuringSalt(nitrite, nitrate), cure_kg),), taken=taken, **brine)
    return (*figures(charge, curing(law, method)), *brine_figures(charge))


def _through_brine_for(
    meat_kg: float,
    wanted: float,
    nitrite: float,
    nitrate: float,
    law: str,
    taken: float | None,
    method: Method = "pump",
    **brine: float,
) -> tuple[Figure, ...]:
    how = curing(law, method)
    charge = CureMix(meat_kg, (Dose(CuringSalt(nitrite, nitrate), 0.0),), taken=taken, **brine)
    made = dosed(charge, how, wanted / PPM)
    return (*dosed_for(charge, how, wanted / PPM), *brine_figures(made))


_GROUND = {"meat_kg": "12.4 kg", "nitrite": "6.25 %", "nitrate": "4 %", "other_salt_kg": "310 g"}
_HAM = {"meat_kg": "5 kg", "nitrite": "6.25 %", "water_kg": "10 kg", "other_salt_kg": "1200 g", "sugar_kg": "400 g"}
_ON_MEAT = (NITRITE, NITRATE, METHOD, LAW, OTHER_SALT, OTHER)
_IN_WATER = (NITRITE, NITRATE, WATER, SALT, SUGAR, ACCELERATOR)
_HOW_BRINED = Choice("method", "Method", IN_BRINE, default="immersion")

CURE_PPM = Worksheet(
    name="cure-ppm",
    title="Nitrite in the meat",
    stage="mix",
    question="How many parts per million does this dose of curing salt make?",
    inputs=(
        MEAT,
        Number("dose", "Dose of the curing salt", DOSE, 0.0, 1.0, help="Per-cent of the meat, for example 0.25."),
        *_ON_MEAT,
        SECOND,
        SECOND_NITRITE,
        SECOND_NITRATE,
    ),
    compute=_ppm,
    example={**_GROUND, "dose": "0.25 %"},
)
CURE_DOSE = Worksheet(
    name="cure-dose",
    title="Curing salt to weigh",
    stage="mix",
    question="How much curing salt makes the nitrite I want?",
    inputs=(MEAT, WANTED, *_ON_MEAT),
    compute=_dose,
    example={**_GROUND, "wanted": "120 ppm"},
)
BRINE = Worksheet(
    name="cure-brine",
    title="A brine as weighed",
    stage="mix",
    question="How strong is this brine, and how much of it is there?",
    inputs=(WATER, SALT, SUGAR, CURE, NITRITE, NITRATE),
    compute=_brine,
    example={
        "water_kg": "10 kg",
        "other_salt_kg": "1200 g",
        "sugar_kg": "400 g",
        "cure_kg": "240 g",
        "nitrite": "6.25 %",
    },
)
BRINE_RECIPE = Worksheet(
    name="brine-recipe",
    title="Salt and water for a brine",
    stage="mix",
    question="How much salt and water make a brine of this strength?",
    inputs=(
        Number("volume_m3", "Brine wanted", VOLUME, 1e-4, 1.0),
        Number(
            "share",
            "Salt in it",
            FRACTION,
            0.0,
            0.264,
            help="Per-cent by weight; 100 degrees of the salometer is 26.4 %.",
        ),
    ),
    compute=recipe,
    example={"volume_m3": "10 L", "share": "15.84 %"},
)
PUMPED = Worksheet(
    name="cure-pump",
    title="Nitrite in pumped meat",
    stage="mix",
    question="How many parts per million does this brine make, pumped?",
    inputs=(MEAT, CURE, *_IN_WATER, PUMP, LAW),
    compute=_through_brine,
    example={**_HAM, "cure_kg": "240 g", "taken": "10 %"},
)
PUMPED_DOSE = Worksheet(
    name="cure-pump-dose",
    title="Curing salt for a pumping brine",
    stage="mix",
    question="How much curing salt does a pumping brine take for the nitrite I want?",
    inputs=(MEAT, WANTED, *_IN_WATER, PUMP, LAW),
    compute=_through_brine_for,
    example={**_HAM, "wanted": "120 ppm", "taken": "10 %"},
)
IMMERSED = Worksheet(
    name="cure-immersion",
    title="Nitrite in brined meat",
    stage="mix",
    question="How many parts per million does this brine make of meat that lies in it?",
    inputs=(MEAT, CURE, *_IN_WATER, _HOW_BRINED, PICK_UP, LAW),
    compute=_through_brine,
    example={**_HAM, "cure_kg": "25 g"},
)
IMMERSED_DOSE = Worksheet(
    name="cure-immersion-dose",
    title="Curing salt for a brine to lie in",
    stage="mix",
    question="How much curing salt does a brine take for the nitrite I want in the meat that lies in it?",
    inputs=(MEAT, WANTED, *_IN_WATER, _HOW_BRINED, PICK_UP, LAW),
    compute=_through_brine_for,
    example={**_HAM, "wanted": "100 ppm"},
)
WORKSHEETS = (CURE_PPM, CURE_DOSE, PUMPED, PUMPED_DOSE, IMMERSED, IMMERSED_DOSE, BRINE, BRINE_RECIPE)
