"""What is left of an aged cut once its crust, its fat and its bone are trimmed off?

Two losses one after the other, both of the start weight: what dried away, and what was cut away.
"""

from __future__ import annotations

from attrs import evolve

from core.dry.shrink import NOW, START, loss
from core.quantities import LOSS, PIECE_MASS, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import BEEF_AGEING_REVIEW
from core.traced import traced
from core.working import Figure
from core.worksheet import Number, Worksheet

USUAL_SHRINK = (0.06, 0.15)
UNUSUAL: Message = "A review of dry-aged beef prints a shrink of {low} to {high}: check the weights."
BONE_TOO: Message = "Crust, waste fat and bone together: a bone-in cut loses more here than its crust."


def trimmed(start_kg: float, now_kg: float, net_kg: float) -> tuple[Figure, ...]:
    """net_kg: what is left to eat, no more than now_kg. Raises OutOfRange on "now_kg" or "net_kg"."""
    if now_kg > start_kg:
        raise OutOfRange("now_kg", "What has aged weighs no more than at the start: check the weights.")
    if net_kg > now_kg:
        raise OutOfRange("net_kg", "What is left must weigh no more than before it was trimmed.")
    start, now, net = (
        traced(name, kg, PIECE_MASS) for name, kg in (("start", start_kg), ("aged", now_kg), ("left", net_kg))
    )
    share = (now - net) / start
    yielded: Message = "Net yield, of the start weight"
    trim: Message = "Trimmed off, of the start weight"
    return (
        (net / start).figure("net_yield", yielded, LOSS, "Left ÷ start"),
        _doubted(loss(start_kg, now_kg)),
        share.figure("trim", trim, LOSS, "(Aged − left) ÷ start", cautions=(BONE_TOO,)),
    )


def _doubted(shrunk: Figure) -> Figure:
    """More than was printed is most often a slip; less is only young."""
    low, high = USUAL_SHRINK
    if shrunk.value <= high:
        return shrunk
    told = {"low": Amount(low, LOSS), "high": Amount(high, LOSS)}
    return evolve(shrunk, source=BEEF_AGEING_REVIEW, cautions=(Sentence(UNUSUAL, told), *shrunk.cautions))


TRIM_SHEET = Worksheet(
    name="net-yield",
    title="Net yield of an aged cut",
    stage="dry",
    question="What is left of it once it is trimmed?",
    inputs=(
        START,
        evolve(NOW, label="Weight aged, before trimming"),
        Number("net_kg", "Left to eat", PIECE_MASS, 0.001, 999.0, help="Without crust, waste fat and bone."),
    ),
    compute=trimmed,
    example={"start_kg": "10000 g", "now_kg": "9400 g", "net_kg": "7220 g"},
)
