"""The stock of a sanitiser: what its label may say, what no stock is, and how much of it a solution takes."""

from __future__ import annotations

from typing import Literal

from core.chamber.sanitising_agents import CHLORINE_MOLAR, PPM, Agent, within
from core.chamber.sanitising_measures import SPOONS, STOCK, STRENGTH
from core.quantities import DENSITY, DOSE_MASS, FRACTION, MASS, PARTS_PER_MILLION, RATIO, VOLUME, Amount
from core.refusals import OutOfRange, require_between
from core.sentence import Message, Rounded, Sentence
from core.sources import DEFINITION
from core.traced import traced
from core.units import GALLON_M3
from core.working import Figure

Stated = Literal["active", "hypochlorite"]

CHLORINE_IN_HYPOCHLORITE = CHLORINE_MOLAR / 74.442
"""Available chlorine in sodium hypochlorite, by the molar masses of Cl₂ and NaOCl: 8.25 % holds 7.86 %."""
WATER_KG_PER_LITRE = 1.0
WEAK_STOCK = 0.01
LARGEST_M3 = 10_000 * GALLON_M3
"""The largest that a handbook read here tabulates: 410 ppm in 10 000 gal."""

POURED_NOT_WEIGHED = (
    "No liquid bleach is that strong: it holds 16 % at most (common practice; no published source). Granules and "
    "tablets are weighed, not poured: choose calcium hypochlorite or isocyanurate as the sanitiser."
)
BLEACH_KG_PER_M3 = 1100.0
"""As sold, from memory."""
IS_IT_SO_WEAK: Message = (
    "A stock of less than 1 % is rare: see that its label says so, and that this is no fraction typed for a per-cent. "
    "5.25 % is 0.0525 of it."
)
WEIGH_IT = "It is weighed on a scale that shows a tenth of it or finer; a spoonful says nothing."


def stock_m3(target_ppm: float, volume_m3: float, strength: float, stock_kg_per_litre: float = 1.0) -> float:
    """The stock that makes the target.

    strength: by weight, 0 to 1, so that the active mass is strength × weight of a litre; a strength given by volume
    wants stock_kg_per_litre 1.
    """
    return target_ppm * PPM * volume_m3 * WATER_KG_PER_LITRE / (strength * stock_kg_per_litre)


def stock_kg(target_ppm: float, volume_m3: float, strength: float) -> float:
    """The granules that make the target: as `stock_m3`, weighed."""
    return target_ppm * PPM * volume_m3 * 1000 * WATER_KG_PER_LITRE / strength


def active_share(strength: float, stated: Stated) -> float:
    return strength * CHLORINE_IN_HYPOCHLORITE if stated == "hypochlorite" else strength


def require_volume(volume_m3: float) -> None:
    if not 0 < volume_m3 <= LARGEST_M3 * (1 + 1e-9):
        told = Sentence(
            "The volume must be more than nothing and no more than {most}.", {"most": Amount(LARGEST_M3, VOLUME)}
        )
        raise OutOfRange("volume_m3", told)


def require_stock(agent: Agent, strength: float, stated: Stated, stock_kg_per_litre: float) -> None:
    """Raises OutOfRange on "stock", "stock_kg_m3" or "stated" for what is not sold as this agent's stock."""
    require_between("stock", "Strength of the stock", strength, 1e-5, 1.0, FRACTION)
    require_between("stock_kg_m3", "Weight of a litre of the stock", stock_kg_per_litre, 0.8, 2.0, MASS)
    if stated == "hypochlorite" and (agent.active != "available chlorine" or agent.dry):
        raise OutOfRange("stated", "Only chlorine bleach is stated as sodium hypochlorite.")
    active = active_share(strength, stated)
    if not within(active, agent.strongest):
        if agent.active == "available chlorine" and not agent.dry:
            raise OutOfRange("stock", POURED_NOT_WEIGHED)
        told = {"agent": Sentence(agent.name), "strongest": Rounded(Amount(agent.strongest, STRENGTH), 4)}
        raise OutOfRange("stock", Sentence("No {agent} is that strong: {strongest} is the most there is.", told))
    if not within(agent.weakest, active):
        raise OutOfRange(
            "stock",
            Sentence(
                "For {agent} the label says {weakest} of available chlorine or more: enter what it says. Once "
                "dissolved it is a liquid, and its own strength is not known here.",
                {"agent": Sentence(agent.name), "weakest": Amount(agent.weakest, STRENGTH)},
            ),
        )
    if agent.dry and stock_kg_per_litre != WATER_KG_PER_LITRE:
        raise OutOfRange("stock_kg_m3", "Granules are weighed, and a litre of them says nothing: leave this at 1 kg/L.")


def liquid_figures(
    agent: Agent, strength: float, stated: Stated, target_ppm: float, volume_m3: float, stock_kg_per_litre: float
) -> tuple[Figure, Figure, Figure]:
    """The stock in millilitres, the same in spoons, the water. Raises OutOfRange on "target"."""
    active = active_share(strength, stated)
    measured_m3 = stock_m3(target_ppm, volume_m3, active, stock_kg_per_litre)
    if not within(measured_m3, volume_m3):
        holds = Amount(active, PARTS_PER_MILLION)
        raise OutOfRange(
            "target", Sentence("The stock itself is weaker than that: it holds {holds}.", {"holds": holds})
        )
    amounts = {
        "stated": Amount(strength, STRENGTH),
        "share": Amount(CHLORINE_IN_HYPOCHLORITE, RATIO),
        "active": Amount(active, STRENGTH),
        "target": Amount(target_ppm * PPM, PARTS_PER_MILLION),
        "volume": Amount(volume_m3, VOLUME),
        "weight": Amount(stock_kg_per_litre, RATIO),
        "stock": Amount(measured_m3, STOCK),
    }
    counted = (Sentence("Sodium hypochlorite as available chlorine: {stated} × {share} = {active}", amounts),)
    working = (
        *(counted if stated == "hypochlorite" else ()),
        Sentence("Strength wanted × volume ÷ (strength of the stock × kilograms to its litre):", amounts),
        Sentence("{target} × {volume} ÷ ({active} × {weight}) = {stock}", amounts),
    )
    cautions = (*_weak_caution(strength), *_weight_caution(stock_kg_per_litre))
    name = Sentence("Stock of {agent} to measure", {"agent": Sentence(agent.name)})
    stock = Figure("stock", name, measured_m3, STOCK, working, DEFINITION, cautions)
    return stock, _spoons(measured_m3), _water(volume_m3, measured_m3)


def dry_figures(agent: Agent, strength: float, target_ppm: float, volume_m3: float) -> tuple[Figure, Figure]:
    """The granules in grams, and the water. strength: available chlorine, as a share of their weight."""
    weighed_kg = stock_kg(target_ppm, volume_m3, strength)
    amounts = {
        "target": Amount(target_ppm * PPM, PARTS_PER_MILLION),
        "water": Amount(volume_m3 * 1000 * WATER_KG_PER_LITRE, MASS),
        "active": Amount(strength, STRENGTH),
        "stock": Amount(weighed_kg, DOSE_MASS),
        "volume": Amount(volume_m3, VOLUME),
    }
    working = (
        Sentence("Strength wanted × weight of the solution ÷ strength of the granules:", amounts),
        Sentence("{target} × {water} ÷ {active} = {stock}", amounts),
    )
    name = Sentence("Stock of {agent} to weigh", {"agent": Sentence(agent.name)})
    stock = Figure("stock", name, weighed_kg, DOSE_MASS, working, DEFINITION, (WEIGH_IT,))
    step = Sentence("The granules take hardly any room: {volume}", amounts)
    return stock, Figure("water", "Water to take", volume_m3, VOLUME, (step,), DEFINITION, ("The water first.",))


def _weak_caution(strength: float) -> tuple[Message, ...]:
    return () if within(WEAK_STOCK, strength) else (IS_IT_SO_WEAK,)


def _weight_caution(stock_kg_per_litre: float) -> tuple[Sentence, ...]:
    if stock_kg_per_litre != WATER_KG_PER_LITRE:
        return ()
    text: Message = (
        "A litre of stock is counted as 1 kg, as printed tables do. A concentrate stated by weight is heavier, bleach "
        "some {bleach} (from memory), and comes out that much stronger: a test strip shows it."
    )
    return (Sentence(text, {"bleach": Amount(BLEACH_KG_PER_M3, DENSITY)}),)


def _spoons(measured_m3: float) -> Figure:
    amounts = {"stock": Amount(measured_m3, STOCK), "spoons": Amount(measured_m3, SPOONS)}
    step = Sentence("{stock} = {spoons}", amounts)
    cautions = ("A measure for kitchen use is right to some tenths only; below a teaspoon a syringe is better.",)
    return Figure("spoons", "The same in level US spoons", measured_m3, SPOONS, (step,), DEFINITION, cautions)


def _water(volume_m3: float, measured_m3: float) -> Figure:
    water = traced("volume", volume_m3, VOLUME) - traced("stock", measured_m3, VOLUME)
    return water.figure("water", "Water to take", VOLUME, cautions=("The water first, then the stock.",))
