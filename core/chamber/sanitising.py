"""Diluting a sanitiser: how much of the stock goes into how much water, and may it stay on without a rinse?"""

from __future__ import annotations

from typing import Literal

from core.chamber.sanitising_agents import AGENTS, FRESH_DILUTION, PPM, Agent, conditions, within
from core.chamber.sanitising_measures import CONTACT, SPOONS, STOCK, STRENGTH
from core.quantities import (
    PARTS_PER_MILLION,
    RATIO,
    TEMPERATURE,
    VOLUME,
    Amount,
)
from core.refusals import OutOfRange, require_between
from core.sources import (
    COMMON_PRACTICE,
    DEFINITION,
    FOOD_CODE_SANITISERS,
    PRODUCT_LABEL,
)
from core.working import Figure, Step

After = Literal["drain", "rinse"]
Stated = Literal["active", "hypochlorite"]

CHLORINE_IN_HYPOCHLORITE = 70.906 / 74.442
"""Available chlorine in sodium hypochlorite, by the molar masses of Cl₂ and NaOCl: 8.25 % holds 7.86 %."""
WATER_KG_PER_LITRE = 1.0

LABEL_FIRST = "The product’s label comes before these figures; a product not meant for food surfaces stays away."
NOTHING_ELSE = "It is mixed with water and with nothing else, in open air."
RINSE = "Rinse with drinking water after it has stood: it is too strong to stay on."
RINSE_ALL = "Rinse with drinking water after it has stood."
NO_LIMIT_KNOWN = (
    "No rule read here says how strong it may stay on: rinse with drinking water, unless the label says not to."
)
DRAIN = "Let it drain and dry in the air; do not rinse, and do not wipe."
NOT_A_SANITISER = (
    "Vinegar takes off lime. It is not a sanitiser: wash, rinse, and sanitise afterwards with something that is one."
)


def made_ppm(stock_m3: float, volume_m3: float, strength: float, stock_kg_per_litre: float = 1.0) -> float:
    """What a measured stock makes: parts per million of the active substance. The bare formula.

    strength: by weight, 0 to 1, so that the active mass is strength × weight of a litre; a strength given by volume
    wants stock_kg_per_litre 1.
    """
    return stock_m3 * stock_kg_per_litre * strength / (volume_m3 * WATER_KG_PER_LITRE) / PPM


def stock_m3(target_ppm: float, volume_m3: float, strength: float, stock_kg_per_litre: float = 1.0) -> float:
    """The stock that makes the target: the inverse of `made_ppm`."""
    return target_ppm * PPM * volume_m3 * WATER_KG_PER_LITRE / (strength * stock_kg_per_litre)


def no_rinse_ppm(agent: Agent, label_ppm: float | None = None) -> float | None:
    """Up to what strength it may stay on. A label may lower every limit, and raise that of quats and peracetic acid."""
    if label_ppm is None:
        return agent.no_rinse_ppm
    return label_ppm if agent.label_ppm is None else min(label_ppm, agent.label_ppm)


def dilute(
    agent: str,
    strength: float,
    target_ppm: float,
    volume_m3: float,
    after: After = "drain",
    label_ppm: float | None = None,
    ph: float | None = None,
    stated: Stated = "active",
    stock_kg_per_litre: float = 1.0,
) -> tuple[Figure, ...]:
    """A working solution of a sanitiser.

    agent: a key of AGENTS. strength: of the stock, 0 to 1. target_ppm: above 0, and weaker than the stock. volume_m3:
    of the finished solution, up to 1 m³. after: "drain" lets it stay on, "rinse" takes it off again. label_ppm: the
    label's own limit without rinse. ph: of the solution. stated: whether the strength counts the active substance or
    sodium hypochlorite. stock_kg_per_litre: 0.8 to 2; 1 is what printed tables count with.
    Returns the stock, the same in spoons, the water, the limit, the least temperature and the contact time. Raises
    OutOfRange: too weak to sanitise, over the no-rinse limit with "drain", a stock too weak, a pH that will not do.
    Source: 21 CFR 178.1010 and 40 CFR 180.940 (limits), Food Code 4-501.114 (strength, temperature, time).
    """
    chosen = _require(agent, strength, target_ppm, volume_m3, stated, stock_kg_per_litre)
    _require_ph(agent, ph)
    limit_ppm = no_rinse_ppm(chosen, label_ppm)
    _require_limit(chosen, target_ppm, limit_ppm, after)
    active = strength * CHLORINE_IN_HYPOCHLORITE if stated == "hypochlorite" else strength
    measured = stock_m3(target_ppm, volume_m3, active, stock_kg_per_litre)
    if not within(measured, volume_m3):
        raise OutOfRange("target", f"The stock itself is weaker than that: it holds {_ppm(active * 1e6)}.")
    ends = _ends(target_ppm, limit_ppm, after)
    return (
        _stock(chosen, active, target_ppm, volume_m3, measured, stock_kg_per_litre, strength, ends),
        _spoons(measured),
        _water(volume_m3, measured),
        *_limit(chosen, limit_ppm, label_ppm),
        *_conditions(agent, target_ppm, ph),
    )


def descaler(volume_m3: float) -> tuple[Figure, ...]:
    """Vinegar and water, half and half, against lime: volume_m3 above 0, up to 1. Raises OutOfRange."""
    _require_volume(volume_m3)
    half = Amount(volume_m3 / 2, VOLUME)
    step = Step("{all} ÷ 2 = {half}", {"all": Amount(volume_m3, VOLUME), "half": half})
    cautions = (NOT_A_SANITISER, "Never let it meet chlorine bleach: that sets free chlorine gas. Rinse it all away.")
    return (
        Figure("vinegar", "White vinegar, 5 % acid", half.value, VOLUME, (step,), COMMON_PRACTICE, cautions),
        Figure("water", "Water", half.value, VOLUME, (step,), COMMON_PRACTICE),
    )


def _require(
    agent: str, strength: float, target_ppm: float, volume_m3: float, stated: Stated, stock_kg_per_litre: float
) -> Agent:
    if agent not in AGENTS:
        raise OutOfRange("agent", f"The sanitiser must be one of {', '.join(AGENTS)}.")
    require_between("stock", "Strength of the stock", strength, 1e-5, 1.0, "10 ppm and 100 %")
    require_between("target", "Strength wanted", target_ppm, 1.0, 10_000.0, "1 and 10 000 ppm")
    _require_volume(volume_m3)
    require_between("weight", "Weight of a litre of the stock", stock_kg_per_litre, 0.8, 2.0, "0.8 and 2 kg")
    if stated == "hypochlorite" and agent != "chlorine":
        raise OutOfRange("stated", "Only chlorine bleach is stated as sodium hypochlorite.")
    chosen = AGENTS[agent]
    if chosen.least_ppm is not None and not within(chosen.least_ppm, target_ppm):
        raise OutOfRange(
            "target",
            f"Weaker than {_ppm(chosen.least_ppm)} of {chosen.active} does not sanitise (Food Code 4-501.114).",
        )
    return chosen


def _require_volume(volume_m3: float) -> None:
    if not 0 < volume_m3 <= 1:
        raise OutOfRange("volume", "The volume must be more than nothing and no more than 1000 L (1057 qt).")


def _require_ph(agent: str, ph: float | None) -> None:
    if ph is None:
        return
    require_between("ph", "The pH", ph, 0.0, 14.0, "0 and 14")
    if agent == "chlorine" and ph > 10:
        raise OutOfRange("ph", "Chlorine wants pH 10 or less (Food Code 4-501.114): take other water.")
    if agent == "chlorine" and ph < 5:
        raise OutOfRange("ph", "Below pH 5 something acid is in it, and chlorine gas comes off: throw it away.")
    if agent == "iodine" and ph > 5:
        raise OutOfRange("ph", "Iodine wants pH 5.0 or less, unless its label says otherwise: then leave this empty.")


def _require_limit(agent: Agent, target_ppm: float, limit_ppm: float | None, after: After) -> None:
    if limit_ppm is None or after == "rinse" or within(target_ppm, limit_ppm):
        return
    raise OutOfRange(
        "target",
        f"{_ppm(target_ppm)} of {agent.active} may not stay on: the limit without a rinse is {_ppm(limit_ppm)}. Make "
        "it weaker, or choose to rinse with drinking water afterwards.",
    )


def _ends(target_ppm: float, limit_ppm: float | None, after: After) -> str:
    if limit_ppm is None:
        return RINSE_ALL if after == "rinse" else NO_LIMIT_KNOWN
    if not within(target_ppm, limit_ppm):
        return RINSE
    return DRAIN if after == "drain" else RINSE_ALL


def _stock(
    agent: Agent,
    active: float,
    target_ppm: float,
    volume_m3: float,
    measured_m3: float,
    stock_kg_per_litre: float,
    stated_strength: float,
    ends: str,
) -> Figure:
    amounts = {
        "stated": Amount(stated_strength, STRENGTH),
        "share": Amount(CHLORINE_IN_HYPOCHLORITE, RATIO),
        "active": Amount(active, STRENGTH),
        "target": Amount(target_ppm * PPM, PARTS_PER_MILLION),
        "volume": Amount(volume_m3, VOLUME),
        "weight": Amount(stock_kg_per_litre, RATIO),
        "stock": Amount(measured_m3, STOCK),
    }
    counted = (Step("Sodium hypochlorite as available chlorine: {stated} × {share} = {active}", amounts),)
    return Figure(
        key="stock",
        name=f"Stock of {agent.name} to measure",
        value=measured_m3,
        quantity=STOCK,
        working=(
            *(counted if active != stated_strength else ()),
            Step("Strength wanted × volume ÷ (strength of the stock × kilograms to its litre):", amounts),
            Step("{target} × {volume} ÷ ({active} × {weight}) = {stock}", amounts),
        ),
        source=DEFINITION,
        cautions=(
            LABEL_FIRST,
            ends,
            NOTHING_ELSE,
            *_weight_caution(stock_kg_per_litre),
            FRESH_DILUTION,
            *agent.cautions,
        ),
    )


def _weight_caution(stock_kg_per_litre: float) -> tuple[str, ...]:
    if stock_kg_per_litre != WATER_KG_PER_LITRE:
        return ()
    return (
        "A litre of stock is counted as 1 kg, as printed tables do. A concentrate stated by weight is heavier, bleach "
        "some 1.1 kg (from memory), and comes out that much stronger: a test strip shows it.",
    )


def _spoons(measured_m3: float) -> Figure:
    amounts = {"stock": Amount(measured_m3, STOCK), "spoons": Amount(measured_m3, SPOONS)}
    step = Step("{stock} = {spoons}", amounts)
    cautions = ("A measure for kitchen use is right to some tenths only; below a teaspoon a syringe is better.",)
    return Figure("spoons", "The same in level US spoons", measured_m3, SPOONS, (step,), DEFINITION, cautions)


def _water(volume_m3: float, measured_m3: float) -> Figure:
    water = Amount(volume_m3 - measured_m3, VOLUME)
    amounts = {"volume": Amount(volume_m3, VOLUME), "stock": Amount(measured_m3, STOCK), "water": water}
    cautions = ("The water first, then the stock.",)
    step = Step("{volume} − {stock} = {water}", amounts)
    return Figure("water", "Water to take", water.value, VOLUME, (step,), DEFINITION, cautions)


def _limit(agent: Agent, limit_ppm: float | None, label_ppm: float | None) -> tuple[Figure, ...]:
    if limit_ppm is None:
        return ()
    by_label = label_ppm is not None and within(label_ppm, limit_ppm)
    limit = Amount(limit_ppm * PPM, PARTS_PER_MILLION)
    words = "The label’s own" if by_label else f"Not more than this of {agent.active} may stay on, drained"
    source = PRODUCT_LABEL if by_label else agent.limit_source
    step = Step(f"{words}: {{limit}}", {"limit": limit})
    return (Figure("limit", "Limit without a rinse", limit.value, PARTS_PER_MILLION, (step,), source),)


def _conditions(agent: str, target_ppm: float, ph: float | None) -> tuple[Figure, ...]:
    asked = conditions(agent, target_ppm, ph)
    contact = Amount(asked.contact_s, CONTACT)
    wet = (
        "Everything stays wet for all of it. The label often asks for more, and then that holds.",
        *(("How warm the solution must be, its label says.",) if asked.least_c is None else ()),
    )
    time = Figure(
        "contact",
        "Contact time, at least",
        contact.value,
        CONTACT,
        (Step(f"For {asked.words}: {{contact}}", {"contact": contact}),),
        FOOD_CODE_SANITISERS,
        wet,
    )
    if asked.least_c is None:
        return (time,)
    least = Amount(asked.least_c, TEMPERATURE)
    step = Step(f"For {asked.words}: {{least}}", {"least": least})
    warmth = Figure("temperature", "Solution at least", least.value, TEMPERATURE, (step,), FOOD_CODE_SANITISERS)
    return (warmth, time)


def _ppm(ppm: float) -> str:
    return Amount(ppm * PPM, PARTS_PER_MILLION).show_exact(significant=4)
