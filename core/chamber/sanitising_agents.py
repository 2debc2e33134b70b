"""What one sanitises with: how strong it must be, how strong it may stay on, how warm, how long, and what never meets.

The product's label comes before every figure here.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

from attrs import frozen

from core.quantities import TEMPERATURE, Amount
from core.sentence import Message, Rounded, Said, Sentence, listed
from core.sources import (
    CFR_178_1010,
    CFR_180_940,
    COMMON_PRACTICE,
    FOOD_CODE_SANITISERS,
    NEVER_MIXED,
    Source,
)

PPM = 1e-6


@frozen
class Agent:
    """least_ppm: weaker does not sanitise, by least_rule. no_rinse_ppm: at most so strong may it stay on, only drained.

    label_ppm: at most what a label may raise that to. None where no rule we read gives a number. weakest, strongest: of
    what is sold as its stock, as a share of its weight. dry: granules or tablets, weighed and not poured.
    """

    name: Message
    active: Message
    least_ppm: float | None
    no_rinse_ppm: float | None
    label_ppm: float | None
    limit_source: Source
    cautions: tuple[Message, ...] = ()
    least_rule: Message = "Food Code 4-501.114"
    least_source: Source = FOOD_CODE_SANITISERS
    weakest: float = 1e-5
    strongest: float = 1.0
    dry: bool = False


@frozen
class Conditions:
    """least_c: how warm the solution must be, None where only the label says. contact_s: how long it must stay wet."""

    least_c: float | None
    contact_s: float
    words: Said


FRESH_DILUTION: Message = (
    "Make it fresh: sources differ between a day and a week on how long it keeps. A test strip shows it."
)

# Common practice and from memory, no published source: liquid bleach of up to 15 %, iodophors of 1.6 to 20 %, quats of
# up to 80 %, peracetic acid of up to 40 %, chlorine tablets with much filler. Pure calcium hypochlorite and pure
# trichloroisocyanuric acid by their molar masses: nothing holds more chlorine.
WEAKEST_GRANULES = 0.15
CHLORINE_MOLAR = 70.906
GAS: Message = "With vinegar or any acid it sets free chlorine gas, with ammonia chloramines: both harm the lungs."
EATS_METAL: Message = "Chlorine eats metal: do not let it stand on coils, fans or sensors."
DRY: Message = (
    "Into the water, never water onto it, and stirred until all is dissolved. Kept dry and away from acid, oil and "
    "every other kind of chlorine: it can take fire (common practice; no published source)."
)

AGENTS: Mapping[str, Agent] = {
    "chlorine": Agent(
        name="chlorine (plain household bleach)",
        active="available chlorine",
        least_ppm=25.0,
        no_rinse_ppm=200.0,
        label_ppm=200.0,
        limit_source=CFR_178_1010,
        cautions=(
            GAS,
            "Plain, unscented bleach without thickener. Granules and tablets are chosen by their own names: they are "
            "weighed, and isocyanurates may stay on at 100 ppm at most (21 CFR 178.1010(c)(2)).",
            EATS_METAL,
        ),
        strongest=0.16,
    ),
    "calcium": Agent(
        name="calcium hypochlorite, granules",
        active="available chlorine",
        least_ppm=25.0,
        no_rinse_ppm=200.0,
        label_ppm=200.0,
        limit_source=CFR_180_940,
        cautions=(GAS, DRY, EATS_METAL),
        weakest=WEAKEST_GRANULES,
        strongest=2 * CHLORINE_MOLAR / 142.98,
        dry=True,
    ),
    "isocyanurate": Agent(
        name="isocyanurate, granules or tablets",
        active="available chlorine",
        least_ppm=25.0,
        no_rinse_ppm=100.0,
        label_ppm=100.0,
        limit_source=CFR_178_1010,
        cautions=(
            GAS,
            "From isocyanurates 100 ppm may stay on, not 200 (21 CFR 178.1010(c)(2)).",
            DRY,
            EATS_METAL,
        ),
        weakest=WEAKEST_GRANULES,
        strongest=3 * CHLORINE_MOLAR / 232.41,
        dry=True,
    ),
    "iodine": Agent(
        name="iodine (iodophor)",
        active="titratable iodine",
        least_ppm=12.5,
        no_rinse_ppm=25.0,
        label_ppm=25.0,
        limit_source=CFR_178_1010,
        cautions=("It stains plastics and seals.",),
        strongest=0.2,
    ),
    "quat": Agent(
        name="quaternary ammonium",
        active="quaternary ammonium",
        least_ppm=150.0,
        no_rinse_ppm=200.0,
        label_ppm=400.0,
        limit_source=CFR_180_940,
        cautions=(
            "200 ppm is the limit for a single compound; some blends may stay on up to 400 ppm, where the label says "
            "so. The water must be no harder than the label allows, at most 500 mg/L.",
        ),
        least_rule="21 CFR 178.1010(c)(12), (17) and (18), which print the least strength",
        least_source=CFR_178_1010,
        strongest=0.8,
    ),
    "peracetic": Agent(
        name="peracetic acid",
        active="peracetic acid",
        least_ppm=46.0,
        no_rinse_ppm=58.0,
        label_ppm=315.0,
        limit_source=CFR_180_940,
        cautions=(
            "58 ppm is the limit for public eating places, 315 ppm for food-processing equipment (40 CFR 180.940 (a) "
            "and (c)): the label says for which it is made.",
            "The concentrate burns and its vapour bites: gloves, goggles, open air.",
        ),
        least_rule="21 CFR 178.1010(c)(39), the weakest row in print",
        least_source=CFR_178_1010,
        strongest=0.4,
    ),
    "label": Agent(
        name="another product, by its label",
        active="active substance",
        least_ppm=None,
        no_rinse_ppm=None,
        label_ppm=None,
        limit_source=CFR_178_1010,
        cautions=(
            "How strong it must be, and how strong it may stay on, only its label says: no rule read here does.",
        ),
    ),
}
CHLORINES = frozenset({"chlorine", "calcium", "isocyanurate"})

INDIANA_C = (75 - 32) / 1.8  # 410 IAC 7-24-294; the others print 68 °F: the stricter is asked for
_CHLORINE_FROM_PPM = (
    (100.0, (55.0, 55.0)),
    (50.0, (100.0, 75.0)),
    (25.0, (120.0, 120.0)),
)  # least °F at pH up to 10, at pH up to 8


def conditions(agent: str, ppm: float, ph: float | None = None) -> Conditions:
    """How warm and how long, by the Food Code as adopted. ph: of the solution; None takes the stricter column.

    For chlorine at 25 ppm and more, for iodine at 12.5 and more. The label may ask for more.
    """
    if agent in CHLORINES:
        alkaline, milder = next(temperatures for from_ppm, temperatures in _CHLORINE_FROM_PPM if within(from_ppm, ppm))
        mild = ph is not None and ph <= 8
        words = "chlorine of this strength, pH up to 8" if mild else "chlorine of this strength, pH up to 10"
        return Conditions(((milder if mild else alkaline) - 32) / 1.8, contact_s(agent), words)
    if agent == "iodine":
        warm = {"most": Amount(20.0, TEMPERATURE), "kept": Rounded(Amount(INDIANA_C, TEMPERATURE))}
        words = Sentence("iodine; most rules print {most}, Indiana’s the {kept} kept here", warm)
        return Conditions(INDIANA_C, contact_s(agent), words)
    if agent == "quat":
        return Conditions((75 - 32) / 1.8, contact_s(agent), "quaternary ammonium")
    return Conditions(None, contact_s(agent), "another chemical; its label says how warm")


NO_AGENT = Sentence("The sanitiser must be one of {agents}.", {"agents": listed(tuple(AGENTS), "or")})


def contact_s(agent: str) -> float:
    """How long it must stay wet, by the Food Code as adopted. What is not a key of AGENTS is another chemical."""
    return 10.0 if agent in CHLORINES else 30.0


def within(low: float, high: float) -> bool:
    """low <= high, but for the last digits of a sum."""
    return low <= high * (1 + 1e-9)


@frozen
class Clash:
    """Two agents that must not meet: names as said, what comes of it, who says so."""

    agents: tuple[str, str]
    hazard: Sentence
    source: Source

    def say(self) -> Sentence:
        one, other = (Sentence(CLEANERS[key]) for key in self.agents)
        told = {"one": one, "other": other, "hazard": self.hazard}
        if self.source is COMMON_PRACTICE:
            return Sentence("Never mix {one} with {other}: {hazard} (common practice; no published source).", told)
        return Sentence("Never mix {one} with {other}: {hazard}.", told)


CLEANERS: Mapping[str, Message] = {
    "chlorine": "chlorine bleach",
    "calcium": "calcium hypochlorite",
    "isocyanurate": "isocyanurate",
    "iodine": "iodophor",
    "quat": "quaternary ammonium",
    "peracetic": "peracetic acid",
    "label": "another product",
    "vinegar": "vinegar",
    "acid": "citric acid, limescale remover or another acid",
    "ammonia": "ammonia or a cleaner that holds it",
    "peroxide": "hydrogen peroxide",
    "alcohol": "alcohol",
    "detergent": "washing-up liquid",
}
"""All that may be chosen in one run, sanitiser or not."""

_GAS = Sentence("it sets free chlorine gas, which harms the lungs")
_IODINE_GAS = Sentence("iodophors are acid, and it sets free chlorine gas, which harms the lungs")
_HAZARDS: Mapping[frozenset[str], tuple[Sentence, Source]] = {
    frozenset(pair): (hazard, source)
    for *pair, hazard, source in (
        ("chlorine", "vinegar", _GAS, NEVER_MIXED),
        ("chlorine", "acid", _GAS, NEVER_MIXED),
        ("chlorine", "peracetic", _GAS, NEVER_MIXED),
        ("chlorine", "iodine", _IODINE_GAS, NEVER_MIXED),
        ("chlorine", "ammonia", Sentence("it sets free chloramine vapours, which harm the lungs"), NEVER_MIXED),
        ("chlorine", "quat", Sentence("it may set free chloramine vapours, which harm the lungs"), COMMON_PRACTICE),
        ("chlorine", "peroxide", Sentence("it sets oxygen free, violently"), NEVER_MIXED),
        ("chlorine", "alcohol", Sentence("it makes chloroform and other poisons"), NEVER_MIXED),
        ("vinegar", "peroxide", Sentence("it makes peracetic acid, which burns eyes and lungs"), NEVER_MIXED),
        (
            "chlorine",
            "detergent",
            Sentence("some hold ammonia or acid; wash, rinse, and only then sanitise"),
            COMMON_PRACTICE,
        ),
        ("quat", "detergent", Sentence("soap undoes it; wash, rinse, and only then sanitise"), COMMON_PRACTICE),
    )
}
_TWO_CHLORINES = (
    Sentence("undissolved, two kinds of chlorine can take fire or burst where they meet"),
    COMMON_PRACTICE,
)
_UNKNOWN = Sentence("nothing is known here of the two together; a sanitiser is mixed with water and with nothing else")


def never_mix(agents: tuple[str, ...]) -> tuple[Clash, ...]:
    """A warning for every pair of agents in the same run: the known hazard, or that none is known to be safe.

    agents: keys of CLEANERS, in any order, once or more. Gas comes first, then the other known hazards. Raises KeyError
    for another key.
    """
    chosen = [key for key in CLEANERS if key in agents]
    if strange := set(agents) - set(CLEANERS):
        raise KeyError(", ".join(sorted(strange)))
    clashes = [Clash(pair, *_hazard(pair)) for pair in combinations(chosen, 2)]
    return tuple(sorted(clashes, key=lambda clash: (clash.hazard not in (_GAS, _IODINE_GAS), clash.hazard == _UNKNOWN)))


def _hazard(pair: tuple[str, str]) -> tuple[Sentence, Source]:
    """What every kind of chlorine does is written down once, under bleach."""
    kinds = frozenset("chlorine" if each in CHLORINES else each for each in pair)
    return _TWO_CHLORINES if len(kinds) == 1 else _HAZARDS.get(kinds, (_UNKNOWN, COMMON_PRACTICE))
