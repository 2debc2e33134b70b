"""The single sum of the last day: is this one ready?"""

from __future__ import annotations

from attrs import frozen

from core.dry.shrink import MOST_LOSS, shrink
from core.ferment.outcome import Deviation, Outcome
from core.quantities import DAYS, FRACTION, LOSS, PARTS_PER_MILLION, PH, PIECE_MASS, WATER_ACTIVITY
from core.refusals import Missing
from core.release.readiness import SIGNS, STYLES, Evidence, Style, judge
from core.verdict import Verdict
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet

NO_SIGN, NOT_LOOKED = "none", "not-looked"
FERMENTATIONS = {
    "not-known": "not known",
    "passed": "stayed below the limit",
    "over": "reached the limit",
    "cleared": "reached the limit, then tested clean and cleared",
}
_OUTCOMES: dict[str, Outcome | None] = {
    "not-known": None,
    "passed": Outcome("passed"),
    "over": Outcome("over"),
    "cleared": Outcome("over", deviation=Deviation(kept=True, result="clean")),
}


@frozen
class _Weights:
    """Both weights or neither: one alone says nothing."""

    start_kg: float | None
    now_kg: float | None
    target_loss: float | None

    def figures(self) -> tuple[Figure, ...]:
        if self.start_kg is None and self.now_kg is None:
            return ()
        if self.start_kg is None or self.now_kg is None:
            missing = "start_kg" if self.start_kg is None else "now_kg"
            raise Missing(missing, "Enter both weights, the one it was hung with and the one now, or neither.")
        return shrink(self.start_kg, self.now_kg, self.target_loss)

    @property
    def loss(self) -> float | None:
        return next((figure.value for figure in self.figures() if figure.key == "loss"), None)


def _figures(
    start_kg: float | None, now_kg: float | None, target_loss: float | None, **_: float | str | None
) -> tuple[Figure, ...]:
    return _Weights(start_kg, now_kg, target_loss).figures()


def _verdict(
    style: Style,
    start_kg: float | None,
    now_kg: float | None,
    target_loss: float | None,
    water_activity: float | None,
    measured_on: str,
    lowest_ph: float | None,
    last_ph: float | None,
    fermentation: str,
    nitrite: float | None,
    nitrate: float | None,
    salt: float | None,
    hung: float | None,
    least: float | None,
    signs: str,
) -> Verdict:
    return judge(
        Evidence(
            style=style,
            loss=_Weights(start_kg, now_kg, target_loss).loss,
            target_loss=target_loss,
            lowest_ph=lowest_ph,
            last_ph=last_ph,
            water_activity=water_activity,
            activity_from_mate=measured_on == "mate",
            days_hung=None if hung is None else hung / 86400,
            least_days=None if least is None else least / 86400,
            nitrite_ppm=None if nitrite is None else nitrite * 1e6,
            cure_ppm=None if nitrite is None else (nitrite + (nitrate or 0.0)) * 1e6,
            salt=salt,
            fermentation=_OUTCOMES.get(fermentation),
            signs={NO_SIGN: (), NOT_LOOKED: None}.get(signs, (signs,)),
        )
    )


READY = Worksheet(
    name="ready",
    title="Is this one ready?",
    stage="release",
    question="Is this piece ready, must it wait, or must it be thrown away?",
    inputs=(
        Choice("style", "Kind", STYLES),
        Number("start_kg", "Start weight", PIECE_MASS, 0.001, 999.0, optional=True, help="As it was hung."),
        Number("now_kg", "Weight now", PIECE_MASS, 0.001, 999.0, optional=True),
        Number("target_loss", "Target loss", LOSS, 0.01, MOST_LOSS, default=0.35, optional=True),
        Number("water_activity", "Water activity", WATER_ACTIVITY, 0.5, 1.0, optional=True),
        Choice(
            "measured_on",
            "Measured on",
            {"piece": "this piece", "mate": "a piece of the same batch that had lost no more"},
            default="piece",
            help="Where the water activity was measured.",
        ),
        Number("lowest_ph", "Lowest pH", PH, 3.5, 8.0, optional=True, help="The lowest while it fermented."),
        Number("last_ph", "Latest pH", PH, 3.5, 8.0, optional=True, help="Mould lets the pH rise again."),
        Choice(
            "fermentation",
            "Degree-hours",
            FERMENTATIONS,
            default="not-known",
            help="To pH 5.3; of a slow sausage, of its warm days. A whole muscle needs none.",
        ),
        Number(
            "nitrite",
            "Nitrite that went in",
            PARTS_PER_MILLION,
            0.0,
            0.01,
            optional=True,
            help="From the weighing sheet; 0 if none was used.",
        ),
        Number(
            "nitrate",
            "Nitrate that went in",
            PARTS_PER_MILLION,
            0.0,
            0.01,
            optional=True,
            help="Only for a slow sausage.",
        ),
        Number("salt", "All salt that went in", FRACTION, 0.0, 0.2, optional=True, help="Only for a slow sausage."),
        Number("hung", "Time hanging", DAYS, 0.0, 3650 * 86400.0, optional=True),
        Number("least", "Least time hanging", DAYS, 0.0, 3650 * 86400.0, optional=True, help="Empty if you set none."),
        Choice(
            "signs",
            "Signs of spoilage",
            {NOT_LOOKED: "not looked yet", NO_SIGN: "none found", **SIGNS},
            help="One is enough to throw it away.",
        ),
    ),
    compute=_figures,
    judge=_verdict,
    example={
        "style": "fermented",
        "start_kg": "1250 g",
        "now_kg": "800 g",
        "water_activity": "0.89",
        "lowest_ph": "4.9",
        "last_ph": "5.1",
        "fermentation": "passed",
        "nitrite": "156 ppm",
        "signs": "none",
    },
)
