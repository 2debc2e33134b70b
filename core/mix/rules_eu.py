"""The European Union: Reg. (EC) 1333/2008, Annex II, part E, before and from 9 October 2025.

Until then mg/kg as sodium nitrite and sodium nitrate; since Reg. (EU) 2023/2108 as the ions, going in and left over.
The text says "to the kilogram"; it is divided here by the green weight of the meat, which is the stricter way.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date

from core.mix.ions import Substance
from core.mix.rule import EVERY, WHOLE, Method, Rule, RuleSet
from core.sentence import Message, Sentence
from core.sources import EU_CURE_NEW, EU_CURE_OLD, Source

CHANGE = date(2025, 10, 9)
OLD_SINCE = date(2013, 6, 1)
GROUND: tuple[Method, ...] = ("comminuted",)
RUBBED: tuple[Method, ...] = ("dry-rub", "dry-salting")
BRINED: tuple[Method, ...] = ("immersion", "pick-up", "pump")
NO_ROW_OF_ITS_OWN: Message = "It has no nitrite row of its own any more; the default of 30 mg/kg left is our reading."

PRODUCTS: Mapping[str, Message] = {
    "not-heated": "meat that is not heat-treated",
    "heated": "heat-treated meat",
    "sterilised": "sterilised meat, Fo above 3",
    "no-nitrite": "large bacon primals and dry sausages without added nitrite",
    "rohwurst": "Rohwürste (salami, Kantwurst): 4 weeks at least, water to protein below 1.7",
    "long-cured": "salchichón, chorizo de larga curación: 30 days at least",
    "saucisson": "saucisson sec: 3 weeks at least, water to protein below 1.7",
    "vysocina": "vysočina, poličan, lovecký, dunajská klobása and the like",
    "mettwurst": "Mettwurst, Teewurst",
    "dry-bacon": "dry-cured bacon, matured 4 days at least",
    "dry-ham": "dry-cured ham, matured 4 days at least",
    "jamon": "jamón, paleta, lomo, cecina: 10 days and over 45 days",
    "presunto": "presunto, paio do lombo: 10 to 15 days, 30 to 45 days, 2 months",
    "jambon-sec": "jambon sec, jambon sel, without added nitrite",
    "rohschinken-dry": "Rohschinken, trockengepökelt: 10 to 14 days",
    "rohschinken-both": "Rohschinken, trocken- and nassgepökelt: 14 to 35 days",
    "rohschinken-wet": "Rohschinken, nassgepökelt: 2 days to the kilogram",
    "wiltshire-bacon": "Wiltshire bacon",
    "wiltshire-ham": "Wiltshire ham",
    "toucinho": "entremeada, entrecosto, chispe, orelheira, toucinho",
    "filet-bacon": "bacon, filet de bacon",
    "filet-nitrate": "bacon, filet de bacon, with nitrate and without added nitrite",
    "reindeer": "cold-smoked reindeer",
    "tongue": "cured tongue",
    "jellied": "jellied veal and brisket",
    "traditional": "another traditionally cured product of row 08.3.4",
}
IN_A_SENTENCE: Mapping[str, Message] = {
    "rohwurst": "Rohwürste (salami, Kantwurst)",
    "long-cured": "salchichón, chorizo de larga curación",
    "saucisson": "saucisson sec",
    "jamon": "jamón, paleta, lomo, cecina",
    "presunto": "presunto, paio do lombo",
    "rohschinken-dry": "Rohschinken, trockengepökelt",
    "rohschinken-both": "Rohschinken, trocken- and nassgepökelt",
    "rohschinken-wet": "Rohschinken, nassgepökelt",
}
"""Those whose name to choose by says how long as well."""


def _row(
    product: str,
    row: str,
    methods: tuple[Method, ...],
    *,
    nitrite: float | None = None,
    nitrate: float | None = None,
    nitrite_left: float | None = None,
    nitrate_left: float | None = None,
    look_into: float | None = None,
    old: bool = False,
    note: Message = "",
) -> Iterable[Rule]:
    """The nitrite and the nitrate of one printed row, as far as it has them."""
    source = EU_CURE_OLD if old else EU_CURE_NEW
    amounts: tuple[tuple[Substance, float | None, float | None], ...] = (
        ("nitrite", nitrite, nitrite_left),
        ("nitrate", nitrate, nitrate_left if nitrate_left is not None else look_into),
    )
    for substance, most, left in amounts:
        if most is None and left is None:
            continue
        yield Rule(
            product=product,
            what=IN_A_SENTENCE.get(product, PRODUCTS[product]),
            methods=methods,
            substance=substance,
            counted="sodium" if old else "ion",
            most_ppm=most,
            left_ppm=left,
            left_is="look into" if substance == "nitrate" and look_into is not None else "most",
            cite="Reg. (EC) 1333/2008 before 9 October 2025" if old else "Reg. (EU) 2023/2108",
            source=Source(source.where, Sentence("row {row}", {"row": row}), source.verified),
            as_of="2011" if old else "2026-08-18",
            since=OLD_SINCE if old else CHANGE,
            until=CHANGE if old else None,
            note=note,
        )


_NEW = (
    *_row("not-heated", "08.3.1", EVERY, nitrite=80, nitrite_left=45, nitrate=90, look_into=90),
    *_row("heated", "08.3.2", EVERY, nitrite=80, nitrite_left=45, nitrate=0),
    *_row("sterilised", "08.3.2", EVERY, nitrite=55, nitrite_left=25, nitrate=0),
    *_row("no-nitrite", "08.3.1", EVERY, nitrite=0, nitrate=110, look_into=110),
    *_row("rohwurst", "08.3.4.3", GROUND, nitrite=0, nitrate=180, look_into=95),
    *_row("long-cured", "08.3.4.3", GROUND, nitrite=0, nitrate=180, look_into=95),
    *_row("saucisson", "08.3.4.3", GROUND, nitrite=0, nitrate=180, look_into=95),
    *_row("vysocina", "08.3.4.3", GROUND, nitrite=105, nitrite_left=50, nitrate=0),
    *_row("mettwurst", "08.3.4.3", GROUND, nitrite=100, nitrite_left=50, nitrate=0),
    *_row("dry-bacon", "08.3.4.2", RUBBED, nitrite_left=105, nitrate_left=150),
    *_row("dry-ham", "08.3.4.2", RUBBED, nitrite_left=65, nitrate_left=150),
    *_row("jamon", "08.3.4.2", RUBBED, nitrite_left=65, nitrate_left=150),
    *_row("presunto", "08.3.4.2", RUBBED, nitrite_left=65, nitrate_left=150),
    *_row("jambon-sec", "08.3.4.2", RUBBED, nitrite=0, nitrate_left=150),
    *_row("rohschinken-dry", "08.3.4.2", RUBBED, nitrite_left=30, nitrate_left=150, note=NO_ROW_OF_ITS_OWN),
    *_row("rohschinken-both", "08.3.4.3", WHOLE, nitrite_left=30, nitrate_left=150, note=NO_ROW_OF_ITS_OWN),
    *_row("rohschinken-wet", "08.3.4.1", BRINED, nitrite_left=30, nitrate_left=150, note=NO_ROW_OF_ITS_OWN),
    *_row("wiltshire-bacon", "08.3.4.1", BRINED, nitrite_left=105, nitrate_left=150),
    *_row("wiltshire-ham", "08.3.4.1", BRINED, nitrite_left=65, nitrate_left=150),
    *_row("toucinho", "08.3.4.1", BRINED, nitrite_left=105, nitrate_left=150),
    *_row("filet-bacon", "08.3.4.1", BRINED, nitrite=100, nitrite_left=50, nitrate=0),
    *_row("filet-nitrate", "08.3.4.1", BRINED, nitrite=0, nitrate=180, look_into=95),
    *_row("reindeer", "08.3.4.1", BRINED, nitrite=100, nitrite_left=50, nitrate=180, look_into=95),
    *_row("tongue", "08.3.4.1", BRINED, nitrite_left=30, nitrate_left=7, note=NO_ROW_OF_ITS_OWN),
    *_row("jellied", "08.3.4.3", WHOLE, nitrite_left=30, nitrate_left=7, note=NO_ROW_OF_ITS_OWN),
    *_row("traditional", "08.3.4", EVERY, nitrite_left=30),
)
_OLD = (
    *_row("not-heated", "08.3.1", EVERY, nitrite=150, nitrate=150, old=True),
    *_row("heated", "08.3.2", EVERY, nitrite=150, nitrate=0, old=True),
    *_row("sterilised", "08.3.2", EVERY, nitrite=100, nitrate=0, old=True),
    *_row("rohwurst", "08.3.4.3", GROUND, nitrite=0, nitrate=300, old=True),
    *_row("long-cured", "08.3.4.3", GROUND, nitrite=0, nitrate=250, old=True),
    *_row("saucisson", "08.3.4.3", GROUND, nitrite=0, nitrate=250, old=True),
    *_row("vysocina", "08.3.4.3", GROUND, nitrite=180, nitrate=0, old=True),
    *_row("dry-bacon", "08.3.4.2", RUBBED, nitrite_left=175, nitrate_left=250, old=True),
    *_row("dry-ham", "08.3.4.2", RUBBED, nitrite_left=100, nitrate_left=250, old=True),
    *_row("jamon", "08.3.4.2", RUBBED, nitrite_left=100, nitrate_left=250, old=True),
    *_row("presunto", "08.3.4.2", RUBBED, nitrite_left=100, nitrate_left=250, old=True),
    *_row("jambon-sec", "08.3.4.2", RUBBED, nitrite=0, nitrate_left=250, old=True),
    *_row("rohschinken-dry", "08.3.4.2", RUBBED, nitrite_left=50, nitrate_left=250, old=True),
    *_row("rohschinken-both", "08.3.4.3", WHOLE, nitrite_left=50, nitrate_left=250, old=True),
    *_row("rohschinken-wet", "08.3.4.1", BRINED, nitrite_left=50, nitrate_left=250, old=True),
    *_row("wiltshire-bacon", "08.3.4.1", BRINED, nitrite_left=175, nitrate_left=250, old=True),
    *_row("wiltshire-ham", "08.3.4.1", BRINED, nitrite_left=100, nitrate_left=250, old=True),
    *_row("toucinho", "08.3.4.1", BRINED, nitrite_left=175, nitrate_left=250, old=True),
    *_row("filet-bacon", "08.3.4.1", BRINED, nitrite=150, nitrate=0, old=True),
    *_row("filet-nitrate", "08.3.4.1", BRINED, nitrite=0, nitrate=250, old=True),
    *_row("reindeer", "08.3.4.1", BRINED, nitrite=150, nitrate=300, old=True),
    *_row("tongue", "08.3.4.1", BRINED, nitrite_left=50, nitrate_left=10, old=True),
    *_row("jellied", "08.3.4.3", WHOLE, nitrite_left=50, nitrate_left=10, old=True),
)
EU = RuleSet(
    "eu",
    "European Union",
    "Since 9 October 2025 counted as the ion, with what may be left over the whole shelf life; before, as sodium salt.",
    PRODUCTS,
    (*_NEW, *_OLD),
)
