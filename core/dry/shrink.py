"""Weight loss: how much of a piece has gone, and what it should weigh when it is done.

All of the loss is counted as water. Weights are of the hung piece, string and casing included, tared alike each time.
"""

from __future__ import annotations

import math

from attrs import evolve

from core.meat import LOSS_HELP, MOST_LOSS, USUAL_LOSS
from core.quantities import LOSS, MASS, PIECE_MASS, Amount, DisplayUnit, Quantity
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import DEFINITION, USDA_LEAN_WATER
from core.traced import Traced, traced
from core.units import GRAM
from core.working import Figure
from core.worksheet import Number, Worksheet

HEAVIEST_KG = 1000.0
WHOLE_GRAMS = evolve(PIECE_MASS, key="whole_grams", metric=(DisplayUnit(GRAM, 0),))

GAINED: Message = "It weighs more than at the start: check the scale and the tag."
TOO_DRY: Message = "That is more than the water in meat: check the weights and the tag."


def lost(start_kg: float, now_kg: float) -> float:
    """Share of the start weight lost; negative for a gain. Raises OutOfRange on "start_kg" or "now_kg"."""
    _require_weight("start_kg", "The start weight", start_kg)
    _require_weight("now_kg", "The weight now", now_kg)
    return (start_kg - now_kg) / start_kg


def loss(start_kg: float, now_kg: float) -> Figure:
    """Share of the start weight lost. Weights above 0; a gain is negative and cautioned."""
    lost(start_kg, now_kg)
    start, now = _mass("start", start_kg), _mass("now", now_kg)
    share = (start - now) / start
    source = USDA_LEAN_WATER if share.value > MOST_LOSS else DEFINITION
    return share.figure("loss", "Loss", LOSS, "(Start − now) ÷ start", source=source, cautions=_doubts(share.value))


def water_lost(start_kg: float, now_kg: float) -> Figure:
    """Kilograms of water gone, all of the loss being counted as water; negative for a gain."""
    lost(start_kg, now_kg)
    gone = _mass("start", start_kg) - _mass("now", now_kg)
    return gone.figure("water_lost", "Water lost", PIECE_MASS, "Start − now")


def yield_(start_kg: float, now_kg: float) -> Figure:
    """Share of the start weight that is left."""
    left = Amount(1 - lost(start_kg, now_kg), LOSS)
    amounts = {"start": Amount(start_kg, PIECE_MASS), "now": Amount(now_kg, PIECE_MASS), "left": left}
    step = Sentence("Now ÷ start: {now} ÷ {start} = {left}", amounts)
    return Figure("yield", "Left of the start weight", left.value, LOSS, (step,), DEFINITION)


def target_weight(start_kg: float, target_loss: float) -> Figure:
    """What the piece weighs when it has lost the target. target_loss: 0 to 0.75. Raises OutOfRange on "target_loss"."""
    _require_weight("start_kg", "The start weight", start_kg)
    _require_target(target_loss)
    target = _mass("start", start_kg) * (1 - traced("loss", target_loss, LOSS))
    figure = target.figure("target_weight", "Weight when done", PIECE_MASS, "Start × (1 − target loss)")
    return evolve(figure, quantity=_as_weighed(start_kg))


def start_of_rest(start_kg: float, before_kg: float, after_kg: float) -> Figure:
    """What the part that hangs on weighed when the whole was hung: it lost what the whole lost, share for share.

    Weights above 0, after_kg less than before_kg. Raises OutOfRange on "before_kg" or "after_kg".
    """
    _require_weight("before_kg", "The weight before", before_kg)
    _require_weight("after_kg", "What hangs on", after_kg)
    if after_kg >= before_kg:
        raise OutOfRange("after_kg", "What hangs on must weigh less than the piece before the cut.")
    rest = _mass("start", start_kg) * (_mass("after", after_kg) / _mass("before", before_kg))
    figure = rest.figure("start_of_rest", "Its loss is counted from", PIECE_MASS, "Start × after ÷ before")
    return evolve(figure, quantity=_as_weighed(start_kg, before_kg, after_kg))


def remaining(start_kg: float, now_kg: float, target_loss: float) -> Figure:
    """Kilograms still to lose; nothing once the target is reached."""
    target = target_weight(start_kg, target_loss)
    lost(start_kg, now_kg)
    left = Amount(max(0.0, now_kg - target.value), PIECE_MASS)
    step = Sentence(
        "Now − weight when done, or nothing when that is reached: {now} − {target} → {left}",
        {"now": Amount(now_kg, PIECE_MASS), "target": target.amount, "left": left},
    )
    return Figure("remaining", "Still to lose", left.value, _as_weighed(start_kg, now_kg), (step,), DEFINITION)


def _as_weighed(*masses_kg: float) -> Quantity:
    """What follows from whole grams is shown in whole grams: it is no finer than the scale was."""
    whole = all(math.isclose(kg * 1000, round(kg * 1000), abs_tol=1e-6) for kg in masses_kg)
    return WHOLE_GRAMS if whole else PIECE_MASS


def _require_weight(field: str, label: Message, mass_kg: float) -> None:
    if not 0 < mass_kg < HEAVIEST_KG:
        told = {"label": Sentence(label), "most": Amount(HEAVIEST_KG, MASS)}
        raise OutOfRange(field, Sentence("{label} must be more than 0 and less than {most}.", told))


def _require_target(target_loss: float) -> None:
    if not 0 <= target_loss <= MOST_LOSS:
        raise OutOfRange(
            "target_loss", "The target loss must be between 0 and 75 %: meat holds no more water than that."
        )


def _doubts(share: float) -> tuple[Message, ...]:
    if share < 0:
        return (GAINED,)
    return (TOO_DRY,) if share > MOST_LOSS else ()


def _mass(name: str, mass_kg: float) -> Traced:
    return traced(name, mass_kg, PIECE_MASS)


def shrink(start_kg: float, now_kg: float, target_loss: float | None = None) -> tuple[Figure, ...]:
    """All that two weighings tell: loss, water gone, what is left and, with a target, what is still to lose."""
    figures = (loss(start_kg, now_kg), water_lost(start_kg, now_kg), yield_(start_kg, now_kg))
    if target_loss is None:
        return figures
    return (*figures, remaining(start_kg, now_kg, target_loss), target_weight(start_kg, target_loss))


def _target_only(start_kg: float, target_loss: float) -> tuple[Figure, ...]:
    return (target_weight(start_kg, target_loss),)


START = Number("start_kg", "Start weight", PIECE_MASS, 0.001, 999.0, help="As it was hung.")
NOW = Number("now_kg", "Weight now", PIECE_MASS, 0.001, 999.0)
SHRINK_SHEET = Worksheet(
    name="shrink",
    title="Weight loss",
    stage="dry",
    question="How much has this piece lost?",
    inputs=(
        START,
        NOW,
        Number("target_loss", "Target loss", LOSS, 0.0, MOST_LOSS, default=USUAL_LOSS, optional=True, help=LOSS_HELP),
    ),
    compute=shrink,
    example={"start_kg": "1250 g", "now_kg": "850 g", "target_loss": "35 %"},
)
TARGET_SHEET = Worksheet(
    name="target-weight",
    title="Weight when done",
    stage="dry",
    question="What will this piece weigh when it is done?",
    inputs=(
        START,
        Number("target_loss", "Target loss", LOSS, 0.0, MOST_LOSS, default=USUAL_LOSS, help=LOSS_HELP),
    ),
    compute=_target_only,
    example={"start_kg": "1250 g", "target_loss": "35 %"},
)
