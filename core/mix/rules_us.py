"""The United States: 9 CFR 424.21(c) and 424.22(b) for inspected plants, 21 CFR 172.170 for home-curing mixes.

The chart prints ounces to 100 lb; parts per million follow from them. Sodium and potassium salts count alike by weight,
but in bacon, where the potassium salt has the larger figure of the same number of moles.
"""

from __future__ import annotations

from core.mix.rule import DRY, EVERY, WET, WHOLE, Limited, Method, Rule, RuleSet
from core.quantities import PARTS_PER_MILLION, Amount
from core.sentence import Message, Sentence
from core.sources import CFR_172_170, CFR_424_21C, CFR_424_22B, FSIS_7620_3, US_PICKLE_NITRATE, Source

OUNCES_IN_100_LB = 1600
FINISHED_PPM = 200.0
RIND = 0.9
RIND_CITE = "trade figure, from 9 CFR 424.22(b)"
"""A belly in its skin takes a tenth less (a trade page, like memory)."""


def _ounces(ounces: float) -> float:
    return ounces / OUNCES_IN_100_LB * 1e6


def _chart(
    what: Message,
    methods: tuple[Method, ...],
    substance: Limited,
    most_ppm: float,
    printed: Message,
    source: Source = CFR_424_21C,
    note: Message = "",
) -> Rule:
    nitrite = substance == "nitrite"
    return Rule(
        product="meat",
        what=what,
        methods=methods,
        substance=substance,
        counted="weighed",
        most_ppm=most_ppm,
        printed=printed,
        left_ppm=FINISHED_PPM if nitrite else None,
        cite="9 CFR 424.21(c)",
        source=source,
        as_of="1995 revision" if source is FSIS_7620_3 else "2015 edition",
        note=note,
    )


def _bacon(
    product: str, what: Message, methods: tuple[Method, ...], most_ppm: float, printed: Message, note: Message = ""
) -> Rule:
    rind = product == "bacon-rind"
    return Rule(
        product=product,
        what=what,
        methods=methods,
        substance="nitrite",
        counted="sodium",
        most_ppm=most_ppm * (RIND if rind else 1),
        printed=Sentence("{printed}, less a tenth", {"printed": Sentence(printed)}) if rind else printed,
        cite=RIND_CITE if rind else "9 CFR 424.22(b)",
        source=Source(CFR_424_22B.title, "less a tenth for the rind, trade figure", "memory") if rind else CFR_424_22B,
        as_of="2015 edition",
        note=_with_rind(note) if rind else note,
    )


def _with_rind(note: Message) -> Sentence:
    rind = Sentence("A tenth less for the rind is a trade figure, not in the text read.")
    return Sentence("{note} {more}", {"note": Sentence(note), "more": rind}) if note else rind


def _no_nitrate(product: str, what: Message) -> Rule:
    return Rule(
        product=product,
        what=what,
        methods=WHOLE,
        substance="nitrate",
        counted="weighed",
        most_ppm=0.0,
        printed="“other than bacon”",
        cite="9 CFR 424.21(c)",
        source=CFR_424_21C,
        as_of="2015 edition",
    )


def _bacon_rows(product: str, what: Message, cured: tuple[Message, Message, Message]) -> tuple[Rule, ...]:
    """cured: how the piece is called when pumped, in brine and dry-cured."""
    in_pump, in_brine, dry = cured
    pumped: Message = "With 550 ppm of ascorbate or erythorbate, which the rule asks for."
    on: Message = "" if product == "bacon-rind" else "On the skin-free green weight."
    return (
        _bacon(product, in_pump, ("pump",), 120.0, "120 ppm, potassium salt 148 ppm", pumped),
        _bacon(product, in_brine, ("immersion", "pick-up"), 120.0, "120 ppm, potassium salt 148 ppm", on),
        _bacon(product, dry, DRY, 200.0, "200 ppm, potassium salt 246 ppm", on),
        _no_nitrate(product, what),
    )


def _home(substance: Limited, most_ppm: float) -> Rule:
    return Rule(
        product="home-mix",
        what="meat cured with a home-curing mix",
        methods=EVERY,
        substance=substance,
        counted="sodium",
        most_ppm=most_ppm,
        left_ppm=most_ppm,
        printed=Sentence("{most} in the finished meat", {"most": Amount(most_ppm / 1e6, PARTS_PER_MILLION)}),
        cite="21 CFR 172.170",
        source=CFR_172_170,
        as_of="a copy that gives no edition, read 2026",
        note="Counted here as it goes in, as if none were used up; drying makes it more to the kilogram.",
    )


def _accelerator(product: str, what: Message, methods: tuple[Method, ...], most_ppm: float, printed: Message) -> Rule:
    bacon = product != "meat"
    return Rule(
        product=product,
        what=what,
        methods=methods,
        substance="accelerator",
        counted="weighed",
        most_ppm=most_ppm,
        least_ppm=most_ppm if bacon else None,
        printed=printed,
        cite="9 CFR 424.22(b)" if bacon else "9 CFR 424.21(c)",
        source=CFR_424_22B if bacon else CFR_424_21C,
        as_of="2015 edition",
        note="As sodium ascorbate or sodium erythorbate; only together with a curing salt.",
    )


BACON_IN_ITS_SKIN: tuple[Message, Message, Message] = (
    "pumped bacon in its skin",
    "bacon in its skin in brine",
    "dry-cured bacon in its skin",
)
_PICKLE: Message = (
    "The handbook puts this as 200 ppm. In 100 gal of plain water 2 lb would be 240 ppm at 10 % pump: the stricter "
    "figure is held."
)
US = RuleSet(
    "us",
    "United States",
    "For inspected plants; a home kitchen may hold itself to the same. Going in, on the green weight of the meat.",
    {
        "meat": "cured meat, not bacon",
        "bacon": "bacon without its skin",
        "bacon-rind": "bacon in its skin",
        "home-mix": "any meat, with a home-curing mix sold as such",
    },
    (
        _chart("chopped meat", ("comminuted",), "nitrite", _ounces(0.25), "¼ oz to 100 lb"),
        _chart("chopped meat", ("comminuted",), "nitrate", _ounces(2.75), "2¾ oz to 100 lb"),
        _chart("dry-cured meat", DRY, "nitrite", _ounces(1), "1 oz to 100 lb"),
        _chart("dry-cured meat", DRY, "nitrate", _ounces(3.5), "3½ oz to 100 lb"),
        _chart(
            "pumped or brined meat",
            WET,
            "nitrite",
            200.0,
            "2 lb to 100 gal of pickle at 10 % pump",
            FSIS_7620_3,
            _PICKLE,
        ),
        _chart(
            "pumped or brined meat",
            WET,
            "nitrate",
            700.0,
            "7 lb to 100 gal of pickle",
            US_PICKLE_NITRATE,
            "The text read prints the pickle only; 700 ppm is from memory.",
        ),
        _accelerator("meat", "cured meat", EVERY, _ounces(0.875), "⅞ oz to 100 lb"),
        *_bacon_rows("bacon", "bacon", ("pumped bacon", "bacon in brine", "dry-cured bacon")),
        _accelerator("bacon", "pumped bacon", ("pump",), 550.0, "550 ppm"),
        *_bacon_rows("bacon-rind", "bacon in its skin", BACON_IN_ITS_SKIN),
        _accelerator("bacon-rind", "pumped bacon in its skin", ("pump",), 550.0, "550 ppm"),
        _home("nitrite", 200.0),
        _home("nitrate", 500.0),
    ),
)
