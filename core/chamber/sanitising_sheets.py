"""The single sums of cleaning the chamber, as worksheets."""

from __future__ import annotations

from core.chamber.sanitising import After, descaler, dilute
from core.chamber.sanitising_agents import AGENTS, PPM
from core.chamber.sanitising_measures import STRENGTH, WEIGHT_OF_A_LITRE
from core.chamber.sanitising_stock import LARGEST_M3, Stated
from core.quantities import PARTS_PER_MILLION, PH, VOLUME
from core.usual import LABEL_LIMIT, SANITISER
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

AGENT = Choice("agent", "Sanitiser", {key: agent.name for key, agent in AGENTS.items()}, default="chlorine")
STOCK = Number("stock", "Strength of the stock", STRENGTH, 1e-5, 1.0, help="By its label, in per-cent or ppm.")
TARGET = Number(
    "target", "Strength wanted", PARTS_PER_MILLION, 1e-6, 0.01, help="By the label of the stock.", usual=SANITISER
)
SOLUTION = Number("volume_m3", "Solution wanted", VOLUME, 1e-5, LARGEST_M3)
AFTER = Choice("after", "Afterwards", {"drain": "drain, no rinse", "rinse": "rinse"}, default="drain")
LABEL = Number(
    "label",
    "Label’s own limit without rinse",
    PARTS_PER_MILLION,
    1e-6,
    0.01,
    optional=True,
    help="Where the label gives one. It overrides the general rule.",
    usual=LABEL_LIMIT,
)
SOLUTION_PH = Number(
    "ph", "pH of the solution", PH, 1.0, 13.0, optional=True, help="Empty takes the stricter of two rows."
)
STATED = Choice(
    "stated",
    "The label states",
    {"active": "the active substance", "hypochlorite": "sodium hypochlorite"},
    default="active",
)
WEIGHT = Number(
    "stock_kg_m3",
    "Weight of a litre of the stock",
    WEIGHT_OF_A_LITRE,
    800.0,
    2000.0,
    default=1000.0,
    help="1 kg, as printed tables count, unless its data sheet says.",
)


def _dilute(
    agent: str,
    stock: float,
    target: float,
    volume_m3: float,
    after: After,
    label: float | None,
    ph: float | None,
    stated: Stated,
    stock_kg_m3: float,
) -> tuple[Figure, ...]:
    label_ppm = None if label is None else label / PPM
    return dilute(agent, stock, target / PPM, volume_m3, after, label_ppm, ph, stated, stock_kg_m3 / 1000)


DILUTE_SANITISER = Worksheet(
    name="dilute-sanitiser",
    title="Dilute a sanitiser",
    stage="chamber",
    question="How much of the stock makes a sanitiser of the strength I want?",
    inputs=(AGENT, STOCK, TARGET, SOLUTION, AFTER, LABEL, SOLUTION_PH, STATED, WEIGHT),
    compute=_dilute,
    example={"stock": "5.25 %", "target": "200 ppm", "volume_m3": "4 L"},
)
DILUTE_DESCALER = Worksheet(
    name="dilute-descaler",
    title="Vinegar against limescale",
    stage="chamber",
    question="How much vinegar removes limescale?",
    inputs=(SOLUTION,),
    compute=descaler,
    example={"volume_m3": "1 L"},
)

WORKSHEETS = (DILUTE_SANITISER, DILUTE_DESCALER)
