"""What is known of a piece when it is judged, and which readings can be believed at all."""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.ferment.crossing import BELIEVABLE_PH
from core.ferment.outcome import Outcome
from core.ferment.rules import TARGET_PH
from core.mix.held import Held
from core.mix.limits import Method

Style = Literal["fermented", "slow", "whole-muscle"]
STYLES: dict[str, str] = {
    "fermented": "fermented sausage",
    "slow": "slow sausage, not meant to sour to pH 5.3",
    "whole-muscle": "whole muscle",
}
SIGNS = {
    "smell": "a rotten, putrid or ammonia smell",
    "slime": "slime on the surface",
    "mould": "black, green, orange, red or pink mould",
    "gas": "swelling or gas pockets",
    "colour": "green or grey patches inside",
    "soft": "a soft, wet or sour core",
    "pests": "flies, maggots or mites",
}

ACID_PH = TARGET_PH
BELIEVABLE_ACTIVITY = (0.5, 1.0)  # practice
SLACK = 1e-9

METHOD_OF: dict[Style, Method] = {"fermented": "comminuted", "slow": "comminuted", "whole-muscle": "dry-rub"}


@frozen
class Evidence:
    """What is known of a piece. None means not known.

    loss, target_loss: share of the start weight. water_activity: of this piece, or (activity_from_mate) of one of the
    same batch that had lost no more. nitrite_ppm: going in, as sodium nitrite; 0 where none was used. signs: keys of
    SIGNS; empty where somebody looked and found nothing, None where nobody looked. fermentation: what became of the
    degree-hours to pH 5.3, or of a slow style's warm days. cure_ppm: nitrite and nitrate together, going in. salt: all
    of it, as a share of the meat. held: the rows of the rules it was cured under, each with what it counts; without
    them the US chart for its kind holds. licence: the exception on record that allows more.
    """

    style: Style
    loss: float | None = None
    target_loss: float | None = None
    lowest_ph: float | None = None
    last_ph: float | None = None
    water_activity: float | None = None
    activity_from_mate: bool = False
    days_hung: float | None = None
    least_days: float | None = None
    nitrite_ppm: float | None = None
    signs: tuple[str, ...] | None = None
    fermentation: Outcome | None = None
    cure_ppm: float | None = None
    salt: float | None = None
    held: tuple[Held, ...] = ()
    licence: str = ""

    def believable_lowest_ph(self) -> float | None:
        readings = (_believable(self.lowest_ph, BELIEVABLE_PH), self.believable_last_ph())
        return min((ph for ph in readings if ph is not None), default=None)

    def believable_last_ph(self) -> float | None:
        return _believable(self.last_ph, BELIEVABLE_PH)

    def activity(self) -> float | None:
        return _believable(self.water_activity, BELIEVABLE_ACTIVITY)


def _believable(value: float | None, between: tuple[float, float]) -> float | None:
    """A reading no meat gives is no evidence: it counts as missing."""
    return value if value is not None and between[0] <= value <= between[1] else None
