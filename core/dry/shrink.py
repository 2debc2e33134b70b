"""Weight loss: how much of a piece has gone, what it should weigh when it is done, and how fast it is going.

All of the loss is counted as water. Weights are of the hung piece, string and casing included, tared alike each time.
"""

from __future__ import annotations

import math

from core.meat import MOST_LOSS, USUAL_LOSS
from core.quantities import DAYS, LOSS, LOSS_RATE, PIECE_MASS, Amount, Quantity
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import DEFINITION, USDA_LEAN_WATER, Source
from core.units import HOUR_S
from core.working import Figure
from core.worksheet import Number, Worksheet

HEAVIEST_KG = 1000.0

GAINED = "It weighs more than at the start: check the scale and the tag."
TOO_DRY = "That is more than the water in meat: check the weights and the tag."


def lost(start_kg: float, now_kg: float) -> float:
    """Share of the start weight lost; negative for a gain. Raises OutOfRange on "start_kg" or "now_kg"."""
    _require_weight("start_kg", "The start weight", start_kg)
    _require_weight("now_kg", "The weight now", now_kg)
    return (start_kg - now_kg) / start_kg


def loss(start_kg: float, now_kg: float) -> Figure:
    """Share of the start weight lost. Weights above 0; a gain is negative and cautioned."""
    share = lost(start_kg, now_kg)
    return _figure(
        "loss",
        "Loss",
        share,
        LOSS,
        Sentence(
            "(Start − now) ÷ start: ({start} − {now}) ÷ {start} = {loss}",
            {"start": _mass(start_kg), "now": _mass(now_kg), "loss": Amount(share, LOSS)},
        ),
        cautions=_doubts(share),
        source=USDA_LEAN_WATER if share > MOST_LOSS else DEFINITION,
    )


def water_lost(start_kg: float, now_kg: float) -> Figure:
    """Kilograms of water gone, all of the loss being counted as water; negative for a gain."""
    lost(start_kg, now_kg)
    gone = Amount(start_kg - now_kg, PIECE_MASS)
    return _figure(
        "water_lost",
        "Water lost",
        gone.value,
        PIECE_MASS,
        Sentence(
            "Start − now: {start} − {now} = {gone}", {"start": _mass(start_kg), "now": _mass(now_kg), "gone": gone}
        ),
    )


def yield_(start_kg: float, now_kg: float) -> Figure:
    """Share of the start weight that is left."""
    left = Amount(1 - lost(start_kg, now_kg), LOSS)
    return _figure(
        "yield",
        "Left of the start weight",
        left.value,
        LOSS,
        Sentence(
            "Now ÷ start: {now} ÷ {start} = {left}", {"start": _mass(start_kg), "now": _mass(now_kg), "left": left}
        ),
    )


def target_weight(start_kg: float, target_loss: float) -> Figure:
    """What the piece weighs when it has lost the target. target_loss: 0 to 0.75. Raises OutOfRange on "target_loss"."""
    _require_weight("start_kg", "The start weight", start_kg)
    _require_target(target_loss)
    target = _mass(start_kg * (1 - target_loss))
    return _figure(
        "target_weight",
        "Weight when done",
        target.value,
        PIECE_MASS,
        Sentence(
            "Start × (1 − target loss): {start} × (1 − {loss}) = {target}",
            {"start": _mass(start_kg), "loss": Amount(target_loss, LOSS), "target": target},
        ),
    )


def remaining(start_kg: float, now_kg: float, target_loss: float) -> Figure:
    """Kilograms still to lose; nothing once the target is reached."""
    target = target_weight(start_kg, target_loss)
    lost(start_kg, now_kg)
    left = Amount(max(0.0, now_kg - target.value), PIECE_MASS)
    return _figure(
        "remaining",
        "Still to lose",
        left.value,
        PIECE_MASS,
        Sentence(
            "Now − weight when done, or nothing when that is reached: {now} − {target} → {left}",
            {"now": _mass(now_kg), "target": target.amount, "left": left},
        ),
    )


def loss_per_day(start_kg: float, earlier_kg: float, later_kg: float, between_s: float) -> Figure:
    """Share of the start weight lost per day between two weighings. between_s: an hour or more.

    Raises OutOfRange on "between_s": over less than an hour the scale's own error is larger than the loss.
    """
    gone = lost(start_kg, later_kg) - lost(start_kg, earlier_kg)
    if not HOUR_S <= between_s < math.inf:
        raise OutOfRange("between_s", "The two weighings must be at least an hour apart.")
    rate = Amount(gone / between_s, LOSS_RATE)
    return _figure(
        "loss_per_day",
        "Loss a day",
        rate.value,
        LOSS_RATE,
        Sentence(
            "(Earlier − later) ÷ start ÷ time: ({earlier} − {later}) ÷ {start} ÷ {time} = {rate}",
            {
                "earlier": _mass(earlier_kg),
                "later": _mass(later_kg),
                "start": _mass(start_kg),
                "time": Amount(between_s, DAYS),
                "rate": rate,
            },
        ),
    )


def _require_weight(field: str, label: str, mass_kg: float) -> None:
    if not 0 < mass_kg < HEAVIEST_KG:
        raise OutOfRange(field, f"{label} must be more than 0 g and less than 1000 kg (2205 lb).")


def _require_target(target_loss: float) -> None:
    if not 0 <= target_loss <= MOST_LOSS:
        raise OutOfRange(
            "target_loss", "The target loss must be between 0 and 75 %: meat holds no more water than that."
        )


def _doubts(share: float) -> tuple[str, ...]:
    if share < 0:
        return (GAINED,)
    return (TOO_DRY,) if share > MOST_LOSS else ()


def _mass(mass_kg: float) -> Amount:
    return Amount(mass_kg, PIECE_MASS)


def _figure(
    key: str,
    name: str,
    value: float,
    quantity: Quantity,
    step: Sentence,
    cautions: tuple[str, ...] = (),
    source: Source = DEFINITION,
) -> Figure:
    return Figure(key, name, value, quantity, (step,), source, cautions)


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
TARGET_HELP = "Share of the start weight it must lose: 35 % is common practice; no published source."
SHRINK_SHEET = Worksheet(
    name="shrink",
    title="Weight loss",
    stage="dry",
    question="How much has this piece lost?",
    inputs=(
        START,
        NOW,
        Number("target_loss", "Target loss", LOSS, 0.0, MOST_LOSS, default=USUAL_LOSS, optional=True, help=TARGET_HELP),
    ),
    compute=shrink,
    example={"start_kg": "1250 g", "now_kg": "850 g", "target_loss": "35 %"},
)
TARGET_SHEET = Worksheet(
    name="target-weight",
    title="Weight when done",
    stage="dry",
    question="What will this piece weigh when it is done?",
    inputs=(START, Number("target_loss", "Target loss", LOSS, 0.0, MOST_LOSS, default=USUAL_LOSS, help=TARGET_HELP)),
    compute=_target_only,
    example={"start_kg": "1250 g", "target_loss": "35 %"},
)
