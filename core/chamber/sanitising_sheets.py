"""The single sums of cleaning the chamber, as worksheets."""

from __future__ import annotations

from core.chamber.sanitising import After, descaler, dilute
from core.chamber.sanitising_agents import AGENTS, PPM
from core.chamber.sanitising_measures import DENSITY, STRENGTH
from core.chamber.sanitising_stock import LARGEST_M3, Stated
from core.quantities import PARTS_PER_MILLION, PH, VOLUME
from core.usual import LABEL_LIMIT, SANITISER
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

_VOLUME = Number("volume", "Solution wanted", VOLUME, 1e-5, LARGEST_M3)


def _dilute(
    agent: str,
    stock: float,
    target: float,
    volume: float,
    after: After,
    label: float | None,
    ph: float | None,
    stated: Stated,
    weight: float,
) -> tuple[Figure, ...]:
    label_ppm = None if label is None else label / PPM
    return dilute(agent, stock, target / PPM, volume, after, label_ppm, ph, stated, weight)


def _descaler(volume: float) -> tuple[Figure, ...]:
    return descaler(volume)


DILUTE_SANITISER = Worksheet(
    name="dilute-sanitiser",
    title="Dilute a sanitiser",
    stage="chamber",
    question="How much of the stock makes a sanitiser of the strength I want?",
    inputs=(
        Choice("agent", "Sanitiser", {key: agent.name for key, agent in AGENTS.items()}, default="chlorine"),
        Number(
            "stock",
            "Strength of the stock",
            STRENGTH,
            1e-5,
            1.0,
            help="By its label, in per-cent or ppm.",
        ),
        Number(
            "target",
            "Strength wanted",
            PARTS_PER_MILLION,
            1e-6,
            0.01,
            help="By the label of the stock.",
            usual=SANITISER,
        ),
        _VOLUME,
        Choice("after", "Afterwards", {"drain": "drain, no rinse", "rinse": "rinse"}, default="drain"),
        Number(
            "label",
            "Label’s own limit without rinse",
            PARTS_PER_MILLION,
            1e-6,
            0.01,
            optional=True,
            help="Where the label gives one. It overrides the general rule.",
            usual=LABEL_LIMIT,
        ),
        Number("ph", "pH of the solution", PH, 1.0, 13.0, optional=True, help="Empty takes the stricter of two rows."),
        Choice(
            "stated",
            "The label states",
            {"active": "the active substance", "hypochlorite": "sodium hypochlorite"},
            default="active",
        ),
        Number(
            "weight",
            "Weight of a litre of the stock",
            DENSITY,
            0.8,
            2.0,
            default=1.0,
            help="1 kg, as printed tables count, unless its data sheet says.",
        ),
    ),
    compute=_dilute,
    example={"stock": "5.25 %", "target": "200 ppm", "volume": "4 L"},
)
DILUTE_DESCALER = Worksheet(
    name="dilute-descaler",
    title="Vinegar against limescale",
    stage="chamber",
    question="How much vinegar removes limescale?",
    inputs=(_VOLUME,),
    compute=_descaler,
    example={"volume": "1 L"},
)

WORKSHEETS = (DILUTE_SANITISER, DILUTE_DESCALER)
