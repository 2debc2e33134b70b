"""Diluting a sanitiser: how much of the stock goes into how much water, and may it stay on without a rinse?"""

from __future__ import annotations

from typing import Literal

from attrs import evolve

from core.chamber.sanitising_agents import AGENTS, CHLORINES, FRESH_DILUTION, NO_AGENT, PPM, Agent, conditions, within
from core.chamber.sanitising_measures import CONTACT, STRENGTH
from core.chamber.sanitising_stock import Stated, dry_figures, liquid_figures, require_stock, require_volume
from core.quantities import PARTS_PER_MILLION, PH, TEMPERATURE, VOLUME, Amount
from core.refusals import OutOfRange, require_between
from core.sentence import Message, Said, Sentence, said
from core.sources import COMMON_PRACTICE, FOOD_CODE_SANITISERS, PRODUCT_LABEL
from core.working import Figure

After = Literal["drain", "rinse"]

LABEL_FIRST: Message = (
    "The product’s label comes before these figures; a product not meant for food surfaces stays away."
)
NOTHING_ELSE: Message = "It is mixed with water and with nothing else, in open air."
RINSE: Message = "Rinse with drinking water after it has stood: it is too strong to stay on."
RINSE_ALL: Message = "Rinse with drinking water after it has stood."
NO_LIMIT_KNOWN: Message = (
    "No rule read here says how strong it may stay on: rinse with drinking water, unless the label says not to."
)
DRAIN: Message = "Let it drain and dry in the air; do not rinse, and do not wipe."
NOT_A_SANITISER: Message = (
    "Vinegar removes limescale. It is not a sanitiser: wash, rinse, and sanitise afterwards with something that is one."
)


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
    of the finished solution, up to 10 000 US gallons. after: "drain" lets it stay on, "rinse" takes it off again.
    label_ppm: the label's own limit without rinse. ph: of the solution. stated: whether the strength counts the active
    substance or sodium hypochlorite. stock_kg_per_litre: 0.8 to 2; 1 is what printed tables count with.
    Returns the stock (litres, or grams where it is dry), the same in spoons, the water, the limit, the least
    temperature and the contact time. Raises OutOfRange: too weak to sanitise, over the no-rinse limit with "drain", a
    stock that is not sold or too weak, a pH that will not do.
    Source: 21 CFR 178.1010 and 40 CFR 180.940 (limits), Food Code 4-501.114 (strength, temperature, time).
    """
    chosen = _require(agent, strength, target_ppm, volume_m3, stated, stock_kg_per_litre)
    _require_ph(agent, ph)
    limit_ppm = no_rinse_ppm(chosen, label_ppm)
    _require_limit(chosen, target_ppm, limit_ppm, after)
    stock, *rest = (
        dry_figures(chosen, strength, target_ppm, volume_m3)
        if chosen.dry
        else liquid_figures(chosen, strength, stated, target_ppm, volume_m3, stock_kg_per_litre)
    )
    ends = _ends(target_ppm, limit_ppm, after)
    cautions: tuple[Said, ...] = (LABEL_FIRST, ends, NOTHING_ELSE, *stock.cautions, FRESH_DILUTION, *chosen.cautions)
    return (
        evolve(stock, cautions=cautions),
        *rest,
        *_limit(chosen, limit_ppm, label_ppm),
        *_conditions(agent, target_ppm, ph),
    )


def descaler(volume_m3: float) -> tuple[Figure, ...]:
    """Vinegar and water, half and half, against lime: volume_m3 above 0, up to 10 000 US gallons. Raises OutOfRange."""
    require_volume(volume_m3)
    half = Amount(volume_m3 / 2, VOLUME)
    step = Sentence("{all} ÷ 2 = {half}", {"all": Amount(volume_m3, VOLUME), "half": half})
    cautions = (NOT_A_SANITISER, "Never let it meet chlorine bleach: that sets free chlorine gas. Rinse it all away.")
    return (
        Figure("vinegar", "White vinegar, 5 % acid", half.value, VOLUME, (step,), COMMON_PRACTICE, cautions),
        Figure("water", "Water", half.value, VOLUME, (step,), COMMON_PRACTICE),
    )


def _require(
    agent: str, strength: float, target_ppm: float, volume_m3: float, stated: Stated, stock_kg_per_litre: float
) -> Agent:
    if agent not in AGENTS:
        raise OutOfRange("agent", NO_AGENT)
    chosen = AGENTS[agent]
    require_between("target", "Strength wanted", target_ppm, 1.0, 10_000.0, STRENGTH)
    require_volume(volume_m3)
    require_stock(chosen, strength, stated, stock_kg_per_litre)
    _require_least(chosen, target_ppm)
    return chosen


def _require_least(chosen: Agent, target_ppm: float) -> None:
    if chosen.least_ppm is None or within(chosen.least_ppm, target_ppm):
        return
    told = {"least": _ppm(chosen.least_ppm), "active": Sentence(chosen.active), "rule": Sentence(chosen.least_rule)}
    text: Message = "Too weak: less than {least} of {active} does not sanitise ({rule})."
    if chosen.least_source is not FOOD_CODE_SANITISERS:
        text = (
            "Too weak: less than {least} of {active} does not sanitise ({rule}). Where its label names a weaker one, "
            "choose another product, by its label."
        )
    raise OutOfRange("target", Sentence(text, told))


def _require_ph(agent: str, ph: float | None) -> None:
    if ph is None:
        return
    require_between("ph", "The pH", ph, 0.0, 14.0, PH)
    if agent in CHLORINES and ph > 10:
        raise OutOfRange("ph", "Chlorine needs pH 10 or less (Food Code 4-501.114): take other water.")
    if agent in CHLORINES and ph < 5:
        raise OutOfRange("ph", "Below pH 5 something acid is in it, and chlorine gas comes off: throw it away.")
    if agent == "iodine" and ph > 5:
        raise OutOfRange("ph", "Iodine needs pH 5.0 or less, unless its label says otherwise: then leave this empty.")


def _require_limit(agent: Agent, target_ppm: float, limit_ppm: float | None, after: After) -> None:
    if limit_ppm is None or after == "rinse" or within(target_ppm, limit_ppm):
        return
    raise OutOfRange(
        "target",
        Sentence(
            "{made} of {active} may not stay on: the limit without a rinse is {limit}. Make it weaker, or choose to "
            "rinse with drinking water afterwards.",
            {"made": _ppm(target_ppm), "active": Sentence(agent.active), "limit": _ppm(limit_ppm)},
        ),
    )


def _ends(target_ppm: float, limit_ppm: float | None, after: After) -> Message:
    if limit_ppm is None:
        return RINSE_ALL if after == "rinse" else NO_LIMIT_KNOWN
    if not within(target_ppm, limit_ppm):
        return RINSE
    return DRAIN if after == "drain" else RINSE_ALL


def _limit(agent: Agent, limit_ppm: float | None, label_ppm: float | None) -> tuple[Figure, ...]:
    if limit_ppm is None:
        return ()
    by_label = label_ppm is not None and within(label_ppm, limit_ppm)
    limit = Amount(limit_ppm * PPM, PARTS_PER_MILLION)
    source = PRODUCT_LABEL if by_label else agent.limit_source
    text = "The label’s own: {limit}" if by_label else "Not more than this of {active} may stay on, drained: {limit}"
    step = Sentence(text, {"active": Sentence(agent.active), "limit": limit})
    return (Figure("limit", "Limit without a rinse", limit.value, PARTS_PER_MILLION, (step,), source),)


def _conditions(agent: str, target_ppm: float, ph: float | None) -> tuple[Figure, ...]:
    asked = conditions(agent, target_ppm, ph)
    contact = Amount(asked.contact_s, CONTACT)
    wet: tuple[Message, ...] = (
        "Everything stays wet for all of it. The label often asks for more, and then that holds.",
    )
    if asked.least_c is None:
        wet = (*wet, "How warm the solution must be, its label says.")
    time = Figure(
        "contact",
        "Contact time, at least",
        contact.value,
        CONTACT,
        (Sentence("For {what}: {contact}", {"what": said(asked.words), "contact": contact}),),
        FOOD_CODE_SANITISERS,
        wet,
    )
    if asked.least_c is None:
        return (time,)
    least = Amount(asked.least_c, TEMPERATURE)
    step = Sentence("For {what}: {least}", {"what": said(asked.words), "least": least})
    temperature = Figure("temperature", "Solution at least", least.value, TEMPERATURE, (step,), FOOD_CODE_SANITISERS)
    return (temperature, time)


def _ppm(ppm: float) -> Amount:
    return Amount(ppm * PPM, PARTS_PER_MILLION)
